#include "ui/honey_room/desk_page.h"

#include <QVBoxLayout>

#include "ui/common/hand_focus.h"

namespace combwright {
namespace {

// At the base font, px.
constexpr DeedDeskSizes goodsDesk{320, 600};

}  // namespace

DeskPage::DeskPage(Session& session, const QString& name, QWidget* parent)
    : RoomPage(session, parent),
      m_desk(new DeedDesk(session.look(), name, goodsDesk, this)),
      m_tables(new TableStack(session.look(), m_desk)) {
    setObjectName(name + QStringLiteral("_page"));
    auto* whole = new QVBoxLayout(this);
    whole->setContentsMargins(0, 0, 0, 0);
    whole->addWidget(m_desk);
}

WordsTable* DeskPage::addTable(const QString& name, const QString& spoken, const WordsHeads& heads,
                               std::vector<WordsColumn> columns) {
    auto* table =
        new WordsTable(look(), heads, std::move(columns), WordsTicks::None, m_tables->widget());
    table->setObjectName(name);
    table->setAccessibleName(spoken);
    m_tables->add(table);
    return table;
}

void DeskPage::layOut() {
    m_desk->setTables(m_tables);
    handFocusTo(*this, *m_tables->first());
    connect(&session(), &Session::lookChanged, this, [this] {
        m_tables->setLook(look());
        m_desk->setLook(look());
        if (session().hasSeason()) session().reading([this] { fillCard(); });
    });
}

bool DeskPage::press(int key) {
    if (!session().hasSeason()) return false;
    QWidget* at = window()->focusWidget();
    auto* table = at && isAncestorOf(at) ? qobject_cast<WordsTable*>(at) : nullptr;
    if (!m_desk->press(key)) return false;
    // What was first filled has its rows now; what lost its last row is gone.
    if (table && table->isVisibleTo(this))
        table->setFocus();
    else
        setFocus();
    return true;
}

QString DeskPage::said(const QString& text, Tone tone) const {
    if (text.isEmpty()) return {};
    return QStringLiteral("<p style='margin:2px 0 0 0'>%1</p>").arg(cardToned(text, tone, look()));
}

void whenRowChosen(WordsTable* table, QObject* context, const std::function<void()>& what) {
    QObject::connect(table, &QTableWidget::currentCellChanged, context,
                     [what](int row, int, int before) {
                         if (row != before && row >= 0) what();
                     });
}

}  // namespace combwright
