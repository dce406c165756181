// Storeroom: what have I got, and what state is it in. The counts at the left, the frame board
// shelf by shelf, the bench below it with what next season needs beside it, and the freezer as a
// lane of time. Arrow to a box and type its counts, or to a frame and press a letter for what is
// seen and a digit for what becomes of it.
#pragma once

#include <QBoxLayout>
#include <QElapsedTimer>
#include <QLabel>
#include <QPushButton>
#include <QScrollArea>
#include <functional>
#include <utility>
#include <vector>

#include "core/places/storeroom/bench.h"
#include "core/places/storeroom/frame_board.h"
#include "core/places/storeroom/needs.h"
#include "core/places/storeroom/stack_weight.h"
#include "ui/shell/place.h"
#include "ui/storeroom/bench_panel.h"
#include "ui/storeroom/board_counts.h"
#include "ui/storeroom/board_filter.h"
#include "ui/storeroom/frame_board_view.h"
#include "ui/storeroom/lane_view.h"
#include "ui/storeroom/needs_card.h"

namespace combwright {

class StoreroomPlace : public Place {
    Q_OBJECT

  public:
    explicit StoreroomPlace(Session& session, QWidget* parent = nullptr);

    static QString wordInRail() { return tr("Storeroom"); }
    QString railWord() const override { return wordInRail(); }
    std::optional<DueWhere> worksAt() const override { return DueWhere::Storeroom; }
    bool resumes(const QString& sheet, const QString&) const override {
        return sheet.startsWith(QLatin1String("bench"));
    }
    PlaceHead head() const override;
    std::vector<KeyHint> hints() const override;
    std::vector<PrintSheet> sheets() const override;
    std::vector<Explained> explained() const override;
    QString help() const override;
    int waiting() const override;
    void act() override { Q_EMIT printAsked(); }

    FrameBoardView& board() { return *m_board; }
    BenchPanel& bench() { return *m_bench; }
    BoardCounts& counts() { return *m_counts; }
    NeedsCard& needs() { return *m_needs; }
    LaneView& lane() { return *m_lane; }
    const NextSeason& next() const { return m_next; }
    /// Letters and digits go to the frame under the cursor, not to the box.
    bool atFrame() const { return m_atFrame; }

  protected:
    void readAnew() override;
    void focusInEvent(QFocusEvent*) override;
    void resizeEvent(QResizeEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    bool eventFilter(QObject* watched, QEvent* event) override;

  private:
    /// What a button or a line of its menu opens, on the day; behind it the board has the cursor.
    using Deed = std::function<void(Day)>;
    using MenuLine = std::pair<QString, Deed>;
    QPushButton* addButton(const QString& text, const char* name);
    QPushButton* addButton(const QString& text, const char* name, Deed deed);
    void addMenu(const QString& text, const char* name, const std::vector<MenuLine>& lines);
    void doIt(const Deed& deed);
    void addButtons();
    void addMenus();
    void listen();
    void arrange();
    void applyFilter(const BoardFilter& filter);
    void fillBench();
    void fillWarnings();
    std::optional<Id<Box>> currentBox() const;
    bool boardKey(int key, const QString& text);
    bool boardLetter(QChar letter);
    void pointAtFrame(bool at);
    void beginLine(const QString& text);
    void keepLine(const QString& line);
    void beginCorrection();
    void keepCorrection(const QString& line, const QString& why);
    QString draftSheet() const;
    /// What was typed for the box and not kept, of this run of the program or the last.
    QString lineDraft(const QString& sheet = QStringLiteral("bench")) const;
    void holdDraft(const QString& line);
    void dropDraft();
    void seeAtFrame(char letter);
    void judgeFrame(Verdict verdict);
    void followFrame(Count slot);
    void judgeChosen(Verdict verdict);
    void goOn();
    /// Marks of the chosen boxes, parted by commas.
    QString chosenMarks() const;
    /// The same for a form's field; empty where no box is under the cursor.
    QString typedBoxes() const;

    QScrollArea* m_whole;
    QWidget* m_body;
    QBoxLayout* m_across;  ///< counts beside the rest
    QBoxLayout* m_below;   ///< bench beside the card
    BoardCounts* m_counts;
    BoardFilterRow* m_filterRow;
    QWidget* m_buttons;
    QPushButton* m_contacts = nullptr;  ///< shown where disease is suspected
    QLabel* m_warnings;
    FrameBoardView* m_board;
    QLabel* m_empty;
    BenchPanel* m_bench;
    QScrollArea* m_needsScroll;
    NeedsCard* m_needs;
    LaneView* m_lane;

    BoardFilter m_filter;
    NextSeason m_next;
    std::optional<ShelfWeights> m_weights;
    std::optional<BenchBox> m_box;
    std::optional<Id<Box>> m_lineBox;  ///< the box the line is typed for
    bool m_atFrame = false;
    std::pair<Verdict, std::string> m_asked;  ///< what a digit would do to the chosen boxes
    QElapsedTimer m_askedAt;
};

}  // namespace combwright
