#include "ui/honey_room/bucket_view.h"

#include <QKeyEvent>
#include <QLocale>
#include <QMouseEvent>
#include <QPainter>
#include <algorithm>

#include "core/words/figures.h"
#include "core/words/words.h"
#include "ui/drawing/lettering.h"

namespace combwright {
namespace {

constexpr int cellWidth = 78;
constexpr int cellHeight = 98;

FigureText netFigure(const BucketLine& line) {
    const auto net = line.bucket && line.bucket->net ? line.bucket->net->middle() : std::nullopt;
    if (!net) return {};
    return {massFigure(*net, line.bucket->net->how), massUnit(), letter(line.bucket->net->how)};
}

}  // namespace

BucketBoard::BucketBoard(Session& session, QWidget* parent) : QWidget(parent), m_session(session) {
    setFocusPolicy(Qt::StrongFocus);
    setObjectName(QStringLiteral("bucket_board"));
    setAccessibleName(tr("Buckets"));
    connect(&session, &Session::lookChanged, this, [this] {
        setMinimumHeight(heightFor(width()));
        updateGeometry();
        update();
    });
}

void BucketBoard::show(const BucketSheet& sheet) {
    const std::string mark = current() ? current()->mark : std::string();
    m_sheet = sheet;
    const auto& lines = m_sheet.lines;
    auto at = std::find_if(lines.begin(), lines.end(),
                           [&](const BucketLine& line) { return line.mark == mark; });
    // Left alone the cursor follows the gate.
    if (!hasFocus() || at == lines.end())
        at = std::find_if(lines.begin(), lines.end(),
                          [](const BucketLine& line) { return line.underGate; });
    m_index = at == lines.end() ? 0 : static_cast<int>(at - lines.begin());
    setMinimumHeight(heightFor(width()));
    updateGeometry();
    speak();
    update();
}

const BucketLine* BucketBoard::current() const {
    return m_index < static_cast<int>(m_sheet.lines.size())
               ? &m_sheet.lines[static_cast<std::size_t>(m_index)]
               : nullptr;
}

void BucketBoard::choose(int index) {
    m_index = std::clamp(index, 0, std::max(0, static_cast<int>(m_sheet.lines.size()) - 1));
    speak();
    update();
    Q_EMIT chosen();
}

int BucketBoard::perRow(int width) const {
    return std::max(1, width / m_session.look().space(cellWidth));
}

int BucketBoard::heightFor(int width) const {
    const int count = static_cast<int>(m_sheet.lines.size());
    const int rows = (count + perRow(width) - 1) / perRow(width);
    return std::max(1, rows) * m_session.look().space(cellHeight) + m_session.look().space(4);
}

QSize BucketBoard::minimumSizeHint() const {
    return {m_session.look().space(3 * cellWidth), heightFor(std::max(width(), 1))};
}

QRectF BucketBoard::cell(int index) const {
    const Look& look = m_session.look();
    const double wide = look.space(cellWidth);
    const double high = look.space(cellHeight);
    return {index % perRow(width()) * wide, index / perRow(width()) * high, wide, high};
}

BucketView BucketBoard::view(const BucketLine& line) const {
    BucketView bucket;
    bucket.name = fromUtf8(line.mark);
    if (line.level) bucket.level = *line.level * 0.94;
    bucket.doNotBottle = line.tooWet;
    bucket.underGate = line.underGate;
    if (line.bucket) {
        if (line.water) bucket.water = QLocale().toString(line.water->percent, 'f', 1);
        bucket.lidded = line.bucket->lidded.value_or(false);
    }
    return bucket;
}

void BucketBoard::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const Look& look = m_session.look();
    for (int i = 0; i < static_cast<int>(m_sheet.lines.size()); ++i) {
        const BucketLine& line = m_sheet.lines[static_cast<std::size_t>(i)];
        const QRectF box = cell(i);
        if (i == m_index && hasFocus()) {
            painter.setPen(QPen(look.tone(Tone::Accent), look.px(2)));
            painter.setBrush(look.tone(Tone::Selection));
            painter.drawRoundedRect(box.adjusted(2, 1, -2, -1), look.corner(), look.corner());
        }
        const double wide = look.px(56);
        paintBucket(painter,
                    QRectF(box.center().x() - wide / 2, box.y() + look.px(2), wide,
                           bucketCaretRoom(look) + look.px(48)),
                    view(line), look);
        const double step = lineStep(look.font(TextSize::Note));
        double y = box.y() + bucketCaretRoom(look) + look.px(50) + step * 0.9;
        paintText(painter, {box.center().x(), y}, fromUtf8(line.mark),
                  look.font(TextSize::Note, true), look.tone(Tone::Ink), Qt::AlignHCenter);
        y += step;
        const FigureText mass = netFigure(line);
        TextLine words = figureRuns(mass, FigureStyle{});
        if (mass.figure.isEmpty())
            words = {{line.bucket ? QStringLiteral("?") : tr("empty"), false, Tone::Muted}};
        paintLine(painter, {box.center().x(), y}, words, TextSize::Note, look, Qt::AlignHCenter);
    }
}

void BucketBoard::speak() {
    const BucketLine* line = current();
    if (!line) return setAccessibleDescription(tr("No bucket yet."));
    QString text = spoken(view(*line));
    if (const FigureText mass = netFigure(*line); !mass.figure.isEmpty())
        text += QLatin1Char(' ') + spoken(mass);
    setAccessibleDescription(
        tr("%1 of %2: %3").arg(m_index + 1).arg(m_sheet.lines.size()).arg(text));
}

void BucketBoard::focusInEvent(QFocusEvent*) {
    update();
    Q_EMIT chosen();
}

void BucketBoard::keyPressEvent(QKeyEvent* event) {
    // With Ctrl a key is the room's.
    if (event->modifiers() & Qt::ControlModifier) return QWidget::keyPressEvent(event);
    switch (event->key()) {
        case Qt::Key_Left:
            return choose(m_index - 1);
        case Qt::Key_Right:
            return choose(m_index + 1);
        case Qt::Key_Up:
            return choose(m_index - perRow(width()));
        case Qt::Key_Down:
            return choose(m_index + perRow(width()));
        case Qt::Key_Return:
        case Qt::Key_Enter:
            return Q_EMIT typed(QString());
        default:
            break;
    }
    const QString text = event->text();
    if (!text.isEmpty() && (text[0].isLetterOrNumber() || text[0] == QLatin1Char('~')))
        return Q_EMIT typed(text);
    QWidget::keyPressEvent(event);
}

void BucketBoard::mousePressEvent(QMouseEvent* event) {
    for (int i = 0; i < static_cast<int>(m_sheet.lines.size()); ++i)
        if (cell(i).contains(event->position())) choose(i);
}

void BucketBoard::mouseDoubleClickEvent(QMouseEvent*) { Q_EMIT typed(QString()); }

}  // namespace combwright
