#include "app/cli/room_json.h"

#include "core/exchange/or_null.h"
#include "core/words/words.h"

namespace combwright::cli {
namespace {

QJsonValue ifKnown(bool known, double number) { return known ? QJsonValue(number) : QJsonValue(); }

QJsonObject whatIfObject(const WhatIf& what) {
    return {{QStringLiteral("last_load_ends_min"), what.lastLoadEndsMin},
            {QStringLiteral("done_min"), what.doneMin},
            {QStringLiteral("saves_min"), what.doneSavesMin}};
}

QJsonArray leftOutArray(const std::vector<KindLeftOut>& kinds) {
    QJsonArray array;
    for (const KindLeftOut& each : kinds)
        array.append(QJsonObject{{QStringLiteral("kind"), fromUtf8(each.kind)},
                                 {QStringLiteral("frames"), static_cast<qint64>(each.frames)}});
    return array;
}

}  // namespace

QJsonObject loadObject(const SheetLoad& load) {
    QJsonArray places;
    QJsonArray hefts;
    bool felt = false;
    for (const auto& place : load.places) {
        places.append(place ? QJsonValue(fromUtf8(place->box)) : QJsonValue());
        const bool said = place && place->heft;
        hefts.append(said ? QJsonValue(fromUtf8(word(*place->heft))) : QJsonValue());
        felt = felt || said;
    }
    QJsonObject object{
        {QStringLiteral("load"), static_cast<qint64>(load.number)},
        {QStringLiteral("lot"), fromUtf8(load.lot)},
        {QStringLiteral("frames"), static_cast<qint64>(load.frames)},
        {QStringLiteral("slots"), places},
        {QStringLiteral("start_offset_g"), ifKnown(load.startKnown, load.offset.startG)},
        {QStringLiteral("end_offset_g"), ifKnown(load.endKnown, load.offset.endG)},
        {QStringLiteral("doubt_g"), ifKnown(load.doubtKnown, load.doubtG)},
        {QStringLiteral("end_doubt_g"), ifKnown(load.endDoubtKnown, load.endDoubtG)}};
    if (felt) object.insert(QStringLiteral("hefts"), hefts);
    if (load.ran) object.insert(QStringLiteral("ran"), fromUtf8(word(*load.ran)));
    return object;
}

QJsonObject machineObject(const LoadSheet& sheet) {
    QJsonObject slotsOf;
    for (const auto& [kind, many] : sheet.slotsOfKind)
        slotsOf.insert(fromUtf8(kind), static_cast<qint64>(many));
    return {{QStringLiteral("name"),
             sheet.machine.machine ? QJsonValue(fromUtf8(sheet.machine.name())) : QJsonValue()},
            {QStringLiteral("slots_of_kind"), slotsOf},
            {QStringLiteral("slots_said"), sheet.machine.slotsSaid},
            {QStringLiteral("radius_mm"), sheet.machine.radiusMm},
            {QStringLiteral("rpm"), sheet.machine.rpm},
            {QStringLiteral("drum_g"), sheet.machine.drumKg * 1000.0},
            {QStringLiteral("drum_said"), sheet.machine.drumSaid},
            {QStringLiteral("left_out"), leftOutArray(sheet.leftOut)}};
}

QJsonObject gateObject(const std::string& run, const GateMinder& minder) {
    QJsonObject object{{QStringLiteral("run"), fromUtf8(run)},
                       {QStringLiteral("in_drum_g"), minder.inDrumG},
                       {QStringLiteral("how"), fromUtf8(word(minder.how))},
                       {QStringLiteral("drum_g"), minder.drumG},
                       {QStringLiteral("loads_since_open"), static_cast<qint64>(minder.loadsSince)},
                       {QStringLiteral("open_before_load"), orNull(minder.openBefore)},
                       {QStringLiteral("open_now"), minder.now},
                       {QStringLiteral("bucket"), orNull(minder.bucket)},
                       {QStringLiteral("bucket_takes_g"), orNull(minder.takesG)},
                       {QStringLiteral("bucket_nearly_full"), minder.bucketNearlyFull},
                       {QStringLiteral("next_bucket"), orNull(minder.nextBucket)},
                       {QStringLiteral("to_strain_g"), orNull(minder.toStrainG)},
                       {QStringLiteral("strain_min"), minder.strainMin},
                       {QStringLiteral("strainer_behind"), minder.strainerBehind},
                       {QStringLiteral("run_empty_of"), orNull(minder.emptyOf)},
                       {QStringLiteral("lots_run_together"), minder.ranTogether},
                       {QStringLiteral("run_empty_for"), orNull(minder.emptyFor)}};
    if (minder.strainer) {
        object.insert(QStringLiteral("too_cold_to_strain"), minder.strainer->atMost);
        object.insert(QStringLiteral("strain_kg_per_h"), minder.strainer->kgPerH);
        object.insert(QStringLiteral("strain_low_kg_per_h"), minder.strainer->lowKgPerH);
        object.insert(QStringLiteral("strain_high_kg_per_h"), minder.strainer->highKgPerH);
    }
    return object;
}

QJsonObject roomDayObject(const RoomDaySheet& sheet) {
    QJsonArray done;
    for (const LoadOnDay& load : sheet.done)
        done.append(QJsonObject{{QStringLiteral("load"), static_cast<qint64>(load.number)},
                                {QStringLiteral("lot"), fromUtf8(load.lot)},
                                {QStringLiteral("start_min"), load.startMin},
                                {QStringLiteral("end_min"), load.endMin},
                                {QStringLiteral("minutes_told"), load.told}});
    QJsonObject object{
        {QStringLiteral("hands"), static_cast<qint64>(sheet.hands)},
        {QStringLiteral("loads"), static_cast<qint64>(sheet.plan.loads)},
        {QStringLiteral("loads_if_mixed"), static_cast<qint64>(sheet.plan.loadsIfMixed)},
        {QStringLiteral("honey_g"), sheet.plan.honeyG},
        {QStringLiteral("buckets_with_spare"), static_cast<qint64>(sheet.plan.bucketsWithSpare)},
        {QStringLiteral("last_load_ends_min"), sheet.plan.lastLoadEndsMin},
        {QStringLiteral("strain_ends_min"), orNull(sheet.plan.strainEndsMin)},
        {QStringLiteral("day_min"), sheet.plan.dayMin},
        {QStringLiteral("done_min"), sheet.plan.doneMin},
        {QStringLiteral("alone_min"), sheet.plan.aloneMin},
        {QStringLiteral("slowest"),
         sheet.plan.slowest ? QJsonValue(fromUtf8(key(*sheet.plan.slowest))) : QJsonValue()},
        {QStringLiteral("one_helper_more"), whatIfObject(sheet.plan.oneUncapperMore)},
        {QStringLiteral("done"), done},
        {QStringLiteral("frames_left"), static_cast<qint64>(sheet.framesLeft)},
        {QStringLiteral("now_min"), orNull(sheet.nowMin)},
        {QStringLiteral("uncap_min_per_frame_seen"), orNull(sheet.uncapMinSeen)},
        {QStringLiteral("spin_min_per_load_seen"), orNull(sheet.spinMinSeen)},
        {QStringLiteral("clock_set"), sheet.clockSet},
        {QStringLiteral("longest_gap_min"), sheet.longestGapMin},
        {QStringLiteral("left_out"), leftOutArray(sheet.leftOut)}};
    if (sheet.plan.oneStrainerMore)
        object.insert(QStringLiteral("one_strainer_more"),
                      whatIfObject(*sheet.plan.oneStrainerMore));
    if (sheet.warmer) {
        object.insert(QStringLiteral("warmer"), whatIfObject(*sheet.warmer));
        object.insert(QStringLiteral("warm_to_c"), sheet.warmToC);
    }
    if (sheet.fromHere)
        object.insert(
            QStringLiteral("from_here"),
            QJsonObject{
                {QStringLiteral("loads_left"), static_cast<qint64>(sheet.fromHere->loadsLeft)},
                {QStringLiteral("last_load_ends_min"), sheet.fromHere->lastLoadEndsMin},
                {QStringLiteral("done_min"), sheet.fromHere->doneMin},
                {QStringLiteral("behind_min"), sheet.fromHere->behindMin}});
    return object;
}

}  // namespace combwright::cli
