#include "ui/honey_room/labels_dialog.h"

#include <QFormLayout>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLocale>
#include <QMouseEvent>
#include <QPainter>
#include <QVBoxLayout>
#include <algorithm>
#include <cmath>

#include "core/actions/honey/telling.h"
#include "core/places/pages/goods/label_pages.h"
#include "core/words/words.h"
#include "ui/print/label_painter.h"
#include "ui/print/print_dialog.h"
#include "ui/shell/form_reading.h"

namespace combwright {

LabelCells::LabelCells(Session& session, QWidget* parent) : QWidget(parent), m_session(session) {
    setObjectName(QStringLiteral("cells"));
    setFocusPolicy(Qt::StrongFocus);
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Expanding);
}

void LabelCells::show(const LabelSheet& empty, const std::optional<LabelSheet>& labels) {
    m_empty = empty;
    m_labels = labels;
    m_start = std::clamp(m_start, 1, std::max(1, cells()));
    setAccessibleName(
        tr("The sheet: %1 by %2 labels").arg(m_empty.grid.columns).arg(m_empty.grid.rows));
    setAccessibleDescription(
        tr("The first label is printed into cell %1, row %2, column %3. Arrow keys move it.")
            .arg(m_start)
            .arg((m_start - 1) / std::max(1, m_empty.grid.columns) + 1)
            .arg((m_start - 1) % std::max(1, m_empty.grid.columns) + 1));
    update();
}

void LabelCells::setStart(int cell) { m_start = std::clamp(cell, 1, std::max(1, cells())); }

QSize LabelCells::sizeHint() const {
    const int space = m_session.look().space(8);
    return {space * 38, space * 54};
}

QSize LabelCells::minimumSizeHint() const {
    const int space = m_session.look().space(8);
    return {space * 22, space * 31};
}

/// Pixels a millimetre: the whole sheet in sight.
double LabelCells::scale() const {
    if (m_empty.paper.widthMm <= 0 || m_empty.paper.heightMm <= 0) return 1;
    return std::min((width() - 4) / m_empty.paper.widthMm, (height() - 4) / m_empty.paper.heightMm);
}

QRectF LabelCells::cellRect(int cell) const {
    const auto found = std::find_if(m_empty.placed.begin(), m_empty.placed.end(),
                                    [cell](const LabelAt& each) { return each.cell == cell; });
    if (found == m_empty.placed.end()) return {};
    return {found->leftMm, found->topMm, m_empty.grid.cellWidthMm, m_empty.grid.cellHeightMm};
}

void LabelCells::paintEvent(QPaintEvent*) {
    const Look& look = m_session.look();
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.translate(2, 2);
    painter.scale(scale(), scale());
    const double hair = 1.0 / scale();
    const QRectF paper(0, 0, m_empty.paper.widthMm, m_empty.paper.heightMm);
    // Paper is paper, in a dark window too.
    const Look ink = paperLook(look.base);
    painter.setPen(QPen(look.tone(Tone::Line), hair));
    painter.setBrush(ink.tone(Tone::Ground));
    painter.drawRect(paper);
    const auto outline = [&](const QRectF& cell) {
        if (m_empty.grid.round)
            painter.drawEllipse(cell);
        else
            painter.drawRoundedRect(cell, 1.5, 1.5);
    };
    for (int cell = 1; cell <= cells(); ++cell) {
        painter.setPen(QPen(ink.tone(Tone::Hairline), hair));
        painter.setBrush(cell < m_start ? QBrush(ink.tone(Tone::Hairline), Qt::BDiagPattern)
                                        : QBrush(Qt::NoBrush));
        outline(cellRect(cell));
    }
    if (m_labels) {
        const Page page = labelsPage(*m_labels);
        if (const LabelsBlock* block = labelsOf(page)) {
            painter.save();
            painter.setClipRect(paper);
            paintLabelSheet(painter, ink, *block, 0);
            painter.restore();
        }
    }
    painter.setBrush(Qt::NoBrush);
    painter.setPen(QPen(look.tone(Tone::Accent), (hasFocus() ? 3 : 2) * hair));
    outline(cellRect(m_start));
    if (!hasFocus()) return;
    painter.setPen(QPen(look.tone(Tone::Accent), 2 * hair));
    painter.drawRect(paper);
}

void LabelCells::choose(int cell) {
    if (cell < 1 || cell > cells() || cell == m_start) return;
    m_start = cell;
    Q_EMIT startChosen(cell);
}

