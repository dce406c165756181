#include "core/actions/storeroom/reviews.h"

#include <algorithm>

#include "core/actions/boxes/box_steps.h"
#include "core/actions/boxes/frame_steps.h"
#include "core/actions/storeroom/frame_picks.h"
#include "core/actions/storeroom/quarantine.h"
#include "core/actions/storeroom/review_line.h"
#include "core/places/storeroom/verdicts.h"
#include "core/places/yard/box_changes.h"
#include "core/storage/queries/names.h"

namespace combwright {
namespace {

/// The kind of frame meant by its name, or by the word for the box it hangs in: "shallow".
Result<Id<FrameKind>> frameKindNamed(const Read& file, const std::string& name) {
    const NameQuery query{.name = name, .on = Day{}};
    if (const auto kind = findNamed(file, FrameKind::table, query)) return Id<FrameKind>{*kind};
    if (const auto box = boxKindNamed(file, name); box && box->takes) return *box->takes;
    return Refusal{Code::NotFound, "contents", {{"name", name}, {"choices", kindWords(file)}}};
}

/// One value said in two places must be the same.
template <class T>
Result<void> take(std::optional<T>& held, const std::optional<T>& said, const char* key) {
    if (held && said && *held != *said)
        return Refusal{Code::Contradiction, key, {{"other", "contents"}}};
    if (!held) held = said;
    return {};
}
Result<void> takeText(std::string& held, const std::string& said, const char* key) {
    if (!held.empty() && !said.empty() && held != said)
        return Refusal{Code::Contradiction, key, {{"other", "contents"}}};
    if (held.empty()) held = said;
    return {};
}

/// The action with what its line says in its fields.
Result<ReviewBox> gathered(ReviewBox review, const ReviewLine& line) {
    if (auto ok = take(review.web, line.web, "web"); !ok) return ok.error();
    if (auto ok = take(review.scraped, line.scraped, "scraped"); !ok) return ok.error();
    if (auto ok = take(review.wantsPaint, line.wantsPaint, "wants_paint"); !ok) return ok.error();
    if (auto ok = take(review.scrapings, line.scrapings, "scrapings_g"); !ok) return ok.error();
    if (auto ok = take(review.propolis, line.propolis, "propolis_g"); !ok) return ok.error();
    if (auto ok = takeText(review.combYears, line.combYears, "comb_years"); !ok) return ok.error();
    if (auto ok = takeText(review.wood, line.wood, "wood"); !ok) return ok.error();
    if (auto ok = takeText(review.note, line.note, "note"); !ok) return ok.error();
    return review;
}

bool hasComb(const Frame& frame) {
    return frame.comb && *frame.comb != Comb::Bare && *frame.comb != Comb::Foundation;
}

/// What was seen speaks of a comb unless only the wood was looked at.
bool speaksOfComb(const CountedFrame& counted, bool verdictSaid) {
    if (!faultsOfWood(counted.faults).empty() &&
        faultsOfWood(counted.faults).size() == counted.faults.size())
        return false;
    return !counted.faults.empty() ||
           (verdictSaid && counted.verdict != Verdict::Repair && counted.verdict != Verdict::Burn);
}

/// What each frame of the line is counted as, and whether its verdict was said.
struct FramesOfLine {
    std::vector<std::optional<Id<FrameKind>>> otherKinds;  ///< of each part, where it is not usual
    std::vector<CountedFrame> frames;
    std::vector<bool> verdictSaid;
};

Result<FramesOfLine> framesOfLine(const Read& file, const ReviewLine& line, const BoxKind& kind) {
    FramesOfLine all;
    for (const ReviewTally& tally : line.tallies) {
        std::optional<Id<FrameKind>> meant = kind.takes;
        if (!tally.frameKind.empty()) {
            const auto named = frameKindNamed(file, tally.frameKind);
            if (!named) return named.error();
            meant = *named;
        }
        all.otherKinds.push_back(meant == kind.takes ? std::nullopt : meant);
        if (!meant && tally.frames > Count())
            return Refusal{Code::UnknownSize, "box", {{"name", kind.name.text()}}};
        for (std::int64_t n = 0; n < tally.frames.value(); ++n) {
            all.frames.push_back({*meant, tally.comb, tally.faults,
                                  tally.verdict.value_or(verdictFor(tally.faults))});
            all.verdictSaid.push_back(tally.verdict.has_value());
        }
    }
    return all;
}

/// Puts what was seen on the frames met; see mayLift for those that are held.
void putSeen(Write& file, std::vector<MetFrame>& met, const FramesOfLine& seen, Day on,
             const std::string& note) {
    for (std::size_t i = 0; i < met.size(); ++i) {
        Frame& frame = met[i].frame;
        const CountedFrame& counted = met[i].counted;
        const Frame before = frame;
        // Judged one by one this evening, and the line says only what is seen: that stays.
        const bool judged = frame.reviewed == on && frame.verdict && frame.faults == counted.faults;
        const auto verdict = seen.verdictSaid[i] || !judged ? counted.verdict : frame.verdict;
        if (liftsHold(frame, verdict)) {
            if (!mayLift(frame, verdict, note)) {
                if (frame.reviewed != on) {
                    frame.reviewed = on;
                    file.change(frame);
                }
                continue;
            }
            addNote(frame, note);
        }
        frame.verdict = verdict;
        frame.faults = counted.faults;
        if (counted.comb) frame.comb = counted.comb;
        if (!frame.comb && speaksOfComb(counted, seen.verdictSaid[i])) frame.comb = Comb::Drawn;
        frame.reviewed = on;
        if (toRow(frame) != toRow(before)) file.change(frame);
    }
}

/// Gives the combs their years, the oldest to those that have that year already, then to the worst.
Result<void> putYears(Write& file, std::vector<MetFrame>& met, const std::vector<CombYear>& years) {
    std::vector<Frame*> combs;
    for (MetFrame& each : met)
        if (hasComb(each.frame)) combs.push_back(&each.frame);
    Count told;
    for (const CombYear& each : years) told += each.combs;
    if (told > Count(static_cast<std::int64_t>(combs.size())))
        return Refusal{Code::TooMany, "comb_years", {{"most", std::to_string(combs.size())}}};
    std::stable_sort(combs.begin(), combs.end(), [](const Frame* a, const Frame* b) {
        return gravityOf(a->verdict.value_or(Verdict::Keep)) >
               gravityOf(b->verdict.value_or(Verdict::Keep));
    });
    std::vector<Frame*> left = combs;
    const auto give = [&](Frame& frame, Count year) {
        if (frame.drawnYear != year) {
            frame.drawnYear = year;
            file.change(frame);
        }
        std::erase(left, &frame);
    };
    std::vector<CombYear> toGive = years;
    for (CombYear& each : toGive)
        for (Frame* frame : combs)
            if (each.combs > Count() && frame->drawnYear == each.year &&
                std::find(left.begin(), left.end(), frame) != left.end()) {
                give(*frame, each.year);
                each.combs -= Count(1);
            }
    for (CombYear& each : toGive)
        for (; each.combs > Count(); each.combs -= Count(1)) give(*left.front(), each.year);
    return {};
}

/// What a look of that day said before is struck: the second replaces the first. Its combs keep
/// their years where later work on the box stands on them.
void strikeEarlier(Write& file, const BoxReview& earlier) {
    for (const RawWax& wax : file.where<RawWax>({is("review", earlier.id)})) file.remove(wax.id);
    for (const BoxCount& count :
         file.where<BoxCount>({is("box", earlier.box), is("on_day", earlier.on),
                               is("occasion", Occasion::WinterReview)}))
        file.remove(count.id);
    if (earlier.combYears.empty() || overtaken(file, earlier.box, earlier.on)) return;
    const auto years = parseCombYears(earlier.combYears);
    if (!years) return;
    for (Frame& frame : file.where<Frame>({is("box", earlier.box), is("reviewed", earlier.on)})) {
        const bool given = std::any_of(years->begin(), years->end(), [&](const CombYear& each) {
            return frame.drawnYear == each.year;
        });
        if (!given) continue;
        frame.drawnYear.reset();
        file.change(frame);
    }
}

bool sawFoulbrood(const std::vector<CountedFrame>& frames) {
    return std::any_of(frames.begin(), frames.end(), [](const CountedFrame& each) {
        return each.faults.find('Q') != std::string::npos;
    });
}

std::optional<Count> expectedIn(const Read& file, const Box& box) {
    if (file.first<Frame>({is("box", box.id)}))
        return Count(static_cast<std::int64_t>(liveFrames(file, box.id).size()));
    return usualFramesIn(file, box.kind, box.id);
}

Result<void> changeBox(Write& file, Box box, const ReviewBox& said) {
    const Box before = box;
    if (said.condition) box.condition = *said.condition;
    if (said.wantsPaint) box.wantsPaint = said.wantsPaint;
    if (!inUse(box) && box.place == BoxPlace::OnHive)
        return Refusal{Code::Contradiction, "condition", {{"other", "place"}}};
    if (toRow(box) != toRow(before)) file.change(box);
    return {};
}

}  // namespace

const Fields& ReviewBox::fields() {
    static const Fields all = describe(
        field<&ReviewBox::on>("on"), field<&ReviewBox::box>("box"),
        field<&ReviewBox::contents>("contents"), field<&ReviewBox::web>("web"),
        field<&ReviewBox::scraped>("scraped"), known<&ReviewBox::scrapings>("scrapings"),
        known<&ReviewBox::propolis>("propolis"), field<&ReviewBox::combYears>("comb_years"),
        field<&ReviewBox::wood>("wood"), field<&ReviewBox::condition>("condition"),
        field<&ReviewBox::wantsPaint>("wants_paint"), field<&ReviewBox::note>("note"));
    return all;
}

Result<Id<BoxReview>> ReviewBox::perform(Write& file) const {
    const auto present = file.find(box);
    if (!present) return Refusal{Code::NotFound, "box", {}};
    if (on < present->since)
        return Refusal{Code::BeforeItBegan,
                       "on",
                       {{"name", present->mark}, {"since", isoText(present->since)}}};
    if (!inUse(*present)) return Refusal{Code::Closed, "box", {{"name", present->mark}}};
    const auto kind = file.find(present->kind);
    const auto line = parseReviewLine(contents);
    if (!line) return line.error();
    if (line->tallies.empty()) return Refusal{Code::Missing, "contents", {}};
    const auto said = gathered(*this, *line);
    if (!said) return said.error();
    const auto years = parseCombYears(said->combYears);
    if (!years) return years.error();
    for (const CombYear& each : *years)
        if (each.year.value() > yearOf(on))
            return Refusal{Code::OutOfRange,
                           "comb_years",
                           {{"low", "1900"}, {"high", isoText(on).substr(0, 4)}}};
    const auto seen = framesOfLine(file, *line, *kind);
    if (!seen) return seen.error();
    BoxContents counted;
    counted.tallies.push_back({line->found(), std::nullopt, {}});
    if (auto fits = demandFits(*kind, counted); !fits) return fits.error();
    const bool webCounted = std::any_of(
        seen->frames.begin(), seen->frames.end(),
        [](const CountedFrame& each) { return each.faults.find('W') != std::string::npos; });
    if (webCounted && said->web == false)
        return Refusal{Code::Contradiction, "web", {{"other", "contents"}}};

    BoxReview review;
    const auto earlier = file.where<BoxReview>({is("box", box), is("on_day", on)});
    if (!earlier.empty()) review = earlier.back();
    if (!review.id) review.expected = expectedIn(file, *present);
    review.box = box;
    review.on = on;
    review.found = line->found();
    review.web = webCounted ? std::optional(true) : said->web;
    review.scraped = said->scraped;
    review.scrapings = said->scrapings;
    review.propolis = said->propolis;
    review.wood = said->wood;
    review.combYears = said->combYears;
    review.line = contents;
    review.note = said->note;
    if (review.id) {
        strikeEarlier(file, earlier.back());
        file.change(review);
    } else {
        file.add(review);
    }
    for (std::size_t i = 0; i < line->tallies.size(); ++i) {
        const ReviewTally& tally = line->tallies[i];
        if (tally.frames > Count())
            file.add(BoxCount{{},
                              box,
                              on,
                              Occasion::WinterReview,
                              tally.comb,
                              tally.faults,
                              tally.frames,
                              tally.verdict.value_or(verdictFor(tally.faults)),
                              seen->otherKinds[i]});
    }
    if (review.scrapings && (!review.scrapings->value || review.scrapings->value > Mass()))
        file.add(RawWax{{},
                        on,
                        RawWaxSource::Scrapings,
                        review.id,
                        box,
                        std::nullopt,
                        std::nullopt,
                        review.scrapings,
                        {}});
    if (sawFoulbrood(seen->frames)) quarantineSeen(file, box, on);
    if (overtaken(file, box, on)) return review.id;
    auto met = meetFrames(file, box, seen->frames, on);
    putSeen(file, met, *seen, on, review.note);
    if (auto ok = putYears(file, met, *years); !ok) return ok.error();
    if (auto ok = changeBox(file, *present, *said); !ok) return ok.error();
    return review.id;
}

Result<ReviewBox> reviewTyped(Day on, Id<Box> box, std::string_view text) {
    const auto line = parseReviewLine(text, BareMass::SmallUnit);
    if (!line) return line.error();
    ReviewBox review;
    review.on = on;
    review.box = box;
    auto whole = gathered(review, *line);
    if (!whole) return whole;
    whole->contents = line->counts;
    return whole;
}

}  // namespace combwright
