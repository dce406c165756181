// Season book: what did the year bring. A page, not a dashboard: the year in a sentence, the
// timeline, who gave what, the runs; each prints and leaves as a file.
#pragma once

#include <QComboBox>
#include <QLabel>
#include <QTableView>

#include "ui/season_book/timeline.h"
#include "ui/season_book/yield_model.h"
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
    QString help() const override;
    void act() override { Q_EMIT printAsked(); }
    void reload() override;
    QWidget* headControls() override { return m_years; }
    Timeline& timeline() { return *m_timeline; }
    int year() const { return m_year; }

  protected:
    void focusInEvent(QFocusEvent*) override { m_table->setFocus(); }

  private:
    void fillYears();
    void exportFiles();
    QString runsText() const;

    QComboBox* m_years;
    QLabel* m_sentence;
    Timeline* m_timeline;
    QLabel* m_runs;
    YieldModel m_model;
    QTableView* m_table;
    int m_year = 0;
    SeasonYield m_season;
};

}  // namespace combwright
