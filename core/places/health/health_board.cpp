#include "core/places/health/health_board.h"

#include <algorithm>

#include "core/places/yard/yard_box.h"
#include "core/storage/queries/hive_days.h"
#include "core/storage/queries/treatments.h"

namespace combwright {
HealthBoard healthBoard(const Read& file, const Yard& yard, Day on) {
    HealthBoard board;
    board.yard = yard;
    board.on = on;
    board.medicines = medicinesOn(file, on);
    board.treated = treatedBoxes(file, on);
    for (HiveMites& each : mites(file, yard.id, on)) {
        HealthRow row;
        const Id<Hive> hive = each.hive.id;
        row.lives = livedIn(file, hive, on).value_or(true) && !foundDeadOn(file, hive, on);
        bool washed = false;
        for (const MiteSample& sample : each.samples) {
            const FindingMethod method = sample.finding.method;
            if (!row.board && sample.perDay) row.board = sample;
            if (!row.droneBrood && method == FindingMethod::DroneBrood) row.droneBrood = sample;
            if (washed || (method != FindingMethod::Wash && method != FindingMethod::SugarRoll))
                continue;
            washed = true;
            if (lacksItsBees(sample.finding)) row.uncounted = sample;
        }
        if (!each.otherPests.empty()) row.other = each.otherPests.front();
        row.running = runningIn(file, hive, on);
        row.supers = supersBackOf(file, hive, on);
        row.holds = holdsOn(file, hive);
        const bool reached =
            each.standing == HiveMites::Standing::At || each.standing == HiveMites::Standing::Over;
        // What a sample said too long ago it says of then, not of now.
        board.lineReached += row.lives && reached && !each.old;
        board.sampledLongAgo += row.lives && each.sample && each.old;
        board.notSampled += row.lives && each.standing == HiveMites::Standing::NoSample;
        board.underTreatment += !row.running.empty();
        row.mites = std::move(each);
        board.rows.push_back(std::move(row));
    }
    return board;
}

TreatOutlook treatOutlook(const Read& file, const Medicine& medicine,
                          const std::vector<Hive>& hives, const std::optional<Number>& amount,
                          Day on) {
    TreatOutlook outlook;
    outlook.left = useOf(file, medicine, on).left();
    if (amount) outlook.takes = amount->value() * static_cast<double>(hives.size());
    if (outlook.takes && outlook.left) outlook.leftAfter = *outlook.left - *outlook.takes;
    for (const Hive& hive : hives) {
        if (supersStood(file, hive.id, on) == true) outlook.supersOn.push_back(hive.mark.text());
        const auto given = treatmentsIn(file, hive.id, on);
        if (std::any_of(given.begin(), given.end(),
                        [&](const Treatment& each) { return each.medicine == medicine.id; }))
            outlook.hasItIn.push_back(hive.mark.text());
    }
    return outlook;
}

}  // namespace combwright
