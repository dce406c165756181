// The harvest timeline: honey in buckets added up over the year, beside the year before. A chart
// has no voice and no keyboard, so its table twin is one key away.
#pragma once

#include <QChartView>
#include <QTableWidget>
#include <QWidget>

#include "core/places/run_balance.h"
#include "ui/shell/session.h"

namespace combwright {

class Timeline : public QWidget {
    Q_OBJECT

  public:
    explicit Timeline(Session& session, QWidget* parent = nullptr);
    void show(const SeasonYield& season, const SeasonYield& before);
    /// Chart or table; the other way each time.
    void toggleTable();
    bool tableShown() const { return m_table->isVisibleTo(this); }
    QTableWidget& table() { return *m_table; }

    /// The picture as it stands: PNG at twice the size, or SVG with text as text. False where it
    /// cannot be written.
    bool exportPicture(const QString& path) const;
    /// The runs as CSV: day, lot, yard, grams, grams added up.
    bool exportCsv(const QString& path) const;

  private:
    void drawChart();
    void fillTable();

    Session& m_session;
    SeasonYield m_season;
    SeasonYield m_before;
    QChartView* m_view;
    QTableWidget* m_table;
};

}  // namespace combwright
