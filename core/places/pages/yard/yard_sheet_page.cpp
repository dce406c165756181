#include "core/places/pages/yard/yard_sheet_page.h"

#include <QCoreApplication>
#include <QLocale>
#include <QStringList>
#include <algorithm>

#include "core/model/season_info.h"
#include "core/places/pages/yard/queen_words.h"
#include "core/words/read_back.h"
#include "core/words/shorthand.h"
#include "core/words/units.h"
#include "core/words/words.h"

namespace combwright {
namespace {

QString sheetWord(const char* text) { return QCoreApplication::translate("yard_sheet", text); }

QString tenths(const Frames& frames) { return QLocale().toString(frames.value(), 'g', 6); }

QString countsText(const std::vector<std::string>& marks) {
    QStringList list;
    for (const std::string& mark : marks) list << fromUtf8(mark);
    return list.join(QStringLiteral(", "));
}

Cell textCell(const QString& text, bool strong = false) {
    Cell cell;
    cell.text = text;
    cell.strong = strong;
    return cell;
}

Cell framesCell(const std::optional<Known<Frames>>& frames, bool older) {
    Cell cell;
    if (!frames) {
        cell.text = QStringLiteral("?");
        return cell;
    }
    cell.text = framesText(*frames);
    cell.how = frames->how;
    cell.muted = older;
    return cell;
}

Cell stackCell(const Read& file, const YardSheetRow& row) {
    Cell cell;
    cell.look = Cell::Look::Stack;
    const auto nest = row.boxes.size() - static_cast<std::size_t>(row.supersNow);
    for (std::size_t i = 0; i < row.boxes.size(); ++i) {
        const auto kind = file.find(row.boxes[i].kind);
        const double height = kind && kind->outerHeight ? kind->outerHeight->mm() : 200.0;
        cell.stack.push_back({height, i < nest, i + 1 == nest && i + 1 < row.boxes.size()});
    }
    return cell;
}

const Mind* waitingFor(const YardSheetRow& row, Day day) {
    for (const Mind& mind : row.minds)
        if (mind.kind == MindKind::QueenWait && mind.queen && day <= mind.queen->doNotOpenUntil)
            return &mind;
    return nullptr;
}

Cell roomToWrite(const YardSheetRow& row, Day forDay) {
    Cell cell;
    if (const Mind* mind = waitingFor(row, forDay)) {
        cell.look = Cell::Look::Shut;
        const QString shut = leaveShutText(mind->queen->doNotOpenUntil);
        cell.text = shut.left(1).toUpper() + shut.mid(1) + QLatin1Char('.');
        cell.second =
            sheetWord("Test frame from %1, act by %2.")
                .arg(dayAndMonth(mind->queen->testFrameFrom), dayAndMonth(mind->queen->actBy));
        return cell;
    }
    cell.look = Cell::Look::Pencil;
    return cell;
}

QString waitBegan(const Mind& mind) {
    switch (mind.step.value_or(QueenStep::CellOpen)) {
        case QueenStep::QueenLost:
            return sheetWord("queen lost %1");
        case QueenStep::LarvaMoved:
            return sheetWord("larva moved %1");
        case QueenStep::CellOpen:
        case QueenStep::CellSealed:
            break;
    }
    return sheetWord("cell left %1");
}

/// What there is to mind in a column's width; the space beside it says until when a hive stays
/// shut.
QString shortMindText(const Mind& mind, Day forDay) {
    switch (mind.kind) {
        case MindKind::QueenWait:
            return forDay <= mind.queen->doNotOpenUntil
                       ? waitBegan(mind).arg(dayAndMonth(mind.since))
                   : forDay <= mind.queen->actBy
                       ? sheetWord("eggs? act by %1").arg(dayAndMonth(mind.queen->actBy))
                       : sheetWord("eggs? act was due %1").arg(dayAndMonth(mind.queen->actBy));
        case MindKind::MitesOver:
            // Of the last visit its day stands beside; twelve hives are to fit on one sheet.
            return forDay - mind.since <= days(7)
                       ? sheetWord("%1: treat?").arg(mitesText(mind))
                       : sheetWord("%1 on %2: treat or not?")
                             .arg(mitesText(mind), dayAndMonth(mind.since));
        case MindKind::Mites:
            return mitesText(mind);
        case MindKind::NotOpened:
            return sheetWord("not opened last time");
        default:
            return mindText(mind, mind.since);
    }
}

/// "’25 blue", "no queen", "?": what one looks for when the hive is opened.
QString queenShort(const HeadedColony& lives) {
    if (!lives.queen)
        return lives.lastLeft && !lives.waiting ? sheetWord("none known") : QStringLiteral("?");
    if (!lives.queen->reared) return choiceText(lives.colour);
    const QString year =
        QStringLiteral("’%1").arg(lives.queen->reared->value() % 100, 2, 10, QLatin1Char('0'));
    return lives.colour.empty() ? year : year + QLatin1Char(' ') + choiceText(lives.colour);
}

/// Marked, with the dot one looks for; a colour that is only her year's is on no queen.
Cell queenCell(const YardSheetRow& row) {
    if (!row.lives) return {};
    Cell cell = textCell(queenShort(*row.lives));
    if (row.lives->queen && row.lives->queen->marked == true)
        cell.dot = fromUtf8(row.lives->colour);
    return cell;
}

/// Last year's line in six words: who reads it stands in a yard.
QString inSixWords(const QString& text) {
    const QStringList words = text.split(QLatin1Char(' '), Qt::SkipEmptyParts);
    if (words.size() <= 6) return text;
    QString first = words.mid(0, 6).join(QLatin1Char(' '));
    while (first.endsWith(QLatin1Char('.')) || first.endsWith(QLatin1Char(','))) first.chop(1);
    return first + QStringLiteral(" …");
}

TableRow rowFor(const Read& file, const YardSheetRow& row, Day forDay) {
    // The newest look that opened the hive: today's, or the one before.
    const bool openedToday = row.today && row.today->seen.looked == Looked::Opened;
    const Seen* seen =
        openedToday ? &row.today->seen : (row.last ? &row.last->inspection.seen : nullptr);
    std::optional<Day> seenOn;
    if (openedToday)
        seenOn = file.find(row.today->visit)->on;
    else if (row.last)
        seenOn = row.last->on;

    TableRow line;
    line.cells.push_back(textCell(fromUtf8(row.hive.mark.text()), true));
    line.cells.push_back(stackCell(file, row));
    line.cells.push_back(queenCell(row));
    line.cells.push_back(
        textCell(seenOn ? QString::number((forDay - *seenOn).count()) : QStringLiteral("?")));
    line.cells.push_back(framesCell(seen ? seen->brood : std::nullopt, !openedToday));
    line.cells.push_back(framesCell(seen ? seen->stores : std::nullopt, !openedToday));
    QStringList minds;
    for (const Mind& mind : row.minds) minds << shortMindText(mind, forDay);
    Cell mind = textCell(minds.value(0), !minds.isEmpty());
    if (!minds.isEmpty()) minds.removeFirst();
    if (seen && !seen->note.empty()) minds << fromUtf8(seen->note);
    mind.second = minds.join(QStringLiteral(", "));
    if (row.lastYear) {
        const QString then = inSixWords(readBack(readShorthand(row.lastYear->inspection.line)));
        if (!then.isEmpty()) {
            const QString year = sheetWord("%1: %2").arg(yearOf(row.lastYear->on)).arg(then);
            mind.second = mind.second.isEmpty() ? year : mind.second + QStringLiteral(" · ") + year;
        }
    }
    line.cells.push_back(mind);
    line.cells.push_back(roomToWrite(row, forDay));
    return line;
}

TextBlock shorthandHelp() {
    TextBlock block;
    block.small = true;
    QStringList marks;
    for (const ShorthandMark& mark : shorthandMarks(shownUnits()))
        marks << QStringLiteral("%1 %2").arg(fromUtf8(mark.typed), word(mark.meaning));
    block.text = marks.join(QStringLiteral("   ")) + QStringLiteral("   ") +
                 sheetWord(
                     "Any other word is your note. Grey figures are older than the last visit; "
                     "white boxes are supers, grey ones brood.");
    return block;
}

}  // namespace

QString framesText(const Known<Frames>& frames) {
    if (!frames.value) return QStringLiteral("?");
    if (frames.to) return QStringLiteral("%1–%2").arg(tenths(*frames.value), tenths(*frames.to));
    return tenths(*frames.value);
}

QString takeAlongText(const TakeAlong& take) {
    switch (take.what) {
        case TakeAlong::What::Feed:
            return sheetWord("feeder and syrup");
        case TakeAlong::What::WashJar:
            return sheetWord("wash jar, for 300 bees");
        case TakeAlong::What::Super:
            return sheetWord("supers");
        case TakeAlong::What::EggFrame:
            return sheetWord("frame with eggs, from a strong hive");
        case TakeAlong::What::TreatmentDecision:
            return sheetWord("decide: treat or not");
        case TakeAlong::What::LeaveShut:
            return sheetWord("nothing: leave shut");
    }
    return {};
}

QString countedText(const Known<Count>& count) {
    if (!count.value) return QStringLiteral("?");
    const QString low = QString::number(count.value->value());
    return count.to ? sheetWord("%1 to %2").arg(low, QString::number(count.to->value())) : low;
}

QString cellsSeenText(const Known<Count>& cells, const std::optional<CellState>& state) {
    const bool one = cells.value && cells.value->value() == 1 && !cells.to;
    const QString text =
        !state ? (one ? sheetWord("%1 queen cell") : sheetWord("%1 queen cells"))
        : *state == CellState::Capped
            ? (one ? sheetWord("%1 capped queen cell") : sheetWord("%1 capped queen cells"))
            : (one ? sheetWord("%1 open queen cell") : sheetWord("%1 open queen cells"));
    return text.arg(countedText(cells));
}

QString mitesCountedText(const Mind& mind) {
    const QString mites = countedText(*mind.mites);
    if (mind.method == FindingMethod::DroneBrood)
        return mind.droneCells && mind.droneCells->value
                   ? sheetWord("mites in %1 of %2 drone cells")
                         .arg(mites, countedText(*mind.droneCells))
                   : sheetWord("mites in %1 drone cells").arg(mites);
    if (mind.method == FindingMethod::Board)
        return mind.count == 0 ? sheetWord("board: %1 mites").arg(mites)
               : mind.count == 1
                   ? sheetWord("board: %1 mites in 1 day").arg(mites)
                   : sheetWord("board: %1 mites in %2 days").arg(mites).arg(mind.count);
    return sheetWord("mites %1, bees not counted").arg(mites);
}

QString mitesText(const Mind& mind) {
    if (mind.mitesPer100)
        return sheetWord("mites %1 %").arg(QLocale().toString(*mind.mitesPer100, 'f', 2));
    return mitesCountedText(mind);
}

QString mindText(const Mind& mind, Day today) {
    switch (mind.kind) {
        case MindKind::CellsSeen:
            return sheetWord("%1: were any left?").arg(cellsSeenText(*mind.cells, mind.cellState));
        case MindKind::QueenWait:
            if (today <= mind.queen->doNotOpenUntil)
                return sheetWord("%1; test frame from %2, act by %3")
                    .arg(leaveShutText(mind.queen->doNotOpenUntil),
                         dayAndMonth(mind.queen->testFrameFrom), dayAndMonth(mind.queen->actBy));
            if (today > mind.queen->actBy)
                return sheetWord("no eggs seen yet; act was due %1")
                    .arg(dayAndMonth(mind.queen->actBy));
            if (today >= mind.queen->testFrameFrom)
                return sheetWord("no eggs: give a frame with eggs; act by %1")
                    .arg(dayAndMonth(mind.queen->actBy));
            return sheetWord("look for eggs; act by %1").arg(dayAndMonth(mind.queen->actBy));
        case MindKind::MitesOver:
        case MindKind::Mites: {
            QString text = mitesText(mind);
            if (mind.mitesPer100)
                text +=
                    sheetWord(", %1 in %2").arg(countedText(*mind.mites), countedText(*mind.bees));
            if (mind.since != today) text += sheetWord(" on %1").arg(dayAndMonth(mind.since));
            if (mind.kind == MindKind::MitesOver && mind.supersOn)
                text += sheetWord("; supers on: the label decides");
            return text;
        }
        case MindKind::Light:
            return sheetWord("light: feed");
        case MindKind::NoEggs:
            return (mind.noBrood ? sheetWord("no eggs, no brood %1") : sheetWord("no eggs %1"))
                .arg(dayAndMonth(mind.since));
        case MindKind::NotOpened:
            return sheetWord("not opened; last seen %1").arg(dayAndMonth(mind.since));
        case MindKind::ComeBack:
            return sheetWord("come back");
        case MindKind::FoundDead:
            return sheetWord("found dead %1: write down its end").arg(dayAndMonth(mind.since));
        case MindKind::NobodyLives:
            return sheetWord("nobody lives here");
        case MindKind::MedicineIn: {
            const QString name = fromUtf8(mind.about);
            if (!mind.from)
                return sheetWord("%1 in since %2; its label says until when")
                    .arg(name, dayAndMonth(mind.since));
            return mind.to && *mind.to != *mind.from
                       ? sheetWord("%1 in; out %2 to %3")
                             .arg(name, dayAndMonth(*mind.from), dayAndMonth(*mind.to))
                       : sheetWord("%1 in; out %2").arg(name, dayAndMonth(*mind.from));
        }
        case MindKind::SupersNotYet:
            return mind.from ? sheetWord("no supers before %1").arg(dayAndMonth(*mind.from))
                             : sheetWord("no supers yet: its label says from when");
        case MindKind::SuperOn:
            return mind.count == 1
                       ? sheetWord("1 super on, %1").arg(dayAndMonth(mind.since))
                       : sheetWord("%1 supers on, %2").arg(mind.count).arg(dayAndMonth(mind.since));
    }
    return {};
}

Page yardSheetPage(const Read& file, const YardSheet& sheet, Day forDay) {
    Page page;
    page.title = sheetWord("Yard sheet: %1").arg(fromUtf8(sheet.yard.name.text()));
    page.day = sheetWord("for %1 · sheet %2")
                   .arg(dayText(forDay), fromUtf8(visitCode(sheet.yard.id, forDay)));
    if (const auto season = file.first<SeasonInfo>({})) {
        page.keeper = fromUtf8(season->name.text());
        page.invented = season->invented.value_or(false);
    }
    TickBlock take;
    take.title = sheetWord("Take with you");
    for (const TakeAlong& each : sheet.takeAlong)
        if (each.what != TakeAlong::What::LeaveShut)
            take.lines.push_back({QStringLiteral("%1 %2").arg(each.count).arg(takeAlongText(each)),
                                  countsText(each.hives)});
    take.lines.push_back({sheetWord("smoker, tool, spare pencil"), {}});
    take.columns = take.lines.size() > 4 ? 3 : 2;
    page.blocks.push_back(take);

    TableBlock table;
    table.columns = {{sheetWord("hive"), 0.85, false},
                     {sheetWord("boxes"), 0.7, false},
                     {sheetWord("queen"), 1.25, false},
                     {sheetWord("days ago"), 0.65, true},
                     {sheetWord("brood, frames"), 0.85, true},
                     {sheetWord("stores, frames"), 0.85, true},
                     {sheetWord("to mind\nlast year this week"), 3.0, false},
                     {sheetWord("what you see"), 3.7, false}};
    // With few hives there is more room for the pencil; with many never less than 12 mm.
    table.rowMm = sheet.rows.size() <= 12 ? 13 : 12;
    for (const YardSheetRow& row : sheet.rows) table.rows.push_back(rowFor(file, row, forDay));
    page.blocks.push_back(table);
    page.blocks.push_back(shorthandHelp());

    BlanksBlock counts;
    counts.labels = {sheetWord("hives opened, of %1").arg(sheet.rows.size()),
                     sheetWord("supers put on"), sheetWord("supers taken off")};
    if (sheet.supersInStore)
        counts.labels.push_back(sheetWord("left in store, of %1").arg(*sheet.supersInStore));
    page.blocks.push_back(counts);
    BlanksBlock entry;
    entry.labels = {sheetWord("began"), sheetWord("ended"), sheetWord("entered by"),
                    sheetWord("on")};
    entry.framed = true;
    page.blocks.push_back(entry);
    page.letters = lettersOf(page);
    // A blank reading stands there as "?", which is explained with the letters.
    const auto blank = [](const TableRow& row) {
        return std::any_of(row.cells.begin(), row.cells.end(),
                           [](const Cell& cell) { return cell.text == QLatin1String("?"); });
    };
    if (std::any_of(table.rows.begin(), table.rows.end(), blank))
        page.letters.push_back(How::Unknown);
    return page;
}

}  // namespace combwright
