// What the two lists of Today share: one line is chosen, the arrows walk, Enter does what the line
// says, and the list is as high as its lines need. What a line says and shows is the list's own.
#pragma once

#include <QPainter>
#include <QWidget>

#include "ui/shell/session.h"

namespace combwright {

class LineList : public QWidget {
    Q_OBJECT

  public:
    LineList(Session& session, const QString& name, QWidget* parent);

    int currentRow() const { return m_row; }
    virtual QRect currentRect() const = 0;
    /// The nearest there is.
    void choose(int row);

    bool hasHeightForWidth() const override { return true; }
    QSize minimumSizeHint() const override { return {1, 1}; }

  Q_SIGNALS:
    void chosen();
    void moved();  ///< by hand: the line is to be in sight

  protected:
    virtual int rowCount() const = 0;
    /// Enter on the chosen line.
    virtual void doCurrent() = 0;
    /// The chosen line for who cannot see it.
    virtual void speak() = 0;

    const Look& look() const { return m_session.look(); }
    /// The lines are others now: still the same row, as far as there is one.
    void linesChanged(int row);
    /// What Enter does, at the line it does it with.
    void paintButton(QPainter& painter, const QRectF& box, const QString& words) const;

    void keyPressEvent(QKeyEvent* event) override;
    void resizeEvent(QResizeEvent*) override { updateGeometry(); }
    void focusInEvent(QFocusEvent*) override { update(); }
    void focusOutEvent(QFocusEvent*) override { update(); }

  private:
    int nearest(int row) const;

    Session& m_session;
    int m_row = 0;
};

}  // namespace combwright
