#include "core/places/pages/honey_room/honey_room_pages.h"

#include <QCoreApplication>
#include <QLocale>
#include <QStringList>
#include <algorithm>

#include "core/model/season_info.h"
#include "core/places/honey_room/room_boxes.h"
#include "core/places/pages/revision_text.h"
#include "core/words/figures.h"
#include "core/words/words.h"

namespace combwright {
namespace {

QString roomPageWord(const char* text) {
    return QCoreApplication::translate("honey_room_pages", text);
}

Page roomPage(const Read& file, const QString& title, const QString& day) {
    Page page;
    page.title = title;
    page.day = day;
    if (const auto season = file.first<SeasonInfo>({})) {
        page.keeper = fromUtf8(season->name.text());
        page.invented = season->invented.value_or(false);
    }
    return page;
}

Cell roomCell(const QString& text, bool strong = false) {
    Cell cell;
    cell.text = text;
    cell.strong = strong;
    return cell;
}

Cell roomMass(std::optional<double> grams, How how, bool strong = false) {
    if (!grams) return roomCell(QStringLiteral("?"), strong);
    Cell cell = roomCell(massFigure(*grams, how), strong);
    cell.how = how;
    return cell;
}

std::optional<double> middleOf(const std::optional<Known<Mass>>& mass) {
    return mass ? mass->middle() : std::nullopt;
}

TextBlock textBlock(const QString& text, bool small = false) {
    TextBlock block;
    block.text = text;
    block.small = small;
    return block;
}

/// "M03: 1 5 9", a box after the other, because one takes a box and hangs its frames.
QStringList slotsText(const SheetLoad& load) {
    std::vector<std::pair<QString, QStringList>> boxes;
    QStringList empty;
    for (std::size_t slot = 0; slot < load.places.size(); ++slot) {
        const QString number = QString::number(slot + 1);
        const auto& place = load.places[slot];
        if (!place) {
            empty << number;
            continue;
        }
        const QString box = place->emptied ? roomPageWord("an empty frame") : fromUtf8(place->box);
        auto found = std::find_if(boxes.begin(), boxes.end(),
                                  [&](const auto& each) { return each.first == box; });
        if (found == boxes.end()) found = boxes.insert(boxes.end(), {box, {}});
        found->second << number;
    }
    QStringList texts;
    for (const auto& [box, numbers] : boxes)
        texts << box + QStringLiteral(": ") + numbers.join(QLatin1Char(' '));
    if (!empty.isEmpty()) texts << roomPageWord("left empty: %1").arg(empty.join(QLatin1Char(' ')));
    return texts;
}

TableBlock loadsTable(const LoadSheet& sheet) {
    const QString unit = shownPortion(0).unit;
    TableBlock table;
    table.columns = {{roomPageWord("load"), 0.5, true},
                     {roomPageWord("lot"), 0.9, false},
                     {roomPageWord("whose frame hangs in which slot"), 6.2, false},
                     {roomPageWord("off, %1").arg(unit), 0.8, true},
                     {roomPageWord("may be"), 0.8, true},
                     {roomPageWord("spun, ran"), 1.4, false}};
    table.rowMm = 12;
    for (const SheetLoad& load : sheet.loads) {
        const QStringList places = slotsText(load);
        TableRow row;
        // Two boxes beside each other, the others on the line below.
        Cell frames = roomCell(places.mid(0, 2).join(QStringLiteral("    ")));
        frames.second = places.mid(2).join(QStringLiteral("    "));
        Cell off = roomCell(shownPortion(load.offset.largerG()).figure);
        off.how = How::ByEye;
        const double mayBe =
            std::max(load.offset.startG + load.doubtG, load.offset.endG + load.endDoubtG);
        row.cells = {roomCell(QString::number(load.number), true),
                     roomCell(fromUtf8(load.lot)),
                     frames,
                     off,
                     roomCell(shownPortion(mayBe).figure),
                     roomCell({})};
        table.rows.push_back(row);
    }
    return table;
}

TableBlock boxTable(const RunBalance& balance) {
    TableBlock table;
    table.title = roomPageWord("Boxes");
    table.columns = {{roomPageWord("box"), 1.4, false},
                     {roomPageWord("hive"), 1.2, false},
                     {roomPageWord("frames"), 0.8, true},
                     {roomPageWord("full, %1").arg(massUnit()), 1, true},
                     {roomPageWord("wet, %1").arg(massUnit()), 1, true},
                     {roomPageWord("off, %1").arg(massUnit()), 1, true}};
    table.rowMm = 5.5;
    for (const RunBoxLine& line : balance.boxes) {
        const auto gross = middleOf(line.box.gross);
        const auto wet = middleOf(line.box.wet);
        const How how = balance.byEye       ? How::ByEye
                        : line.byDifference ? How::ByDifference
                                            : How::Weighed;
        TableRow row;
        row.cells = {roomCell(fromUtf8(line.mark), true),
                     roomCell(line.hive.empty() ? QStringLiteral("?") : fromUtf8(line.hive)),
                     roomCell(line.box.frames ? QString::number(line.box.frames->value())
                                              : QStringLiteral("?")),
                     roomMass(gross, gross ? line.box.gross->how : How::Unknown),
                     roomMass(wet, wet ? line.box.wet->how : How::Unknown),
                     roomMass(line.offG, how)};
        table.rows.push_back(row);
    }
    if (!table.rows.empty()) table.rows.back().below = Rule::Ink;
    return table;
}

TableBlock shareTable(const RunBalance& balance) {
    TableBlock table;
    table.title = roomPageWord("Who gave what");
    table.columns = {{roomPageWord("hive"), 1.6, false},
                     {massUnit(), 1, true},
                     {roomPageWord("at closing"), 1, true},
                     {QString(), 3, false}};
    table.rowMm = 5.5;
    for (const RunShare& share : balance.shares) {
        TableRow row;
        Cell bar;
        bar.look = Cell::Look::Bar;
        bar.bar = balance.buckets > Mass() ? static_cast<double>(share.mass.grams()) /
                                                 static_cast<double>(balance.buckets.grams())
                                           : 0;
        bar.dashed = !share.hive;
        bar.hatched = share.how == How::ByDifference || share.how == How::ByEye;
        row.cells = {
            roomCell(share.hive ? fromUtf8(share.mark) : roomPageWord("hive not known"), true),
            roomMass(static_cast<double>(share.mass.grams()), share.how),
            share.atClosing ? roomMass(static_cast<double>(share.atClosing->grams()), share.how)
                            : roomCell({}),
            bar};
        table.rows.push_back(row);
    }
    if (!table.rows.empty()) table.rows.back().below = Rule::Ink;
    const auto sum = [&](const QString& what, std::optional<double> grams, How how, Rule rule) {
        TableRow row;
        row.below = rule;
        row.cells = {roomCell(what, true), roomMass(grams, how, true), roomCell({}), roomCell({})};
        table.rows.push_back(row);
    };
    sum(roomPageWord("in the buckets"),
        balance.bucketsHow == How::Unknown
            ? std::nullopt
            : std::optional(static_cast<double>(balance.buckets.grams())),
        balance.bucketsHow, Rule::Hairline);
    if (balance.byEye) {
        table.rows.back().below = Rule::Double;
        return table;
    }
    sum(roomPageWord("wet cappings"),
        balance.cappings ? std::optional(static_cast<double>(balance.cappings->grams()))
                         : std::nullopt,
        How::Weighed, Rule::Hairline);
    if (balance.scrapings)
        sum(roomPageWord("scrapings"), static_cast<double>(balance.scrapings->grams()),
            How::Weighed, Rule::Hairline);
    sum(roomPageWord("missing"), balance.unaccountedG, balance.missingHow(), Rule::Ink);
    sum(roomPageWord("out of the boxes"), balance.outOfBoxesG, balance.outHow(), Rule::Double);
    return table;
}

}  // namespace

namespace {

QString loadsWords(const LoadSheet& sheet) {
    QStringList runs;
    for (const std::string& run : sheet.runs) runs << fromUtf8(run);
    const QString words =
        sheet.runs.size() < 2
            ? roomPageWord("%1 of %2 slots for %3. Slot 1 at the mark, then as the clock goes.")
            : roomPageWord(
                  "%1 of %2 slots for %3; %4 if lots are mixed. Slot 1 at the mark, then as the "
                  "clock goes.");
    const QString counted =
        words
            .arg(sheet.loads.size() == 1 ? roomPageWord("1 load")
                                         : roomPageWord("%1 loads").arg(sheet.loads.size()))
            .arg(sheet.slotCount)
            .arg(runs.join(QStringLiteral(", ")));
    return sheet.runs.size() < 2 ? counted : counted.arg(sheet.loadsIfMixed);
}

QString ringWords(const LoadSheet& sheet) {
    const ShownFigure ring = shownPortion(sheet.ringG());
    return (sheet.ringContradicted && sheet.walkedG
                ? roomPageWord("%1 off ran smooth on this machine before, but it walked or was "
                               "stopped at %2 since. Look at its feet and bolts, and begin with "
                               "less.")
                      .arg(QStringLiteral("%1"), shownPortion(*sheet.walkedG).text())
            : sheet.ranSmoothG
                ? roomPageWord("%1 off ran smooth on this machine before.")
                : roomPageWord("The balance grade allows %1 off; nothing is known of this machine "
                               "yet. It is advice: the machine's own manual decides."))
               .arg(ring.text()) +
           QLatin1Char(' ') +
           roomPageWord(
               "May be: 9 in 10 loads lie below, because frames were not weighed one by "
               "one.");
}

}  // namespace

Page loadsPage(const Read& file, const LoadSheet& sheet, Day on) {
    return loadsPage(file, std::vector<LoadSheet>{sheet}, on);
}

Page loadsPage(const Read& file, std::vector<LoadSheet> sheets, Day on) {
    Page page =
        roomPage(file, roomPageWord("Extractor loads"), roomPageWord("for %1").arg(dayText(on)));
    std::erase_if(sheets, [](const LoadSheet& sheet) { return sheet.loads.empty(); });
    page.blocks.push_back(textBlock(sheets.empty() ? roomPageWord("No frames wait to be spun.")
                                                   : loadsWords(sheets.front())));
    if (const QString later = toldByLaterText(file, on); !later.isEmpty())
        page.blocks.push_back(textBlock(later));
    TextBlock caution;
    caution.caution = true;
    caution.text = roomPageWord(
                       "Lid shut while it turns, hands and sleeves away from the drum, start slow. "
                       "Hot knife: set it down where nobody reaches. Wet floors are slippery. Over "
                       "%1 lift with two. No honey for infants under 12 months.")
                       .arg(liftLimitText());
    page.blocks.push_back(caution);
    for (std::size_t i = 0; i < sheets.size(); ++i) {
        if (i > 0) page.blocks.push_back(textBlock(loadsWords(sheets[i])));
        page.blocks.push_back(loadsTable(sheets[i]));
    }
    if (!sheets.empty()) page.blocks.push_back(textBlock(ringWords(sheets.front()), true));
    page.letters = lettersOf(page);
    return page;
}

Page runBalancePage(const Read& file, const RunBalance& balance, Day printed) {
    QString title = roomPageWord("Run %1").arg(fromUtf8(balance.run.name.text()));
    if (!balance.yard.empty()) title += QStringLiteral(", ") + fromUtf8(balance.yard);
    if (balance.revised) title += roomPageWord(" (revised)");
    Page page = roomPage(file, title, roomPageWord("printed %1").arg(dayText(printed)));
    QString head = balance.run.closed
                       ? roomPageWord("Opened %1, closed %2.")
                             .arg(dayText(balance.run.on), dayText(*balance.run.closed))
                       : roomPageWord("Opened %1, not closed yet.").arg(dayText(balance.run.on));
    if (balance.byEye) head += QLatin1Char(' ') + roomPageWord("Nothing was weighed: by eye.");
    page.blocks.push_back(textBlock(head));
    page.blocks.push_back(boxTable(balance));
    page.blocks.push_back(shareTable(balance));
    QStringList notes;
    if (!balance.unaccountedG && !balance.byEye)
        notes << roomPageWord("What is missing is not known.");
    if (balance.gotPerFrameG)
        notes << roomPageWord("Got %1 %2 a frame, of %3 frames.")
                     .arg(massRateFigure(*balance.gotPerFrameG), massUnit())
                     .arg(balance.frames);
    for (const RunShare& share : balance.shares)
        if (share.atClosing)
            notes << roomPageWord("Revised since it was closed: %1 is %2, was %3.")
                         .arg(share.hive ? fromUtf8(share.mark) : roomPageWord("no tag"),
                              massText(static_cast<double>(share.mass.grams()), share.how),
                              massText(static_cast<double>(share.atClosing->grams()), share.how));
    notes << revisionTexts(fromUtf8(balance.run.name.text()), balance.revisions);
    if (balance.waterLow)
        notes
            << (*balance.waterLow == *balance.waterHigh
                    ? roomPageWord("Water %1 %.").arg(QLocale().toString(*balance.waterLow, 'f', 1))
                    : roomPageWord("Water %1 to %2 %.")
                          .arg(QLocale().toString(*balance.waterLow, 'f', 1),
                               QLocale().toString(*balance.waterHigh, 'f', 1)));
    if (!balance.readSince.empty())
        notes << roomPageWord("Its water was read again since: %1.").arg(listed(balance.readSince));
    notes << roomPageWord("Rows are rounded; totals come from grams.")
          << roomPageWord("Honey is not for infants under 12 months.");
    page.blocks.push_back(textBlock(notes.join(QLatin1Char('\n')), true));
    page.letters = lettersOf(page);
    return page;
}

}  // namespace combwright
