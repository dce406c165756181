#include "core/actions/health/findings.h"

#include <algorithm>

#include "core/actions/health/meant_hives.h"
#include "core/model/season_info.h"
#include "core/storage/queries/holds.h"
#include "core/trade/colony/mite_rate.h"

namespace combwright {
namespace {

/// Refused where a count is below nothing, or where none was looked at.
Result<void> demandCounted(const std::optional<Known<Count>>& counted, const char* field,
                           std::int64_t least) {
    if (!counted || !counted->value) return {};
    if (counted->value->value() < 0) return Refusal{Code::Negative, field, {}};
    const Count most = counted->to.value_or(*counted->value);
    if (counted->value->value() < least || most.value() > mostBeesInSample)
        return Refusal{
            Code::OutOfRange,
            field,
            {{"low", std::to_string(least)}, {"high", std::to_string(mostBeesInSample)}}};
    return {};
}

Result<void> demandNoMoreThan(const std::optional<Known<Count>>& mites,
                              const std::optional<Known<Count>>& of) {
    if (!mites || !mites->value || !of || !of->value) return {};
    const Count most = of->to.value_or(*of->value);
    if (mites->to.value_or(*mites->value) <= most) return {};
    return Refusal{Code::TooMany, "mites", {{"most", std::to_string(most.value())}}};
}

bool nothingSaid(const Finding& finding) {
    return !finding.mites && !finding.level && finding.signs == FieldSigns{} &&
           finding.note.empty();
}

/// The colony that lives there, or lived there last: the disease is in what it left, too.
void quarantineFound(Write& file, Id<Hive> hive, const std::optional<Id<Box>>& box, Day on) {
    const HeldThings held = heldThings(file, on);
    const auto free = [](const std::vector<Hold>& holds) {
        return std::none_of(holds.begin(), holds.end(), quarantines);
    };
    const auto put = [&](Hold hold) {
        hold.why = HoldWhy::SuspectedDisease;
        hold.since = on;
        file.add(hold);
    };
    if (const auto colony = lastColonyIn(file, hive, on)) {
        const auto holds = held.colonies.find(colony->id.number);
        if (holds == held.colonies.end() || free(holds->second)) {
            Hold hold;
            hold.colony = colony->id;
            put(hold);
        }
    }
    if (box && free(held.of(*box))) {
        Hold hold;
        hold.box = *box;
        put(hold);
    }
}

}  // namespace

Result<void> demandFinding(const Finding& finding) {
    if (nothingSaid(finding))
        return Refusal{Code::Missing, finding.what == Pest::Varroa ? "mites" : "level", {}};
    if (auto good = demandCounted(finding.mites, "mites", 0); !good) return good;
    if (auto good = demandCounted(finding.bees, "bees", 1); !good) return good;
    if (auto good = demandCounted(finding.cells, "cells", 1); !good) return good;
    if (finding.daysOnBoard &&
        (finding.daysOnBoard->value() < 1 || finding.daysOnBoard->value() > 366))
        return Refusal{Code::OutOfRange, "days_on_board", {{"low", "1"}, {"high", "366"}}};
    if (finding.daysOnBoard && finding.method != FindingMethod::Board)
        return Refusal{Code::Contradiction, "days_on_board", {{"other", "method"}}};
    if (finding.cells && finding.method != FindingMethod::DroneBrood)
        return Refusal{Code::Contradiction, "cells", {{"other", "method"}}};
    if (auto fits = demandNoMoreThan(finding.mites, finding.bees); !fits) return fits;
    return demandNoMoreThan(finding.mites, finding.cells);
}

const Fields& RecordFinding::fields() {
    static const Fields all = describe(
        field<&RecordFinding::on>("on"), field<&RecordFinding::hive>("hive"),
        field<&RecordFinding::what>("what"), field<&RecordFinding::method>("method"),
        known<&RecordFinding::mites>("mites"), known<&RecordFinding::bees>("bees"),
        field<&RecordFinding::daysOnBoard>("days_on_board"), known<&RecordFinding::cells>("cells"),
        field<&RecordFinding::level>("level"), field<&RecordFinding::box>("box"),
        part<&RecordFinding::signs>(), field<&RecordFinding::note>("note"));
    return all;
}

Result<Id<Finding>> RecordFinding::perform(Write& file) const {
    const auto stand = file.find(hive);
    if (!stand) return Refusal{Code::NotFound, "hive", {}};
    if (auto stands = demandStands(*stand, on, "hive", "on"); !stands) return stands.error();
    Finding finding;
    finding.hive = hive;
    finding.on = on;
    finding.what = what;
    finding.method = method;
    finding.mites = mites;
    finding.bees = bees;
    finding.note = note;
    finding.daysOnBoard = daysOnBoard;
    finding.level = level;
    finding.box = box;
    finding.cells = cells;
    finding.signs = signs;
    // Suspicion needs no number: that one suspects is what is said.
    if (what != Pest::BroodDiseaseSuspected || !nothingSaid(finding))
        if (auto good = demandFinding(finding); !good) return good.error();
    if (what == Pest::BroodDiseaseSuspected) quarantineFound(file, hive, box, on);
    return file.add(finding);
}

}  // namespace combwright
