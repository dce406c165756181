#include "core/places/explain/explain_honey_room.h"

#include <QCoreApplication>
#include <QLocale>
#include <algorithm>
#include <cmath>
#include <map>

#include "core/storage/queries/constants.h"
#include "core/trade/extractor/unbalance.h"
#include "core/words/figures.h"
#include "core/words/words.h"

namespace combwright {
namespace {

QString roomWord(const char* text) { return QCoreApplication::translate("explain", text); }

std::string sourceOf(const std::optional<ConstantInForce>& constant) {
    if (!constant) return {};
    if (!constant->own) return constant->source;
    const std::string own = roomWord("the keeper's own").toStdString();
    return constant->source.empty() ? own : own + ": " + constant->source;
}

void noteConstant(const Read& file, const char* name, const char* key, const char* unit, Day on,
                  double fallback, Working& working) {
    const auto constant = constantInForce(file, name, {}, on);
    note(&working, key, constant ? constant->value : fallback, unit, {}, sourceOf(constant));
}

/// What left each box of the run, as inputs of a share.
void noteBoxes(const RunBalance& balance, std::optional<Id<Hive>> hive, Working& working) {
    double off = 0;
    for (const RunBoxLine& line : balance.boxes) {
        if (line.box.hive != hive || !line.offG) continue;
        const auto gross = line.box.gross ? line.box.gross->middle() : std::nullopt;
        const auto wet = line.box.wet ? line.box.wet->middle() : std::nullopt;
        if (gross && wet && !line.byDifference && !balance.byEye) {
            note(&working, "box_full_g", *gross, "g", line.mark);
            note(&working, "box_wet_g", *wet, "g", line.mark);
        } else {
            note(&working, line.byDifference ? "by_difference" : "reckoned_in_boxes", *line.offG,
                 "g", line.mark);
        }
        off += *line.offG;
    }
    note(&working, "off_hive_boxes", off, "g", "Σ");
}

Explained explainShare(const RunBalance& balance, const RunShare& share, const Working& sharing) {
    Explained figure;
    figure.what =
        share.hive ? roomWord("Share of %1").arg(fromUtf8(share.mark)) : roomWord("No tag");
    figure.answer = massKnown(static_cast<double>(share.mass.grams()), share.how);
    figure.working = sharing;
    noteBoxes(balance, share.hive, figure.working);
    note(&figure.working, "share_g", static_cast<double>(share.mass.grams()), "g",
         "buckets · off this hive's boxes ÷ off all boxes, whole grams by largest remainder");
    return figure;
}

void noteFrames(const Read& file, const SheetLoad& load, Working& working) {
    std::map<std::int64_t, std::int64_t> many;
    for (const auto& place : load.places)
        if (place && !place->emptied) ++many[place->entry.number];
    for (const auto& [number, count] : many) {
        const auto box = file.find(Id<ExtractionBox>{number});
        const auto run = box ? file.find(box->extraction) : std::nullopt;
        if (!run) continue;
        Working each;
        const auto frame = reckonFrame(file, *box, *run, &each);
        if (!frame) continue;
        note(&working, "frames", static_cast<double>(count), "", frame->box);
        for (Working::Step& step : each.steps) working.steps.push_back(std::move(step));
    }
}

}  // namespace

std::vector<Explained> explainRun(const Read& file, const RunBalance& balance) {
    std::vector<Explained> figures;
    Working sharing;
    const auto again = runBalance(file, balance.run.id, &sharing);
    if (!again) return figures;
    for (const RunShare& share : again->shares)
        figures.push_back(explainShare(*again, share, sharing));
    if (again->outOfBoxesG) {
        Explained out;
        out.what = roomWord("Out of the boxes");
        out.answer = massKnown(*again->outOfBoxesG, again->outHow());
        for (const RunBoxLine& line : again->boxes)
            if (line.offG)
                note(&out.working, line.byDifference ? "by_difference" : "off_box", *line.offG, "g",
                     line.mark);
        note(&out.working, "off_boxes", *again->outOfBoxesG, "g", "Σ full − wet");
        figures.push_back(std::move(out));
    }
    if (again->unaccountedG) {
        Explained missing;
        missing.what = roomWord("Missing");
        missing.answer = massKnown(*again->unaccountedG, again->missingHow());
        missing.working = sharing;
        figures.push_back(std::move(missing));
    }
    if (again->gotPerFrameG) {
        Explained rate;
        rate.what = roomWord("Honey a frame");
        rate.answer = massRateFigure(*again->gotPerFrameG) + QLatin1Char(' ') + massUnit();
        note(&rate.working, "off_boxes", again->outOfBoxesG.value_or(0), "g", "Σ full − wet");
        note(&rate.working, "frames", static_cast<double>(again->frames), "");
        note(&rate.working, "got_per_frame_g", *again->gotPerFrameG, "g", "off the boxes ÷ frames");
        figures.push_back(std::move(rate));
    }
    if (again->bucketsHow != How::Unknown) {
        Explained buckets;
        buckets.what = roomWord("In the buckets");
        buckets.answer = massKnown(static_cast<double>(again->buckets.grams()), again->bucketsHow);
        for (const Bucket& bucket : file.where<Bucket>({is("extraction", balance.run.id)}))
            if (const auto net = bucket.net ? bucket.net->middle() : std::nullopt)
                note(&buckets.working, "honey_g", *net, "g",
                     bucket.mark.text() + ", " + howWord(bucket.net->how).toStdString());
        note(&buckets.working, "in_buckets", static_cast<double>(again->buckets.grams()), "g", "Σ");
        figures.push_back(std::move(buckets));
    }
    return figures;
}

std::vector<Explained> explainLoad(const Read& file, const LoadSheet& sheet, const SheetLoad& load,
                                   Day on) {
    std::vector<LoadedFrame> start;
    FrameSlots places;
    for (const auto& place : load.places) {
        places.push_back(place ? std::optional(start.size()) : std::nullopt);
        if (place) start.push_back({place->startG, place->endG, place->sdG, place->radiusMm});
    }
    const LoadOffsets offsets = offsetsOf(places, start);
    Working frames;
    noteFrames(file, load, frames);
    const QString name = roomWord("Load %1").arg(load.number);
    std::vector<Explained> figures;
    const auto offset = [&](const char* when, double grams, double doubt, const char* key) {
        Explained figure;
        figure.what = name + roomWord(when);
        figure.answer =
            roomWord("%1, may be %2")
                .arg(massText(grams, How::Weighed), massText(grams + doubt, How::Weighed));
        figure.working = frames;
        note(&figure.working, "doubt_g", doubt, "g", "1.52 · √Σσ², 9 in 10");
        note(&figure.working, key, grams, "g", "| Σ grams · radius ÷ largest radius · direction |");
        figures.push_back(std::move(figure));
    };
    offset(": off balance at the start", offsets.startG, load.doubtG, "start_offset_g");
    offset(": off balance at the end", offsets.endG, load.endDoubtG, "end_offset_g");
    Explained ring;
    ring.what = roomWord("The ring");
    ring.answer = massText(sheet.ringG(), How::Weighed);
    noteConstant(file, "extractor_radius_mm", "radius_mm", "mm", on, 300, ring.working);
    noteConstant(file, "spin_rpm", "rpm", "1/min", on, 300, ring.working);
    noteConstant(file, "rotor_kg", "rotor_kg", "kg", on, 60, ring.working);
    noteConstant(file, "balance_grade", "grade", "mm/s", on, 16, ring.working);
    note(&ring.working, "allowed_offset_g", sheet.allowedG, "g",
         "1000 · grade · drum ÷ (turning speed · radius)", "ISO 21940-11");
    if (sheet.ranSmoothG)
        note(&ring.working, "ran_smooth_g", *sheet.ranSmoothG, "g",
             sheet.ringContradicted
                 ? "smallest offset with its doubt that ran smooth; it walked at less since"
                 : "largest offset with its doubt of a load that ran smooth");
    figures.push_back(std::move(ring));
    return figures;
}

Explained explainRoomDay(const RoomDaySheet& sheet, Working steps) {
    Explained day;
    day.what = roomWord("The day");
    day.answer = roomWord("%1 min").arg(std::llround(sheet.plan.doneMin));
    note(&day.working, "uncap_min_per_frame", sheet.rates.uncapMinPerFrame, "min");
    note(&day.working, "spin_min_per_load", sheet.rates.spinMinPerLoad, "min");
    note(&day.working, "swap_min", sheet.rates.swapMin, "min");
    note(&day.working, "lot_change_min", sheet.rates.lotChangeMin, "min");
    for (const PlanLot& lot : sheet.lots)
        note(&day.working, "lot_frames", static_cast<double>(lot.frames), "",
             lot.lot + ", " + lot.kind);
    for (Working::Step& step : steps.steps) day.working.steps.push_back(std::move(step));
    return day;
}

std::vector<Explained> explainBuckets(const Read& file, Id<Extraction> run, Day on) {
    std::vector<Explained> figures;
    Working water;
    const BucketSheet sheet = bucketSheet(file, run, on, &water);
    if (sheet.meanWaterPercent) {
        Explained figure;
        figure.what = roomWord("Mean water of what is dry enough");
        figure.answer = QLocale().toString(*sheet.meanWaterPercent, 'f', 1) + QStringLiteral(" %");
        noteConstant(file, "max_water_percent", "wettest_percent", "%", on, 18, figure.working);
        for (Working::Step& step : water.steps) figure.working.steps.push_back(std::move(step));
        figures.push_back(std::move(figure));
    }
    const auto lot = file.find(run);
    if (sheet.planned > 0 && lot) {
        Explained figure;
        figure.what = roomWord("Buckets to have ready");
        figure.answer = QString::number(sheet.planned);
        for (const ExtractionBox& box : file.where<ExtractionBox>({is("extraction", run)}))
            if (const auto frame = reckonFrame(file, box, *lot))
                note(&figure.working, "honey_g",
                     (frame->startG - frame->endG) * static_cast<double>(box.frames->value()), "g",
                     frame->box);
        noteConstant(file, "bucket_g", "bucket_g", "g", on, 13600, figure.working);
        noteConstant(file, "spare_share", "spare_share", "", on, 0.1, figure.working);
        note(&figure.working, "buckets_with_spare", static_cast<double>(sheet.planned), "",
             "⌈⌈Σ honey ÷ bucket⌉ · (1 + spare)⌉");
        figures.push_back(std::move(figure));
    }
    return figures;
}

}  // namespace combwright
