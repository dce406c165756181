#include "ui/yard/story_card.h"

#include <QKeyEvent>
#include <QPainter>
#include <QScrollBar>
#include <QTextDocument>
#include <QVBoxLayout>
#include <algorithm>

#include "core/places/pages/yard/yard_sheet_page.h"
#include "core/places/pages/yard/yard_story_text.h"
#include "core/words/words.h"
#include "ui/drawing/queen_dot.h"
#include "ui/yard/mind_tone.h"

namespace combwright {
namespace {

/// As many entries as stand below the board before "more".
constexpr int entriesBelow = 6;

QDate dateOf(Day day) {
    return {yearOf(day), static_cast<int>(monthOf(day)), static_cast<int>(dayOfMonth(day))};
}

const Mind* queenWaitOf(const YardSheetRow& row) {
    for (const Mind& mind : row.minds)
        if (mind.kind == MindKind::QueenWait && mind.queen) return &mind;
    return nullptr;
}

}  // namespace

QueenWaitLine::QueenWaitLine(Session& session, QWidget* parent)
    : QWidget(parent), m_session(session) {
    setObjectName(QStringLiteral("queen_wait"));
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
}

void QueenWaitLine::show(const QueenWaitView& wait) {
    m_wait = wait;
    setAccessibleName(spoken(wait));
    updateGeometry();
    update();
}

QSize QueenWaitLine::sizeHint() const {
    return {100, static_cast<int>(queenWaitHeight(m_session.look())) + 2};
}

void QueenWaitLine::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    paintQueenWait(painter, QRectF(rect()), m_wait, m_session.look());
}

StoryCard::StoryCard(Session& session, QWidget* parent)
    : QFrame(parent),
      m_session(session),
      m_head(new QLabel(this)),
      m_minds(new QLabel(this)),
      m_waitTitle(new QLabel(this)),
      m_wait(new QueenWaitLine(session, this)),
      m_waitWords(new QLabel(this)),
      m_scroll(new QScrollArea(this)),
      m_storyLabel(new QLabel(m_scroll)),
      m_more(new QLabel(this)) {
    setProperty("card", true);
    auto* column = new QVBoxLayout(this);
    column->setSpacing(6);
    m_scroll->setFrameShape(QFrame::NoFrame);
    m_scroll->setWidgetResizable(true);
    m_scroll->setFocusPolicy(Qt::NoFocus);
    m_scroll->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    m_scroll->setObjectName(QStringLiteral("story_scroll"));
    m_scroll->setAccessibleName(tr("Story"));
    m_scroll->installEventFilter(this);
    m_storyLabel->setObjectName(QStringLiteral("story"));
    m_more->setObjectName(QStringLiteral("story_more"));
    m_minds->setObjectName(QStringLiteral("story_minds"));
    m_minds->hide();
    for (QLabel* label : {m_head, m_minds, m_waitTitle, m_waitWords, m_storyLabel, m_more}) {
        label->setTextFormat(Qt::RichText);
        label->setWordWrap(true);
        label->setAlignment(Qt::AlignTop | Qt::AlignLeft);
    }
    m_scroll->setWidget(m_storyLabel);
    // The card's own ground shows through.
    m_scroll->viewport()->setAutoFillBackground(false);
    m_storyLabel->setAutoFillBackground(false);
    for (QWidget* each :
         std::initializer_list<QWidget*>{m_head, m_minds, m_waitTitle, m_wait, m_waitWords})
        column->addWidget(each);
    column->addWidget(m_scroll, 1);
    column->addWidget(m_more);
    connect(&session, &Session::lookChanged, this, [this] { fill(); });
}

void StoryCard::setButtons(QWidget* buttons) { layout()->addWidget(buttons); }

void StoryCard::setOwnScroll(bool own) {
    if (own == m_ownScroll) return;
    m_ownScroll = own;
    fillStory();
}

void StoryCard::tell(const YardSheetRow& row, int place, int of, const HiveHead& head,
                     std::vector<StoryEntry> story, Day today) {
    const bool same = m_told && m_row.hive.id == row.hive.id;
    m_row = row;
    m_place = place;
    m_of = of;
    m_hiveHead = head;
    // The line of days below says it, and more.
    if (queenWaitOf(row)) m_hiveHead.lookFrom.reset();
    m_story = std::move(story);
    m_today = today;
    m_told = true;
    if (!same) m_open = false;
    fill();
}

