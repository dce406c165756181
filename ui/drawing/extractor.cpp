#include "ui/drawing/extractor.h"

#include <QCoreApplication>
#include <QStringList>
#include <QTransform>
#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/words/figures.h"
#include "ui/drawing/lettering.h"
#include "ui/drawing/strokes.h"

namespace combwright {

namespace {

// Parts of the drum as shares of its radius. The bars start outside the ring, so that the two are
// never taken for one thing.
constexpr double ringRadius = 0.345;
constexpr double barStart = 0.44;
constexpr double barEnd = 0.92;
constexpr double barWidth = 0.12;
// An arrow shorter than this shows only its hub (look of the drawings), px.
constexpr double shortestArrow = 7.0;

double radians(double degrees) { return degrees * std::numbers::pi / 180.0; }

QPointF around(QPointF middle, double radius, double degrees) {
    return middle + QPointF(std::sin(radians(degrees)), -std::cos(radians(degrees))) * radius;
}

double slotDegrees(const ExtractorView& extractor, std::size_t i) {
    return 360.0 * static_cast<double>(i) / static_cast<double>(extractor.slotViews.size());
}

/// Pixels a gram for the arrows, discs and ring: one scale for all of them.
double arrowScale(const ExtractorView& extractor, double radius) {
    const double ring = extractor.ringGrams.value_or(0.0);
    double farthest = ring;
    for (const auto& offset : {extractor.start, extractor.end}) {
        if (offset) farthest = std::max(farthest, offset->grams + offset->doubt);
    }
    if (farthest <= 0.0) return 0.0;
    // A load far beyond the ring shrinks the ring rather than running over the bars.
    const double room = farthest > ring ? barStart - 0.03 : ringRadius;
    const double scale = radius * room / farthest;
    return ring > 0.0 ? std::min(scale, radius * ringRadius / ring) : scale;
}

/// The drum while it is drawn.
struct Drum {
    QPainter& painter;
    const ExtractorView& extractor;
    const Look& look;
    QPointF middle;
    double radius;

