// Today: what is due, and what was left half done. Everything here is reckoned from the records, so
// nothing is kept by hand but the notes and the rules one does not want to hear of.
#pragma once

#include <QBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QScrollArea>

#include "ui/shell/place.h"
#include "ui/today/due_view.h"
#include "ui/today/half_done_view.h"
#include "ui/today/ribbon_view.h"

namespace combwright {

class TodayPlace : public Place {
    Q_OBJECT

  public:
    explicit TodayPlace(Session& session, QWidget* parent = nullptr);

    static QString wordInRail() { return tr("Today"); }
    QString railWord() const override { return wordInRail(); }
    PlaceHead head() const override;
    std::vector<KeyHint> hints() const override;
    std::vector<PrintSheet> sheets() const override;
    std::vector<Explained> explained() const override;
    QString help() const override;
    int waiting() const override;
    void act() override;

    DueView& due() { return *m_due; }
    HalfDoneView& half() { return *m_half; }
    /// Asks where, then writes what is due as a calendar file.
    void askForCalendar();
    /// Writes what is due as a calendar file; whether it was written, else why not was told.
    bool writeCalendarTo(const QString& path);

  protected:
    void readAnew() override;
    void keyPressEvent(QKeyEvent* event) override;
    void focusInEvent(QFocusEvent*) override;
    void resizeEvent(QResizeEvent* event) override;

  private:
    void fitColumns();
    void bringIntoSight(const LineList& list);
    void doLine(const DueLine& line);
    /// Lines of yard sheets that were typed and neither kept nor dropped.
    std::vector<HalfDone> typedNotKept() const;
    void carryOn(const HalfDone& half);
    void quietLine();
    std::optional<Id<Yard>> yardOfLine() const;

    QScrollArea* m_scroll;
    QWidget* m_content;
    YearRibbonView* m_ribbon;
    QBoxLayout* m_columns;
    QLabel* m_dueHead;
    QLabel* m_halfHead;
    QLabel* m_first;  ///< what to do first, in an empty season
    QPushButton* m_begin;
    DueView* m_due;
    HalfDoneView* m_half;
    DueList m_list;
    /// What is due and on which day that was reckoned; nothing when something was written since.
    mutable std::optional<std::pair<Day, int>> m_waiting;
};

}  // namespace combwright