void StoryCard::clear() {
    m_told = false;
    m_story.clear();
    m_open = false;
    m_shown = 0;
    for (QLabel* label : {m_head, m_minds, m_waitTitle, m_waitWords, m_storyLabel, m_more})
        label->clear();
    m_minds->hide();
    m_wait->hide();
}

void StoryCard::fill() {
    if (!m_told) return;
    const Look& look = m_session.look();
    const QString mark = fromUtf8(m_row.hive.mark.text());
    const QString muted = look.tone(Tone::Muted).name();
    m_head->setFont(look.font(TextSize::Note));
    m_head->setText(QStringLiteral("<span style='font-size:%1px'><b>%2</b></span>&nbsp; "
                                   "<span style='color:%3'>%4<br>%5</span>")
                        .arg(look.font(TextSize::Title).pixelSize())
                        .arg(mark.toHtmlEscaped(), muted,
                             tr("hive %1 of %2").arg(m_place).arg(m_of),
                             dotOf(m_hiveHead.queen, m_hiveHead.colour, TextSize::Note) +
                                 hiveHeadText(m_hiveHead)
                                     .toHtmlEscaped()
                                     .replace(QLatin1Char('\n'), QStringLiteral("<br>"))));
    m_minds->setFont(look.font(TextSize::Note));
    m_minds->setText(mindsHtml());
    m_minds->setVisible(!m_minds->text().isEmpty());
    const Mind* wait = queenWaitOf(m_row);
    for (QWidget* each : std::initializer_list<QWidget*>{m_waitTitle, m_wait, m_waitWords})
        each->setVisible(wait != nullptr);
    if (wait) {
        m_waitTitle->setFont(look.font(TextSize::Body, true));
        m_waitTitle->setText(tr("Waiting for a young queen"));
        m_waitWords->setFont(look.font(TextSize::Note));
        m_waitWords->setText(waitHtml(*wait, m_today));
        m_wait->show({dateOf(wait->since), dateOf(wait->queen->emergesTo),
                      dateOf(wait->queen->lookFrom), dateOf(wait->queen->testFrameFrom),
                      dateOf(wait->queen->actBy), dateOf(m_today)});
    }
    m_storyLabel->setFont(look.font(TextSize::Body));
    m_more->setFont(look.font(TextSize::Note));
    m_storyLabel->setAccessibleName(tr("Story of %1").arg(mark));
    layout()->activate();
    fillStory();
}

/// What she wears; a colour that is only her year's is on no queen.
QString StoryCard::dotOf(const std::optional<Queen>& queen, const std::string& colour,
                         TextSize size) const {
    return queen && queen->marked == true ? queenDotHtml(fromUtf8(colour), size, m_session.look())
                                          : QString();
}

/// All there is to mind, whole: under the hive there is room for the weightiest only.
QString StoryCard::mindsHtml() const {
    QStringList lines;
    for (const Mind& mind : m_row.minds) {
        if (&mind == queenWaitOf(m_row) || mind.kind == MindKind::NotOpened) continue;
        lines << QStringLiteral("<span style='color:%1'>%2</span>")
                     .arg(m_session.look().tone(mindTone(mind.kind)).name(),
                          mindText(mind, m_today).toHtmlEscaped());
    }
    return lines.join(QStringLiteral("<br>"));
}

QString StoryCard::waitHtml(const Mind& mind, Day today) const {
    const QueenDates& dates = *mind.queen;
    const auto after = [&](Day day) { return (day - dates.emergesTo).count(); };
    const QString text =
        today > dates.actBy
            ? tr("No eggs were seen yet. Uniting or requeening was due %1.")
                  .arg(dayAndMonth(dates.actBy))
            : tr("No eggs on %1: a frame with eggs from %2, unite or requeen by %3 (your %4, %5, "
                 "%6 days after she is out).")
                  .arg(dayAndMonth(dates.lookFrom), dayAndMonth(dates.testFrameFrom),
                       dayAndMonth(dates.actBy))
                  .arg(after(dates.lookFrom))
                  .arg(after(dates.testFrameFrom))
                  .arg(after(dates.actBy));
    return QStringLiteral("<span style='color:%1'>%2</span>")
        .arg(m_session.look().tone(Tone::Muted).name(), text.toHtmlEscaped());
}

