#include "ui/shell/import/import_dialog.h"

#include <QDialogButtonBox>
#include <QFile>
#include <QFileDialog>
#include <QFileInfo>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QSaveFile>
#include <QScrollArea>
#include <QVBoxLayout>

#include "core/words/import_words.h"
#include "core/words/words.h"
#include "ui/shell/import/import_memory.h"

namespace combwright {
namespace {

std::string_view viewOfTable(const QByteArray& bytes) {
    return {bytes.constData(), static_cast<std::size_t>(bytes.size())};
}

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
    below->addWidget(m_summary, 1);
    below->addWidget(buttons);
    down->addLayout(below);

    connect(choosing, &QPushButton::clicked, this, &ImportDialog::choose);
    connect(m_kind, &QComboBox::activated, this, &ImportDialog::kindChosen);
    connect(m_goodOnly, &QCheckBox::toggled, this, &ImportDialog::showSummary);
    connect(m_keep, &QPushButton::clicked, this, &ImportDialog::keep);
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
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

bool ImportDialog::look(const QString& path) {
    QFile file(path);
    if (!file.open(QIODevice::ReadOnly)) {
        m_file->setText(tr("%1 cannot be read: %2.").arg(path, file.errorString()));
        return false;
    }
    m_path = path;
    m_bytes = file.readAll();
    m_file->setText(QFileInfo(path).fileName());
    if (const auto kind = kindOfTable(viewOfTable(m_bytes)))
        m_kind->setCurrentIndex(static_cast<int>(*kind));
    kindChosen();
    m_kind->setFocus();
    return !m_preview->plan().rows.empty();
}

void ImportDialog::kindChosen() {
    m_map = {};
    emptyForm(m_questions);
    m_answers.clear();
    planAnew();
    const ImportPlan& plan = m_preview->plan();
    if (const auto before = rememberedImport(plan.kind, plan.columns)) {
        m_map = *before;
        emptyForm(m_questions);
        m_answers.clear();
        planAnew();
        m_found->setText(m_found->text() + QLatin1Char(' ') +
                         tr("Read as a table of these headings was the last time."));
    }
    showColumns();
}

void ImportDialog::planAnew() {
    if (m_bytes.isEmpty()) return showSummary();
    std::optional<Result<ImportPlan>> made;
    m_session.reading([&] {
        made = planImport(m_session.season(), static_cast<ImportKind>(m_kind->currentIndex()),
                          viewOfTable(m_bytes), m_map);
    });
    if (!made) return;
    m_found->setText(*made ? foundOut(**made) : sentence(made->error()));
    m_preview->show(*made ? **made : ImportPlan{});
    m_table->resizeColumnsToContents();
    m_table->setColumnWidth(1, m_session.look().space(300));
    if (m_preview->rowCount() > 0) m_table->selectRow(0);
    showRow();
    showQuestions();
    showSummary();
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
        auto* label = new QLabel(fromUtf8(column.heading), m_side);
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
            (plan.countOdd() > 0
                 ? QLatin1Char(' ') +
                       tr("Odd in %1 of them: look at those first.").arg(plan.countOdd())
                 : QString()));
    m_goodOnly->setVisible(refused > 0);
    m_keep->setEnabled(adds > 0 && plan.questions.empty() &&
                       (refused == 0 || m_goodOnly->isChecked()));
}

QString ImportDialog::saveRejects() {
    const QFileInfo table(m_path);
    const QString to =
        QFileDialog::getSaveFileName(this, tr("Where shall the refused rows be saved?"),
                                     table.absolutePath() + QLatin1Char('/') +
                                         table.completeBaseName() + QStringLiteral("-refused.csv"),
                                     tr("Tables (*.csv)"));
    if (to.isEmpty()) return {};
    const std::string text = rejectedRows(
        m_preview->plan(), [](const PlannedRow& row) { return sentence(*row.why).toStdString(); });
    QSaveFile file(to);
    if (file.open(QIODevice::WriteOnly) && file.write(QByteArray::fromStdString(text)) >= 0 &&
        file.commit())
        return to;
    m_summary->setText(
        tr("%1 cannot be written: %2. Nothing was kept.").arg(to, file.errorString()));
    return {};
}

void ImportDialog::keep() {
    const bool some = m_preview->plan().count(RowVerdict::Refused) > 0;
    if (some && saveRejects().isEmpty()) return;
    const std::size_t rows = m_preview->plan().count(RowVerdict::WillBeAdded);
    const bool kept = m_session.together([&](Season& season) -> Result<void> {
        const auto step =
            keepImport(season, m_preview->plan(), QFileInfo(m_path).fileName().toStdString(),
                       some ? RefusedRows::StayOut : RefusedRows::HoldUpAll);
        if (!step) return step.error();
        return {};
    });
    if (!kept) {
        m_summary->setText(m_session.lastTold());
        return;
    }
    rememberImport(m_preview->plan().kind, m_preview->plan().columns, m_map);
    m_session.tell(tr("%1 rows of %2 were taken in.").arg(rows).arg(QFileInfo(m_path).fileName()));
    accept();
}

}  // namespace combwright
