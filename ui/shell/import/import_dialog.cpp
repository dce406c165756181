#include "ui/shell/import/import_dialog.h"

#include <QDialogButtonBox>
#include <QFileDialog>
#include <QFileInfo>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QScrollArea>
#include <QVBoxLayout>

#include "core/words/import_words.h"
#include "core/words/words.h"
#include "ui/shell/import/import_memory.h"

namespace combwright {
namespace {

/// What is done sooner needs no telling how far it is.
constexpr int toldAfterMs = 1000;
constexpr int howFarEveryMs = 100;
/// Rows looked at for the width of a column.
constexpr int rowsMeasured = 60;

void emptyForm(QFormLayout* form) {
    while (form->rowCount() > 0) form->removeRow(0);
}

/// What may be answered freely, where the others are a choice.
bool isTyped(const std::string& ask) { return ask == "day" || ask == "yard"; }

}  // namespace

ImportDialog::ImportDialog(Session& session, QWidget* parent)
    : QDialog(parent), m_session(session) {
    const Look& look = session.look();
    setObjectName(QStringLiteral("import_table"));
    setWindowTitle(tr("Import a table"));
    m_preview = new ImportPreview(look, this);
    m_work = new ImportWork(session, this);

    auto* down = new QVBoxLayout(this);
    down->setContentsMargins(look.space(24), look.space(16), look.space(24), look.space(16));
    down->setSpacing(look.space(8));
    auto* above = new QHBoxLayout;
    auto* choosing = new QPushButton(tr("Choose a table…"), this);
    choosing->setObjectName(QStringLiteral("import_choose"));
    choosing->setAutoDefault(true);
    m_file = new QLabel(tr("A table in CSV, as spreadsheets and hive scales write it."), this);
    m_file->setObjectName(QStringLiteral("import_file"));
    m_kind = new QComboBox(this);
    m_kind->setObjectName(QStringLiteral("import_kind"));
    m_kind->setAccessibleName(tr("What the table tells of"));
    for (const std::string_view kind : importKindWords()) m_kind->addItem(importKindText(kind));
    above->addWidget(choosing);
    above->addWidget(m_file, 1);
    above->addWidget(new QLabel(tr("It tells of:"), this));
    above->addWidget(m_kind);
    down->addLayout(above);
    m_found = new QLabel(this);
    m_found->setObjectName(QStringLiteral("import_found"));
    m_found->setWordWrap(true);
    down->addWidget(m_found);

    auto* across = new QHBoxLayout;
    across->setSpacing(look.space(16));
    auto* scroll = new QScrollArea(this);
    scroll->setWidgetResizable(true);
    scroll->setFrameShape(QFrame::NoFrame);
    scroll->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    scroll->setFocusPolicy(Qt::NoFocus);
    m_side = new QWidget(scroll);
    auto* side = new QVBoxLayout(m_side);
    side->setContentsMargins(0, 0, look.space(8), 0);
    const auto head = [&](const QString& text) {
        auto* label = new QLabel(text, m_side);
        label->setFont(look.font(TextSize::Head, true));
        side->addWidget(label);
        return label;
    };
    head(tr("Columns"));
    m_columns = new QFormLayout;
    m_columns->setFieldGrowthPolicy(QFormLayout::AllNonFixedFieldsGrow);
    side->addLayout(m_columns);
    m_asked = head(tr("Asked"));
    m_questions = new QFormLayout;
    m_questions->setRowWrapPolicy(QFormLayout::WrapAllRows);
    m_questions->setFieldGrowthPolicy(QFormLayout::AllNonFixedFieldsGrow);
    side->addLayout(m_questions);
    side->addStretch(1);
    scroll->setWidget(m_side);
    scroll->setMinimumWidth(look.space(300));
    across->addWidget(scroll, 2);
    m_table = new QTableView(this);
    m_table->setObjectName(QStringLiteral("import_rows"));
    m_table->setAccessibleName(tr("The rows, and what becomes of each"));
    m_table->setModel(m_preview);
    m_table->setTabKeyNavigation(false);
    m_table->setSelectionBehavior(QAbstractItemView::SelectRows);
    m_table->setEditTriggers(QAbstractItemView::NoEditTriggers);
    m_table->setWordWrap(false);
    m_table->horizontalHeader()->setResizeContentsPrecision(rowsMeasured);
    m_table->verticalHeader()->hide();
    m_table->verticalHeader()->setDefaultSectionSize(look.space(24));
    auto* rows = new QVBoxLayout;
    rows->addWidget(m_table, 1);
    m_row = new QLabel(this);
    m_row->setObjectName(QStringLiteral("import_row"));
    m_row->setAccessibleName(tr("What becomes of the chosen row"));
    m_row->setWordWrap(true);
    rows->addWidget(m_row);
    across->addLayout(rows, 5);
    down->addLayout(across, 1);
    connect(m_table->selectionModel(), &QItemSelectionModel::currentRowChanged, this,
            &ImportDialog::showRow);

    m_goodOnly = new QCheckBox(tr("Keep the good rows and save the refused ones as a table"), this);
    m_goodOnly->setObjectName(QStringLiteral("import_good_only"));
    down->addWidget(m_goodOnly);
    auto* below = new QHBoxLayout;
    m_summary = new QLabel(this);
    m_summary->setObjectName(QStringLiteral("import_summary"));
    m_summary->setWordWrap(true);
    auto* buttons = new QDialogButtonBox(this);
    m_keep = new QPushButton(tr("Keep"), this);
    m_keep->setObjectName(QStringLiteral("import_keep"));
    m_keep->setProperty("primary", true);
    m_keep->setAutoDefault(false);
    buttons->addButton(m_keep, QDialogButtonBox::AcceptRole);
    buttons->addButton(QDialogButtonBox::Cancel)->setAutoDefault(true);
    m_progress = new QProgressBar(this);
    m_progress->setObjectName(QStringLiteral("import_progress"));
    m_progress->setAccessibleName(tr("How far it is"));
    m_progress->setFixedWidth(look.space(200));
    m_progress->hide();
    below->addWidget(m_summary, 1);
    below->addWidget(m_progress);
    below->addWidget(buttons);
    down->addLayout(below);

    connect(choosing, &QPushButton::clicked, this, &ImportDialog::choose);
    connect(m_kind, &QComboBox::activated, this, &ImportDialog::kindChosen);
    connect(m_goodOnly, &QCheckBox::toggled, this, &ImportDialog::showSummary);
    connect(m_keep, &QPushButton::clicked, this, &ImportDialog::keep);
    connect(buttons, &QDialogButtonBox::rejected, this, &ImportDialog::reject);
    connect(m_work, &ImportWork::looked, this,
            [this](const std::shared_ptr<const ImportLook>& found) { showLook(*found); });
    connect(m_work, &ImportWork::kept, this, &ImportDialog::kept);
    m_howFar.setInterval(howFarEveryMs);
    connect(&m_howFar, &QTimer::timeout, this, &ImportDialog::showHowFar);
    m_still = {choosing, m_kind, m_side, m_goodOnly};
    resize(look.space(1040), look.space(620));
    showSummary();
    choosing->setFocus();
}

void ImportDialog::choose() {
    const QString path = QFileDialog::getOpenFileName(
        this, tr("Which table?"),
        QFileInfo(m_path.isEmpty() ? m_session.path() : m_path).absolutePath(),
        tr("Tables (*.csv *.tsv *.txt);;All files (*)"));
    if (!path.isEmpty()) look(path);
}

void ImportDialog::look(const QString& path) {
    lookAt({path, {}, std::nullopt, static_cast<ImportKind>(m_kind->currentIndex())});
    m_kind->setFocus();
}

void ImportDialog::kindChosen() {
    if (m_bytes.isEmpty()) return;
    lookAt({m_path, m_bytes, static_cast<ImportKind>(m_kind->currentIndex())});
}

void ImportDialog::planAnew() {
    const auto kind = static_cast<ImportKind>(m_kind->currentIndex());
    lookAt({m_path, m_bytes, kind, kind, m_map});
}

void ImportDialog::lookAt(const ImportTable& table) {
    // An answer to what was just asked stays; other questions come with another table or kind.
    if (!table.map) {
        emptyForm(m_questions);
        m_answers.clear();
    }
    m_hasNewColumns = m_hasNewColumns || !table.map;
    m_file->setText(QFileInfo(table.path).fileName());
    m_work->look(table);
    showBusy(true);
}

void ImportDialog::showLook(const ImportLook& look) {
    showBusy(false);
    if (!look.unreadable.isEmpty()) {
        m_file->setText(tr("%1 cannot be read: %2.").arg(look.path, look.unreadable));
        return showSummary();
    }
    m_path = look.path;
    m_file->setText(QFileInfo(m_path).fileName());
    m_bytes = look.bytes;
    m_map = look.map;
    m_kind->setCurrentIndex(static_cast<int>(look.kind));
    if (!m_session.reading([&look] {
            if (look.trouble) std::rethrow_exception(look.trouble);
        }))
        return m_summary->setText(m_session.lastTold());
    m_preview->show(look.plan ? look.plan : std::make_shared<const ImportPlan>());
    m_found->setText(look.plan ? foundOut(*look.plan) : sentence(*look.refused));
    if (look.isRemembered)
        m_found->setText(m_found->text() + QLatin1Char(' ') +
                         tr("Read as a table of these headings was the last time."));
    m_table->resizeColumnsToContents();
    m_table->setColumnWidth(1, m_session.look().space(300));
    if (m_preview->rowCount() > 0) m_table->selectRow(0);
    if (std::exchange(m_hasNewColumns, false)) showColumns();
    showRow();
    showQuestions();
    showSummary();
}

void ImportDialog::showBusy(bool isBusy) {
    m_since.start();
    if (isBusy)
        m_howFar.start();
    else
        m_howFar.stop();
    m_progress->hide();
    m_keep->setEnabled(false);
    for (QWidget* each : m_still) each->setEnabled(!m_work->isKeeping());
}

void ImportDialog::showHowFar() {
    if (m_since.elapsed() < toldAfterMs) return;
    m_progress->setValue(m_work->percent());
    if (m_progress->isVisible()) return;
    m_progress->show();
    m_summary->setText(m_work->isKeeping() ? tr("The rows are being kept …")
                                           : tr("The rows are being looked at …"));
}

void ImportDialog::reject() {
    const bool keeps = m_work->isKeeping();
    m_work->stop();
    if (!keeps) return QDialog::reject();
    m_howFar.stop();
    m_summary->setText(tr("Stopping; nothing will be kept …"));
}

QString ImportDialog::foundOut(const ImportPlan& plan) {
    const QString parter = plan.parter == '\t'  ? tr("tabs")
                           : plan.parter == ',' ? tr("commas")
                           : plan.parter == ';' ? tr("semicolons")
                                                : tr("strokes");
    return plan.header ? tr("Read as %1, parted by %2; the first row holds the headings.")
                             .arg(fromUtf8(plan.encoding), parter)
                       : tr("Read as %1, parted by %2; there are no headings.")
                             .arg(fromUtf8(plan.encoding), parter);
}

void ImportDialog::showColumns() {
    emptyForm(m_columns);
    const ImportPlan& plan = m_preview->plan();
    for (std::size_t i = 0; i < plan.columns.size(); ++i) {
        const PlannedColumn& column = plan.columns[i];
        auto* fields = new QComboBox(m_side);
        fields->setObjectName(QStringLiteral("import_column_%1").arg(i));
        fields->setAccessibleName(tr("Column %1").arg(fromUtf8(column.heading)));
        fields->addItem(tr("passed over"), QString());
        for (const ImportField& field : importFields(plan.kind)) {
            fields->addItem(importFieldText(field.key), fromUtf8(field.key));
            if (field.key == column.field) fields->setCurrentIndex(fields->count() - 1);
        }
        connect(fields, &QComboBox::activated, this, [this, fields, heading = column.heading] {
            m_map.columns[heading] = fields->currentData().toString().toStdString();
            planAnew();
        });
        QString heading = fromUtf8(column.heading);
        if (column.days)
            heading += QStringLiteral(" · ") +
                       (column.days == DayOrder::MonthFirst ? tr("month first") : tr("day first"));
        auto* label = new QLabel(heading, m_side);
        label->setBuddy(fields);
        m_columns->addRow(label, fields);
    }
}

void ImportDialog::showQuestions() {
    QStringList missing;
    for (const ImportQuestion& question : m_preview->plan().questions) {
        if (question.ask == "columns")
            missing << importQuestionText("columns", fromUtf8(question.field), {});
        else if (!m_answers.contains(question.ask))
            addQuestion(question);
    }
    m_asked->setText(m_answers.empty() && missing.isEmpty() ? QString() : tr("Asked"));
    m_found->setText(missing.isEmpty()
                         ? m_found->text()
                         : m_found->text() + QLatin1Char(' ') + missing.join(QLatin1Char(' ')));
}

void ImportDialog::addQuestion(const ImportQuestion& question) {
    auto* says = new QLabel(
        importQuestionText(question.ask, fromUtf8(question.field), fromUtf8(question.example)),
        m_side);
    says->setWordWrap(true);
    QWidget* field = nullptr;
    if (isTyped(question.ask) && question.choices.empty()) {
        auto* typed = new QLineEdit(m_side);
        if (question.ask == "day") typed->setPlaceholderText(tr("year-month-day"));
        connect(typed, &QLineEdit::editingFinished, this,
                [this, typed, ask = question.ask] { answer(ask, typed->text()); });
        field = typed;
    } else {
        auto* choices = new QComboBox(m_side);
        choices->addItem(tr("choose"), QString());
        for (const std::string& choice : question.choices)
            choices->addItem(importAnswerText(question.ask, fromUtf8(choice)), fromUtf8(choice));
        connect(choices, &QComboBox::activated, this, [this, choices, ask = question.ask] {
            answer(ask, choices->currentData().toString());
        });
        field = choices;
    }
    field->setObjectName(QStringLiteral("import_ask_") + fromUtf8(question.ask));
    field->setAccessibleName(says->text());
    says->setBuddy(field);
    m_questions->addRow(says, field);
    m_answers[question.ask] = field;
}

void ImportDialog::answer(const std::string& ask, const QString& text) {
    QJsonObject json = toJson(m_map);
    json.remove(fromUtf8(ask));
    if (!text.isEmpty())
        json.insert(fromUtf8(ask), ask == "add_yards" ? QJsonValue(text == QLatin1String("true"))
                                                      : QJsonValue(text));
    const auto map = importMapOf(json, static_cast<ImportKind>(m_kind->currentIndex()));
    if (!map) {
        m_summary->setText(sentence(map.error()));
        return;
    }
    m_map = *map;
    planAnew();
}

/// The whole of it, for a column is too narrow for a reason.
void ImportDialog::showRow() {
    const QModelIndex at = m_table->currentIndex();
    m_row->setText(at.isValid() ? tr("Line %1: %2")
                                      .arg(at.siblingAtColumn(0).data().toString(),
                                           at.siblingAtColumn(1).data().toString())
                                : QString());
}

void ImportDialog::showSummary() {
    const ImportPlan& plan = m_preview->plan();
    const auto adds = plan.count(RowVerdict::WillBeAdded);
    const auto refused = plan.count(RowVerdict::Refused);
    if (plan.rows.empty())
        m_summary->setText(QString());
    else
        m_summary->setText(
            tr("%1 will be added, %2 already there, %3 refused, %4 asked. One step "
               "back takes all of it out again.")
                .arg(adds)
                .arg(plan.count(RowVerdict::AlreadyThere))
                .arg(refused)
                .arg(plan.count(RowVerdict::Asked)) +
            (plan.count(RowVerdict::ChangedSince) > 0
                 ? QLatin1Char(' ') + tr("%1 were changed here since they came in and stay as "
                                         "they are.")
                                          .arg(plan.count(RowVerdict::ChangedSince))
                 : QString()) +
            (plan.countOdd() > 0
                 ? QLatin1Char(' ') +
                       tr("Odd in %1 of them: look at those first.").arg(plan.countOdd())
                 : QString()));
    m_goodOnly->setVisible(refused > 0);
    m_keep->setEnabled(adds > 0 && plan.questions.empty() &&
                       (refused == 0 || m_goodOnly->isChecked()));
}

QString ImportDialog::askForRejects() {
    const QFileInfo table(m_path);
    return QFileDialog::getSaveFileName(this, tr("Where shall the refused rows be saved?"),
                                        table.absolutePath() + QLatin1Char('/') +
                                            table.completeBaseName() +
                                            QStringLiteral("-refused.csv"),
                                        tr("Tables (*.csv)"));
}

void ImportDialog::keep() {
    QString rejects;
    if (m_preview->plan().count(RowVerdict::Refused) > 0) {
        rejects = askForRejects();
        if (rejects.isEmpty()) return;
    }
    m_work->keep({m_preview->shownPlan(), QFileInfo(m_path).fileName(), rejects});
    if (!m_work->isKeeping()) return m_summary->setText(m_session.lastTold());
    showBusy(true);
}

void ImportDialog::kept(bool isKept) {
    showBusy(false);
    showSummary();
    if (!isKept) return m_summary->setText(m_session.lastTold());
    const ImportPlan& plan = m_preview->plan();
    rememberImport(plan.kind, plan.columns, m_map);
    m_session.tell(tr("%1 rows of %2 were taken in.")
                       .arg(plan.count(RowVerdict::WillBeAdded))
                       .arg(QFileInfo(m_path).fileName()));
    accept();
}

}  // namespace combwright
