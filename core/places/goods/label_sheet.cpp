#include "core/places/goods/label_sheet.h"

#include <algorithm>

#include "core/storage/queries/labels.h"
#include "core/trade/honey/net_tolerance.h"
#include "core/words/units.h"

namespace combwright {
namespace {

Result<LabelSheet> sheetOfGrid(const Read& file, const std::string& id, Day on) {
    const PublishedLabelGrid* grid = findLabelGrid(id);
    const auto paper = grid ? paperSize(grid->paper) : std::nullopt;
    if (!paper) {
        std::string all;
        for (const std::string& each : labelGridsOf({})) all += (all.empty() ? "" : ", ") + each;
        return Refusal{Code::NotAChoice, "grid", {{"value", id}, {"choices", all}}};
    }
    LabelSheet sheet;
    sheet.grid = *grid;
    sheet.paper = *paper;
    if (const auto offset = labelOffsetInForce(file, id, on)) {
        sheet.rightMm = offset->right.value();
        sheet.downMm = offset->down.value();
    }
    return sheet;
}

/// What lies too far to the right is moved to the left by as much.
LabelAt placedAt(const LabelSheet& sheet, int sheetNumber, int cell, std::size_t label) {
    const int column = (cell - 1) % sheet.grid.columns;
    const int row = (cell - 1) / sheet.grid.columns;
    return {sheetNumber, cell, sheet.grid.leftMm + column * sheet.grid.pitchXMm - sheet.rightMm,
            sheet.grid.topMm + row * sheet.grid.pitchYMm - sheet.downMm, label};
}

JarLabel jarLabelOf(const Bottling& bottling, const GoodsKind& kind, const LabelText& text) {
    JarLabel label;
    label.kind = kind.name.text();
    label.net = kind.net;
    label.code = bottling.code.text();
    label.bestBefore = bottling.bestBefore;
    label.producer = text.producer;
    label.address = text.address;
    label.origin = text.origin;
    // A word for the taste is no flower: only what the keeper stated himself stands here.
    if (!text.flowerGrounds.empty()) label.flower = text.flower;
    label.more = text.more;
    if (text.region == "US" && kind.net)
        label.ounces = static_cast<double>(kind.net->grams()) / gramsPerOunce;
    return label;
}

/// Comb jars have a code and a day as a filling has; none before they have one.
std::optional<Bottling> combAsFilling(const HiveProject& comb) {
    const auto code = Name::of(comb.code);
    if (!code || !comb.lidded) return std::nullopt;
    Bottling filling;
    filling.code = *code;
    filling.on = *comb.lidded;
    return filling;
}

std::vector<BottledJars> combAsJars(const HiveProject& comb) {
    if (!comb.kind || !comb.good) return {};
    BottledJars jars;
    jars.kind = *comb.kind;
    jars.count = *comb.good;
    return {jars};
}

std::vector<BottledJars> jarsOfFilling(const Read& file, const Bottling& filling) {
    return file.where<BottledJars>({is("bottling", filling.id)});
}

LabelWordState stateOf(const PublishedLabelWord& word, const std::vector<JarLabel>& labels) {
    const auto all = [&](auto has) {
        return std::all_of(labels.begin(), labels.end(), has) ? LabelWordState::There
                                                              : LabelWordState::Lacks;
    };
    if (word.what == "infant_caution" || word.what == "honey") return LabelWordState::There;
    if (word.what == "name_and_address")
        return all([](const JarLabel& l) { return !l.producer.empty() && !l.address.empty(); });
    if (word.what == "net_mass" || word.what == "net_mass_both")
        return all([](const JarLabel& l) { return l.net.has_value(); });
    if (word.what == "origin") return all([](const JarLabel& l) { return !l.origin.empty(); });
    if (word.what == "lot") return all([](const JarLabel& l) { return !l.code.empty(); });
    if (word.what == "best_before")
        return all([](const JarLabel& l) { return l.bestBefore.has_value(); });
    return LabelWordState::Yours;
}

}  // namespace

std::vector<std::string> labelGridsOf(const std::string& paper) {
    std::vector<std::string> grids;
    for (const PublishedLabelGrid& each : publishedLabelGrids())
        if (paper.empty() || each.paper == paper) grids.push_back(each.id);
    return grids;
}

std::string usualLabelGrid(const Read& file, Day on) {
    std::optional<LabelOffset> newest;
    for (LabelOffset& each : file.where<LabelOffset>({isUpTo("since", on)}))
        if (!newest || each.since >= newest->since) newest = std::move(each);
    if (newest && findLabelGrid(newest->grid.text())) return newest->grid.text();
    // Who weighs in pounds prints on Letter.
    return shownUnits() == Units::UsCustomary ? "letter-3x10" : LabelsAsked{}.grid;
}

std::optional<Id<Bottling>> newestFilling(const Read& file, Day on) {
    std::optional<Bottling> newest;
    for (Bottling& each : file.where<Bottling>({isUpTo("on_day", on)}))
        if (!newest || each.on >= newest->on) newest = std::move(each);
    return newest ? std::optional(newest->id) : std::nullopt;
}

Result<LabelSheet> emptyLabelSheet(const Read& file, const std::string& grid, Day on) {
    auto made = sheetOfGrid(file, grid, on);
    if (!made) return made.error();
    LabelSheet sheet = *std::move(made);
    sheet.sheets = 1;
    for (int cell = 1; cell <= sheet.grid.columns * sheet.grid.rows; ++cell)
        sheet.placed.push_back(placedAt(sheet, 0, cell, 0));
    return sheet;
}

Result<LabelSheet> labelSheet(const Read& file, const LabelsAsked& asked, Day on) {
    const auto comb = file.find(asked.comb);
    const auto bottling = comb ? combAsFilling(*comb) : file.find(asked.bottling);
    if (!bottling) return Refusal{Code::NotFound, "bottling", {}};
    auto made = sheetOfGrid(file, asked.grid, on);
    if (!made) return made.error();
    LabelSheet sheet = *std::move(made);
    sheet.bottling = *bottling;
    const int cells = sheet.grid.columns * sheet.grid.rows;
    if (asked.startCell < 1 || asked.startCell > cells)
        return Refusal{
            Code::OutOfRange, "start_cell", {{"low", "1"}, {"high", std::to_string(cells)}}};
    if (asked.count && (*asked.count < 1 || *asked.count > mostLabels))
        return Refusal{
            Code::OutOfRange, "count", {{"low", "1"}, {"high", std::to_string(mostLabels)}}};
    const auto text = labelTextInForce(file, on);
    sheet.textSet = text.has_value();
    if (text && !text->flower.empty()) sheet.flowerGrounds = text->flowerGrounds;
    int next = asked.startCell - 1;
    for (const BottledJars& jars : comb ? combAsJars(*comb) : jarsOfFilling(file, *bottling)) {
        const auto kind = file.find(jars.kind);
        if (!kind || (asked.kind && *asked.kind != kind->id)) continue;
        sheet.labels.push_back(jarLabelOf(*bottling, *kind, text.value_or(LabelText{})));
        const std::int64_t count = std::min(asked.count.value_or(jars.count.value()), mostLabels);
        for (std::int64_t i = 0; i < count; ++i, ++next)
            sheet.placed.push_back(
                placedAt(sheet, next / cells, next % cells + 1, sheet.labels.size() - 1));
    }
    if (sheet.labels.empty()) return Refusal{Code::NotFound, "goods_kind", {}};
    sheet.sheets = sheet.placed.empty() ? 0 : sheet.placed.back().sheet + 1;
    for (const PublishedLabelWord& each : labelWordsFor(text ? text->region : std::string()))
        sheet.reminders.push_back({each, stateOf(each, sheet.labels)});
    return sheet;
}

}  // namespace combwright
