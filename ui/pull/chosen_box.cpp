#include "ui/pull/chosen_box.h"

#include <QHBoxLayout>
#include <QKeyEvent>
#include <QPainter>
#include <QVBoxLayout>
#include <algorithm>
#include <cmath>

#include "core/places/pages/pull/pull_words.h"
#include "core/words/figures.h"
#include "core/words/words.h"
#include "ui/common/flat_row.h"
#include "ui/drawing/lettering.h"
#include "ui/drawing/strokes.h"

namespace combwright {
namespace {

// Sizes at the base font, px.
constexpr int buttonsBesideFrom = 560;
constexpr double flatMost = 84;     ///< a frame is not drawn longer than this
constexpr double flatLetters = 18;  ///< room for A and B at the left
constexpr double flatBelow = 17;    ///< for places and "counted"

QPushButton* verdictButton(const char* name, const QString& key, const QString& what,
                           QWidget* parent) {
    auto* button = new QPushButton(QStringLiteral("%1   %2").arg(what, key), parent);
    button->setObjectName(QLatin1String(name));
    button->setAccessibleName(what);
    button->setProperty("small", true);
    return button;
}

}  // namespace

FlatBox::FlatBox(Session& session, QWidget* parent) : QWidget(parent), m_session(session) {
    setObjectName(QStringLiteral("flat_box"));
    setAccessibleName(tr("The chosen box frame by frame"));
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
}

void FlatBox::show(const PullBoxRow* row) {
    m_frames.clear();
    m_places.clear();
    if (row) {
        m_mark = fromUtf8(row->box.mark);
        const FrameRowView all = flatRow(m_mark, row->flat, frameShapeOf(row->frameKind));
        m_frames = all.pointed;
        m_frames.insert(m_frames.end(), all.counted.begin(), all.counted.end());
        for (const FlatFrame& flat : row->flat) m_places.push_back(flat.place);
        setAccessibleDescription(spoken(rowView(0, m_frames.size(), flatMost)));
    }
    fitHeight();
    update();
}

FlatBox::Rows FlatBox::rowsFor(int width) const {
    const Look& look = m_session.look();
    Rows rows;
    if (m_frames.empty()) return rows;
    const double room = std::max(1.0, width - look.px(flatLetters));
    const double gap = look.px(4);
    const auto fits = [&](double frame) {
        return static_cast<std::size_t>(
            std::max(1.0, std::floor((room - look.px(9)) / (frame + gap))));
    };
    // Both sides can be told apart, on two rows where one would be too narrow for it.
    rows.each = m_frames.size();
    if (fits(twoSidesFrom(look)) < rows.each) rows.each = (rows.each + 1) / 2;
    rows.count = (m_frames.size() + rows.each - 1) / rows.each;
    const double each = (room - look.px(9)) / static_cast<double>(rows.each) - gap;
    rows.frameWidth = std::clamp(each, look.px(12), look.px(flatMost));
    const FrameRowView all = rowView(0, m_frames.size(), rows.frameWidth / look.px(1));
    rows.height = frameRowHeight(all, look) + look.px(flatBelow);
    return rows;
}

FrameRowView FlatBox::rowView(std::size_t first, std::size_t count, double frameWidth) const {
    FrameRowView view;
    view.mark = m_mark;
    view.frameWidth = frameWidth;
    for (std::size_t i = first; i < std::min(first + count, m_frames.size()); ++i)
        (m_places[i] ? view.pointed : view.counted).push_back(m_frames[i]);
    return view;
}

void FlatBox::fitHeight() {
    const Rows rows = rowsFor(std::max(width(), 1));
    setFixedHeight(static_cast<int>(std::ceil(rows.height * static_cast<double>(rows.count))));
}

void FlatBox::paintRow(QPainter& painter, const QRectF& box, std::size_t first,
                       const FrameRowView& view) const {
    const Look& look = m_session.look();
    const QRectF frames = box.adjusted(look.px(flatLetters), 0, 0, -look.px(flatBelow));
    paintFrameRow(painter, frames, view, look);
    const auto places = frameRowPlaces(frames, view, look);
    if (places.empty()) return;
    const FrameView& leftmost = view.pointed.empty() ? view.counted.front() : view.pointed.front();
    const auto sides = frameSides(places.front(), leftmost, look);
    const QFont note = look.font(TextSize::Note);
    const QColor muted = look.tone(Tone::Muted);
    if (sides.size() == 2) {
        paintTextIn(painter, {box.left(), sides[0].top(), look.px(flatLetters), sides[0].height()},
                    QStringLiteral("A"), note, muted, Qt::AlignLeft);
        paintTextIn(painter, {box.left(), sides[1].top(), look.px(flatLetters), sides[1].height()},
                    QStringLiteral("B"), note, muted, Qt::AlignLeft);
    }
    const double base = box.bottom() - look.px(4);
    for (std::size_t i = 0; i < view.pointed.size(); ++i)
        paintText(painter, {places[i].center().x(), base},
                  QString::number(m_places[first + i].value_or(0)), note, muted, Qt::AlignHCenter);
    if (view.counted.empty()) return;
    const double from = places[view.pointed.size()].left();
    const double to = places.back().right();
    const QString words = tr("%1 counted").arg(view.counted.size());
    paintText(painter, {(from + to) / 2, base}, fitted(words, note, std::max(to - from, 1.0)), note,
              muted, Qt::AlignHCenter);
}

void FlatBox::paintEvent(QPaintEvent*) {
    if (m_frames.empty()) return;
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const Rows rows = rowsFor(width());
    for (std::size_t row = 0; row < rows.count; ++row) {
        const FrameRowView view =
            rowView(row * rows.each, rows.each, rows.frameWidth / m_session.look().px(1));
        paintRow(painter, QRectF(0, rows.height * static_cast<double>(row), width(), rows.height),
                 row * rows.each, view);
    }
}

ChosenBox::ChosenBox(Session& session, QWidget* parent) : QFrame(parent), m_session(session) {
    setProperty("card", true);
    setObjectName(QStringLiteral("chosen_card"));
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(12, 8, 12, 8);
    column->setSpacing(4);
    m_top = new QBoxLayout(QBoxLayout::LeftToRight);
    m_top->setSpacing(8);
    m_head = new QLabel(this);
    m_head->setObjectName(QStringLiteral("chosen_head"));
    m_head->setWordWrap(true);
    m_head->setTextFormat(Qt::RichText);
    m_top->addWidget(m_head, 1);
    auto* buttons = new QHBoxLayout;
    buttons->setSpacing(8);
    m_take = verdictButton("take_it", tr("T"), tr("Take it"), this);
    m_look = verdictButton("look_first", tr("K"), tr("Look first"), this);
    m_leave = verdictButton("leave_it", tr("L"), tr("Leave it"), this);
    m_back = verdictButton("as_reckoned", tr("Del"), tr("As reckoned"), this);
    m_peg = verdictButton("clip_peg", tr("Enter"), tr("Clip its peg"), this);
    for (QPushButton* button : {m_take, m_look, m_leave, m_back, m_peg}) buttons->addWidget(button);
    buttons->addStretch(0);
    m_top->addLayout(buttons);
    column->addLayout(m_top);
    m_flat = new FlatBox(session, this);
    column->addWidget(m_flat);
    m_ask = new QWidget(this);
    auto* ask = new QVBoxLayout(m_ask);
    ask->setContentsMargins(0, 0, 0, 0);
    m_askWords = new QLabel(m_ask);
    m_askWords->setObjectName(QStringLiteral("ask_words"));
    m_askWords->setWordWrap(true);
    m_reason = new QLineEdit(m_ask);
    m_reason->setObjectName(QStringLiteral("take_reason"));
    m_reason->setAccessibleName(tr("Why it is taken all the same"));
    m_reason->setPlaceholderText(tr("why it is taken all the same"));
    m_reason->installEventFilter(this);
    ask->addWidget(m_askWords);
    ask->addWidget(m_reason);
    column->addWidget(m_ask);
    m_ask->hide();
    column->addWidget(pegRow());
    m_words = new QLabel(this);
    m_words->setObjectName(QStringLiteral("chosen_box"));
    m_words->setWordWrap(true);
    m_words->setTextFormat(Qt::RichText);
    column->addWidget(m_words);

    const auto decide = [this](QPushButton* button, PullVerdict verdict) {
        connect(button, &QPushButton::clicked, this, [this, verdict] {
            if (!m_row) return;
            Q_EMIT done();
            Q_EMIT decided(m_row->box.id.number, verdict, {});
        });
    };
    decide(m_take, PullVerdict::Take);
    decide(m_look, PullVerdict::LookFirst);
    decide(m_leave, PullVerdict::Leave);
    connect(m_back, &QPushButton::clicked, this, [this] {
        if (!m_row) return;
        Q_EMIT done();
        Q_EMIT decisionTakenBack(m_row->box.id.number);
    });
    connect(m_reason, &QLineEdit::returnPressed, this, &ChosenBox::giveReason);
    connect(m_peg, &QPushButton::clicked, this, [this] { askPeg(); });
    connect(m_pegNumber, &QLineEdit::returnPressed, this, &ChosenBox::givePeg);
}

QWidget* ChosenBox::pegRow() {
    m_pegAsk = new QWidget(this);
    auto* row = new QHBoxLayout(m_pegAsk);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(8);
    m_pegNumber = new QLineEdit(m_pegAsk);
    m_pegNumber->setObjectName(QStringLiteral("peg_number"));
    m_pegNumber->setAccessibleName(tr("Number of the peg"));
    m_pegNumber->setMaxLength(4);
    m_pegNumber->setFixedWidth(m_session.look().space(72));
    m_pegNumber->installEventFilter(this);
    m_pegWords = new QLabel(m_pegAsk);
    m_pegWords->setObjectName(QStringLiteral("peg_words"));
    m_pegWords->setWordWrap(true);
    row->addWidget(m_pegNumber);
    row->addWidget(m_pegWords, 1);
    m_pegAsk->hide();
    return m_pegAsk;
}

QString ChosenBox::headText(const PullHiveRow& hive, const PullBoxRow& row) const {
    const QString muted = m_session.look().tone(Tone::Muted).name();
    QString seen;
    if (row.look)
        seen = boxLookText(row);
    else if (row.lookedOnce)
        seen = tr("not looked into since %1").arg(dayAndMonth(*row.lookedOnce));
    else
        seen = tr("never looked into");
    QString text =
        QStringLiteral("<b>%1</b> <span style='color:%3'>%2</span>")
            .arg(tr("%1 on %2").arg(boxPlaceName(hive, row), fromUtf8(hive.hive.mark.text())), seen,
                 muted);
    if (row.gross)
        text += QStringLiteral(" <span style='color:%1'>· %2</span>")
                    .arg(muted, tr("%1<sup>a</sup> to lift, of it %2 box")
                                    .arg(massText(row.gross->grams, How::Assumed),
                                         massText(row.emptyG.value_or(0), How::Assumed)));
    if (row.hold)
        text +=
            QStringLiteral("<br><b style='color:%1'>%2</b>")
                .arg(m_session.look().tone(Tone::Bad).name(), holdText(*row.hold).toHtmlEscaped());
    if (row.fedOn)
        text += QStringLiteral("<br><b style='color:%1'>%2</b>")
                    .arg(m_session.look().tone(Tone::Warn).name(),
                         tr("Sugar was given on %1 while it was on: what was fed ends up in it. "
                            "Keep its honey for the bees.")
                             .arg(dayAndMonth(*row.fedOn)));
    if (!row.reason.empty())
        text += QStringLiteral("<br>%1").arg(
            tr("Taken all the same: %1").arg(fromUtf8(row.reason).toHtmlEscaped()));
    return text;
}

void ChosenBox::resizeEvent(QResizeEvent* event) {
    QFrame::resizeEvent(event);
    // Where type is large the buttons go below what they decide.
    m_top->setDirection(width() >= m_session.look().space(buttonsBesideFrom)
                            ? QBoxLayout::LeftToRight
                            : QBoxLayout::TopToBottom);
}

void ChosenBox::show(const PullHiveRow* hive, const PullBoxRow* row) {
    const bool other = !m_row || !row || m_row->box.id.number != row->box.id.number;
    m_hive = hive ? std::optional(*hive) : std::nullopt;
    m_row = row ? std::optional(*row) : std::nullopt;
    if (other) {
        const bool here = m_pegNumber->hasFocus();
        m_ask->hide();
        m_pegAsk->hide();
        if (here) Q_EMIT done();
    }
    setVisible(hive && row);
    if (!m_row || !m_hive) return;
    m_head->setText(headText(*m_hive, *m_row));
    m_take->setVisible(m_row->verdict != PullVerdict::Take);
    m_look->setVisible(m_row->verdict != PullVerdict::LookFirst);
    m_leave->setVisible(m_row->verdict != PullVerdict::Leave);
    m_back->setVisible(m_row->forced);
    const QString take = m_row->verdict == PullVerdict::Take ? tr("Take it") : tr("Take anyway");
    m_take->setText(QStringLiteral("%1   %2").arg(take, tr("T")));
    m_take->setAccessibleName(take);
    m_flat->show(&*m_row);
    if (other) m_words->clear();
}

void ChosenBox::tell(const std::vector<PullOtherwise>& otherwise) {
    if (!m_row || !m_hive) return;
    QStringList lines;
    for (const PullOtherwise& each : otherwise) {
        const bool now = each.verdict == m_row->verdict;
        const QString lead = each.verdict == PullVerdict::Take
                                 ? (now ? tr("Take:") : tr("Take it anyway:"))
                                 : (now ? tr("Leave:") : tr("Leave it:"));
        lines << QStringLiteral("<b>%1</b> %2")
                     .arg(lead, otherwiseText(*m_hive, *m_row, each).toHtmlEscaped());
    }
    m_words->setText(lines.join(QStringLiteral("<br>")));
}

void ChosenBox::askWhy() {
    if (!m_row || !m_row->hold) return;
    m_askWords->setText(
        QStringLiteral("<b style='color:%1'>%2</b> %3")
            .arg(m_session.look().tone(Tone::Bad).name(),
                 tr("Held back: %1.").arg(holdText(*m_row->hold).toHtmlEscaped()),
                 m_row->refused()
                     ? tr("Honey from it is not for people unless the label of the medicine allows "
                          "it. Write why it is taken all the same and press Enter; Esc leaves it.")
                     : tr("Write why it is taken all the same and press Enter; Esc leaves it.")));
    m_reason->clear();
    m_ask->show();
    m_reason->setFocus();
}

void ChosenBox::giveReason() {
    // Brackets part a reason from the next box when the plan is written down.
    QString reason = m_reason->text().simplified();
    reason.remove(QLatin1Char('(')).remove(QLatin1Char(')'));
    if (reason.isEmpty()) {
        m_session.tell(tr("Without a reason it stays where it is. Write one, or press Esc."), true);
        return;
    }
    m_ask->hide();
    Q_EMIT done();
    Q_EMIT decided(m_row->box.id.number, PullVerdict::Take, reason);
}

void ChosenBox::askPeg(const QString& typed) {
    if (!m_row || !m_hive) return;
    if (m_row->hold && m_row->verdict != PullVerdict::Take) {
        m_session.tell(tr("Held back: %1. To bring it all the same, take it first (T) and say why.")
                           .arg(holdText(*m_row->hold)),
                       true);
        return;
    }
    m_pegWords->setText(
        tr("Peg for %1 on %2. Enter clips it, and the box comes off its hive today; "
           "another number may be typed; Esc leaves it.")
            .arg(boxPlaceName(*m_hive, *m_row), fromUtf8(m_hive->hive.mark.text())));
    m_pegNumber->setText(!typed.isEmpty() ? typed
                         : m_row->peg     ? QString::number(*m_row->peg)
                                          : QString());
    m_pegAsk->show();
    m_pegNumber->setFocus();
    if (typed.isEmpty()) m_pegNumber->selectAll();
}

void ChosenBox::givePeg() {
    bool isNumber = false;
    const qlonglong number = m_pegNumber->text().trimmed().toLongLong(&isNumber);
    if (!m_row || !isNumber || number < 1) {
        m_session.tell(tr("Type the number on the peg, 1 to 999, or press Esc."), true);
        return;
    }
    Q_EMIT pegged(m_row->box.id.number, number);
}

bool ChosenBox::eventFilter(QObject* watched, QEvent* event) {
    const bool ours = watched == m_reason || watched == m_pegNumber;
    if (ours && event->type() == QEvent::KeyPress &&
        static_cast<QKeyEvent*>(event)->key() == Qt::Key_Escape) {
        m_ask->hide();
        m_pegAsk->hide();
        Q_EMIT done();
        return true;
    }
    return QFrame::eventFilter(watched, event);
}

}  // namespace combwright
