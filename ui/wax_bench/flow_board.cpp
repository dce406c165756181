#include "ui/wax_bench/flow_board.h"

#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>
#include <algorithm>
#include <cmath>
#include <map>

#include "core/words/figures.h"
#include "core/words/wax_figures.h"
#include "core/words/words.h"
#include "ui/drawing/lettering.h"
#include "ui/wax_bench/wax_choices.h"

namespace combwright {
namespace {

constexpr int flowHigh = 214;  // px at the base font

FigureText roughly(double grams, How how) {
    return {massFigure(grams, how), massUnit(), letter(how)};
}
FigureText finely(double grams, How how) {
    return {massRateFigure(grams), massUnit(), letter(how)};
}
QString finelyText(double grams) { return massRateFigure(grams) + QLatin1Char(' ') + massUnit(); }

BandFill fillOf(WaxShade shade) {
    switch (shade) {
        case WaxShade::Light:
            return BandFill::WaxLight;
        case WaxShade::Mid:
            return BandFill::WaxMid;
        case WaxShade::Dark:
            return BandFill::WaxDark;
    }
    return BandFill::WaxLight;
}

BandFill fillOf(RawWaxSource source) {
    switch (source) {
        case RawWaxSource::Cappings:
            return BandFill::Cappings;
        case RawWaxSource::Scrapings:
            return BandFill::WaxDark;
        case RawWaxSource::OldComb:
            return BandFill::Refuse;
        case RawWaxSource::Mixed:
            return BandFill::WaxMid;
    }
    return BandFill::Cappings;
}

}  // namespace

FlowBoard::FlowBoard(Session& session, QWidget* parent) : QWidget(parent), m_session(session) {
    setObjectName(QStringLiteral("wax_flow"));
    setFocusPolicy(Qt::StrongFocus);
    setAccessibleName(tr("Where the wax goes"));
    setSizePolicy(QSizePolicy::Preferred, QSizePolicy::Fixed);
    connect(&session, &Session::lookChanged, this, [this] {
        updateGeometry();
        update();
    });
}

void FlowBoard::show(const WaxFlow& flow, const CandleEvenings* plan) {
    m_drawn = {};
    m_bands.clear();
    addRaw(flow);
    addOn(flow);
    addShades(flow);
    if (plan) addWants(flow, *plan);
    addHeads(flow);
    m_drawn.times =
        waxFlowTimes(flow.rawG, std::max({flow.washedG, flow.haveG, plan ? flow.neededG : 0.0}));
    m_drawn.barIn = massFigure(5000, How::ByEye) + QLatin1Char(' ') + massUnit();
    m_drawn.barOut = massFigure(1000, How::ByEye) + QLatin1Char(' ') + massUnit();
    m_current = std::clamp(m_current, 0, std::max(static_cast<int>(m_bands.size()) - 1, 0));
    QStringList line;
    if (!flow.raw.empty()) line << tr("raw %1").arg(massText(flow.rawG, How::Weighed));
    if (flow.washedG > 0) line << tr("washed %1").arg(massText(flow.washedG, How::Weighed));
    line << tr("blocks %1").arg(finelyText(flow.haveG));
    if (plan) line << tr("wanted %1").arg(finelyText(flow.neededG));
    m_line = line.join(QStringLiteral(" → "));
    if (plan)
        m_line += flow.shortG > 0 ? tr(", short %1").arg(finelyText(flow.shortG))
                                  : tr(", over %1").arg(finelyText(flow.overG));
    if (m_bands.empty())
        m_line = tr("No wax is written down yet: G gathers raw wax, C casts a block.");
    updateGeometry();
    speak();
    update();
}

void FlowBoard::addRaw(const WaxFlow& flow) {
    for (const WaxFlowRaw& raw : flow.raw) {
        QStringList from;
        for (const std::string& each : raw.from) from << fromUtf8(each);
        const QString source = choiceText(word(raw.source));
        // A long list of boxes is told by the batch's own name.
        const QString name = from.isEmpty() || from.size() > 2
                                 ? tr("%1, %2").arg(source, fromUtf8(raw.name))
                                 : tr("%1, %2").arg(source, from.join(QStringLiteral(", ")));
        BandView band{name, raw.grams.value_or(0.0), {}, fillOf(raw.source), {}};
        band.figure =
            raw.grams ? roughly(*raw.grams, raw.how) : FigureText{QStringLiteral("?"), {}, 0};
        if (!raw.grams) band.fill = BandFill::Unknown;
        m_bands.push_back({tr("raw"),
                           band.name,
                           band.figure,
                           raw.waits ? tr("not melted yet") : QString(),
                           {.batch = raw.batch}});
        band.figure = raw.grams ? FigureText{band.figure.figure, {}, 0} : band.figure;
        m_drawn.raw.push_back(band);
    }
}

void FlowBoard::addOn(const WaxFlow& flow) {
    const auto add = [this](std::vector<BandView>& to, const QString& part, const QString& name,
                            double grams, How how, BandFill fill) {
        if (grams <= 0) return;
        to.push_back({name, grams, roughly(grams, how), fill, {}});
        m_bands.push_back({part, name, roughly(grams, how), {}, {}});
    };
    add(m_drawn.out, tr("of the raw"), tr("honey drained"), flow.honeyG, How::Weighed,
        BandFill::Honey);
    add(m_drawn.out, tr("of the raw"), tr("washed away"), flow.awayG, How::ByDifference,
        BandFill::Unknown);
    add(m_drawn.out, tr("of the raw"), tr("waits"), flow.waitsG, How::Weighed, BandFill::Cappings);
    m_drawn.throughGrams = flow.washedG;
    const auto fine = [this](const QString& name, double grams, How how, BandFill fill) {
        if (grams <= 0) return;
        m_drawn.lost.push_back({name, grams, finely(grams, how), fill, {}});
        m_bands.push_back({tr("of the washed"), name, finely(grams, how), {}, {}});
    };
    fine(tr("washed, waits"), flow.washedWaitsG, How::Weighed, BandFill::WaxMid);
    fine(tr("slumgum"), flow.slumgumG, How::Weighed, BandFill::Refuse);
    fine(tr("missing"), flow.missingG.value_or(0.0), How::ByDifference, BandFill::Missing);
}

void FlowBoard::addShades(const WaxFlow& flow) {
    for (const WaxFlowShade& shade : flow.shades) {
        WaxShadeView view;
        view.band = {shadeText(shade.shade),
                     shade.leftG,
                     finely(shade.leftG, shade.how),
                     fillOf(shade.shade),
                     {}};
        view.castGrams = shade.castG;
        QStringList notes;
        if (shade.goneG > 0) notes << tr("%1 gone").arg(finelyText(shade.goneG));
        if (shade.notWeighed > 0) notes << tr("%1 not weighed").arg(shade.notWeighed);
        view.restGrams = shade.unusedG;
        if (shade.unusedG >= 5 && !flow.wants.empty())
            view.rest = tr("%1 left").arg(finelyText(shade.unusedG));
        if (!view.rest.isEmpty()) notes << view.rest;
        m_bands.push_back({tr("blocks"),
                           view.band.name,
                           view.band.figure,
                           notes.join(QStringLiteral("; ")),
                           {.shade = shade.shade}});
        m_drawn.shades.push_back(view);
    }
}

void FlowBoard::addWants(const WaxFlow& flow, const CandleEvenings& plan) {
    for (std::size_t n = 0; n < flow.wants.size(); ++n) {
        const WaxFlowWant& want = flow.wants[n];
        QStringList parts;
        for (const WaxFlowLink& link : flow.links) {
            if (link.want != n) continue;
            m_drawn.links.push_back({link.shade, n, link.blockG});
            parts << tr("%1 %2")
                         .arg(static_cast<qlonglong>(link.count))
                         .arg(m_drawn.shades[link.shade].band.name);
        }
        QString note = parts.join(QStringLiteral(", "));
        const std::int64_t missing = want.count - want.made;
        if (missing > 0)
            note += (note.isEmpty() ? QString() : QStringLiteral("; ")) +
                    tr("%1 short").arg(static_cast<qlonglong>(missing));
        else
            note += tr(", %1").arg(finelyText(want.blockG));
        WaxWantView view;
        view.band = {tr("%1 %2")
                         .arg(static_cast<qlonglong>(want.count))
                         .arg(candlesText(want.name, want.count)),
                     want.blockG, finely(want.blockG, How::Assumed), BandFill::WaxLight, note};
        view.shortGrams = want.shortG;
        view.shortWord = tr("short");
        WaxRecordsOf of;
        for (const CandlesWantedShown& kind : plan.kinds)
            if (kind.kind.name.text() == want.name) of.kind = kind.kind.id;
        m_bands.push_back({tr("wanted"), view.band.name, view.band.figure, note, of});
        m_drawn.wants.push_back(view);
    }
}

void FlowBoard::addHeads(const WaxFlow& flow) {
    m_drawn.rawHead = {
        flow.rawNotWeighed > 0 ? tr("raw, %1 not weighed").arg(flow.rawNotWeighed) : tr("raw"),
        roughly(flow.rawG, How::Weighed),
        {},
        {}};
    m_drawn.washedHead = {
        flow.washedWeighed ? tr("washed") : tr("went on"),
        roughly(flow.washedG, flow.washedWeighed ? How::Weighed : How::ByDifference),
        {},
        {}};
    How how = How::Weighed;
    for (const WaxFlowShade& shade : flow.shades) how = weaker(how, shade.how);
    m_drawn.blocksHead = {tr("blocks"), finely(flow.haveG, how), {}, {}};
    m_drawn.wantedHead = {
        tr("wanted, %1 % lost").arg(static_cast<int>(std::lround(flow.lossShare * 100))),
        finely(flow.neededG, How::Assumed),
        {},
        {}};
    if (flow.shortG > 0) {
        m_drawn.wantedHead.shortWord = tr("short");
        m_drawn.wantedHead.shortFigure = finely(flow.shortG, How::Assumed);
    }
}

bool FlowBoard::asLine() const {
    return m_low || m_bands.empty() || width() < waxFlowLeastWidth(m_drawn, m_session.look());
}

void FlowBoard::setLow(bool low) {
    if (m_low == low) return;
    m_low = low;
    updateGeometry();
    update();
}

QSize FlowBoard::sizeHint() const {
    const Look& look = m_session.look();
    if (asLine()) {
        const QFontMetricsF font(look.font(TextSize::Body, true));
        const QRectF wide(0, 0, std::max(width() - 8, 80), 1e6);
        const double high = font.boundingRect(wide, Qt::TextWordWrap, m_line).height();
        return {width(), static_cast<int>(std::ceil(high + look.px(10.0)))};
    }
    return {width(),
            static_cast<int>(std::max(look.px(flowHigh), waxFlowLeastHeight(m_drawn, look)))};
}

QRectF FlowBoard::room() const { return QRectF(rect()).adjusted(2, 2, -2, -2); }

int FlowBoard::choose(const WaxRecordsOf& of) {
    for (std::size_t i = 0; i < m_bands.size(); ++i) {
        if (m_bands[i].records != of) continue;
        choose(static_cast<int>(i));
        return static_cast<int>(i);
    }
    return -1;
}

void FlowBoard::choose(int index) {
    m_current = std::clamp(index, 0, std::max(static_cast<int>(m_bands.size()) - 1, 0));
    speak();
    update();
}

void FlowBoard::speak() {
    QString said = m_line;
    if (m_current < static_cast<int>(m_bands.size())) {
        const Band& band = m_bands[static_cast<std::size_t>(m_current)];
        said = tr("%1: %2 %3. %4").arg(band.part, band.name, spoken(band.figure), band.note);
    }
    setAccessibleDescription(said + QLatin1Char(' ') + spoken(m_drawn));
}

void FlowBoard::paintEvent(QPaintEvent*) {
    const Look& look = m_session.look();
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    if (asLine()) {
        painter.setFont(look.font(TextSize::Body, true));
        painter.setPen(look.tone(Tone::Ink));
        painter.drawText(room().adjusted(2, 0, -2, 0), Qt::TextWordWrap | Qt::AlignVCenter, m_line);
    } else {
        paintWaxFlow(painter, room(), m_drawn, look);
    }
    if (!hasFocus() || m_bands.empty()) return;
    painter.setPen(QPen(look.tone(Tone::Accent), look.px(2.0)));
    painter.setBrush(Qt::NoBrush);
    if (asLine()) {
        painter.drawRoundedRect(room(), look.corner(), look.corner());
        return;
    }
    const auto places = waxFlowPlaces(room(), m_drawn, look);
    if (m_current < static_cast<int>(places.size()))
        painter.drawRoundedRect(places[static_cast<std::size_t>(m_current)].adjusted(-2, -2, 2, 2),
                                look.corner(), look.corner());
}

void FlowBoard::keyPressEvent(QKeyEvent* event) {
    switch (event->key()) {
        case Qt::Key_Down:
            return choose(m_current + 1);
        case Qt::Key_Up:
            return choose(m_current - 1);
        case Qt::Key_Right:
        case Qt::Key_Left: {
            // To the first band of the next part, or the one before.
            if (m_bands.empty()) return;
            const int way = event->key() == Qt::Key_Right ? 1 : -1;
            const QString part = m_bands[static_cast<std::size_t>(m_current)].part;
            int at = m_current;
            while (at + way >= 0 && at + way < static_cast<int>(m_bands.size())) {
                at += way;
                if (m_bands[static_cast<std::size_t>(at)].part != part) break;
            }
            return choose(at);
        }
        case Qt::Key_Home:
            return choose(0);
        case Qt::Key_End:
            return choose(static_cast<int>(m_bands.size()) - 1);
        case Qt::Key_Return:
        case Qt::Key_Enter:
            if (m_current < static_cast<int>(m_bands.size()))
                Q_EMIT opened(m_bands[static_cast<std::size_t>(m_current)].records);
            return;
        default:
            QWidget::keyPressEvent(event);
    }
}

void FlowBoard::mousePressEvent(QMouseEvent* event) {
    setFocus(Qt::MouseFocusReason);
    if (asLine()) return;
    const auto places = waxFlowPlaces(room(), m_drawn, m_session.look());
    for (std::size_t n = 0; n < places.size(); ++n)
        if (places[n].contains(event->position())) return choose(static_cast<int>(n));
}

void FlowBoard::mouseDoubleClickEvent(QMouseEvent*) {
    if (m_current < static_cast<int>(m_bands.size()))
        Q_EMIT opened(m_bands[static_cast<std::size_t>(m_current)].records);
}

}  // namespace combwright
