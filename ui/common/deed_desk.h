// How a page of work stands in the window: its deeds as buttons with their keys, a table of words,
// and beside it, or below where the window is narrow or the type large, a card of what is known of
// the row one is at or of all of them.
#pragma once

#include <QBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QScrollArea>
#include <functional>
#include <vector>

#include "ui/common/table_stack.h"

namespace combwright {

/// At the base font, px.
struct DeedDeskSizes {
    int card = 300;        ///< how wide it is beside the table
    int leastTable = 600;  ///< what it must leave the table
};

class DeedDesk : public QWidget {
    Q_OBJECT

  public:
    /// `name` is what widgets of it are found by: "health" gives "health_table" and so on.
    DeedDesk(const Look& look, const QString& name, DeedDeskSizes sizes, QWidget* parent);

    /// Once, before anything is shown. Owned by the desk from then on.
    void setTable(WordsTable* table);
    /// Several of them instead, with all their tables.
    void setTables(TableStack* tables);
    /// A drawing over the words of the card; once.
    void setDrawing(QWidget* drawing);
    void setLook(const Look& look);
    void addDeed(const QString& text, int key, std::function<void()> deed);
    /// Does what a key stands for; whether it stands for anything.
    bool press(int key);
    /// What holds for all rows, said once above them; empty says nothing.
    void setAbove(const QString& text);
    /// Rich text.
    void setCard(const QString& name, const QString& text);
    QString cardText() const { return m_card->text(); }
    /// A button that has nothing to do here is not pressed, nor its key.
    void enableDeed(int key, bool enabled);
    /// The card stands beside the table.
    bool isBeside() const { return m_beside; }

  protected:
    void resizeEvent(QResizeEvent* event) override;

  private:
    void arrange();
    void fitHeight();
    void putLeft(QWidget* left, QWidget* first);
    int fullHeight() const;
    void follow(const QPoint& middle, int height);

    struct DeskDeed {
        int key;
        QPushButton* button;
        std::function<void()> deed;
    };
    Look m_look;
    QString m_name;
    DeedDeskSizes m_sizes;
    std::vector<DeskDeed> m_deeds;
    QScrollArea* m_scroll;
    QWidget* m_content;
    QBoxLayout* m_column;
    QWidget* m_buttons;
    QLabel* m_above;
    QBoxLayout* m_across;
    WordsTable* m_table = nullptr;
    QWidget* m_first = nullptr;  ///< has the keyboard when the page is given it
    TableStack* m_tables = nullptr;
    QScrollArea* m_cardScroll;
    QWidget* m_cardInside;
    QBoxLayout* m_cardColumn;
    QWidget* m_drawing = nullptr;
    QLabel* m_card;
    bool m_beside = true;
};

/// A head of a card, rich text.
QString cardHead(const QString& text, const Look& look);
/// In a tone; escapes the words.
QString cardToned(const QString& text, Tone tone, const Look& look);
/// One below the other; escapes the words, and raises the letter of how a mass is known.
QString cardLines(const QStringList& lines);

}  // namespace combwright
