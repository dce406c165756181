// The supers that could come off, hive by hive: boxes to take lifted and moved aside, each with its
// verdict and reason in words.
#pragma once

#include <QWidget>
#include <vector>

#include "core/places/pull/pull_sheet.h"
#include "ui/drawing/stack.h"
#include "ui/shell/session.h"

namespace combwright {

class PullBoard : public QWidget {
    Q_OBJECT

  public:
    explicit PullBoard(Session& session, QWidget* parent = nullptr);
    void show(const PullSheet& sheet, const Clearers& boards = {});
    /// Puts the cursor on that box; false where it is not here.
    bool choose(Id<Box> box);
    /// The box under the cursor; nothing where there is none.
    const PullBoxRow* current() const;
    const PullHiveRow* currentHive() const;
    /// Where it stands, to be scrolled to.
    QRect currentRect() const;
    int heightForWidth(int width) const override;

  Q_SIGNALS:
    void currentChanged();
    void decided(std::int64_t box, combwright::PullVerdict verdict);
    void decisionTakenBack(std::int64_t box);
    /// A peg is to be clipped to the box under the cursor; what was typed of its number already.
    void pegAsked(const QString& typed);
    /// A clearer board in, or out, at the hive under the cursor · in or out at all it concerns.
    void boardAsked();
    void boardsInAsked();
    void boardsOutAsked();

  protected:
    void paintEvent(QPaintEvent*) override;
    void keyPressEvent(QKeyEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void focusInEvent(QFocusEvent*) override { update(); }
    void focusOutEvent(QFocusEvent*) override { update(); }
    void resizeEvent(QResizeEvent*) override;

  private:
    struct HiveCell {
        std::size_t yard;
        std::size_t hive;
        QRectF cell;
    };
    struct Laid {
        std::vector<HiveCell> hives;
        std::vector<std::pair<std::size_t, QRectF>> yardHeads;
        double height = 0;
    };
    Laid layOut(int width) const;
    QString yardText(const PullYardRow& yard) const;
    StackView stackOf(const PullHiveRow& hive) const;
    StackLayout stackLayout(const HiveCell& cell) const;
    QRectF stackRect(const HiveCell& cell) const;
    void moveTo(int hive, int box);
    void speak();

    Session& m_session;
    PullSheet m_sheet;
    Clearers m_boards;
    int m_hive = 0;  ///< index into the hives laid out
    int m_box = 0;   ///< from the top
};

}  // namespace combwright
