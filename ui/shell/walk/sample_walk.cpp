#include "ui/shell/walk/sample_walk.h"

#include <QAccessible>
#include <QPainter>
#include <QVBoxLayout>
#include <algorithm>

#include "ui/shell/copies/time_ways.h"
#include "ui/shell/help/sample_pictures.h"
#include "ui/shell/main_window.h"

namespace combwright {

SampleWalk::SampleWalk(Session& session, MainWindow& window, QWidget* parent)
    : QWidget(parent), m_session(session), m_window(window), m_steps(walkSteps()) {
    setObjectName(QStringLiteral("sample_walk"));
    m_title = new QLabel(this);
    m_title->setObjectName(QStringLiteral("walk_title"));
    m_says = new QLabel(this);
    m_says->setObjectName(QStringLiteral("walk_says"));
    for (QLabel* each : {m_title, m_says}) {
        each->setTextFormat(Qt::PlainText);
        each->setWordWrap(true);
    }
    const auto button = [this](const QString& text, const QString& said, const char* name) {
        auto* made = new QPushButton(text, this);
        made->setObjectName(QLatin1String(name));
        made->setAccessibleName(said);
        made->setProperty("small", true);
        return made;
    };
    m_backButton = button(tr("Back   Alt+←"), tr("One step back"), "walk_back");
    m_nextButton = button(tr("Next   Alt+→"), tr("Next step"), "walk_next");
    m_leaveButton = button(tr("Leave the walk"), tr("Leave the walk"), "walk_leave");
    auto* words = new QVBoxLayout;
    words->setSpacing(0);
    words->addWidget(m_title);
    words->addWidget(m_says);
    auto* buttons = new QHBoxLayout;
    for (QPushButton* each : {m_backButton, m_nextButton, m_leaveButton})
        buttons->addWidget(each, 0, Qt::AlignTop);
    m_across = new QBoxLayout(QBoxLayout::LeftToRight, this);
    m_across->addLayout(words, 1);
    m_across->addLayout(buttons);

    const auto action = [this](const QString& text, Qt::Key key) {
        auto* made = new QAction(text, this);
        made->setShortcut(QKeySequence(Qt::ALT | key));
        m_window.addAction(made);
        return made;
    };
    m_back = action(tr("One step back in the walk"), Qt::Key_Left);
    m_next = action(tr("Next step of the walk"), Qt::Key_Right);
    connect(m_back, &QAction::triggered, this, [this] { go(m_step - 1); });
    connect(m_next, &QAction::triggered, this, [this] { go(m_step + 1); });
    connect(m_backButton, &QPushButton::clicked, m_back, &QAction::trigger);
    connect(m_nextButton, &QPushButton::clicked, m_next, &QAction::trigger);
    connect(m_leaveButton, &QPushButton::clicked, this, &SampleWalk::leave);
    // Found by its name with Ctrl+K.
    auto* begins = new QAction(tr("Walk through a first year"), this);
    m_window.addAction(begins);
    connect(begins, &QAction::triggered, this, &SampleWalk::begin);

    connect(&session, &Session::lookChanged, this, &SampleWalk::applyLook);
    connect(&session, &Session::seasonChanged, this, [this] {
        if (!m_turning) end();
    });
    connect(&session, &Session::pathChanged, this, &SampleWalk::end);
    applyLook();
    end();
}

void SampleWalk::begin() {
    const bool own =
        m_session.hasSeason() && !(m_session.isSample() && m_session.copyTitle().isEmpty());
    if (!own) return go(0);
    auto beside = std::make_unique<Session>(m_session.machineClock());
    beside->setLook(m_session.look());
    beside->leaveNoTrace();
    const DemoUntil first = m_steps.front().until;
    const bool opened = beside->exploreSample(m_window.samplePictures().shelf(), first);
    m_session.markPapers();
    if (!opened) return m_session.tell(beside->lastTold(), true);
    if (MainWindow* window = m_window.time().openBeside(std::move(beside))) {
        window->walk().m_until = first;
        window->walk().go(0);
    }
}

void SampleWalk::leave() {
    end();
    m_session.tell(
        tr("The sample season stays open to try more; Ctrl+W closes it and throws it "
           "away."));
    if (Place* place = m_window.current()) place->setFocus(Qt::OtherFocusReason);
}

void SampleWalk::end() {
    m_until.reset();
    hide();
    m_back->setEnabled(false);
    m_next->setEnabled(false);
}

void SampleWalk::go(int step) {
    if (step < 0 || step >= count()) return;
    const WalkStep& to = m_steps[static_cast<std::size_t>(step)];
    if (m_until != to.until) {
        // What was tried goes with its copy: the next part of the year is as it is told.
        m_turning = true;
        const bool opened = m_session.exploreSample(m_window.samplePictures().shelf(), to.until);
        m_turning = false;
        if (!opened) return;
        m_until = to.until;
    }
    m_step = step;
    show();
    goTo(to);
    fill();
}

void SampleWalk::goTo(const WalkStep& step) {
    const auto& places = m_window.places();
    const auto place = std::find_if(places.begin(), places.end(), [&](const Place* each) {
        return each->metaObject() == step.place;
    });
    if (place == places.end()) return;
    GoTo where = step.where;
    m_session.reading([&] {
        for (const Yard& yard : m_session.read().all<Yard>())
            if (!step.yard.empty() && yard.name.text() == step.yard) where.yard = yard.id;
        for (const Hive& hive : m_session.read().all<Hive>())
            if (!step.hive.empty() && hive.mark.text() == step.hive) where.hive = hive.id;
    });
    m_window.goTo(static_cast<int>(place - places.begin()));
    (*place)->goFor(where);
}

void SampleWalk::fill() {
    const WalkStep& at = m_steps[static_cast<std::size_t>(m_step)];
    m_title->setText(tr("%1 of %2 · %3").arg(m_step + 1).arg(count()).arg(at.title));
    m_says->setText(at.says);
    const bool first = m_step == 0;
    const bool last = m_step + 1 == count();
    m_back->setEnabled(!first);
    m_backButton->setEnabled(!first);
    m_next->setEnabled(!last);
    m_nextButton->setEnabled(!last);
    setAccessibleName(tr("Walk through a first year, %1. %2").arg(m_title->text(), at.says));
    QAccessibleEvent event(this, QAccessible::Alert);
    QAccessible::updateAccessibility(&event);
}

void SampleWalk::applyLook() {
    const Look& look = m_session.look();
    layout()->setContentsMargins(look.space(24), look.space(8), look.space(24), look.space(8));
    layout()->setSpacing(look.space(8));
    m_title->setFont(look.font(TextSize::Body, true));
    m_says->setFont(look.font(TextSize::Body));
    arrange();
}

/// In large type the words need the whole width.
void SampleWalk::arrange() {
    const bool narrow = width() < m_session.look().space(760);
    m_across->setDirection(narrow ? QBoxLayout::TopToBottom : QBoxLayout::LeftToRight);
}

void SampleWalk::resizeEvent(QResizeEvent*) { arrange(); }

void SampleWalk::paintEvent(QPaintEvent*) {
    const Look& look = m_session.look();
    QPainter painter(this);
    painter.fillRect(rect(), look.tone(Tone::Surface));
    painter.fillRect(QRect(0, 0, look.space(4), height()), look.tone(Tone::Accent));
    painter.setPen(look.tone(Tone::Hairline));
    painter.drawLine(0, 0, width(), 0);
}

}  // namespace combwright
