// What was left half done, each with its drawing where there is one: the stack with its pegs, the
// hives written and not, the box without a tag, the bucket. Enter carries the chosen one on.
#pragma once

#include <vector>

#include "core/places/today/half_done.h"
#include "core/places/today/year_ribbon.h"
#include "ui/today/line_list.h"
#include "ui/today/wrapped.h"

namespace combwright {

class HalfDoneView : public LineList {
    Q_OBJECT

  public:
    explicit HalfDoneView(Session& session, QWidget* parent = nullptr);

    void show(const std::vector<HalfDone>& list, const SoFar& so, Day today);
    const std::vector<HalfDone>& list() const { return m_list; }
    const HalfDone* current() const;
    QRect currentRect() const override;

    int heightForWidth(int width) const override;
    QSize sizeHint() const override;

  Q_SIGNALS:
    void done(const combwright::HalfDone& half);

  protected:
    int rowCount() const override { return static_cast<int>(m_list.size()); }
    void doCurrent() override;
    void speak() override;
    void paintEvent(QPaintEvent*) override;
    void mousePressEvent(QMouseEvent* event) override;

  private:
    struct Laid {
        QRectF row, drawing, button;
        WrappedText title;
        std::vector<WrappedText> lines;
        QRectF words;
    };
    struct LaidOut {
        std::vector<Laid> rows;
        double soFarY = 0;
        double height = 0;
    };
    LaidOut layOut(double width) const;
    double drawingHeight(const HalfDone& half, double width) const;
    void paintDrawing(QPainter& painter, const HalfDone& half, const QRectF& box) const;
    void paintHives(QPainter& painter, const HalfDone& half, const QRectF& box) const;
    void paintSoFar(QPainter& painter, double y) const;

    std::vector<HalfDone> m_list;
    SoFar m_so;
    Day m_today;
};

}  // namespace combwright
