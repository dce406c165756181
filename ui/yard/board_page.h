// The board with what belongs to it: the stacks, a box laid flat and the line of typing below them,
// the ledger line, and the chosen hive's card beside it or, where the window is narrow or the type
// large, below. Every deed on a hive or a box starts here by one key.
#pragma once

#include <QBoxLayout>
#include <QPushButton>
#include <QScrollArea>
#include <QWidget>

#include "ui/yard/board_deeds.h"
#include "ui/yard/board_line.h"
#include "ui/yard/box_laid_flat.h"
#include "ui/yard/story_card.h"
#include "ui/yard/totals_line.h"
#include "ui/yard/yard_board.h"

namespace combwright {

class BoardPage : public QWidget {
    Q_OBJECT

  public:
    explicit BoardPage(Session& session, QWidget* parent = nullptr);

    void show(const YardSheet& sheet);
    /// Does what a key stands for at the board; whether it stands for anything.
    bool press(int key);
    void keepTyped() { m_line->keep(); }
    void leave();  ///< another season: nothing half typed or chosen stays

    YardBoard& board() { return *m_board; }
    StoryCard& card() { return *m_card; }
    BoardLine& line() { return *m_line; }
    BoxLaidFlat& flat() { return *m_flat; }
    TotalsLine& totals() { return *m_totals; }
    bool hasBox() const { return m_board->currentBox().has_value(); }

  Q_SIGNALS:
    void sheetAsked();
    void hiveAsked();
    void yardAsked();
    void pageAsked(int key);  ///< health or stores, by its key
    void hintsChanged();

  protected:
    void resizeEvent(QResizeEvent* event) override;

  private:
    const YardSheetRow* currentRow() const;
    std::optional<Box> currentBox() const;
    void addButtons();
    QPushButton* addButton(QWidget* row, const QString& text, int key, bool ofBox);
    void arrange();
    void fillCard();
    void boxChanged();
    void layFlat();
    void fillFlat();

    void write();
    void putOn();
    void takeOff();
    void moveBox();
    void moveBoxBy(int step);
    void lookInto();
    void countFrames();
    void move();
    void moveHiveBy(int step);
    void change();
    void queen();
    void follow();
    void hold();
    void newBoxes();
    using Meant = std::function<MeantMove(const QString&)>;
    void askMove(const QString& prompt, const QString& example, const QString& before,
                 const Meant& meant);

    Session& m_session;
    YardSheet m_sheet;
    YardBoard* m_board;
    QScrollArea* m_scroll;
    QWidget* m_content;
    QBoxLayout* m_contentColumn;
    QBoxLayout* m_column;
    QBoxLayout* m_across;
    BoxLaidFlat* m_flat;
    BoardLine* m_line;
    TotalsLine* m_totals;
    StoryCard* m_card;
    std::vector<std::pair<QWidget*, bool>> m_buttons;  ///< with whether it is for a box
    bool m_beside = true;
    bool m_flatWanted = false;
};

}  // namespace combwright
