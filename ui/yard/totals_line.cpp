#include "ui/yard/totals_line.h"

#include <QCoreApplication>
#include <QLocale>
#include <QPainter>
#include <algorithm>
#include <cmath>

#include "core/words/kind_words.h"
#include "core/words/words.h"
#include "ui/drawing/strokes.h"

namespace combwright {
namespace {

QString ledgerWord(const char* text) { return QCoreApplication::translate("ledger", text); }

QString notOpenedWords(const YardSheet& sheet) {
    if (sheet.notOpened == 0) return {};
    QStringList whys;
    for (const std::string& why : sheet.whyNotOpened) whys << fromUtf8(why);
    return whys.isEmpty() ? ledgerWord(", %1 not").arg(sheet.notOpened)
                          : ledgerWord(", %1 not: %2")
                                .arg(sheet.notOpened)
                                .arg(whys.join(QStringLiteral(", ")));
}

LedgerFigure openedFigure(const YardSheet& sheet) {
    LedgerFigure opened{ledgerWord("opened"), {}, {}};
    if (!sheet.visit) {
        opened.words = ledgerWord("no visit that day");
        return opened;
    }
    opened.figure = {QString::number(sheet.opened), {}, letter(How::Counted)};
    opened.words = ledgerWord("of %1").arg(sheet.rows.size()) + notOpenedWords(sheet);
    return opened;
}

LedgerFigure broodFigure(const YardSheet& sheet) {
    LedgerFigure brood{ledgerWord("brood, mean"), {}, {}};
    if (!sheet.brood) {
        brood.words = sheet.visit ? ledgerWord("not counted") : ledgerWord("not counted that day");
        return brood;
    }
    brood.figure = {QLocale().toString(sheet.brood->value, 'f', 1), {}, letter(sheet.brood->how)};
    brood.words = ledgerWord("frames, %1 of %2 counted").arg(sheet.brood->n).arg(sheet.rows.size());
    return brood;
}

/// Who lived there that day, and of whom one has to mind the queen.
LedgerFigure coloniesFigure(const YardSheet& sheet) {
    LedgerFigure colonies{
        ledgerWord("colonies"), {QString::number(sheet.colonies), {}, letter(How::Counted)}, {}};
    QStringList mind;
    if (sheet.queenless > 0) mind << ledgerWord("%1 queenless").arg(sheet.queenless);
    if (sheet.waiting > 0) mind << ledgerWord("%1 waiting").arg(sheet.waiting);
    if (!mind.isEmpty())
        colonies.words = QStringLiteral("(%1)").arg(mind.join(QStringLiteral(", ")));
    return colonies;
}

}  // namespace

std::vector<LedgerFigure> ledgerOf(const YardSheet& sheet) {
    std::vector<LedgerFigure> figures{openedFigure(sheet), broodFigure(sheet)};
    LedgerFigure supers{ledgerWord("supers"),
                        {QString::number(sheet.supersStanding), {}, letter(How::Counted)},
                        ledgerWord("on")};
    if (sheet.visit || sheet.supersPutOn > 0)
        supers.words =
            ledgerWord("on, %1 of them that day").arg(static_cast<qlonglong>(sheet.supersPutOn));
    figures.push_back(supers);
    if (sheet.supersInStore)
        figures.push_back({ledgerWord("in the storeroom"),
                           {QString::number(*sheet.supersInStore), {}, letter(How::Counted)},
                           ledgerWord("left, %1").arg(kindText(sheet.superName))});
    // A keeper who writes down hives alone has no colonies to count.
    if (sheet.colonies > 0) figures.push_back(coloniesFigure(sheet));
    return figures;
}

TotalsLine::TotalsLine(Session& session, QWidget* parent) : QWidget(parent), m_session(session) {
    setObjectName(QStringLiteral("yard_totals"));
    setAccessibleName(tr("What the yard adds up to"));
    QSizePolicy policy(QSizePolicy::Preferred, QSizePolicy::Fixed);
    policy.setHeightForWidth(true);
    setSizePolicy(policy);
    connect(&session, &Session::lookChanged, this, [this] { updateGeometry(); });
}

void TotalsLine::show(const YardSheet& sheet) {
    m_figures = ledgerOf(sheet);
    QStringList said;
    for (const LedgerFigure& each : m_figures)
        said << QStringLiteral("%1: %2 %3").arg(each.name, spoken(each.figure), each.words);
    setAccessibleDescription(said.join(QStringLiteral(". ")));
    updateGeometry();
    update();
}

double TotalsLine::widthOf(const LedgerFigure& each) const {
    const Look& look = m_session.look();
    FigureStyle style;
    style.size = TextSize::Head;
    style.bold = true;
    const double figure = each.figure.figure.isEmpty()
                              ? 0.0
                              : measureFigures({each.figure}, style, look).width() + look.px(5.0);
    return std::max(textWidth(each.name, look.font(TextSize::Note)),
                    figure + textWidth(each.words, look.font(TextSize::Note)));
}

int TotalsLine::perRow(int width) const {
    const Look& look = m_session.look();
    double widest = 1.0;
    double together = 0.0;
    for (const LedgerFigure& each : m_figures) {
        widest = std::max(widest, widthOf(each));
        together += widthOf(each) + look.px(20.0);
    }
    const int all = static_cast<int>(m_figures.size());
    if (together <= width) return std::max(all, 1);
    return std::clamp(static_cast<int>(width / (widest + look.px(20.0))), 1, std::max(all, 1));
}

double TotalsLine::rowHeight() const {
    const Look& look = m_session.look();
    return lineStep(look.font(TextSize::Note)) + lineStep(look.font(TextSize::Head)) + look.px(4.0);
}

int TotalsLine::heightForWidth(int width) const {
    const Look& look = m_session.look();
    const int columns = perRow(width);
    const int rows = (static_cast<int>(m_figures.size()) + columns - 1) / columns;
    return static_cast<int>(std::ceil(rows * rowHeight() + look.px(16.0)));
}

void TotalsLine::paintEvent(QPaintEvent*) {
    const Look& look = m_session.look();
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const auto rule = [&](double y) {
        painter.setPen(plainPen(look.tone(Tone::Line), look.px(1.0)));
        painter.drawLine(QPointF(0, y), QPointF(width(), y));
    };
    rule(look.px(2.0));
    // A double rule closes a sum.
    rule(height() - look.px(5.0));
    rule(height() - look.px(2.0));
    const int columns = perRow(width());
    // Where all stand in one row each takes what it needs, and the rest of the width parts them.
    double needed = 0.0;
    for (const LedgerFigure& each : m_figures) needed += widthOf(each);
    const int all = static_cast<int>(m_figures.size());
    const double spare = columns == all && all > 1 ? (width() - needed) / all : 0.0;
    FigureStyle style;
    style.size = TextSize::Head;
    style.bold = true;
    double x = 0.0;
    for (int i = 0; i < all; ++i) {
        const LedgerFigure& each = m_figures[static_cast<std::size_t>(i)];
        if (columns != all) x = (i % columns) * static_cast<double>(width()) / columns;
        const auto row = i / columns;
        const double top = look.px(5.0) + static_cast<double>(row) * rowHeight();
        const QFont note = look.font(TextSize::Note);
        const double nameBase = top + lineStep(note) * 0.85;
        const double base = nameBase + lineStep(look.font(TextSize::Head)) * 0.95;
        paintText(painter, {x, nameBase}, each.name, note, look.tone(Tone::Muted));
        double at = x;
        if (!each.figure.figure.isEmpty())
            at = paintFigure(painter, {x, base}, each.figure.figure, each.figure.unit,
                             each.figure.how, style, look) +
                 look.px(5.0);
        paintText(painter, {at, base}, each.words, note, look.tone(Tone::Muted));
        x += widthOf(each) + spare;
    }
}

}  // namespace combwright
