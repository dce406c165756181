// The harvest timeline: the year's honey by run, lot, yard or hive, added up or each by itself,
// beside one or more other years. A chart has no voice of its own, so the arrows go from run to run
// and from year to year, and its table twin is one key away.
#pragma once

#include <QBoxLayout>
#include <QComboBox>
#include <QLabel>
#include <QStackedWidget>
#include <QTableWidget>

#include "core/places/pages/season_book/harvest_blocks.h"
#include "core/places/pages/season_book/harvest_chart.h"
#include "ui/drawing/steps_chart.h"
#include "ui/season_book/chart_pane.h"
#include "ui/shell/session.h"

namespace combwright {

/// The drawing with the keyboard's place in it.
class TimelineChart : public QWidget {
    Q_OBJECT

  public:
    explicit TimelineChart(Session& session, QWidget* parent = nullptr);
    void show(StepsView view, bool sameYear);
    const StepsView& view() const { return m_view; }
    QSize sizeHint() const override;
    QSize minimumSizeHint() const override { return sizeHint(); }

  Q_SIGNALS:
    void opened(int line, int run);

  protected:
    void paintEvent(QPaintEvent*) override;
    void keyPressEvent(QKeyEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void focusInEvent(QFocusEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;

  private:
    int steps() const;
    void go(int step);
    void goToLine(int line);
    QRectF drawingBox() const;

    Session& m_session;
    StepsView m_view;
    int m_line = 0;  ///< the year itself, or one beside it
    int m_at = 0;
};

class Timeline : public QWidget {
    Q_OBJECT

  public:
    explicit Timeline(Session& session, QWidget* parent = nullptr);
    void show(const SeasonYield& season, const std::vector<SeasonYield>& beside);
    void choose(const HarvestDrawn& drawn);
    const HarvestDrawn& drawn() const { return m_drawn; }
    QComboBox& choice() { return *m_choice; }
    /// One more year beside, or after the last again only the one chosen.
    void oneMoreYear();
    /// All years beside, in the order they are drawn.
    const std::vector<SeasonYield>& besides() const { return m_besides; }

    /// Chart or table; the other way each time.
    void toggleTable();
    bool tableShown() const;
    QTableWidget& table() { return *m_table; }
    TimelineChart& chart() { return *m_chart; }
    /// What is shown where it is not the year's own steps.
    ChartPane& pane() { return *m_pane; }
    bool hasFocusInside() const;
    /// To where the person was.
    void focusBack();
    /// The run the person is at, where the focus is here.
    std::optional<Id<Extraction>> currentRun() const;
    /// As it is shown, on paper and in rows.
    Page page(Day printed) const;
    HarvestTable rows() const;

  Q_SIGNALS:
    void runOpened(combwright::Id<combwright::Extraction> run);

  private:
    bool eventFilter(QObject* watched, QEvent* event) override;
    bool ownSteps() const { return m_drawn == HarvestDrawn{}; }
    void fill();
    void fillTable(const HarvestTable& table);
    void findYears();
    void open(int row);
    void sizes();
    std::optional<Id<Extraction>> runAt(int line, int step) const;

    Session& m_session;
    SeasonYield m_season;
    std::vector<SeasonYield> m_given;    ///< beside it, chosen in the head
    std::vector<SeasonYield> m_besides;  ///< with those that were asked for besides
    std::size_t m_more = 0;
    HarvestDrawn m_drawn;
    std::vector<std::optional<Id<Extraction>>> m_rowRuns;  ///< by the table's rows
    int m_year = 0;
    QHBoxLayout* m_head;
    QLabel* m_title;
    QComboBox* m_choice;
    QStackedWidget* m_stack;
    TimelineChart* m_chart;
    QTableWidget* m_table;
    ChartPane* m_pane;
};

}  // namespace combwright
