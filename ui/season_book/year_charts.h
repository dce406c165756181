// Through the year under the timeline: mites, weights, brood and stores, one chart at a time,
// chosen in one box. A year nothing was written down in has a sentence there, never empty axes.
#pragma once

#include <QBoxLayout>
#include <QComboBox>
#include <QLabel>

#include "core/places/explain/explain_marks.h"
#include "ui/season_book/chart_pane.h"

namespace combwright {

class YearCharts : public QWidget {
    Q_OBJECT

  public:
    enum class What { Mites, Weights, Brood, Stores };

    explicit YearCharts(Session& session, QWidget* parent = nullptr);
    void show(int year);
    void choose(What what);
    What chosen() const { return m_what; }
    QComboBox& choice() { return *m_choice; }
    ChartPane& pane() { return *m_pane; }
    void toggleTable() { m_pane->toggleTable(); }
    bool hasFocusInside() const { return m_pane->hasFocusInside() || m_choice->hasFocus(); }
    const ChartBlock& chartBlock() const { return m_pane->chartBlock(); }
    /// What the mark one is at was made of; nothing where one is at none.
    MarkRecord currentRecord() const;
    /// What a file with this chart is called, "%1" for the year.
    QString fileNamePattern() const;

  Q_SIGNALS:
    void hiveOpened(combwright::Id<combwright::Hive> hive);

  private:
    ChartBlock chartOf(What what) const;
    void fill(const ChartBlock& chart);
    void sizes();

    Session& m_session;
    What m_what = What::Mites;
    bool m_own = false;  ///< the person chose what is shown
    int m_year = 0;
    QHBoxLayout* m_head;
    QLabel* m_title;
    QComboBox* m_choice;
    QLabel* m_about;
    ChartPane* m_pane;
    QLabel* m_note;
};

}  // namespace combwright
