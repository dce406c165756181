#include "core/actions/health/tables.h"

#include <algorithm>
#include <vector>

#include "core/catalogue/colony_tables.h"
#include "core/places/health/mite_lines.h"

namespace combwright {
namespace {

constexpr int leapYear = 2028;

void addChoice(std::vector<std::string>& choices, const std::string& choice) {
    if (!choice.empty() && std::find(choices.begin(), choices.end(), choice) == choices.end())
        choices.push_back(choice);
}

Result<void> demandPublished(const std::string& chosen, const std::vector<std::string>& choices,
                             const char* field) {
    if (chosen.empty() || std::find(choices.begin(), choices.end(), chosen) != choices.end())
        return {};
    std::string all;
    for (const std::string& each : choices) all += (all.empty() ? "" : ", ") + each;
    return Refusal{Code::NotFound, field, {{"name", chosen}, {"choices", all}}};
}

}  // namespace

Result<void> demandMiteLine(const MiteLine& line) {
    if (line.per100 <= Number() || line.per100.value() > 100)
        return Refusal{Code::OutOfRange, "per_100", {{"low", "0"}, {"high", "100"}}};
    return {};
}

const Fields& SetMiteLine::fields() {
    static const Fields all =
        describe(field<&SetMiteLine::on>("on"), field<&SetMiteLine::phase>("phase"),
                 field<&SetMiteLine::per100>("per_100"), field<&SetMiteLine::yard>("yard"),
                 field<&SetMiteLine::source>("source"));
    return all;
}

Result<Id<MiteLine>> SetMiteLine::perform(Write& file) const {
    MiteLine line{{}, phase, yard, on, per100, source};
    if (auto good = demandMiteLine(line); !good) return good.error();
    return file.add(line);
}

Result<void> demandPhaseDay(const Read& file, const PhaseDay& phaseDay) {
    const auto inYear = [](const PhaseDay& each) {
        return makeDay(
            leapYear, static_cast<unsigned>(std::clamp<std::int64_t>(each.month.value(), 0, 13)),
            static_cast<unsigned>(std::clamp<std::int64_t>(each.dayOfMonth.value(), 0, 32)));
    };
    const auto begins = inYear(phaseDay);
    if (!begins)
        return Refusal{Code::NotADay,
                       "day_of_month",
                       {{"value", std::to_string(phaseDay.month.value()) + "-" +
                                      std::to_string(phaseDay.dayOfMonth.value())}}};
    // Of the other phases what is in force from that day on.
    for (const PhaseDay& each : file.all<PhaseDay>()) {
        if (each.id == phaseDay.id || each.phase == phaseDay.phase || each.yard != phaseDay.yard)
            continue;
        bool replaced = false;
        for (const PhaseDay& later : file.where<PhaseDay>({is("phase", each.phase)}))
            replaced = replaced || (later.yard == each.yard && later.id.number > each.id.number &&
                                    later.since >= each.since && later.since <= phaseDay.since);
        if (!replaced && inYear(each) == begins)
            return Refusal{Code::Contradiction, "day_of_month", {{"other", "phase"}}};
    }
    return {};
}

const Fields& SetPhaseDay::fields() {
    static const Fields all = describe(
        field<&SetPhaseDay::on>("on"), field<&SetPhaseDay::phase>("phase"),
        field<&SetPhaseDay::month>("month"), field<&SetPhaseDay::dayOfMonth>("day_of_month"),
        field<&SetPhaseDay::yard>("yard"), field<&SetPhaseDay::source>("source"));
    return all;
}

Result<Id<PhaseDay>> SetPhaseDay::perform(Write& file) const {
    PhaseDay phaseDay{{}, phase, yard, on, month, dayOfMonth, source};
    if (auto good = demandPhaseDay(file, phaseDay); !good) return good.error();
    return file.add(phaseDay);
}

const Fields& ChooseTables::fields() {
    static const Fields all =
        describe(field<&ChooseTables::on>("on"), field<&ChooseTables::lines>("lines_edition"),
                 field<&ChooseTables::linesRegion>("lines_region"),
                 field<&ChooseTables::phasesRegion>("phases_region"),
                 field<&ChooseTables::medicinesRegion>("medicines_region"));
    return all;
}

Result<Id<TableChoice>> ChooseTables::perform(Write& file) const {
    if (lines.empty() && linesRegion.empty() && phasesRegion.empty() && medicinesRegion.empty())
        return Refusal{Code::Missing, "lines_edition", {}};
    TableChoice choice = tablesOn(file, on);
    choice.id = {};
    choice.since = on;
    // Another table has regions of its own.
    if (!lines.empty() && lines != choice.lines) choice.linesRegion.clear();
    if (!lines.empty()) choice.lines = lines;
    if (!linesRegion.empty()) choice.linesRegion = linesRegion;
    if (!phasesRegion.empty()) choice.phasesRegion = phasesRegion;
    if (!medicinesRegion.empty()) choice.medicinesRegion = medicinesRegion;

    std::vector<std::string> editions;
    std::vector<std::string> regions;
    for (const PublishedThreshold& each : publishedThresholds()) {
        addChoice(editions, each.edition);
        if (choice.lines.empty() || each.edition == choice.lines) addChoice(regions, each.region);
    }
    if (auto good = demandPublished(choice.lines, editions, "lines_edition"); !good)
        return good.error();
    if (auto good = demandPublished(choice.linesRegion, regions, "lines_region"); !good)
        return good.error();
    std::vector<std::string> phases;
    for (const PublishedPhase& each : publishedPhases()) addChoice(phases, each.region);
    if (auto good = demandPublished(choice.phasesRegion, phases, "phases_region"); !good)
        return good.error();
    std::vector<std::string> medicines;
    for (const PublishedWait& each : publishedWaits()) addChoice(medicines, each.region);
    if (auto good = demandPublished(choice.medicinesRegion, medicines, "medicines_region"); !good)
        return good.error();
    return file.add(choice);
}

}  // namespace combwright
