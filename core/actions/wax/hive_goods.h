// Propolis by mass, and comb that bees build in jars.
#pragma once

#include "core/actions/action.h"
#include "core/actions/wax/wax_rules.h"
#include "core/model/wax/hive_goods.h"

namespace combwright {

/// Propolis scraped or trapped, sold, given, kept or lost, by mass. Refused with Missing or
/// OutOfRange for the mass, TooMany "mass_g" where more went than there was, Contradiction for a
/// price where nothing was sold.
struct NotePropolis {
    static constexpr std::string_view name = "note-propolis";
    using Answer = Id<PropolisMove>;
    Day on;
    PropolisWent went;
    std::optional<Known<Mass>> mass;
    std::optional<Id<Hive>> hive;
    std::optional<Id<Box>> box;
    std::optional<Day> frozen;
    std::optional<Money> price;
    std::string place;
    std::string buyer;
    std::string note;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

/// Comb jars or other small things bees are to build in. Refused with Taken for the name,
/// OutOfRange for no pieces, Contradiction for a day wanted before it was written down.
struct StartProject {
    static constexpr std::string_view name = "start-project";
    using Answer = Id<HiveProject>;
    Day on;
    Name project;
    std::optional<ProjectWhat> what;  ///< none: comb jars
    Count pieces;
    std::optional<Id<GoodsKind>> kind;
    std::optional<Id<Hive>> hive;
    std::optional<Day> wantedBy;
    std::optional<Id<Fair>> fair;
    std::string note;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

/// A step of such a project: starter in, on the hive, off, lidded and weighed, comb and honey
/// together. A hive that is quarantined gives nothing; one held back for another reason only with a
/// reason. Refused with BeforeItBegan, Missing for the hive it goes on, OutOfRange, TooMany "good"
/// beyond its pieces, Contradiction for what does not belong to the step, Missing for the step
/// that must come before, NothingToDo where it is done, HeldBack. Lidded comb that was weighed or
/// given its code later is told so by the same step again: the day stays.
struct WorkProject {
    static constexpr std::string_view name = "work-project";
    using Answer = Id<HiveProject>;
    Day on;
    Id<HiveProject> project;
    ProjectWork work;
    std::optional<Id<Hive>> hive;
    std::optional<Count> good;
    std::optional<Known<Mass>> net;
    std::string code;
    std::string reason;
    std::string note;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

/// A look at such a project while it is on its hive. Refused with NotClosed where it is on none,
/// TooMany beyond its pieces, Contradiction where more is filled than built.
struct LookAtProject {
    static constexpr std::string_view name = "look-at-project";
    using Answer = Id<ProjectLook>;
    Day on;
    Id<HiveProject> project;
    std::optional<Count> built;
    std::optional<Count> filled;
    std::string note;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

}  // namespace combwright
