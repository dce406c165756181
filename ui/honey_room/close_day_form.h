// "Close the day": one form that enters a run in two minutes, afterwards or at its end. Boxes with
// full and wet, buckets, wet cappings; what is missing is asked kindly and may stay unknown, and
// the line at the foot says how the run would close as it stands.
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
#include "core/places/day_closing.h"
#include "core/places/room_boxes.h"
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

  private:
    struct BoxRow {
        RoomBox box;
        QCheckBox* in = nullptr;    ///< of a planned box: whether it was in the run
        QLineEdit* mark = nullptr;  ///< of a box that is added here
        QLineEdit* full = nullptr;
        QLineEdit* wet = nullptr;
    };
    struct BucketRow {
        QString mark;
        QLineEdit* name = nullptr;  ///< of a bucket that is added here
        QLineEdit* mass = nullptr;
        QLineEdit* water = nullptr;
    };

    QLineEdit* field(const char* name, const QString& label, const QString& text);
    void buildHead(QGridLayout* grid);
    void addBoxRow(const RoomBox& box, bool known);
    void addBucketRow(const QString& mark, const QString& mass, const QString& water, bool known);
    void growWhereFull();
    /// Through the fields as one reads them, whenever some were added.
    void setTabs();
    void judge();
    /// The first field nobody can read, with why.
    QLineEdit* unreadable(QString& why) const;
    Result<void> keepAll(Season& season, bool close);
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
    std::vector<std::size_t> m_judged;  ///< rows of the boxes as the outlook counts them
    std::vector<BucketRow> m_buckets;
    QLineEdit* m_cappings = nullptr;
    QLabel* m_how = nullptr;
    QPushButton* m_close = nullptr;
    QPushButton* m_keep = nullptr;
    QPushButton* m_cancel = nullptr;
};

}  // namespace combwright
