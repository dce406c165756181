// The drafts of one sheet, by its rows: what is being typed is held, what was left over from last
// time is offered until it is taken or discarded.
#pragma once

#include <map>

#include "ui/shell/drafts.h"

namespace combwright {

class SheetDrafts {
  public:
    /// From now on those of this sheet; what lies there already is offered.
    void show(Drafts& drafts, const QString& sheet) {
        m_drafts = &drafts;
        m_sheet = sheet;
        m_offered = drafts.of(sheet);
    }
    /// What was typed in a row last time and neither kept nor discarded; empty when nothing.
    QString offered(const QString& row) const {
        const auto at = m_offered.find(row);
        return at == m_offered.end() ? QString() : at->second;
    }
    /// The row is being typed in: what is typed replaces what was offered. Nothing worth holding is
    /// typed while the line is empty or as it was kept.
    void typed(const QString& row, const QString& text, const QString& kept) {
        if (!m_drafts) return;
        const bool sayNothing = text.isEmpty() || text == kept;
        // An offer goes only for something better.
        if (sayNothing && !offered(row).isEmpty()) return;
        m_offered.erase(row);
        if (sayNothing)
            m_drafts->drop(m_sheet, row);
        else
            m_drafts->hold(m_sheet, row, text);
    }
    /// The draft of the row was discarded.
    void drop(const QString& row) {
        m_offered.erase(row);
        if (m_drafts) m_drafts->drop(m_sheet, row);
    }
    /// The row was kept as it was typed.
    void kept(const QString& row) {
        m_offered.erase(row);
        if (m_drafts) m_drafts->dropKept(m_sheet, row);
    }

  private:
    Drafts* m_drafts = nullptr;
    QString m_sheet;
    std::map<QString, QString> m_offered;
};

}  // namespace combwright
