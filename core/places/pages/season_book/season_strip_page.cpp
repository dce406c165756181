#include "core/places/pages/season_book/season_strip_page.h"

#include <QCoreApplication>
#include <QLocale>
#include <algorithm>
#include <array>

#include "core/places/pages/honey_room/room_paper.h"
#include "core/words/words.h"

namespace combwright {
namespace {

QString stripWord(const char* text) { return QCoreApplication::translate("season_strip", text); }

/// So many squares beside each other can be read from a step away on either paper.
constexpr std::size_t weeksAcross = 40;

constexpr std::array stripMarks{StripMark::Fed,     StripMark::Treated,  StripMark::Counted,
                                StripMark::BoxesOn, StripMark::BoxesOff, StripMark::Pulled,
                                StripMark::Queen,   StripMark::Divided,  StripMark::Came,
                                StripMark::Moved,   StripMark::Left,     StripMark::Ended};

Cell weekCell(const StripWeek& week) {
    Cell cell;
    cell.look = Cell::Look::Week;
    QStringList letters;
    for (const StripMark mark : week.marks) letters << stripLetter(mark);
    cell.text = letters.join(QLatin1Char(' '));
    cell.strong = week.opened;
    cell.open = week.lidOnly && !week.opened;
    cell.hatched = week.medicine && !week.nobody;
    cell.dashed = week.nobody && week.marks.empty();
    return cell;
}

Cell stripCell(const QString& text, bool strong = false) {
    Cell cell;
    cell.text = text;
    cell.strong = strong;
    return cell;
}

/// "5", and in the first week of a month its name over it, in a line of its own.
QString weekHead(const SeasonStrip& strip, std::size_t week, bool first) {
    const Day monday = strip.weeks[week];
    const QString day = QString::number(dayOfMonth(monday));
    const bool named = first || monthOf(strip.weeks[week - 1]) != monthOf(monday);
    return named ? QLocale().standaloneMonthName(static_cast<int>(monthOf(monday)),
                                                 QLocale::ShortFormat) +
                       QLatin1Char('\n') + day
                 : day;
}

TableBlock partOf(const SeasonStrip& strip, std::size_t from, std::size_t to, std::size_t across) {
    TableBlock table;
    table.rowMm = 5.6;
    table.columns.push_back({stripWord("week from"), 2.8, false});
    for (std::size_t week = from; week < to; ++week)
        table.columns.push_back({weekHead(strip, week, week == from), 1, false, {}, true});
    // A short part has squares as large as the others, and the rest of the sheet stays free.
    if (const std::size_t used = to - from; used < across)
        table.columns.push_back({{}, static_cast<double>(across - used), false});
    for (const StripYard& yard : strip.yards) {
        TableRow head;
        head.group = true;
        head.cells = {stripCell(fromUtf8(yard.yard.name.text()), true)};
        table.rows.push_back(std::move(head));
        for (const StripRow& each : yard.rows) {
            TableRow row;
            row.cells = {stripCell(QStringLiteral("   ") + fromUtf8(each.hive.mark.text()))};
            for (std::size_t week = from; week < to; ++week)
                row.cells.push_back(weekCell(each.weeks[week]));
            table.rows.push_back(std::move(row));
        }
        table.rows.back().below = Rule::Ink;
    }
    return table;
}

TextBlock stripLegend() {
    QStringList parts;
    for (const StripMark mark : stripMarks)
        parts << QStringLiteral("%1\u00a0%2").arg(stripLetter(mark), stripMeaning(mark));
    TextBlock legend;
    legend.small = true;
    legend.text =
        stripWord(
            "Full bar: opened. Empty bar: looked at, not opened. Hatched: a medicine was in. "
            "A dash: nobody lived there. An empty square: nothing is written down.") +
        QLatin1Char('\n') + parts.join(QStringLiteral("    "));
    return legend;
}

}  // namespace

QString stripLetter(StripMark mark) {
    switch (mark) {
        case StripMark::Ended:
            return QCoreApplication::translate("season_strip", "X", "dead or lost");
        case StripMark::Left:
            return QCoreApplication::translate("season_strip", "U", "united or sold");
        case StripMark::Came:
            return QCoreApplication::translate("season_strip", "N", "new colony");
        case StripMark::Queen:
            return QCoreApplication::translate("season_strip", "Q", "queen");
        case StripMark::Divided:
            return QCoreApplication::translate("season_strip", "D", "divided");
        case StripMark::Moved:
            return QCoreApplication::translate("season_strip", "M", "moved");
        case StripMark::Treated:
            return QCoreApplication::translate("season_strip", "T", "treated");
        case StripMark::Counted:
            return QCoreApplication::translate("season_strip", "C", "mites counted");
        case StripMark::Pulled:
            return QCoreApplication::translate("season_strip", "H", "honey");
        case StripMark::BoxesOn:
            return QStringLiteral("+");
        case StripMark::BoxesOff:
            return QStringLiteral("−");
        case StripMark::Fed:
            break;
    }
    return QCoreApplication::translate("season_strip", "F", "fed");
}

QString stripMeaning(StripMark mark) {
    switch (mark) {
        case StripMark::Ended:
            return stripWord("dead or lost");
        case StripMark::Left:
            return stripWord("united or sold");
        case StripMark::Came:
            return stripWord("new colony");
        case StripMark::Queen:
            return stripWord("a queen came or went");
        case StripMark::Divided:
            return stripWord("split or swarmed");
        case StripMark::Moved:
            return stripWord("moved");
        case StripMark::Treated:
            return stripWord("treated");
        case StripMark::Counted:
            return stripWord("mites counted");
        case StripMark::Pulled:
            return stripWord("pulled for honey");
        case StripMark::BoxesOn:
            return stripWord("boxes added");
        case StripMark::BoxesOff:
            return stripWord("boxes taken off");
        case StripMark::Fed:
            break;
    }
    return stripWord("fed");
}

Page seasonStripPage(const Read& file, const SeasonStrip& strip, Day printed) {
    Page page = roomPaper(file, stripWord("Season strip %1").arg(strip.year),
                          stripWord("printed %1").arg(dayText(printed)));
    page.wide = true;
    if (strip.weeks.empty() || strip.yards.empty()) {
        TextBlock none;
        none.text = stripWord("Nothing is written down of %1 yet: no look, no box, no feed.")
                        .arg(strip.year);
        page.blocks.emplace_back(std::move(none));
        return page;
    }
    const std::size_t count = strip.weeks.size();
    const std::size_t parts = (count + weeksAcross - 1) / weeksAcross;
    const std::size_t across = (count + parts - 1) / parts;
    page.oneSheet = parts == 1;
    page.blocks.emplace_back(stripLegend());
    for (std::size_t from = 0; from < count; from += across) {
        TableBlock part = partOf(strip, from, std::min(count, from + across), across);
        if (parts > 1)
            part.title = stripWord("Part %1 of %2: join them side by side")
                             .arg(from / across + 1)
                             .arg(parts);
        page.blocks.emplace_back(std::move(part));
    }
    page.blocks.emplace_back(enteredBy());
    return page;
}

}  // namespace combwright
