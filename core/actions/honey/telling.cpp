#include "core/actions/honey/telling.h"

#include <algorithm>
#include <cmath>

#include "core/catalogue/honey_tables.h"
#include "core/storage/queries/labels.h"
#include "core/trade/honey/best_before.h"

namespace combwright {
namespace {

Refusal noSuchChoice(const char* field, const std::string& given,
                     const std::vector<std::string>& choices) {
    std::string all;
    for (const std::string& each : choices) all += (all.empty() ? "" : ", ") + each;
    return {Code::NotAChoice, field, {{"value", given}, {"choices", all}}};
}

Result<void> demandLine(const std::string& line, const char* field) {
    if (line.size() <= longestLabelLine) return {};
    return Refusal{
        Code::OutOfRange, field, {{"low", "1"}, {"high", std::to_string(longestLabelLine)}}};
}

/// Given, kept as it was, or taken away.
void takeLabelLine(const std::string& given, std::string& line) {
    if (given == "-")
        line.clear();
    else if (!given.empty())
        line = given;
}

Result<void> demandLabelTables(const LabelText& text) {
    const auto profiles = honeyLimitProfiles();
    if (!text.limits.empty() &&
        std::find(profiles.begin(), profiles.end(), text.limits) == profiles.end())
        return noSuchChoice("limits_edition", text.limits, profiles);
    const auto regions = labelRegions();
    if (!text.region.empty() &&
        std::find(regions.begin(), regions.end(), text.region) == regions.end())
        return noSuchChoice("label_region", text.region, regions);
    return {};
}

}  // namespace

const Fields& SetLabels::fields() {
    static const Fields all = describe(
        field<&SetLabels::on>("on"), field<&SetLabels::producer>("producer"),
        field<&SetLabels::address>("address"), field<&SetLabels::origin>("origin"),
        field<&SetLabels::months>("months"), field<&SetLabels::code>("code_rule"),
        field<&SetLabels::flower>("flower"), field<&SetLabels::flowerGrounds>("flower_grounds"),
        field<&SetLabels::more>("more"), field<&SetLabels::limits>("limits_edition"),
        field<&SetLabels::region>("label_region"));
    return all;
}

Result<Id<LabelText>> SetLabels::perform(Write& file) const {
    const auto before = labelTextInForce(file, on);
    LabelText text = before.value_or(LabelText{});
    takeLabelLine(producer, text.producer);
    takeLabelLine(address, text.address);
    takeLabelLine(origin, text.origin);
    takeLabelLine(flower, text.flower);
    takeLabelLine(flowerGrounds, text.flowerGrounds);
    takeLabelLine(more, text.more);
    takeLabelLine(limits, text.limits);
    takeLabelLine(region, text.region);
    if (months) text.months = months;
    if (code) text.code = *code;
    for (const auto& [line, field] :
         {std::pair(&text.producer, "producer"), std::pair(&text.address, "address"),
          std::pair(&text.origin, "origin"), std::pair(&text.flower, "flower"),
          std::pair(&text.flowerGrounds, "flower_grounds"), std::pair(&text.more, "more")})
        if (auto ok = demandLine(*line, field); !ok) return ok.error();
    if (text.months && (*text.months < Count(1) || *text.months > Count(mostKeepMonths)))
        return Refusal{
            Code::OutOfRange, "months", {{"low", "1"}, {"high", std::to_string(mostKeepMonths)}}};
    if (text.flower.empty() && flower == "-") text.flowerGrounds.clear();
    if (!text.flower.empty() && text.flowerGrounds.empty())
        return Refusal{Code::Missing, "flower_grounds", {}};
    // What was said of one flower does not speak for another.
    if (before && !text.flower.empty() && text.flower != before->flower && flowerGrounds.empty())
        return Refusal{Code::Missing, "flower_grounds", {}};
    if (auto ok = demandLabelTables(text); !ok) return ok.error();
    if (before && toRow(*before) == toRow(text)) return Refusal{Code::NothingToDo, {}, {}};
    if (!before && toRow(text) == toRow(LabelText{})) return Refusal{Code::NothingToDo, {}, {}};
    if (before && before->since == on) {
        file.change(text);
        return text.id;
    }
    text.id = {};
    text.since = on;
    return file.add(text);
}

const Fields& MoveLabels::fields() {
    static const Fields all =
        describe(field<&MoveLabels::on>("on"), field<&MoveLabels::grid>("grid"),
                 field<&MoveLabels::right>("right_mm"), field<&MoveLabels::down>("down_mm"));
    return all;
}

Result<Id<LabelOffset>> MoveLabels::perform(Write& file) const {
    std::vector<std::string> grids;
    for (const PublishedLabelGrid& each : publishedLabelGrids()) grids.push_back(each.id);
    if (!findLabelGrid(grid)) return noSuchChoice("grid", grid, grids);
    const auto before = labelOffsetInForce(file, grid, on);
    LabelOffset offset = before.value_or(LabelOffset{{}, *Name::of(grid), on, {}, {}});
    if (right) offset.right = *right;
    if (down) offset.down = *down;
    for (const auto& [value, field] :
         {std::pair(offset.right, "right_mm"), std::pair(offset.down, "down_mm")})
        if (std::abs(value.value()) > mostLabelOffsetMm)
            return Refusal{Code::OutOfRange, field, {{"low", "-30"}, {"high", "30"}}};
    const bool isNothing = before ? toRow(*before) == toRow(offset)
                                  : offset.right == Number() && offset.down == Number();
    if (isNothing) return Refusal{Code::NothingToDo, {}, {}};
    if (before && before->since == on) {
        file.change(offset);
        return offset.id;
    }
    offset.id = {};
    offset.since = on;
    return file.add(offset);
}

const Fields& KeepSheet::fields() {
    static const Fields all =
        describe(field<&KeepSheet::on>("on"), field<&KeepSheet::sheet>("what_sheet"),
                 field<&KeepSheet::subject>("subject"), field<&KeepSheet::text>("as_it_read"));
    return all;
}

Result<Id<KeptSheet>> KeepSheet::perform(Write& file) const {
    if (text.empty()) return Refusal{Code::Missing, "as_it_read", {}};
    for (const KeptSheet& each :
         file.where<KeptSheet>({is("what_sheet", sheet), is("subject", subject)}))
        if (each.on == on && each.text == text) return Refusal{Code::NothingToDo, {}, {}};
    return file.add(KeptSheet{{}, on, sheet, subject, text});
}

}  // namespace combwright
