#include "core/places/storeroom/bench.h"

#include <QCoreApplication>
#include <QStringList>
#include <algorithm>
#include <map>
#include <set>

#include "core/places/storeroom/verdicts.h"
#include "core/places/wax_bench/comb_wax.h"
#include "core/storage/queries/holds.h"
#include "core/words/figures.h"
#include "core/words/kind_words.h"
#include "core/words/words.h"

namespace combwright {
namespace {

QString benchText(const char* text) { return QCoreApplication::translate("bench", text); }

/// "M2" before "M10".
bool marksInOrder(const std::string& a, const std::string& b) {
    const auto parts = [](const std::string& mark) {
        const std::size_t digits = mark.find_last_not_of("0123456789") + 1;
        const bool counted = digits < mark.size() && mark.size() - digits < 10;
        return std::pair(counted ? mark.substr(0, digits) : mark,
                         counted ? std::stoll(mark.substr(digits)) : -1LL);
    };
    return parts(a) < parts(b);
}

bool inStoreroom(const Box& box) {
    return inUse(box) && (box.place == BoxPlace::Storeroom || box.place == BoxPlace::Freezer);
}

/// Those with a place stand there, the others fill what is free from the left.
void layFlat(std::vector<BenchFrame>& frames) {
    std::set<int> taken;
    for (BenchFrame& each : frames)
        if (each.frame.position) {
            each.pointedAt = true;
            each.slot = static_cast<int>(each.frame.position->value());
            taken.insert(each.slot);
        }
    int next = 1;
    for (BenchFrame& each : frames) {
        if (each.pointedAt) continue;
        while (taken.contains(next)) ++next;
        each.slot = next++;
    }
    std::stable_sort(frames.begin(), frames.end(),
                     [](const BenchFrame& a, const BenchFrame& b) { return a.slot < b.slot; });
}

std::optional<BoxReview> lastReview(const Read& file, Id<Box> box, Day on) {
    std::optional<BoxReview> last;
    for (BoxReview& review : file.where<BoxReview>({is("box", box)}))
        if (review.on <= on && (!last || review.on >= last->on)) last = std::move(review);
    return last;
}

/// Frames that came into a box or left it after its last look, however they did; as of `on`.
void countComings(const Read& file, BenchBox& bench, Day on) {
    if (!bench.last) return;
    int seen = 0;
    int there = 0;
    for (const Frame& frame : file.where<Frame>({is("box", bench.box.id)})) {
        if (frame.retired && *frame.retiredOn <= on) continue;
        ++there;
        if (frame.reviewed && *frame.reviewed >= bench.last->on) ++seen;
    }
    bench.cameSince = there - seen;
    bench.wentSince = std::max(static_cast<int>(bench.last->found.value()) - seen, 0);
}

QString changeText(const BoxChange& change) {
    switch (change.what) {
        case BoxChange::What::Moved:
            return benchText("moved on %1 (%2)")
                .arg(dayAndMonth(change.on),
                     change.place ? choiceText(word(*change.place)) : QString());
        case BoxChange::What::Counted:
            return benchText("counted on %1").arg(dayAndMonth(change.on));
        case BoxChange::What::Looked:
            return benchText("looked into on %1").arg(dayAndMonth(change.on));
        case BoxChange::What::FramesMoved:
        case BoxChange::What::FramesWorked:
            break;  // of single frames: shown on them
        case BoxChange::What::Reviewed:
            return benchText("looked through again on %1").arg(dayAndMonth(change.on));
    }
    return {};
}

QString combsOf(int many, const FrameKind& kind) { return framesText(many, kind); }

/// Masses of an evening added up, as well known as the weakest.
struct MassSum {
    std::int64_t grams = 0;
    std::optional<How> how;
    int notWeighed = 0;
    void add(const std::optional<Known<Mass>>& reading) {
        if (!reading) return;
        if (!reading->value) {
            ++notWeighed;
            return;
        }
        grams += static_cast<std::int64_t>(*reading->middle());
        how = how ? weaker(*how, reading->how) : reading->how;
    }
    bool any() const { return how || notWeighed > 0; }
};

EveningPart massPart(EveningPart::What what, const MassSum& sum, const QString& says,
                     const QString& gone) {
    EveningPart part;
    part.what = what;
    if (sum.how) part.mass = Mass::grams(sum.grams);
    part.how = sum.how;
    part.notWeighed = sum.notWeighed;
    const QString mass =
        sum.how ? shownPortion(static_cast<double>(sum.grams)).text() : benchText("not weighed");
    part.says = says.arg(mass);
    part.gone = gone;
    return part;
}

struct PlannedWork {
    Verdict verdict;
    EveningPart::What what;
    const char* says;
    const char* gone;
};

constexpr PlannedWork plannedWorks[] = {
    {Verdict::Refit, EveningPart::What::Refit, QT_TRANSLATE_NOOP("bench", "to refit: %1"),
     QT_TRANSLATE_NOOP("bench", "on the work list; combs to the pot, about %1 of wax")},
    {Verdict::Repair, EveningPart::What::Repair, QT_TRANSLATE_NOOP("bench", "to repair: %1"),
     QT_TRANSLATE_NOOP("bench", "on the work list")},
    {Verdict::Scrape, EveningPart::What::Scrape, QT_TRANSLATE_NOOP("bench", "to scrape: %1"),
     QT_TRANSLATE_NOOP("bench", "on the work list")},
    {Verdict::Freeze, EveningPart::What::Freeze, QT_TRANSLATE_NOOP("bench", "to freeze: %1"),
     QT_TRANSLATE_NOOP("bench", "on the freezer list")},
    {Verdict::Melt, EveningPart::What::Melt, QT_TRANSLATE_NOOP("bench", "to melt: %1"),
     QT_TRANSLATE_NOOP("bench", "to the pot, about %1 of wax; the frames go")},
    {Verdict::Hold, EveningPart::What::Hold, QT_TRANSLATE_NOOP("bench", "held back: %1"),
     QT_TRANSLATE_NOOP("bench", "on hold, apart, until disease is ruled out")},
    {Verdict::Burn, EveningPart::What::Burn, QT_TRANSLATE_NOOP("bench", "to burn: %1"),
     QT_TRANSLATE_NOOP("bench", "on the work list")},
};

}  // namespace

QString BenchBox::changes() const {
    QStringList said;
    for (const BoxChange& change : since) said << changeText(change);
    if (cameSince > 0) said << benchText("%1 frames came").arg(cameSince);
    if (wentSince > 0) said << benchText("%1 frames gone").arg(wentSince);
    return said.join(QStringLiteral(", "));
}

std::optional<BenchBox> benchBox(const Read& file, Id<Box> id, Day on) {
    const auto box = file.find(id);
    const auto kind = box ? file.find(box->kind) : std::nullopt;
    if (!kind) return std::nullopt;
    BenchBox bench;
    bench.box = *box;
    bench.kind = *kind;
    bench.takes = file.find(kind->takes);
    const HeldThings held = heldThings(file, on);
    if (const auto whole = held.boxes.find(id.number); whole != held.boxes.end())
        bench.holds = whole->second;
    const auto live = file.where<Frame>({is("box", id), isUnknown("retired")});
    for (const Frame& frame : live) {
        BenchFrame each;
        each.frame = frame;
        each.kind = file.find(frame.kind).value_or(FrameKind{});
        each.usual = verdictFor(frame.faults);
        each.overruled = frame.verdict && *frame.verdict != each.usual;
        each.why = whyVerdict(frame);
        each.held = held.holds(frame);
        each.use = useOf(frame, each.held);
        bench.frames.push_back(std::move(each));
    }
    layFlat(bench.frames);
    bench.last = lastReview(file, id, on);
    if (bench.last) bench.since = changesOfBox(file, id, bench.last->on, on);
    // Where the box went through more since the look was typed, its frames were never met by it.
    if (bench.since.empty()) countComings(file, bench, on);
    const Count now(static_cast<std::int64_t>(live.size()));
    bench.expected = bench.last
                         ? bench.last->expected
                         : (live.empty() ? usualFramesIn(file, kind->id, id) : std::optional(now));
    if (bench.last && bench.last->expected)
        bench.difference =
            static_cast<int>(bench.last->found.value() - bench.last->expected->value());
    bench.overNominal = kind->framesNominal && now > *kind->framesNominal;
    return bench;
}

std::vector<Box> boxesInShelfOrder(const Read& file) {
    auto boxes = file.all<Box>();
    std::erase_if(boxes, [](const Box& box) { return !inStoreroom(box); });
    std::stable_sort(boxes.begin(), boxes.end(), [](const Box& a, const Box& b) {
        if (a.stack != b.stack) return a.stack < b.stack;
        return marksInOrder(a.mark, b.mark);
    });
    return boxes;
}

bool BenchBox::underSuspicion() const {
    return std::any_of(holds.begin(), holds.end(),
                       [](const Hold& hold) { return hold.why == HoldWhy::SuspectedDisease; });
}

QString typedLine(const BoxReview& review) {
    QStringList remarks;
    if (review.web) remarks << (*review.web ? QStringLiteral("web") : QStringLiteral("no web"));
    if (review.scraped)
        remarks << (*review.scraped ? QStringLiteral("scraped") : QStringLiteral("not scraped"));
    const auto mass = [&](const char* what, const std::optional<Known<Mass>>& known) {
        if (!known || !known->value) return;
        QString text = shownPortion(static_cast<double>(known->value->grams())).text();
        if (typedMass(text) != known->value)
            text = QStringLiteral("%1 g").arg(static_cast<qlonglong>(known->value->grams()));
        const QString about = known->how == How::ByEye ? QStringLiteral("~") : QString();
        remarks << QStringLiteral("%1 %2%3").arg(QLatin1String(what), about, text);
    };
    mass("wax", review.scrapings);
    mass("propolis", review.propolis);
    if (!review.combYears.empty())
        remarks << QStringLiteral("years %1").arg(fromUtf8(review.combYears));
    if (!review.wood.empty()) remarks << QStringLiteral("wood %1").arg(fromUtf8(review.wood));
    // In quotes, so that it may hold anything.
    if (!review.note.empty()) remarks << QStringLiteral("\"%1\"").arg(fromUtf8(review.note));
    QString line = fromUtf8(review.line);
    if (!remarks.isEmpty()) line += QStringLiteral("; ") + remarks.join(QStringLiteral(", "));
    return line;
}

std::vector<BenchWaiting> boxesWaiting(const Read& file, Day on) {
    std::map<std::int64_t, Day> looked;
    for (const BoxReview& review : file.all<BoxReview>())
        if (review.on <= on)
            looked[review.box.number] =
                std::max(looked.try_emplace(review.box.number, review.on).first->second, review.on);
    std::vector<BenchWaiting> waiting;
    for (const Box& box : boxesInShelfOrder(file)) {
        const auto last = looked.find(box.id.number);
        if (last == looked.end()) {
            waiting.push_back({box, std::nullopt, false});
            continue;
        }
        const auto bench = benchBox(file, box.id, on);
        if (bench && bench->changedSince()) waiting.push_back({box, last->second, true});
    }
    return waiting;
}

EveningSum eveningSum(const Read& file, Day day) {
    EveningSum sum;
    sum.day = day;
    MassSum scrapings;
    MassSum propolis;
    std::map<Verdict, std::map<std::int64_t, int>> byVerdict;
    int wantPaint = 0;
    for (const BoxReview& review : file.where<BoxReview>({is("on_day", day)})) {
        ++sum.boxes;
        if (review.expected) {
            sum.expected += *review.expected;
            sum.found += review.found;
            const auto more = static_cast<int>(review.found.value() - review.expected->value());
            (more < 0 ? sum.missing : sum.over) += std::abs(more);
        } else {
            ++sum.notExpected;
        }
        scrapings.add(review.scrapings);
        propolis.add(review.propolis);
        const auto box = file.find(review.box);
        if (box && box->wantsPaint == true) ++wantPaint;
        const auto kind = box ? file.find(box->kind) : std::nullopt;
        for (const BoxCount& count :
             file.where<BoxCount>({is("box", review.box), is("on_day", day),
                                   is("occasion", Occasion::WinterReview)})) {
            if (!count.verdict) continue;
            const auto frames = static_cast<int>(count.frames.value());
            if (*count.verdict == Verdict::Keep)
                sum.kept += frames;
            else {
                const auto of = count.frameKind ? count.frameKind
                                : kind          ? kind->takes
                                                : std::nullopt;
                byVerdict[*count.verdict][of ? of->number : 0] += frames;
            }
        }
    }
    if (scrapings.any())
        sum.parts.push_back(massPart(EveningPart::What::Scrapings, scrapings,
                                     benchText("scrapings: %1"),
                                     benchText("raw wax that waits for the pot")));
    if (propolis.any())
        sum.parts.push_back(massPart(EveningPart::What::Propolis, propolis,
                                     benchText("propolis: %1"), benchText("kept with the looks")));
    for (const PlannedWork& work : plannedWorks)
        for (const auto& [kindNumber, frames] : byVerdict[work.verdict]) {
            EveningPart part;
            part.what = work.what;
            part.kind = file.find(Id<FrameKind>{kindNumber});
            part.frames = frames;
            const FrameKind kind = part.kind.value_or(FrameKind{});
            part.says = benchText(work.says).arg(combsOf(frames, kind));
            part.gone = benchText(work.gone);
            if (part.gone.contains(QLatin1String("%1"))) {
                const auto each = combWaxGrams(file, kind, day);
                part.gone = part.gone.arg(each ? shownPortion(*each * frames).text()
                                               : benchText("an unknown mass"));
            }
            sum.parts.push_back(std::move(part));
        }
    if (wantPaint > 0) {
        EveningPart part;
        part.what = EveningPart::What::Paint;
        part.frames = wantPaint;
        part.says = benchText("boxes that want paint: %1").arg(wantPaint);
        part.gone = benchText("on the work list");
        sum.parts.push_back(std::move(part));
    }
    sum.boxesWaiting = static_cast<int>(boxesWaiting(file, day).size());
    return sum;
}

QString EveningSum::text() const {
    QStringList lines;
    QString first = benchText("%1 boxes looked through").arg(boxes);
    if (expected > Count())
        first +=
            benchText(", %1 frames found of %2 expected").arg(found.value()).arg(expected.value());
    if (missing > 0) first += benchText(", %1 missing").arg(missing);
    if (over > 0) first += benchText(", %1 over").arg(over);
    lines << first << benchText("to keep as they are: %1").arg(kept);
    for (const EveningPart& part : parts) lines << part.says + QStringLiteral(" → ") + part.gone;
    lines << benchText("boxes that wait: %1").arg(boxesWaiting);
    return lines.join(QLatin1Char('\n'));
}

}  // namespace combwright
