#include "core/places/bottlings.h"

#include <algorithm>

#include "core/catalogue/honey_tables.h"
#include "core/trade/honey/net_tolerance.h"

namespace combwright {
namespace {

/// The tables say "EU and UK"; the keeper chose one of the two.
bool isForRegion(const std::string& regions, const std::string& region) {
    if (region.empty()) return false;
    for (std::size_t at = regions.find(region); at != std::string::npos;
         at = regions.find(region, at + 1)) {
        const std::size_t end = at + region.size();
        if ((at == 0 || regions[at - 1] == ' ') && (end == regions.size() || regions[end] == ' '))
            return true;
    }
    return false;
}

std::vector<ToleranceRow> tolerancesFor(const std::string& region, std::string& table) {
    std::vector<ToleranceRow> rows;
    for (const PublishedNetTolerance& each : publishedNetTolerances()) {
        if (!isForRegion(each.region, region)) continue;
        rows.push_back({each.fromG, each.toG, each.deficitG, each.deficitPercent});
        table = each.edition;
    }
    return rows;
}

FillingLeft leftOf(const GoodsShelf& shelf, Id<Bottling> bottling) {
    for (const FillingLeft& each : shelf.fillings)
        if (each.bottling == bottling) return each;
    return {bottling};
}

}  // namespace

std::optional<LabelText> keeperLabelText(const Read& file, Day on) {
    std::optional<LabelText> newest;
    for (const LabelText& each : file.all<LabelText>())
        if (each.since <= on && (!newest || each.since >= newest->since)) newest = each;
    return newest;
}

void judgeNet(FilledJars& jars, const std::string& region, Working* working) {
    if (!jars.line.weighed || !jars.line.mean || !jars.line.lightest || !jars.kind.net) return;
    const auto netG = static_cast<double>(jars.kind.net->grams());
    const auto rows = tolerancesFor(region, jars.table);
    // The file keeps the mean and the lightest; both are judged as one jar each.
    const std::vector<double> mean{jars.line.mean->value()};
    const auto judged = checkNet(netG, mean, rows, working);
    if (!judged) return;
    jars.meanHolds = judged->meanHolds;
    const std::vector<double> lightest{static_cast<double>(jars.line.lightest->grams())};
    const auto least = checkNet(netG, lightest, rows, working);
    if (!least) return;
    jars.deficitG = least->deficitG;
    if (!least->deficitG) {
        jars.table.clear();
        return;
    }
    jars.lightestShort = least->shortJars + least->farShortJars > 0;
    jars.lightestFarShort = least->farShortJars > 0;
}

FillingSheet fillingSheet(const Read& file, const Bottling& bottling, Day on) {
    FillingSheet sheet;
    sheet.bottling = bottling;
    sheet.vessel = vesselOf(bottling);
    sheet.from = nameOf(file, sheet.vessel);
    sheet.drawn = drawnFor(file, bottling);
    sheet.inJars = honeyInJars(file, bottling.id);
    sheet.holds = holdsOn(file, bottling.id, on);
    sheet.treated = treatedShare(file, bottling.id, on);
    const auto text = keeperLabelText(file, on);
    for (const BottledJars& line : file.where<BottledJars>({is("bottling", bottling.id)})) {
        const auto kind = file.find(line.kind);
        if (!kind) continue;
        FilledJars jars;
        jars.line = line;
        jars.kind = *kind;
        jars.left = leftOf(goodsShelf(file, *kind, on), bottling.id);
        judgeNet(jars, text ? text->region : std::string());
        sheet.jars.push_back(std::move(jars));
    }
    for (const Complaint& each : file.where<Complaint>({is("bottling", bottling.id)}))
        if (each.on <= on) sheet.complaints.push_back(each);
    return sheet;
}

std::vector<FillingSheet> fillings(const Read& file, Day on) {
    auto all = file.all<Bottling>();
    std::erase_if(all, [on](const Bottling& each) { return each.on > on; });
    std::stable_sort(all.begin(), all.end(), [](const Bottling& a, const Bottling& b) {
        return a.on != b.on ? a.on > b.on : a.id.number > b.id.number;
    });
    std::vector<FillingSheet> sheets;
    for (const Bottling& each : all) sheets.push_back(fillingSheet(file, each, on));
    return sheets;
}

}  // namespace combwright
