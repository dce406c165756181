// What holds for the whole file: whose season it is, the keeper's own constants, and what is held
// back.
#pragma once

#include "core/model/describe.h"
#include "core/model/frames/frame.h"
#include "core/model/health/medicine.h"
#include "core/model/honey/bottling.h"
#include "core/model/honey/extraction.h"

namespace combwright {

/// The file's own name; there is at most one such row.
struct SeasonInfo {
    static constexpr std::string_view table = "season_info";
    Id<SeasonInfo> id;
    Name name;
    std::optional<bool> invented;  ///< a sample: said on every page and print
    std::string currency;          ///< the word or sign behind prices
    static const Fields& fields();
};

/// The keeper's own value of a rate or limit, from a day on; the published one stays beside it.
struct Constant {
    static constexpr std::string_view table = "constant";
    Id<Constant> id;
    Name name;
    std::optional<Id<Yard>> yard;  ///< only for that yard
    Day since;
    Number value;
    std::string source;
    std::optional<Day> until;  ///< from that day on the published one counts again
    static const Fields& fields();
};

enum class HoldWhy {
    DeadOutUnexplained,
    SuspectedDisease,
    TreatedWhileOn,
    WetHoney,
    Complaint,
    Other,
    Contact  ///< something went from or to where disease is suspected
};
template <>
struct Choices<HoldWhy> {
    static constexpr auto words = std::to_array<std::string_view>(
        {"dead-out unexplained", "suspected disease", "treated while on", "wet honey", "complaint",
         "other", "contact"});
};

/// Something is held back. The hold sticks to the thing and goes where it goes, until it is lifted.
struct Hold {
    static constexpr std::string_view table = "hold";
    Id<Hold> id;
    std::optional<Id<Colony>> colony;
    std::optional<Id<Box>> box;
    std::optional<Id<Frame>> frame;
    std::optional<Id<Bucket>> bucket;
    HoldWhy why = HoldWhy::Other;
    Day since;
    std::optional<Day> lifted;
    std::string liftedBy;
    std::string grounds;
    std::string note;
    std::optional<Id<Hold>> because;  ///< of a contact: the suspicion it stands in contact with
    std::optional<Id<Treatment>> treatment;  ///< of a box treated while on: the treatment
    std::optional<Id<Lot>> lot;
    std::optional<Id<Bottling>> bottling;
    static const Fields& fields();
};

}  // namespace combwright
