#include "ui/drawing/balance.h"

#include <QCoreApplication>
#include <QStringList>
#include <algorithm>
#include <numeric>

#include "ui/drawing/lettering.h"
#include "ui/drawing/strokes.h"

namespace combwright {

namespace {

constexpr double thinnestBand = 2.0;   // px, so that a gram is still seen
constexpr double bandGap = 7.0;        // px between bands at their outer ends
constexpr double barClearance = 14.0;  // px between the bands and the bars of a change of scale

/// One band: at its outer end and at the wall, both from above, px.
struct BandPlace {
    double outerTop = 0.0, wallTop = 0.0, width = 0.0;
    double labelMiddle = 0.0;
};

struct BalancePlan {
    double left = 0.0, wallLeft = 0.0, wallRight = 0.0, right = 0.0;
    double pxPerGram = 0.0;
    double wallWidth = 0.0;
    std::vector<BandPlace> in, out;
};

double bandsTotal(const std::vector<BandView>& bands) {
    return std::accumulate(bands.begin(), bands.end(), 0.0,
                           [](double sum, const BandView& band) { return sum + band.grams; });
}

double gapsOf(const std::vector<BandView>& bands, const Look& look) {
    return bands.empty() ? 0.0 : static_cast<double>(bands.size() - 1) * look.px(bandGap);
}

bool isOpenEnd(const BandView& band) { return band.fill == BandFill::Missing; }

bool figureFits(double width, TextSize size, const Look& look) {
    return width >= capHeight(look.font(size)) + look.px(4.0);
}

TextLine bandLabel(const BandView& band, bool withFigure) {
    const Tone tone = isOpenEnd(band) ? Tone::Warn : Tone::Ink;
    TextLine line = {{band.name, !withFigure, tone}};
    if (!withFigure) {
        if (!band.note.isEmpty())
            line.push_back({QStringLiteral("  ") + band.note, false, Tone::Muted});
        return line;
    }
    FigureStyle style;
    style.bold = true;
    style.tone = tone;
    if (isOpenEnd(band)) style.unitTone = tone;
    line.push_back({QStringLiteral(" ")});
    line = joined(line, figureRuns(band.figure, style));
    if (!band.note.isEmpty())
        line.push_back({QStringLiteral("  ") + band.note, false, Tone::Muted});
    return line;
}

double labelsWidth(const std::vector<BandView>& bands, bool withFigure, TextSize size,
                   const Look& look) {
    double widest = 0.0;
    for (const auto& band : bands) {
        widest = std::max(widest, lineWidth(bandLabel(band, withFigure), size, look));
    }
    return widest;
}

std::vector<BandPlace> placeBands(const std::vector<BandView>& bands, double pxPerGram,
                                  const QRectF& box, double wallTop, const Look& look) {
    std::vector<BandPlace> places;
    double outer = 0.0;
    for (const auto& band : bands) {
        BandPlace place;
        place.width = std::max(look.px(thinnestBand), band.grams * pxPerGram);
        place.outerTop = outer;
        place.wallTop = wallTop;
        outer += place.width + look.px(bandGap);
        wallTop += place.width;
        places.push_back(place);
    }
    const double height = outer - (bands.empty() ? 0.0 : look.px(bandGap));
    for (auto& place : places) place.outerTop += box.center().y() - height / 2.0;
    return places;
}

/// Labels stand at the middle of their band and give way downward, then as a block upward.
void placeLabels(std::vector<BandPlace>& places, const QRectF& box, double step) {
    double free = box.top();
    for (auto& place : places) {
        place.labelMiddle = std::max(place.outerTop + place.width / 2.0, free + step / 2.0);
        free = place.labelMiddle + step / 2.0;
    }
    double limit = box.bottom();
    for (auto place = places.rbegin(); place != places.rend(); ++place) {
        place->labelMiddle = std::min(place->labelMiddle, limit - step / 2.0);
        limit = place->labelMiddle - step / 2.0;
    }
}

/// Height at which the mass of one side, and the bar that explains its scale, can be drawn.
double balanceScale(const std::vector<BandView>& bands, double times, double barGrams,
                    double height, const Look& look) {
    const double mass = (bandsTotal(bands) + barGrams) * times;
    if (bandsTotal(bands) <= 0.0) return 1e9;  // no band, no limit from this side
    // Every thin band and every gap takes room that is not mass.
    const double other =
        gapsOf(bands, look) + static_cast<double>(bands.size()) * look.px(thinnestBand);
    return std::max(0.0, (height - other) / mass);
}

BalancePlan planBalance(const QRectF& whole, const BalanceView& balance, const Look& look) {
    BalancePlan plan;
    const double times = balance.change ? balance.change->times : 1.0;
    const double in = bandsTotal(balance.in), out = bandsTotal(balance.out) * times;
    const double barIn = balance.change ? balance.change->barInGrams : 0.0;
    const double barOut = balance.change ? balance.change->barOutGrams : 0.0;
    const double barRoom = balance.change ? look.px(barClearance) : 0.0;
    QRectF box = whole;
    if (!balance.total.figure.isEmpty()) {
        box.setTop(box.top() + lineStep(look.font(balance.size)) - look.px(2.0));
    }
    const double bar = std::max(barIn, barOut * times);
    plan.pxPerGram =
        std::min(balanceScale(balance.in, 1.0, bar, box.height() - barRoom, look),
                 balanceScale(balance.out, times, bar / times, box.height() - barRoom, look));
    if (in <= 0.0 && out <= 0.0) plan.pxPerGram = 0.0;
    box.setBottom(box.bottom() - bar * plan.pxPerGram - barRoom);
    plan.left = box.left() + labelsWidth(balance.in, true, balance.size, look) + look.px(10.0);
    plan.right = box.right() - labelsWidth(balance.out, true, balance.size, look) - look.px(10.0);
    plan.wallWidth = look.px(balance.change ? 6.0 : 8.0);
    const double middle = (plan.left + plan.right) / 2.0;
    const double apart = balance.change ? look.px(24.0) : 0.0;
    plan.wallLeft = middle - plan.wallWidth / 2.0 - apart;
    plan.wallRight = middle + plan.wallWidth / 2.0 + apart;
    const auto wallTop = [&](double grams) {
        return box.center().y() - grams * plan.pxPerGram / 2.0;
    };
    const double shared = std::max(in, out);
    plan.in =
        placeBands(balance.in, plan.pxPerGram, box, wallTop(balance.change ? in : shared), look);
    plan.out = placeBands(balance.out, plan.pxPerGram * times, box,
                          wallTop(balance.change ? out : shared), look);
    placeLabels(plan.in, box, lineStep(look.font(balance.size)));
    placeLabels(plan.out, box, lineStep(look.font(balance.size)));
    return plan;
}

void paintBand(QPainter& painter, const BandView& band, const BandPlace& place, double outer,
               double wall, const Look& look) {
    double x = outer;
    if (isOpenEnd(band)) x = wall + (outer - wall) * 0.75;
    paintFlowingBand(painter, band.fill, x, {place.outerTop, place.width}, wall,
                     {place.wallTop, place.width}, look);
}

void paintInLabel(QPainter& painter, const BandView& band, const BandPlace& place,
                  const BalancePlan& plan, TextSize size, const Look& look) {
    const double cap = capHeight(look.font(size));
    const bool inside = figureFits(place.width, size, look);
    const QPointF at(plan.left - look.px(8.0), place.labelMiddle + cap / 2.0);
    paintLine(painter, at, bandLabel(band, !inside), size, look, Qt::AlignRight);
    if (!inside) return;
    FigureStyle style;
    style.size = size;
    const bool pale = band.fill == BandFill::Refuse;
    if (band.fill != BandFill::Unknown) {
        style.over = look.paint(pale ? Paint::LetteringPale : Paint::Lettering);
    }
    const double base = place.outerTop + place.width / 2.0 + cap / 2.0;
    if (band.fill == BandFill::Cappings) {
        // Hatching is kept clear of the figure, or its lines run through the digits.
        const double width = lineWidth(figureRuns(band.figure, style), size, look);
        painter.fillRect(QRectF(plan.left + look.px(3.0), base - cap - look.px(3.0),
                                width + look.px(8.0), cap + look.px(6.0)),
                         look.paint(Paint::Capping));
    }
    paintLine(painter, {plan.left + look.px(7.0), base}, figureRuns(band.figure, style), size,
              look);
}

void paintOutLabel(QPainter& painter, const BandView& band, const BandPlace& place,
                   const BalancePlan& plan, TextSize size, const Look& look) {
    const double cap = capHeight(look.font(size));
    double x = plan.right;
    if (isOpenEnd(band)) {
        // At the open end, unless the label would come to lie on another band.
        const double half = lineStep(look.font(size)) / 2.0;
        const bool onBand =
            std::any_of(plan.out.begin(), plan.out.end(), [&](const BandPlace& other) {
                return &other != &place && other.outerTop < place.labelMiddle + half &&
                       other.outerTop + other.width +
                               (other.wallTop > other.outerTop
                                    ? (other.wallTop - other.outerTop) * 0.2
                                    : 0.0) >
                           place.labelMiddle - half;
            });
        if (!onBand) x = plan.wallRight + (plan.right - plan.wallRight) * 0.75;
    }
    paintLine(painter, {x + look.px(8.0), place.labelMiddle + cap / 2.0}, bandLabel(band, true),
              size, look);
}

QRectF balanceWall(const std::vector<BandPlace>& places, double x, double width) {
    if (places.empty()) return {};
    return {x, places.front().wallTop, width,
            places.back().wallTop + places.back().width - places.front().wallTop};
}

void paintScaleBar(QPainter& painter, QPointF foot, double length, const QString& words,
                   const Look& look) {
    const double half = look.px(3.0);
    painter.setPen(plainPen(look.tone(Tone::Ink), look.px(1.2)));
    const QPointF top = foot - QPointF(0.0, length);
    painter.drawLine(foot, top);
    painter.drawLine(foot - QPointF(half, 0.0), foot + QPointF(half, 0.0));
    painter.drawLine(top - QPointF(half, 0.0), top + QPointF(half, 0.0));
    const QFont font = look.font(TextSize::Note);
    paintText(painter, foot + QPointF(look.px(8.0), -(length - capHeight(font)) / 2.0), words, font,
              look.tone(Tone::Muted));
}

void paintScaleChange(QPainter& painter, const QRectF& box, const BalancePlan& plan,
                      const QRectF& left, const QRectF& right, const BalanceScale& change,
                      const Look& look) {
    painter.setPen(dashedPen(look.tone(Tone::Line), look.px(1.0)));
    painter.drawLine(left.topRight(), right.topLeft());
    painter.drawLine(left.bottomRight(), right.bottomLeft());
    const QFont font = look.font(TextSize::Note, true);
    paintText(painter, {(left.right() + right.left()) / 2.0, box.center().y()},
              QStringLiteral("× %1").arg(change.times), font, look.tone(Tone::Muted),
              Qt::AlignHCenter);
    const double foot = box.bottom() - look.px(4.0);
    paintScaleBar(painter, {plan.wallLeft - look.px(60.0), foot},
                  change.barInGrams * plan.pxPerGram, change.barIn, look);
    paintScaleBar(painter, {plan.wallRight + look.px(24.0), foot},
                  change.barOutGrams * plan.pxPerGram * change.times, change.barOut, look);
}

/// Words of this file, where the translators' tools find them.
struct BalanceTexts {
    Q_DECLARE_TR_FUNCTIONS(combwright::Balance)
};

QString bandWords(const std::vector<BandView>& bands) {
    QStringList parts;
    for (const auto& band : bands) {
        QString part = band.name + QLatin1Char(' ') + spoken(band.figure);
        if (!band.note.isEmpty()) part += QStringLiteral(", ") + band.note;
        parts << part;
    }
    return parts.join(QStringLiteral("; "));
}

}  // namespace

std::vector<QRectF> balanceBands(const QRectF& box, const BalanceView& balance, const Look& look) {
    const BalancePlan plan = planBalance(box, balance, look);
    std::vector<QRectF> bands;
    for (const auto& place : plan.in) {
        bands.emplace_back(plan.left, place.outerTop, plan.wallLeft - plan.left, place.width);
    }
    for (const auto& place : plan.out) {
        bands.emplace_back(plan.wallRight, place.outerTop, plan.right - plan.wallRight,
                           place.width);
    }
    return bands;
}

void paintBalance(QPainter& painter, const QRectF& box, const BalanceView& balance,
                  const Look& look) {
    const BalancePlan plan = planBalance(box, balance, look);
    if (plan.pxPerGram <= 0.0 || plan.right <= plan.left) return;
    const PainterState state(painter);
    painter.setRenderHint(QPainter::Antialiasing);
    for (std::size_t i = 0; i < plan.in.size(); ++i) {
        paintBand(painter, balance.in[i], plan.in[i], plan.left, plan.wallLeft, look);
    }
    for (std::size_t i = 0; i < plan.out.size(); ++i) {
        paintBand(painter, balance.out[i], plan.out[i], plan.right, plan.wallRight, look);
    }
    const double backOf = balance.change ? plan.wallRight - plan.wallWidth : plan.wallLeft;
    const QRectF left = balanceWall(plan.in, plan.wallLeft, plan.wallWidth);
    const QRectF right = balanceWall(plan.out, backOf, plan.wallWidth);
    for (const auto& wall : {left, right}) painter.fillRect(wall, look.tone(Tone::Ink));
    if (balance.change) paintScaleChange(painter, box, plan, left, right, *balance.change, look);
    for (std::size_t i = 0; i < plan.in.size(); ++i) {
        paintInLabel(painter, balance.in[i], plan.in[i], plan, balance.size, look);
    }
    for (std::size_t i = 0; i < plan.out.size(); ++i) {
        paintOutLabel(painter, balance.out[i], plan.out[i], plan, balance.size, look);
    }
    if (balance.total.figure.isEmpty()) return;
    FigureStyle style;
    style.size = balance.size;
    style.bold = true;
    paintLine(painter, {left.center().x(), left.top() - look.px(4.0)},
              figureRuns(balance.total, style), balance.size, look, Qt::AlignHCenter);
}

QString spoken(const BalanceView& balance) {
    QString words =
        BalanceTexts::tr("In: %1. Out: %2.").arg(bandWords(balance.in), bandWords(balance.out));
    if (!balance.total.figure.isEmpty()) {
        words += QLatin1Char(' ') + BalanceTexts::tr("Together %1.").arg(spoken(balance.total));
    }
    return words;
}

}  // namespace combwright
