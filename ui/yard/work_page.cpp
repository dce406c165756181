#include "ui/yard/work_page.h"

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
    setFocusProxy(m_table);
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

QString WorkPage::meantMarks() const {
    QStringList marks;
    for (const HiveTableRow* row : m_table->ticked()) marks << row->mark;
    return marks.isEmpty() ? QStringLiteral("all") : marks.join(QStringLiteral(", "));
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
