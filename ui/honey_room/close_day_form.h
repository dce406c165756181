// "Close the day": one form that enters a run in two minutes, afterwards or at its end. The boxes
// of the pull list stand ticked, all buckets go into one line, the cappings tub by its level; who
// weighed has a field for each weight. What is missing is asked kindly and may stay unknown, what
// lies set aside must be settled, and the line at the foot says how the run would close as it
// stands. By the number pad: "/" goes to the next block, "+" keeps and closes.
#pragma once

#include <QCheckBox>
#include <QComboBox>
#include <QDialog>
#include <QGridLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QScrollArea>
#include <vector>

#include "core/actions/honey_room/runs.h"
#include "core/places/honey_room/day_closing.h"
#include "core/places/honey_room/room_boxes.h"
#include "ui/shell/session.h"

namespace combwright {

class CloseDayForm : public QDialog {
    Q_OBJECT

  public:
    /// Of an open run; without one a run is opened by the form.
    CloseDayForm(Session& session, std::optional<Id<Extraction>> run, QWidget* parent = nullptr);

    /// The run it kept; nothing while none was.
    std::optional<Id<Extraction>> keptRun() const { return m_kept; }
    const ClosingOutlook& outlook() const { return m_outlook; }

  protected:
    void keyPressEvent(QKeyEvent* event) override;
    bool eventFilter(QObject* watched, QEvent* event) override;

  private:
    struct BoxRow {
        RoomBox box;
        QCheckBox* in = nullptr;    ///< of a planned box: whether it was in the run
        QLineEdit* mark = nullptr;  ///< of a box that is added here
        QLineEdit* full = nullptr;
        QLineEdit* wet = nullptr;
        QLineEdit* water = nullptr;               ///< per cent, as on its tag
        QString typedFull, typedWet, typedWater;  ///< as they stand in the file
        QLabel* about = nullptr;                  ///< its hive, frames and fill
        std::optional<Id<Yard>> yard;             ///< whose honey it is
    };
    struct BucketRow {
        QString mark;
        QLineEdit* name = nullptr;  ///< of a bucket that is added here
        QLineEdit* mass = nullptr;
        QLineEdit* water = nullptr;
    };
    struct PileRow {
        AsidePile pile;
        QComboBox* became = nullptr;
    };

    QLineEdit* field(const char* name, const QString& label, const QString& text);
    void buildHead(QGridLayout* grid);
    void buildBoxes(QVBoxLayout* inside);
    void buildBuckets(QVBoxLayout* inside);
    void buildPile(QVBoxLayout* inside);
    void buildFoot(QVBoxLayout* column);
    QLabel* blockHead(const QString& text);
    void beginWhereMissing();
    void addBoxRow(const RoomBox& box, bool known);
    void addBucketRow(const QString& mark, const QString& mass, const QString& water, bool known);
    void growWhereFull();
    /// Through the fields as one reads them, whenever some were added.
    void setTabs();
    /// Only boxes of the yard chosen are ticked: lots are kept apart.
    void takeYard();
    /// From the boxes to the buckets, the cappings, the frames set aside, the button that closes.
    void nextBlock();
    bool goOn(QWidget* from);
    bool padKey(QObject* watched, const QKeyEvent& event);
    bool isIn(const BoxRow& row) const;
    /// Whether a planned box is ticked beforehand: not what still stands on its hive when others
    /// were brought in. Honey that stayed on the hive is not shared out.
    bool offered(const RoomBox& box) const { return !box.plannedFor || !m_brought; }
    /// "6 frames of M05": what the loads kept leave over of the boxes that are in; empty where
    /// nothing is left or no load was kept.
    QString unspunHere() const;
    Day day() const;
    void judge();
    std::vector<BucketToFill> bucketsOfLine() const;
    void judgeBoxes(DayTyped& day);
    void judgeBuckets(DayTyped& day);
    /// The first field nobody can read, with why.
    QLineEdit* unreadable(QString& why) const;
    QLineEdit* unreadableBox(QString& why) const;
    QLineEdit* unreadableBucket(QString& why) const;
    Result<void> keepAll(Season& season, bool close);
    Result<void> keepBox(Season& season, Id<Extraction> run, const BoxRow& row) const;
    Result<void> keepBuckets(Season& season, Id<Extraction> run) const;
    Result<void> keepPile(Season& season) const;
    void keep(bool close);
    void sayBad(const QString& text);

    Session& m_session;
    std::optional<Id<Extraction>> m_run;
    std::optional<Id<Extraction>> m_kept;
    ClosingOutlook m_outlook;
    QLineEdit* m_lot = nullptr;
    QComboBox* m_yard = nullptr;
    QLineEdit* m_day = nullptr;
    QWidget* m_inside = nullptr;
    QGridLayout* m_boxGrid = nullptr;
    QGridLayout* m_bucketGrid = nullptr;
    std::vector<BoxRow> m_boxes;
    bool m_brought = false;             ///< a box is in the run or off its hive
    QString m_unspunAsked;              ///< asked about once; the next keep closes all the same
    std::vector<std::size_t> m_judged;  ///< rows of the boxes as the outlook counts them
    QLineEdit* m_bucketLine = nullptr;
    QLabel* m_filled = nullptr;  ///< the bucket line read back
    std::vector<BucketRow> m_buckets;
    QLineEdit* m_cappings = nullptr;
    std::vector<PileRow> m_pile;
    QLabel* m_how = nullptr;
    QPushButton* m_close = nullptr;
    QPushButton* m_keep = nullptr;
    QPushButton* m_cancel = nullptr;
};

}  // namespace combwright
