// Honey room: what goes in the extractor next, and who gave what. From left to right as the room
// is: boxes waiting, the extractor, buckets; below, the line one types and the run's balance.
#pragma once

#include <QComboBox>
#include <QGridLayout>
#include <QLabel>
#include <QPushButton>
#include <QScrollArea>
#include <QTableWidget>

#include "core/model/honey/extraction.h"
#include "core/places/run_balance.h"
#include "ui/honey_room/bucket_view.h"
#include "ui/honey_room/load_panel.h"
#include "ui/honey_room/room_entry.h"
#include "ui/honey_room/run_view.h"
#include "ui/honey_room/waiting_view.h"
#include "ui/shell/place.h"

namespace combwright {

class HoneyRoomPlace : public Place {
    Q_OBJECT

  public:
    explicit HoneyRoomPlace(Session& session, QWidget* parent = nullptr);

    QString railWord() const override { return tr("Honey room"); }
    PlaceHead head() const override;
    int waiting() const override;
    std::vector<KeyHint> hints() const override;
    std::vector<PrintSheet> sheets() const override;
    std::vector<Explained> explained() const override;
    QString help() const override;
    void act() override;
    QWidget* headControls() override { return m_runs; }

    std::optional<Id<Extraction>> run() const { return m_run; }
    LoadView& loadView() { return m_load->view(); }
    WaitingView& waiting() { return *m_waiting; }
    BucketBoard& buckets() { return *m_buckets; }
    RunView& balance() { return *m_balanceView; }
    QTableWidget& table() { return *m_table; }
    /// The form that enters a day or closes it.
    void closeDay();

  protected:
    void readAnew() override;
    void focusInEvent(QFocusEvent*) override { m_entry->setFocus(); }
    void resizeEvent(QResizeEvent*) override { arrange(); }
    void keyPressEvent(QKeyEvent* event) override;

  private:
    QWidget* buildCaution();
    QWidget* buildWaiting();
    QWidget* buildBuckets();
    QWidget* buildStrip();
    void connectAll();
    void sizes();
    void arrange();
    void fillRuns();
    void fillCaution();
    void fillWaiting();
    void fillBuckets();
    void fillBalance();
    void fillTable(const RoomBoxes& room);
    void targetBox(std::optional<bool> wet = std::nullopt, bool byHand = false);
    void afterWeighing(const EntryTarget& done);
    void showTable(bool shown);
    void takeOut();
    void spun(Ran ran);
    std::vector<Id<Extraction>> runsForLoads() const;
    std::vector<LoadSheet> loadsToPrint() const;
    bool isOpen() const { return m_open; }
    QString muted(const QString& text) const;

    QComboBox* m_runs;
    QWidget* m_cautionLine = nullptr;
    QLabel* m_caution = nullptr;
    QLabel* m_empty = nullptr;
    QScrollArea* m_scroll = nullptr;
    QWidget* m_room = nullptr;
    QGridLayout* m_grid = nullptr;
    QWidget* m_left = nullptr;
    QLabel* m_waitingTitle = nullptr;
    QLabel* m_extractBy = nullptr;
    WaitingView* m_waiting = nullptr;
    QTableWidget* m_table = nullptr;
    QLabel* m_waitingFoot = nullptr;
    LoadPanel* m_load = nullptr;
    QWidget* m_right = nullptr;
    QLabel* m_bucketTitle = nullptr;
    BucketBoard* m_buckets = nullptr;
    QLabel* m_bucketFoot = nullptr;
    QWidget* m_strip = nullptr;
    QGridLayout* m_stripGrid = nullptr;
    QWidget* m_stripButtons = nullptr;
    QPushButton* m_spun = nullptr;
    QPushButton* m_walked = nullptr;
    QPushButton* m_stopped = nullptr;
    QPushButton* m_closeDay = nullptr;
    RoomEntry* m_entry = nullptr;
    RunView* m_balanceView = nullptr;

    std::optional<Id<Extraction>> m_run;
    bool m_open = false;
    std::optional<RunBalance> m_balance;  ///< of the run chosen
    std::optional<RunBalance> m_shown;    ///< the one drawn at the foot
    std::optional<Day> m_cautionSeen;
};

}  // namespace combwright
