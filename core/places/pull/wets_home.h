// Wet boxes on their way home: after a run the bees lick them dry. Which hive cleans which box, by
// the rules of the trade: its own hive, or at least its own yard; never from a held hive to
// another, never onto a nucleus, never onto a hive where nobody lives. And what was left over.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "core/model/yard/yard.h"
#include "core/places/storeroom/shelf_comb.h"

namespace combwright {

/// What speaks against giving a box to a hive. Disease, what is held and
/// an empty hive are refused, the others asked about.
enum class WetsBar {
    None,
    Disease,    ///< not ruled out where the box came from: it stays where it is
    BoxHeld,    ///< held for another reason: its own hive and no other
    HiveHeld,   ///< nothing of another hive goes there
    Medicine,   ///< it keeps supers off that hive: asked about, the label decides
    NoColony,   ///< nobody lives there
    Nucleus,    ///< too few bees to clean it or to guard it
    OtherYard,  ///< not of its own yard
    Unknown     ///< nobody knows which hive it came off
};

/// A colony in so many frames or fewer is a nucleus. Common practice, no source.
inline constexpr std::int64_t nucleusFrames = 6;

/// One hive's part in it, read once for many boxes.
struct WetsHive {
    Hive hive;
    Yard yard;
    bool lives = false;
    bool nucleus = false;    ///< six frames or fewer, or one box of this year's split or nucleus
    bool held = false;       ///< its colony
    bool medicine = false;   ///< one keeps supers off it
    bool disease = false;    ///< suspected there, or a dead-out nobody explained
    std::int64_t given = 0;  ///< boxes given back to it that are there now
};

/// A box that came off a hive, as the rules see it.
struct WetsOrigin {
    std::optional<Id<Hive>> hive;
    bool held = false;
    bool treated =
        false;  ///< it was on while a medicine was in: it stays held, and no hive is named
    /// The hives that medicine was in.
    std::vector<Id<Hive>> treatedOn;
    bool disease = false;
};

class WetsRules {
  public:
    WetsRules(const Read& file, Day on);

    /// Open hives in walking order, yard after yard.
    const std::vector<WetsHive>& hives() const { return m_hives; }
    const WetsHive* find(Id<Hive> hive) const;
    WetsOrigin origin(const ShelfBox& box) const;
    /// The gravest.
    WetsBar bar(const ShelfBox& box, Id<Hive> to) const;
    /// The yard it came from.
    std::optional<Id<Yard>> yardOf(const WetsOrigin& origin) const;
    bool held(Id<Hive> hive) const;

  private:
    std::vector<WetsHive> m_hives;
    HeldThings m_held;
    std::map<std::int64_t, Id<Yard>> m_yards;           ///< by hive, closed ones too
    std::map<std::int64_t, std::vector<Hold>> m_holds;  ///< by hive
    std::map<std::int64_t, Id<Hive>> m_treatments;      ///< by treatment: the hive it was given
    std::map<std::int64_t, Id<Hive>> m_named;           ///< by box: as its run says
};

struct WetBox {
    ShelfBox box;
    std::string cameOff;  ///< its hive's mark; empty where nobody knows
    std::optional<Id<Hive>> to;
    std::string hive;  ///< the mark of that
    std::string yard;
    bool ownHive = false;
    WetsBar why = WetsBar::None;  ///< where it goes nowhere: what bars it, None where all are full
};

/// Given back, being cleaned.
struct WetsOut {
    Box box;
    std::string name, hive, yard;
    Day since;
    Day from, to;  ///< off again
};

enum class LeftOverWay {
    Give,       ///< back to bees, of its own yard where it can be
    LookFirst,  ///< no clean look into its colony since it came off
    Melt,       ///< its colony is gone or not known, or no hive of its yard may have it
    Held        ///< it or its colony was once held back: goes to no hive, however that ended
};

/// Stores left in comb: granulated, or never extracted.
struct LeftOver {
    ShelfBox box;
    std::int64_t frames = 0;
    bool granulated = false;
    std::string cameOff, yard;
    std::optional<Day> cleanLook;    ///< the newest since it came off
    std::vector<std::string> hives;  ///< that may have it, its own first
    LeftOverWay way = LeftOverWay::LookFirst;
};

struct WetsHome {
    Day on;
    std::vector<WetBox> go;    ///< in walking order
    std::vector<WetBox> stay;  ///< each with what bars it
    std::vector<WetsOut> out;  ///< the longest first
    std::vector<LeftOver> leftOver;
    std::int64_t perHive = 3;
    Day offFrom, offTo;  ///< of those given back that day
};

WetsHome wetsHome(const Read& file, Day on);
/// The same, of what `shelfComb` told of that day.
WetsHome wetsHome(const Read& file, Day on, const std::vector<ShelfBox>& comb);

}  // namespace combwright
