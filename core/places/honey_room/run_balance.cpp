#include "core/places/honey_room/run_balance.h"

#include <algorithm>

#include "core/model/season_info.h"
#include "core/places/honey/water_in_use.h"
#include "core/places/pull/full_frame.h"
#include "core/storage/queries/constants.h"
#include "core/storage/queries/names.h"
#include "core/storage/queries/runs.h"
#include "core/storage/queries/yards.h"
#include "core/trade/honey/share_yield.h"

namespace combwright {
namespace {

std::optional<double> grams(const std::optional<Known<Mass>>& reading) {
    return reading ? reading->middle() : std::nullopt;
}

std::optional<std::string> hiveKey(const ExtractionBox& box) {
    if (!box.hive) return std::nullopt;
    return std::to_string(box.hive->number);
}

/// Of a box weighed full what it weighed less such a box without honey. Else frames × fill × what a
/// full frame of that kind holds; where the fill was not judged, full frames are as good a guess
/// for one box as for the other.
double byEyeGrams(const Read& file, const ExtractionBox& box, const Extraction& run,
                  const std::optional<Id<FrameKind>>& usual) {
    if (const auto full = grams(box.gross)) {
        const auto known = file.find(box.box);
        const auto made = known ? file.find(std::optional(known->kind)) : std::nullopt;
        const auto empty = made ? emptyBoxGramsOf(file, *made, run.yard, run.on) : std::nullopt;
        if (empty && *full > *empty) return *full - *empty;
    }
    const auto filled = box.filled ? box.filled->middle() : std::nullopt;
    const double share = filled ? *filled / 10000.0 : 1.0;
    const auto frames = box.frames ? static_cast<double>(box.frames->value()) : 1.0;
    // A box whose tag was lost is taken to be of the run's usual size.
    const auto kind = file.find(box.frameKind ? box.frameKind : usual);
    const auto full = kind ? fullFrameGramsOf(file, *kind, run.yard, run.on) : std::nullopt;
    return frames * share * full.value_or(1000.0);
}

/// The size of frame most boxes of the run have, the earlier among equals; none where none says.
std::optional<Id<FrameKind>> usualFrames(const std::vector<ExtractionBox>& boxes) {
    std::optional<Id<FrameKind>> usual;
    std::ptrdiff_t most = 0;
    for (const ExtractionBox& box : boxes) {
        if (!box.frameKind) continue;
        const auto alike = std::count_if(
            boxes.begin(), boxes.end(),
            [&](const ExtractionBox& other) { return other.frameKind == box.frameKind; });
        if (alike > most) {
            most = alike;
            usual = box.frameKind;
        }
    }
    return usual;
}

void takeBuckets(const std::vector<Bucket>& buckets, RunBalance& balance) {
    bool any = false;
    How how = How::Weighed;
    balance.filled = static_cast<std::int64_t>(buckets.size());
    for (const Bucket& bucket : buckets) {
        if (const auto net = grams(bucket.net)) {
            balance.buckets += Mass::roundedGrams(*net);
            how = weaker(how, bucket.net->how);
            any = true;
        } else {
            balance.unweighed.push_back(bucket.mark.text());
        }
    }
    balance.bucketsHow = any ? how : How::Unknown;
}

void takeWater(const Read& file, const std::vector<Bucket>& buckets, RunBalance& balance) {
    const auto waters = waterOfBuckets(file, buckets, lastOfAllDays);
    for (std::size_t i = 0; i < buckets.size(); ++i) {
        if (!waters[i]) continue;
        const double water = waters[i]->percent;
        balance.waterLow = std::min(balance.waterLow.value_or(water), water);
        balance.waterHigh = std::max(balance.waterHigh.value_or(water), water);
        if (waters[i]->from != WaterFrom::AtTheGate)
            balance.readSince.push_back(buckets[i].mark.text());
    }
}

struct SharedOut {
    YieldShares shares;
    bool byEye = false;
};

/// Frames and fill, which stand for a weight.
bool judged(const ExtractionBox& box) { return box.frames && box.filled && box.filled->middle(); }

bool weighedBoth(const ExtractionBox& box) { return grams(box.gross) && grams(box.wet); }

/// By what was reckoned in each box; of one weighed full and wet, what it lost.
SharedOut sharedByEye(const Read& file, const RunBalance& balance,
                      const std::vector<ExtractionBox>& boxes,
                      const std::vector<std::string>& marks, Working* working) {
    std::vector<EstimatedBox> estimated;
    const auto usual = usualFrames(boxes);
    for (std::size_t i = 0; i < boxes.size(); ++i) {
        const ExtractionBox& box = boxes[i];
        estimated.push_back({marks[i], hiveKey(box),
                             weighedBoth(box) ? std::max(0.0, *grams(box.gross) - *grams(box.wet))
                                              : byEyeGrams(file, box, balance.run, usual)});
    }
    const auto total = balance.bucketsHow == How::Unknown
                           ? std::nullopt
                           : std::optional(static_cast<double>(balance.buckets.grams()));
    return {shareByEye(total, estimated, working), true};
}

Result<SharedOut> shareOut(const Read& file, const RunBalance& balance,
                           const std::vector<ExtractionBox>& boxes,
                           const std::vector<std::string>& marks, Working* working) {
    if (std::none_of(boxes.begin(), boxes.end(), weighedBoth))
        return sharedByEye(file, balance, boxes, marks, working);
    std::vector<YieldBox> weighed;
    for (std::size_t i = 0; i < boxes.size(); ++i) {
        const ExtractionBox& box = boxes[i];
        weighed.push_back({marks[i], hiveKey(box), grams(box.gross), grams(box.wet),
                           weighedBoth(box) ? weaker(box.gross->how, box.wet->how) : How::Unknown});
    }
    const YieldRun run{static_cast<double>(balance.buckets.grams()), grams(balance.run.cappings),
                       grams(balance.run.scrapings)};
    auto shares = shareYield(run, weighed, working);
    if (shares) return SharedOut{*std::move(shares), false};
    if (shares.error().code != Code::SecondUnknown) return shares.error();
    // Too little was weighed to find the rest. Where each box that lacks a weight was judged, that
    // stands for it; where one was not, it is that one which is named.
    for (std::size_t i = 0; i < boxes.size(); ++i) {
        if (weighedBoth(boxes[i]) || judged(boxes[i])) continue;
        return Refusal{
            Code::SecondUnknown,
            "boxes[" + std::to_string(i) + "]." + (grams(boxes[i].gross) ? "wet_g" : "gross_g"),
            {{"mark", weighed[i].mark}}};
    }
    return sharedByEye(file, balance, boxes, marks, working);
}

/// Hives by their number, and what they are called.
using HiveMarks = std::map<std::int64_t, Hive>;

HiveMarks hivesBehind(const Read& file, const std::vector<ExtractionBox>& boxes) {
    std::vector<Id<Hive>> hives;
    for (const ExtractionBox& box : boxes)
        if (box.hive && std::find(hives.begin(), hives.end(), *box.hive) == hives.end())
            hives.push_back(*box.hive);
    return file.findAny(hives);
}

std::string markOf(const HiveMarks& hives, Id<Hive> hive) {
    const auto known = hives.find(hive.number);
    return known == hives.end() ? "#" + std::to_string(hive.number) : known->second.mark.text();
}

void takeShares(const YieldShares& shares, const HiveMarks& hives, RunBalance& balance) {
    const auto& closing = balance.closing;
    const auto atClosing = [&](std::optional<Id<Hive>> hive) -> Mass {
        for (const ClosingShare& share : closing)
            if (share.hive == hive) return share.mass;
        return {};
    };
    const auto add = [&](RunShare share) {
        if (!closing.empty() && atClosing(share.hive) != share.mass) {
            share.atClosing = atClosing(share.hive);
            balance.revised = true;
        }
        balance.shares.push_back(std::move(share));
    };
    for (const YieldShares::HiveLine& line : shares.hives) {
        RunShare share;
        share.hive = Id<Hive>{std::atoll(line.hive.c_str())};
        share.mark = markOf(hives, *share.hive);
        share.mass = line.honey;
        share.partHow = line.how;
        share.how =
            weaker(line.how, balance.bucketsHow == How::Unknown ? How::ByEye : balance.bucketsHow);
        add(std::move(share));
    }
    // The unknown line stands while something is in it, and where something was in it at closing.
    if (shares.unknown > Mass() || atClosing(std::nullopt) > Mass()) {
        RunShare unknown;
        unknown.mass = shares.unknown;
        unknown.partHow = shares.unknownHow;
        unknown.how = weaker(shares.unknownHow,
                             balance.bucketsHow == How::Unknown ? How::ByEye : balance.bucketsHow);
        add(std::move(unknown));
    }
}

}  // namespace

BucketSum bucketSum(const Read& file, Id<Extraction> run) {
    RunBalance balance;
    takeBuckets(file.where<Bucket>({is("extraction", run)}), balance);
    return {balance.buckets, balance.bucketsHow};
}

How RunBalance::outHow() const {
    How how = byEye ? How::ByEye : How::Weighed;
    for (const RunBoxLine& line : boxes) {
        for (const auto* reading : {&line.box.gross, &line.box.wet})
            if (grams(*reading)) how = weaker(how, (*reading)->how);
        if (line.byDifference) how = weaker(how, How::ByDifference);
    }
    return how;
}

How RunBalance::missingHow() const {
    How how = weaker(outHow(), bucketsHow);
    for (const auto* reading : {&run.cappings, &run.scrapings})
        if (grams(*reading)) how = weaker(how, (*reading)->how);
    return how == How::Weighed ? How::ByDifference : how;
}

namespace {

Result<RunBalance> balanceOf(const Read& file, const RunRecords& records, Working* working) {
    const Extraction& run = records.run;
    const auto& boxes = records.boxes;
    RunBalance balance;
    balance.run = run;
    if (run.yard) balance.yard = nameOf(file, Yard::table, run.yard->number);
    if (const auto cappings = grams(run.cappings)) balance.cappings = Mass::roundedGrams(*cappings);
    if (const auto scrapings = grams(run.scrapings))
        balance.scrapings = Mass::roundedGrams(*scrapings);
    takeBuckets(records.buckets, balance);
    balance.loads =
        static_cast<std::int64_t>(file.where<SpinLoad>({is("extraction", run.id)}).size());
    balance.closing = file.where<ClosingShare>({is("extraction", run.id)});
    const std::vector<std::string> marks = calledInRun(file, boxes);
    const auto shared = shareOut(file, balance, boxes, marks, working);
    if (!shared) return shared.error();
    balance.byEye = shared->byEye;
    const YieldShares& shares = shared->shares;
    const HiveMarks hives = hivesBehind(file, boxes);
    double out = 0;
    bool allKnown = !boxes.empty() && !balance.byEye;
    std::int64_t weighedFrames = 0;
    for (std::size_t i = 0; i < boxes.size(); ++i) {
        RunBoxLine line;
        line.box = boxes[i];
        line.mark = marks[i];
        if (boxes[i].hive) line.hive = markOf(hives, *boxes[i].hive);
        if (i < shares.offG.size()) line.offG = shares.offG[i];
        line.byDifference = std::find(shares.byDifference.begin(), shares.byDifference.end(), i) !=
                            shares.byDifference.end();
        if (boxes[i].frames) balance.frames += boxes[i].frames->value();
        if (line.offG) out += *line.offG;
        allKnown = allKnown && line.offG && !line.byDifference && boxes[i].frames;
        if (boxes[i].frames) weighedFrames += boxes[i].frames->value();
        balance.boxes.push_back(std::move(line));
    }
    if (!balance.byEye && !boxes.empty()) balance.outOfBoxesG = out;
    balance.unaccountedG = balance.byEye ? std::nullopt : shares.unaccountedG;
    if (allKnown && weighedFrames > 0)
        balance.gotPerFrameG = out / static_cast<double>(weighedFrames);
    takeShares(shares, hives, balance);
    if (balance.revised) balance.revisions = revisionsOf(file, run.id);
    return balance;
}

}  // namespace

Result<RunBalance> runBalance(const Read& file, Id<Extraction> id, Working* working) {
    const auto records = runRecords(file, id);
    if (!records) return Refusal{Code::NotFound, "run", {}};
    auto balance = balanceOf(file, *records, working);
    if (balance) takeWater(file, records->buckets, *balance);
    return balance;
}

Result<RunBalance> runBalanceOn(const Read& file, Id<Extraction> id, Day on) {
    const auto records = runRecords(file, id);
    if (!records) return Refusal{Code::NotFound, "run", {}};
    auto balance = balanceOf(file, *records, nullptr);
    if (!balance || !balance->revised) return balance;
    const auto isLater = [on](const RunRevision& each) { return each.on && *each.on > on; };
    if (std::none_of(balance->revisions.begin(), balance->revisions.end(), isLater)) return balance;
    balance = balanceOf(file, *runRecordsOn(file, id, on), nullptr);
    if (balance) std::erase_if(balance->revisions, isLater);
    return balance;
}

}  // namespace combwright
