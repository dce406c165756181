#include "ui/honey_room/run_view.h"

#include <QKeyEvent>
#include <QLocale>
#include <QMouseEvent>
#include <QPainter>
#include <algorithm>
#include <cmath>

#include "core/words/figures.h"
#include "core/words/words.h"

namespace combwright {
namespace {

FigureText runFigure(double grams, How how) {
    return {massFigure(grams, how), massUnit(), letter(how)};
}

double gramsOf(Mass mass) { return static_cast<double>(mass.grams()); }

}  // namespace

RunView::RunView(Session& session, QWidget* parent) : QWidget(parent), m_session(session) {
    setFocusPolicy(Qt::StrongFocus);
    setObjectName(QStringLiteral("run_balance"));
    setAccessibleName(tr("Balance of the run"));
    connect(&session, &Session::lookChanged, this, [this] {
        updateGeometry();
        update();
    });
}

void RunView::show(const std::optional<RunBalance>& balance, const QString& beside) {
    m_balance = balance;
    m_beside = beside;
    reckonViews();
    const int last = m_balance ? static_cast<int>(m_balance->shares.size()) - 1 : 0;
    m_line = std::clamp(m_line, 0, std::max(0, last));
    speak();
    updateGeometry();
    update();
}

void RunView::setFolded(bool folded) {
    if (m_folded == folded) return;
    m_folded = folded;
    updateGeometry();
    update();
}

void RunView::takeIn(const RunBalance& balance) {
    // One band a hive, in the order the boxes came; those without a hive together at the end.
    struct Line {
        std::string hive;
        double grams = 0;
        How how = How::Weighed;
        QStringList marks;
    };
    std::vector<Line> in;
    Line unknown;
    for (const RunBoxLine& box : balance.boxes) {
        const auto found = std::find_if(in.begin(), in.end(),
                                        [&](const Line& each) { return each.hive == box.hive; });
        Line& line = box.hive.empty()    ? unknown
                     : found == in.end() ? in.emplace_back(Line{box.hive, 0, How::Weighed, {}})
                                         : *found;
        line.grams += box.offG.value_or(0);
        line.marks << (box.offG
                           ? fromUtf8(box.mark) + QLatin1Char(' ') +
                                 massFigure(*box.offG, balance.byEye ? How::ByEye : How::Weighed)
                           : fromUtf8(box.mark));
        line.how = weaker(line.how, balance.byEye      ? How::ByEye
                                    : box.byDifference ? How::ByDifference
                                                       : How::Weighed);
    }
    for (const Line& line : in)
        m_view.in.push_back({fromUtf8(line.hive), line.grams, runFigure(line.grams, line.how),
                             BandFill::Honey, line.marks.join(QStringLiteral(", "))});
    if (unknown.grams > 0)
        m_view.in.push_back({tr("? no tag"),
                             unknown.grams,
                             runFigure(unknown.grams, unknown.how),
                             BandFill::Unknown,
                             {}});
    if (balance.unaccountedG && *balance.unaccountedG < 0)
        m_view.in.push_back({tr("? more than came off"),
                             -*balance.unaccountedG,
                             runFigure(-*balance.unaccountedG, balance.missingHow()),
                             BandFill::Unknown,
                             {}});
}

void RunView::takeOut(const RunBalance& balance) {
    for (const RunShare& share : balance.shares) {
        QString note;
        if (share.atClosing)
            note = tr("revised, was %1").arg(massFigure(gramsOf(*share.atClosing), share.how));
        else if (!share.hive)
            note = tr("name its hive: Enter");
        m_view.out.push_back({share.hive ? fromUtf8(share.mark) : tr("? no tag"),
                              gramsOf(share.mass), runFigure(gramsOf(share.mass), share.how),
                              share.hive ? BandFill::Honey : BandFill::Unknown, note});
    }
    if (balance.cappings)
        m_view.out.push_back({tr("wet cappings"),
                              gramsOf(*balance.cappings),
                              runFigure(gramsOf(*balance.cappings), How::Weighed),
                              BandFill::Cappings,
                              {}});
    if (balance.scrapings)
        m_view.out.push_back({tr("scrapings"),
                              gramsOf(*balance.scrapings),
                              runFigure(gramsOf(*balance.scrapings), How::Weighed),
                              BandFill::WaxDark,
                              {}});
    if (balance.unaccountedG && *balance.unaccountedG > 0 && balance.outOfBoxesG)
        m_view.out.push_back(
            {tr("missing"), *balance.unaccountedG,
             runFigure(*balance.unaccountedG, balance.missingHow()), BandFill::Missing,
             tr("%1 %").arg(QLocale().toString(
                 100.0 * *balance.unaccountedG / std::max(1.0, *balance.outOfBoxesG), 'f', 1))});
}

void RunView::reckonViews() {
    m_view = {};
    m_view.size = TextSize::Body;
    m_sum.clear();
    if (!m_balance) return;
    takeIn(*m_balance);
    takeOut(*m_balance);
    if (m_balance->outOfBoxesG)
        m_view.total = runFigure(*m_balance->outOfBoxesG, m_balance->outHow());
    const auto line = [&](const QString& what, std::optional<double> grams, How how,
                          Tone tone = Tone::Ink) {
        m_sum.push_back(
            {what, grams ? runFigure(*grams, how) : FigureText{QStringLiteral("?")}, tone});
    };
    const auto known = [](const std::optional<Mass>& mass) {
        return mass ? std::optional(gramsOf(*mass)) : std::nullopt;
    };
    line(tr("in the buckets"),
         m_balance->bucketsHow == How::Unknown ? std::nullopt
                                               : std::optional(gramsOf(m_balance->buckets)),
         m_balance->bucketsHow);
    if (m_balance->byEye) return;
    line(tr("wet cappings"), known(m_balance->cappings), How::Weighed);
    if (m_balance->scrapings) line(tr("scrapings"), known(m_balance->scrapings), How::Weighed);
    if (m_balance->unaccountedG && *m_balance->unaccountedG < 0)
        line(tr("too much"), -*m_balance->unaccountedG, m_balance->missingHow(), Tone::Warn);
    else
        line(tr("missing"), m_balance->unaccountedG, m_balance->missingHow());
    line(tr("out of the boxes"), m_balance->outOfBoxesG, m_balance->outHow());
}

QString RunView::headText() const {
    if (!m_balance) return tr("Balance");
    const Extraction& run = m_balance->run;
    QString text = fromUtf8(run.name.text());
    if (!m_balance->yard.empty()) text += QLatin1Char(' ') + fromUtf8(m_balance->yard);
    if (run.closed) text += tr(", closed %1").arg(shortDayText(*run.closed));
    if (m_balance->byEye) text += tr(", by eye: nothing was weighed");
    return text;
}

QStringList RunView::foldedLines() const {
    QStringList parts;
    if (!m_balance) return parts;
    for (const BandView& band : m_view.out)
        parts << QStringLiteral("%1 %2 %3%4")
                     .arg(band.name, band.figure.figure, band.figure.unit,
                          m_balance && band.note.startsWith(tr("revised"))
                              ? QStringLiteral(" (%1)").arg(band.note)
                              : QString());
    return parts;
}

QSize RunView::sizeHint() const {
    const Look& look = m_session.look();
    const double step = lineStep(look.font(TextSize::Body));
    if (!m_folded && m_balance && !m_view.out.empty()) {
        const auto lines =
            std::max({m_view.in.size(), m_view.out.size(), m_sum.size(), std::size_t{5}});
        return {look.space(400),
                static_cast<int>(step * 1.1 * static_cast<double>(lines) + look.px(58))};
    }
    const QFontMetrics metrics(look.font(TextSize::Body));
    const int wide = std::max(width(), 100) - look.space(8);
    QString all = headText() + QStringLiteral(": ") + foldedLines().join(QStringLiteral("  ·  "));
    if (foldedLines().isEmpty() && !m_beside.isEmpty()) all = m_beside;
    const int high = metrics.boundingRect(QRect(0, 0, wide, 10000), Qt::TextWordWrap, all).height();
    return {look.space(200), high + look.space(12)};
}

double RunView::sumWidth() const {
    const Look& look = m_session.look();
    double widest = 0;
    FigureStyle style;
    style.size = TextSize::Head;
    style.bold = true;
    for (const SumLine& line : m_sum)
        widest =
            std::max(widest, lineWidth({{line.what}}, TextSize::Head, look) +
                                 lineWidth(figureRuns(line.figure, style), TextSize::Head, look));
    return widest + look.px(34);
}

QRectF RunView::bandsBox() const {
    const Look& look = m_session.look();
    return QRectF(rect()).adjusted(look.px(4), look.px(30), -sumWidth() - look.px(28), -look.px(8));
}

void RunView::paintSum(QPainter& painter) const {
    const Look& look = m_session.look();
    const double step = lineStep(look.font(TextSize::Head)) * 1.15;
    const double right = width() - look.px(4);
    const double left = right - sumWidth();
    double y = look.px(34) + step * 0.8;
    painter.setPen(QPen(look.tone(Tone::Hairline), 1));
    painter.drawLine(QPointF(left - look.px(14), look.px(34)),
                     QPointF(left - look.px(14), height() - look.px(8)));
    FigureStyle style;
    style.size = TextSize::Head;
    style.bold = true;
    std::vector<FigureText> figures;
    for (const SumLine& line : m_sum) figures.push_back(line.figure);
    const FigureColumns columns = measureFigures(figures, style, look);
    for (std::size_t i = 0; i < m_sum.size(); ++i) {
        const bool last = i + 1 == m_sum.size() && m_sum.size() > 1;
        if (last) {
            painter.setPen(QPen(look.tone(Tone::Ink), look.px(1.2)));
            painter.drawLine(QPointF(left, y - step * 0.72), QPointF(right, y - step * 0.72));
            y += look.px(4);
        }
        style.tone = m_sum[i].tone;
        paintLine(painter, {left, y}, {{m_sum[i].what, false, m_sum[i].tone}}, TextSize::Head,
                  look);
        paintFigure(painter, {right - columns.width(), y}, m_sum[i].figure, columns, style, look);
        if (last) {
            painter.setPen(QPen(look.tone(Tone::Ink), look.px(1)));
            for (const double down : {5.0, 8.0})
                painter.drawLine(QPointF(right - columns.width(), y + look.px(down)),
                                 QPointF(right, y + look.px(down)));
        }
        y += step;
    }
}

void RunView::paintEvent(QPaintEvent*) {
    const Look& look = m_session.look();
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(QPen(look.tone(Tone::Ink), look.px(1.3)));
    painter.drawLine(QPointF(0, 1), QPointF(width(), 1));
    const double base = look.px(6) + lineStep(look.font(TextSize::Body)) * 0.9;
    if (hasFocus()) {
        painter.setPen(QPen(look.tone(Tone::Accent), look.px(2)));
        painter.setBrush(Qt::NoBrush);
        painter.drawRoundedRect(QRectF(rect()).adjusted(1, 3, -1.5, -1.5), look.corner(),
                                look.corner());
    }
    if (m_folded || !m_balance || m_view.out.empty()) {
        painter.setPen(look.tone(Tone::Ink));
        painter.setFont(look.font(TextSize::Body));
        const QString lines = foldedLines().join(QStringLiteral("  ·  "));
        QString text = headText() + QStringLiteral(": ") + lines;
        if (lines.isEmpty()) text = tr("The balance is drawn when a run has boxes and buckets.");
        if (lines.isEmpty() && !m_beside.isEmpty()) text = m_beside;
        painter.drawText(QRectF(rect()).adjusted(look.px(4), look.px(8), -look.px(4), 0),
                         Qt::AlignLeft | Qt::AlignTop | Qt::TextWordWrap, text);
        return;
    }
    const double titleEnd =
        paintLine(painter, {look.px(4), base}, {{headText(), true}}, TextSize::Body, look);
    const QString counts = tr("%1 boxes, %2 frames, %3 loads")
                               .arg(m_balance->boxes.size())
                               .arg(m_balance->frames)
                               .arg(m_balance->loads);
    const double countsEnd = paintLine(painter, {titleEnd + look.px(20), base},
                                       {{counts, false, Tone::Muted}}, TextSize::Note, look);
    const QFont note = look.font(TextSize::Note);
    paintText(painter, {width() - look.px(4), base},
              fitted(m_beside, note, width() - countsEnd - look.px(30)), note,
              look.tone(Tone::Muted), Qt::AlignRight);
    paintBalance(painter, bandsBox(), m_view, look);
    if (hasFocus()) {
        const auto bands = balanceBands(bandsBox(), m_view, look);
        const std::size_t at = m_view.in.size() + static_cast<std::size_t>(m_line);
        if (at < bands.size()) {
            painter.setPen(QPen(look.tone(Tone::Accent), look.px(2)));
            painter.setBrush(Qt::NoBrush);
            painter.drawRoundedRect(bands[at].adjusted(0, -2, 2, 2), look.corner(), look.corner());
        }
    }
    paintSum(painter);
}

std::optional<Id<ExtractionBox>> RunView::boxToName() const {
    if (!m_balance || m_line >= static_cast<int>(m_balance->shares.size())) return std::nullopt;
    if (m_balance->shares[static_cast<std::size_t>(m_line)].hive) return std::nullopt;
    for (const RunBoxLine& box : m_balance->boxes)
        if (!box.box.hive) return box.box.id;
    return std::nullopt;
}

QString RunView::currentText() const {
    if (!m_balance || m_line >= static_cast<int>(m_view.out.size())) return {};
    const BandView& band = m_view.out[static_cast<std::size_t>(m_line)];
    return band.name + QLatin1Char(' ') + spoken(band.figure) +
           (band.note.isEmpty() ? QString() : QStringLiteral(", ") + band.note);
}

void RunView::speak() {
    if (!m_balance)
        return setAccessibleDescription(
            tr("The balance is drawn when a run has boxes and buckets."));
    setAccessibleDescription(headText() + QStringLiteral(". ") + currentText() +
                             QStringLiteral(". ") + spoken(m_view));
}

void RunView::keyPressEvent(QKeyEvent* event) {
    // With Ctrl a key is the room's.
    if (event->modifiers() & Qt::ControlModifier) return QWidget::keyPressEvent(event);
    const int last = m_balance ? static_cast<int>(m_balance->shares.size()) - 1 : 0;
    switch (event->key()) {
        case Qt::Key_Up:
            m_line = std::max(0, m_line - 1);
            break;
        case Qt::Key_Down:
            m_line = std::clamp(m_line + 1, 0, std::max(0, last));
            break;
        case Qt::Key_Return:
        case Qt::Key_Enter:
            if (const auto box = boxToName())
                Q_EMIT nameAsked(*box);
            else
                m_session.tell(
                    tr("%1. Only a line without a hive is named here.").arg(currentText()));
            return;
        default:
            return QWidget::keyPressEvent(event);
    }
    speak();
    m_session.tell(currentText());
    update();
}

void RunView::mousePressEvent(QMouseEvent* event) {
    if (!m_balance || m_folded) return;
    const auto bands = balanceBands(bandsBox(), m_view, m_session.look());
    for (std::size_t i = 0; i < m_balance->shares.size(); ++i) {
        const std::size_t at = m_view.in.size() + i;
        if (at >= bands.size()) break;
        const QRectF band = bands[at].adjusted(0, -4, width(), 4);
        if (!band.contains(event->position())) continue;
        m_line = static_cast<int>(i);
        if (const auto box = boxToName()) Q_EMIT nameAsked(*box);
    }
    speak();
    update();
}

}  // namespace combwright
