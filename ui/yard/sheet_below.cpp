// What stands below the sheet: what was kept, what to look at before closing, what to take along.
#include <QLocale>
#include <QStringList>

#include "core/places/pages/yard/yard_sheet_page.h"
#include "core/words/words.h"
#include "ui/yard/sheet_view.h"

namespace combwright {

QString SheetView::keptText() const {
    const YardSheet& sheet = m_model.sheet();
    const QString row =
        QStringLiteral("<tr><td>%1 &nbsp;</td><td><b>%2</b><small> %3</small> %4</td></tr>");
    QString text = QStringLiteral("<b>%1</b><table cellspacing='2'>").arg(tr("What was kept"));
    text += row.arg(tr("opened"))
                .arg(sheet.opened)
                .arg(QLatin1Char('c'))
                .arg(sheet.notOpened ? tr("%1 not opened").arg(sheet.notOpened) : QString());
    if (sheet.supersInStore)
        text += row.arg(tr("supers put on"))
                    .arg(sheet.supersPutOn)
                    .arg(QLatin1Char('c'))
                    .arg(tr("%1 left in the storeroom").arg(*sheet.supersInStore));
    else
        text += row.arg(tr("supers put on"))
                    .arg(sheet.supersPutOn)
                    .arg(QLatin1Char('c'))
                    .arg(QString());
    const auto mean = [&](const QString& what, const std::optional<MeanOf>& value) {
        if (!value) return;
        text += row.arg(what, QLocale().toString(value->value, 'f', 1),
                        QString(QLatin1Char(letter(value->how))),
                        tr("frames, %1 of %2 hives").arg(value->n).arg(sheet.rows.size()));
    };
    mean(tr("brood, mean"), sheet.brood);
    mean(tr("stores, mean"), sheet.stores);
    return text + QStringLiteral("</table><small>%1</small>")
                      .arg(tr("Blank is not nought. Means use only what was seen."));
}

QString SheetView::lookAtText() const {
    const YardSheet& sheet = m_model.sheet();
    QStringList lines;
    for (const YardSheetRow& row : sheet.rows)
        for (const Mind& mind : row.minds) {
            const bool urgent =
                mind.kind == MindKind::MitesOver || mind.kind == MindKind::QueenWait ||
                mind.kind == MindKind::CellsSeen || mind.kind == MindKind::NoEggs ||
                mind.kind == MindKind::NotOpened || mind.kind == MindKind::FoundDead ||
                (mind.kind == MindKind::NobodyLives && row.today);
            if (urgent)
                lines << QStringLiteral("<b>%1</b> %2")
                             .arg(fromUtf8(row.hive.mark.text()).toHtmlEscaped(),
                                  mindText(mind, sheet.on).toHtmlEscaped());
        }
    if (lines.isEmpty()) lines << tr("Nothing stands out.");
    return QStringLiteral("<b>%1</b><br>").arg(tr("Look at these before you close")) +
           lines.join(QStringLiteral("<br>"));
}

QString SheetView::takeText() const {
    QStringList lines;
    for (const TakeAlong& take : m_model.sheet().takeAlong) {
        QStringList hives;
        for (const std::string& hive : take.hives) hives << fromUtf8(hive);
        const QString count = take.what == TakeAlong::What::LeaveShut ? QStringLiteral("–")
                                                                      : QString::number(take.count);
        lines << QStringLiteral("<b>%1</b> &nbsp;%2 &nbsp;<span>%3</span>")
                     .arg(count, takeAlongText(take).toHtmlEscaped(),
                          hives.join(QStringLiteral(", ")).toHtmlEscaped());
    }
    if (lines.isEmpty()) lines << tr("Nothing written down asks for anything.");
    return QStringLiteral("<b>%1</b><br>").arg(tr("Take next time")) +
           lines.join(QStringLiteral("<br>"));
}

}  // namespace combwright
