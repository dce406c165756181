#include "ui/season_book/reckoned_view.h"

#include <QVBoxLayout>

#include "core/actions/honey_room/take_rate.h"
#include "core/places/pages/season_book/reckoned_words.h"
#include "core/words/words.h"

namespace combwright {
namespace {

/// Narrower than this, at the text's own size, a line does not fit beside its button.
constexpr int narrowReckoned = 460;

}  // namespace

ReckonedView::ReckonedView(Session& session, QWidget* parent)
    : QWidget(parent), m_session(session) {
    setObjectName(QStringLiteral("reckoned"));
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    m_grid = new QGridLayout;
    m_title = new QLabel(tr("Reckoned and got"), this);
    m_grid->addWidget(m_title, 0, 0);
    int at = 0;
    for (const QString& words : {tr("reckoned"), tr("got")}) {
        auto* head = new QLabel(words, this);
        m_heads.push_back(head);
        m_grid->addWidget(head, 0, ++at, Qt::AlignRight);
    }
    m_grid->setColumnStretch(0, 1);
    column->addLayout(m_grid);
    m_note = new QLabel(this);
    m_note->setObjectName(QStringLiteral("reckoned_note"));
    m_note->setWordWrap(true);
    column->addWidget(m_note);
    column->addStretch(1);
    // Its lines go below each other rather than keep it wide.
    setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Preferred);
    connect(&session, &Session::lookChanged, this, &ReckonedView::sizes);
    sizes();
}

void ReckonedView::sizes() {
    const Look& look = m_session.look();
    m_title->setFont(look.font(TextSize::Body, true));
    for (QLabel* head : m_heads) head->setFont(look.font(TextSize::Note));
    m_note->setFont(look.font(TextSize::Note));
    for (const LineWidgets& line : m_lines) {
        line.runs->setFont(look.font(TextSize::Note));
        QPalette muted = line.runs->palette();
        muted.setColor(QPalette::WindowText, look.tone(Tone::Muted));
        line.runs->setPalette(muted);
    }
    m_grid->setHorizontalSpacing(look.space(12));
    m_grid->setVerticalSpacing(look.space(1));
    layout()->setSpacing(look.space(8));
    arrange();
}

void ReckonedView::arrange() {
    m_narrow = width() < m_session.look().space(narrowReckoned);
    for (QLabel* head : m_heads) head->setVisible(!m_narrow);
    int row = 1;
    for (const LineWidgets& line : m_lines) {
        // Words that wrap ask for less than a line where the page is short of room.
        const bool used = line.name->isVisibleTo(this);
        m_grid->setRowMinimumHeight(row, used ? line.name->sizeHint().height() : 0);
        m_grid->setRowMinimumHeight(
            row + 1, used ? QFontMetrics(m_session.look().font(TextSize::Note)).height() : 0);
        if (m_narrow) {
            m_grid->addWidget(line.name, row, 0, 1, 4);
            m_grid->addWidget(line.runs, row + 1, 0);
            m_grid->addWidget(line.reckoned, row + 1, 1, Qt::AlignRight | Qt::AlignVCenter);
            m_grid->addWidget(line.got, row + 1, 2, Qt::AlignRight | Qt::AlignVCenter);
            m_grid->addWidget(line.take, row + 2, 0, 1, 4, Qt::AlignLeft);
        } else {
            m_grid->addWidget(line.name, row, 0);
            m_grid->addWidget(line.reckoned, row, 1, Qt::AlignRight | Qt::AlignVCenter);
            m_grid->addWidget(line.got, row, 2, Qt::AlignRight | Qt::AlignVCenter);
            m_grid->addWidget(line.runs, row + 1, 0, 1, 3, Qt::AlignTop);
            m_grid->addWidget(line.take, row, 3, 2, 1, Qt::AlignVCenter);
        }
        row += 3;
    }
}

void ReckonedView::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    if (m_narrow != (width() < m_session.look().space(narrowReckoned))) arrange();
}

ReckonedView::LineWidgets ReckonedView::makeLine(std::size_t line) {
    LineWidgets widgets{new QLabel(this), new QLabel(this), new QLabel(this), new QLabel(this),
                        new QPushButton(this)};
    for (QLabel* label : {widgets.reckoned, widgets.got}) label->setTextFormat(Qt::RichText);
    // At large type its words go into a second line.
    widgets.runs->setWordWrap(true);
    widgets.take->setProperty("small", true);
    widgets.take->setObjectName(QStringLiteral("take_%1").arg(line + 1));
    connect(widgets.take, &QPushButton::clicked, this, [this, line] { take(line); });
    return widgets;
}

