// What the pages of a yard beside its board have in common: the deeds as buttons with their keys,
// the hives as a table to tick in, and beside it, or below where the window is narrow, a card of
// what belongs to the whole yard.
#pragma once

#include <functional>
#include <utility>
#include <vector>

#include "ui/common/deed_desk.h"
#include "ui/yard/hive_table.h"

namespace combwright {

class WorkPage : public QWidget {
    Q_OBJECT

  public:
    /// `name` is what widgets of it are found by: "health" gives "health_table" and so on.
    WorkPage(Session& session, const QString& name, std::vector<HiveColumn> columns,
             QWidget* parent);

    /// The yard as of a day, read anew.
    void show(const Yard& yard, Day on);
    /// Does what a key stands for; whether it stands for anything.
    bool press(int key) { return m_desk->press(key); }
    HiveTable& table() { return *m_table; }
    const HiveTable& table() const { return *m_table; }
    QString cardText() const { return m_desk->cardText(); }
    const Yard& yard() const { return m_yard; }
    Day on() const { return m_on; }

  Q_SIGNALS:
    void pageAsked(int key);                                ///< another page, by its key
    void hiveAsked(combwright::Id<combwright::Hive> hive);  ///< on the board

  protected:
    /// Fills table and card.
    virtual void fill() = 0;
    void addDeed(const QString& text, int key, std::function<void()> deed) {
        m_desk->addDeed(text, key, std::move(deed));
    }
    /// Rich text.
    void setCard(const QString& name, const QString& text) { m_desk->setCard(name, text); }
    /// Marks that are ticked, "H1, H3"; "all" where none is.
    QString meantMarks() const;
    /// A head of the card.
    QString cardHead(const QString& text) const;
    QString cardMuted(const QString& text) const;
    QString cardWarn(const QString& text) const;
    Session& session() const { return m_session; }

  private:
    Session& m_session;
    Yard m_yard;
    Day m_on;
    bool m_shown = false;
    DeedDesk* m_desk;
    HiveTable* m_table;
};

}  // namespace combwright
