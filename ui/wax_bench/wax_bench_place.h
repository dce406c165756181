// Wax bench: how much wax there is and which candles by when. From the left to the right the wax of
// the year as a mass balance one can open; below it the evenings until the day candles are wanted,
// with their moulds; then what bites first. What is done is done by key, each in a short form.
#pragma once

#include <QComboBox>
#include <QLabel>
#include <QScrollArea>
#include <QTableWidget>
#include <functional>

#include "core/places/wax_bench/candle_evenings.h"
#include "core/places/wax_bench/wax_bench.h"
#include "ui/shell/heat_line.h"
#include "ui/shell/place.h"
#include "ui/wax_bench/bites_card.h"
#include "ui/wax_bench/evenings_grid.h"
#include "ui/wax_bench/flow_board.h"

class QPushButton;

namespace combwright {

class WaxBenchPlace : public Place {
    Q_OBJECT

  public:
    explicit WaxBenchPlace(Session& session, QWidget* parent = nullptr);

    static QString wordInRail() { return tr("Wax bench"); }
    QString railWord() const override { return wordInRail(); }
    std::optional<DueWhere> worksAt() const override;
    PlaceHead head() const override;
    std::vector<KeyHint> hints() const override;
    std::vector<PrintSheet> sheets() const override;
    std::vector<Explained> explained() const override;
    QString help() const override;
    int waiting() const override;
    void act() override { Q_EMIT printAsked(); }
    void goFor(const GoTo& where) override;
    bool takeBack() override;
    QWidget* headControls() override { return m_controls; }

    FlowBoard& flow() { return *m_flow; }
    EveningsGrid& evenings() { return *m_evenings; }
    BitesCard& bites() { return *m_bites; }
    HeatLine& heat() { return *m_heat; }
    QTableWidget& table() { return *m_table; }
    QComboBox& dates() { return *m_dates; }
    bool tableShown() const { return m_tableShown; }
    const std::optional<CandleEvenings>& plan() const { return m_plan; }
    QString stockWords() const { return m_stock->text(); }

  protected:
    void readAnew() override;
    void focusInEvent(QFocusEvent*) override;
    void resizeEvent(QResizeEvent* event) override;

  private:
    using Deed = std::function<bool(QWidget*, Session&, Day)>;
    void addDeed(QLayout* row, Qt::Key key, const QString& text, const char* name, Deed deed);
    /// `what` it does, for the sheet of keys.
    void addKey(Qt::Key key, const QString& what, const std::function<void()>& deed);
    void addDeeds();
    void listen();
    void arrange();
    void fillDates();
    void readPlan();
    void showPlan();
    void fillTable();
    /// Moulds with their cavities, and wick by size.
    std::pair<QStringList, QStringList> toPourWith() const;
    void fillStock();
    void toggleTable();
    void openRecords(const WaxRecordsOf& of);
    QString balanceWords() const;

    QWidget* m_controls;
    QComboBox* m_dates;
    QScrollArea* m_whole;
    QWidget* m_body;
    FlowBoard* m_flow;
    HeatLine* m_heat;
    EveningsGrid* m_evenings;
    QLabel* m_whatIf;
    BitesCard* m_bites;
    QLabel* m_empty;
    QTableWidget* m_table;
    QLabel* m_stock;
    QWidget* m_deeds;
    std::vector<QLabel*> m_groupWords;

    WaxBench m_bench;
    std::vector<CandleDate> m_known;
    std::optional<CandleDate> m_date;  ///< chosen; none: the next
    std::optional<CandleEvenings> m_plan;
    QString m_refused;
    bool m_tableShown = false;
    bool m_filling = false;
};

}  // namespace combwright