void ReckonedView::fillLine(const LineWidgets& widgets, const GotLine& line, std::size_t number) {
    const Look& look = m_session.look();
    widgets.reckoned->setText(
        QStringLiteral("<span style='color:%1'>%2</span> →")
            .arg(look.tone(Tone::Muted).name(), gotFigure(line, line.reckoned)));
    widgets.got->setText(
        QStringLiteral("<b>%1</b> <span style='color:%2'>%3</span><sup>%4</sup>")
            .arg(gotFigure(line, line.got), look.tone(Tone::Muted).name(), gotUnit(line))
            .arg(QLatin1Char(letter(line.how))));
    QString runs = line.runs == 1 ? tr("1 run") : tr("%1 runs").arg(line.runs);
    if (line.spread)
        runs += tr(", %1–%2").arg(gotFigure(line, line.spread->low),
                                  gotFigure(line, line.spread->high));
    if (line.boxSpread) runs += tr(", a box ± %1").arg(gotFigure(line, *line.boxSpread));
    if (line.learned) runs += tr("; offered %1").arg(gotOffer(line));
    widgets.name->setText(gotName(line));
    widgets.runs->setText(runs);
    widgets.take->setText(line.taken ? tr("taken") : tr("take for next year  %1").arg(number + 1));
    widgets.take->setAccessibleName(
        line.taken ? tr("%1: %2 %3 is taken")
                         .arg(gotName(line), gotFigure(line, line.offered), gotUnit(line))
                   : tr("Take %2 %3 for %1 from %4 on")
                         .arg(gotName(line), gotFigure(line, line.offered), gotUnit(line),
                              dayText(m_reckoned.from)));
    widgets.take->setToolTip(gotSentence(line) + QLatin1Char('\n') + gotRule(line));
    widgets.take->setAccessibleDescription(gotRule(line));
    // The ring of the focus takes room the words need.
    widgets.take->setMinimumWidth(widgets.take->sizeHint().width() + look.space(8));
}

void ReckonedView::show(const ReckonedAndGot& reckoned) {
    m_reckoned = reckoned;
    const std::size_t count = reckoned.lines.size();
    const bool more = m_lines.size() < count;
    while (m_lines.size() < count) m_lines.push_back(makeLine(m_lines.size()));
    if (more) arrange();
    QStringList sentences;
    bool open = false;
    bool alone = false;
    for (std::size_t i = 0; i < m_lines.size(); ++i) {
        const bool used = i < count;
        if (used) fillLine(m_lines[i], reckoned.lines[i], i);
        const LineWidgets& line = m_lines[i];
        for (QWidget* widget : std::initializer_list<QWidget*>{line.name, line.reckoned, line.got,
                                                               line.runs, line.take})
            widget->setVisible(used);
        line.take->setVisible(used && reckoned.lines[i].learned && !m_readOnly);
        if (!used) continue;
        // What a plain rate is replaced by stands in its line; frames have their fill besides.
        const GotLine& shown = reckoned.lines[i];
        if (shown.what == GotWhat::Frame || shown.what == GotWhat::Fill || shown.taken)
            sentences << gotSentence(shown);
        if (shown.what == GotWhat::Frame && !shown.taken) sentences << gotRule(shown);
        alone = alone || (shown.learned && shown.learned->by == LearnedBy::OwnAlone);
        open = open || (shown.learned && !shown.taken && !m_readOnly);
    }
    if (alone)
        sentences << tr(
            "Where it was never published how far a general figure may be off, your "
            "own mean is offered alone.");
    if (const QString yards = yardRule(reckoned); !yards.isEmpty()) sentences << yards;
    if (open)
        sentences << tr("Nothing changes until you take it; the old value stays in the history.");
    m_note->setText(sentences.join(QLatin1Char(' ')));
    sizes();
}

std::optional<std::size_t> ReckonedView::currentLine() const {
    for (std::size_t i = 0; i < m_lines.size(); ++i)
        if (m_lines[i].take->hasFocus()) return i;
    return std::nullopt;
}

void ReckonedView::take(std::size_t number) {
    if (m_readOnly || number >= m_reckoned.lines.size()) return;
    const GotLine line = m_reckoned.lines[number];
    if (!line.learned) return;
    const QString value = QStringLiteral("%1 %2").arg(gotFigure(line, line.offered), gotUnit(line));
    if (line.taken) {
        m_session.tell(tr("%1: %2 is taken already; Ctrl+Z takes it back while it is the newest "
                          "change.")
                           .arg(gotName(line), value));
        return;
    }
    const SetConstant set = takeRate(m_reckoned, line);
    const QString from = dayText(m_reckoned.from);
    if (m_session.run(set))
        m_session.tell(tr("%1: from %2 on %3. The old value stays in the history; Ctrl+Z takes "
                          "this back.")
                           .arg(gotName(line), from, value));
}

}  // namespace combwright