void LabelCells::keyPressEvent(QKeyEvent* event) {
    switch (event->key()) {
        case Qt::Key_Left:
            return choose(m_start - 1);
        case Qt::Key_Right:
            return choose(m_start + 1);
        case Qt::Key_Up:
            return choose(m_start - m_empty.grid.columns);
        case Qt::Key_Down:
            return choose(m_start + m_empty.grid.columns);
        case Qt::Key_Home:
            return choose(1);
        case Qt::Key_End:
            return choose(cells());
        default:
            QWidget::keyPressEvent(event);
    }
}

void LabelCells::mousePressEvent(QMouseEvent* event) {
    const QPointF at = (event->position() - QPointF(2, 2)) / scale();
    for (int cell = 1; cell <= cells(); ++cell)
        if (cellRect(cell).contains(at)) return choose(cell);
}

LabelsDialog::LabelsDialog(QWidget* parent, Session& session, Id<Bottling> filling, Day on)
    : QDialog(parent),
      m_session(session),
      m_filling(filling),
      m_on(on),
      m_cells(new LabelCells(session, this)),
      m_said(new QLabel(this)) {
    const Look& look = session.look();
    setObjectName(QStringLiteral("labels_dialog"));
    auto* column = new QVBoxLayout(this);
    column->setSpacing(look.space(8));
    auto* across = new QHBoxLayout;
    across->setSpacing(look.space(16));
    across->addWidget(m_cells, 2);
    across->addWidget(buildFields(), 3);
    column->addLayout(across, 1);
    m_said->setObjectName(QStringLiteral("reason"));
    m_said->setWordWrap(true);
    m_said->hide();
    column->addWidget(m_said);
    auto* buttons = new QHBoxLayout;
    m_close = new QPushButton(tr("Close"), this);
    m_close->setObjectName(QStringLiteral("close"));
    m_words = new QPushButton(tr("What stands on &them…"), this);
    m_words->setObjectName(QStringLiteral("words"));
    m_print = new QPushButton(tr("&Preview and print…"), this);
    m_print->setObjectName(QStringLiteral("print"));
    m_print->setProperty("primary", true);
    buttons->addWidget(m_close);
    buttons->addStretch(1);
    buttons->addWidget(m_words);
    buttons->addWidget(m_print);
    column->addLayout(buttons);
    for (QPushButton* each : {m_close, m_words, m_print, m_offset, m_calibrate})
        each->setAutoDefault(false);
    offerGrids();
    const auto see = [this] { this->look(); };
    connect(m_grid, &QComboBox::currentIndexChanged, this, [this] {
        m_right->clear();
        m_down->clear();
        this->look();
    });
    connect(m_kind, &QComboBox::currentIndexChanged, this, see);
    connect(m_count, &QLineEdit::textChanged, this, see);
    connect(m_cells, &LabelCells::startChosen, this, see);
    connect(m_offset, &QPushButton::clicked, this, &LabelsDialog::measured);
    connect(m_calibrate, &QPushButton::clicked, this, &LabelsDialog::calibrate);
    connect(m_words, &QPushButton::clicked, this, &LabelsDialog::askForWords);
    connect(m_print, &QPushButton::clicked, this, &LabelsDialog::print);
    connect(m_close, &QPushButton::clicked, this, &QDialog::reject);
    connect(&session, &Session::told, this, &LabelsDialog::say);
    const std::initializer_list<QWidget*> order{m_grid,   m_cells, m_kind,   m_count,
                                                m_right,  m_down,  m_offset, m_calibrate,
                                                m_remind, m_close, m_words,  m_print};
    QWidget* before = nullptr;
    for (QWidget* each : order) {
        if (before) setTabOrder(before, each);
        before = each;
    }
    const QSize room = parent ? parent->window()->size() : QSize(1280, 800);
    resize(std::min(look.space(920), room.width() - 20),
           std::min(look.space(640), room.height() - 20));
    this->look();
    m_cells->setFocus();
}

