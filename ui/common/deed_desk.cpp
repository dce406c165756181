#include "ui/common/deed_desk.h"

#include <QKeySequence>
#include <QTextDocumentFragment>
#include <algorithm>

#include "ui/common/flow_row.h"
#include "ui/common/hand_focus.h"
#include "ui/common/raised_letters.h"

namespace combwright {

DeedDesk::DeedDesk(const Look& look, const QString& name, DeedDeskSizes sizes, QWidget* parent)
    : QWidget(parent), m_look(look), m_name(name), m_sizes(sizes), m_scroll(new QScrollArea(this)) {
    auto* whole = new QVBoxLayout(this);
    whole->setContentsMargins(0, 0, 0, 0);
    m_scroll->setFrameShape(QFrame::NoFrame);
    m_scroll->setWidgetResizable(true);
    m_scroll->setFocusPolicy(Qt::NoFocus);
    m_scroll->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    whole->addWidget(m_scroll);
    m_content = new QWidget(m_scroll);
    m_column = new QVBoxLayout(m_content);
    m_buttons = new QWidget(m_content);
    m_buttons->setLayout(new FlowRow(m_buttons, 6));
    m_column->addWidget(m_buttons);
    m_above = new QLabel(m_content);
    m_above->setObjectName(name + QStringLiteral("_above"));
    m_above->setWordWrap(true);
    m_above->hide();
    m_column->addWidget(m_above);
    m_across = new QBoxLayout(QBoxLayout::LeftToRight);
    m_column->addLayout(m_across, 1);
    m_cardScroll = new QScrollArea(m_content);
    m_cardScroll->setObjectName(name + QStringLiteral("_card"));
    m_cardScroll->setProperty("card", true);
    m_cardScroll->setWidgetResizable(true);
    m_cardScroll->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    m_cardInside = new QWidget(m_cardScroll);
    m_cardColumn = new QVBoxLayout(m_cardInside);
    m_card = new QLabel(m_cardInside);
    m_card->setTextFormat(Qt::RichText);
    m_card->setWordWrap(true);
    m_card->setAlignment(Qt::AlignTop | Qt::AlignLeft);
    m_cardColumn->addWidget(m_card, 1);
    m_cardScroll->setWidget(m_cardInside);
    m_cardInside->setAutoFillBackground(false);
    m_cardScroll->viewport()->setAutoFillBackground(false);
    m_scroll->setWidget(m_content);
}

void DeedDesk::setTable(WordsTable* table) {
    m_table = table;
    table->setObjectName(m_name + QStringLiteral("_table"));
    connect(table, &WordsTable::fitted, this, &DeedDesk::fitHeight);
    connect(table, &QTableWidget::currentCellChanged, this, [this, table](int row) {
        if (row < 0) return;
        const QRect place = table->visualItemRect(table->item(row, 0));
        follow(table->viewport()->mapTo(m_content, place.center()), place.height());
    });
    putLeft(table, table);
    setTabOrder(table, m_cardScroll);
}

void DeedDesk::setTables(TableStack* tables) {
    m_tables = tables;
    connect(tables, &TableStack::fitted, this, &DeedDesk::fitHeight);
    connect(tables, &TableStack::followed, this, [this, tables](const QRect& row) {
        follow(tables->mapTo(m_content, row.center()), row.height());
    });
    putLeft(tables, tables->first());
    setTabOrder(tables->last(), m_cardScroll);
}

void DeedDesk::putLeft(QWidget* left, QWidget* first) {
    m_across->addWidget(left, 1);
    m_across->addWidget(m_cardScroll);
    m_first = first;
    handFocusTo(*this, *first);
    for (const DeskDeed& each : m_deeds) setTabOrder(each.button, first);
    arrange();
}

int DeedDesk::fullHeight() const {
    return m_table ? m_table->fullHeight() : m_tables->fullHeight();
}

void DeedDesk::setDrawing(QWidget* drawing) {
    m_drawing = drawing;
    m_cardColumn->insertWidget(0, drawing);
}

void DeedDesk::setLook(const Look& look) {
    m_look = look;
    arrange();
}

void DeedDesk::follow(const QPoint& middle, int height) {
    if (!m_beside) m_scroll->ensureVisible(middle.x(), middle.y(), 0, height / 2 + 8);
}

void DeedDesk::addDeed(const QString& text, int key, std::function<void()> deed) {
    const QString name = QKeySequence(key).toString();
    auto* button = new QPushButton(
        QStringLiteral("%1  %2").arg(text, key == Qt::Key_Escape ? tr("Esc") : name), m_buttons);
    button->setProperty("small", true);
    button->setAccessibleName(text);
    button->setObjectName(QStringLiteral("%1_page_%2").arg(m_name, name.toLower()));
    m_buttons->layout()->addWidget(button);
    connect(button, &QPushButton::clicked, this, [this, key] { press(key); });
    m_deeds.push_back({key, button, std::move(deed)});
    if (m_first) setTabOrder(button, m_first);
}

bool DeedDesk::press(int key) {
    for (const DeskDeed& each : m_deeds) {
        if (each.key != key) continue;
        if (each.button->isEnabled()) each.deed();
        return true;
    }
    return false;
}

void DeedDesk::enableDeed(int key, bool enabled) {
    for (const DeskDeed& each : m_deeds)
        if (each.key == key) each.button->setEnabled(enabled);
}

void DeedDesk::setAbove(const QString& text) {
    m_above->setFont(m_look.font(TextSize::Note));
    QPalette palette = m_above->palette();
    palette.setColor(QPalette::WindowText, m_look.tone(Tone::Muted));
    m_above->setPalette(palette);
    m_above->setText(text);
    m_above->setVisible(!text.isEmpty());
}

void DeedDesk::setCard(const QString& name, const QString& text) {
    m_card->setFont(m_look.font(TextSize::Note));
    m_card->setText(text);
    m_cardScroll->setAccessibleName(name);
    m_cardScroll->setAccessibleDescription(QTextDocumentFragment::fromHtml(text).toPlainText());
    fitHeight();
}

void DeedDesk::arrange() {
    m_column->setContentsMargins(m_look.space(24), m_look.space(8), m_look.space(24),
                                 m_look.space(8));
    m_column->setSpacing(m_look.space(8));
    m_across->setSpacing(m_look.space(24));
    const int in = m_look.space(12);
    m_cardColumn->setContentsMargins(in, in, in, in);
    m_cardColumn->setSpacing(m_look.space(8));
    m_beside = width() >= m_look.space(m_sizes.card + m_sizes.leastTable) + 3 * m_look.space(24);
    m_across->setDirection(m_beside ? QBoxLayout::LeftToRight : QBoxLayout::TopToBottom);
    if (m_beside) {
        m_cardScroll->setFixedWidth(m_look.space(m_sizes.card));
    } else {
        m_cardScroll->setMinimumWidth(0);
        m_cardScroll->setMaximumWidth(QWIDGETSIZE_MAX);
    }
    fitHeight();
}

// Beside each other each scrolls by itself; below each other the whole page does.
void DeedDesk::fitHeight() {
    QWidget* left = m_table ? static_cast<QWidget*>(m_table) : m_tables;
    if (!left) return;
    if (m_beside) {
        left->setMinimumHeight(m_look.space(120));
        left->setMaximumHeight(QWIDGETSIZE_MAX);
        m_cardScroll->setMinimumHeight(0);
        return;
    }
    left->setFixedHeight(fullHeight());
    const int in = m_look.space(12);
    const int wide = width() - 2 * m_look.space(24) - 2 * in - 4;
    int high = m_card->heightForWidth(std::max(wide, 100)) + 2 * in + 4;
    if (m_drawing && !m_drawing->isHidden()) high += m_drawing->minimumHeight() + m_look.space(8);
    m_cardScroll->setMinimumHeight(high);
}

void DeedDesk::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    arrange();
}

QString cardHead(const QString& text, const Look& look) {
    return QStringLiteral("<p style='margin:8px 0 2px 0; font-size:%1px'><b>%2</b></p>")
        .arg(look.font(TextSize::Head).pixelSize())
        .arg(text.toHtmlEscaped());
}

QString cardToned(const QString& text, Tone tone, const Look& look) {
    return QStringLiteral("<span style='color:%1'>%2</span>")
        .arg(look.tone(tone).name(), text.toHtmlEscaped());
}

QString cardLines(const QStringList& lines) {
    QString text;
    for (const QString& line : lines)
        text += (text.isEmpty() ? QString() : QStringLiteral("<br>")) + withRaisedLetters(line);
    return text;
}

}  // namespace combwright
