#include "core/actions/pull/plan.h"

#include <cstdlib>
#include <utility>

#include "core/places/pull/pull_sheet.h"
#include "core/storage/queries/names.h"

namespace combwright {
namespace {

std::vector<std::string> commaParts(const std::string& text) {
    std::vector<std::string> parts;
    std::size_t from = 0;
    while (from < text.size()) {
        const std::size_t end = std::min(text.find(',', from), text.size());
        if (const auto name = Name::of(std::string_view(text).substr(from, end - from)))
            parts.push_back(name->text());
        from = end + 1;
    }
    return parts;
}

Result<std::vector<Id<Yard>>> yardsNamed(const Read& file, const std::string& names, Day on) {
    std::vector<Id<Yard>> yards;
    for (const std::string& name : commaParts(names)) {
        // A name with a comma in it can only be given by its number.
        if (name.starts_with('#')) {
            const std::int64_t id = std::atoll(name.c_str() + 1);
            if (!file.holds(Yard::table, id))
                return Refusal{Code::NotFound, "yards", {{"name", name}}};
            yards.push_back(Id<Yard>{id});
            continue;
        }
        const auto found = findNamed(file, Yard::table, NameQuery{.name = name, .on = on});
        if (!found) return Refusal{found.error().code, "yards", found.error().values};
        yards.push_back(Id<Yard>{*found});
    }
    if (yards.empty())
        for (const Yard& yard : openYards(file)) yards.push_back(yard.id);
    return yards;
}

/// What parts two boxes is a comma outside the brackets of a reason.
std::vector<std::string> forceParts(const std::string& text) {
    std::vector<std::string> parts;
    std::string part;
    int depth = 0;
    for (const char letter : text + ",") {
        depth += letter == '(' ? 1 : letter == ')' && depth > 0 ? -1 : 0;
        if (letter != ',' || depth > 0) {
            part += letter;
            continue;
        }
        if (const auto name = Name::of(part)) parts.push_back(name->text());
        part.clear();
    }
    if (const auto rest = Name::of(part)) parts.push_back(rest->text());
    return parts;
}

/// "take (no strip was near it)" as verdict and reason.
std::pair<std::string, std::string> verdictAndReason(const std::string& text) {
    const std::size_t open = text.find('(');
    if (open == std::string::npos || text.back() != ')') return {text, {}};
    std::string verdict = text.substr(0, open);
    while (!verdict.empty() && verdict.back() == ' ') verdict.pop_back();
    return {verdict, text.substr(open + 1, text.size() - open - 2)};
}

/// "M06 take, M22 leave"; a box without a mark is named "#12".
Result<PullForced> forcedBoxes(const Read& file, const std::string& text, Day on) {
    PullForced forced;
    for (const std::string& part : forceParts(text)) {
        const std::size_t blank = part.find(' ');
        const std::string mark = part.substr(0, blank);
        const auto [verdict, reason] =
            verdictAndReason(blank == std::string::npos ? "" : part.substr(blank + 1));
        const auto meant = Codec<PullVerdict>::unpack(Value{verdict});
        if (!meant)
            return Refusal{Code::NotAChoice,
                           "force",
                           {{"value", verdict}, {"choices", "take, leave, look first"}}};
        std::int64_t id = 0;
        if (mark.starts_with('#')) {
            id = std::atoll(mark.c_str() + 1);
            if (!file.holds(Box::table, id))
                return Refusal{Code::NotFound, "force", {{"name", mark}}};
        } else {
            const auto found = findNamed(file, Box::table, NameQuery{.name = mark, .on = on});
            if (!found) return Refusal{found.error().code, "force", {{"name", mark}}};
            id = *found;
        }
        if (!forced.emplace(id, ForcedVerdict(*meant, reason)).second)
            return Refusal{Code::Duplicate, "force", {{"name", mark}}};
    }
    return forced;
}

/// What was held back is not taken without saying why.
Result<void> demandReasons(const Read& file, const PullSheet& sheet) {
    for (const PullYardRow& yard : sheet.yards)
        for (const PullHiveRow& hive : yard.hives)
            for (const PullBoxRow& box : hive.boxes)
                if (box.hold && box.verdict == PullVerdict::Take && box.reason.empty())
                    return Refusal{Code::Missing,
                                   "why_take_held",
                                   {{"name", nameOf(file, Box::table, box.box.id.number)}}};
    return {};
}

/// A decision about a box that is on no hive of the plan would be lost without a word.
Result<void> demandInPlan(const Read& file, const PullForced& forced, const PullSheet& sheet) {
    PullForced missing = forced;
    for (const PullYardRow& yard : sheet.yards)
        for (const PullHiveRow& hive : yard.hives)
            for (const PullBoxRow& box : hive.boxes) missing.erase(box.box.id.number);
    if (missing.empty()) return {};
    return Refusal{
        Code::NotFound, "force", {{"name", nameOf(file, Box::table, missing.begin()->first)}}};
}

}  // namespace

const Fields& KeepPlan::fields() {
    static const Fields all =
        describe(field<&KeepPlan::on>("on"), field<&KeepPlan::forDay>("for_day"),
                 field<&KeepPlan::yards>("yards"), part<&KeepPlan::limits>(),
                 field<&KeepPlan::force>("force"), field<&KeepPlan::note>("note"));
    return all;
}

Result<Id<PullPlan>> KeepPlan::perform(Write& file) const {
    if (forDay < on) return Refusal{Code::Contradiction, "for_day", {{"other", "on"}}};
    const auto named = yardsNamed(file, yards, on);
    if (!named) return named.error();
    const auto forced = forcedBoxes(file, force, on);
    if (!forced) return forced.error();
    const PullSheet sheet = reckonPull(pullInput(file, on, {*named, forDay, limits, *forced, {}}));
    if (auto inPlan = demandInPlan(file, *forced, sheet); !inPlan) return inPlan.error();
    if (auto reasons = demandReasons(file, sheet); !reasons) return reasons.error();
    const Id<PullPlan> plan = file.add(PullPlan{{}, on, forDay, limits, note});
    for (const PullYardRow& yard : sheet.yards)
        for (const PullHiveRow& hive : yard.hives)
            for (const PullBoxRow& box : hive.boxes) {
                PullLine line;
                line.plan = plan;
                line.box = box.box.id;
                line.hive = hive.hive.id;
                line.verdict = box.verdict;
                if (box.why) line.why = std::string(key(*box.why));
                if (box.forced) line.why = box.reason;
                if (box.honey) {
                    line.honey =
                        Known<Mass>{Mass::roundedGrams(box.honey->grams), {}, box.honey->how};
                    line.spread = Mass::roundedGrams(box.honey->spreadG);
                }
                if (box.forced) line.forced = true;
                file.add(line);
            }
    return plan;
}

Result<void> demandCrop(const CropNote& crop) {
    if (!crop.mass) return Refusal{Code::Missing, "mass_g", {}};
    if (crop.year.value() < 1900 || crop.year.value() > 2200)
        return Refusal{Code::OutOfRange, "year", {{"low", "1900"}, {"high", "2200"}}};
    return {};
}

const Fields& NoteCrop::fields() {
    static const Fields all =
        describe(field<&NoteCrop::on>("on"), field<&NoteCrop::year>("year"),
                 field<&NoteCrop::hive>("hive"), field<&NoteCrop::yard>("yard"),
                 known<&NoteCrop::mass>("mass"), field<&NoteCrop::note>("note"));
    return all;
}

Result<Id<CropNote>> NoteCrop::perform(Write& file) const {
    const CropNote crop{{}, year.value_or(Count(yearOf(on))), on, hive, yard, mass, note};
    if (auto ok = demandCrop(crop); !ok) return ok.error();
    return file.add(CropNote(crop));
}

}  // namespace combwright
