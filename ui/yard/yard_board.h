// The yard as one meets it: the hives in walking order, each as its stack of boxes on one ground
// line, wrapping where the window ends. Painted, not built of widgets, so that eighty hives cost
// nothing. Left and Right walk from hive to hive, Up and Down climb the chosen one's boxes.
#pragma once

#include <QWidget>
#include <optional>
#include <vector>

#include "core/places/yard/yard_sheet.h"
#include "ui/drawing/lettering.h"
#include "ui/drawing/stack.h"
#include "ui/shell/session.h"

namespace combwright {

/// Words under a hive: as much as fits of them, the fullest first.
struct WordsUnder {
    std::vector<TextLine> ways;
};

/// Lines under a hive; what has no room there the card beside the board says.
inline constexpr std::size_t mostWordsUnder = 3;

/// One hive ready to be drawn.
struct HiveOnBoard {
    Id<Hive> id;
    std::vector<Id<Box>> boxes;  ///< from the floor up
    StackView stack;
    QString mark;
    std::vector<WordsUnder> words;  ///< the weightiest first, `mostWordsUnder` at most
};

class YardBoard : public QWidget {
    Q_OBJECT

  public:
    explicit YardBoard(Session& session, QWidget* parent = nullptr);
    void setHives(std::vector<HiveOnBoard> hives);
    int current() const { return m_current; }
    void setCurrent(int index);
    void choose(Id<Hive> hive);
    /// The chosen box of the chosen hive, from the floor up; nothing where only the hive is chosen.
    std::optional<Id<Box>> currentBox() const;
    const HiveOnBoard* currentHive() const;
    void leaveBox() { chooseBox(-1); }
    const std::vector<HiveOnBoard>& hives() const { return m_hives; }
    int heightForWidth(int width) const override;

  Q_SIGNALS:
    void currentChanged(int index);
    void boxChanged();
    void activated();                ///< Enter on a hive
    void boxActivated();             ///< Enter on a box
    void moveAsked(int step);        ///< Shift+Left, Shift+Right: the hive in walking order
    void boxMoveAsked(int step);     ///< Shift+Up, Shift+Down: the box within its hive
    void left();                     ///< Escape, where no box is chosen
    void shown(const QRect& place);  ///< what should be seen of a board that scrolls

  protected:
    void paintEvent(QPaintEvent*) override;
    void keyPressEvent(QKeyEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseDoubleClickEvent(QMouseEvent*) override;
    void focusInEvent(QFocusEvent*) override { update(); }
    void focusOutEvent(QFocusEvent*) override { update(); }
    void resizeEvent(QResizeEvent*) override;

  private:
    struct Slot {
        QRectF cell;   ///< stack and words
        QRectF stack;  ///< where the stack stands
    };
    int hivesPerRow(int width) const;
    std::vector<Slot> slotsFor(int width) const;
    double rowStackHeight(std::size_t first, int perRow) const;
    int rowWordsHeight(std::size_t first, int perRow) const;
    QRectF stackRect(const Slot& slot, const HiveOnBoard& hive) const;
    void paintHive(QPainter& painter, std::size_t index, const Slot& slot);
    void paintWords(QPainter& painter, const HiveOnBoard& hive, const Slot& slot);
    void chooseBox(int level);
    bool walk(int key, bool shift);
    bool climb(int key, bool shift);
    void speak();
    void askToBeSeen();

    Session& m_session;
    std::vector<HiveOnBoard> m_hives;
    int m_current = -1;
    int m_box = -1;  ///< from the floor up
};

}  // namespace combwright
