#include "ui/storeroom/bench_panel.h"

#include <QKeyEvent>
#include <QVBoxLayout>

#include "core/model/frames/frame.h"
#include "core/words/kind_words.h"
#include "core/words/words.h"

namespace combwright {
namespace {

QString coloured(const QString& text, const QColor& color) {
    return QStringLiteral("<span style=\"color:%1\">%2</span>").arg(color.name(), text);
}

/// "W web of moth", no line broken between letter and word.
QString keyed(const QString& key, const QString& what) {
    QString tied = what;
    tied.replace(QLatin1Char(' '), QChar(QChar::Nbsp));
    return QStringLiteral("<b>%1</b>&nbsp;%2").arg(key, tied.toHtmlEscaped());
}

QString legend() {
    QStringList letters;
    for (const Fault& fault : faults())
        letters << keyed(QString(QLatin1Char(fault.letter)), faultText(fault));
    QStringList digits;
    int digit = 0;
    for (const std::string_view each : Choices<Verdict>::words)
        digits << keyed(QString::number(++digit), choiceText(each));
    return letters.join(QStringLiteral("&ensp; ")) + QStringLiteral("<br>") +
           digits.join(QStringLiteral("&ensp; "));
}

}  // namespace

BenchPanel::BenchPanel(Session& session, QWidget* parent)
    : QWidget(parent),
      m_session(session),
      m_head(new QLabel(this)),
      m_alarm(new QLabel(this)),
      m_row(new BenchRow(session, this)),
      m_facts(new QLabel(this)),
      m_because(new QLabel(this)),
      m_correct(new QLabel(this)),
      m_line(new QLineEdit(this)),
      m_why(new QLineEdit(this)),
      m_echo(new QLabel(this)),
      m_letters(new QLabel(this)),
      m_evening(new QLabel(this)) {
    setObjectName(QStringLiteral("bench"));
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(4);
    for (QWidget* each :
         std::initializer_list<QWidget*>{m_head, m_alarm, m_row, m_because, m_facts, m_correct,
                                         m_line, m_why, m_echo, m_letters, m_evening})
        column->addWidget(each);
    for (QLabel* each :
         {m_head, m_alarm, m_facts, m_because, m_correct, m_echo, m_letters, m_evening}) {
        each->setWordWrap(true);
        each->setTextFormat(Qt::RichText);
    }
    m_echo->setObjectName(QStringLiteral("bench_echo"));
    m_evening->setObjectName(QStringLiteral("bench_evening"));
    m_alarm->setObjectName(QStringLiteral("bench_alarm"));
    m_line->setObjectName(QStringLiteral("bench_line"));
    m_line->setAccessibleName(tr("Counts of the box on the bench"));
    m_line->setPlaceholderText(
        tr("7 keep, 1 web, 1 broken; scraped, wax 70, propolis 12, "
           "years 24x3 25x5"));
    m_correct->setObjectName(QStringLiteral("bench_correct"));
    m_why->setObjectName(QStringLiteral("bench_why"));
    m_why->setAccessibleName(tr("Why it is corrected"));
    m_why->setPlaceholderText(tr("why: counted wrong, another box, scale misread"));
    for (QWidget* each : std::initializer_list<QWidget*>{m_correct, m_why}) each->hide();
    for (QLineEdit* each : {m_line, m_why}) each->installEventFilter(this);
    connect(m_line, &QLineEdit::textChanged, this, &BenchPanel::readBack);
    connect(m_line, &QLineEdit::returnPressed, this, [this] {
        const QString typed = m_line->text().trimmed();
        if (typed.isEmpty()) return;
        if (correcting())
            m_why->setFocus(Qt::OtherFocusReason);
        else
            Q_EMIT lineEntered(typed);
    });
    connect(m_why, &QLineEdit::returnPressed, this,
            [this] { Q_EMIT lineCorrected(m_line->text().trimmed(), m_why->text().simplified()); });
    connect(m_row, &BenchRow::frameClicked, this, &BenchPanel::frameClicked);
    connect(&session, &Session::lookChanged, this, &BenchPanel::restyle);
    restyle();
}

void BenchPanel::restyle() {
    const Look& look = m_session.look();
    for (QLabel* each : {m_facts, m_because, m_correct, m_echo, m_letters, m_evening})
        each->setFont(look.font(TextSize::Note));
    m_letters->setText(legend());
    readBack();
}

void BenchPanel::show(const std::optional<BenchView>& view) {
    const Look& look = m_session.look();
    for (QWidget* each : std::initializer_list<QWidget*>{m_row, m_line})
        each->setVisible(view.has_value());
    if (!view) {
        m_head->setText(QStringLiteral("<b>%1</b>").arg(tr("On the bench: nothing")));
        for (QLabel* each : {m_alarm, m_facts, m_because, m_correct, m_echo}) each->hide();
        m_why->hide();
        return;
    }
    m_head->setText(QStringLiteral("<b>%1</b>&emsp;%2")
                        .arg(tr("On the bench: %1").arg(view->mark.toHtmlEscaped()),
                             coloured(view->head.toHtmlEscaped(), look.tone(Tone::Muted))));
    m_alarm->setText(coloured(view->alarm.toHtmlEscaped(), look.tone(Tone::Warn)));
    m_alarm->setVisible(!view->alarm.isEmpty());
    m_facts->setText(view->facts.toHtmlEscaped());
    m_because->setText(coloured(view->why.toHtmlEscaped(), look.tone(Tone::Muted)));
    m_because->setVisible(!view->why.isEmpty());
    m_row->show(view->frames, view->current);
    m_facts->setVisible(!view->facts.isEmpty() && m_line->text().trimmed().isEmpty());
}

void BenchPanel::showEvening(const QString& sum, const QString& gone) {
    m_evening->setToolTip(gone);
    m_evening->setAccessibleDescription(gone);
    m_evening->setText(
        QStringLiteral("<b>%1</b>&emsp;%2").arg(tr("This evening"), sum.toHtmlEscaped()));
    m_evening->setVisible(!sum.isEmpty());
}

void BenchPanel::beginLine(const QString& text) {
    for (QWidget* each : std::initializer_list<QWidget*>{m_correct, m_why}) each->hide();
    m_why->clear();
    m_line->setText(text);
    m_line->setFocus(Qt::OtherFocusReason);
    m_line->deselect();
    m_line->end(false);
}

void BenchPanel::beginCorrection(const QString& text, const QString& why, const QString& says) {
    beginLine({});
    m_correct->setText(coloured(says.toHtmlEscaped(), m_session.look().tone(Tone::Accent)));
    for (QWidget* each : std::initializer_list<QWidget*>{m_correct, m_why}) each->show();
    m_why->setText(why);
    m_line->setText(text);
}

void BenchPanel::clearLine() {
    for (QWidget* each : std::initializer_list<QWidget*>{m_correct, m_why}) each->hide();
    m_why->clear();
    m_line->clear();
}

void BenchPanel::readBack() {
    const Look& look = m_session.look();
    const QString typed = m_line->text().trimmed();
    if (typed.isEmpty() || !m_reader) {
        m_echo->hide();
        m_facts->setVisible(!m_facts->text().isEmpty() && m_line->isVisible());
        return;
    }
    // What was last seen of the box gives way to what is being said of it now.
    m_facts->hide();
    m_echo->show();
    const Echo echo = m_reader(typed);
    m_echo->setText(
        coloured(echo.words.toHtmlEscaped(), look.tone(echo.bad ? Tone::Warn : Tone::Ink)));
}

bool BenchPanel::eventFilter(QObject* watched, QEvent* event) {
    if ((watched == m_line || watched == m_why) && event->type() == QEvent::KeyPress &&
        static_cast<QKeyEvent*>(event)->key() == Qt::Key_Escape) {
        // Told first: what is left is the correction or the new line, and its draft goes with it.
        Q_EMIT lineLeft();
        clearLine();
        return true;
    }
    return QWidget::eventFilter(watched, event);
}

}  // namespace combwright
