// The frame-status board, painted as one surface: a row a box, its frames small in side view, shelf
// by shelf in one column or two. No widget a row, so that a hundred thousand frames scroll as
// easily as a hundred.
#pragma once

#include <QAbstractScrollArea>
#include <QElapsedTimer>
#include <QFont>
#include <QHash>
#include <QStaticText>
#include <vector>

#include "core/places/storeroom/frame_board.h"
#include "ui/look/tokens.h"
#include "ui/storeroom/board_frames.h"
#include "ui/storeroom/row_places.h"

namespace combwright {

/// Within it a box is called by its whole name: Qt has a Box of its own, a frame around a widget.
class FrameBoardView : public QAbstractScrollArea {
    Q_OBJECT

  public:
    explicit FrameBoardView(const Look& look, QWidget* parent = nullptr);

    void setLook(const Look& look);
    /// Shows a board; cursor and selection stay with their boxes where those are still shown.
    void setBoard(FrameBoard board);
    const FrameBoard& board() const { return m_board; }
    /// The box that lies on the bench: its row says so.
    void setOnBench(std::optional<Id<combwright::Box>> box);
    /// The frame under the cursor is what is worked on, and not its whole box: it is ringed.
    void setAtFrame(bool at);
    /// On to the next box whose mark begins like that, or like that behind what was typed a moment
    /// ago. False where none does: nothing moves, and the key is free to mean something else.
    bool typeMark(const QString& text);
    /// A mark was begun a moment ago and may go on.
    bool isTypingMark() const;

    /// The row under the cursor; nothing on an empty board.
    const BoardRow* currentRow() const;
    /// The frame under the cursor; nothing where the row shows none.
    const BoardFrame* currentFrame() const;
    /// From 0 at the left among those shown of the row.
    int currentFrameIndex() const { return m_frame; }
    /// Puts the cursor on a box; false where it is not shown.
    bool goToBox(Id<combwright::Box> box, int frame = 0);

    std::vector<const BoardRow*> selectedRows() const;
    /// The selected rows, or the one under the cursor where none is selected.
    std::vector<const BoardRow*> chosenRows() const;
    /// Boxes of the chosen rows, each once.
    std::vector<Id<combwright::Box>> chosenBoxes() const;
    /// Frames shown in the chosen rows, missing ones left out.
    std::vector<Id<Frame>> chosenFrames() const;
    int selectedCount() const { return m_selectedCount; }
    void clearSelection();
    void selectAll();

    /// Where the row under the cursor is, in the viewport.
    QRect currentRect() const;
    /// Where a box's row or one of its frames is, in the viewport; empty where it is not shown.
    QRect rectOf(Id<combwright::Box> box, int frame = -1) const;
    int columns() const { return m_columns; }

    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;

  Q_SIGNALS:
    /// The cursor came to another row.
    void currentChanged();
    /// The cursor came to another frame, of this row or of another.
    void frameChanged();
    void selectionChanged();
    /// Enter or a double click on a row.
    void activated();
    /// The mouse came down on a row: on one of its frames, or beside them.
    void pressed(bool onFrame);

  protected:
    void paintEvent(QPaintEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    void scrollContentsBy(int dx, int dy) override;
    void keyPressEvent(QKeyEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseDoubleClickEvent(QMouseEvent* event) override;
    void focusInEvent(QFocusEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;

  private:
    /// Made once a look: a font asked for anew costs more than the text it writes.
    struct Type {
        QFont bold, note, noteBold, empty;
        double cap = 0, step = 0, noteAscent = 0;
        QHash<QString, QStaticText> states;  ///< a dozen texts stand on ten thousand rows
    };
    const BoardRow& rowOf(std::size_t line) const;
    bool hasCurrent() const { return m_current < m_lines.size(); }
    bool isSelected(std::size_t line) const;
    std::size_t ordinalOf(std::size_t line) const;
    void setType();
    void readRows();
    void layOut();
    void setScrollRange();
    int widthToBe() const;
    double rowHeight(const BoardRow& row) const;
    double columnLeft(std::size_t column) const;
    QRectF lineRect(std::size_t line) const;
    double frameWidth(const BoardRow& row) const;
    std::vector<double> frameLefts(const BoardRow& row, double left, double width) const;
    QRectF frameRect(std::size_t line, std::size_t frame) const;
    std::optional<std::size_t> lineAt(QPointF viewportPoint) const;
    std::optional<std::size_t> lineBeside(int step) const;
    QString stateText(const BoardRow& row) const;
    void paintHead(QPainter& painter, const RowPlaces::Head& head) const;
    void paintLineRow(QPainter& painter, std::size_t line);
    void paintState(QPainter& painter, QPointF at, const QString& state, const QColor& color);
    void paintFrames(QPainter& painter, std::size_t line, const QRectF& box);
    void paintRule(QPainter& painter, double left, double right, double top) const;
    void paintEmpty(QPainter& painter) const;

    void moveTo(std::size_t line, int frame, bool extend);
    void moveRows(std::ptrdiff_t step, bool extend);
    void moveFrames(int step, bool extend);
    void page(int step, bool extend);
    void select(std::size_t line, bool selected);
    void selectRange(std::size_t from, std::size_t to);
    bool goToMark(const QString& begins, std::size_t from);
    void showCurrent();
    void speak();

    Look m_look;
    Type m_type;
    FrameBoard m_board;
    BoardFrames m_frames;
    std::optional<Id<combwright::Box>> m_onBench;
    RowPlaces m_lines;
    std::vector<std::size_t> m_rowsBefore;  ///< rows of all shelves above each
    std::vector<bool> m_selected;           ///< of each row in the order of the board
    int m_columns = 1;
    double m_columnWidth = 0;
    int m_laidWidth = -1;  ///< the width the rows stand in; -1 when they must stand anew
    double m_markWidth = 0, m_stateWidth = 0, m_frameWidth = 0;
    std::size_t m_mostFrames = 10;
    std::size_t m_current = 0;
    std::size_t m_anchor = 0;
    int m_frame = 0;
    int m_selectedCount = 0;
    bool m_atFrame = false;
    QString m_typed;
    QElapsedTimer m_typedAt;
};

}  // namespace combwright
