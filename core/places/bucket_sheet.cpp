#include "core/places/bucket_sheet.h"

#include <algorithm>
#include <cstdlib>

#include "core/places/load_sheet.h"
#include "core/storage/queries/constants.h"
#include "core/trade/pull/day_plan.h"

namespace combwright {
namespace {

/// From here on a bucket counts as full: nobody fills to the brim.
constexpr double asGoodAsFull = 0.9;

double gramsFilled(const Read& file, Day on) { return constantOr(file, "bucket_g", {}, on, 13600); }

/// Honey the boxes of a run hold or held, by what is known of each.
double honeyInBoxes(const Read& file, const Extraction& run) {
    double honey = 0;
    for (const ExtractionBox& box : file.where<ExtractionBox>({is("extraction", run.id)})) {
        const auto frame = reckonFrame(file, box, run);
        if (frame)
            honey += (frame->startG - frame->endG) * static_cast<double>(box.frames->value());
    }
    return honey;
}

}  // namespace

std::int64_t bucketNumber(const std::string& mark) {
    return mark.size() > 1 && (mark[0] == 'B' || mark[0] == 'b') ? std::atoll(mark.c_str() + 1) : 0;
}

std::int64_t lastBucketOf(const Read& file, Day on) {
    std::int64_t highest = 0;
    for (const Extraction& run : file.all<Extraction>())
        if (yearOf(run.on) == yearOf(on))
            for (const Bucket& each : file.where<Bucket>({is("extraction", run.id)}))
                highest = std::max(highest, bucketNumber(each.mark.text()));
    return highest;
}

Known<Mass> massAtLevel(const Read& file, double share, Day on) {
    return {Mass::roundedGrams(share * gramsFilled(file, on)), std::nullopt, How::ByEye};
}

BucketSheet bucketSheet(const Read& file, Id<Extraction> id, Day on, Working* working) {
    BucketSheet sheet;
    sheet.fullG = gramsFilled(file, on);
    sheet.wettestPercent = constantOr(file, "max_water_percent", {}, on, 18.0);
    const auto run = file.find(id);
    if (!run) return sheet;
    double water = 0;
    double dry = 0;
    std::int64_t highest = lastBucketOf(file, run->on);
    for (const Bucket& each : file.where<Bucket>({is("extraction", id)})) {
        BucketLine line;
        line.mark = each.mark.text();
        line.bucket = each;
        const auto net = each.net ? each.net->middle() : std::nullopt;
        if (net) line.level = std::min(1.0, *net / sheet.fullG);
        if (each.water && each.water->percent() > sheet.wettestPercent) {
            line.tooWet = true;
            sheet.tooWet.push_back(line.mark);
        } else if (each.water && net) {
            water += each.water->percent() * *net;
            dry += *net;
            note(working, "water_percent", each.water->percent(), "%", each.mark.text());
            note(working, "honey_g", *net, "g", each.mark.text());
        }
        sheet.lines.push_back(std::move(line));
    }
    if (dry > 0) {
        sheet.meanWaterPercent = water / dry;
        note(working, "water_percent", *sheet.meanWaterPercent, "%", "mean by mass");
    }
    if (!run->closed && !sheet.lines.empty()) {
        BucketLine& last = sheet.lines.back();
        last.underGate =
            !last.bucket->lidded.value_or(false) && last.level.value_or(0) < asGoodAsFull;
    }
    sheet.filled =
        std::count_if(sheet.lines.begin(), sheet.lines.end(),
                      [](const BucketLine& each) { return each.bucket->net && !each.underGate; });
    const double honey = honeyInBoxes(file, *run);
    RoomRates rates;
    rates.slotsOfKind[""] = 12;
    rates.bucketG = sheet.fullG;
    rates.spareShare = constantOr(file, "spare_share", {}, on, 0.1);
    if (honey > 0)
        if (const auto plan = planDay({{run->name.text(), "", 0, honey, 0}}, rates))
            sheet.planned = plan->bucketsWithSpare;
    if (run->closed) return sheet;
    const bool gateTaken = !sheet.lines.empty() && sheet.lines.back().underGate;
    const auto have = static_cast<std::int64_t>(sheet.lines.size());
    // At least the one that goes under the gate next.
    const std::int64_t wanted = std::max(sheet.planned, gateTaken ? have : have + 1);
    for (std::int64_t n = have; n < wanted; ++n) {
        BucketLine line;
        line.mark = "B" + std::to_string(++highest);
        line.level = 0;
        line.underGate = !gateTaken && n == have;
        sheet.lines.push_back(std::move(line));
    }
    return sheet;
}

}  // namespace combwright