QWidget* LabelsDialog::buildFields() {
    const Look& look = m_session.look();
    auto* side = new QWidget(this);
    auto* column = new QVBoxLayout(side);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(look.space(8));
    auto* form = new QFormLayout;
    form->setRowWrapPolicy(QFormLayout::WrapLongRows);
    const auto line = [&](const QString& label, const char* name, const QString& example) {
        auto* edit = new QLineEdit(side);
        edit->setObjectName(QLatin1String(name));
        edit->setAccessibleName(label);
        edit->setPlaceholderText(example);
        form->addRow(label, edit);
        return edit;
    };
    const auto choice = [&](const QString& label, const char* name) {
        auto* box = new QComboBox(side);
        box->setObjectName(QLatin1String(name));
        box->setAccessibleName(label);
        box->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
        box->setMinimumContentsLength(12);
        form->addRow(label, box);
        return box;
    };
    m_grid = choice(tr("Sheet"), "grid");
    m_where = new QLabel(side);
    m_where->setObjectName(QStringLiteral("where"));
    m_where->setWordWrap(true);
    form->addRow(m_where);
    m_kind = choice(tr("Of the kind"), "kind");
    m_count = line(tr("How many of each"), "count", tr("left empty: one a jar"));
    m_right = line(tr("Too far right, mm"), "right", tr("as the calibration page shows it"));
    m_down = line(tr("Too far down, mm"), "down", tr("-1.5 where too far up"));
    column->addLayout(form);
    auto* buttons = new QHBoxLayout;
    m_calibrate = new QPushButton(tr("&Calibration page…"), side);
    m_calibrate->setObjectName(QStringLiteral("calibrate"));
    m_offset = new QPushButton(tr("&Keep what was measured"), side);
    m_offset->setObjectName(QStringLiteral("measured"));
    buttons->addWidget(m_calibrate);
    buttons->addWidget(m_offset);
    buttons->addStretch(1);
    column->addLayout(buttons);
    m_remind = new QScrollArea(side);
    m_remind->setObjectName(QStringLiteral("remind"));
    m_remind->setAccessibleName(tr("What must not be forgotten"));
    m_remind->setProperty("card", true);
    m_remind->setWidgetResizable(true);
    m_remind->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    m_reminders = new QLabel(m_remind);
    m_reminders->setObjectName(QStringLiteral("reminders"));
    m_reminders->setTextFormat(Qt::RichText);
    m_reminders->setWordWrap(true);
    m_reminders->setAlignment(Qt::AlignTop | Qt::AlignLeft);
    m_reminders->setMargin(look.space(8));
    m_reminders->setAutoFillBackground(false);
    m_remind->setWidget(m_reminders);
    m_remind->viewport()->setAutoFillBackground(false);
    column->addWidget(m_remind, 1);
    return side;
}

void LabelsDialog::offerGrids() {
    const Read& file = m_session.read();
    for (const std::string& id : labelGridsOf({})) {
        const auto sheet = emptyLabelSheet(file, id, m_on);
        if (!sheet) continue;
        m_grid->addItem((sheet->grid.round ? tr("%1, %2 by %3 round, %4 by %5 mm")
                                           : tr("%1, %2 by %3, %4 by %5 mm"))
                            .arg(fromUtf8(sheet->grid.paper))
                            .arg(sheet->grid.columns)
                            .arg(sheet->grid.rows)
                            .arg(QLocale().toString(sheet->grid.cellWidthMm, 'g', 4),
                                 QLocale().toString(sheet->grid.cellHeightMm, 'g', 4)),
                        fromUtf8(id));
    }
    m_grid->setCurrentIndex(std::max(0, m_grid->findData(fromUtf8(usualLabelGrid(file, m_on)))));
    m_kind->addItem(tr("every kind of the filling"), 0);
    for (const BottledJars& each : file.where<BottledJars>({is("bottling", m_filling)}))
        if (const auto kind = file.find(each.kind))
            m_kind->addItem(fromUtf8(kind->name.text()), static_cast<qlonglong>(kind->id.number));
}

LabelsAsked LabelsDialog::asked() const {
    LabelsAsked asked{m_filling};
    asked.kind = chosenId<GoodsKind>(m_kind);
    asked.grid = grid();
    asked.startCell = m_cells->start();
    std::optional<Count> count;
    if (readsAs(m_count->text(), count) && count) asked.count = count->value();
    return asked;
}

