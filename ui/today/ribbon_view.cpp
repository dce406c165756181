#include "ui/today/ribbon_view.h"

#include <cmath>

#include "core/places/pages/due/half_done_words.h"
#include "core/words/words.h"

namespace combwright {
namespace {

QDate ribbonDate(Day day) {
    return QDate(yearOf(day), static_cast<int>(monthOf(day)), static_cast<int>(dayOfMonth(day)));
}

}  // namespace

YearRibbonView::YearRibbonView(Session& session, QWidget* parent)
    : QWidget(parent), m_session(session) {
    setObjectName(QStringLiteral("year_ribbon"));
    setAccessibleName(tr("The year"));
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    connect(&session, &Session::lookChanged, this, [this] {
        updateGeometry();
        update();
    });
}

void YearRibbonView::show(const YearRibbon& ribbon) {
    m_view = {};
    m_view.year = ribbon.year;
    m_view.today = ribbonDate(ribbon.today);
    m_view.todayWords = tr("today, %1").arg(dayAndMonth(ribbon.today));
    for (const YearRibbon::Lane& lane : ribbon.lanes) {
        RibbonLane made;
        made.name = laneText(lane.work);
        for (const RibbonTick& tick : lane.ticks)
            made.marks.push_back({ribbonDate(tick.from), ribbonDate(tick.to), tick.done, {}});
        m_view.lanes.push_back(std::move(made));
    }
    setAccessibleDescription(spoken(m_view));
    updateGeometry();
    update();
}

QSize YearRibbonView::sizeHint() const {
    const Look& look = m_session.look();
    return {look.space(640), static_cast<int>(std::ceil(ribbonHeight(m_view, look))) + 2};
}

QSize YearRibbonView::minimumSizeHint() const { return {1, sizeHint().height()}; }

void YearRibbonView::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    paintRibbon(painter, QRectF(rect()).adjusted(0, 0, -2, 0), m_view, m_session.look());
}

}  // namespace combwright
