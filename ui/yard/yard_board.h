// The yard as one meets it: the hives in walking order, each as its stack of boxes on one ground
// line, wrapping where the window ends. Painted, not built of widgets, so that eighty hives cost
// nothing.
#pragma once

#include <QWidget>
#include <vector>

#include "core/places/yard_sheet.h"
#include "ui/drawing/stack.h"
#include "ui/shell/session.h"

namespace combwright {

/// One hive ready to be drawn.
struct HiveOnBoard {
    Id<Hive> id;
    StackView stack;
    QString mark;
    QStringList words;  ///< two lines at most
    Tone lastTone = Tone::Muted;
};

class YardBoard : public QWidget {
    Q_OBJECT

  public:
    explicit YardBoard(Session& session, QWidget* parent = nullptr);
    void setHives(std::vector<HiveOnBoard> hives);
    int current() const { return m_current; }
    void setCurrent(int index);
    const std::vector<HiveOnBoard>& hives() const { return m_hives; }
    int heightForWidth(int width) const override;

  Q_SIGNALS:
    void currentChanged(int index);
    void activated(int index);

  protected:
    void paintEvent(QPaintEvent*) override;
    void keyPressEvent(QKeyEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseDoubleClickEvent(QMouseEvent*) override { Q_EMIT activated(m_current); }
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
    void speak();

    Session& m_session;
    std::vector<HiveOnBoard> m_hives;
    int m_current = -1;
};

}  // namespace combwright
