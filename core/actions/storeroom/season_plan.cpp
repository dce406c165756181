#include "core/actions/storeroom/season_plan.h"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <cstdio>
#include <utility>

namespace combwright {
namespace {

constexpr double mostOfOne = 100;

Refusal refusedItem(Code code, std::vector<std::pair<std::string, std::string>> values) {
    return Refusal{code, "items", std::move(values)};
}

std::vector<std::string> itemWords(std::string_view text) {
    std::vector<std::string> words;
    std::string word;
    for (const char c : std::string(text) + ' ') {
        if (c != ' ' && c != '\t') {
            // The per cent sign may stand off its number, or against it.
            if (c == '%' && !word.empty()) words.push_back(std::exchange(word, {}));
            word += c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
            continue;
        }
        if (!word.empty()) words.push_back(std::exchange(word, {}));
    }
    return words;
}

bool isPlanDigit(char c) { return c >= '0' && c <= '9'; }

/// The parts between commas; a comma between two digits belongs to a number.
std::vector<std::string_view> itemParts(std::string_view text) {
    std::vector<std::string_view> parts;
    std::size_t from = 0;
    for (std::size_t at = 0; at <= text.size(); ++at) {
        const bool end = at == text.size() || text[at] == ';' || text[at] == ',';
        const bool decimal = at > 0 && at + 1 < text.size() && text[at] == ',' &&
                             isPlanDigit(text[at - 1]) && isPlanDigit(text[at + 1]);
        if (!end || decimal) continue;
        parts.push_back(text.substr(from, at - from));
        from = at + 1;
    }
    return parts;
}

/// A number without a sign, with point or comma.
std::optional<double> planNumber(std::string word) {
    std::replace(word.begin(), word.end(), ',', '.');
    if (word.empty() || word.size() > 9 || !isPlanDigit(word.front())) return std::nullopt;
    double number = 0;
    const auto read =
        std::from_chars(word.data(), word.data() + word.size(), number, std::chars_format::fixed);
    if (read.ec != std::errc() || read.ptr != word.data() + word.size()) return std::nullopt;
    return number;
}

std::string itemChoices() {
    std::string all;
    for (const std::string_view word : Choices<EquipmentItem>::words)
        all += (all.empty() ? "" : ", ") + std::string(word);
    return all;
}

std::optional<EquipmentItem> itemNamed(std::string name) {
    const auto& words = Choices<EquipmentItem>::words;
    for (int again = 0; again < 2; ++again) {
        const auto found = std::find(words.begin(), words.end(), name);
        if (found != words.end()) return static_cast<EquipmentItem>(found - words.begin());
        // "floors" and "nucleus boxes" are what one says.
        if (name.ends_with("boxes"))
            name.resize(name.size() - 2);
        else if (name.ends_with('s'))
            name.pop_back();
    }
    return std::nullopt;
}

Result<PlannedItem> planItemOf(std::string_view part) {
    const std::vector<std::string> words = itemWords(part);
    std::size_t at = 0;
    std::string name;
    for (; at < words.size() && !isPlanDigit(words[at].front()) && words[at] != "pack"; ++at)
        name += (name.empty() ? "" : " ") + words[at];
    const auto item = itemNamed(name);
    if (!item) return refusedItem(Code::NotAChoice, {{"value", name}, {"choices", itemChoices()}});
    PlannedItem planned;
    planned.item = *item;
    std::size_t numbers = 0;
    while (at < words.size()) {
        const bool pack = words[at] == "pack" || words[at] == "packs";
        if (pack) ++at;
        if (pack && at < words.size() && words[at] == "of") ++at;
        const auto number = at < words.size() ? planNumber(words[at]) : std::nullopt;
        if (!number)
            return refusedItem(Code::WrongType,
                               {{"wanted", "a number"},
                                {"value", at < words.size() ? words[at] : std::string(part)}});
        ++at;
        const bool share = at < words.size() && words[at] == "%";
        if (share) ++at;
        if (*number > mostOfOne && !pack)
            return refusedItem(Code::OutOfRange, {{"low", "0"}, {"high", "100"}});
        if (pack) {
            if (*number < 1 || *number > 100000 || *number != std::floor(*number))
                return refusedItem(Code::OutOfRange, {{"low", "1"}, {"high", "100000"}});
            planned.pack = Count(static_cast<std::int64_t>(*number));
        } else if (share) {
            planned.spare = Share::rounded(*number / 100.0);
        } else if (numbers < 2) {
            (numbers == 0 ? planned.perColony : planned.perSplit) = Number::rounded(*number);
            ++numbers;
        } else {
            return refusedItem(Code::WrongType, {{"wanted", "for each colony, for each split"},
                                                 {"value", std::string(part)}});
        }
    }
    if (numbers == 0) return Refusal{Code::Missing, "per_colony", {{"name", name}}};
    return planned;
}

std::string plainNumber(double number) {
    char text[32];
    std::snprintf(text, sizeof text, "%.6g", number);
    return text;
}

Refusal planRange(const char* key, const char* low, const char* high) {
    return {Code::OutOfRange, key, {{"low", low}, {"high", high}}};
}

struct PlanLimit {
    const char* key;
    std::optional<Count> value;
    std::int64_t low;
    std::int64_t high;
};

/// Leaves the plan's items as they are listed, writing only what differs.
bool settleItems(Write& file, Id<SeasonPlan> plan, const std::vector<PlannedItem>& wanted) {
    bool changed = false;
    const auto present = file.where<PlanItem>({is("plan", plan)});
    for (std::size_t i = 0; i < std::max(present.size(), wanted.size()); ++i) {
        if (i >= wanted.size()) {
            file.remove(present[i].id);
            changed = true;
            continue;
        }
        const PlannedItem& each = wanted[i];
        PlanItem item{i < present.size() ? present[i].id : Id<PlanItem>{},
                      plan,
                      each.item,
                      each.perColony,
                      each.perSplit,
                      each.spare,
                      each.pack};
        if (i >= present.size()) {
            file.add(item);
            changed = true;
        } else if (toRow(item) != toRow(present[i])) {
            file.change(item);
            changed = true;
        }
    }
    return changed;
}

}  // namespace

Result<std::vector<PlannedItem>> parsePlanItems(std::string_view text) {
    std::vector<PlannedItem> items;
    for (const std::string_view part : itemParts(text)) {
        if (itemWords(part).empty()) continue;
        auto item = planItemOf(part);
        if (!item) return item.error();
        for (const PlannedItem& each : items)
            if (each.item == item->item)
                return refusedItem(
                    Code::Duplicate,
                    {{"name",
                      std::string(
                          Choices<EquipmentItem>::words[static_cast<std::size_t>(each.item)])}});
        items.push_back(*std::move(item));
    }
    return items;
}

std::string planItemsText(const std::vector<PlanItem>& items) {
    std::string text;
    for (const PlanItem& each : items) {
        text += (text.empty() ? "" : ", ") +
                std::string(Choices<EquipmentItem>::words[static_cast<std::size_t>(each.item)]) +
                " " + plainNumber(each.perColony ? each.perColony->value() : 0);
        if (each.perSplit) text += " " + plainNumber(each.perSplit->value());
        if (each.spare) text += " " + plainNumber(each.spare->value() * 100) + " %";
        if (each.pack) text += " pack " + std::to_string(each.pack->value());
    }
    return text;
}

Result<void> demandPlan(const SeasonPlan& plan) {
    const PlanLimit limits[] = {{"year", plan.year, 1900, 2200},
                                {"colonies", plan.colonies, 0, 10000},
                                {"splits", plan.splits, 0, 10000},
                                {"frames_per_super", plan.framesPerSuper, 1, 30},
                                {"undrawn_per_super", plan.undrawnPerSuper, 1, 30},
                                {"brood_per_split", plan.broodPerSplit, 0, 20},
                                {"frames_per_split", plan.framesPerSplit, 0, 100},
                                {"frame_pack", plan.framePack, 1, 100000},
                                {"foundation_pack", plan.foundationPack, 1, 100000}};
    for (const PlanLimit& each : limits)
        if (each.value && (each.value->value() < each.low || each.value->value() > each.high))
            return planRange(each.key, std::to_string(each.low).c_str(),
                             std::to_string(each.high).c_str());
    if (plan.supersPerColony &&
        (plan.supersPerColony->value() < 0 || plan.supersPerColony->value() > 20))
        return planRange("supers_per_colony", "0", "20");
    if (plan.spare && (plan.spare->value() < 0 || plan.spare->value() > 1))
        return planRange("spare_share", "0", "1");
    if (plan.supersPerColony.has_value() != plan.superKind.has_value())
        return Refusal{Code::Missing, plan.superKind ? "supers_per_colony" : "super_kind", {}};
    if (plan.broodPerSplit && !plan.broodKind) return Refusal{Code::Missing, "brood_kind", {}};
    if (plan.broodKind && !plan.broodPerSplit) return Refusal{Code::Missing, "brood_per_split", {}};
    return {};
}

Result<void> demandPlanItem(const PlanItem& item) {
    if (!item.perColony && !item.perSplit) return Refusal{Code::Missing, "per_colony", {}};
    for (const auto& [key, number] :
         {std::pair("per_colony", item.perColony), std::pair("per_split", item.perSplit)})
        if (number && (number->value() < 0 || number->value() > mostOfOne))
            return planRange(key, "0", "100");
    if (item.spare && (item.spare->value() < 0 || item.spare->value() > 1))
        return planRange("spare_share", "0", "1");
    if (item.pack && (item.pack->value() < 1 || item.pack->value() > 100000))
        return planRange("pack", "1", "100000");
    return {};
}

const Fields& PlanSeason::fields() {
    static const Fields all =
        describe(field<&PlanSeason::on>("on"), field<&PlanSeason::year>("year"),
                 field<&PlanSeason::colonies>("colonies"), field<&PlanSeason::splits>("splits"),
                 field<&PlanSeason::superKind>("super_kind"),
                 field<&PlanSeason::supersPerColony>("supers_per_colony"),
                 field<&PlanSeason::framesPerSuper>("frames_per_super"),
                 field<&PlanSeason::undrawnPerSuper>("undrawn_per_super"),
                 field<&PlanSeason::broodKind>("brood_kind"),
                 field<&PlanSeason::broodPerSplit>("brood_per_split"),
                 field<&PlanSeason::framesPerSplit>("frames_per_split"),
                 field<&PlanSeason::spare>("spare"), field<&PlanSeason::framePack>("frame_pack"),
                 field<&PlanSeason::foundationPack>("foundation_pack"),
                 field<&PlanSeason::items>("items"), field<&PlanSeason::note>("note"));
    return all;
}

Result<Id<SeasonPlan>> PlanSeason::perform(Write& file) const {
    SeasonPlan plan;
    if (auto present = file.first<SeasonPlan>({is("year", year)})) plan = *std::move(present);
    const SeasonPlan before = plan;
    plan.year = year;
    plan.colonies = colonies;
    plan.splits = splits;
    plan.superKind = superKind;
    plan.supersPerColony = supersPerColony;
    plan.framesPerSuper = framesPerSuper;
    plan.undrawnPerSuper = undrawnPerSuper;
    plan.broodKind = broodKind;
    plan.broodPerSplit = broodPerSplit;
    plan.framesPerSplit = framesPerSplit;
    plan.spare = spare;
    plan.framePack = framePack;
    plan.foundationPack = foundationPack;
    plan.note = note;
    if (auto ok = demandPlan(plan); !ok) return ok.error();
    const auto planned = parsePlanItems(items);
    if (!planned) return planned.error();
    const bool isNew = !plan.id;
    const bool differs = toRow(plan) != toRow(before);
    if (isNew) {
        plan.on = on;
        file.add(plan);
    }
    const bool itemsDiffer = settleItems(file, plan.id, *planned);
    if (!isNew && !differs && !itemsDiffer) return Refusal{Code::NothingToDo, "year", {}};
    if (!isNew) {
        plan.on = on;
        file.change(plan);
    }
    return plan.id;
}

}  // namespace combwright