void LabelsDialog::look() {
    const Read& file = m_session.read();
    const auto empty = emptyLabelSheet(file, grid(), m_on);
    if (!empty) return say(sentence(empty.error()), true);
    m_cells->show(*empty, std::nullopt);
    const auto sheet = labelSheet(file, asked(), m_on);
    m_sheet = sheet ? std::optional(*sheet) : std::nullopt;
    m_cells->show(*empty, m_sheet);
    m_print->setEnabled(m_sheet.has_value());
    const QString offset =
        empty->rightMm == 0 && empty->downMm == 0
            ? tr("Nothing was measured for this sheet: print the calibration page on plain paper "
                 "first.")
            : tr("%1 mm to the right and %2 mm down are taken back.")
                  .arg(QLocale().toString(empty->rightMm, 'f', 1),
                       QLocale().toString(empty->downMm, 'f', 1));
    if (!m_sheet) {
        m_where->setText(offset);
        return say(sentence(sheet.error()), true);
    }
    say({}, false);
    setWindowTitle(tr("Labels of %1").arg(fromUtf8(m_sheet->bottling.code.text())));
    m_where->setText(
        tr("%1 labels on %2, the first in cell %3 of %4; arrow keys on the sheet move "
           "it. %5")
            .arg(m_sheet->placed.size())
            .arg(m_sheet->sheets == 1 ? tr("1 sheet") : tr("%1 sheets").arg(m_sheet->sheets))
            .arg(m_cells->start())
            .arg(empty->placed.size())
            .arg(offset));
    sayReminders();
}

void LabelsDialog::sayReminders() {
    const Look& look = m_session.look();
    const auto toned = [&](const QString& text, Tone tone) {
        return QStringLiteral("<p style='margin:0 0 6px 0; color:%1'>%2</p>")
            .arg(look.tone(tone).name(), text.toHtmlEscaped());
    };
    QString text = toned(tr("Stands on every label: %1").arg(infantCaution()), Tone::Warn);
    if (!m_sheet->textSet)
        text +=
            toned(tr("Nobody wrote down what stands on your labels yet: the button below does."),
                  Tone::Warn);
    if (!m_sheet->flowerGrounds.empty())
        text +=
            toned(tr("The flower is your own statement: %1").arg(fromUtf8(m_sheet->flowerGrounds)),
                  Tone::Ink);
    for (const LabelReminder& each : m_sheet->reminders) {
        const QString says = tableText(each.word.says);
        switch (each.state) {
            case LabelWordState::There:
                text += toned(tr("✓ %1").arg(says), Tone::Ink);
                break;
            case LabelWordState::Lacks:
                text += toned(tr("Not on the label: %1").arg(says), Tone::Warn);
                break;
            case LabelWordState::Yours:
                text += toned(tr("For you to see to: %1").arg(says), Tone::Muted);
                break;
        }
    }
    text += toned(tr("Reminders of a table with its sources, no legal advice: your place's own "
                     "rules decide."),
                  Tone::Muted);
    m_reminders->setFont(look.font(TextSize::Note));
    m_reminders->setText(text);
}

void LabelsDialog::measured() {
    MoveLabels deed;
    deed.on = m_on;
    deed.grid = grid();
    const auto signedMm = [this](QLineEdit* field, std::optional<Number>& value) {
        // Above or to the left stands below nothing.
        QString typed = field->text().trimmed();
        const bool below = typed.startsWith(QLatin1Char('-')) || typed.startsWith(QChar(0x2212));
        if (below) typed = typed.mid(1);
        if (!readsAs(typed, value)) {
            say(tr("%1: \"%2\" is no length. Write 1.5 or -1.5.")
                    .arg(field->accessibleName(), field->text().trimmed()),
                true);
            field->setFocus();
            return false;
        }
        if (value && below) value = Number::rounded(-value->value());
        return true;
    };
    if (!signedMm(m_right, deed.right) || !signedMm(m_down, deed.down)) return;
    if (!deed.right && !deed.down)
        return say(tr("Write how far the edges lay to the right of the labels and below them."),
                   true);
    if (!m_session.run(deed)) return;
    m_right->clear();
    m_down->clear();
    look();
    m_cells->setFocus();
}

void LabelsDialog::askForWords() {
    askForLabelWords(this, m_session, m_on);
    look();
    m_words->setFocus();
}

void LabelsDialog::print() {
    look();
    if (m_sheet) printWithPreview(this, labelsPage(*m_sheet), m_session.look());
}

void LabelsDialog::calibrate() {
    if (const auto empty = emptyLabelSheet(m_session.read(), grid(), m_on))
        printWithPreview(this, labelCalibrationPage(*empty), m_session.look());
}

void LabelsDialog::say(const QString& text, bool bad) {
    QPalette palette = m_said->palette();
    palette.setColor(QPalette::WindowText, m_session.look().tone(bad ? Tone::Bad : Tone::Ink));
    m_said->setPalette(palette);
    m_said->setText(text);
    m_said->setVisible(!text.isEmpty());
}

void showLabels(QWidget* parent, Session& session, Id<Bottling> filling, Day on) {
    LabelsDialog dialog(parent, session, filling, on);
    dialog.exec();
}

}  // namespace combwright
