// The box on the bench: its frames from both sides, one after the other, what was seen as flags
// above and the verdict in words below. Frames one has pointed at stand first; those known only as
// a count lie under one mark.
#pragma once

#include <QString>
#include <QWidget>
#include <optional>
#include <vector>

#include "ui/drawing/frame.h"
#include "ui/shell/session.h"

namespace combwright {

struct BenchRowFrame {
    FrameView view;
    QString verdict;      ///< below it: "3 repair"
    bool plain = true;    ///< kept: the verdict is said softly
    bool counted = true;  ///< without a place of its own
};

class BenchRow : public QWidget {
    Q_OBJECT

  public:
    explicit BenchRow(Session& session, QWidget* parent = nullptr);
    void show(std::vector<BenchRowFrame> frames, std::optional<std::size_t> current);
    /// Where a frame lies, flags and verdict included.
    QRectF placeOf(std::size_t frame) const;

    bool hasHeightForWidth() const override { return true; }
    int heightForWidth(int width) const override;
    QSize sizeHint() const override { return {width(), heightForWidth(width())}; }
    QSize minimumSizeHint() const override;

  Q_SIGNALS:
    void frameClicked(int frame);

  protected:
    void paintEvent(QPaintEvent*) override;
    void mousePressEvent(QMouseEvent* event) override;

  private:
    double frameWidth(double width) const;
    double frameHeight(double width) const;
    std::size_t perRow(double width) const;
    double rowHeight(double width) const;

    Session& m_session;
    std::vector<BenchRowFrame> m_frames;
    std::optional<std::size_t> m_current;
};

}  // namespace combwright
