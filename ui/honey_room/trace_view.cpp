#include "ui/honey_room/trace_view.h"

#include <QHBoxLayout>
#include <QSignalBlocker>
#include <QVBoxLayout>
#include <algorithm>

#include "core/actions/honey/telling.h"
#include "core/places/pages/page_text.h"
#include "core/places/pages/trace/trace_page.h"
#include "core/places/trace/trace_named.h"
#include "core/words/words.h"
#include "ui/print/print_dialog.h"

namespace combwright {

TraceView::TraceView(Session& session, std::optional<TraceOf> of, Day on, QWidget* parent)
    : QDialog(parent),
      m_session(session),
      m_on(on),
      m_of(new QLineEdit(this)),
      m_which(new QComboBox(this)),
      m_sheets(new QComboBox(this)),
      m_words(new PageBrowser(this)),
      m_reason(new QLabel(this)),
      m_keep(new QPushButton(tr("&Keep as it reads today"), this)),
      m_print(new QPushButton(tr("&Print…"), this)) {
    setObjectName(QStringLiteral("trace"));
    setWindowTitle(tr("Where it came from, and who has it"));
    const Look& look = session.look();
    auto* column = new QVBoxLayout(this);
    column->setSpacing(look.space(8));
    auto* across = new QHBoxLayout;
    m_of->setObjectName(QStringLiteral("trace_of"));
    m_of->setAccessibleName(tr("Trace of"));
    m_of->setPlaceholderText(tr("the code on a jar, a bucket, a lot, a run, a hive, a box; Enter"));
    m_which->setObjectName(QStringLiteral("which"));
    m_which->setAccessibleName(tr("Which of them"));
    m_sheets->setObjectName(QStringLiteral("sheets"));
    m_sheets->setAccessibleName(tr("As of when"));
    for (QComboBox* each : {m_which, m_sheets}) {
        each->setSizeAdjustPolicy(QComboBox::AdjustToContents);
        each->hide();
    }
    across->addWidget(m_of, 1);
    across->addWidget(m_which);
    across->addWidget(m_sheets);
    column->addLayout(across);
    m_words->setObjectName(QStringLiteral("trace_words"));
    column->addWidget(m_words, 1);
    m_reason->setObjectName(QStringLiteral("reason"));
    m_reason->setWordWrap(true);
    m_reason->hide();
    column->addWidget(m_reason);
    auto* buttons = new QHBoxLayout;
    auto* close = new QPushButton(tr("Close"), this);
    m_keep->setObjectName(QStringLiteral("keep_sheet"));
    m_print->setObjectName(QStringLiteral("print"));
    m_print->setProperty("primary", true);
    buttons->addWidget(close);
    buttons->addStretch(1);
    buttons->addWidget(m_keep);
    buttons->addWidget(m_print);
    column->addLayout(buttons);
    // Enter in the line traces; it must not print.
    for (QPushButton* each : {close, m_keep, m_print}) each->setAutoDefault(false);
    connect(close, &QPushButton::clicked, this, &QDialog::reject);
    connect(m_keep, &QPushButton::clicked, this, &TraceView::keep);
    connect(m_print, &QPushButton::clicked, this, &TraceView::printAsked);
    connect(m_of, &QLineEdit::returnPressed, this, &TraceView::find);
    connect(m_which, &QComboBox::currentIndexChanged, this, [this](int at) {
        if (at >= 0 && at < static_cast<int>(m_meant.size()))
            traceIt(m_meant[static_cast<std::size_t>(at)]);
    });
    connect(m_sheets, &QComboBox::currentIndexChanged, this, &TraceView::showSheet);
    connect(&session, &Session::told, this, [this](const QString& text, bool) {
        m_reason->setText(text);
        m_reason->setVisible(!text.isEmpty());
    });
    const QSize room = parent ? parent->window()->size() : QSize(1000, 780);
    resize(std::min(look.space(860), room.width() - 20),
           std::min(look.space(680), room.height() - 20));
    m_keep->setEnabled(false);
    m_print->setEnabled(false);
    if (of) {
        traceIt(*of);
        m_of->setText(m_trace ? fromUtf8(m_trace->name) : QString());
        m_words->setFocus();
    } else {
        m_of->setFocus();
    }
}

void TraceView::find() {
    const std::string name = m_of->text().simplified().toStdString();
    if (name.empty()) return;
    m_reason->hide();
    Result<std::vector<TraceOf>> meant = Refusal{Code::NotFound, "trace", {{"name", name}}};
    if (!m_session.reading([&] { meant = tracesNamed(m_session.read(), name, m_on); })) return;
    if (!meant) {
        m_reason->setText(
            meant.error().code == Code::Ambiguous
                ? tr("Several things are called %1: say more, \"B1 of 27-2\".").arg(m_of->text())
                : tr("Nothing is called %1: no filling, bucket, lot, run, hive or box. What stood "
                     "here before stays.")
                      .arg(m_of->text()));
        m_reason->show();
        m_of->selectAll();
        return;
    }
    m_meant = *meant;
    {
        const QSignalBlocker quiet(m_which);
        m_which->clear();
        for (const TraceOf& each : m_meant) m_which->addItem(word(traceSort(each)));
    }
    m_which->setVisible(m_meant.size() > 1);
    traceIt(m_meant.front());
}

void TraceView::traceIt(const TraceOf& of) {
    m_trace.reset();
    m_session.reading([&] { m_trace = trace(m_session.read(), of, m_on); });
    {
        const QSignalBlocker quiet(m_sheets);
        m_sheets->clear();
        m_sheets->addItem(tr("as of %1").arg(dayText(m_on)));
        if (m_trace)
            for (const KeptSheet& each : m_trace->kept)
                m_sheets->addItem(tr("as kept on %1").arg(dayText(each.on)));
    }
    m_sheets->setVisible(m_sheets->count() > 1);
    showSheet();
}

void TraceView::showSheet() {
    m_keep->setEnabled(m_trace && m_sheets->currentIndex() <= 0);
    m_print->setEnabled(m_trace.has_value());
    if (!m_trace) return;
    m_session.reading([this] {
        const auto kept = static_cast<std::size_t>(std::max(m_sheets->currentIndex() - 1, 0));
        m_page = m_sheets->currentIndex() > 0 && kept < m_trace->kept.size()
                     ? keptSheetPage(m_session.read(), m_trace->kept[kept])
                     : tracePage(m_session.read(), *m_trace);
    });
    m_words->show(m_page, m_session.look());
}

void TraceView::keep() {
    if (!m_trace) return;
    const auto sheet = Name::of(traceSheet);
    std::string called;
    if (!m_session.reading([&] { called = traceSubject(m_session.read(), m_trace->of); })) return;
    const auto subject = Name::of(called);
    if (!sheet || !subject) return;
    KeepSheet deed;
    deed.on = m_on;
    deed.sheet = *sheet;
    deed.subject = *subject;
    deed.text = pageText(m_page).toStdString();
    if (!m_session.run(deed)) return;
    traceIt(m_trace->of);
    m_session.tell(
        tr("Kept as it reads today; above it can be seen again when the records have "
           "moved on."));
}

void showTrace(QWidget* parent, Session& session, const std::optional<TraceOf>& of, Day on) {
    TraceView dialog(session, of, on, parent);
    QObject::connect(&dialog, &TraceView::printAsked, &dialog,
                     [&] { printWithPreview(&dialog, dialog.page(), session.look()); });
    dialog.exec();
}

}  // namespace combwright