QString StoryCard::storyHtml(int entries) const {
    const Look& look = m_session.look();
    QString html;
    for (int i = 0; i < entries; ++i) {
        const StoryEntry& entry = m_story[static_cast<std::size_t>(i)];
        // Of other years the year is said, of this one it is plain.
        const QString day =
            yearOf(entry.on) == yearOf(m_today) ? shortDayText(entry.on) : dayText(entry.on);
        html += QStringLiteral(
                    "<hr style='color:%1'><table width='100%'><tr><td><b><small>%2</small></b></td>"
                    "<td align='right'><small style='color:%3'>%4</small></td></tr></table>%5")
                    .arg(look.tone(Tone::Hairline).name(), day.toHtmlEscaped(),
                         look.tone(Tone::Muted).name(), storyKind(entry).toHtmlEscaped(),
                         (entry.what == StoryEntry::What::QueenCame
                              ? dotOf(entry.queen, entry.colour, TextSize::Body)
                              : QString()) +
                             storySentence(entry).toHtmlEscaped());
    }
    return html;
}

int StoryCard::fitting() const {
    const int all = static_cast<int>(m_story.size());
    if (m_open) return all;
    if (!m_ownScroll) return std::min(all, entriesBelow);
    QTextDocument document;
    document.setDefaultFont(m_storyLabel->font());
    document.setDocumentMargin(0);
    document.setTextWidth(std::max(m_scroll->viewport()->width(), 50));
    int shown = 0;
    while (shown < all) {
        document.setHtml(storyHtml(shown + 1));
        if (document.size().height() > m_scroll->viewport()->height() - 4) break;
        ++shown;
    }
    return std::max(shown, std::min(all, 1));
}

void StoryCard::fillStory() {
    if (!m_told) return;
    m_shown = fitting();
    m_storyLabel->setText(storyHtml(m_shown));
    m_scroll->setFocusPolicy(m_open ? Qt::StrongFocus : Qt::NoFocus);
    // Below the board the card is as high as what it says.
    m_scroll->setMinimumHeight(
        m_ownScroll
            ? 0
            : m_storyLabel->heightForWidth(std::max(m_scroll->viewport()->width(), 50)) + 8);
    if (m_open)
        m_more->setText(tr("Esc: back to the hives"));
    else if (hidden() > 0)
        m_more->setText(
            tr("%1 more, back to %2 (Enter)").arg(hidden()).arg(dayText(m_story.back().on)));
    m_more->setVisible(m_open || hidden() > 0);
}

void StoryCard::openAll() {
    if (!m_told) return;
    m_open = true;
    fillStory();
    m_scroll->setFocus();
    m_scroll->verticalScrollBar()->setValue(0);
}

void StoryCard::closeAll() {
    if (!m_open) return;
    m_open = false;
    fillStory();
    Q_EMIT closed();
}

bool StoryCard::eventFilter(QObject* watched, QEvent* event) {
    if (watched != m_scroll || event->type() != QEvent::KeyPress)
        return QFrame::eventFilter(watched, event);
    auto* key = static_cast<QKeyEvent*>(event);
    const bool scrolls = key->key() == Qt::Key_Up || key->key() == Qt::Key_Down ||
                         key->key() == Qt::Key_PageUp || key->key() == Qt::Key_PageDown;
    if (scrolls && !m_ownScroll) {
        Q_EMIT scrollAsked(key->key());
        return true;
    }
    if (key->key() != Qt::Key_Escape && key->key() != Qt::Key_Return && key->key() != Qt::Key_Enter)
        return false;
    closeAll();
    return true;
}

void StoryCard::resizeEvent(QResizeEvent* event) {
    QFrame::resizeEvent(event);
    layout()->activate();
    fillStory();
}

}  // namespace combwright
