#include "core/places/season_book/reckoned_got.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "core/catalogue/constants.h"
#include "core/storage/queries/constants.h"
#include "core/storage/queries/names.h"
#include "core/trade/learning/own_rate.h"

namespace combwright {
namespace {

using Runs = std::vector<RunRates>;

void widen(GotLine& line, double got) {
    if (!line.spread) line.spread = GotSpread{got, got};
    line.spread->low = std::min(line.spread->low, got);
    line.spread->high = std::max(line.spread->high, got);
    ++line.runs;
}

/// "Langstroth medium frame", without the sizes in brackets.
std::string plainName(const FrameKind& kind) {
    return kind.name.text().substr(0, kind.name.text().find(" ("));
}

/// "medium frame", where no other family has one of that name in the season.
std::string shortName(const FrameKind& kind) {
    const std::string name = plainName(kind);
    const std::string family = kind.family + " ";
    return name.starts_with(family) && name.size() > family.size() ? name.substr(family.size())
                                                                   : name;
}

Runs ofYard(const Runs& runs, Id<Yard> yard) {
    Runs some;
    for (const RunRates& run : runs)
        if (run.run.yard == yard) some.push_back(run);
    return some;
}

std::vector<Id<Yard>> yardsOf(const Runs& runs) {
    std::vector<Id<Yard>> yards;
    for (const RunRates& run : runs)
        if (run.run.yard && std::find(yards.begin(), yards.end(), *run.run.yard) == yards.end())
            yards.push_back(*run.run.yard);
    return yards;
}

/// As they would be kept: grams to ten, for scales show a hundred and a box holds ten frames.
double roundedAsKept(GotWhat what, double value) {
    switch (what) {
        case GotWhat::Frame:
            return std::round(value / 10.0) * 10.0;
        case GotWhat::Load:
            return std::round(value * 10.0) / 10.0;
        case GotWhat::Uncapping:
            return std::round(value * 100.0) / 100.0;
        default:
            return std::round(value * 1000.0) / 1000.0;
    }
}

/// A full frame of the kind by the published honey of a square decimetre, and how far that may be
/// off.
void takePublishedFrame(const FrameKind& kind, Learned& learned) {
    const PublishedConstant* honey = findPublishedConstant("full_frame_honey");
    if (!honey || !honey->publishedSd || !kind.combWidth || !kind.combHeight) return;
    const double dm2 = kind.combWidth->mm() * kind.combHeight->mm() / 10000.0;
    learned.published = dm2 * honey->value;
    learned.publishedDoubt = dm2 * *honey->publishedSd;
    learned.publishedSource = honey->source;
}

/// A run on its own where only a few are known: as far off as one crop from another.
double shareOrNone(std::string_view name) {
    const PublishedConstant* constant = findPublishedConstant(name);
    return constant ? constant->value : 0.0;
}

std::optional<double> doubtOfARun(const std::vector<double>& seen) {
    return runDoubt(seen, shareOrNone("crop_spread_share"), shareOrNone("fill_by_eye"));
}

const std::vector<FrameYield>& talliesOf(const RunRates& run, std::int64_t kind) {
    static const std::vector<FrameYield> none;
    const auto found = run.frames.find(kind);
    return found == run.frames.end() ? none : found->second;
}

/// What each run says of a full frame; where nobody judged the fill, of frames as they came.
void takeSeenFrames(const Runs& soFar, std::int64_t kind, bool judged, Learned& learned) {
    for (const RunRates& run : soFar) {
        auto tallies = talliesOf(run, kind);
        if (!judged)
            for (FrameYield& box : tallies) box.filledShare.reset();
        const auto rate = frameRate(tallies);
        if (!rate || (judged && !rate->filledShare)) continue;
        learned.seen.push_back(rate->fullFrameG);
        learned.tallies.insert(learned.tallies.end(), tallies.begin(), tallies.end());
    }
}

Learned learnedFrame(const FrameKind& kind, const Runs& soFar, bool judged) {
    Learned learned;
    takePublishedFrame(kind, learned);
    takeSeenFrames(soFar, kind.id.number, judged, learned);
    learned.doubtOfOne = doubtOfARun(learned.seen);
    if (const auto seen = seenRates(learned.seen)) learned.seenMean = seen->mean;
    if (!judged) {
        learned.by = LearnedBy::AsTheyCame;
    } else if (learned.published && learned.publishedDoubt && learned.doubtOfOne) {
        const auto mean = learnRate(*learned.published, *learned.publishedDoubt, learned.seen,
                                    *learned.doubtOfOne);
        if (mean) {
            learned.by = LearnedBy::WithPublished;
            learned.value = mean->value;
            learned.doubt = mean->sd;
            return learned;
        }
    }
    if (const auto rate = frameRate(learned.tallies)) learned.value = rate->fullFrameG;
    if (learned.doubtOfOne) learned.doubt = seenWithDoubt(learned.seen, *learned.doubtOfOne)->doubt;
    return learned;
}

std::optional<GotLine> frameLine(const Read& file, const FrameKind& kind, const Runs& now,
                                 const Runs& soFar, std::optional<Id<Yard>> yard) {
    GotLine line;
    std::optional<Extraction> last;
    for (const RunRates& run : now) {
        const auto& tallies = talliesOf(run, kind.id.number);
        if (tallies.empty()) continue;
        if (const auto rate = frameRate(tallies)) widen(line, rate->gotG);
        line.tallies.insert(line.tallies.end(), tallies.begin(), tallies.end());
        last = run.run;
    }
    const auto rate = frameRate(line.tallies);
    if (!rate) return std::nullopt;
    line.constant = "full_frame_g " + kind.code.text();
    line.kind = shortName(kind);
    line.yard = yard;
    line.rate = rate->rateG;
    line.reckoned = rate->reckonedG;
    line.got = rate->gotG;
    line.how = How::Weighed;
    line.filledShare = rate->filledShare;
    line.counted = rate->frames;
    line.learned = learnedFrame(kind, soFar, rate->filledShare.has_value());
    if (const auto held = constantInForce(file, line.constant, last->yard, last->on)) {
        line.own = held->own.has_value();
        line.rateSource = held->source;
    }
    return line;
}

/// Whether what yards say of a rate lies further apart than the doubts of two of them together.
bool yardsDiffer(const std::vector<RateWithDoubt>& yards) {
    for (std::size_t i = 0; i < yards.size(); ++i)
        for (std::size_t j = i + 1; j < yards.size(); ++j)
            if (apart(yards[i], yards[j])) return true;
    return false;
}

/// The lines of single yards, where they are worth one each.
void addFramesOfYards(const Read& file, const FrameKind& kind, const Runs& now, const Runs& soFar,
                      bool judged, std::vector<GotLine>& lines) {
    std::vector<RateWithDoubt> rates;
    for (const Id<Yard> yard : yardsOf(soFar)) {
        Learned seen;
        takeSeenFrames(ofYard(soFar, yard), kind.id.number, judged, seen);
        if (const auto doubt = doubtOfARun(seen.seen))
            rates.push_back(*seenWithDoubt(seen.seen, *doubt));
    }
    if (!yardsDiffer(rates)) return;
    for (const Id<Yard> yard : yardsOf(now))
        if (auto line = frameLine(file, kind, ofYard(now, yard), ofYard(soFar, yard), yard))
            if (!line->learned->seen.empty()) lines.push_back(*std::move(line));
}

std::vector<GotLine> frameLines(const Read& file, const Runs& now, const Runs& soFar) {
    std::map<std::int64_t, FrameKind> kinds;
    for (const RunRates& run : now) kinds.insert(run.kinds.begin(), run.kinds.end());
    std::vector<GotLine> lines;
    for (const auto& [id, kind] : kinds) {
        auto line = frameLine(file, kind, now, soFar, std::nullopt);
        if (!line) continue;
        const bool judged = line->filledShare.has_value();
        const std::size_t first = lines.size();
        lines.push_back(*std::move(line));
        addFramesOfYards(file, kind, now, soFar, judged, lines);
        for (const auto& [other, same] : kinds)
            if (other != id && shortName(same) == shortName(kind))
                for (std::size_t i = first; i < lines.size(); ++i) lines[i].kind = plainName(kind);
    }
    return lines;
}

struct PlainRate {
    GotWhat what;
    const char* constant;
    How how;
    RateSum RunRates::*sum;
};

std::optional<GotLine> plainLine(const Read& file, const PlainRate& plain, const Runs& now,
                                 const Runs& soFar, std::optional<Id<Yard>> yard) {
    GotLine line;
    line.what = plain.what;
    line.constant = plain.constant;
    line.how = plain.how;
    line.yard = yard;
    std::optional<Day> last;
    std::size_t many = 0;
    for (const RunRates& run : now) {
        const RateSum& sum = run.*plain.sum;
        if (sum.empty()) continue;
        widen(line, sum.rate());
        line.over += sum.over;
        line.under += sum.under;
        many += sum.each.size();
        last = run.run.on;
    }
    if (!last) return std::nullopt;
    line.got = line.over / line.under;
    line.counted = plain.what == GotWhat::Uncapping ? std::llround(line.under)
                                                    : static_cast<std::int64_t>(many);
    Learned learned;
    for (const RunRates& run : soFar) learned.sum.add(run.*plain.sum);
    learned.seen = learned.sum.each;
    learned.value = learned.sum.rate();
    if (const auto seen = seenRates(learned.seen)) {
        learned.seenMean = seen->mean;
        learned.doubtOfOne = seen->sd;
        if (seen->sd) learned.doubt = seenWithDoubt(learned.seen, *seen->sd)->doubt;
    }
    line.learned = std::move(learned);
    if (const auto held = constantInForce(file, line.constant, yard, *last)) {
        line.rate = held->value;
        line.reckoned = held->value;
        line.own = held->own.has_value();
        line.rateSource = held->source;
    }
    return line;
}

/// The room, the machine and the hands are the same for all yards; how much goes with the cappings
/// may not be.
void addCappingsOfYards(const Read& file, const PlainRate& plain, const Runs& now,
                        const Runs& soFar, std::vector<GotLine>& lines) {
    std::vector<RateWithDoubt> rates;
    for (const Id<Yard> yard : yardsOf(soFar)) {
        RateSum sum;
        for (const RunRates& run : ofYard(soFar, yard)) sum.add(run.*plain.sum);
        const auto seen = seenRates(sum.each);
        if (seen && seen->n >= runsThatShowSpread)
            rates.push_back(*seenWithDoubt(sum.each, *seen->sd));
    }
    if (!yardsDiffer(rates)) return;
    for (const Id<Yard> yard : yardsOf(now))
        if (auto line = plainLine(file, plain, ofYard(now, yard), ofYard(soFar, yard), yard))
            lines.push_back(*std::move(line));
}

std::optional<GotLine> fillLine(const Runs& now) {
    GotLine line;
    line.what = GotWhat::Fill;
    line.constant = "fill_by_eye";
    line.how = How::Weighed;
    std::vector<double> off;
    double judged = 0;
    for (const RunRates& run : now) {
        if (run.fills.empty()) continue;
        ++line.runs;
        off.insert(off.end(), run.fills.begin(), run.fills.end());
        judged += run.fillsJudged;
    }
    const auto seen = seenRates(off);
    if (!seen) return std::nullopt;
    const auto boxes = static_cast<double>(seen->n);
    line.counted = static_cast<std::int64_t>(seen->n);
    line.reckoned = judged / boxes;
    line.got = line.reckoned - seen->mean;
    line.boxSpread = seen->sd;
    if (const PublishedConstant* eye = findPublishedConstant(line.constant)) {
        line.rate = eye->value;
        line.rateSource = eye->source;
    }
    return line;
}

std::vector<GotLine> gotLines(const Read& file, const Runs& now, const Runs& soFar) {
    auto lines = frameLines(file, now, soFar);
    const PlainRate spin{GotWhat::Load, "spin_min_per_load", How::Counted, &RunRates::spinning};
    const PlainRate wax{GotWhat::Cappings, "cappings_honey_share", How::Weighed,
                        &RunRates::cappings};
    const PlainRate knife{GotWhat::Uncapping, "uncap_min_per_frame", How::Counted,
                          &RunRates::uncapping};
    if (auto line = plainLine(file, spin, now, soFar, std::nullopt))
        lines.push_back(*std::move(line));
    if (auto line = plainLine(file, wax, now, soFar, std::nullopt)) {
        lines.push_back(*std::move(line));
        addCappingsOfYards(file, wax, now, soFar, lines);
    }
    if (auto line = plainLine(file, knife, now, soFar, std::nullopt))
        lines.push_back(*std::move(line));
    if (auto line = fillLine(now)) lines.push_back(*std::move(line));
    return lines;
}

/// From the next season on; for a season that is over, from today.
Day holdsFrom(int year, Day today) {
    return year < yearOf(today) ? today : *makeDay(year + 1, 1, 1);
}

ReckonedAndGot answerFor(const Read& file, int year, const Runs& now, const Runs& soFar,
                         Day today) {
    ReckonedAndGot answer;
    answer.year = year;
    answer.from = holdsFrom(year, today);
    answer.source = "own runs of " + std::to_string(year);
    answer.lines = gotLines(file, now, soFar);
    for (GotLine& line : answer.lines) {
        if (line.runs < 2) line.spread.reset();
        if (line.yard) line.yardName = nameOf(file, Yard::table, line.yard->number);
        if (!line.learned) continue;
        line.offered = roundedAsKept(line.what, line.learned->value);
        for (Constant& own : file.where<Constant>({{"name", line.constant}}))
            if (own.yard == line.yard && own.source == answer.source &&
                own.value == Number::rounded(line.offered))
                line.taken = std::move(own);
        // Set by hand or by a script it is taken as well, whatever was written as its source.
        if (line.taken) continue;
        const auto then = constantInForce(file, line.constant, line.yard, answer.from);
        if (then && then->own && then->own->yard == line.yard &&
            then->own->value == Number::rounded(line.offered))
            line.taken = then->own;
    }
    return answer;
}

}  // namespace

ReckonedAndGot reckonedAndGot(const Read& file, const SeasonYield& season, Day today) {
    Runs now;
    Runs soFar;
    for (RunRates& run : runRatesUpTo(file, *makeDay(season.year, 12, 31))) {
        if (yearOf(run.run.on) == season.year) now.push_back(run);
        soFar.push_back(std::move(run));
    }
    return answerFor(file, season.year, now, soFar, today);
}

ReckonedAndGot reckonedAndGotOfRun(const Read& file, const RunBalance& balance, Day today) {
    // Of the same day only those before it: what one run taught does not change with the next.
    Runs soFar;
    for (RunRates& run : runRatesUpTo(file, balance.run.on))
        if (run.run.on < balance.run.on || run.run.id.number <= balance.run.id.number)
            soFar.push_back(std::move(run));
    return answerFor(file, yearOf(balance.run.on), {runRates(file, balance)}, soFar, today);
}

}  // namespace combwright
