#include "core/places/honey/bucket_sheet.h"

#include <algorithm>
#include <cstdlib>

#include "core/places/honey_room/load_sheet.h"
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

bool standsUnderGate(const Bucket& last, double fullG) {
    const auto net = last.net ? last.net->middle() : std::nullopt;
    return !last.lidded.value_or(false) && net.value_or(0) < asGoodAsFull * fullG;
}

/// What a run will fill still, by the honey in its boxes.
struct BucketsToCome {
    std::int64_t planned = 0;  ///< in all, with spare; 0: nobody knows
    std::int64_t more = 0;     ///< beyond those it has
    bool gateTaken = false;    ///< the last of those it has stands under the gate
};

BucketsToCome bucketsToCome(const Read& file, const Extraction& run,
                            const std::vector<Bucket>& filled, Day on) {
    BucketsToCome come;
    RoomRates rates;
    rates.slotsOfKind[""] = 12;
    rates.bucketG = gramsFilled(file, on);
    rates.spareShare = constantOr(file, "spare_share", {}, on, 0.1);
    if (const double honey = honeyInBoxes(file, run); honey > 0)
        if (const auto plan = planDay({{run.name.text(), "", 0, honey, 0}}, rates))
            come.planned = plan->bucketsWithSpare;
    if (run.closed) return come;
    come.gateTaken = !filled.empty() && standsUnderGate(filled.back(), rates.bucketG);
    const auto have = static_cast<std::int64_t>(filled.size());
    // At least the one that goes under the gate next.
    come.more = std::max(come.planned, come.gateTaken ? have : have + 1) - have;
    return come;
}

}  // namespace

std::int64_t bucketNumber(const std::string& mark) {
    return mark.size() > 1 && (mark[0] == 'B' || mark[0] == 'b') ? std::atoll(mark.c_str() + 1) : 0;
}

BucketNumbers::BucketNumbers(const Read& file, const std::optional<Extraction>& lot, Day on) {
    const auto highestOf = [&](const std::vector<Bucket>& filled) {
        std::int64_t highest = 0;
        for (const Bucket& each : filled)
            highest = std::max(highest, bucketNumber(each.mark.text()));
        return highest;
    };
    for (const Extraction& run : file.all<Extraction>()) {
        if (yearOf(run.on) != yearOf(on)) continue;
        const auto filled = file.where<Bucket>({is("extraction", run.id)});
        for (const Bucket& each : filled) m_taken.insert(bucketNumber(each.mark.text()));
        if (run.closed) m_last = std::max(m_last, highestOf(filled));
    }
    for (const Extraction& run : openRuns(file)) {
        if (yearOf(run.on) != yearOf(on)) continue;
        const std::int64_t before = m_last;
        const auto filled = file.where<Bucket>({is("extraction", run.id)});
        // A lot goes on where it is, among numbers that others have taken meanwhile.
        if (const std::int64_t own = highestOf(filled); own > 0) m_last = own;
        if (lot && run.id == lot->id) return;
        for (auto n = bucketsToCome(file, run, filled, on).more; n > 0; --n) (void)next();
        m_last = std::max(m_last, before);
    }
}

void BucketNumbers::pass(const std::string& mark) { m_last = std::max(m_last, bucketNumber(mark)); }

std::string BucketNumbers::next() {
    do ++m_last;
    while (m_taken.contains(m_last));
    m_taken.insert(m_last);
    return "B" + std::to_string(m_last);
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
    const auto filled = file.where<Bucket>({is("extraction", id)});
    const auto waters = waterOfBuckets(file, filled, on);
    for (std::size_t i = 0; i < filled.size(); ++i) {
        const Bucket& each = filled[i];
        BucketLine line;
        line.mark = each.mark.text();
        line.bucket = each;
        line.water = waters[i];
        const auto net = each.net ? each.net->middle() : std::nullopt;
        if (net) line.level = std::min(1.0, *net / sheet.fullG);
        const bool isSince = line.water && line.water->from != WaterFrom::AtTheGate;
        if (isSince) sheet.readSince.push_back(line.mark);
        if (line.water && line.water->wettestPercent() > sheet.wettestPercent) {
            line.tooWet = true;
            sheet.tooWet.push_back(line.mark);
        } else if (line.water && net) {
            const double percent = line.water->percent;
            water += percent * *net;
            dry += *net;
            note(working, "water_percent", percent, "%",
                 isSince ? line.mark + ", " + isoText(line.water->on.value_or(on)) : line.mark);
            note(working, "honey_g", *net, "g", each.mark.text());
        }
        sheet.lines.push_back(std::move(line));
    }
    if (dry > 0) {
        sheet.meanWaterPercent = water / dry;
        note(working, "water_percent", *sheet.meanWaterPercent, "%", "mean by mass");
    }
    const BucketsToCome come = bucketsToCome(file, *run, filled, on);
    sheet.planned = come.planned;
    if (come.gateTaken) sheet.lines.back().underGate = true;
    sheet.filled =
        std::count_if(sheet.lines.begin(), sheet.lines.end(),
                      [](const BucketLine& each) { return each.bucket->net && !each.underGate; });
    if (run->closed) return sheet;
    BucketNumbers numbers(file, run, run->on);
    for (std::int64_t n = 0; n < come.more; ++n) {
        BucketLine line;
        line.mark = numbers.next();
        line.level = 0;
        line.underGate = !come.gateTaken && n == 0;
        sheet.lines.push_back(std::move(line));
    }
    return sheet;
}

}  // namespace combwright
