#include "core/places/health/mite_lines.h"

#include <map>

#include "core/catalogue/colony_tables.h"
#include "core/storage/queries/constants.h"
#include "core/trade/colony/phase_starts.h"

namespace combwright {
namespace {

/// The record of the keeper's own that counts: the yard's before that for all, the later one.
template <class Own>
std::optional<Own> nearest(const Read& file, SeasonPhase phase, std::optional<Id<Yard>> yard,
                           Day on) {
    std::optional<Own> nearest;
    for (Own& each : file.where<Own>({is("phase", phase)})) {
        if (each.since > on || (each.yard && each.yard != yard)) continue;
        const bool nearer =
            !nearest || (each.yard && !nearest->yard) ||
            (each.yard.has_value() == nearest->yard.has_value() && each.since >= nearest->since);
        if (nearer) nearest = std::move(each);
    }
    return nearest;
}

/// The rows of a published table of a region, or of the first where none is chosen.
std::vector<PublishedPhase> phasesOf(const std::string& region) {
    std::vector<PublishedPhase> rows;
    for (const PublishedPhase& each : publishedPhases())
        if (region.empty() ? each.region == publishedPhases().front().region
                           : each.region == region)
            rows.push_back(each);
    return rows;
}

const PublishedThreshold* thresholdOf(const TableChoice& chosen, SeasonPhase phase) {
    const PublishedThreshold* first = nullptr;
    const std::string& edition =
        chosen.lines.empty() ? publishedThresholds().front().edition : chosen.lines;
    for (const PublishedThreshold& each : publishedThresholds()) {
        if (each.edition != edition || each.phase != key(phase)) continue;
        if (!chosen.linesRegion.empty() && each.region == chosen.linesRegion) return &each;
        if (!first) first = &each;
    }
    return first;
}

}  // namespace

TableChoice tablesOn(const Read& file, Day on) {
    TableChoice chosen;
    for (TableChoice& each : file.all<TableChoice>())
        if (each.since <= on && each.since >= chosen.since) chosen = std::move(each);
    return chosen;
}

PhaseInForce phaseOn(const Read& file, std::optional<Id<Yard>> yard, Day on) {
    const auto published = phasesOf(tablesOn(file, on).phasesRegion);
    std::vector<PhaseStart> starts;
    std::vector<PhaseStart> tableStarts;
    std::map<SeasonPhase, PhaseDay> own;
    for (const PublishedPhase& each : published) {
        const auto phase = seasonPhaseOf(each.phase);
        if (!phase) continue;
        tableStarts.push_back({*phase, each.fromMonth, each.fromDayOfMonth});
        starts.push_back(tableStarts.back());
        if (auto day = nearest<PhaseDay>(file, *phase, yard, on)) {
            starts.back().month = static_cast<unsigned>(day->month.value());
            starts.back().dayOfMonth = static_cast<unsigned>(day->dayOfMonth.value());
            own.emplace(*phase, *std::move(day));
        }
    }
    PhaseInForce force;
    auto phase = seasonPhase(on, starts);
    // An own day may have come to lie on a table's: then the table counts.
    if (!phase) {
        own.clear();
        phase = seasonPhase(on, tableStarts);
    }
    if (phase) force.phase = *phase;
    if (const auto day = own.find(force.phase); day != own.end()) {
        force.own = true;
        force.source = day->second.source;
        return force;
    }
    for (const PublishedPhase& each : published) {
        if (each.phase != key(force.phase)) continue;
        force.edition = each.edition;
        force.region = each.region;
        force.source = each.source;
    }
    return force;
}

std::optional<MiteLineInForce> miteLineOn(const Read& file, std::optional<Id<Yard>> yard, Day on) {
    using From = MiteLineInForce::From;
    MiteLineInForce line;
    line.phase = phaseOn(file, yard, on);
    if (const auto own = nearest<MiteLine>(file, line.phase.phase, yard, on)) {
        line.per100 = own->per100.value();
        line.from = own->yard ? From::OwnOfYard : From::Own;
        line.source = own->source;
        line.since = own->since;
        return line;
    }
    const auto constant = constantInForce(file, "mite_line_per_100", yard, on);
    if (constant && constant->own && constant->value > 0) {
        line.per100 = constant->value;
        line.from = From::OwnAllYear;
        line.source = constant->source;
        line.since = constant->own->since;
        return line;
    }
    const PublishedThreshold* table = thresholdOf(tablesOn(file, on), line.phase.phase);
    if (!table) return std::nullopt;
    line.per100 = table->per100;
    line.edition = table->edition;
    line.region = table->region;
    line.source = table->source;
    return line;
}

std::string_view key(MiteLineInForce::From from) {
    using From = MiteLineInForce::From;
    switch (from) {
        case From::OwnOfYard:
            return "own_of_yard";
        case From::Own:
            return "own";
        case From::OwnAllYear:
            return "own_all_year";
        case From::Table:
            return "table";
    }
    return {};
}

}  // namespace combwright
