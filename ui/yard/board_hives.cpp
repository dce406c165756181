#include "ui/yard/board_hives.h"

#include <QCoreApplication>
#include <QLocale>
#include <algorithm>
#include <iterator>

#include "core/places/pages/yard/queen_words.h"
#include "core/places/pages/yard/yard_sheet_page.h"
#include "core/places/yard/yard_box.h"
#include "core/storage/queries/hive_days.h"
#include "core/words/words.h"

namespace combwright {
namespace {

QString boardWord(const char* text) { return QCoreApplication::translate("yard_board", text); }

/// What was seen of the nest stands in chalk on its lowest box.
QStringList nestWords(const Seen& seen) {
    QStringList words;
    if (seen.brood) words << boardWord("%1 brood").arg(framesText(*seen.brood));
    if (seen.stores) words << boardWord("%1 stores").arg(framesText(*seen.stores));
    if (!seen.brood && seen.eggs)
        words.prepend(*seen.eggs ? boardWord("eggs") : boardWord("no eggs"));
    if (!seen.brood && words.size() < 2) words << boardWord("brood not counted");
    return words;
}

/// What was seen and when, in one line: a corner word would lie under the chalk line of a full box
/// and beside the words of an empty one.
QString lookWords(const BoxLook& look, const Count& nominal, Day on) {
    // Low in the box the line leaves its words only the room beside the mark.
    const bool low = look.filled && look.filled->value && look.filled->value->value() < 0.5;
    if (low && look.cappedFrames && look.cappedFrames->value)
        return boardWord("%1 capped").arg(framesText(*look.cappedFrames));
    if (low) return boardWord("%1 % full").arg(look.filled->value->value() * 100, 0, 'f', 0);
    const QString day = look.on == on ? boardWord("today") : dayAndMonth(look.on);
    if (look.cappedFrames && look.cappedFrames->value)
        return boardWord("%1 capped, %2").arg(framesText(*look.cappedFrames), day);
    if (look.filled && look.filled->value)
        return boardWord("%1 % full, %2")
            .arg(look.filled->value->value() * 100, 0, 'f', 0)
            .arg(day);
    const std::int64_t frames = look.frames ? look.frames->value() : nominal.value();
    return boardWord("%1 frames, %2").arg(frames).arg(day);
}

BoxView superView(const Read& file, const Box& box, const BoxKind& kind, Day on) {
    BoxView view;
    view.mark = fromUtf8(box.mark);
    view.heightMm = kind.outerHeight ? kind.outerHeight->mm() : view.heightMm;
    if (const auto look = newestLookHere(file, box, on)) {
        view.words = {lookWords(*look, kind.framesNominal.value_or(Count(10)), on)};
        if (look->filled && look->filled->value) view.filled = look->filled->value->value();
        return view;
    }
    // Put on today it is empty, and everybody knows.
    view.lookedInto = onHiveSince(file, box, on) == on;
    if (view.lookedInto) view.corner = boardWord("today");
    return view;
}

BoxView nestView(const Box& box, const BoxKind& kind) {
    BoxView view;
    view.mark = fromUtf8(box.mark);
    view.heightMm = kind.outerHeight ? kind.outerHeight->mm() : view.heightMm;
    view.brood = true;
    return view;
}

// Words under a hive ------------------------------------------------------------------------------

TextLine plainLine(const QString& text, Tone tone = Tone::Muted) {
    return {TextRun{text, tone != Tone::Muted, tone}};
}

WordsUnder oneWay(const QString& text, Tone tone = Tone::Muted) {
    return {{plainLine(text, tone)}};
}

QString heldLetter(const std::optional<Known<Count>>& reading) {
    return reading ? QString(QLatin1Char(letter(reading->how))) : QString();
}

/// "mites 11 c in 300 e: 3.67 %", and shorter where the hive is narrow.
WordsUnder mitesUnder(const Mind& mind, Day on) {
    const Tone tone = mind.kind == MindKind::MitesOver ? Tone::Bad : Tone::Muted;
    const bool bold = tone == Tone::Bad;
    const QString when =
        mind.since == on ? QString() : boardWord(" on %1").arg(dayAndMonth(mind.since));
    if (!mind.mitesPer100) return oneWay(mitesCountedText(mind) + when, tone);
    const QString share = QLocale().toString(*mind.mitesPer100, 'f', 2);
    const auto run = [&](const QString& text, bool raised = false) {
        return TextRun{text, bold, tone, false, raised};
    };
    const auto counts = [&](const QString& between) {
        return TextLine{run(boardWord("mites %1").arg(countedText(*mind.mites))),
                        run(heldLetter(mind.mites), true),
                        run(between.arg(countedText(*mind.bees))), run(heldLetter(mind.bees), true),
                        run(boardWord(": %1 %").arg(share) + when)};
    };
    return {{counts(boardWord(" in %1")), counts(boardWord("/%1")),
             plainLine(boardWord("mites %1 %").arg(share) + when, tone),
             plainLine(boardWord("mites %1 %").arg(share), tone)}};
}

WordsUnder queenUnder(const QueenDates& dates, Day on) {
    if (on <= dates.doNotOpenUntil) return oneWay(leaveShutText(dates.doNotOpenUntil), Tone::Warn);
    if (on < dates.testFrameFrom) return oneWay(boardWord("look for eggs"), Tone::Warn);
    if (on <= dates.actBy)
        return oneWay(boardWord("give eggs, act by %1").arg(dayAndMonth(dates.actBy)), Tone::Warn);
    return oneWay(boardWord("act was due %1").arg(dayAndMonth(dates.actBy)), Tone::Bad);
}

/// What was seen, and the question only the keeper can answer.
WordsUnder cellsSeenUnder(const Mind& mind) {
    const QString seen = cellsSeenText(*mind.cells, mind.cellState);
    return {{plainLine(boardWord("%1: any left?").arg(seen), Tone::Warn),
             plainLine(boardWord("%1 cells: left?").arg(countedText(*mind.cells)), Tone::Warn)}};
}

/// What one has to mind; nothing for what is no news under a hive.
std::optional<WordsUnder> mindUnder(const Mind& mind, Day on) {
    switch (mind.kind) {
        case MindKind::QueenWait:
            return queenUnder(*mind.queen, on);
        case MindKind::CellsSeen:
            return cellsSeenUnder(mind);
        case MindKind::MitesOver:
        case MindKind::Mites:
            return mitesUnder(mind, on);
        case MindKind::Light:
            return oneWay(boardWord("light: feed"), Tone::Warn);
        case MindKind::NoEggs:
            return oneWay(boardWord("no eggs %1").arg(dayAndMonth(mind.since)), Tone::Warn);
        case MindKind::ComeBack:
            return oneWay(boardWord("come back"), Tone::Warn);
        case MindKind::FoundDead:
            return oneWay(boardWord("found dead %1").arg(dayAndMonth(mind.since)), Tone::Bad);
        case MindKind::MedicineIn:
            return oneWay(boardWord("medicine in"), Tone::Muted);
        case MindKind::SupersNotYet:
            return oneWay(mind.from ? boardWord("no supers before %1").arg(dayAndMonth(*mind.from))
                                    : boardWord("no supers yet"),
                          Tone::Warn);
        case MindKind::NobodyLives:  // said above all others
        case MindKind::NotOpened:
        case MindKind::SuperOn:
            return std::nullopt;
    }
    return std::nullopt;
}

QString cellsUnder(const YardSheetRow& row) {
    const Seen* seen = row.today ? &row.today->seen : nullptr;
    const auto cells = seen ? seen->cellsLeft : std::nullopt;
    if (!cells || !cells->value || cells->value->value() == 0) return {};
    return cells->value->value() == 1 ? boardWord("1 queen cell left")
                                      : boardWord("%1 queen cells left").arg(cells->value->value());
}

/// What was done or seen on the day itself, in one line. Supers put on count however they came:
/// by a line of the sheet, by hand on the board, or by both.
QString dayUnder(const YardSheetRow& row) {
    if (row.supersPutOn > 0)
        return row.supersPutOn == 1
                   ? boardWord("1 super on today")
                   : boardWord("%1 supers on today").arg(static_cast<qlonglong>(row.supersPutOn));
    if (!row.today)
        return row.last ? boardWord("last seen %1").arg(dayAndMonth(row.last->on))
                        : boardWord("never looked into");
    if (row.today->seen.looked == Looked::LidOnly) return boardWord("lid only");
    if (row.today->seen.looked == Looked::FoundDead) return fromUtf8(row.today->seen.note);
    if (row.line.supersOff)
        return row.line.supersOff->value() == 1
                   ? boardWord("1 super off today")
                   : boardWord("%1 supers off today").arg(row.line.supersOff->value());
    return cellsUnder(row);
}

/// A hive of a keeper who writes no colonies down is not called empty.
bool everLived(const Read& file, Id<Hive> hive) { return !colonyStaysIn(file, hive).empty(); }

/// Lines under a hive by their weight: what is wrong, what is to be done, what the day brought,
/// what is only good to know.
std::vector<WordsUnder> wordsUnder(const Read& file, const YardSheetRow& row, Day on) {
    std::vector<WordsUnder> wrong, toDo, day, known;
    const auto sorted = [&](WordsUnder words) {
        const Tone tone = words.ways.front().front().tone;
        (tone == Tone::Bad ? wrong : tone == Tone::Warn ? toDo : known).push_back(std::move(words));
    };
    if (!row.lives && everLived(file, row.hive.id))
        wrong.push_back(oneWay(boardWord("nobody lives here")));
    if (row.queenlessSince) sorted(oneWay(boardWord("queenless"), Tone::Bad));
    if (!holdsOn(file, row.hive.id, on).empty()) sorted(oneWay(boardWord("held back"), Tone::Warn));
    for (const Mind& mind : row.minds)
        if (auto under = mindUnder(mind, on)) sorted(*std::move(under));
    if (row.today && row.today->seen.looked == Looked::NotOpened) {
        const QString why = fromUtf8(row.today->seen.note);
        // That it was left out of the visit is no mere news.
        toDo.insert(toDo.begin(), oneWay(why.isEmpty() ? boardWord("not opened")
                                                       : boardWord("%1, not opened").arg(why)));
        if (row.last)
            day.push_back(oneWay(boardWord("last seen %1").arg(dayAndMonth(row.last->on))));
    } else if (const QString news = dayUnder(row); !news.isEmpty()) {
        day.push_back(oneWay(news));
    }
    std::vector<WordsUnder> words;
    for (auto* each : {&wrong, &toDo, &day, &known})
        std::move(each->begin(), each->end(), std::back_inserter(words));
    if (words.size() < 2 && row.today && row.today->seen.looked == Looked::Opened &&
        !row.today->seen.note.empty())
        words.push_back(oneWay(fromUtf8(row.today->seen.note)));
    if (words.size() > mostWordsUnder) {
        const auto more = words.size() - mostWordsUnder + 1;
        words.resize(mostWordsUnder - 1);
        words.push_back(oneWay(boardWord("and %1 more").arg(static_cast<qlonglong>(more))));
    }
    return words;
}

}  // namespace

std::vector<HiveOnBoard> hivesOnBoard(const Read& file, const YardSheet& sheet) {
    std::vector<HiveOnBoard> hives;
    for (const YardSheetRow& row : sheet.rows) {
        HiveOnBoard hive;
        hive.id = row.hive.id;
        hive.mark = fromUtf8(row.hive.mark.text());
        hive.stack.name = hive.mark;
        const bool openedToday = row.today && row.today->seen.looked == Looked::Opened;
        const Seen* seen =
            openedToday ? &row.today->seen : (row.last ? &row.last->inspection.seen : nullptr);
        const std::size_t nest = row.boxes.size() - static_cast<std::size_t>(row.supersNow);
        for (std::size_t i = 0; i < row.boxes.size(); ++i) {
            const auto kind = file.find(row.boxes[i].kind);
            if (!kind) continue;
            BoxView view = i < nest ? nestView(row.boxes[i], *kind)
                                    : superView(file, row.boxes[i], *kind, sheet.on);
            if (i == 0 && seen) view.words = nestWords(*seen);
            if (i == 0 && !seen) view.lookedInto = false;
            // At a visit the chalk of a hive that was not opened is that of an earlier one.
            view.faded = sheet.visit && !openedToday;
            view.excluderBelow = row.hive.excluderAbove && i == nest && i > 0;
            if (kind->outerWidth) hive.stack.widthMm = kind->outerWidth->mm();
            hive.stack.boxes.insert(hive.stack.boxes.begin(), view);
            hive.boxes.push_back(row.boxes[i].id);
        }
        hive.words = wordsUnder(file, row, sheet.on);
        hives.push_back(std::move(hive));
    }
    return hives;
}

}  // namespace combwright
