#include "core/places/pages/season_book/constants_page.h"

#include <QCoreApplication>
#include <QStringList>

#include "core/model/season_info.h"
#include "core/words/words.h"

namespace combwright {
namespace {

QString constantSay(const char* text) { return QCoreApplication::translate("constants", text); }

Cell constantCell(const QString& text, bool strong = false) {
    Cell cell;
    cell.text = text;
    cell.strong = strong;
    return cell;
}

QString ownText(const Read& file, const OwnFigure& own) {
    QStringList parts{fromUtf8(own.value)};
    if (own.yard)
        if (const auto yard = file.find(*own.yard))
            parts << constantSay("for %1").arg(fromUtf8(yard->name.text()));
    if (own.since) parts << constantSay("since %1").arg(dayText(*own.since));
    QString text = parts.join(QLatin1Char(' '));
    if (!own.source.empty()) text += QStringLiteral(": ") + fromUtf8(own.source);
    return text;
}

}  // namespace

Page constantsPage(const Read& file, const std::vector<ConstantRow>& rows, Day on) {
    Page page;
    page.title = constantSay("Rates and limits");
    page.day = dayText(on);
    if (const auto season = file.first<SeasonInfo>({})) {
        page.keeper = fromUtf8(season->name.text());
        page.invented = season->invented.value_or(false);
    }
    TableBlock table;
    table.columns = {{constantSay("name"), 1.6, false},
                     {constantSay("published"), 0.8, true},
                     {constantSay("unit"), 0.8, false},
                     {constantSay("your own"), 2.0, false},
                     {constantSay("source"), 3.6, false}};
    for (const ConstantRow& each : rows) {
        QStringList source;
        if (!each.edition.empty()) source << fromUtf8(each.edition);
        if (!each.region.empty()) source << fromUtf8(each.region);
        if (!each.source.empty()) source << fromUtf8(each.source);
        TableRow row;
        row.cells = {constantCell(fromUtf8(each.key)), constantCell(fromUtf8(each.value)),
                     constantCell(fromUtf8(each.unit)),
                     constantCell(each.own ? ownText(file, *each.own) : QString(), true),
                     constantCell(source.join(QStringLiteral(", ")))};
        table.rows.push_back(std::move(row));
    }
    page.blocks.emplace_back(std::move(table));
    TextBlock foot;
    foot.small = true;
    foot.text = constantSay(
        "Your own counts before what is published, from its day on: set-constant, set-mite-line "
        "and set-phase-day set it, unset-constant gives it up. What your label says of a medicine "
        "counts before any table.");
    page.blocks.emplace_back(std::move(foot));
    return page;
}

}  // namespace combwright
