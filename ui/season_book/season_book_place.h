// Season book: what did the year bring. A page, not a dashboard: the year in a sentence, the
// timeline, who gave what, what was reckoned and got; each prints, leaves as a file, and opens the
// records it is made of.
#pragma once

#include <QBoxLayout>
#include <QComboBox>
#include <QLabel>
#include <QScrollArea>
#include <QStackedWidget>

#include "ui/season_book/reckoned_view.h"
#include "ui/season_book/records_view.h"
#include "ui/season_book/timeline.h"
#include "ui/season_book/year_charts.h"
#include "ui/season_book/yield_table.h"
#include "ui/shell/place.h"

namespace combwright {

class SeasonBookPlace : public Place {
    Q_OBJECT

  public:
    explicit SeasonBookPlace(Session& session, QWidget* parent = nullptr);

    QString railWord() const override { return tr("Season book"); }
    PlaceHead head() const override;
    std::vector<KeyHint> hints() const override;
    std::vector<PrintSheet> sheets() const override;
    std::vector<Explained> explained() const override;
    QString help() const override;
    void act() override { Q_EMIT printAsked(); }
    QWidget* headControls() override { return m_controls; }

    Timeline& timeline() { return *m_timeline; }
    YearCharts& yearCharts() { return *m_yearCharts; }
    YieldTable& yields() { return *m_table; }
    ReckonedView& reckoned() { return *m_reckonedView; }
    RecordsView& records() { return *m_recordsView; }
    QComboBox& years() { return *m_years; }
    QComboBox& besides() { return *m_besides; }
    int year() const { return m_year; }
    QString sentence() const { return m_sentence->text(); }

    /// What the person is at: each prints and leaves as a file by itself.
    enum class BookBlock { Timeline, Year, Yields, Reckoned, Records };
    BookBlock currentBlock() const;
    Page blockPage() const;
    /// As CSV, SVG or PNG by the ending of the path; says whether it is there.
    bool exportTo(const QString& path);

  protected:
    void readAnew() override;
    void focusInEvent(QFocusEvent*) override;
    void resizeEvent(QResizeEvent* event) override;
    bool eventFilter(QObject* watched, QEvent* event) override;

  private:
    void addKeys();
    void fillYears();
    void arrange();
    void showNotes();
    void openRecords(const RecordsOf& of, QWidget* from);
    void closeRecords();
    void askWhereTo();
    void printBlock();
    HarvestTable blockTable() const;
    const SeasonYield& seasonOfRun(Id<Extraction> run) const;
    bool recordsShown() const { return m_leftStack->currentWidget() == m_recordsView; }
    bool anyHoney() const;

    QWidget* m_controls;
    QComboBox* m_years;
    QComboBox* m_besides;
    QLabel* m_besideWord;
    QScrollArea* m_scroll;
    QLabel* m_sentence;
    QLabel* m_first;  ///< what to do in a year without honey
    QWidget* m_blocks;
    QBoxLayout* m_across;
    QStackedWidget* m_leftStack;
    Timeline* m_timeline;
    YearCharts* m_yearCharts;
    ReckonedView* m_reckonedView;
    RecordsView* m_recordsView;
    YieldModel m_model;
    YieldTable* m_table;
    QLabel* m_notes;
    QWidget* m_cameFrom = nullptr;
    bool m_wide = true;
    int m_year = 0;
    int m_beside = 0;
    SeasonYield m_season;
    std::vector<SeasonYield> m_before;
};

}  // namespace combwright
