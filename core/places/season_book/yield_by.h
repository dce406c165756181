// The honey of a year by what gave it: by hive, by colony on whatever stand it was, by the queen
// who headed it, by yard. One that breeds or culls asks for colony and queen; a box tells of the
// hive it stood on, so who lived there on the day it was taken decides.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/model/yard/queen.h"
#include "core/places/season_book/season_yield.h"

namespace combwright {

enum class YieldBy { Hive, Colony, Queen, Yard };
/// As the command line and JSON name it: "hive", "colony" …
std::string_view key(YieldBy by);
std::optional<YieldBy> yieldByNamed(std::string_view name);

/// A hive's share of a run, or the part of it that came from one colony under one queen where the
/// boxes were taken on days between which that changed.
struct TakenShare {
    std::optional<Id<Hive>> hive;      ///< none: boxes whose hive nobody knows
    std::optional<Id<Colony>> colony;  ///< none: nobody is written down there that day
    std::optional<Id<Queen>> queen;    ///< none: none is written down that day
    Day taken;                         ///< off the hive, the last of its boxes; else the run's day
    std::vector<std::size_t> boxes;    ///< of the run's
    double offG = 0;                   ///< what they lost between full and wet
    Mass mass;
    How how = How::Unknown;
    How partHow = How::Unknown;
    std::optional<Mass> atClosing;  ///< of the whole share, where it differs and is not parted
};
/// In the order of the run's shares.
std::vector<TakenShare> takenShares(const Read& file, const RunBalance& balance);

/// One colony, queen, hive or yard.
struct YieldOf {
    std::optional<Id<Colony>> colony;
    std::optional<Id<Queen>> queen;
    std::optional<Id<Hive>> hive;
    std::optional<Id<Yard>> yard;
    std::string name;                 ///< of a colony the hive it lived in last that year
    std::string yardName;             ///< where that stood; empty for a yard itself
    std::vector<std::string> stands;  ///< the hives of the year, in their order
    std::optional<Queen> who;         ///< of a queen
    std::optional<Mass> mass;         ///< none: nothing was taken
    How how = How::Unknown;
    How partHow = How::Unknown;
    bool noted = false;    ///< some of it is from paper
    bool revised = false;  ///< a run differs from what it was when it was closed
    std::optional<Mass> before;
    How beforeHow = How::Unknown;
    bool beforeNoted = false;
    int producing = 0;           ///< of a yard its hives; else 1 where it gave honey
    bool producingKnown = true;  ///< false for a yard known only by a total
    int standing = 0;            ///< likewise on 1 May
};

struct YieldsBy {
    YieldBy by = YieldBy::Hive;
    int year = 0;
    int beforeYear = 0;
    std::vector<YieldOf> lines;  ///< colonies and queens by their honey, the most first
    /// Of hives where nobody wrote down the colony, or the queen.
    std::optional<Mass> nobody;
    How nobodyHow = How::Unknown;
    /// Whose hive nobody knows: lost tags, and totals from paper.
    std::optional<Mass> noHive;
    How noHiveHow = How::Unknown;
    Mass total;
    How how = How::Unknown;
    std::optional<Mass> before;
    How beforeHow = How::Unknown;
    int producing = 0;
    int standing = 0;
    bool allKnown = true;  ///< every producing one is among them; else no average is told
};

/// `before` is the year beside. Honey noted from paper for a hive goes to the one colony, or queen,
/// that was there all year; where there were several nobody knows which.
YieldsBy yieldsBy(const Read& file, const SeasonYield& season, const SeasonYield& before,
                  YieldBy by);

/// The one colony that lived in a hive during a year; nothing where there were several or none.
std::optional<Id<Colony>> onlyColonyIn(const Read& file, Id<Hive> hive, int year);
/// The one queen that headed it meanwhile.
std::optional<Id<Queen>> onlyQueenIn(const Read& file, Id<Hive> hive, int year);

}  // namespace combwright
