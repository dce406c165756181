// The buckets side by side, those with honey first and then those that will be needed. One is
// chosen; a number typed is what it weighs, "half" how high it stands.
#pragma once

#include <QWidget>

#include "core/places/honey/bucket_sheet.h"
#include "ui/drawing/bucket.h"
#include "ui/drawing/figure.h"
#include "ui/shell/session.h"

namespace combwright {

class BucketBoard : public QWidget {
    Q_OBJECT

  public:
    explicit BucketBoard(Session& session, QWidget* parent = nullptr);
    void show(const BucketSheet& sheet);
    const BucketLine* current() const;
    QRect currentRect() const { return cell(m_index).toAlignedRect(); }
    void choose(int index);

    QSize sizeHint() const override { return minimumSizeHint(); }
    QSize minimumSizeHint() const override;

  Q_SIGNALS:
    void chosen();
    void typed(const QString& text);

  protected:
    void paintEvent(QPaintEvent*) override;
    void keyPressEvent(QKeyEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseDoubleClickEvent(QMouseEvent* event) override;
    void resizeEvent(QResizeEvent*) override { setMinimumHeight(heightFor(width())); }
    void focusInEvent(QFocusEvent*) override;
    void focusOutEvent(QFocusEvent*) override { update(); }

  private:
    int perRow(int width) const;
    int heightFor(int width) const;
    QRectF cell(int index) const;
    BucketView view(const BucketLine& line) const;
    void speak();

    Session& m_session;
    BucketSheet m_sheet;
    int m_index = 0;
};

}  // namespace combwright
