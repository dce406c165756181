#include "core/actions/yard/weighings.h"

#include <algorithm>
#include <charconv>
#include <set>

#include "core/actions/storeroom/marked_boxes.h"
#include "core/actions/yard/hive_list.h"

namespace combwright {
namespace {

constexpr double gramsPerKilogram = 1000;
constexpr double gramsPerPoundWeighed = 453.59237;

/// Digits with at most one point: no sign, no exponent.
std::optional<double> plainFigure(std::string_view text) {
    if (text.empty() || text.find_first_not_of("0123456789.") != std::string_view::npos)
        return std::nullopt;
    double number = 0;
    const auto read = std::from_chars(text.data(), text.data() + text.size(), number);
    if (read.ec != std::errc() || read.ptr != text.data() + text.size()) return std::nullopt;
    return number;
}

std::optional<Known<Mass>> weighedMass(std::string_view text, double gramsPerUnit) {
    const auto number = plainFigure(text);
    if (!number || *number * gramsPerUnit > static_cast<double>(billion)) return std::nullopt;
    return Known<Mass>{Mass::roundedGrams(*number * gramsPerUnit), std::nullopt, How::Weighed};
}

struct ListedReading {
    std::string mark;
    HiveWeighing weighing;
};

/// "H3 18+19 without 17.5 lb": the mark, then sides with a plus between or the whole.
std::optional<ListedReading> readingIn(const std::string& part) {
    auto words = wordsOf(part);
    double unit = gramsPerKilogram;
    if (!words.empty() && (words.back() == "lb" || words.back() == "kg")) {
        if (words.back() == "lb") unit = gramsPerPoundWeighed;
        words.pop_back();
    }
    ListedReading listed;
    if (words.size() > 3 && words[words.size() - 2] == "without") {
        listed.weighing.without = weighedMass(words.back(), unit);
        if (!listed.weighing.without) return std::nullopt;
        words.resize(words.size() - 2);
    }
    if (words.size() < 2) return std::nullopt;
    const std::string& figure = words.back();
    const std::size_t plus = figure.find('+');
    if (plus == std::string::npos) {
        listed.weighing.whole = weighedMass(figure, unit);
        if (!listed.weighing.whole) return std::nullopt;
    } else {
        listed.weighing.left = weighedMass(std::string_view(figure).substr(0, plus), unit);
        listed.weighing.right = weighedMass(std::string_view(figure).substr(plus + 1), unit);
        if (!listed.weighing.left || !listed.weighing.right) return std::nullopt;
    }
    listed.mark = joinedWords(words, 0, words.size() - 1);
    return listed;
}

Result<Id<HiveWeighing>> keepWeighing(Write& file, const HiveWeighing& weighing) {
    if (auto ok = demandWeighing(weighing); !ok) return ok.error();
    const auto same =
        file.where<HiveWeighing>({is("hive", weighing.hive), is("on_day", weighing.on)});
    if (same.empty()) {
        HiveWeighing fresh = weighing;
        return file.add(fresh);
    }
    HiveWeighing merged = same.front();
    // Put on a platform after all, the sides have had their say, and the other way round.
    if (weighing.whole) merged.left = merged.right = std::nullopt;
    if (weighing.left || weighing.right) merged.whole.reset();
    if (weighing.left) merged.left = weighing.left;
    if (weighing.right) merged.right = weighing.right;
    if (weighing.whole) merged.whole = weighing.whole;
    if (weighing.without) merged.without = weighing.without;
    if (!weighing.note.empty()) merged.note = weighing.note;
    file.change(merged);
    return merged.id;
}

}  // namespace

Result<void> demandWeighing(const HiveWeighing& weighing) {
    if (!weighing.left && !weighing.right && !weighing.whole)
        return Refusal{Code::Missing, "left_g", {}};
    if (weighing.whole && (weighing.left || weighing.right))
        return Refusal{
            Code::Contradiction, "whole_g", {{"other", weighing.left ? "left_g" : "right_g"}}};
    const std::pair<const char*, const std::optional<Known<Mass>>*> readings[] = {
        {"left_g", &weighing.left}, {"right_g", &weighing.right}, {"whole_g", &weighing.whole}};
    for (const auto& [field, reading] : readings)
        if (*reading && (*reading)->value && (*reading)->value->grams() == 0)
            return Refusal{Code::OutOfRange, field, {{"low", "1"}, {"high", "inf"}}};
    return {};
}

const Fields& WeighHive::fields() {
    static const Fields all =
        describe(field<&WeighHive::on>("on"), field<&WeighHive::hive>("hive"),
                 known<&WeighHive::left>("left"), known<&WeighHive::right>("right"),
                 known<&WeighHive::whole>("whole"), known<&WeighHive::without>("without"),
                 field<&WeighHive::readings>("readings"), field<&WeighHive::yard>("yard"),
                 field<&WeighHive::note>("note"));
    return all;
}

Result<WeighHive::Answer> WeighHive::perform(Write& file) const {
    Answer kept;
    if (hive) {
        if (!readings.empty()) return Refusal{Code::Contradiction, "readings", {{"other", "hive"}}};
        const auto stand = hiveStandingOn(file, *hive, on, "hive");
        if (!stand) return stand.error();
        auto id =
            keepWeighing(file, HiveWeighing{{}, *hive, on, left, right, whole, without, note});
        if (!id) return id.error();
        kept.push_back(*id);
        return kept;
    }
    if (readings.empty()) return Refusal{Code::Missing, "hive", {}};
    for (const auto& [field, given] : {std::pair{"left_g", left.has_value()},
                                       {"right_g", right.has_value()},
                                       {"whole_g", whole.has_value()},
                                       {"without_g", without.has_value()}})
        if (given) return Refusal{Code::Contradiction, field, {{"other", "readings"}}};
    if (yard && !file.find(*yard)) return Refusal{Code::NotFound, "yard", {}};
    std::set<std::int64_t> weighed;
    for (const std::string& part : listedParts(readings)) {
        auto listed = readingIn(part);
        if (!listed)
            return Refusal{
                Code::WrongType, "readings", {{"value", part}, {"wanted", "H1 20.5+21"}}};
        const auto stand = hiveMarked(file, listed->mark, yard, on, "readings");
        if (!stand) return stand.error();
        if (!weighed.insert(stand->id.number).second)
            return Refusal{Code::Duplicate, "readings", {{"name", listed->mark}}};
        listed->weighing.hive = stand->id;
        listed->weighing.on = on;
        listed->weighing.note = note;
        auto id = keepWeighing(file, listed->weighing);
        if (!id) return Refusal{id.error().code, "readings", id.error().values};
        kept.push_back(*id);
    }
    if (kept.empty()) return Refusal{Code::Missing, "readings", {}};
    return kept;
}

const Fields& SetTare::fields() {
    static const Fields all = describe(field<&SetTare::on>("on"), field<&SetTare::hive>("hive"),
                                       known<&SetTare::tare>("tare"));
    return all;
}

Result<Id<Hive>> SetTare::perform(Write& file) const {
    auto stand = hiveStandingOn(file, hive, on, "hive");
    if (!stand) return stand.error();
    if (stand->tare == tare)
        return Refusal{Code::NothingToDo, "tare_g", {{"name", stand->mark.text()}}};
    if (tare && tare->value && tare->value->grams() == 0)
        return Refusal{Code::OutOfRange, "tare_g", {{"low", "1"}, {"high", "inf"}}};
    Hive changed = *stand;
    changed.tare = tare;
    file.change(changed);
    return hive;
}

}  // namespace combwright
