// Honey room: what goes in the extractor next, and who gave what. From left to right as the room
// is: boxes waiting, the extractor, buckets; below, the line one types and the run's balance.
#pragma once

#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QScrollArea>
#include <QTableWidget>

#include "core/places/load_sheet.h"
#include "core/places/run_balance.h"
#include "ui/honey_room/extractor_view.h"
#include "ui/shell/place.h"

namespace combwright {

class BucketRow;
class RunDrawing;

class HoneyRoomPlace : public Place {
    Q_OBJECT

  public:
    explicit HoneyRoomPlace(Session& session, QWidget* parent = nullptr);

    QString railWord() const override { return tr("Honey room"); }
    PlaceHead head() const override;
    std::vector<KeyHint> hints() const override;
    std::vector<PrintSheet> sheets() const override;
    QString help() const override;
    void act() override;
    void reload() override;
    QWidget* headControls() override { return m_runs; }

    /// What is typed in the entry line, done: "M07 21.4" weighs a box full, "M07 wet 5.2" wet,
    /// "B3 13.0 17.2" fills a bucket with that water, "cappings 11". False where it was refused.
    bool enter(const QString& text);
    std::optional<Id<Extraction>> run() const { return m_run; }
    LoadView& loadView() { return *m_load; }

  protected:
    void focusInEvent(QFocusEvent*) override { m_entry->setFocus(); }

  private:
    void fillRuns();
    void fillBoxes();
    void fillLoad();
    void spun(Ran ran);
    bool enterBox(const QStringList& words);
    bool enterBucket(const QStringList& words);

    QComboBox* m_runs;
    QLabel* m_caution;
    QLabel* m_empty;
    QWidget* m_room;
    QScrollArea* m_roomScroll;
    QTableWidget* m_boxes;
    LoadView* m_load;
    QLabel* m_loadText;
    BucketRow* m_buckets;
    QLabel* m_balanceText;
    RunDrawing* m_drawing;
    QLineEdit* m_entry;
    std::optional<Id<Extraction>> m_run;
    LoadSheet m_loads;
    int m_loadIndex = 0;
    std::optional<RunBalance> m_balance;
};

}  // namespace combwright
