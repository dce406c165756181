#include "core/places/goods/bottlings.h"

#include <algorithm>
#include <map>

#include "core/catalogue/honey_tables.h"
#include "core/storage/queries/labels.h"
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

/// What many sheets ask alike, asked once.
class FillingAsked {
  public:
    FillingAsked(const Read& file, Day on) : m_file(file), m_on(on), m_held(file, on) {
        if (const auto text = labelTextInForce(file, on)) m_region = text->region;
    }

    FillingLeft left(const GoodsKind& kind, Id<Bottling> bottling) {
        auto known = m_left.find(kind.id.number);
        if (known == m_left.end()) {
            known = m_left.emplace(kind.id.number, Lefts{}).first;
            for (const FillingLeft& each : goodsShelf(m_file, kind, m_on).fillings)
                known->second.emplace(each.bottling.number, each);
        }
        const auto found = known->second.find(bottling.number);
        return found == known->second.end() ? FillingLeft{bottling} : found->second;
    }
    std::vector<Hold> holds(Id<Bottling> bottling) { return m_held.of(bottling); }
    const std::string& region() const { return m_region; }

  private:
    using Lefts = std::map<std::int64_t, FillingLeft>;
    const Read& m_file;
    Day m_on;
    HeldHoney m_held;
    std::string m_region;
    std::map<std::int64_t, Lefts> m_left;  ///< by kind, by filling
};

FillingSheet sheetOf(const Read& file, const Bottling& bottling, Day on, FillingAsked& asked) {
    FillingSheet sheet;
    sheet.bottling = bottling;
    sheet.vessel = vesselOf(bottling);
    sheet.from = nameOf(file, sheet.vessel);
    sheet.drawn = drawnFor(file, bottling);
    sheet.inJars = honeyInJars(file, bottling.id);
    sheet.holds = asked.holds(bottling.id);
    sheet.treated = treatedShare(file, bottling.id, on);
    for (const BottledJars& line : file.where<BottledJars>({is("bottling", bottling.id)})) {
        const auto kind = file.find(line.kind);
        if (!kind) continue;
        FilledJars jars;
        jars.line = line;
        jars.kind = *kind;
        jars.left = asked.left(*kind, bottling.id);
        judgeNet(jars, asked.region());
        sheet.jars.push_back(std::move(jars));
    }
    for (const Complaint& each : file.where<Complaint>({is("bottling", bottling.id)}))
        if (each.on <= on) sheet.complaints.push_back(each);
    return sheet;
}

}  // namespace

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
    FillingAsked asked(file, on);
    return sheetOf(file, bottling, on, asked);
}

std::vector<FillingSheet> fillings(const Read& file, Day on) {
    auto all = file.all<Bottling>();
    std::erase_if(all, [on](const Bottling& each) { return each.on > on; });
    std::stable_sort(all.begin(), all.end(), [](const Bottling& a, const Bottling& b) {
        return a.on != b.on ? a.on > b.on : a.id.number > b.id.number;
    });
    std::vector<FillingSheet> sheets;
    FillingAsked asked(file, on);
    for (const Bottling& each : all) sheets.push_back(sheetOf(file, each, on, asked));
    return sheets;
}

}  // namespace combwright
