// What the pages of jars and fairs have in common: deeds, several tables below each other, and
// beside them a card of what is chosen.
#pragma once

#include <functional>

#include "ui/common/deed_desk.h"
#include "ui/common/table_stack.h"
#include "ui/honey_room/room_page.h"

namespace combwright {

class DeskPage : public RoomPage {
    Q_OBJECT

  public:
    /// `name` is what widgets of it are found by: "jars" gives "jars_page" and so on.
    DeskPage(Session& session, const QString& name, QWidget* parent);

    bool press(int key) override;
    QString cardText() const { return m_desk->cardText(); }

  protected:
    WordsTable* addTable(const QString& name, const QString& spoken, const WordsHeads& heads,
                         std::vector<WordsColumn> columns);
    /// Once, when all tables are there.
    void layOut();
    DeedDesk& desk() { return *m_desk; }
    TableStack& tables() { return *m_tables; }
    /// The words of the card are put anew where the look changed.
    virtual void fillCard() = 0;

    QString headOf(const QString& text) const { return cardHead(text, look()); }
    /// A paragraph; nothing for no words.
    QString said(const QString& text, Tone tone = Tone::Ink) const;

  private:
    DeedDesk* m_desk;
    TableStack* m_tables;
};

/// Calls when another row is chosen, however.
void whenRowChosen(WordsTable* table, QObject* context, const std::function<void()>& what);

}  // namespace combwright
