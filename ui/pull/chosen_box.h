// The chosen box laid flat under the stacks: its frames from both sides as the last look tells, and
// what leaving and taking it would each bring, with a button for either. What is held back is only
// taken with a reason, asked for here.
#pragma once

#include <QBoxLayout>
#include <QFrame>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <vector>

#include "core/places/pull/pull_sheet.h"
#include "ui/drawing/frame_row.h"
#include "ui/shell/session.h"

namespace combwright {

/// The frames in rows as wide as there is room.
class FlatBox : public QWidget {
    Q_OBJECT

  public:
    explicit FlatBox(Session& session, QWidget* parent = nullptr);
    void show(const PullBoxRow* row);

  protected:
    void paintEvent(QPaintEvent*) override;
    void resizeEvent(QResizeEvent*) override { fitHeight(); }

  private:
    struct Rows {
        double frameWidth = 0;  ///< px
        std::size_t each = 1;
        std::size_t count = 0;
        double height = 0;  ///< of one row with what is written below it
    };
    Rows rowsFor(int width) const;
    void fitHeight();
    FrameRowView rowView(std::size_t first, std::size_t count, double frameWidth) const;
    void paintRow(QPainter& painter, const QRectF& box, std::size_t first,
                  const FrameRowView& view) const;

    Session& m_session;
    QString m_mark;
    std::vector<FrameView> m_frames;
    std::vector<std::optional<std::int64_t>> m_places;
};

class ChosenBox : public QFrame {
    Q_OBJECT

  public:
    explicit ChosenBox(Session& session, QWidget* parent = nullptr);
    /// The box under the cursor; nothing hides it. `otherwise` may come later.
    void show(const PullHiveRow* hive, const PullBoxRow* row);
    void tell(const std::vector<PullOtherwise>& otherwise);
    /// Asks why what is held back is taken all the same.
    void askWhy();
    bool asking() const { return m_ask->isVisible(); }
    /// Asks for the number of the peg that is clipped to it; what was typed of it already, else the
    /// next free one stands there to be taken by Enter.
    void askPeg(const QString& typed = {});

  Q_SIGNALS:
    void decided(std::int64_t box, combwright::PullVerdict verdict, const QString& reason);
    void decisionTakenBack(std::int64_t box);
    void pegged(std::int64_t box, std::int64_t number);
    /// The cursor belongs back with the stacks.
    void done();

  protected:
    bool eventFilter(QObject* watched, QEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;

  private:
    void giveReason();
    void givePeg();
    QWidget* pegRow();
    QString headText(const PullHiveRow& hive, const PullBoxRow& row) const;

    Session& m_session;
    QBoxLayout* m_top;
    QLabel* m_head;
    QPushButton* m_take;
    QPushButton* m_look;
    QPushButton* m_leave;
    QPushButton* m_back;
    FlatBox* m_flat;
    QLabel* m_words;
    QWidget* m_ask;
    QLabel* m_askWords;
    QLineEdit* m_reason;
    QPushButton* m_peg;
    QWidget* m_pegAsk;
    QLabel* m_pegWords;
    QLineEdit* m_pegNumber;
    std::optional<PullHiveRow> m_hive;
    std::optional<PullBoxRow> m_row;
};

}  // namespace combwright
