// The balance of a run at the foot of the room: bands whose width is mass, hives in at the left,
// who gets what at the right, and the sum beside it; one line where the window is low. The line of
// a box without a tag takes the name of its hive from here.
#pragma once

#include <QWidget>
#include <vector>

#include "core/places/honey_room/run_balance.h"
#include "ui/drawing/balance.h"
#include "ui/drawing/lettering.h"
#include "ui/shell/session.h"

namespace combwright {

class RunView : public QWidget {
    Q_OBJECT

  public:
    explicit RunView(Session& session, QWidget* parent = nullptr);

    /// @param beside  what is said at the right of the head: how far another run is
    void show(const std::optional<RunBalance>& balance, const QString& beside);
    void setFolded(bool folded);
    bool isFolded() const { return m_folded; }
    /// The line chosen, in words; empty without any.
    QString currentText() const;

    QSize sizeHint() const override;
    QSize minimumSizeHint() const override { return sizeHint(); }

  Q_SIGNALS:
    /// The hive of this box of the run is to be named.
    void nameAsked(combwright::Id<combwright::ExtractionBox> box);

  protected:
    void paintEvent(QPaintEvent*) override;
    void keyPressEvent(QKeyEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void resizeEvent(QResizeEvent*) override { updateGeometry(); }
    void focusInEvent(QFocusEvent*) override { update(); }
    void focusOutEvent(QFocusEvent*) override { update(); }

  private:
    /// A line of the sum at the right.
    struct SumLine {
        QString what;
        FigureText figure;
        Tone tone = Tone::Ink;
    };
    void reckonViews();
    void takeIn(const RunBalance& balance);
    void takeOut(const RunBalance& balance);
    QRectF bandsBox() const;
    double sumWidth() const;
    void paintSum(QPainter& painter) const;
    QStringList foldedLines() const;
    QString headText() const;
    std::optional<Id<ExtractionBox>> boxToName() const;
    void speak();

    Session& m_session;
    std::optional<RunBalance> m_balance;
    QString m_beside;
    BalanceView m_view;
    std::vector<SumLine> m_sum;
    bool m_folded = false;
    int m_line = 0;  ///< of the shares
};

}  // namespace combwright
