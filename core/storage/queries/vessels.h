// What honey stands in between the gate and the jar: a bucket of a run, or a lot that was blended
// or bought in. Both are drawn from, read, warmed, held and traced alike, so they are one notion
// here: the vessel. Its ledger is kept like money; every gram in is accounted for out.
#pragma once

#include <compare>
#include <optional>
#include <string>
#include <vector>

#include "core/model/honey/going_out.h"
#include "core/model/honey/lot.h"
#include "core/storage/rows.h"

namespace combwright {

/// A bucket or a lot; exactly one of the two is set.
struct Vessel {
    std::optional<Id<Bucket>> bucket;
    std::optional<Id<Lot>> lot;
    auto operator<=>(const Vessel&) const = default;
};

/// The vessel that a record of it names.
template <class Record>
Vessel vesselOf(const Record& record) {
    return {record.bucket, record.lot};
}

/// "B4 of Hill 2027", "Summer blend".
std::string nameOf(const Read& file, const Vessel& vessel);

/// All of the file: buckets of runs first, then lots, each in order of coming.
std::vector<Vessel> allVessels(const Read& file);

/// What happened to a vessel's honey, one line of its ledger.
enum class VesselEvent { Filled, Worked, IntoLot, IntoJars, InBulk, Weighed };

struct VesselEntry {
    VesselEvent event = VesselEvent::Filled;
    Day on;
    std::optional<Mass> change;  ///< into it above 0, out of it below; none: nobody knows
    How how = How::Unknown;
    std::optional<Mass> left;  ///< in it after this line; none: not known
    std::optional<Id<Lot>> intoLot;
    std::optional<Id<Bottling>> bottling;
    std::optional<Id<GoingOut>> out;
    std::optional<Id<HoneyStep>> step;
    Mass lostBeside;  ///< of a filling: taken, and not in its jars
};

/// A vessel's honey: in = lots + jars + bulk + off by work + missing + left, to the gram, wherever
/// all of them are known.
struct VesselLedger {
    Vessel vessel;
    Day since;               ///< of a bucket its run's day
    std::optional<Mass> in;  ///< none: never weighed nor judged
    How inHow = How::Unknown;
    Mass intoLots;
    Mass intoJars;       ///< what the jars hold
    Mass lostInFilling;  ///< beside what the jars hold
    Mass inBulk;
    Mass offByWork;            ///< water dried off, froth skimmed
    Mass missing;              ///< reckoned less what was found when it was weighed; below 0: more
    std::optional<Mass> left;  ///< none: not known
    How leftHow = How::Unknown;
    std::optional<Day> empty;          ///< since when nothing is in it
    std::vector<VesselEntry> entries;  ///< in the order of their days
};

/// The ledger up to and with a day. Within a day work comes before what is drawn, and what is
/// weighed as left last. Of many vessels: VesselBooks.
VesselLedger vesselLedger(const Read& file, const Vessel& vessel, Day until);

/// What the jars of a filling hold: each its kind's net; none where a kind has no net.
std::optional<Mass> honeyInJars(const Read& file, Id<Bottling> bottling);

/// Honey a filling took: weighed, else what its jars hold and what was lost beside them.
struct Drawn {
    std::optional<Mass> mass;
    How how = How::Unknown;
    Mass lost;  ///< of it, not in jars
};
Drawn drawnFor(const Read& file, const Bottling& bottling);
/// The same, where it is known what its jars hold.
Drawn drawnFor(const Bottling& bottling, const std::optional<Mass>& inJars);

/// The grams of a mass somebody said, the middle of a range; none where nobody did.
std::optional<Mass> massSaid(const std::optional<Known<Mass>>& reading);

/// Straight parents of a lot in the order they went in, each once with all that went in of it.
struct VesselPart {
    Vessel from;
    Mass mass;
    How how = How::Unknown;
};
std::vector<VesselPart> partsOf(const Read& file, Id<Lot> lot);
/// The same of what was poured into one lot.
std::vector<VesselPart> eachOnce(const std::vector<LotPart>& poured);
/// Lots that honey of the vessel went into straight.
std::vector<Id<Lot>> lotsFrom(const Read& file, const Vessel& vessel);

}  // namespace combwright
