// A box of the chosen hive laid flat below the stacks, as on the bench: its frames from the side,
// those known only as a count sorted at the right under one mark "counted".
#pragma once

#include <QWidget>
#include <optional>

#include "core/places/yard/yard_box.h"
#include "ui/drawing/frame_row.h"
#include "ui/shell/session.h"

namespace combwright {

class BoxLaidFlat : public QWidget {
    Q_OBJECT

  public:
    explicit BoxLaidFlat(Session& session, QWidget* parent = nullptr);
    void show(const BoxInside& inside);
    const FrameRowView& row() const { return m_row; }

  protected:
    void paintEvent(QPaintEvent*) override;
    void resizeEvent(QResizeEvent*) override { fit(); }

  private:
    void fit();
    double headHeight() const;

    Session& m_session;
    FrameRowView m_row;
    QString m_words;
};

}  // namespace combwright
