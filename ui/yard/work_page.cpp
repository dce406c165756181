#include "ui/yard/work_page.h"

#include <QTextDocumentFragment>

#include "ui/common/flow_row.h"

namespace combwright {
namespace {

// At the base font, px: the card beside the table, and the table it must leave room for.
constexpr int workCardWidth = 300;
constexpr int leastTable = 600;

}  // namespace

WorkPage::WorkPage(Session& session, const QString& name, std::vector<HiveColumn> columns,
                   QWidget* parent)
    : QWidget(parent), m_session(session), m_scroll(new QScrollArea(this)) {
    setObjectName(name + QStringLiteral("_page"));
    auto* whole = new QVBoxLayout(this);
    whole->setContentsMargins(0, 0, 0, 0);
    m_scroll->setFrameShape(QFrame::NoFrame);
    m_scroll->setWidgetResizable(true);
    m_scroll->setFocusPolicy(Qt::NoFocus);
    m_scroll->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    whole->addWidget(m_scroll);
    auto* content = new QWidget(m_scroll);
    m_column = new QVBoxLayout(content);
    m_buttons = new QWidget(content);
    m_buttons->setLayout(new FlowRow(m_buttons, 6));
    m_column->addWidget(m_buttons);
    m_above = new QLabel(content);
    m_above->setObjectName(name + QStringLiteral("_above"));
    m_above->setWordWrap(true);
    m_above->hide();
    m_column->addWidget(m_above);
    m_across = new QBoxLayout(QBoxLayout::LeftToRight);
    m_column->addLayout(m_across, 1);
    m_table = new HiveTable(session, std::move(columns), content);
    m_table->setObjectName(name + QStringLiteral("_table"));
    m_cardScroll = new QScrollArea(content);
    m_cardScroll->setObjectName(name + QStringLiteral("_card"));
    m_cardScroll->setProperty("card", true);
    m_cardScroll->setWidgetResizable(true);
    m_cardScroll->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    m_card = new QLabel(m_cardScroll);
    m_card->setTextFormat(Qt::RichText);
    m_card->setWordWrap(true);
    m_card->setAlignment(Qt::AlignTop | Qt::AlignLeft);
    m_card->setAutoFillBackground(false);
    m_cardScroll->setWidget(m_card);
    m_cardScroll->viewport()->setAutoFillBackground(false);
    m_across->addWidget(m_table, 1);
    m_across->addWidget(m_cardScroll);
    m_scroll->setWidget(content);
    setFocusProxy(m_table);
    connect(m_table, &HiveTable::fitted, this, &WorkPage::fitHeight);
    connect(m_table, &HiveTable::hiveActivated, this, [this] {
        if (const auto* row = m_table->current()) Q_EMIT hiveAsked(row->hive);
    });
    connect(m_table, &QTableWidget::currentCellChanged, this, [this](int row) {
        if (m_beside || row < 0) return;
        const QRect place = m_table->visualItemRect(m_table->item(row, 0));
        const QPoint at = m_table->viewport()->mapTo(m_scroll->widget(), place.center());
        m_scroll->ensureVisible(at.x(), at.y(), 0, place.height() / 2 + 8);
    });
    connect(&session, &Session::lookChanged, this, [this] {
        arrange();
        if (m_shown) fill();
    });
    arrange();
}

void WorkPage::addDeed(const QString& text, int key, std::function<void()> deed) {
    const QString name = QKeySequence(key).toString();
    auto* button = new QPushButton(
        QStringLiteral("%1  %2").arg(text, key == Qt::Key_Escape ? tr("Esc") : name), m_buttons);
    button->setProperty("small", true);
    button->setAccessibleName(text);
    button->setObjectName(QStringLiteral("%1_%2").arg(objectName(), name.toLower()));
    m_buttons->layout()->addWidget(button);
    connect(button, &QPushButton::clicked, this, [this, key] { press(key); });
    m_deeds.push_back({key, std::move(deed)});
    setTabOrder(button, m_table);
}

bool WorkPage::press(int key) {
    for (const PageDeed& each : m_deeds) {
        if (each.key != key) continue;
        each.deed();
        return true;
    }
    return false;
}

void WorkPage::show(const Yard& yard, Day on) {
    m_yard = yard;
    m_on = on;
    m_shown = true;
    fill();
}

void WorkPage::setAbove(const QString& text) {
    m_above->setFont(m_session.look().font(TextSize::Note));
    QPalette palette = m_above->palette();
    palette.setColor(QPalette::WindowText, m_session.look().tone(Tone::Muted));
    m_above->setPalette(palette);
    m_above->setText(text);
    m_above->setVisible(!text.isEmpty());
}

void WorkPage::setCard(const QString& name, const QString& text) {
    m_card->setFont(m_session.look().font(TextSize::Note));
    m_card->setText(text);
    m_cardScroll->setAccessibleName(name);
    m_cardScroll->setAccessibleDescription(QTextDocumentFragment::fromHtml(text).toPlainText());
    fitHeight();
}

HivesAsked WorkPage::hivesAsked() const {
    QStringList marks;
    for (const HiveTableRow* row : m_table->ticked()) marks << row->mark;
    // Of one hive its mark says more than "all".
    if (marks.size() > 1 && static_cast<std::size_t>(marks.size()) == m_table->rows().size())
        return {QStringLiteral("all"), true};
    if (!marks.isEmpty()) return {marks.join(QStringLiteral(", ")), true};
    const HiveTableRow* current = m_table->current();
    return {current ? current->mark : QString(), false};
}

QString WorkPage::cardHead(const QString& text) const {
    return QStringLiteral("<p style='margin:8px 0 2px 0; font-size:%1px'><b>%2</b></p>")
        .arg(m_session.look().font(TextSize::Head).pixelSize())
        .arg(text.toHtmlEscaped());
}

QString WorkPage::cardMuted(const QString& text) const {
    return QStringLiteral("<span style='color:%1'>%2</span>")
        .arg(m_session.look().tone(Tone::Muted).name(), text.toHtmlEscaped());
}

QString WorkPage::cardWarn(const QString& text) const {
    return QStringLiteral("<span style='color:%1'>%2</span>")
        .arg(m_session.look().tone(Tone::Warn).name(), text.toHtmlEscaped());
}

void WorkPage::arrange() {
    const Look& look = m_session.look();
    m_column->setContentsMargins(look.space(24), look.space(8), look.space(24), look.space(8));
    m_column->setSpacing(look.space(8));
    m_across->setSpacing(look.space(24));
    m_card->setMargin(look.space(12));
    m_beside = width() >= look.space(workCardWidth + leastTable) + 3 * look.space(24);
    m_across->setDirection(m_beside ? QBoxLayout::LeftToRight : QBoxLayout::TopToBottom);
    if (m_beside) {
        m_cardScroll->setFixedWidth(look.space(workCardWidth));
    } else {
        m_cardScroll->setMinimumWidth(0);
        m_cardScroll->setMaximumWidth(QWIDGETSIZE_MAX);
    }
    fitHeight();
}

// Beside each other each scrolls by itself; below each other the whole page does.
void WorkPage::fitHeight() {
    if (m_beside) {
        m_table->setMinimumHeight(m_session.look().space(120));
        m_table->setMaximumHeight(QWIDGETSIZE_MAX);
        m_cardScroll->setMinimumHeight(0);
        return;
    }
    m_table->setFixedHeight(m_table->fullHeight());
    const int wide = width() - 2 * m_session.look().space(24) - 4;
    m_cardScroll->setMinimumHeight(m_card->heightForWidth(std::max(wide, 100)) + 4);
}

void WorkPage::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    arrange();
}

}  // namespace combwright
