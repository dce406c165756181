// The boxes of the day as they stand in the room: full ones waiting, oldest first, then the wet
// ones that go back. One is chosen; a number typed is its weight.
#pragma once

#include <QWidget>
#include <optional>
#include <vector>

#include "core/places/honey_room/room_boxes.h"
#include "ui/drawing/lettering.h"
#include "ui/drawing/stack.h"
#include "ui/shell/session.h"

namespace combwright {

class WaitingView : public QWidget {
    Q_OBJECT

  public:
    explicit WaitingView(Session& session, QWidget* parent = nullptr);

    void show(const RoomBoxes& boxes);
    /// The box chosen; none where there is none.
    const RoomBox* current() const;
    const std::vector<RoomBox>& boxes() const { return m_boxes; }
    int currentRow() const { return m_row; }
    QRect currentRect() const;
    /// Where the box with that peg stands; nothing where none has it.
    std::optional<QRect> rectOfPeg(int peg) const;
    /// Chooses the row of that number, held within what is there.
    void choose(int row);
    /// Chooses the next box that lacks the weight, after the one chosen; stays where none does.
    void chooseNextLacking(bool wet);

    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;

  Q_SIGNALS:
    void chosen(bool byHand);         ///< by hand, or because what is shown has changed
    void moved();                     ///< the person chose another box: it is to be in sight
    void typed(const QString& text);  ///< the beginning of a number
    void weighAsked(bool wet);
    void takeOutAsked();
    void tableAsked();

  protected:
    void paintEvent(QPaintEvent*) override;
    void keyPressEvent(QKeyEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseDoubleClickEvent(QMouseEvent* event) override;
    void focusInEvent(QFocusEvent*) override { update(); }
    void focusOutEvent(QFocusEvent*) override { update(); }

  private:
    struct Laid {
        std::vector<QRectF> rows;
        double headAt = -1;  ///< base line of the words over the wet boxes
        double scale = 0.3;
        double height = 0;
    };
    Laid layOut(double room) const;
    double rowHeight(double scale, const RoomBox& box) const;
    /// What stands beside a box: what it weighs, whose it is, until when.
    struct Words {
        TextLine mass, hive, by;
    };
    Words wordsOf(const RoomBox& box) const;
    /// The widest of them, and the room the pegs take before them.
    double wordsWide() const;
    double pegRoom() const;
    /// As small as leaves what is chalked on the boxes whole, px a millimetre.
    double leastScale() const;
    void paintRow(QPainter& painter, const QRectF& row, const RoomBox& box, double scale) const;
    void paintWet(QPainter& painter, const QRectF& row, const RoomBox& box) const;
    void speak();

    Session& m_session;
    std::vector<RoomBox> m_boxes;  ///< waiting, then wet
    std::size_t m_waiting = 0;
    int m_row = 0;
};

/// A box of the room as its front is drawn.
BoxView roomBoxFront(const RoomBox& box);
/// "M14, of C2, 18.9 kg full weighed, 6 frames spun, 3 left, extract by Mon 9 Aug."
QString spoken(const RoomBox& box);

}  // namespace combwright
