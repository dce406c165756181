// The head of a place: its title, where and what day under it, one big number with what it is, and
// the one thing to do next.
#pragma once

#include <QLabel>
#include <QPushButton>
#include <QWidget>

#include "ui/shell/place.h"

namespace combwright {

class PlaceHeadBar : public QWidget {
    Q_OBJECT

  public:
    explicit PlaceHeadBar(Session& session, QWidget* parent = nullptr);
    /// `pages` stands beside the title, `controls` under it.
    void show(const PlaceHead& head, QWidget* controls, QWidget* pages = nullptr);
    QPushButton* button() const { return m_action; }
    /// Nothing of what it says is cut at this width.
    bool showsAll() const;

  protected:
    void paintEvent(QPaintEvent*) override;
    void resizeEvent(QResizeEvent*) override { layOut(); }
    bool event(QEvent* event) override;

  private:
    /// Where things stand: all beside the title; the line under it below the button; or the number
    /// on a line of its own too. At large type on a small window nothing is cut, it goes below.
    enum class Stands { Beside, BelowButton, OwnLine };
    Stands roomFor(int buttonWidth) const;
    int underWidth() const;
    int titleWidth() const;
    int pagesWidth() const;
    void take(QWidget*& held, QWidget* given);
    int underLeft() const;
    int numberWidth() const;
    int noteWidth() const;
    void layOut();
    void paintNumberBeside(QPainter& painter, int right) const;
    void paintNumberBelow(QPainter& painter) const;

    Session& m_session;
    PlaceHead m_head;
    QWidget* m_controls = nullptr;
    QWidget* m_pages = nullptr;
    bool m_pagesBelow = false;  ///< no room for them beside the title
    QPushButton* m_action;
    Stands m_stands = Stands::Beside;
};

}  // namespace combwright
