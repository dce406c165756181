// The counts at the left of the board, always in sight: how many frames of each kind are in what
// state, what is held back and what goes into the pot. Each line is a button that shows just those.
#pragma once

#include <QAbstractScrollArea>
#include <vector>

#include "core/places/storeroom/frame_board.h"
#include "ui/look/tokens.h"

namespace combwright {

class BoardCounts : public QAbstractScrollArea {
    Q_OBJECT

  public:
    explicit BoardCounts(const Look& look, QWidget* parent = nullptr);

    void setLook(const Look& look);
    void setBoard(const FrameBoard& board);

    /// The line under the cursor as it is read out; empty where there is none.
    QString currentText() const;
    /// Puts the cursor on the line that is read out like that from its beginning.
    bool goToLine(const QString& begins);
    /// Height of all lines, px.
    int contentHeight() const;

    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;

  Q_SIGNALS:
    /// A line was pressed: what the board is to show now. Pressed again it is taken back.
    void filterAsked(const combwright::BoardFilter& filter);

  protected:
    void paintEvent(QPaintEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void focusInEvent(QFocusEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;

  private:
    struct Line {
        enum class Type { Title, Bar, Sum, Plain, Warn, Note } type = Type::Plain;
        QString letter;
        QString text;
        QString also;   ///< muted behind the count
        QString count;  ///< empty for none
        double share = 0;
        bool grave = false;
        bool isButton = false;
        bool pressed = false;
        BoardFilter asks;
        double top = 0, height = 0;
    };
    void makeLines();
    void addKind(const KindCounts& counts);
    void addHeld();
    void addMelt();
    Line& add(Line::Type type, const QString& text);
    void button(Line& line, const BoardFilter& asks);
    void layOut();
    void paintLineAt(QPainter& painter, const Line& line, bool current) const;
    void moveBy(int step);
    void press();
    void speak();
    QString spokenLine(const Line& line) const;
    int lineAt(double y) const;

    Look m_look;
    FrameBoard m_board;  ///< without its shelves
    std::vector<Line> m_lines;
    int m_current = -1;
    double m_height = 0;
};

}  // namespace combwright
