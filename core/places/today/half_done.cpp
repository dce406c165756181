#include "core/places/today/half_done.h"

#include <algorithm>

#include "core/model/season_info.h"
#include "core/places/due/due_rooms.h"
#include "core/places/due/due_visits.h"
#include "core/places/honey/bucket_sheet.h"
#include "core/places/honey_room/run_balance.h"
#include "core/places/storeroom/freezer.h"
#include "core/storage/queries/holds.h"
#include "core/storage/queries/names.h"
#include "core/storage/queries/runs.h"
#include "core/storage/queries/vessels.h"
#include "core/storage/queries/wax_ledger.h"

namespace combwright {
namespace {

using What = HalfDone::What;

void addRunsHalf(const Read& file, Day today, std::vector<HalfDone>& list) {
    for (const Extraction& run : file.all<Extraction>()) {
        if (run.closed || run.on > today) continue;
        HalfDone half;
        half.what = What::Run;
        half.name = run.name.text();
        half.since = run.on;
        half.yard = run.yard;
        for (RoomBox& box : roomBoxes(file, run.id, today).waiting)
            if (!box.plannedFor) half.boxes.push_back(std::move(box));
        for (const SpinLoad& load : file.where<SpinLoad>({is("extraction", run.id)}))
            half.loads += load.ran != Ran::Stopped;
        list.push_back(std::move(half));
    }
}

void addVisitsHalf(const Read& file, Day today, std::vector<HalfDone>& list) {
    for (const OpenVisit& open : openVisits(file, today)) {
        HalfDone half;
        half.what = What::Visit;
        half.name = open.yard;
        half.since = open.visit.on;
        half.yard = open.visit.yard;
        half.hives = open.hives;
        half.written = open.written;
        list.push_back(std::move(half));
    }
}

void addWetsHalf(const Read& file, std::vector<HalfDone>& list) {
    HalfDone half;
    half.what = What::WetBoxes;
    for (const Box& box : file.where<Box>({is("place", BoxPlace::Wet)})) {
        RoomBox row;
        row.box = box.id;
        row.mark = nameOf(file, Box::table, box.id.number);
        if (const auto kind = file.find(box.kind); kind && kind->outerHeight)
            row.heightMm = static_cast<double>(kind->outerHeight->count()) / 10.0;
        const Day wet = wetSince(file, box);
        half.since = half.boxes.empty() ? wet : std::min(half.since, wet);
        half.boxes.push_back(std::move(row));
    }
    if (!half.boxes.empty()) list.push_back(std::move(half));
}

/// Boxes of this year's runs that came without a tag. Once named they have a hive.
void addNoTagHalf(const Read& file, Day today, std::vector<HalfDone>& list) {
    for (const Extraction& run : file.all<Extraction>()) {
        if (run.on > today || yearOf(run.on) != yearOf(today)) continue;
        for (const ExtractionBox& each : file.where<ExtractionBox>({is("extraction", run.id)})) {
            if (each.hive) continue;
            HalfDone half;
            half.what = What::NoTag;
            half.name = calledInRun(file, each);
            half.run = run.name.text();
            half.since = run.on;
            const auto gross = each.gross ? each.gross->middle() : std::nullopt;
            const auto wet = each.wet ? each.wet->middle() : std::nullopt;
            if (gross && wet && *gross >= *wet)
                half.mass = Known<Mass>{Mass::roundedGrams(*gross - *wet), std::nullopt,
                                        weaker(each.gross->how, each.wet->how)};
            list.push_back(std::move(half));
        }
    }
}

void addFreezerHalf(const Read& file, Day today, std::vector<HalfDone>& list) {
    for (const FreezerRoundRow& row : freezerLane(file, today).in) {
        HalfDone half;
        half.what = What::Freezer;
        half.name = row.freezer;
        half.since = row.round.in;
        half.frames = row.frames;
        half.due = row.due;
        list.push_back(std::move(half));
    }
}

/// Honey of this year too wet to keep; and frames nobody decided about.
void addBucketsHalf(const Read& file, Day today, std::vector<HalfDone>& list) {
    for (const Extraction& run : file.all<Extraction>()) {
        if (run.on > today || yearOf(run.on) != yearOf(today)) continue;
        const BucketSheet sheet = bucketSheet(file, run.id, today);
        for (const BucketLine& line : sheet.lines) {
            if (!line.tooWet) continue;
            // What was poured away is nobody's worry any more.
            const VesselLedger ledger = vesselLedger(file, {line.bucket->id, std::nullopt}, today);
            if (ledger.empty) continue;
            HalfDone half;
            half.what = What::Bucket;
            half.name = line.mark;
            half.run = run.name.text();
            half.since = run.on;
            half.mass = line.bucket->net;
            if (ledger.left && ledger.left != ledger.in)
                half.mass = Known<Mass>{*ledger.left, std::nullopt, ledger.leftHow};
            half.water = line.water->wettestPercent();
            half.waterLimit = sheet.wettestPercent;
            list.push_back(std::move(half));
        }
        const std::int64_t aside = framesOnPile(file, run.id);
        if (aside == 0) continue;
        HalfDone half;
        half.what = What::Aside;
        half.name = half.run = run.name.text();
        half.since = run.on;
        half.frames = aside;
        list.push_back(std::move(half));
    }
}

/// Suspected disease: whoever looks into it next must know.
void addHeldHalf(const Read& file, Day today, std::vector<HalfDone>& list) {
    for (const Hold& hold : file.where<Hold>({is("why", HoldWhy::SuspectedDisease)})) {
        if (!standsOn(hold, today)) continue;
        HalfDone half;
        half.what = What::Held;
        half.since = hold.since;
        if (const auto colony = file.find(hold.colony)) {
            half.hive = colony->hive;
            half.name = nameOf(file, Hive::table, colony->hive.number);
            if (const auto hive = file.find(colony->hive)) half.yard = hive->yard;
        } else if (hold.box) {
            half.name = nameOf(file, Box::table, hold.box->number);
        } else {
            continue;
        }
        list.push_back(std::move(half));
    }
}

}  // namespace

namespace {

void addHeatHalf(const Read& file, Day today, std::vector<HalfDone>& list) {
    for (const HeatSession& heat : openHeat(file)) {
        if (heat.on > today) continue;
        HalfDone half;
        half.what = What::Heat;
        half.name = heat.what.text();
        half.since = heat.on;
        half.begun = heat.begun;
        list.push_back(std::move(half));
    }
}

}  // namespace

std::vector<HalfDone> halfDone(const Read& file, Day today) {
    const OneState still(file);
    std::vector<HalfDone> list;
    addHeatHalf(file, today, list);
    addRunsHalf(file, today, list);
    addVisitsHalf(file, today, list);
    addWetsHalf(file, list);
    addNoTagHalf(file, today, list);
    addFreezerHalf(file, today, list);
    addBucketsHalf(file, today, list);
    addHeldHalf(file, today, list);
    return list;
}

}  // namespace combwright
