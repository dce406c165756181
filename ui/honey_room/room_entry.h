// The line one types in the honey room. It knows which box, bucket or hive a bare number or name is
// for, so that nobody needs the grammar; a whole line ("M07 wet 5.2", "B3 half") says so itself.
#pragma once

#include <QLabel>
#include <QLineEdit>
#include <QWidget>
#include <functional>
#include <optional>

#include "core/model/honey/extraction.h"
#include "core/places/honey_room/room_boxes.h"
#include "core/words/room_line.h"
#include "ui/honey_room/pad_desk.h"
#include "ui/honey_room/read_back.h"
#include "ui/shell/session.h"

namespace combwright {

/// What is typed is for this.
struct EntryTarget {
    enum class What { Nothing, BoxFull, BoxWet, Bucket, HiveOfBox };
    What what = What::Nothing;
    std::optional<RoomBox> box;
    std::string bucket;
    std::optional<Id<ExtractionBox>> lost;  ///< the box whose hive is typed
    QString lostName;
};

class RoomEntry : public QWidget {
    Q_OBJECT

  public:
    explicit RoomEntry(Session& session, QWidget* parent = nullptr);

    void setRun(std::optional<Id<Extraction>> run, bool open = true) {
        m_run = run;
        m_open = open;
    }
    void setTarget(const EntryTarget& target);
    const EntryTarget& target() const { return m_target; }
    QLineEdit* line() const { return m_line; }
    PadDesk& pad() const { return *m_pad; }
    const ReadBack& readBack() const { return *m_back; }
    /// A bare number is for what was chosen: it was begun there, or there are no pegs.
    bool bareIsMass() const;
    /// Puts the beginning of a number into the line and the cursor behind it.
    void begin(const QString& text);
    /// Does what a line says. False where it was refused; the line then stays as it is.
    bool enter(const QString& text);
    /// Says again what is typed here, in the units shown.
    void describe();
    /// "open 27-3 Creek": the next lot of this file and a yard that exists.
    QString openExample() const;

  Q_SIGNALS:
    void runOpened(combwright::Id<combwright::Extraction> run);
    void closeAsked();
    void ranAsked(combwright::Ran ran);          ///< how the load in the extractor ran
    void stepAsked(int rows);                    ///< Up and Down choose another box
    void scrollAsked(int pages);                 ///< Page Up and Page Down move the room
    void weighed(combwright::EntryTarget done);  ///< by choosing or by its mark

  protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

  private:
    bool enterOpen(const RoomLine& line);
    bool enterBox(const RoomLine& line);
    bool enterHive(const QString& name, std::optional<Id<ExtractionBox>> box, const QString& of);
    bool enterBucket(const RoomLine& line);
    bool enterRest(const RoomLine& line);
    bool enterChosen(RoomLine line, const QString& text);
    bool weigh(const RoomBox& box, const Known<Mass>& mass, bool wet);
    /// @param said  what was told of the box just now; the water is said behind it
    bool keepWater(const RoomBox& box, double percent, const QString& said);
    /// Frames of a box of the run no load has spun; 0 where no load was kept.
    std::int64_t unspunIn(const RoomBox& box) const;
    bool countFrames(const RoomBox& box, int frames);
    bool refuse(const QString& text);
    QString weighExample() const;
    Day today() const { return m_session.clock().today(); }

    Session& m_session;
    QLabel* m_for;
    QLineEdit* m_line;
    ReadBack* m_back;
    PadDesk* m_pad = nullptr;
    bool m_begun = false;  ///< what is typed was begun at a box or bucket
    std::optional<Id<Extraction>> m_run;
    bool m_open = false;
    EntryTarget m_target;
    QString m_asked;  ///< an unknown mark that was asked about once
};

}  // namespace combwright
