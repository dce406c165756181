#include "core/places/pages/yard/story_page.h"

#include <QCoreApplication>
#include <QStringList>

#include "core/model/season_info.h"
#include "core/places/pages/yard/queen_words.h"
#include "core/places/pages/yard/yard_story_text.h"
#include "core/words/kind_words.h"
#include "core/words/words.h"

namespace combwright {
namespace {

QString wayTr(const char* text) { return QCoreApplication::translate("story_page", text); }

Page wayPage(const Read& file, const QString& title, Day on) {
    Page page;
    page.title = title;
    page.day = wayTr("as it was on %1").arg(dayText(on));
    if (const auto season = file.first<SeasonInfo>({})) {
        page.keeper = fromUtf8(season->name.text());
        page.invented = season->invented.value_or(false);
    }
    return page;
}

Cell wayCell(const QString& text, bool muted = false) {
    Cell cell;
    cell.text = text;
    cell.muted = muted;
    return cell;
}

QString atHive(const WayStep& step) {
    if (step.yard.empty()) return fromUtf8(step.hive);
    return wayTr("%1 in %2").arg(fromUtf8(step.hive), fromUtf8(step.yard));
}

QString stoodText(const WayStep& step, bool comb) {
    QString text = comb ? wayTr("With box %1 onto %2").arg(fromUtf8(step.box), atHive(step))
                        : wayTr("Onto %1").arg(atHive(step));
    if (step.level)
        text += step.level->value() == 0
                    ? wayTr(", on the floor")
                    : wayTr(", place %1 from the floor").arg(step.level->value() + 1);
    if (!step.fromHive.empty()) text += wayTr("; from %1").arg(fromUtf8(step.fromHive));
    return text + QLatin1Char('.');
}

QString wentText(const WayStep& step, bool comb) {
    QString where = step.place ? choiceText(word(*step.place)) : QString();
    if (!step.hive.empty()) where += QLatin1Char(' ') + atHive(step);
    if (!step.stack.empty()) where += QStringLiteral(" ") + fromUtf8(step.stack);
    QString text =
        comb ? wayTr("With box %1: %2").arg(fromUtf8(step.box), where)
             : (step.fromHive.empty() ? wayTr("Then: %1").arg(where)
                                      : wayTr("Off %1: %2").arg(fromUtf8(step.fromHive), where));
    return text + QLatin1Char('.');
}

QString checkedText(const WayStep& step) {
    QStringList parts;
    for (const Fault& fault : faults())
        if (step.faults.find(fault.letter) != std::string::npos) parts << faultText(fault);
    if (step.verdict) parts << wayTr("to do: %1").arg(choiceText(word(*step.verdict)));
    if (!step.note.empty()) parts << fromUtf8(step.note);
    return parts.isEmpty() ? wayTr("Looked at.")
                           : wayTr("Looked at: %1.").arg(parts.join(QStringLiteral("; ")));
}

QString followedTitle(const Followed& followed) {
    switch (followed.thing) {
        case Followed::Thing::Box:
            return wayTr("Box %1").arg(fromUtf8(followed.name));
        case Followed::Thing::Comb:
            return wayTr("Comb %1").arg(fromUtf8(followed.name));
        case Followed::Thing::Queen:
            return followed.name.empty() ? wayTr("Queen")
                                         : wayTr("Queen %1").arg(fromUtf8(followed.name));
    }
    return {};
}

}  // namespace

Page storyPage(const Read& file, const Hive& hive, Day on) {
    const HiveHead known = hiveHead(file, hive.id, on);
    Page page =
        wayPage(file, wayTr("%1 in %2").arg(fromUtf8(known.mark), fromUtf8(known.yard)), on);
    TextBlock head;
    head.text = hiveHeadText(known);
    page.blocks.push_back(head);
    TableBlock table;
    table.columns = {
        {wayTr("day"), 1, false}, {wayTr("about"), 0.7, false}, {wayTr("what"), 5, false}};
    table.rowMm = 6;
    for (const StoryEntry& entry : hiveStory(file, hive.id, on)) {
        TableRow row;
        row.cells = {wayCell(dayText(entry.on)), wayCell(storyKind(entry), true),
                     wayCell(storySentence(entry))};
        table.rows.push_back(std::move(row));
    }
    if (!table.rows.empty()) page.blocks.push_back(std::move(table));
    return page;
}

QString wayText(const WayStep& step, Followed::Thing thing) {
    const bool comb = thing == Followed::Thing::Comb;
    switch (step.what) {
        case WayStep::What::Came:
            return comb ? wentText(step, true)
                        : wayTr("Written down first: %1.")
                              .arg(step.place ? choiceText(word(*step.place)) : QString());
        case WayStep::What::Stood:
            return stoodText(step, comb);
        case WayStep::What::Went:
            return wentText(step, comb);
        case WayStep::What::InBox:
            return step.hive.empty()
                       ? wayTr("Hung into box %1.").arg(fromUtf8(step.box))
                       : wayTr("Hung into box %1 on %2.").arg(fromUtf8(step.box), atHive(step));
        case WayStep::What::Loose:
            return step.stack.empty() ? wayTr("Loose on a shelf.")
                                      : wayTr("Loose on %1.").arg(fromUtf8(step.stack));
        case WayStep::What::Checked:
            return checkedText(step);
        case WayStep::What::Retired:
            return wayTr("Out of use: %1.").arg(choiceText(word(*step.retired)));
        case WayStep::What::Headed:
            return wayTr("Heads the colony of %1.").arg(atHive(step));
        case WayStep::What::Left:
            return wayTr("In %1 she %2.")
                .arg(atHive(step), queenLeftText(step.left.value_or(QueenLeft::NotKnown)));
        case WayStep::What::WithHive:
            return wayTr("With hive %1 from %2 to %3.")
                .arg(fromUtf8(step.hive), fromUtf8(step.fromYard), fromUtf8(step.yard));
        case WayStep::What::Renamed:
            return wayTr("Its hive %1 is called %2 since.")
                .arg(fromUtf8(step.fromHive), fromUtf8(step.hive));
        case WayStep::What::WithColony:
            return wayTr("With her colony to %1.").arg(atHive(step));
    }
    return {};
}

Page followedPage(const Read& file, const Followed& followed, Day on) {
    Page page = wayPage(file, followedTitle(followed), on);
    TextBlock head;
    QStringList lines;
    if (followed.queen) lines << queenText(*followed.queen, followed.colour);
    if (!followed.kind.empty()) lines << kindText(followed.kind);
    QStringList names;
    for (const Queen& mother : followed.mothers) names << queenShortText(mother);
    if (!names.isEmpty())
        lines << wayTr("Her mother, and hers: %1.").arg(names.join(QStringLiteral(", ")));
    names.clear();
    for (const Queen& daughter : followed.daughters) names << queenShortText(daughter);
    if (!names.isEmpty()) lines << wayTr("Daughters: %1.").arg(names.join(QStringLiteral(", ")));
    if (followed.way.empty()) lines << wayTr("No move of it is written down.");
    head.text = lines.join(QLatin1Char('\n'));
    page.blocks.push_back(head);
    TableBlock table;
    table.columns = {{wayTr("day"), 1, false}, {wayTr("what"), 5, false}};
    table.rowMm = 6;
    for (const WayStep& step : followed.way) {
        TableRow row;
        row.cells = {wayCell(dayText(step.on)), wayCell(wayText(step, followed.thing))};
        table.rows.push_back(std::move(row));
    }
    if (!table.rows.empty()) page.blocks.push_back(std::move(table));
    return page;
}

}  // namespace combwright
