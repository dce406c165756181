#include "core/places/reckoned_got.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "core/places/full_frame.h"
#include "core/storage/queries/constants.h"

namespace combwright {
namespace {

/// How long a look into a box on the hive speaks for what came out of it, as on the pull sheet.
/// Planning assumption, no source.
constexpr int lookSpeaksDays = 35;

/// How full a box was judged: in the honey room, else when it was looked into last.
std::optional<double> judgedFill(const Read& file, const ExtractionBox& box, Day on) {
    if (box.filled)
        if (const auto share = box.filled->middle()) return *share / 10000.0;
    if (!box.box) return std::nullopt;
    std::optional<BoxLook> newest;
    for (BoxLook& look : file.where<BoxLook>({is("box", *box.box)}))
        if (look.filled && look.on <= on && look.on + days(lookSpeaksDays) >= on &&
            (!newest || look.on >= newest->on))
            newest = std::move(look);
    const auto share = newest ? newest->filled->middle() : std::nullopt;
    return share ? std::optional(*share / 10000.0) : std::nullopt;
}

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

struct KindTallies {
    FrameKind kind;
    std::vector<std::vector<FrameYield>> runs;
    std::optional<Extraction> last;
};

std::vector<GotLine> frameLines(const Read& file, const SeasonYield& season) {
    std::map<std::int64_t, KindTallies> kinds;
    for (const RunBalance& balance : season.runs) {
        if (balance.byEye) continue;
        std::map<std::int64_t, std::vector<FrameYield>> ofRun;
        for (const RunBoxLine& line : balance.boxes) {
            if (line.byDifference || !line.offG || !line.box.frames) continue;
            const auto kind = file.find(line.box.frameKind);
            const auto full = kind ? fullFrameGramsOf(file, *kind, balance.run.yard, balance.run.on)
                                   : std::nullopt;
            if (!full) continue;
            kinds[kind->id.number].kind = *kind;
            ofRun[kind->id.number].push_back({line.box.frames->value(), *full,
                                              judgedFill(file, line.box, balance.run.on),
                                              *line.offG});
        }
        for (auto& [id, tallies] : ofRun) {
            kinds[id].runs.push_back(std::move(tallies));
            kinds[id].last = balance.run;
        }
    }
    std::vector<GotLine> lines;
    for (const auto& [id, found] : kinds) {
        GotLine line;
        for (const auto& tallies : found.runs) {
            if (const auto rate = frameRate(tallies)) widen(line, rate->gotG);
            line.tallies.insert(line.tallies.end(), tallies.begin(), tallies.end());
        }
        const auto rate = frameRate(line.tallies);
        if (!rate) continue;
        line.constant = "full_frame_g " + found.kind.code.text();
        line.kind = shortName(found.kind);
        for (const auto& [other, same] : kinds)
            if (other != id && shortName(same.kind) == line.kind) line.kind = plainName(found.kind);
        line.rate = rate->rateG;
        line.reckoned = rate->reckonedG;
        line.got = rate->gotG;
        line.how = How::Weighed;
        line.filledShare = rate->filledShare;
        line.counted = rate->frames;
        // To ten grams: scales show a hundred, and a box holds ten frames.
        line.offered = std::round(rate->fullFrameG / 10.0) * 10.0;
        if (const auto held =
                constantInForce(file, line.constant, found.last->yard, found.last->on)) {
            line.own = held->own.has_value();
            line.rateSource = held->source;
        }
        lines.push_back(std::move(line));
    }
    return lines;
}

void takeRate(const Read& file, GotLine& line, Day on) {
    const auto held = constantInForce(file, line.constant, std::nullopt, on);
    if (!held) return;
    line.rate = held->value;
    line.reckoned = held->value;
    line.own = held->own.has_value();
    line.rateSource = held->source;
}

std::optional<GotLine> loadLine(const Read& file, const SeasonYield& season) {
    GotLine line;
    line.what = GotWhat::Load;
    line.constant = "spin_min_per_load";
    line.how = How::Counted;
    for (const RunBalance& balance : season.runs) {
        double minutes = 0;
        std::int64_t loads = 0;
        for (const SpinLoad& load : file.where<SpinLoad>({is("extraction", balance.run.id)})) {
            if (!load.minutes) continue;
            minutes += static_cast<double>(load.minutes->value());
            ++loads;
        }
        if (loads == 0) continue;
        widen(line, minutesPerLoad(minutes, loads));
        line.over += minutes;
        line.counted += loads;
    }
    if (line.counted == 0) return std::nullopt;
    line.under = static_cast<double>(line.counted);
    line.got = minutesPerLoad(line.over, line.counted);
    line.offered = std::round(line.got * 10.0) / 10.0;
    takeRate(file, line, season.runs.back().run.on);
    return line;
}

std::optional<GotLine> cappingsLine(const Read& file, const SeasonYield& season) {
    GotLine line;
    line.what = GotWhat::Cappings;
    line.constant = "cappings_honey_share";
    line.how = How::Weighed;
    for (const RunBalance& balance : season.runs) {
        // With a box by difference what left the boxes was made of the cappings themselves.
        if (!balance.cappings || !balance.outOfBoxesG || *balance.outOfBoxesG <= 0 ||
            !balance.unaccountedG)
            continue;
        const auto cappings = static_cast<double>(balance.cappings->grams());
        widen(line, cappingsShare(cappings, *balance.outOfBoxesG));
        line.over += cappings;
        line.under += *balance.outOfBoxesG;
    }
    if (line.runs == 0) return std::nullopt;
    line.got = cappingsShare(line.over, line.under);
    line.offered = std::round(line.got * 1000.0) / 1000.0;
    takeRate(file, line, season.runs.back().run.on);
    return line;
}

/// From the next season on; for a season that is over, from today.
Day holdsFrom(int year, Day today) {
    return year < yearOf(today) ? today : *makeDay(year + 1, 1, 1);
}

}  // namespace

ReckonedAndGot reckonedAndGot(const Read& file, const SeasonYield& season, Day today) {
    ReckonedAndGot answer;
    answer.year = season.year;
    answer.from = holdsFrom(season.year, today);
    answer.source = "own runs of " + std::to_string(season.year);
    answer.lines = frameLines(file, season);
    if (auto line = loadLine(file, season)) answer.lines.push_back(*std::move(line));
    if (auto line = cappingsLine(file, season)) answer.lines.push_back(*std::move(line));
    for (GotLine& line : answer.lines) {
        if (line.runs < 2) line.spread.reset();
        for (Constant& own : file.where<Constant>({{"name", line.constant}}))
            if (!own.yard && own.source == answer.source &&
                own.value == Number::rounded(line.offered))
                line.taken = std::move(own);
    }
    return answer;
}

}  // namespace combwright