    void tub() const;
    void scaleRings() const;
    void frameBar(const SlotView& slot, double degrees, bool selected) const;
    void emptySlot(double width, double from, double to) const;
    void writingCircle(double from, double to) const;
    void slotLetter(const SlotView& slot, double degrees) const;
    void number(std::size_t i) const;
    void disc(const OffsetView& offset, double scale, bool atEnd) const;
    void arrow(const OffsetView& offset, double scale, bool atEnd) const;
    void balance() const;
    void marker() const;
};

void Drum::tub() const {
    painter.setPen(plainPen(look.tone(Tone::Ink), look.px(2.4)));
    painter.setBrush(look.tone(Tone::Surface));
    painter.drawEllipse(middle, radius, radius);
    painter.setPen(plainPen(look.tone(Tone::Hairline), look.px(1.0)));
    painter.setBrush(Qt::NoBrush);
    painter.drawEllipse(middle, radius * 0.965, radius * 0.965);
}

void Drum::scaleRings() const {
    painter.setPen(plainPen(look.tone(Tone::Hairline), look.px(1.0)));
    painter.setBrush(Qt::NoBrush);
    const double perGram = radius * (barEnd - barStart) / extractor.fullGrams;
    for (double grams = 1000.0; grams < extractor.fullGrams; grams += 1000.0) {
        const double ring = radius * barStart + grams * perGram;
        painter.drawEllipse(middle, ring, ring);
    }
}

void Drum::emptySlot(double width, double from, double to) const {
    painter.setBrush(look.tone(Tone::Ground));
    painter.setPen(dashedPen(look.tone(Tone::Line), look.px(1.0)));
    painter.drawRect(QRectF(-width / 2.0, -to, width, to - from));
}

/// As large as leaves its neighbours theirs.
void Drum::writingCircle(double from, double to) const {
    const double at = from + (to - from) * 0.62;
    const auto many = static_cast<double>(std::max<std::size_t>(extractor.slotViews.size(), 3));
    const double size = std::min((to - from) * 0.3, at * std::sin(radians(180.0 / many)) * 0.86);
    painter.setPen(plainPen(look.tone(Tone::Line), look.px(1.0)));
    painter.setBrush(look.tone(Tone::Surface));
    painter.drawEllipse(QPointF(0.0, -at), size, size);
}

void Drum::frameBar(const SlotView& slot, double degrees, bool selected) const {
    const PainterState state(painter);
    painter.translate(middle);
    painter.rotate(degrees);
    const double width = radius * barWidth;
    const double from = radius * barStart, to = radius * barEnd;
    if (slot.toWrite) {
        writingCircle(from, to);
    } else if (!slot.startGrams) {
        emptySlot(width, from, to);
    } else {
        painter.setPen(plainPen(look.tone(Tone::Hairline), look.px(1.0)));
        painter.setBrush(look.tone(slot.inUse ? Tone::Surface : Tone::Ground));
        painter.drawRect(QRectF(-width / 2.0, -to, width, to - from));
        const double perGram = (to - from) / extractor.fullGrams;
        const double full = std::clamp(*slot.startGrams, 0.0, extractor.fullGrams) * perGram;
        const double wood =
            std::clamp(slot.endGrams.value_or(0.0), 0.0, *slot.startGrams) * perGram;
        painter.setPen(plainPen(look.paint(Paint::Edge), look.px(1.0)));
        painter.setBrush(look.paint(Paint::Honey));
        painter.drawRect(QRectF(-width / 2.0, -from - full, width, full));
        if (wood > 0.0) {
            painter.setBrush(look.paint(Paint::Wood));
            painter.drawRect(QRectF(-width / 2.0, -from - wood, width, wood));
        }
    }
    const double margin = look.px(3.0);
    const QRectF ring(-width / 2.0 - margin, -to - margin, width + 2.0 * margin,
                      to - from + 2.0 * margin);
    painter.setBrush(Qt::NoBrush);
    if (slot.ringed) {
        painter.setPen(plainPen(look.tone(Tone::Accent), look.px(2.2)));
        painter.drawRoundedRect(ring, look.px(3.0), look.px(3.0));
    }
    if (selected) {
        painter.setPen(plainPen(look.tone(Tone::Ink), look.px(1.4)));
        const double out = look.px(2.5);
        painter.drawRoundedRect(ring.adjusted(-out, -out, out, out), look.px(4.0), look.px(4.0));
    }
}

void Drum::slotLetter(const SlotView& slot, double degrees) const {
    if (slot.letter.isEmpty() || !slot.startGrams) return;
    const double perGram = radius * (barEnd - barStart) / extractor.fullGrams;
    const double wood = slot.endGrams.value_or(0.0);
    const double at = radius * barStart + (wood + *slot.startGrams) / 2.0 * perGram;
    const bool roomy = radius * barWidth > look.px(16.0);
    const QFont font = look.font(roomy ? TextSize::Body : TextSize::Note, true);
    // Upright whatever the slot, so that twelve letters are read without turning one's head.
    const QPointF middleOf = around(middle, at, degrees);
    const double xHeight = capHeight(font) * 0.76;
    paintText(painter, middleOf + QPointF(0.0, xHeight / 2.0 + look.px(0.8)), slot.letter, font,
              look.paint(Paint::Lettering), Qt::AlignHCenter);
}

void Drum::number(std::size_t i) const {
    const SlotView& slot = extractor.slotViews[i];
    const double degrees = slotDegrees(extractor, i);
    const double across = std::sin(radians(degrees));
    const Tone tone = slot.ringed ? Tone::Accent : Tone::Ink;
    TextLine line = {{QString::number(i + 1), true, tone}};
    if (!slot.label.isEmpty()) {
        line.push_back(
            {QStringLiteral("  ") + slot.label, false, slot.ringed ? Tone::Accent : Tone::Muted});
    }
    Qt::Alignment align = Qt::AlignHCenter;
    if (across > 0.2) align = Qt::AlignLeft;
    if (across < -0.2) align = Qt::AlignRight;
    const double cap = capHeight(look.font(TextSize::Body));
    QPointF at = around(middle, radius + look.px(10.0), degrees);
    // Beside the drum the text is centred on the slot, above and below it keeps clear of the rim.
    at.ry() += cap / 2.0 - std::cos(radians(degrees)) * cap * 0.6;
    paintLine(painter, at, line, TextSize::Body, look, align);
}

void Drum::disc(const OffsetView& offset, double scale, bool atEnd) const {
    const double size = offset.doubt * scale;
    if (size < look.px(1.5)) return;
    QColor pale = look.tone(Tone::Muted);
    pale.setAlphaF(atEnd ? 0.22F : 0.16F);
    painter.setBrush(pale);
    painter.setPen(atEnd ? dashedPen(look.tone(Tone::Line), look.px(1.0))
                         : plainPen(look.tone(Tone::Line), look.px(1.0)));
    painter.drawEllipse(around(middle, offset.grams * scale, offset.angle), size, size);
}

void paintArrow(QPainter& painter, QPointF from, QPointF to, bool open, const Look& look) {
    const QPointF along = to - from;
    const double length = std::hypot(along.x(), along.y());
    if (length <= 0.0) return;
    const QPointF unit = along / length, side(-unit.y(), unit.x());
    const double head = std::min(look.px(11.0), length), half = look.px(4.2);
    const QPointF neck = to - unit * head;
    painter.setPen(plainPen(look.tone(Tone::Ink), look.px(1.7)));
    painter.drawLine(from, neck);
    painter.setPen(plainPen(look.tone(Tone::Ink), look.px(1.2)));
    painter.setBrush(look.tone(open ? Tone::Surface : Tone::Ink));
    painter.drawPolygon(QPolygonF({to, neck + side * half, neck - side * half}));
}

void Drum::arrow(const OffsetView& offset, double scale, bool atEnd) const {
    if (offset.grams * scale < look.px(shortestArrow)) return;
    paintArrow(painter, middle, around(middle, offset.grams * scale, offset.angle), atEnd, look);
}

void Drum::balance() const {
    const double scale = arrowScale(extractor, radius);
    if (extractor.start) disc(*extractor.start, scale, false);
    if (extractor.end) disc(*extractor.end, scale, true);
    if (extractor.ringGrams) {
        painter.setBrush(Qt::NoBrush);
        painter.setPen(dashedPen(look.tone(Tone::Good), look.px(1.8)));
        const double ring = *extractor.ringGrams * scale;
        painter.drawEllipse(middle, ring, ring);
    }
    if (extractor.end) arrow(*extractor.end, scale, true);
    if (extractor.start) arrow(*extractor.start, scale, false);
    painter.setPen(plainPen(look.tone(Tone::Ink), look.px(2.2)));
    painter.setBrush(look.tone(Tone::Surface));
    painter.drawEllipse(middle, look.px(2.9), look.px(2.9));
}

void Drum::marker() const {
    if (!extractor.marker) return;
    const QPointF tip = around(middle, radius * 0.975, *extractor.marker - 5.0);
    painter.setPen(Qt::NoPen);
    painter.setBrush(look.tone(Tone::Ink));
    painter.drawPolygon(QPolygonF({tip, around(middle, radius * 0.965, *extractor.marker + 4.0),
                                   around(middle, radius * 0.88, *extractor.marker + 4.0)}));
}

/// Words of this file, where the translators' tools find them.
struct ExtractorTexts {
    Q_DECLARE_TR_FUNCTIONS(combwright::Extractor)
};

int nearestSlot(const ExtractorView& extractor, double degrees) {
    const auto count = static_cast<int>(extractor.slotViews.size());
    const double turn = std::fmod(std::fmod(degrees, 360.0) + 360.0, 360.0);
    return static_cast<int>(std::lround(turn / 360.0 * count)) % count + 1;
}

QString offsetWords(const ExtractorView& extractor, const OffsetView& offset, const char* when) {
    QString words = ExtractorTexts::tr(when).arg(shownPortion(offset.grams).text());
    if (offset.grams >= 0.5 && !extractor.slotViews.empty()) {
        words += ExtractorTexts::tr(" towards slot %1").arg(nearestSlot(extractor, offset.angle));
    }
    if (offset.doubt >= 0.5) {
        words += ExtractorTexts::tr(", may be %1 off that").arg(shownPortion(offset.doubt).text());
    }
    return words;
}

}  // namespace

QRectF extractorDrum(const QRectF& box, const ExtractorView& extractor, const Look& look) {
    const double rim = look.px(1.5);
    double across = rim, down = rim;
    if (extractor.numbered) {
        double widest = 0.0;
        for (const auto& slot : extractor.slotViews) {
            const QString label =
                slot.label.isEmpty() ? QString() : QStringLiteral("  ") + slot.label;
            widest = std::max(
                widest, lineWidth({{QStringLiteral("00"), true}, {label}}, TextSize::Body, look));
        }
        across = widest + look.px(12.0);
        down = look.px(26.0);
    }
    const double radius =
        std::max(0.0, std::min(box.width() / 2.0 - across, box.height() / 2.0 - down));
    return {box.center() - QPointF(radius, radius), QSizeF(radius * 2.0, radius * 2.0)};
}

std::optional<int> slotAt(const QRectF& box, const ExtractorView& extractor, const Look& look,
                          QPointF point) {
    const QRectF drum = extractorDrum(box, extractor, look);
    const QPointF from = point - drum.center();
    const double distance = std::hypot(from.x(), from.y()) / std::max(drum.width() / 2.0, 1e-9);
    if (extractor.slotViews.empty() || distance < barStart - 0.05 || distance > 1.0) return {};
    const double degrees = std::atan2(from.x(), -from.y()) * 180.0 / std::numbers::pi;
    return nearestSlot(extractor, degrees);
}

void paintExtractor(QPainter& painter, const QRectF& box, const ExtractorView& extractor,
                    const Look& look) {
    const QRectF tub = extractorDrum(box, extractor, look);
    if (tub.width() < 8.0) return;
    const PainterState state(painter);
    painter.setRenderHint(QPainter::Antialiasing);
    const Drum drum{painter, extractor, look, tub.center(), tub.width() / 2.0};
    drum.tub();
    drum.scaleRings();
    drum.marker();
    for (std::size_t i = 0; i < extractor.slotViews.size(); ++i) {
        const bool selected = extractor.selected == static_cast<int>(i) + 1;
        drum.frameBar(extractor.slotViews[i], slotDegrees(extractor, i), selected);
    }
    for (std::size_t i = 0; i < extractor.slotViews.size(); ++i) {
        drum.slotLetter(extractor.slotViews[i], slotDegrees(extractor, i));
        if (extractor.numbered) drum.number(i);
    }
    drum.balance();
}

void paintExtractorSign(QPainter& painter, const QRectF& box, ExtractorSign sign,
                        const Look& look) {
    const PainterState state(painter);
    painter.setRenderHint(QPainter::Antialiasing);
    const QPointF left(box.left(), box.center().y()), right(box.right(), box.center().y());
    const double radius = std::min(box.width(), box.height()) / 2.0;
    painter.setBrush(Qt::NoBrush);
    switch (sign) {
        case ExtractorSign::Start:
            return paintArrow(painter, left, right, false, look);
        case ExtractorSign::End:
            return paintArrow(painter, left, right, true, look);
        case ExtractorSign::DoubtStart:
        case ExtractorSign::DoubtEnd: {
            const Drum sample{painter, {}, look, box.center(), radius};
            const bool atEnd = sign == ExtractorSign::DoubtEnd;
            return sample.disc({0.0, 0.0, radius * (atEnd ? 0.7 : 1.0)}, 1.0, atEnd);
        }
        case ExtractorSign::Ring:
            painter.setPen(dashedPen(look.tone(Tone::Good), look.px(1.8)));
            painter.drawArc(
                QRectF(box.left(), box.top() + box.height() * 0.2, box.width(), box.height() * 1.3),
                10 * 16, 160 * 16);
            return;
        case ExtractorSign::NotAsPlanned:
            painter.setPen(plainPen(look.tone(Tone::Accent), look.px(2.0)));
            painter.drawRoundedRect(box.adjusted(1.0, 1.0, -1.0, -1.0), look.px(3.0), look.px(3.0));
            return;
    }
}

QString spoken(const ExtractorView& extractor) {
    QStringList sentences;
    const auto frames =
        std::count_if(extractor.slotViews.begin(), extractor.slotViews.end(),
                      [](const SlotView& slot) { return slot.startGrams.has_value(); });
    sentences << ExtractorTexts::tr("Extractor, %1 slots, %2 frames in")
                     .arg(extractor.slotViews.size())
                     .arg(frames);
    if (extractor.start) {
        sentences << offsetWords(
            extractor, *extractor.start,
            QT_TRANSLATE_NOOP("combwright::Extractor", "off balance at the start %1"));
    }
    if (extractor.end) {
        sentences << offsetWords(extractor, *extractor.end,
                                 QT_TRANSLATE_NOOP("combwright::Extractor", "at the end %1"));
    }
    if (extractor.ringGrams) {
        const char* words =
            extractor.ringRan
                ? QT_TRANSLATE_NOOP("combwright::Extractor", "%1 ran smooth before")
                : QT_TRANSLATE_NOOP("combwright::Extractor", "the balance grade allows %1");
        sentences << ExtractorTexts::tr(words).arg(shownPortion(*extractor.ringGrams).text());
    }
    for (std::size_t i = 0; i < extractor.slotViews.size(); ++i) {
        if (extractor.slotViews[i].ringed) {
            sentences << ExtractorTexts::tr("slot %1 is not as planned").arg(i + 1);
        }
    }
    return sentences.join(QStringLiteral("; ")) + QLatin1Char('.');
}

}  // namespace combwright
