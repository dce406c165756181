#include "ui/wax_bench/bites_card.h"

#include <QLocale>
#include <QPainter>
#include <algorithm>
#include <cmath>

#include "core/words/figures.h"
#include "core/words/words.h"
#include "ui/drawing/lettering.h"
#include "ui/drawing/strokes.h"
#include "ui/wax_bench/wax_choices.h"

namespace combwright {
namespace {

constexpr double bitesLeft = 218.0;  // px at the base font
// Where the bars have less they stand below the words.
constexpr double barsRoom = 330.0;

QString metresWord(double metres) { return QLocale().toString(metres, 'f', 1); }

QString upperFirst(QString text) {
    if (!text.isEmpty()) text.front() = text.front().toUpper();
    return text;
}

}  // namespace

BitesCard::BitesCard(Session& session, QWidget* parent) : QWidget(parent), m_session(session) {
    setObjectName(QStringLiteral("bites"));
    setAccessibleName(tr("What bites first"));
    // Reached by Tab, so that its words are read out.
    setFocusPolicy(Qt::TabFocus);
    QSizePolicy policy(QSizePolicy::Preferred, QSizePolicy::Fixed);
    policy.setHeightForWidth(true);
    setSizePolicy(policy);
    connect(&session, &Session::lookChanged, this, [this] {
        updateGeometry();
        update();
    });
}

QString BitesCard::countsOf(const std::vector<std::int64_t>& counts) const {
    QStringList all;
    for (const std::int64_t each : counts) all << QString::number(each);
    if (all.size() < 2) return all.join(QString());
    const QString last = all.takeLast();
    return tr("%1 and %2").arg(all.join(QStringLiteral(", ")), last);
}

void BitesCard::sayOneMore(const CandleEvenings& plan) {
    QStringList all;
    bool cavityOrEvening = false;
    for (const OneMoreCandleThing& each : plan.oneMore) {
        QStringList changes;
        for (std::size_t n = 0; n < each.change.size(); ++n)
            if (each.change[n] != 0)
                changes << (each.change[n] > 0 ? QStringLiteral("+") : QStringLiteral("−")) +
                               QString::number(std::abs(each.change[n])) + QLatin1Char(' ') +
                               candlesText(plan.wants[n].what, std::abs(each.change[n]));
        if (changes.isEmpty()) continue;
        cavityOrEvening = cavityOrEvening || each.what == OneMoreCandleThing::What::Cavity ||
                          each.what == OneMoreCandleThing::What::Evening;
        QString what;
        switch (each.what) {
            case OneMoreCandleThing::What::Cavity:
                what = tr("a %1 mould").arg(fromUtf8(plan.wants[each.want].what));
                break;
            case OneMoreCandleThing::What::Evening:
                what = tr("an evening");
                break;
            case OneMoreCandleThing::What::Kilogram:
                what =
                    each.name.empty() ? tr("1 kg of wax") : tr("1 kg %1").arg(fromUtf8(each.name));
                break;
            case OneMoreCandleThing::What::Metre:
                what = tr("1 m of wick %1").arg(fromUtf8(each.name));
                break;
        }
        all << tr("%1: %2").arg(what, changes.join(QStringLiteral(", ")));
    }
    m_oneMore = all.isEmpty() ? tr("One thing more alone changes nothing.")
                              : tr("One more of each: %1.").arg(all.join(QStringLiteral(" · ")));
    if (!all.isEmpty() && !cavityOrEvening)
        m_oneMore += tr(" A mould or an evening more changes nothing before that.");
}

void BitesCard::show(const CandleEvenings& plan) {
    m_lines.clear();
    m_said.clear();
    for (const CandleLimitRow& row : candleLimits(plan)) {
        Line line;
        line.isShort = row.over < 0;
        line.share = row.need > 0 ? row.have / row.need : 1.0;
        QString amount;
        switch (row.what) {
            case CandleLimit::Wax:
                line.name = tr("Wax");
                line.have = massRateFigure(row.have);
                line.need = massRateFigure(row.need);
                line.unit = massUnit();
                amount = massRateFigure(std::abs(row.over));
                line.note = tr("%1 net, %2 % lost in pouring")
                                .arg(massRateFigure(plan.needs.waxNetG))
                                .arg(static_cast<int>(std::lround(plan.lossShare * 100)));
                break;
            case CandleLimit::Moulds:
                line.name = tr("%1 moulds").arg(upperFirst(fromUtf8(row.name)));
                line.have = QString::number(std::llround(row.have));
                line.need = QString::number(std::llround(row.need));
                line.unit = candlesText(row.name, 2);
                amount = QString::number(std::llround(std::abs(row.over)));
                line.note = row.evenings ? tr("%1 evenings needed, %2 to come")
                                               .arg(*row.evenings)
                                               .arg(plan.eveningsFree)
                                         : tr("no mould to pour it in");
                break;
            case CandleLimit::Wick:
                line.name = row.name.empty() ? tr("Wick, which nobody said")
                                             : tr("Wick %1").arg(fromUtf8(row.name));
                line.have = metresWord(row.have);
                line.need = metresWord(row.need);
                line.unit = QStringLiteral("m");
                amount = metresWord(std::abs(row.over));
                if (row.each > 0)
                    line.note =
                        tr("%1 × %2 m").arg(row.pieces).arg(QLocale().toString(row.each, 'f', 2));
                break;
        }
        line.verdict = (line.isShort ? tr("short %1") : tr("%1 over")).arg(amount);
        m_lines.push_back(line);
    }
    QStringList order;
    for (const CandleWanted& want : plan.wants) order << candlesText(want.what, 2);
    m_said << tr("Wanted first: %1.").arg(order.join(QStringLiteral(", "))) << QString();
    const WithThisWax apart = withThisWax(plan, plan.needs);
    const WithThisWax mixed = withThisWax(plan, plan.mixed);
    const auto kilos = [](double grams) {
        return massRateFigure(grams) + QLatin1Char(' ') + massUnit();
    };
    m_said << tr("With this wax, shades apart:")
           << tr("%1; %2 left.").arg(countsOf(apart.counts), kilos(apart.leftG))
           << tr("If the shades may be mixed:")
           << tr("%1; %2 left.").arg(countsOf(mixed.counts), kilos(mixed.leftG));
    std::vector<std::int64_t> made;
    for (const CandleReach& each : plan.reach.kinds) made.push_back(each.made);
    m_said << tr("With moulds and wick too:") << countsOf(made) + QLatin1Char('.');
    m_said << tr("Most candles of it:")
           << countsOf(plan.best.counts) +
                  (plan.best.proven ? QStringLiteral(".")
                                    : tr("; perhaps more, at most %1.").arg(plan.best.bound));
    sayOneMore(plan);
    setAccessibleDescription(words());
    updateGeometry();
    update();
}

QString BitesCard::words() const {
    QStringList all;
    for (const Line& line : m_lines)
        all << tr("%1: %2 of %3 %4, %5; %6.")
                   .arg(line.name, line.have, line.need, line.unit, line.verdict, line.note);
    for (const QString& each : m_said)
        if (!each.isEmpty()) all << each;
    all << m_oneMore;
    return all.join(QLatin1Char(' '));
}

bool BitesCard::barsBelow(int width) const {
    return width < m_session.look().px(bitesLeft + barsRoom);
}

double BitesCard::leftWidth(int width) const {
    return barsBelow(width) ? width : m_session.look().px(bitesLeft);
}

double BitesCard::leftHeight(int width) const {
    const Look& look = m_session.look();
    double high = look.px(4.0) + lineStep(look.font(TextSize::Head, true));
    for (qsizetype n = 0; n + 1 < m_said.size(); n += 2)
        high += saidHeight(n, width) + look.px(2.0);
    return high;
}

bool BitesCard::saidInOneLine(qsizetype n, int width) const {
    const Look& look = m_session.look();
    return textWidth(m_said[n], look.font(TextSize::Note)) +
               textWidth(m_said[n + 1], look.font(TextSize::Note, true)) + look.px(6.0) <
           leftWidth(width);
}

double BitesCard::saidHeight(qsizetype n, int width) const {
    const QFont plain = m_session.look().font(TextSize::Note);
    if (saidInOneLine(n, width)) return lineStep(plain);
    // Words alone wrap; a figure that has no room behind its words stands under them.
    if (!m_said[n + 1].isEmpty()) return 2.0 * lineStep(plain);
    return QFontMetricsF(plain)
        .boundingRect(QRectF(0, 0, leftWidth(width), 1e6), Qt::TextWordWrap, m_said[n])
        .height();
}

int BitesCard::heightForWidth(int width) const {
    const Look& look = m_session.look();
    const double row = lineStep(look.font(TextSize::Body)) + look.px(5.0);
    double right = look.px(8.0) + row * static_cast<double>(m_lines.size());
    const bool below = barsBelow(width);
    const double wide =
        below ? width : std::max(width - leftWidth(width) - look.px(18.0), look.px(120.0));
    right += QFontMetricsF(look.font(TextSize::Note))
                 .boundingRect(QRectF(0, 0, wide, 1e6), Qt::TextWordWrap, m_oneMore)
                 .height() +
             look.px(8.0);
    const double left = leftHeight(width);
    return static_cast<int>(std::ceil(below ? left + right : std::max(left, right))) +
           look.space(4);
}

void BitesCard::paintEvent(QPaintEvent*) {
    const Look& look = m_session.look();
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(plainPen(look.tone(Tone::Ink), look.px(1.5)));
    painter.drawLine(QPointF(0, 1), QPointF(width(), 1));
    double y = look.px(4.0) + lineStep(look.font(TextSize::Head, true)) * 0.9;
    paintText(painter, {0, y}, tr("What bites first"), look.font(TextSize::Head, true),
              look.tone(Tone::Ink));
    y += look.px(5.0);
    for (qsizetype n = 0; n + 1 < m_said.size(); n += 2) {
        // Muted words with the figures behind them; the figures are what one looks for.
        const QFont plain = look.font(TextSize::Note), bold = look.font(TextSize::Note, true);
        const double step = lineStep(plain);
        const double high = saidHeight(n, width());
        if (saidInOneLine(n, width())) {
            const double end = textWidth(m_said[n] + QLatin1Char(' '), plain);
            paintText(painter, {0, y + step * 0.8}, m_said[n], plain, look.tone(Tone::Muted));
            paintText(painter, {end, y + step * 0.8}, m_said[n + 1], bold, look.tone(Tone::Ink));
        } else if (m_said[n + 1].isEmpty()) {
            painter.setFont(plain);
            painter.setPen(look.tone(Tone::Muted));
            painter.drawText(QRectF(0, y, leftWidth(width()), high + 2), Qt::TextWordWrap,
                             m_said[n]);
        } else {
            paintText(painter, {0, y + step * 0.8}, m_said[n], plain, look.tone(Tone::Muted));
            paintText(painter, {0, y + step * 1.8}, m_said[n + 1], bold, look.tone(Tone::Ink));
        }
        y += high + look.px(2.0);
    }
    // The bars.
    const bool below = barsBelow(width());
    const double left = below ? 0.0 : leftWidth(width()) + look.px(18.0);
    const double row = lineStep(look.font(TextSize::Body)) + look.px(5.0);
    double name = 0, have = 0, need = 0, unit = 0, verdict = 0, note = 0;
    const QFont body = look.font(TextSize::Body), bold = look.font(TextSize::Body, true),
                small = look.font(TextSize::Note);
    for (const Line& line : m_lines) {
        name = std::max(name, textWidth(line.name, body));
        have = std::max(have, textWidth(line.have, bold));
        need = std::max(need, textWidth(line.need, body));
        unit = std::max(unit, textWidth(line.unit, small));
        verdict = std::max(verdict, textWidth(line.verdict, bold));
        note = std::max(note, textWidth(line.note, small));
    }
    const double of = textWidth(tr("for"), small);
    const double haveRight = left + name + look.px(14.0) + have;
    const double needRight = haveRight + of + look.px(12.0) + need;
    const double barLeft = needRight + look.px(6.0) + unit + look.px(18.0);
    double barRight = width() - verdict - note - look.px(34.0);
    const bool notes = barRight - barLeft > look.px(60.0);
    if (!notes) barRight = width() - verdict - look.px(18.0);
    double base = (below ? leftHeight(width()) : 0.0) + look.px(6.0) + lineStep(body);
    const double cap = capHeight(body);
    for (const Line& line : m_lines) {
        paintText(painter, {left, base}, line.name, body, look.tone(Tone::Ink));
        paintText(painter, {haveRight, base}, line.have, bold, look.tone(Tone::Ink),
                  Qt::AlignRight);
        paintText(painter, {haveRight + look.px(4.0), base}, tr("for"), small,
                  look.tone(Tone::Muted));
        paintText(painter, {needRight, base}, line.need, body, look.tone(Tone::Ink),
                  Qt::AlignRight);
        paintText(painter, {needRight + look.px(4.0), base}, line.unit, small,
                  look.tone(Tone::Muted));
        if (barRight - barLeft > look.px(24.0)) {
            // As long as the greater of what there is and what is needed.
            const double longest = std::max(line.share, 1.0);
            const double wide = barRight - barLeft;
            const double there = wide * std::min(line.share, 1.0) / longest;
            const QRectF bar(barLeft + there, base - cap, wide - there, cap);
            painter.setPen(line.isShort ? dashedPen(look.tone(Tone::Warn), look.px(1.0))
                                        : plainPen(look.tone(Tone::Line), look.px(1.0)));
            painter.setBrush(look.tone(Tone::Surface));
            painter.drawRect(bar);
            painter.fillRect(QRectF(barLeft, base - cap, there, cap), look.tone(Tone::Ink));
        }
        const Tone tone = line.isShort ? Tone::Warn : Tone::Good;
        const double x = std::max(barRight + look.px(14.0), barLeft);
        paintText(painter, {x, base}, line.verdict, bold, look.tone(tone));
        if (notes)
            paintText(painter, {x + verdict + look.px(12.0), base}, line.note, small,
                      look.tone(Tone::Muted));
        base += row;
    }
    painter.setFont(small);
    painter.setPen(look.tone(Tone::Muted));
    painter.drawText(QRectF(left, base - lineStep(body) + look.px(8.0), width() - left, height()),
                     Qt::TextWordWrap, m_oneMore);
    if (!hasFocus()) return;
    painter.setPen(QPen(look.tone(Tone::Accent), look.px(2.0)));
    painter.setBrush(Qt::NoBrush);
    painter.drawRoundedRect(QRectF(rect()).adjusted(1, 3, -1, -1), look.corner(), look.corner());
}

}  // namespace combwright
