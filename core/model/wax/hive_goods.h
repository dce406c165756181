// What else comes from a hive by hand: propolis, and comb that bees build in jars.
#pragma once

#include "core/model/honey/going_out.h"

namespace combwright {

/// How propolis came or went.
enum class PropolisWent { Scraped, Trapped, Sold, Given, Kept, Lost };
template <>
struct Choices<PropolisWent> {
    static constexpr auto words =
        std::to_array<std::string_view>({"scraped", "trapped", "sold", "given", "kept", "lost"});
};

/// Propolis scraped or trapped, given and sold by mass.
struct PropolisMove {
    static constexpr std::string_view table = "propolis_move";
    Id<PropolisMove> id;
    Day on;
    PropolisWent went = PropolisWent::Scraped;
    std::optional<Known<Mass>> mass;
    std::optional<Id<Hive>> hive;
    std::optional<Id<Box>> box;
    std::optional<Day> frozen;
    std::optional<Money> price;  ///< of all of it
    std::string place;
    std::string buyer;  ///< in trade, or if wished
    std::string note;
    static const Fields& fields();
};

/// What bees are given to build in beside their frames.
enum class ProjectWhat { CombJars, CombSections, Other };
template <>
struct Choices<ProjectWhat> {
    static constexpr auto words =
        std::to_array<std::string_view>({"comb jars", "comb sections", "other"});
};

/// Comb jars and other small things bees build in on a hive, from the starter to the lid.
struct HiveProject {
    static constexpr std::string_view table = "hive_project";
    Id<HiveProject> id;
    Name name;  ///< unique in the file
    ProjectWhat what = ProjectWhat::CombJars;
    Count pieces;
    Day on;                             ///< written down
    std::optional<Id<GoodsKind>> kind;  ///< as what they are sold
    std::optional<Id<Hive>> hive;
    std::optional<Day> starter;
    std::optional<Day> putOn;
    std::optional<Day> off;
    std::optional<Day> lidded;
    std::optional<Count> good;       ///< filled and sound
    std::optional<Known<Mass>> net;  ///< comb and honey, of all that are sound
    std::optional<Day> wantedBy;
    std::optional<Id<Fair>> fair;
    std::string code;    ///< as on the label
    std::string reason;  ///< why although the hive is held back or treated
    std::string note;
    static const Fields& fields();
};

/// A weekly look at such a project.
struct ProjectLook {
    static constexpr std::string_view table = "project_look";
    Id<ProjectLook> id;
    Id<HiveProject> project;
    Day on;
    std::optional<Count> built;   ///< pieces fully built
    std::optional<Count> filled;  ///< pieces filled and capped
    std::string note;
    static const Fields& fields();
};

}  // namespace combwright
