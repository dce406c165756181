#include "ui/storeroom/fit_dialog.h"

#include <QDialogButtonBox>
#include <QHeaderView>
#include <QTimer>
#include <QVBoxLayout>
#include <algorithm>
#include <map>

#include "core/words/figures.h"
#include "core/words/kind_words.h"
#include "core/words/words.h"

namespace combwright {
namespace {

QTableWidgetItem* fitItem(const QString& text) {
    auto* item = new QTableWidgetItem(text);
    item->setFlags(Qt::ItemIsSelectable | Qt::ItemIsEnabled);
    item->setToolTip(text);
    return item;
}

QString gapText(const std::optional<double>& gap) {
    if (!gap) return {};
    const ShownFigure shown = shownLength(*gap);
    return shown.figure + QChar(QChar::Nbsp) + shown.unit;
}

/// The gap and what bees do with it; nothing where a measure is not known.
QString judged(const std::optional<double>& gap, const std::optional<GapVerdict>& verdict) {
    if (!verdict) return QStringLiteral("?");
    return gap ? QStringLiteral("%1  %2").arg(gapText(gap), gapWords(*verdict))
               : gapWords(*verdict);
}

}  // namespace

FitDialog::FitDialog(Session& session, QWidget* parent)
    : QDialog(parent),
      m_session(session),
      m_box(new QComboBox(this)),
      m_below(new QComboBox(this)),
      m_frames(new QLineEdit(this)),
      m_table(new QTableWidget(this)),
      m_mixed(new QLabel(this)) {
    setObjectName(QStringLiteral("fit"));
    setWindowTitle(tr("Which frame hangs in which box"));
    const Look& look = session.look();
    auto* column = new QVBoxLayout(this);
    auto* asked = new QHBoxLayout;
    const auto field = [&](const QString& label, QWidget* widget, int stretch) {
        auto* words = new QLabel(label, this);
        words->setBuddy(widget);
        widget->setAccessibleName(label);
        asked->addWidget(words);
        asked->addWidget(widget, stretch);
    };
    field(tr("Box"), m_box, 2);
    field(tr("stands on"), m_below, 2);
    field(tr("frames in it"), m_frames, 0);
    m_frames->setMaximumWidth(look.space(64));
    column->addLayout(asked);
    m_mixed->setWordWrap(true);
    m_mixed->setObjectName(QStringLiteral("mixed_boxes"));
    column->addWidget(m_mixed);
    m_table->setColumnCount(5);
    m_table->setHorizontalHeaderLabels(
        {tr("Frame"), tr("Below it"), tr("At each end"), tr("At each wall"), tr("Between combs")});
    m_table->verticalHeader()->hide();
    m_table->setSelectionBehavior(QAbstractItemView::SelectRows);
    m_table->setTabKeyNavigation(false);
    m_table->setWordWrap(true);
    // Always there: coming and going it would change the width the words wrap at.
    m_table->setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOn);
    m_table->setAccessibleName(tr("Kinds of frames and how they hang"));
    m_table->horizontalHeader()->setSectionResizeMode(QHeaderView::Stretch);
    column->addWidget(m_table, 1);
    auto* note = new QLabel(fitNote(), this);
    note->setObjectName(QStringLiteral("fit_note"));
    note->setWordWrap(true);
    note->setFont(look.font(TextSize::Note));
    column->addWidget(note);
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Close, this);
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    column->addWidget(buttons);
    resize(look.space(880), look.space(520));
    fillKinds();
    connect(m_box, &QComboBox::currentIndexChanged, this, &FitDialog::fill);
    connect(m_below, &QComboBox::currentIndexChanged, this, &FitDialog::fill);
    connect(m_frames, &QLineEdit::textChanged, this, &FitDialog::fill);
    fill();
    m_box->setFocus();
}

void FitDialog::fillKinds() {
    std::map<std::int64_t, int> used;
    for (const Box& box : m_session.read().all<Box>())
        if (inUse(box)) ++used[box.kind.number];
    auto kinds = m_session.read().all<BoxKind>();
    // The keeper's own kinds first: they are what is asked about.
    std::stable_sort(kinds.begin(), kinds.end(), [&](const BoxKind& a, const BoxKind& b) {
        return used[a.id.number] > used[b.id.number];
    });
    m_below->addItem(tr("its own kind"));
    for (const BoxKind& kind : kinds) {
        m_box->addItem(kindText(kind.name.text()), static_cast<qlonglong>(kind.id.number));
        m_below->addItem(kindText(kind.name.text()), static_cast<qlonglong>(kind.id.number));
    }
}

void FitDialog::fitRows() { m_table->resizeRowsToContents(); }

void FitDialog::resizeEvent(QResizeEvent* event) {
    QDialog::resizeEvent(event);
    // Words wrap otherwise once the columns have their new width, which they get after this.
    QTimer::singleShot(0, this, &FitDialog::fitRows);
}

void FitDialog::fill() {
    const auto box = m_session.read().find(Id<BoxKind>{m_box->currentData().toLongLong()});
    if (!box) return;
    const auto below = m_session.read().find(Id<BoxKind>{m_below->currentData().toLongLong()});
    m_frames->setPlaceholderText(box->framesNominal ? QString::number(box->framesNominal->value())
                                                    : QString());
    bool whole = false;
    const int typed = m_frames->text().trimmed().toInt(&whole);
    const FitTable table =
        fitTable(m_session.read(), *box, below,
                 whole && typed > 0 ? std::optional<std::int64_t>(typed) : std::nullopt);
    m_table->setRowCount(0);
    for (const FitRow& row : table.rows) {
        const int at = m_table->rowCount();
        m_table->insertRow(at);
        auto* name = fitItem(fromUtf8(row.frame.name.text()));
        if (row.madeFor) {
            QFont bold = m_table->font();
            bold.setBold(true);
            name->setFont(bold);
        }
        m_table->setItem(at, 0, name);
        if (!row.hangs()) {
            m_table->setItem(at, 1, fitItem(fitText(row)));
            m_table->setSpan(at, 1, 1, 4);
            continue;
        }
        m_table->setItem(at, 1, fitItem(judged(row.fit->gapMm, row.fit->verdict)));
        m_table->setItem(at, 2, fitItem(judged(row.fit->endGapMm, row.fit->endVerdict)));
        m_table->setItem(at, 3, fitItem(judged(row.fit->sideGapMm, row.fit->sideVerdict)));
        m_table->setItem(
            at, 4,
            fitItem(row.faces ? QStringLiteral("%1  %2").arg(gapText(row.faces->gapMm),
                                                             faceWords(row.faces->verdict))
                              : QStringLiteral("?")));
    }
    fitRows();
    QStringList mixed;
    for (const MixedBox& each : mixedBoxes(m_session.read()))
        mixed << tr("%1 holds %2 of %3: %4")
                     .arg(fromUtf8(each.name))
                     .arg(static_cast<qlonglong>(each.frames))
                     .arg(fromUtf8(each.row.frame.name.text()), fitText(each.row));
    m_mixed->setText(mixed.join(QLatin1Char('\n')));
    m_mixed->setVisible(!mixed.isEmpty());
}

}  // namespace combwright
