#include "ui/honey_room/page_browser.h"

#include <algorithm>

#include "core/words/words.h"

namespace combwright {
namespace {

QString pageTitle(const QString& text, TextSize size, const Look& look) {
    return QStringLiteral("<p style='margin:10px 0 3px 0; font-size:%1px'><b>%2</b></p>")
        .arg(look.font(size).pixelSize())
        .arg(text.toHtmlEscaped());
}

QString inTone(const QString& html, Tone tone, const Look& look) {
    return QStringLiteral("<span style='color:%1'>%2</span>").arg(look.tone(tone).name(), html);
}

QString cellHtml(const Cell& cell, const Look& look) {
    QString text = cell.text.toHtmlEscaped();
    if (cell.how) text += QStringLiteral(" <sup>%1</sup>").arg(QLatin1Char(letter(*cell.how)));
    if (cell.strong) text = QStringLiteral("<b>%1</b>").arg(text);
    if (cell.muted) text = inTone(text, Tone::Muted, look);
    if (!cell.second.isEmpty())
        text += QStringLiteral("<br>") + inTone(cell.second.toHtmlEscaped(), Tone::Muted, look);
    return text;
}

struct BlockHtml {
    const Look& look;

    QString operator()(const TextBlock& block) const {
        QString html;
        if (!block.title.isEmpty()) html += pageTitle(block.title, TextSize::Head, look);
        QString text = block.text.toHtmlEscaped().replace(QLatin1Char('\n'), QLatin1String("<br>"));
        if (block.caution) text = inTone(text, Tone::Warn, look);
        return html + QStringLiteral("<p style='margin:0 0 4px 0'>%1</p>").arg(text);
    }
    QString operator()(const TickBlock& block) const {
        QString html;
        if (!block.title.isEmpty()) html += pageTitle(block.title, TextSize::Head, look);
        for (const TickBlock::Line& line : block.lines)
            html += QStringLiteral("☐ %1 %2<br>")
                        .arg(line.text.toHtmlEscaped(),
                             inTone(line.about.toHtmlEscaped(), Tone::Muted, look));
        return html;
    }
    QString operator()(const TableBlock& block) const {
        QString html;
        if (!block.title.isEmpty()) html += pageTitle(block.title, TextSize::Head, look);
        double shares = 0;
        for (const TableColumn& column : block.columns) shares += column.share;
        html += QStringLiteral("<table width='100%' cellspacing='0' cellpadding='3'><tr>");
        for (const TableColumn& column : block.columns)
            html += QStringLiteral("<td width='%1%' align='%2'>%3</td>")
                        .arg(static_cast<int>(column.share / std::max(shares, 1.0) * 100.0))
                        .arg(column.right ? QLatin1String("right") : QLatin1String("left"),
                             inTone(column.head.toHtmlEscaped(), Tone::Muted, look));
        html += QStringLiteral("</tr>");
        for (const TableRow& row : block.rows) {
            html += QStringLiteral("<tr>");
            for (std::size_t c = 0; c < row.cells.size(); ++c) {
                const bool right = c < block.columns.size() && block.columns[c].right;
                html += QStringLiteral("<td align='%1'>%2</td>")
                            .arg(right ? QLatin1String("right") : QLatin1String("left"),
                                 cellHtml(row.cells[c], look));
            }
            html += QStringLiteral("</tr>");
        }
        return html + QStringLiteral("</table>");
    }
    template <class Drawn>
    QString operator()(const Drawn&) const {
        return {};
    }
};

}  // namespace

QString richTextOf(const Page& page, const Look& look) {
    QString html = pageTitle(page.title, TextSize::Title, look);
    html += inTone(page.day.toHtmlEscaped(), Tone::Muted, look);
    for (const Block& block : page.blocks) html += std::visit(BlockHtml{look}, block);
    QStringList letters;
    for (const How how : page.letters)
        letters << QStringLiteral("<b>%1</b> %2").arg(QLatin1Char(letter(how))).arg(howWord(how));
    if (!letters.isEmpty())
        html += QStringLiteral("<p>%1</p>")
                    .arg(inTone(letters.join(QStringLiteral(" &nbsp; ")), Tone::Muted, look));
    return html;
}

PageBrowser::PageBrowser(QWidget* parent) : QTextBrowser(parent) {
    setOpenLinks(false);
    setFrameShape(QFrame::NoFrame);
    setTabChangesFocus(true);
    // The arrows scroll and what stands there can be taken along.
    setTextInteractionFlags(Qt::TextSelectableByMouse | Qt::TextSelectableByKeyboard);
}

void PageBrowser::show(const Page& page, const Look& look) {
    setFont(look.font(TextSize::Body));
    setHtml(richTextOf(page, look));
    setAccessibleName(page.title);
}

}  // namespace combwright
