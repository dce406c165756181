// Which honey is held back. A hold sticks to a thing; honey that left it takes the hold along: out
// of a box or a hive into the buckets of its run, out of a bucket into every lot it went into, out
// of a lot into its jars. It is reckoned each time and never copied, so that lifting it at its
// source frees everything, and a suspicion in October holds the jars of July.
#pragma once

#include <map>
#include <optional>
#include <vector>

#include "core/model/season_info.h"
#include "core/storage/queries/holds.h"
#include "core/storage/queries/vessels.h"
#include "core/storage/rows.h"

namespace combwright {

/// A disease suspected on a box or its hive within so many days after the run holds the run's honey
/// too. Common practice, no source.
inline constexpr int suspectedAfterRunDays = 366;

/// The vessel and all its honey came from, itself first, each once.
std::vector<Vessel> vesselsBehind(const Read& file, const Vessel& vessel);

/// Boxes whose honey went into a run: those of which frames were spun or that were weighed wet; all
/// of them where no load was written down.
std::vector<ExtractionBox> boxesThatGave(const Read& file, Id<Extraction> run);

/// Holds of one day, asked for many vessels.
class HeldHoney {
  public:
    HeldHoney(const Read& file, Day on);

    /// Its own holds first, then those it inherits; each once.
    std::vector<Hold> of(const Vessel& vessel);
    std::vector<Hold> of(Id<Bottling> bottling);
    /// What its buckets inherit.
    const std::vector<Hold>& ofRun(Id<Extraction> run);

  private:
    std::vector<Hold> own(const Vessel& vessel) const;

    const Read& m_file;
    std::vector<Hold> m_standing;
    std::optional<HeldThings> m_things;
    std::map<std::int64_t, std::vector<Hold>> m_ofRuns;
    Day m_on;
};

/// The same for one. What a bucket inherits: a hold on a box of its run, or on the colony the box
/// stood on, that stood on the day of the run already; of suspected disease and its contacts also
/// one that came within a year after.
std::vector<Hold> holdsOn(const Read& file, const Vessel& vessel, Day on);
std::vector<Hold> holdsOn(const Read& file, Id<Bottling> bottling, Day on);

/// Whether the thing itself is held, or it has the hold from what is in it.
inline bool isOwn(const Hold& hold, const Vessel& vessel) {
    return (hold.bucket && hold.bucket == vessel.bucket) || (hold.lot && hold.lot == vessel.lot);
}

/// Boxes of the runs behind some honey that were on while a medicine was in and that nobody cleared
/// since. One of seven boxes: the honey perhaps has it.
struct TreatedShare {
    int boxes = 0;
    int of = 0;
    int unknown = 0;        ///< of those, boxes nobody knows: nothing can be said of them
    bool boughtIn = false;  ///< some of it was bought in: nothing is known of its boxes

    bool any() const { return boxes > 0; }
    bool all() const { return boxes > 0 && boxes == of && !boughtIn; }
};
TreatedShare treatedShare(const Read& file, const Vessel& vessel, Day on);
TreatedShare treatedShare(const Read& file, Id<Bottling> bottling, Day on);

}  // namespace combwright
