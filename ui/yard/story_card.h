// The chosen hive's card: who lives there, a wait for a young queen drawn as a line of days, then
// its story, newest first. As much of the story is shown as fits; Enter opens all of it for
// scrolling, Escape goes back to the board.
#pragma once

#include <QFrame>
#include <QLabel>
#include <QScrollArea>

#include "core/places/yard/yard_sheet.h"
#include "core/places/yard/yard_story.h"
#include "ui/drawing/queen_wait.h"
#include "ui/shell/session.h"

namespace combwright {

/// The wait as a widget: the drawing and two sentences below it.
class QueenWaitLine : public QWidget {
    Q_OBJECT

  public:
    explicit QueenWaitLine(Session& session, QWidget* parent = nullptr);
    void show(const QueenWaitView& wait);
    const QueenWaitView& wait() const { return m_wait; }
    QSize sizeHint() const override;

  protected:
    void paintEvent(QPaintEvent*) override;

  private:
    Session& m_session;
    QueenWaitView m_wait;
};

class StoryCard : public QFrame {
    Q_OBJECT

  public:
    explicit StoryCard(Session& session, QWidget* parent = nullptr);

    /// Tells of a hive: the row of the sheet, its place of so many, and its story.
    void tell(const YardSheetRow& row, int place, int of, const HiveHead& head,
              std::vector<StoryEntry> story, Day today);
    void clear();

    /// All of the story, with the keyboard in it; and back.
    void openAll();
    void closeAll();
    bool isOpen() const { return m_open; }
    /// How many entries are not shown.
    int hidden() const { return static_cast<int>(m_story.size()) - m_shown; }
    /// Beside the board the card scrolls by itself; below it the page does.
    void setOwnScroll(bool own);
    /// A row of keys at the foot of the card.
    void setButtons(QWidget* buttons);

  Q_SIGNALS:
    void closed();
    void scrollAsked(int key);  ///< an open story below the board: the page scrolls, not the card

  protected:
    bool eventFilter(QObject* watched, QEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;

  private:
    QString storyHtml(int entries) const;
    QString dotOf(const std::optional<Queen>& queen, const std::string& colour,
                  TextSize size) const;
    QString mindsHtml() const;
    QString waitHtml(const Mind& mind, Day today) const;
    void fill();
    void fillStory();
    int fitting() const;

    Session& m_session;
    QLabel* m_head;
    QLabel* m_minds;
    QLabel* m_waitTitle;
    QueenWaitLine* m_wait;
    QLabel* m_waitWords;
    QScrollArea* m_scroll;
    QLabel* m_storyLabel;
    QLabel* m_more;
    YardSheetRow m_row;
    HiveHead m_hiveHead;
    std::vector<StoryEntry> m_story;
    Day m_today;
    int m_place = 0;
    int m_of = 0;
    int m_shown = 0;
    bool m_told = false;
    bool m_open = false;
    bool m_ownScroll = true;
};

}  // namespace combwright
