// Full jars, candles and whatever else is handed over the table: how many stand on the shelf, by
// kind and by filling. Nobody keeps a balance: it is what was filled or counted, less what went out
// of the door and what lies in the box for a fair, so that a deed taken back is on the shelf again.
// Where nobody said which filling a jar was of, the kind has one less and the fillings a range.
#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <vector>

#include "core/model/honey/going_out.h"
#include "core/storage/queries/day_book.h"
#include "core/storage/rows.h"

namespace combwright {

/// Jars of one filling: exact where every jar that went out was of a known one.
struct FillingLeft {
    Id<Bottling> bottling;
    std::int64_t filled = 0;
    std::int64_t least = 0;
    std::int64_t most = 0;
};

struct GoodsShelf {
    GoodsKind kind;
    bool written = false;     ///< anything was ever written down of it
    std::int64_t filled = 0;  ///< in all fillings; candles labelled, comb lidded
    std::array<std::int64_t, Choices<OutHow>::words.size()> out{};  ///< by OutHow, without fairs
    std::int64_t soldAtFairs = 0;
    std::int64_t givenAtFairs = 0;
    std::int64_t brokenAtFairs = 0;
    std::int64_t atFair = 0;     ///< in the box of a fair that is not over
    std::int64_t corrected = 0;  ///< found by counts beyond what was reckoned; below 0: missing
    std::optional<Day> counted;  ///< the newest count of all of them
    std::int64_t left = 0;       ///< on the shelf
    std::int64_t seconds = 0;    ///< candles kept or given, not for sale: beside the shelf
    std::vector<FillingLeft> fillings;  ///< in the order they were filled; those used up too
    std::int64_t ofNoFilling = 0;       ///< on the shelf and of no known filling
};

/// The shelf of a kind at the end of a day.
GoodsShelf goodsShelf(const Read& file, const GoodsKind& kind, Day until);
/// Of every kind, in the order they were named.
std::vector<GoodsShelf> goodsShelves(const Read& file, Day until);

/// The filling a jar must be of: the only one with any on the shelf. None where there are several,
/// or jars of no known filling beside it.
std::optional<Id<Bottling>> onlyFilling(const GoodsShelf& shelf);

/// What more went out than there was, on whichever day, of the kind or of one filling of it.
struct GoodsShort {
    Day on;                  ///< the first day
    std::int64_t lacks = 0;  ///< at the worst
    std::optional<Id<Bottling>> bottling;
};
std::optional<GoodsShort> goodsShort(const Read& file, Id<GoodsKind> kind);

/// More came back than ever went out by then, at the worst; 0 where none did.
std::int64_t cameBackTooMany(const Read& file, Id<GoodsKind> kind);

/// What is written down of the day so far: of the kind, or of one filling of it.
std::int64_t goodsChangeOn(const Read& file, Id<GoodsKind> kind,
                           const std::optional<Id<Bottling>>& bottling, Day on);

/// Of a line of a fair that is over: what was sold. None where nobody counted what came home.
std::optional<std::int64_t> soldOf(const FairLine& line);

}  // namespace combwright
