// Pull: which boxes do I bring in, and what is left for winter. The supers with their verdicts at
// the left and the chosen one laid flat below them; the limits as plain fields and what follows
// from them at the right, as one types. Where there is no room the one goes below the other.
#pragma once

#include <QBoxLayout>
#include <QFrame>
#include <QFutureWatcher>
#include <QLabel>
#include <QProgressBar>
#include <QPushButton>
#include <QScrollArea>
#include <QThreadPool>
#include <QTimer>
#include <functional>

#include "core/places/pull/pull_sheet.h"
#include "ui/pull/chosen_box.h"
#include "ui/pull/clearer_bar.h"
#include "ui/pull/pull_board.h"
#include "ui/pull/pull_follows.h"
#include "ui/pull/pull_limits.h"
#include "ui/pull/pull_question.h"
#include "ui/shell/place.h"

namespace combwright {

class PullPlace : public Place {
    Q_OBJECT

  public:
    /// How a plan is reckoned; called in another thread.
    using Reckoner = std::function<PullSheet(PullInput)>;

    explicit PullPlace(Session& session, QWidget* parent = nullptr);
    ~PullPlace() override;

    static QString wordInRail() { return tr("Pull"); }
    QString railWord() const override { return wordInRail(); }
    std::optional<DueWhere> worksAt() const override { return DueWhere::Pull; }
    PlaceHead head() const override;
    std::vector<KeyHint> hints() const override;
    std::vector<PrintSheet> sheets() const override;
    std::vector<Explained> explained() const override;
    QString help() const override;
    void act() override;
    bool takeBack() override;
    void settle() override;

    const PullSheet& sheet() const { return m_sheet; }
    PullBoard& board() { return *m_board; }
    /// Reckons in that way from now on.
    void reckonBy(Reckoner reckoner) { m_reckoner = std::move(reckoner); }

  protected:
    void readAnew() override;
    void focusInEvent(QFocusEvent*) override { m_board->setFocus(); }
    void resizeEvent(QResizeEvent* event) override;

  private:
    void buildLeft(QWidget* left);
    void buildCard();
    void listen();
    void ask();
    void decide(std::int64_t box, PullVerdict verdict, const QString& reason);
    void reckon();
    void reckonOtherwise();
    void tellOtherwise();
    void show(PullSheet sheet);
    void stop();
    void fillBox();
    void arrange();
    void showCurrent();
    void askNextPeg();
    void clip(std::int64_t box, std::int64_t number);
    /// The box to take that one comes to after that one; nothing where it is the last.
    std::optional<Id<Box>> nextToTake(Id<Box> after) const;
    void boardHere();
    void boardsIn();
    void boardsOut();
    bool keep();
    QString yardNames() const;

    PullBoard* m_board;
    QScrollArea* m_whole;
    QWidget* m_body;
    QBoxLayout* m_across;
    QWidget* m_left;
    PullQuestion* m_question;
    QWidget* m_busy;
    QScrollArea* m_scroll;
    QLabel* m_empty;
    ChosenBox* m_chosen;
    ClearerBar* m_boardBar;
    QScrollArea* m_cardScroll;
    QFrame* m_card;
    PullLimitFields* m_fields;
    PullFollows* m_follows;

    PullAsked m_asked;
    std::vector<PullForced> m_decidedBefore;  ///< what Ctrl+Z goes back to, oldest first
    bool m_askedKnown = false;
    std::optional<KeptPull> m_kept;
    PullInput m_input;
    PullSheet m_sheet;
    Clearers m_boards;
    /// After a peg: the box whose peg is asked for once the answer is there.
    std::optional<Id<Box>> m_pegNext;
    bool m_pegWaits = false;
    Reckoner m_reckoner;
    QThreadPool m_pool;
    QTimer m_slow;
    QFutureWatcher<PullSheet> m_watcher;
    QFutureWatcher<std::vector<PullOtherwise>> m_otherwise;
};

}  // namespace combwright
