#include "ui/today/half_done_view.h"

#include <QLocale>
#include <QMouseEvent>
#include <algorithm>
#include <cmath>

#include "core/places/pages/due/half_done_words.h"
#include "core/words/figures.h"
#include "core/words/words.h"
#include "ui/drawing/bucket.h"
#include "ui/drawing/figure.h"
#include "ui/drawing/lettering.h"
#include "ui/drawing/stack.h"
#include "ui/drawing/strokes.h"

namespace combwright {
namespace {

using HalfKind = HalfDone::What;

constexpr double halfPxPerMm = 0.15;  // of boxes: small, a look and no more
constexpr std::size_t mostPegged = 6;
constexpr std::size_t mostWet = 3;

/// The boxes from the top down; where there are more than can be drawn the rest is in the words.
StackView stackOfHalf(const HalfDone& half) {
    StackView stack;
    stack.floor = false;
    stack.lid = half.what == HalfKind::Run;
    for (const RoomBox& box : half.boxes) {
        if (stack.boxes.size() == (half.what == HalfKind::Run ? mostPegged : mostWet)) break;
        BoxView view;
        view.mark = fromUtf8(box.mark);
        view.heightMm = box.heightMm;
        // The chalk line is for what is in it; here only the mark is read.
        view.brood = true;
        if (box.peg) view.peg = QString::number(*box.peg);
        stack.boxes.push_back(std::move(view));
    }
    return stack;
}

bool drawsStack(const HalfDone& half) {
    return (half.what == HalfKind::Run || half.what == HalfKind::WetBoxes) && !half.boxes.empty();
}

double hiveStep(const Look& look) { return look.px(16); }

}  // namespace

HalfDoneView::HalfDoneView(Session& session, QWidget* parent)
    : LineList(session, QStringLiteral("half_done"), parent) {
    setAccessibleName(tr("Left half done"));
}

void HalfDoneView::show(const std::vector<HalfDone>& list, const SoFar& so, Day today) {
    m_list = list;
    m_so = so;
    m_today = today;
    // An empty list is nothing to stop at.
    setFocusPolicy(m_list.empty() ? Qt::NoFocus : Qt::StrongFocus);
    linesChanged(currentRow());
}

const HalfDone* HalfDoneView::current() const {
    const auto row = static_cast<std::size_t>(currentRow());
    return row < m_list.size() ? &m_list[row] : nullptr;
}

double HalfDoneView::drawingHeight(const HalfDone& half, double width) const {
    const Look& look = this->look();
    if (drawsStack(half)) return stackHeight(stackOfHalf(half), look.px(halfPxPerMm), look);
    if (half.what == HalfKind::Visit) {
        const auto across = std::max(1.0, std::floor(width / hiveStep(look)));
        return std::ceil(static_cast<double>(half.hives.size()) / across) * look.px(22);
    }
    if (half.what == HalfKind::NoTag) return look.px(36);
    if (half.what == HalfKind::Bucket) return look.px(52) + bucketCaretRoom(look);
    return 0;
}

HalfDoneView::LaidOut HalfDoneView::layOut(double width) const {
    const Look& look = this->look();
    const double pad = look.px(9);
    const double gap = look.px(10);
    const double drawing = look.px(104);
    const double button =
        std::max(look.px(76), textWidth(tr("Carry on"), look.font(TextSize::Note)) + look.px(16));
    LaidOut out;
    double y = 0;
    for (const HalfDone& half : m_list) {
        Laid laid;
        const double x = drawing + gap;
        const double words = std::max(look.px(90), width - x - button - gap * 2);
        laid.title.text = halfDoneTitle(half);
        laid.title.bold = laid.title.text.size();
        laid.title.boldTone =
            half.what == HalfKind::Held || half.what == HalfKind::Heat ? Tone::Warn : Tone::Ink;
        double high = wrappedHeight(laid.title, words, look);
        for (const QString& line : halfDoneLines(half, m_today)) {
            WrappedText text;
            text.text = line;
            text.size = TextSize::Note;
            text.tone = Tone::Muted;
            high += wrappedHeight(text, words, look);
            laid.lines.push_back(std::move(text));
        }
        const double drawn = drawingHeight(half, drawing);
        const double row = std::max({high, drawn, double(look.target())}) + pad * 2;
        laid.row = QRectF(0, y, width - 1, row);
        laid.drawing = QRectF(look.px(4), y + pad, drawing - look.px(4), drawn);
        laid.words = QRectF(x, y + pad, words, high);
        laid.button = QRectF(width - button - look.px(4), y + pad, button,
                             static_cast<double>(look.target()));
        y += row;
        out.rows.push_back(std::move(laid));
    }
    if (m_list.empty()) y = lineStep(look.font(TextSize::Body)) + pad * 2;
    out.soFarY = y + pad;
    out.height = out.soFarY + lineStep(look.font(TextSize::Head)) +
                 lineStep(look.font(TextSize::Note)) + lineStep(look.font(TextSize::Body)) +
                 look.px(24);
    return out;
}

int HalfDoneView::heightForWidth(int width) const {
    return static_cast<int>(std::ceil(layOut(width).height));
}

QSize HalfDoneView::sizeHint() const {
    const int width = look().space(360);
    return {width, heightForWidth(width)};
}

QRect HalfDoneView::currentRect() const {
    const auto laid = layOut(width());
    const auto row = static_cast<std::size_t>(currentRow());
    return row < laid.rows.size() ? laid.rows[row].row.toAlignedRect() : QRect();
}

void HalfDoneView::paintHives(QPainter& painter, const HalfDone& half, const QRectF& box) const {
    const Look& look = this->look();
    const double step = hiveStep(look);
    const auto across =
        std::max<std::size_t>(1, static_cast<std::size_t>(std::floor(box.width() / step)));
    for (std::size_t i = 0; i < half.hives.size(); ++i) {
        const auto column = i % across;
        const auto row = i / across;
        const QRectF hive(box.x() + static_cast<double>(column) * step,
                          box.y() + static_cast<double>(row) * look.px(22), look.px(10),
                          look.px(16));
        painter.setBrush(half.written[i] ? QBrush(look.paint(Paint::Wood)) : QBrush(Qt::NoBrush));
        painter.setPen(half.written[i] ? plainPen(look.paint(Paint::Edge), look.px(1))
                                       : dashedPen(look.tone(Tone::Line), look.px(1)));
        painter.drawRect(hive);
    }
}

void HalfDoneView::paintDrawing(QPainter& painter, const HalfDone& half, const QRectF& box) const {
    const Look& look = this->look();
    if (drawsStack(half))
        return paintStack(painter, box, stackOfHalf(half), look, look.px(halfPxPerMm));
    if (half.what == HalfKind::Visit) return paintHives(painter, half, box);
    if (half.what == HalfKind::NoTag) {
        BoxView front;
        front.lookedInto = false;
        return paintBoxFront(painter, box.adjusted(0, 0, -look.px(6), 0), front, look);
    }
    if (half.what != HalfKind::Bucket) return;
    BucketView bucket;
    bucket.name = fromUtf8(half.name);
    bucket.level = 0.9;
    if (half.mass && half.mass->middle())
        bucket.level = std::min(1.0, *half.mass->middle() / 13600);
    if (half.water) bucket.water = QLocale().toString(*half.water, 'f', 1);
    bucket.lidded = true;
    bucket.doNotBottle = true;
    const double wide = look.px(52);
    paintBucket(painter, QRectF(box.center().x() - wide / 2, box.y(), wide, box.height()), bucket,
                look);
}

void HalfDoneView::paintSoFar(QPainter& painter, double y) const {
    const Look& look = this->look();
    painter.setPen(plainPen(look.tone(Tone::Line), look.px(1.3)));
    painter.drawLine(QPointF(0, y), QPointF(width(), y));
    const QFont head = look.font(TextSize::Body, true);
    const QFont note = look.font(TextSize::Note);
    y += look.px(6) + QFontMetricsF(head).ascent();
    paintText(painter, {0, y}, tr("So far this year"), head, look.tone(Tone::Ink));
    struct Figure {
        QString what;
        QString figure, unit;
        char how;
    };
    const QString runs = m_so.runs == 1 ? tr("honey, 1 run") : tr("honey, %1 runs").arg(m_so.runs);
    const Figure figures[] = {
        {m_so.runs == 0 ? tr("honey") : runs,
         m_so.honey ? massFigure(static_cast<double>(m_so.honey->grams()), m_so.honeyHow)
                    : tr("none yet"),
         m_so.honey ? massUnit() : QString(), m_so.honey ? letter(m_so.honeyHow) : char(0)},
        {tr("yard visits"), QString::number(m_so.visits), {}, 'c'},
        {tr("colonies alive"), tr("%1 of %2").arg(m_so.alive).arg(m_so.of), {}, 'c'}};
    const double column = width() / 3.0;
    y += lineStep(note) + look.px(3);
    FigureStyle style;
    style.bold = true;
    for (std::size_t i = 0; i < 3; ++i) {
        const double x = static_cast<double>(i) * column;
        paintText(painter, {x, y}, fitted(figures[i].what, note, column - look.px(6)), note,
                  look.tone(Tone::Muted));
        paintFigure(painter, {x, y + lineStep(look.font(TextSize::Body))}, figures[i].figure,
                    figures[i].unit, figures[i].how, style, look);
    }
}

void HalfDoneView::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const Look& look = this->look();
    const LaidOut out = layOut(width());
    for (std::size_t i = 0; i < out.rows.size(); ++i) {
        const Laid& laid = out.rows[i];
        if (i > 0) {
            painter.setPen(plainPen(look.tone(Tone::Hairline), look.px(1)));
            painter.drawLine(laid.row.topLeft(), laid.row.topRight());
        }
        if (static_cast<int>(i) == currentRow() && hasFocus()) {
            painter.setPen(QPen(look.tone(Tone::Accent), look.px(1.8)));
            painter.setBrush(look.tone(Tone::Selection));
            painter.drawRoundedRect(laid.row.adjusted(1, 1, -1, -1), look.corner(), look.corner());
        }
        {
            const PainterState state(painter);
            paintDrawing(painter, m_list[i], laid.drawing);
        }
        double y = laid.words.y();
        y += paintWrapped(painter, {laid.words.x(), y}, laid.title, laid.words.width(), look);
        for (const WrappedText& line : laid.lines)
            y += paintWrapped(painter, {laid.words.x(), y}, line, laid.words.width(), look);
        paintButton(painter, laid.button, halfDoneAction(m_list[i]));
    }
    if (m_list.empty())
        paintText(painter, {0, look.px(9) + QFontMetricsF(look.font(TextSize::Body)).ascent()},
                  tr("Nothing."), look.font(TextSize::Body), look.tone(Tone::Muted));
    paintSoFar(painter, out.soFarY);
}

void HalfDoneView::speak() {
    const HalfDone* half = current();
    if (!half) return setAccessibleDescription(tr("Nothing was left half done."));
    QStringList said{halfDoneTitle(*half)};
    said << halfDoneLines(*half, m_today) << halfDoneAction(*half);
    setAccessibleDescription(said.join(QStringLiteral(". ")));
}

void HalfDoneView::doCurrent() {
    if (const HalfDone* half = current()) Q_EMIT done(HalfDone(*half));
}

void HalfDoneView::mousePressEvent(QMouseEvent* event) {
    const LaidOut out = layOut(width());
    for (std::size_t i = 0; i < out.rows.size(); ++i) {
        if (!out.rows[i].row.contains(event->position())) continue;
        choose(static_cast<int>(i));
        if (out.rows[i].button.contains(event->position())) Q_EMIT done(HalfDone(m_list[i]));
        return;
    }
}

}  // namespace combwright
