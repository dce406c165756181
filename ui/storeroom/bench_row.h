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

  Q_SIGNALS:
    void frameClicked(int frame);

  protected:
    void paintEvent(QPaintEvent*) override;
    void mousePressEvent(QMouseEvent* event) override;
    void resizeEvent(QResizeEvent*) override { fit(); }

  private:
    void fit();
    double frameWidth() const;
    double frameHeight() const;
    std::size_t perRow() const;
    double rowHeight() const;

    Session& m_session;
    std::vector<BenchRowFrame> m_frames;
    std::optional<std::size_t> m_current;
};

}  // namespace combwright
