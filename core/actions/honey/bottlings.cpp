#include "core/actions/honey/bottlings.h"

#include <algorithm>

#include "core/actions/honey/goods.h"
#include "core/actions/honey/goods_line.h"
#include "core/actions/honey/vessel_rules.h"
#include "core/actions/honey/weighed_jars.h"
#include "core/actions/storeroom/quarantine.h"
#include "core/places/goods/bottlings.h"
#include "core/storage/queries/labels.h"
#include "core/storage/queries/vessel_holds.h"
#include "core/trade/honey/best_before.h"
#include "core/trade/honey/lot_code.h"

namespace combwright {
namespace {

/// Scales and jars are not that exact: so much less may be drawn than the jars are said to hold.
/// Common practice, no source.
constexpr double drawnMayLack = 0.02;
constexpr int mostFillings = 9999;

/// The how-manieth of its year something is, by day and then by coming.
template <class Record>
int numberInYear(const Read& file, const Record& record) {
    int number = 1;
    for (const Record& each : file.all<Record>()) {
        const bool before =
            each.on != record.on ? each.on < record.on : each.id.number < record.id.number;
        if (before && yearOf(each.on) == yearOf(record.on)) ++number;
    }
    return number;
}

/// The run's number as its name has it, "27-4"; else the how-manieth it is of its year.
int runNumber(const Read& file, const Extraction& run) {
    const std::string& name = run.name.text();
    const std::string year = std::to_string(yearOf(run.on));
    for (const std::string& before : {year + "-", year.substr(2) + "-"}) {
        if (!name.starts_with(before)) continue;
        const std::string number = name.substr(before.size());
        const bool digits = !number.empty() && number.size() <= 4 &&
                            number.find_first_not_of("0123456789") == std::string::npos;
        if (digits && std::stoi(number) > 0) return std::stoi(number);
    }
    return numberInYear(file, run);
}

/// Fillings of the same honey, up to now.
int fillingsOf(const Read& file, const Vessel& vessel) {
    int many = 0;
    const auto bucket = file.find(vessel.bucket);
    for (const Bottling& each : file.all<Bottling>()) {
        if (vessel.lot && each.lot == vessel.lot) ++many;
        const auto other = file.find(each.bucket);
        if (bucket && other && other->extraction == bucket->extraction) ++many;
    }
    return many;
}

bool codeTaken(const Read& file, const std::string& code, const std::optional<Id<Bottling>>& by) {
    const auto same = file.where<Bottling>({is("code", code)});
    return std::any_of(same.begin(), same.end(),
                       [&](const Bottling& each) { return by != each.id; });
}

Result<std::vector<BottledJars>> readJars(const Read& file, const FillJars& said) {
    const auto meant = readGoods(file, said.jars, "jars");
    if (!meant) return meant.error();
    std::vector<BottledJars> lines;
    for (const GoodsMeant& each : *meant) {
        if (!isFilled(each.kind))
            return Refusal{Code::NotAChoice,
                           "jars",
                           {{"value", each.kind.name.text()}, {"choices", "jar of honey"}}};
        if (jarsLineOf(lines, each.kind.id))
            return Refusal{Code::Duplicate, "jars", {{"name", each.kind.name.text()}}};
        BottledJars line;
        line.kind = each.kind.id;
        line.count = Count(each.count);
        lines.push_back(line);
    }
    if (said.spoiled.empty()) return lines;
    const auto spoiled = readGoods(file, said.spoiled, "spoiled");
    if (!spoiled) return spoiled.error();
    for (const GoodsMeant& each : *spoiled) {
        BottledJars* line = jarsLineOf(lines, each.kind.id);
        if (!line) return Refusal{Code::NotFound, "spoiled", {{"name", each.kind.name.text()}}};
        line->spoiled = Count(each.count);
    }
    return lines;
}

Result<void> holdsFree(const std::vector<Hold>& holds, const std::string& name,
                       const std::string& reason, const char* field) {
    if (holds.empty() || !reason.empty()) return {};
    Refusal held = heldBack(field, name, holds.front());
    held.values.emplace_back("honey", name);
    return held;
}

Result<Name> codeFor(const Read& file, const FillJars& said, const Bottling& bottling) {
    if (!said.code.empty()) {
        const auto typed = Name::of(said.code);
        if (!typed) return Refusal{Code::WrongType, "code", {{"wanted", "text"}}};
        return *typed;
    }
    const auto made = codeByRule(file, vesselOf(bottling), said.on, bottling.bestBefore);
    if (!made) return made.error();
    if (!*made) return Refusal{Code::Missing, "code", {}};
    return *Name::of(**made);
}

}  // namespace

bool isFilled(const GoodsKind& kind) {
    return kind.what == GoodsWhat::Jar || kind.what == GoodsWhat::Comb ||
           kind.what == GoodsWhat::Other;
}

Result<void> demandFillingFree(const Read& file, Id<Bottling> id, Day on, const std::string& reason,
                               const char* field) {
    const auto bottling = file.find(id);
    if (!bottling) return {};
    return holdsFree(holdsOn(file, id, on), bottling->code.text(), reason, field);
}

Result<void> demandBottling(const Read& file, const Bottling& bottling) {
    if (codeTaken(file, bottling.code.text(), bottling.id))
        return Refusal{Code::Taken, "code", {{"name", bottling.code.text()}}};
    if (bottling.bestBefore && *bottling.bestBefore < bottling.on)
        return Refusal{Code::Contradiction, "best_before", {{"other", "on_day"}}};
    return {};
}

std::optional<Day> bestBeforeByRule(const Read& file, Day on) {
    const auto text = labelTextInForce(file, on);
    if (!text || !text->months) return std::nullopt;
    const auto day = monthsAfter(on, static_cast<int>(text->months->value()));
    return day ? std::optional(*day) : std::nullopt;
}

Result<std::optional<std::string>> codeByRule(const Read& file, const Vessel& vessel, Day on,
                                              const std::optional<Day>& bestBefore) {
    const auto text = labelTextInForce(file, on);
    const CodeRule keeper = text ? text->code : CodeRule::YearRunFilling;
    if (keeper == CodeRule::Own) return std::optional<std::string>{};
    LotCodeRule rule;
    LotCodeParts parts;
    if (keeper == CodeRule::BestBefore) {
        rule.from = LotCodeRule::From::BestBeforeDay;
        parts.bestBefore = bestBefore;
        const auto code = lotCode(rule, parts);
        if (!code) return code.error();
        // Two fillings of one day are two lots all the same.
        for (int again = 1; again <= mostFillings; ++again) {
            const std::string made = again == 1 ? *code : *code + "/" + std::to_string(again);
            if (!codeTaken(file, made, std::nullopt)) return std::optional(made);
        }
        return std::optional<std::string>{};
    }
    if (const auto lot = file.find(vessel.lot)) {
        // A blend is counted apart from the runs, and says so.
        rule.prefix = "LB";
        parts.year = yearOf(lot->on);
        parts.run = numberInYear(file, *lot);
    } else if (const auto bucket = file.find(vessel.bucket)) {
        const auto run = file.find(bucket->extraction);
        parts.year = yearOf(run->on);
        parts.run = runNumber(file, *run);
    }
    for (parts.filling = fillingsOf(file, vessel) + 1; parts.filling <= mostFillings;
         ++parts.filling) {
        const auto code = lotCode(rule, parts);
        if (!code) return code.error();
        if (!codeTaken(file, *code, std::nullopt)) return std::optional(*code);
    }
    return std::optional<std::string>{};
}

const Fields& FillJars::fields() {
    static const Fields all =
        describe(field<&FillJars::on>("on"), field<&FillJars::bucket>("bucket"),
                 field<&FillJars::lot>("lot"), field<&FillJars::jars>("jars"),
                 field<&FillJars::spoiled>("spoiled"), field<&FillJars::weighed>("weighed"),
                 known<&FillJars::drawn>("drawn"), known<&FillJars::lost>("lost_honey"),
                 field<&FillJars::code>("code"), field<&FillJars::bestBefore>("best_before"),
                 field<&FillJars::reason>("reason"), field<&FillJars::note>("note"));
    return all;
}

Result<Id<Bottling>> FillJars::perform(Write& file) const {
    const auto meant = vesselMeant(file, bucket, lot, on);
    if (!meant) return meant.error();
    const Vessel& vessel = *meant;
    auto lines = readJars(file, *this);
    if (!lines) return lines.error();
    if (auto read = readWeighed(file, weighed, *lines); !read) return read.error();
    const char* vesselField = bucket ? "bucket" : "lot";
    if (auto free = demandMayGo(file, vessel, on, reason, vesselField); !free) return free.error();
    if (drawn && lost) return Refusal{Code::Contradiction, "lost_honey_g", {{"other", "drawn_g"}}};
    Bottling bottling;
    bottling.bucket = bucket;
    bottling.lot = lot;
    bottling.on = on;
    bottling.bestBefore = bestBefore ? bestBefore : bestBeforeByRule(file, on);
    bottling.drawn = drawn;
    bottling.lost = lost;
    bottling.note = note;
    const auto called = codeFor(file, *this, bottling);
    if (!called) return called.error();
    bottling.code = *called;
    const auto holds = holdsOn(file, vessel, on);
    if (!holds.empty()) addOverruled(bottling.note, on, word(holds.front().why), reason);
    if (auto ok = demandBottling(file, bottling); !ok) return ok.error();
    file.add(bottling);
    for (BottledJars& line : *lines) {
        line.bottling = bottling.id;
        file.add(line);
    }
    if (auto ok = demandDrawn(file, bottling); !ok) return ok.error();
    const Mass took = drawnFor(file, bottling).mass.value_or(Mass{});
    if (auto there = demandLedger(file, vessel, "jars", took); !there) return there.error();
    return bottling.id;
}

Result<void> demandDrawn(const Read& file, const Bottling& bottling) {
    const auto inJars = honeyInJars(file, bottling.id);
    const auto taken = bottling.drawn ? bottling.drawn->middle() : std::nullopt;
    if (!inJars || !taken) return {};
    if (*taken < static_cast<double>(inJars->grams()) * (1.0 - drawnMayLack))
        return Refusal{Code::Contradiction, "drawn_g", {{"other", "jars"}}};
    return {};
}

}  // namespace combwright
