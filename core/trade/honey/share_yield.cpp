#include "core/trade/honey/share_yield.h"

#include <algorithm>
#include <cmath>
#include <numeric>

#include "core/trade/honey/apportion.h"

namespace combwright {
namespace {

/// Weights are compared in whole milligrams, so that equal remainders are seen to be equal.
std::int64_t yieldWeightOf(double grams) { return std::llround(grams * 1000.0); }

/// The boxes of one hive, or those whose hive nobody knows.
struct YieldLine {
    std::optional<std::string> hive;
    std::vector<std::size_t> boxes;
};

/// Lines in the order in which they first appear, the unknown one among them: ties go by that
/// order.
std::vector<YieldLine> yieldLines(const std::vector<std::optional<std::string>>& hives) {
    std::vector<YieldLine> lines;
    for (std::size_t i = 0; i < hives.size(); ++i) {
        auto line = std::find_if(lines.begin(), lines.end(),
                                 [&](const YieldLine& each) { return each.hive == hives[i]; });
        if (line == lines.end()) line = lines.insert(lines.end(), YieldLine{hives[i], {}});
        line->boxes.push_back(i);
    }
    return lines;
}

YieldShares yieldSharedOut(std::int64_t whole, const std::vector<std::optional<std::string>>& hives,
                           std::vector<double> offG, const std::vector<How>& how) {
    YieldShares shares;
    shares.offG = std::move(offG);
    const auto lines = yieldLines(hives);
    std::vector<std::int64_t> lineWeights;
    std::vector<std::vector<std::int64_t>> boxWeights;
    for (const YieldLine& line : lines) {
        boxWeights.emplace_back();
        for (const std::size_t box : line.boxes)
            boxWeights.back().push_back(yieldWeightOf(shares.offG[box]));
        lineWeights.push_back(
            std::accumulate(boxWeights.back().begin(), boxWeights.back().end(), std::int64_t{0}));
    }
    const auto lineParts = largestRemainder(whole, lineWeights);
    shares.boxes.assign(hives.size(), Mass());
    for (std::size_t l = 0; l < lines.size(); ++l) {
        const auto boxParts = largestRemainder(lineParts[l], boxWeights[l]);
        How lineHow = How::Weighed;
        for (std::size_t i = 0; i < lines[l].boxes.size(); ++i) {
            shares.boxes[lines[l].boxes[i]] = Mass::grams(boxParts[i]);
            lineHow = weaker(lineHow, how[lines[l].boxes[i]]);
        }
        if (lines[l].hive)
            shares.hives.push_back({*lines[l].hive, Mass::grams(lineParts[l]), lineHow});
        else {
            shares.unknown = Mass::grams(lineParts[l]);
            shares.unknownHow = lineHow;
        }
    }
    // Where no box is known to have lost anything nobody knows whose honey it is.
    if (std::accumulate(lineParts.begin(), lineParts.end(), std::int64_t{0}) == 0)
        shares.unknown = Mass::grams(whole);
    return shares;
}

std::string yieldBoxField(std::size_t index, const std::string& key) {
    return "boxes[" + std::to_string(index) + "]." + key;
}

}  // namespace

Result<YieldShares> shareYield(const YieldRun& run, const std::vector<YieldBox>& boxes,
                               Working* working) {
    std::vector<std::optional<std::string>> hives;
    std::vector<double> off(boxes.size(), 0);
    std::vector<How> how(boxes.size(), How::Weighed);
    std::optional<std::size_t> open;
    double known = 0;
    How others = How::Weighed;
    for (std::size_t i = 0; i < boxes.size(); ++i) {
        const YieldBox& box = boxes[i];
        hives.push_back(box.hive);
        if (!box.grossG || !box.wetG) {
            const std::string lacking = yieldBoxField(i, box.grossG ? "wet_g" : "gross_g");
            if (open) return Refusal{Code::SecondUnknown, lacking, {{"mark", box.mark}}};
            if (!run.cappingsG)
                return Refusal{Code::SecondUnknown, "cappings_g", {{"mark", box.mark}}};
            open = i;
            continue;
        }
        how[i] = box.how;
        others = weaker(others, box.how);
        off[i] = *box.grossG - *box.wetG;
        if (off[i] < 0)
            return Refusal{Code::Contradiction, yieldBoxField(i, "wet_g"), {{"other", "gross_g"}}};
        known += off[i];
    }
    const double found = run.bucketG + run.cappingsG.value_or(0) + run.scrapingsG.value_or(0);
    if (open) {
        // What is left is known no better than what was taken away.
        how[*open] = weaker(How::ByDifference, others);
        off[*open] = found - known;
        // Half a milligram below nothing is what floating point leaves of nothing.
        if (yieldWeightOf(off[*open]) < 0)
            return Refusal{
                Code::Contradiction, yieldBoxField(*open, "gross_g"), {{"other", "bucket_g"}}};
        off[*open] = std::max(0.0, off[*open]);
    }
    YieldShares shares =
        yieldSharedOut(Mass::roundedGrams(run.bucketG).grams(), hives, std::move(off), how);
    if (open) shares.byDifference.push_back(*open);
    if (!open && run.cappingsG) shares.unaccountedG = known - found;
    note(working, "off_boxes", std::accumulate(shares.offG.begin(), shares.offG.end(), 0.0), "g",
         "sum of full − wet");
    note(working, "in_buckets", run.bucketG, "g");
    if (run.cappingsG) note(working, "wet_cappings", *run.cappingsG, "g");
    if (run.scrapingsG) note(working, "scrapings", *run.scrapingsG, "g");
    if (open)
        note(working, "by_difference", shares.offG[*open], "g",
             "buckets + cappings + scrapings − the other boxes");
    if (shares.unaccountedG)
        note(working, "unaccounted", *shares.unaccountedG, "g",
             "off the boxes − buckets − cappings − scrapings");
    return shares;
}

YieldShares shareByEye(std::optional<double> bucketG, const std::vector<EstimatedBox>& boxes,
                       Working* working) {
    std::vector<std::optional<std::string>> hives;
    std::vector<double> off;
    for (const EstimatedBox& box : boxes) {
        hives.push_back(box.hive);
        off.push_back(box.honeyG);
    }
    const double reckoned = std::accumulate(off.begin(), off.end(), 0.0);
    note(working, "reckoned_in_boxes", reckoned, "g", "frames · filled share · full frame");
    const double whole = bucketG.value_or(reckoned);
    note(working, "in_buckets", whole, "g", bucketG ? "" : "as reckoned");
    return yieldSharedOut(Mass::roundedGrams(whole).grams(), hives, std::move(off),
                          std::vector<How>(boxes.size(), How::ByEye));
}

}  // namespace combwright
