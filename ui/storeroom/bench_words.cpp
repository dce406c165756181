#include "ui/storeroom/bench_words.h"

#include <QCoreApplication>
#include <QLocale>

#include "core/actions/storeroom/review_line.h"
#include "core/actions/storeroom/reviews.h"
#include "core/places/storeroom/verdicts.h"
#include "core/words/figures.h"
#include "core/words/kind_words.h"
#include "core/words/typed_words.h"
#include "core/words/words.h"
#include "ui/common/flat_row.h"

namespace combwright {
namespace {

QString benchWord(const char* text) { return QCoreApplication::translate("bench", text); }

QString verdictLabel(const BenchFrame& frame) {
    if (!frame.frame.verdict) return benchWord("not judged");
    const int digit = static_cast<int>(*frame.frame.verdict) + 1;
    return QStringLiteral("%1 %2").arg(digit).arg(choiceText(word(*frame.frame.verdict)));
}

BenchRowFrame rowFrame(const BenchFrame& each, std::uint64_t seed) {
    FlatFrame flat;
    flat.comb = each.frame.comb;
    const auto share = [](const std::optional<Share>& value) {
        return value ? std::optional(static_cast<double>(value->count()) / 10000.0) : std::nullopt;
    };
    flat.filledA = share(each.frame.filledA);
    flat.filledB = share(each.frame.filledB);
    flat.capped = share(each.frame.capped);
    flat.wet = each.frame.wet.value_or(false);
    flat.faults = each.frame.faults;
    BenchRowFrame shown;
    const FrameRowView row = flatRow(QString::number(seed), {flat}, frameShapeOf(each.kind));
    shown.view = row.counted.front();
    shown.view.seed = seed;
    shown.verdict =
        each.held && each.frame.verdict != Verdict::Hold ? benchWord("held") : verdictLabel(each);
    shown.plain = !each.held && each.frame.verdict.value_or(Verdict::Keep) == Verdict::Keep;
    shown.counted = !each.pointedAt;
    return shown;
}

QString readingText(const std::optional<Known<Mass>>& mass) {
    const auto grams = mass ? mass->middle() : std::nullopt;
    if (!grams) return {};
    const QString letterOf(QLatin1Char(letter(mass->how)));
    return shownPortion(*grams).text() + QChar(QChar::Nbsp) + letterOf;
}

QString factsOf(const BoxReview& review) {
    QStringList facts;
    facts << benchWord("looked through %1").arg(shortDayText(review.on));
    if (review.web) facts << (*review.web ? benchWord("web: yes") : benchWord("web: no"));
    if (!review.combYears.empty())
        facts << benchWord("combs of %1").arg(fromUtf8(review.combYears));
    if (const QString mass = readingText(review.scrapings); !mass.isEmpty())
        facts << benchWord("scraped off %1").arg(mass);
    if (const QString mass = readingText(review.propolis); !mass.isEmpty())
        facts << benchWord("propolis %1").arg(mass);
    if (review.scraped.value_or(false)) facts << benchWord("box scraped");
    if (!review.wood.empty()) facts << benchWord("wood: %1").arg(fromUtf8(review.wood));
    if (!review.note.empty()) facts << fromUtf8(review.note);
    return facts.join(QStringLiteral("  ·  "));
}

QString tallyWords(const ReviewTally& tally) {
    QStringList parts;
    if (tally.comb) parts << choiceText(word(*tally.comb));
    if (!tally.faults.empty()) parts << faultWords(tally.faults);
    const Verdict verdict = tally.verdict.value_or(verdictFor(tally.faults));
    const QString what = parts.isEmpty() ? choiceText(word(verdict))
                                         : parts.join(QStringLiteral(", ")) + QStringLiteral(": ") +
                                               choiceText(word(verdict));
    QString text = QStringLiteral("%1 %2").arg(tally.frames.value()).arg(what);
    if (!tally.frameKind.empty()) text += benchWord(" of %1").arg(fromUtf8(tally.frameKind));
    return text;
}

}  // namespace

BenchView benchView(const BenchBox& box, std::optional<std::size_t> frame) {
    BenchView view;
    view.mark = box.box.mark.empty() ? QStringLiteral("#%1").arg(box.box.id.number)
                                     : fromUtf8(box.box.mark);
    QStringList head{kindText(box.kind.name.text())};
    if (box.last && box.expected)
        head << benchWord("%1 found of %2").arg(box.last->found.value()).arg(box.expected->value());
    else if (box.last)
        head << benchWord("%1 found").arg(box.last->found.value());
    else if (!box.frames.empty())
        head << benchWord("%1 frames, not looked through yet").arg(box.frames.size());
    else
        head << benchWord("nobody counted its frames");
    view.head = head.join(QStringLiteral("; "));
    QStringList alarm;
    for (const Hold& hold : box.holds)
        alarm << benchWord("Held back since %1: %2.")
                     .arg(shortDayText(hold.since), choiceText(word(hold.why)));
    if (box.changedSince())
        alarm << benchWord("Changed since the last look: %1.").arg(box.changes());
    view.alarm = alarm.join(QLatin1Char(' '));
    std::uint64_t seed = static_cast<std::uint64_t>(box.box.id.number) * 64;
    for (const BenchFrame& each : box.frames) view.frames.push_back(rowFrame(each, ++seed));
    if (box.difference && *box.difference < 0)
        for (int i = 0; i < -*box.difference; ++i) {
            BenchRowFrame missing;
            missing.view.shape = frameShapeOf(box.takes);
            missing.view.found = false;
            missing.verdict = benchWord("not found");
            view.frames.push_back(missing);
        }
    if (frame && *frame < box.frames.size()) {
        view.current = frame;
        view.why = box.frames[*frame].why;
    }
    if (box.last) view.facts = factsOf(*box.last);
    return view;
}

BenchPanel::Echo readReviewBack(const BenchBox& box, const QString& line) {
    const auto read = parseReviewLine(typedInEnglish(line).toStdString(), BareMass::SmallUnit);
    if (!read) return {sentence(read.error()), true};
    QStringList parts;
    for (const ReviewTally& tally : read->tallies) parts << tallyWords(tally);
    const std::int64_t found = read->found().value();
    const auto had = static_cast<std::int64_t>(box.frames.size());
    QString text = had > 0 ? benchWord("%1 frames of %2: %3")
                                 .arg(static_cast<qlonglong>(found))
                                 .arg(static_cast<qlonglong>(had))
                                 .arg(parts.join(QStringLiteral(", ")))
                           : benchWord("%1 frames: %2")
                                 .arg(static_cast<qlonglong>(found))
                                 .arg(parts.join(QStringLiteral(", ")));
    QStringList more;
    if (read->web) more << (*read->web ? benchWord("web seen") : benchWord("no web"));
    if (read->scraped.value_or(false)) more << benchWord("box scraped");
    if (read->wantsPaint.value_or(false)) more << benchWord("wants paint");
    if (const QString mass = readingText(read->scrapings); !mass.isEmpty())
        more << benchWord("scrapings %1").arg(mass);
    if (const QString mass = readingText(read->propolis); !mass.isEmpty())
        more << benchWord("propolis %1").arg(mass);
    if (!read->combYears.empty()) more << benchWord("combs of %1").arg(fromUtf8(read->combYears));
    if (!read->wood.empty()) more << benchWord("wood: %1").arg(fromUtf8(read->wood));
    if (!read->note.empty()) more << benchWord("note: %1").arg(fromUtf8(read->note));
    if (!more.isEmpty()) text += QStringLiteral("; ") + more.join(QStringLiteral(", "));
    if (had > 0 && found < had)
        text += benchWord("; %1 not found").arg(static_cast<qlonglong>(had - found));
    return {text, false};
}

QString eveningGone(const EveningSum& sum) {
    QStringList lines;
    for (const EveningPart& part : sum.parts)
        lines << (part.gone.isEmpty() ? part.says
                                      : QStringLiteral("%1 → %2").arg(part.says, part.gone));
    return lines.join(QLatin1Char('\n'));
}

QString eveningText(const EveningSum& sum) {
    if (sum.boxes == 0) return {};
    QStringList parts;
    parts << (sum.boxes == 1 ? benchWord("1 box") : benchWord("%1 boxes").arg(sum.boxes));
    if (sum.expected.value() > 0)
        parts
            << benchWord("%1 of %2 frames found").arg(sum.found.value()).arg(sum.expected.value());
    for (const EveningPart& part : sum.parts) parts << part.says;
    if (sum.boxesWaiting > 0) parts << benchWord("%1 boxes still wait").arg(sum.boxesWaiting);
    return parts.join(QStringLiteral("  ·  "));
}

}  // namespace combwright
