#include "ui/storeroom/lane_view.h"

#include <QLocale>
#include <QPainter>
#include <algorithm>
#include <cmath>
#include <map>

#include "core/words/figures.h"
#include "core/words/kind_words.h"
#include "core/words/words.h"
#include "ui/common/flat_row.h"
#include "ui/drawing/lettering.h"
#include "ui/drawing/strokes.h"

namespace combwright {
namespace {

constexpr double laneWords = 184.0;  // px at the base font
constexpr std::size_t doneShown = 3;

QDate dateOf(Day day) { return QDate::fromString(fromUtf8(isoText(day)), Qt::ISODate); }

}  // namespace

LaneView::LaneView(Session& session, QWidget* parent) : QWidget(parent), m_session(session) {
    setObjectName(QStringLiteral("freezer_lane"));
    setAccessibleName(tr("Freezer"));
    setSizePolicy(QSizePolicy::Preferred, QSizePolicy::Fixed);
    connect(&session, &Session::lookChanged, this, [this] { updateGeometry(); });
}

void LaneView::show(const FreezerLane& lane) {
    std::map<std::int64_t, FrameShape> shapes;
    std::map<std::int64_t, QString> names;
    for (const FrameKind& kind : m_session.read().all<FrameKind>()) {
        shapes.emplace(kind.id.number, frameShapeOf(kind));
        names.emplace(kind.id.number, frameKindText(kind));
    }
    const auto framesOf = [&](const std::vector<FreezerFrames>& loads) {
        std::vector<RoundFrames> frames;
        for (const FreezerFrames& load : loads) {
            const QString what = names[load.kind.number];
            const auto same = std::find_if(frames.begin(), frames.end(),
                                           [&](const RoundFrames& f) { return f.what == what; });
            if (same != frames.end())
                same->count += static_cast<int>(load.frames);
            else
                frames.push_back({shapes[load.kind.number], static_cast<int>(load.frames), what});
        }
        return frames;
    };
    m_lane = {};
    const std::size_t first = lane.done.size() > doneShown ? lane.done.size() - doneShown : 0;
    for (std::size_t i = first; i < lane.done.size(); ++i)
        m_lane.rounds.push_back({dateOf(lane.done[i].round.in),
                                 dateOf(lane.done[i].round.out.value_or(lane.done[i].round.in)),
                                 RoundState::Done,
                                 framesOf(lane.done[i].loads),
                                 {}});
    for (const FreezerRoundRow& row : lane.in)
        m_lane.rounds.push_back({dateOf(row.round.in),
                                 dateOf(row.due.value_or(row.round.in)),
                                 RoundState::In,
                                 framesOf(row.loads),
                                 {}});
    for (const FreezerNext& next : lane.next.rounds)
        m_lane.rounds.push_back(
            {dateOf(next.in), dateOf(next.out), RoundState::Planned, framesOf(next.loads), {}});
    m_lane.today = dateOf(lane.on);
    // Rounds are kept by the day: the line stands in the middle of today.
    m_lane.todayShare = 0.5;
    m_facts.clear();
    QStringList rooms;
    for (const FreezerRoom& room : lane.rooms)
        rooms << tr("%1 %2").arg(static_cast<qlonglong>(room.holds)).arg(names[room.kind.number]);
    if (!lane.freezer)
        m_facts << tr("No freezer is written down.");
    else if (!rooms.isEmpty())
        m_facts << tr("%1; %2 h each").arg(rooms.join(tr(" or "))).arg(lane.hours);
    if (!lane.dryFirst.empty())
        m_facts << tr("%1 wet: dry first").arg(static_cast<qlonglong>(framesIn(lane.dryFirst)));
    if (!lane.held.empty())
        m_facts
            << tr("%1 held: never with others").arg(static_cast<qlonglong>(framesIn(lane.held)));
    if (lane.shared && lane.shared->lastOut && lane.next.lastOut)
        m_facts << tr("sharing rounds: out %1, not %2")
                       .arg(dayAndMonth(*lane.shared->lastOut), dayAndMonth(*lane.next.lastOut));
    m_waits = lane.waitingFrames() > 0
                  ? (lane.waitingFrames() == 1 ? tr("%1 frame waits") : tr("%1 frames wait"))
                        .arg(static_cast<qlonglong>(lane.waitingFrames()))
                  : tr("nothing waits");
    m_empty = m_lane.rounds.empty();
    setAccessibleDescription(words() + QLatin1Char(' ') + m_waits + QLatin1Char(' ') +
                             spoken(m_lane));
    updateGeometry();
    update();
}

double LaneView::wordsWidth() const { return m_session.look().px(laneWords); }

int LaneView::neededHeight() const {
    const Look& look = m_session.look();
    const QFontMetricsF note(look.font(TextSize::Note));
    double words = look.px(8.0) + lineStep(look.font(TextSize::Head, true)) +
                   lineStep(look.font(TextSize::Body, true)) + look.px(4.0);
    for (const QString& fact : m_facts)
        words +=
            note.boundingRect(QRectF(0, 0, wordsWidth(), 1e6), Qt::TextWordWrap, fact).height();
    return static_cast<int>(std::ceil(std::max(words, freezerLaneHeight(look) + look.px(14.0))));
}

void LaneView::paintEvent(QPaintEvent* event) {
    QWidget::paintEvent(event);
    const Look& look = m_session.look();
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(plainPen(look.tone(Tone::Ink), look.px(1.2)));
    painter.drawLine(QPointF(0, 1), QPointF(width(), 1));
    double y = look.px(4.0) + lineStep(look.font(TextSize::Head, true));
    paintText(painter, {0, y - look.px(4.0)}, tr("Freezer"), look.font(TextSize::Head, true),
              look.tone(Tone::Ink));
    const QFont note = look.font(TextSize::Note);
    painter.setFont(note);
    painter.setPen(look.tone(Tone::Muted));
    for (const QString& fact : m_facts) {
        const QRectF box(0, y, wordsWidth(), 1e6);
        const QRectF used = QFontMetricsF(note).boundingRect(box, Qt::TextWordWrap, fact);
        painter.drawText(QRectF(0, y, wordsWidth(), used.height() + 2), Qt::TextWordWrap, fact);
        y += used.height();
    }
    const QFont bold = look.font(TextSize::Body, true);
    paintText(painter, {0, y + capHeight(bold) + look.px(6.0)}, m_waits, bold,
              look.tone(Tone::Ink));
    const double left = wordsWidth() + look.px(16.0);
    const QRectF lane(left, look.px(8.0), width() - left - look.px(2.0), freezerLaneHeight(look));
    if (m_empty)
        paintText(painter, {left, lane.center().y()},
                  fitted(tr("No round yet. Comb that is to freeze is set in rounds here, brood and "
                            "pollen comb first."),
                         note, lane.width()),
                  note, look.tone(Tone::Muted));
    else
        paintFreezerLane(painter, lane, m_lane, look);
}

}  // namespace combwright
