#include "ui/drawing/wax_flow.h"

#include <QCoreApplication>
#include <QFontMetricsF>
#include <QStringList>
#include <algorithm>
#include <cmath>

#include "ui/drawing/lettering.h"
#include "ui/drawing/strokes.h"

namespace combwright {
namespace {

QString flowWord(const char* text) { return QCoreApplication::translate("wax_flow", text); }

constexpr double flowGap = 8.0;
constexpr double flowThin = 2.0;
constexpr double unknownBand = 9.0;
constexpr double shadeBox = 42.0;

/// Where everything lies, px.
struct FlowPlan {
    QRectF body;
    double rawLeft = 0, wallOne = 0, outRight = 0, throughRight = 0, wallTwo = 0, shadeLeft = 0,
           shadeRight = 0, wall = 0, wantLeft = 0, lostRight = 0, lostFrom = 0;
    double in = 0, on = 0;  ///< px a gram before and after the change of scale
    std::vector<BandSpan> raw, rawWall, out, outWall, lost, lostWall, shades, shadeIn, wants;
    BandSpan through, throughEnd, wallOneAll, wallTwoAll;
    bool hasRaw = false;
};

double flowThick(double grams, double scale, const Look& look) {
    return std::max(grams * scale, look.px(flowThin));
}

TextLine rawLabel(const BandView& band) {
    FigureStyle style;
    style.bold = true;
    return joined({{band.name, false, Tone::Ink}, {QStringLiteral("  ")}},
                  figureRuns(band.figure, style));
}

double rawLabelsWidth(const FlowOfWax& flow, const Look& look) {
    double widest = 0;
    for (const BandView& band : flow.raw)
        widest = std::max(widest, lineWidth(rawLabel(band), TextSize::Note, look));
    return widest;
}

double wantLabelsWidth(const FlowOfWax& flow, const Look& look) {
    double widest = 0;
    for (const WaxWantView& want : flow.wants) {
        widest = std::max(widest, textWidth(want.band.name, look.font(TextSize::Body, true)));
        widest = std::max(widest, textWidth(want.band.note, look.font(TextSize::Note)));
    }
    return widest;
}

double flowHeadHeight(const Look& look) {
    return lineStep(look.font(TextSize::Note)) + lineStep(look.font(TextSize::Head, true));
}

double flowSum(const std::vector<BandView>& bands) {
    double sum = 0;
    for (const BandView& band : bands) sum += band.grams;
    return sum;
}

double shadeMass(const WaxShadeView& shade) { return std::max(shade.band.grams, shade.castGrams); }

/// Spans below each other with gaps, in the middle of the body.
void stackSpans(std::vector<BandSpan>& spans, const QRectF& body, double gap) {
    double height = 0;
    for (const BandSpan& each : spans) height += each.height;
    if (spans.size() > 1) height += gap * static_cast<double>(spans.size() - 1);
    double y = body.top() + std::max((body.height() - height) / 2.0, 0.0);
    for (BandSpan& each : spans) {
        each.top = y;
        y += each.height + gap;
    }
}

double flowRows(std::size_t rows, double each) { return static_cast<double>(rows) * each; }

FlowPlan planFlow(const QRectF& box, const FlowOfWax& flow, const Look& look) {
    FlowPlan plan;
    plan.body = box.adjusted(0, flowHeadHeight(look) + look.px(4.0), 0, -look.px(4.0));
    plan.hasRaw = !flow.raw.empty();
    const double label = lineStep(look.font(TextSize::Note));
    const double wantLabel = lineStep(look.font(TextSize::Body)) + label;
    // Across.
    const double words = wantLabelsWidth(flow, look) + look.px(12.0);
    plan.wall = box.right() - (flow.wants.empty() ? look.px(16.0) : words);
    plan.wantLeft = plan.wall + look.px(8.0);
    if (plan.hasRaw) {
        plan.rawLeft = box.left() + rawLabelsWidth(flow, look) + look.px(8.0);
        const double room = plan.wall - plan.rawLeft;
        plan.wallOne = plan.rawLeft + room * 0.15;
        plan.outRight = plan.wallOne + room * 0.16;
        plan.throughRight = plan.wallOne + room * 0.21;
        plan.wallTwo = plan.throughRight + room * 0.08;
        plan.shadeLeft = plan.wallTwo + room * 0.20;
    } else {
        plan.wallTwo = box.left();
        plan.shadeLeft = box.left() + look.px(64.0);
    }
    plan.shadeRight = plan.shadeLeft + look.px(shadeBox);
    plan.lostFrom = plan.wallTwo + look.px(6.0);
    plan.lostRight = plan.shadeLeft - (plan.shadeLeft - plan.wallTwo) * 0.35;
    // Down: how many pixels a gram may have.
    const double height = plan.body.height();
    const auto gaps = [&](std::size_t n) {
        return n > 1 ? look.px(flowGap) * static_cast<double>(n - 1) : 0.0;
    };
    double unknown = 0;
    for (const BandView& band : flow.raw)
        if (band.grams <= 0) unknown += look.px(unknownBand);
    double rawSlack = gaps(flow.raw.size()) + unknown;
    // Thin bands still have a line of words each.
    rawSlack += flowRows(flow.raw.size(), look.px(3.0));
    const double rawMass = std::max(flowSum(flow.raw), flowSum(flow.out) + flow.throughGrams);
    double shadeAll = 0;
    for (const WaxShadeView& shade : flow.shades) shadeAll += shadeMass(shade);
    double wantAll = 0;
    for (const WaxWantView& want : flow.wants) wantAll += want.band.grams;
    const double on = std::max({shadeAll + flowSum(flow.lost), wantAll, flow.throughGrams});
    const double onSlack =
        gaps(std::max(flow.shades.size() + flow.lost.size(), flow.wants.size())) + look.px(12.0);
    const double inScale = rawMass > 0 ? std::max(height - rawSlack, 1.0) / rawMass : 1e9;
    const double onScale = on > 0 ? std::max(height - onSlack, 1.0) / on : 1e9;
    plan.in = std::min(inScale, onScale / flow.times);
    if (!plan.hasRaw || rawMass <= 0) plan.in = onScale / flow.times;
    plan.on = plan.in * flow.times;
    if (rawMass <= 0 && on <= 0) plan.in = plan.on = 0;
    // The left half.
    for (const BandView& band : flow.raw)
        plan.raw.push_back(
            {0, band.grams > 0 ? flowThick(band.grams, plan.in, look) : look.px(unknownBand)});
    for (BandSpan& each : plan.raw) each.height = std::max(each.height, look.px(flowThin));
    stackSpans(plan.raw, plan.body, std::max(look.px(flowGap), 0.0));
    double wallHeight = 0;
    for (const BandSpan& each : plan.raw) wallHeight += each.height;
    double y = plan.body.center().y() - wallHeight / 2.0;
    plan.wallOneAll = {y, wallHeight};
    for (const BandSpan& each : plan.raw) {
        plan.rawWall.push_back({y, each.height});
        y += each.height;
    }
    // What drained goes on top, then what goes on, then what was washed away or waits.
    y = plan.wallOneAll.top;
    const double throughHeight =
        flow.throughGrams > 0 ? flowThick(flow.throughGrams, plan.in, look) : 0.0;
    for (std::size_t n = 0; n < flow.out.size(); ++n) {
        const double thick = flowThick(flow.out[n].grams, plan.in, look);
        plan.outWall.push_back({y, thick});
        plan.out.push_back({y + (n == 0 ? -look.px(4.0) : look.px(10.0)), thick});
        y += thick;
        if (n == 0) {
            plan.through = {y, throughHeight};
            y += throughHeight;
        }
    }
    if (flow.out.empty()) plan.through = {y, throughHeight};
    // The end of what goes on lies in the middle between the bands that leave.
    plan.throughEnd = {plan.through.top - look.px(6.0), throughHeight};
    // The right half.
    for (const WaxShadeView& shade : flow.shades)
        plan.shades.push_back({0, flowThick(shadeMass(shade), plan.on, look)});
    stackSpans(plan.shades, plan.body, look.px(flowGap));
    if (!flow.lost.empty() && !plan.shades.empty()) {
        // Room below for what is lost.
        const double up = std::min(plan.shades.front().top - plan.body.top(), look.px(40.0));
        for (BandSpan& each : plan.shades) each.top -= up;
    }
    double castAll = 0;
    for (const WaxShadeView& shade : flow.shades) castAll += shade.castGrams;
    const double secondHeight = (castAll + flowSum(flow.lost)) * plan.on;
    y = plan.shades.empty() ? plan.body.center().y() - secondHeight / 2.0 : plan.shades.front().top;
    y = std::max(std::min(y, plan.body.bottom() - secondHeight), plan.body.top());
    plan.wallTwoAll = {y, secondHeight};
    for (const WaxShadeView& shade : flow.shades) {
        const double thick = shade.castGrams * plan.on;
        plan.shadeIn.push_back({y, thick});
        y += thick;
    }
    double lostEnd = plan.shades.empty() ? y : std::max(plan.shades.back().bottom(), y);
    for (const BandView& band : flow.lost) {
        const double thick = flowThick(band.grams, plan.on, look);
        plan.lostWall.push_back({y, thick});
        lostEnd += look.px(6.0);
        plan.lost.push_back({std::min(lostEnd, plan.body.bottom() - thick), thick});
        lostEnd += std::max(thick, label);
        y += thick;
    }
    for (const WaxWantView& want : flow.wants)
        plan.wants.push_back({0, std::max(flowThick(want.band.grams, plan.on, look), 0.0)});
    double gap = look.px(flowGap);
    double least = 0;
    for (const BandSpan& each : plan.wants) least += std::max(each.height, wantLabel) - each.height;
    // Words of two lines beside a thin band need room of their own.
    if (!plan.wants.empty()) gap += least / static_cast<double>(plan.wants.size());
    stackSpans(plan.wants, plan.body, gap);
    return plan;
}

void paintFlowHead(QPainter& painter, double x, double top, const WaxHeadView& head,
                   const Look& look) {
    const double small = lineStep(look.font(TextSize::Note));
    paintText(painter, {x, top + small * 0.8}, head.what, look.font(TextSize::Note),
              look.tone(Tone::Muted));
    FigureStyle style;
    style.size = TextSize::Head;
    style.bold = true;
    paintLine(painter, {x, top + small * 0.8 + lineStep(look.font(TextSize::Head, true))},
              figureRuns(head.figure, style), TextSize::Head, look);
}

void paintHeads(QPainter& painter, const QRectF& box, const FlowOfWax& flow, const FlowPlan& plan,
                const Look& look) {
    if (plan.hasRaw) {
        paintFlowHead(painter, box.left(), box.top(), flow.rawHead, look);
        if (flow.throughGrams > 0)
            paintFlowHead(painter, plan.wallTwo - look.px(4.0), box.top(), flow.washedHead, look);
    }
    paintFlowHead(painter, plan.shadeLeft, box.top(), flow.blocksHead, look);
    if (flow.wants.empty()) return;
    const WaxHeadView& wanted = flow.wantedHead;
    FigureStyle style;
    style.size = TextSize::Head;
    style.bold = true;
    style.tone = style.unitTone = Tone::Warn;
    const TextLine shortLine = joined({{wanted.shortWord + QLatin1Char(' '), false, Tone::Warn}},
                                      figureRuns(wanted.shortFigure, style));
    FigureStyle ink;
    ink.size = TextSize::Head;
    ink.bold = true;
    const double wide = lineWidth(figureRuns(wanted.figure, ink), TextSize::Head, look);
    const double base = box.top() + lineStep(look.font(TextSize::Note)) * 0.8 +
                        lineStep(look.font(TextSize::Head, true));
    double x = plan.wall - look.px(8.0);
    double room = box.right() - x;
    if (!wanted.shortWord.isEmpty()) {
        const double behind = lineWidth(shortLine, TextSize::Head, look);
        x -= std::max(wide + behind + look.px(18.0) - room, 0.0);
        paintLine(painter, {box.right(), base}, shortLine, TextSize::Head, look, Qt::AlignRight);
    } else {
        x -=
            std::max(std::max(wide, textWidth(wanted.what, look.font(TextSize::Note))) - room, 0.0);
    }
    paintFlowHead(painter, x, box.top(), wanted, look);
}

void paintFlowScale(QPainter& painter, QPointF foot, double length, const QString& words,
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

void paintRaw(QPainter& painter, const QRectF& box, const FlowOfWax& flow, const FlowPlan& plan,
              const Look& look) {
    const double cap = capHeight(look.font(TextSize::Note));
    const double step = lineStep(look.font(TextSize::Note));
    double free = plan.body.top();
    for (std::size_t n = 0; n < flow.raw.size(); ++n) {
        const BandView& band = flow.raw[n];
        paintFlowingBand(painter, band.fill, plan.rawLeft, plan.raw[n], plan.wallOne,
                         plan.rawWall[n], look);
        const double middle = std::max(plan.raw[n].middle(), free + step / 2.0);
        free = middle + step / 2.0;
        FigureStyle style;
        style.bold = true;
        const double y = middle + cap / 2.0;
        paintText(painter, {box.left(), y}, band.name, look.font(TextSize::Note),
                  look.tone(Tone::Ink));
        paintLine(painter, {plan.rawLeft - look.px(8.0), y}, figureRuns(band.figure, style),
                  TextSize::Note, look, Qt::AlignRight);
    }
    painter.fillRect(
        QRectF(plan.wallOne, plan.wallOneAll.top, look.px(6.0), plan.wallOneAll.height),
        look.tone(Tone::Ink));
}

void paintTwoLines(QPainter& painter, QPointF at, const BandView& band, const QColor& over,
                   const Look& look) {
    FigureStyle style;
    style.size = TextSize::Note;
    Tone tone = Tone::Ink;
    if (band.fill == BandFill::Missing) tone = style.tone = style.unitTone = Tone::Warn;
    style.over = over;
    paintLine(painter, at, {{band.name, true, tone, false, false, over}}, TextSize::Note, look);
    paintLine(painter, at + QPointF(0, lineStep(look.font(TextSize::Note))),
              figureRuns(band.figure, style), TextSize::Note, look);
}

void paintOuts(QPainter& painter, const FlowOfWax& flow, const FlowPlan& plan, const Look& look) {
    const double from = plan.wallOne + look.px(6.0);
    const double step = lineStep(look.font(TextSize::Note));
    for (std::size_t n = 0; n < flow.out.size(); ++n) {
        paintFlowingBand(painter, flow.out[n].fill, from, plan.outWall[n], plan.outRight,
                         plan.out[n], look);
        const bool filled =
            flow.out[n].fill != BandFill::Unknown && flow.out[n].fill != BandFill::Missing;
        const bool inside = filled && plan.out[n].height > 2.2 * step;
        const double x = inside ? from + look.px(10.0) : plan.outRight + look.px(4.0);
        double y = plan.out[n].middle() - step * 0.1;
        y = std::min(y, plan.body.bottom() - step);
        paintTwoLines(painter, {x, y}, flow.out[n],
                      inside ? look.paint(Paint::Lettering) : QColor(), look);
    }
    if (flow.throughGrams <= 0) return;
    paintFlowingBand(painter, BandFill::WaxMid, from, plan.through, plan.throughRight,
                     plan.throughEnd, look);
    painter.fillRect(
        QRectF(plan.throughRight, plan.throughEnd.top, look.px(3.0), plan.throughEnd.height),
        look.tone(Tone::Ink));
    painter.setPen(dashedPen(look.tone(Tone::Line), look.px(1.0)));
    const double right = plan.wallTwo;
    painter.drawLine(QPointF(plan.throughRight + look.px(3.0), plan.throughEnd.top),
                     QPointF(right, plan.wallTwoAll.top));
    painter.drawLine(QPointF(plan.throughRight + look.px(3.0), plan.throughEnd.bottom()),
                     QPointF(right, plan.wallTwoAll.bottom()));
    if (flow.times > 1.0)
        paintText(painter,
                  {(plan.throughRight + right) / 2.0 + look.px(2.0), plan.throughEnd.middle()},
                  QStringLiteral("× %1").arg(flow.times), look.font(TextSize::Note, true),
                  look.tone(Tone::Muted), Qt::AlignHCenter);
    painter.fillRect(QRectF(right, plan.wallTwoAll.top, look.px(6.0), plan.wallTwoAll.height),
                     look.tone(Tone::Ink));
}

void paintShades(QPainter& painter, const FlowOfWax& flow, const FlowPlan& plan, const Look& look) {
    const double cap = capHeight(look.font(TextSize::Note));
    for (std::size_t n = 0; n < flow.lost.size(); ++n) {
        paintFlowingBand(painter, flow.lost[n].fill, plan.lostFrom, plan.lostWall[n],
                         plan.lostRight, plan.lost[n], look);
        FigureStyle style;
        style.size = TextSize::Note;
        const bool missing = flow.lost[n].fill == BandFill::Missing;
        if (missing) style.tone = style.unitTone = Tone::Warn;
        const TextLine line = joined(
            {{flow.lost[n].name + QLatin1Char(' '), missing, missing ? Tone::Warn : Tone::Ink}},
            figureRuns(flow.lost[n].figure, style));
        paintLine(painter, {plan.lostRight + look.px(6.0), plan.lost[n].middle() + cap / 2.0}, line,
                  TextSize::Note, look);
    }
    for (std::size_t n = 0; n < flow.shades.size(); ++n) {
        const WaxShadeView& shade = flow.shades[n];
        const BandSpan span = plan.shades[n];
        if (plan.hasRaw && plan.shadeIn[n].height > 0)
            paintFlowingBand(painter, shade.band.fill, plan.lostFrom, plan.shadeIn[n],
                             plan.shadeLeft, {span.top, plan.shadeIn[n].height}, look);
        const QRectF blocks(plan.shadeLeft, span.top, plan.shadeRight - plan.shadeLeft,
                            span.height);
        painter.fillRect(blocks, look.paint(bandPaint(shade.band.fill)));
        painter.setPen(plainPen(look.paint(Paint::Edge), look.px(1.0)));
        painter.drawRect(blocks);
        const bool inside = span.height > cap + look.px(3.0);
        const double y = span.middle() + cap / 2.0;
        const bool bandBehind = plan.hasRaw && plan.shadeIn[n].height > cap + look.px(3.0);
        paintText(painter, {plan.shadeLeft - look.px(8.0), y}, shade.band.name,
                  look.font(TextSize::Note, true),
                  bandBehind ? look.paint(Paint::Lettering) : look.tone(Tone::Ink), Qt::AlignRight);
        if (inside)
            paintText(painter, {blocks.center().x(), y}, shade.band.figure.figure,
                      look.font(TextSize::Note, true), look.paint(Paint::Lettering),
                      Qt::AlignHCenter);
    }
}

void paintWants(QPainter& painter, const QRectF& box, const FlowOfWax& flow, const FlowPlan& plan,
                const Look& look) {
    std::vector<double> out, in;
    for (const BandSpan& each : plan.shades) out.push_back(each.top);
    for (const BandSpan& each : plan.wants) in.push_back(each.top);
    for (const WaxLinkView& link : flow.links) {
        const double thick = link.grams * plan.on;
        paintFlowingBand(painter, flow.shades[link.shade].band.fill, plan.shadeRight,
                         {out[link.shade], thick}, plan.wall, {in[link.want], thick}, look);
        out[link.shade] += thick;
        in[link.want] += thick;
    }
    const double cap = capHeight(look.font(TextSize::Note));
    for (std::size_t n = 0; n < flow.shades.size(); ++n) {
        if (flow.shades[n].rest.isEmpty()) continue;
        const double thick = flow.shades[n].restGrams * plan.on;
        const double x = plan.shadeRight + look.px(14.0);
        const QRectF stub(plan.shadeRight, out[n], look.px(14.0),
                          std::max(thick, look.px(flowThin)));
        painter.fillRect(stub, look.paint(bandPaint(flow.shades[n].band.fill)));
        painter.setPen(plainPen(look.paint(Paint::Edge), look.px(1.0)));
        painter.drawRect(stub);
        // Below a thin rest, but the tails of its letters still within the picture.
        const double y =
            std::min(out[n] + std::max(thick / 2.0 + cap / 2.0, cap + look.px(4.0)),
                     box.bottom() - QFontMetricsF(look.font(TextSize::Note)).descent());
        // Between two shades other bands run; the words would lie on them.
        if (n + 1 < flow.shades.size() && thick < cap + look.px(2.0)) continue;
        paintText(painter, {x + look.px(4.0), y}, flow.shades[n].rest, look.font(TextSize::Note),
                  look.tone(Tone::Muted));
    }
    for (std::size_t n = 0; n < flow.wants.size(); ++n) {
        const WaxWantView& want = flow.wants[n];
        const BandSpan span = plan.wants[n];
        painter.fillRect(QRectF(plan.wall, span.top, look.px(6.0), span.height),
                         look.tone(Tone::Ink));
        const double missing = want.shortGrams * plan.on;
        if (missing > 0) {
            const QRectF open(plan.wall - look.px(46.0), span.bottom() - missing, look.px(46.0),
                              missing);
            painter.fillRect(open, look.tone(Tone::Surface));
            painter.setPen(dashedPen(look.tone(Tone::Warn), look.px(1.2)));
            painter.drawRect(open);
            if (missing > cap + look.px(4.0))
                paintText(painter, {open.center().x(), open.center().y() + cap / 2.0},
                          want.shortWord, look.font(TextSize::Note, true), look.tone(Tone::Warn),
                          Qt::AlignHCenter);
        }
        const double step = lineStep(look.font(TextSize::Note));
        double y = span.middle() - step * 0.1;
        y = std::min(y, box.bottom() - step * 1.2);
        paintText(painter, {plan.wantLeft + look.px(2.0), y}, want.band.name,
                  look.font(TextSize::Body, true), look.tone(Tone::Ink));
        paintText(painter, {plan.wantLeft + look.px(2.0), y + step * 1.05}, want.band.note,
                  look.font(TextSize::Note), look.tone(Tone::Muted));
    }
}

QString flowBandsWords(const std::vector<BandView>& bands) {
    QStringList all;
    for (const BandView& band : bands)
        all << (band.name + QLatin1Char(' ') + spoken(band.figure)).simplified();
    return all.join(QStringLiteral("; "));
}

}  // namespace

std::vector<QRectF> waxFlowPlaces(const QRectF& box, const FlowOfWax& flow, const Look& look) {
    const FlowPlan plan = planFlow(box, flow, look);
    std::vector<QRectF> all;
    const double least = look.px(10.0);
    const auto add = [&](double left, double right, BandSpan span) {
        const double more = std::max(least - span.height, 0.0) / 2.0;
        all.emplace_back(left, span.top - more, right - left, span.height + 2.0 * more);
    };
    for (const BandSpan& each : plan.raw) add(plan.rawLeft, plan.wallOne, each);
    for (const BandSpan& each : plan.out) add(plan.wallOne + look.px(6.0), plan.outRight, each);
    for (const BandSpan& each : plan.lost) add(plan.lostFrom, plan.lostRight, each);
    for (const BandSpan& each : plan.shades) add(plan.shadeLeft, plan.shadeRight, each);
    for (const BandSpan& each : plan.wants)
        add(plan.wall - look.px(46.0), plan.wall + look.px(6.0), each);
    return all;
}

double waxFlowLeastWidth(const FlowOfWax& flow, const Look& look) {
    const double raw =
        flow.raw.empty() ? look.px(64.0) : rawLabelsWidth(flow, look) + look.px(430.0);
    return raw + look.px(shadeBox + 120.0) + wantLabelsWidth(flow, look);
}

double waxFlowLeastHeight(const FlowOfWax& flow, const Look& look) {
    const double line = lineStep(look.font(TextSize::Note)) + look.px(2.0);
    const double raw = flowRows(flow.raw.size(), line);
    const double wants =
        flowRows(flow.wants.size(), line + lineStep(look.font(TextSize::Body)) + look.px(4.0));
    const double shades = flowRows(flow.shades.size() + flow.lost.size(), line + look.px(6.0));
    return flowHeadHeight(look) + look.px(16.0) + std::max({raw, wants, shades, look.px(60.0)});
}

void paintWaxFlow(QPainter& painter, const QRectF& box, const FlowOfWax& flow, const Look& look) {
    const FlowPlan plan = planFlow(box, flow, look);
    const PainterState state(painter);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setBrush(Qt::NoBrush);
    paintHeads(painter, box, flow, plan, look);
    if (plan.on <= 0 && flow.raw.empty()) return;
    if (plan.hasRaw) {
        paintRaw(painter, box, flow, plan, look);
        paintOuts(painter, flow, plan, look);
    }
    paintShades(painter, flow, plan, look);
    paintWants(painter, box, flow, plan, look);
    if (flow.times <= 1.0 || !plan.hasRaw) return;
    const double foot = box.bottom() - look.px(2.0);
    if (!flow.barIn.isEmpty() && !flow.out.empty())
        paintFlowScale(painter, {plan.outRight + (plan.wallTwo - plan.outRight) * 0.62, foot},
                       flow.barInGrams * plan.in, flow.barIn, look);
    if (!flow.barOut.isEmpty())
        paintFlowScale(painter, {plan.shadeRight + (plan.wall - plan.shadeRight) * 0.35, foot},
                       flow.barOutGrams * plan.on, flow.barOut, look);
}

QString spoken(const FlowOfWax& flow) {
    QStringList said;
    if (!flow.raw.empty()) said << flowWord("Raw: %1.").arg(flowBandsWords(flow.raw));
    if (!flow.out.empty()) said << flowWord("Of that: %1.").arg(flowBandsWords(flow.out));
    if (!flow.lost.empty()) said << flowWord("Of the washed: %1.").arg(flowBandsWords(flow.lost));
    std::vector<BandView> blocks, wants;
    for (const WaxShadeView& shade : flow.shades) blocks.push_back(shade.band);
    if (!blocks.empty()) said << flowWord("Blocks: %1.").arg(flowBandsWords(blocks));
    QStringList wanted;
    for (const WaxWantView& want : flow.wants)
        wanted << want.band.name + QStringLiteral(" (") + want.band.note + QLatin1Char(')');
    if (!wanted.isEmpty()) said << flowWord("Wanted: %1.").arg(wanted.join(QStringLiteral("; ")));
    if (!flow.wantedHead.shortWord.isEmpty())
        said << flow.wantedHead.shortWord + QLatin1Char(' ') + spoken(flow.wantedHead.shortFigure) +
                    QLatin1Char('.');
    return said.join(QLatin1Char(' '));
}

double waxFlowTimes(double inGrams, double outGrams) {
    if (inGrams <= 0 || outGrams <= 0 || inGrams <= outGrams * 1.5) return 1.0;
    double best = 1.0;
    for (const double times : {2.0, 5.0, 10.0, 20.0, 50.0, 100.0})
        if (times <= inGrams / outGrams * 1.15) best = times;
    return best;
}

}  // namespace combwright
