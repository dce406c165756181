#include "ui/yard/work_page.h"

#include "ui/common/hand_focus.h"

namespace combwright {

WorkPage::WorkPage(Session& session, const QString& name, std::vector<HiveColumn> columns,
                   QWidget* parent)
    : QWidget(parent),
      m_session(session),
      m_desk(new DeedDesk(session.look(), name, {}, this)),
      m_table(new HiveTable(session, std::move(columns), m_desk)) {
    setObjectName(name + QStringLiteral("_page"));
    auto* whole = new QVBoxLayout(this);
    whole->setContentsMargins(0, 0, 0, 0);
    whole->addWidget(m_desk);
    m_desk->setTable(m_table);
    handFocusTo(*this, *m_table);
    connect(m_table, &HiveTable::rowActivated, this, [this] {
        if (const auto* row = m_table->current()) Q_EMIT hiveAsked(row->hive);
    });
    connect(&session, &Session::lookChanged, this, [this] {
        m_desk->setLook(m_session.look());
        if (m_shown) fill();
    });
}

void WorkPage::show(const Yard& yard, Day on) {
    m_yard = yard;
    m_on = on;
    m_shown = true;
    fill();
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
    return combwright::cardHead(text, m_session.look());
}

QString WorkPage::cardMuted(const QString& text) const {
    return cardToned(text, Tone::Muted, m_session.look());
}

QString WorkPage::cardWarn(const QString& text) const {
    return cardToned(text, Tone::Warn, m_session.look());
}

}  // namespace combwright
