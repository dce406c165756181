#include "core/places/season_book/constants_list.h"

#include <QString>
#include <algorithm>

#include "core/catalogue/colony_tables.h"
#include "core/catalogue/constants.h"
#include "core/model/health/tables.h"
#include "core/model/season_info.h"
#include "core/places/health/mite_lines.h"
#include "core/storage/queries/constants.h"
#include "core/words/words.h"

namespace combwright {
namespace {

std::string figureOf(double value) { return QString::number(value, 'g', 9).toStdString(); }

std::string dayOfYear(std::int64_t month, std::int64_t day) {
    return QStringLiteral("%1-%2")
        .arg(month, 2, 10, QLatin1Char('0'))
        .arg(day, 2, 10, QLatin1Char('0'))
        .toStdString();
}

std::optional<OwnFigure> ownConstant(const Read& file, const std::string& name,
                                     std::optional<Id<Yard>> yard, Day on) {
    const auto found = constantInForce(file, name, yard, on);
    if (!found || !found->own) return std::nullopt;
    const Constant& own = *found->own;
    return OwnFigure{figureOf(own.value.value()), own.since, own.yard, own.source};
}

template <class Own>
std::optional<Own> ownOfPhase(const Read& file, std::string_view phase,
                              std::optional<Id<Yard>> yard, Day on) {
    std::optional<Own> own;
    for (Own& each : file.all<Own>())
        if (word(each.phase) == phase && each.since <= on && (!each.yard || each.yard == yard) &&
            (!own || each.yard || !own->yard))
            own = std::move(each);
    return own;
}

void addLines(const Read& file, std::optional<Id<Yard>> yard, Day on,
              std::vector<ConstantRow>& rows) {
    const TableChoice chosen = tablesOn(file, on);
    const auto& all = publishedThresholds();
    const std::string edition = chosen.lines.empty() ? all.front().edition : chosen.lines;
    for (const PublishedThreshold& each : all) {
        if (each.edition != edition) continue;
        if (!chosen.linesRegion.empty() && each.region != chosen.linesRegion) continue;
        ConstantRow row{"mite_line " + each.phase,
                        figureOf(each.per100),
                        "mites on 100 bees",
                        each.source,
                        each.edition,
                        each.region,
                        std::nullopt};
        if (const auto own = ownOfPhase<MiteLine>(file, each.phase, yard, on))
            row.own = OwnFigure{figureOf(own->per100.value()), own->since, own->yard, own->source};
        rows.push_back(std::move(row));
    }
}

void addPhases(const Read& file, std::optional<Id<Yard>> yard, Day on,
               std::vector<ConstantRow>& rows) {
    const std::string chosen = tablesOn(file, on).phasesRegion;
    const auto& all = publishedPhases();
    const std::string region = chosen.empty() ? all.front().region : chosen;
    for (const PublishedPhase& each : all) {
        if (each.region != region) continue;
        ConstantRow row{"phase_from " + each.phase,
                        dayOfYear(each.fromMonth, each.fromDayOfMonth),
                        "day of the year",
                        each.source,
                        each.edition,
                        each.region,
                        std::nullopt};
        if (const auto own = ownOfPhase<PhaseDay>(file, each.phase, yard, on))
            row.own = OwnFigure{dayOfYear(own->month.value(), own->dayOfMonth.value()), own->since,
                                own->yard, own->source};
        rows.push_back(std::move(row));
    }
}

/// The label of a medicine as the keeper wrote it down counts before these; it stands with the
/// medicine.
void addWaits(const Read& file, Day on, std::vector<ConstantRow>& rows) {
    const std::string region = tablesOn(file, on).medicinesRegion;
    for (const PublishedWait& each : publishedWaits()) {
        if (!region.empty() && !each.region.empty() && each.region != region) continue;
        rows.push_back({"wait_days " + each.active,
                        each.waitDays ? std::to_string(each.waitDays->value()) : std::string(), "d",
                        each.source, each.edition, each.region, std::nullopt});
    }
}

}  // namespace

std::vector<ConstantRow> constantsOn(const Read& file, std::optional<Id<Yard>> yard, Day on) {
    std::vector<ConstantRow> rows;
    for (const PublishedConstant& each : publishedConstants())
        rows.push_back({each.name,
                        figureOf(each.value),
                        each.unit,
                        each.source,
                        {},
                        {},
                        ownConstant(file, each.name, yard, on)});
    // A box or frame kind's own mass has no published figure of that name.
    std::vector<std::string> others;
    for (const Constant& each : file.all<Constant>())
        if (!findPublishedConstant(each.name.text()) &&
            std::find(others.begin(), others.end(), each.name.text()) == others.end())
            others.push_back(each.name.text());
    for (const std::string& name : others)
        if (auto own = ownConstant(file, name, yard, on))
            rows.push_back({name, {}, "g", {}, {}, {}, std::move(own)});
    addLines(file, yard, on, rows);
    addPhases(file, yard, on, rows);
    addWaits(file, on, rows);
    return rows;
}

}  // namespace combwright
