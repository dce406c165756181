// What a thing is called on a day, turned into the thing. Marks are used again after a hive has
// closed, so a name alone is not enough: the day goes with it.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/storage/rows.h"
#include "core/support/result.h"

namespace combwright {

struct NameQuery {
    std::string name;
    std::optional<std::string> yard = std::nullopt;  ///< of a hive
    std::optional<std::string> hive = std::nullopt;  ///< of a box without a mark, with its level
    std::optional<std::int64_t> level = std::nullopt;
    std::optional<std::string> run = std::nullopt;  ///< of a bucket or a box in the honey room
    std::optional<std::string> box = std::nullopt;  ///< of a look into it, a frame, a hold
    std::optional<std::string> equipment = std::nullopt;  ///< of a stock-take
    std::optional<std::string> bucket = std::nullopt;     ///< of a hold on it, with its run
    std::optional<std::string> lot = std::nullopt;        ///< of a hold on it
    std::optional<std::string> bottling = std::nullopt;   ///< of a hold on it, by its code
    Day on;
};

/// The row of that table meant by a name on a day. A hive by what it was called that day; a queen
/// by the number on her, or as the queen of a hive; a comb by the mark on it; a medicine by the
/// name on its pack, with its batch behind it where there are several; what is in the truck; the
/// peg of a number; a piece of equipment's stock-take; the plan of a year. What has no mark is
/// named by its day and what it is of: a visit by its yard, a look by hive or box; the colony that
/// lived in a hive that day and the clearer board in it, a hive's weighing, feeding, finding or
/// treatment; the frame at a place of a box (level 0 is the first), the hold that stands on a box,
/// a bucket, a lot or a filling, the freezer's round that went in that day, the log of a day in the
/// honey room, the feed bought or counted that day, an open note by its words, a quiet rule by its
/// reason. Honey after the gate as honey_names.h says, the wax bench as
/// wax_names.h. Refused with NotFound or Ambiguous under the
/// table's name; with WrongType for tables whose rows have no names.
Result<std::int64_t> findNamed(const Read& file, std::string_view table, const NameQuery& query);

/// What a box without a mark is called while it stays put, as one counts in the yard: "ML3, second
/// from the floor"; level 0 is the first.
std::string boxByPlace(const std::string& hive, Count level);

/// What a row is called now: a hive's mark, "ML3, second from the floor" for a box without one;
/// "#12" failing that.
std::string nameOf(const Read& file, std::string_view table, std::int64_t id);

}  // namespace combwright
