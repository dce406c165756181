#include "core/places/pages/explained_page.h"

#include <QCoreApplication>

#include "core/words/words.h"
#include "core/words/working_words.h"

namespace combwright {
namespace {

QString whyWord(const char* text) { return QCoreApplication::translate("explained", text); }

Cell whyCell(const QString& text) {
    Cell cell;
    cell.text = text;
    return cell;
}

}  // namespace

Page explainedPage(const std::vector<Explained>& figures) {
    Page page;
    page.title = whyWord("How the figures come about");
    for (const Explained& figure : figures) {
        TableBlock table;
        table.title = QStringLiteral("%1: %2").arg(figure.what, figure.answer);
        table.columns = {{QString(), 2.2, false},
                         {whyWord("value"), 1.1, true},
                         {whyWord("how"), 3.0, false},
                         {whyWord("source"), 2.4, false}};
        table.rowMm = 5;
        for (const Working::Step& step : figure.working.steps) {
            TableRow row;
            row.cells = {whyCell(stepWord(step)), whyCell(stepValue(step)),
                         whyCell(fromUtf8(step.how)), whyCell(fromUtf8(step.source))};
            table.rows.push_back(row);
        }
        page.blocks.emplace_back(std::move(table));
    }
    return page;
}

}  // namespace combwright
