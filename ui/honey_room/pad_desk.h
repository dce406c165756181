// The number pad at the line of the honey room: its keys go through the pad's own grammar first;
// what that does not know is left to the letter keyboard's lines. What is entered here is written
// down and read back; what needs the extractor or the clock is asked of the room.
#pragma once

#include <QLineEdit>
#include <QObject>
#include <deque>
#include <functional>

#include "core/model/honey/room.h"
#include "core/words/pad_line.h"
#include "ui/honey_room/entry_trail.h"
#include "ui/shell/session.h"

namespace combwright {

class PadDesk : public QObject {
    Q_OBJECT

  public:
    PadDesk(Session& session, QLineEdit* line, QObject* parent = nullptr);

    /// What the room is at: the run shown, the slots of the machine, whether a load turns, whether
    /// a bare number is for a box chosen otherwise.
    struct At {
        std::optional<Id<Extraction>> run;
        bool open = false;
        int slotCount = 12;
        bool spinning = false;
        bool bareIsMass = false;
    };
    void setAt(std::function<At()> at) { m_at = std::move(at); }

    const PadAsk& ask() const { return m_pad.ask(); }
    /// Whether the key now handled answers that question, asked before it; it is let go.
    bool answers(PadAsk::What what);
    /// Whether a key that acts at once is the same stroke again: a knuckle, or a key that bounces.
    /// Then it is told, and the key is to do nothing.
    bool bounced(QChar key);
    EntryTrail& trail() { return m_trail; }
    /// Asks as soon as nothing else is asked and no load turns.
    void askLater(const PadAsk& ask);
    void askNext();
    /// Lets go of everything asked.
    void forget();
    /// A key of the pad that acts at once, pressed as a button.
    void press(QChar key);

  Q_SIGNALS:
    void askChanged();
    void runMeant(combwright::Id<combwright::Extraction> run);  ///< a box went into this run
    void clockAsked();
    void takeBackAsked();  ///< of what is no entry: the clock just started
    void plusAsked();
    void ranAsked(combwright::Ran ran);
    void stoppedAfterAll();  ///< the load kept as walked just before
    void gateAsked();
    void asideAsked();
    void closeAsked();
    void seenAsked();
    void nextRunAsked();
    void dayLogAsked();
    void felt(const QString& letters, bool done);  ///< as they are typed, and when Enter ends them

  protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

  private:
    bool keyPressed(QKeyEvent& event);
    void handle(const PadDeed& deed);
    /// Something became of what is asked about already.
    bool isSettled(const PadAsk& ask) const;
    bool weigh(const PadDeed& deed);
    bool keepWater(const PadDeed& deed);
    bool fill(const PadDeed& deed);
    bool weighRest(const PadDeed& deed);
    bool keepFrames(const PadDeed& deed);
    bool keepAsideBox(const PadDeed& deed);
    bool keepWhy(const PadDeed& deed);
    bool settle(const PadDeed& deed);
    std::optional<Id<Extraction>> runFor(const PadDeed& deed);
    PadRoom room() const;
    void read(const QString& said);
    Day today() const { return m_session.clock().today(); }

    Session& m_session;
    QLineEdit* m_line;
    PadLine m_pad;
    EntryTrail m_trail;
    std::function<At()> m_at;
    std::deque<PadAsk> m_later;
    PadAsk m_asked;                  ///< before the key
    std::optional<QChar> m_lastKey;  ///< of those that act at once
    std::int64_t m_lastKeyAt = 0;    ///< steady ms
};

}  // namespace combwright
