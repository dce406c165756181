// The load that turns, and the clock beside it: started by one key, calling softly when the load is
// nearly done and loudly when it is, until it is quieted. What turns is held beside the season, so
// that a window that was closed finds it again.
#pragma once

#include <QObject>
#include <QTimer>
#include <functional>
#include <vector>

#include "core/model/honey/extraction.h"
#include "core/places/honey_room/spin_watch.h"
#include "ui/shell/session.h"

namespace combwright {

/// A load as it was laid out when it began to turn; weighing goes on meanwhile and may plan the
/// rest anew.
struct HeldLoad {
    /// The part of one lot, as spin-load takes it.
    struct Part {
        Id<Extraction> run;
        QString slotLine;
    };
    std::int64_t number = 0;
    std::vector<Part> parts;
    Mass startOffset, endOffset, doubt;
    std::optional<Instant> begun = {};

    QString written() const;
    /// Nothing where that is no load.
    static std::optional<HeldLoad> read(const QString& written);
};

class SpinDesk : public QObject {
    Q_OBJECT

  public:
    explicit SpinDesk(Session& session, QObject* parent = nullptr);

    bool start(const HeldLoad& load, std::int64_t minutes);
    /// It stands: the clock is quiet, the load waits to be said how it ran.
    void stand();
    /// Hands out what turned or stands, with the minutes it took, and forgets it.
    struct Taken {
        HeldLoad load;
        std::optional<Minutes> minutes;
        SpinWatch watch = {};  ///< as it was: turning, or standing
    };
    std::optional<Taken> take();
    /// It was started by mistake.
    void abandon();
    /// Puts a load back that was taken: it turns on where it turned, else it stands.
    void putBack(const Taken& taken);

    bool turns() const { return m_watch.turns(); }
    bool stands() const { return m_load && !turns(); }
    const std::optional<HeldLoad>& load() const { return m_load; }
    SpinShown look() { return m_watch.look(session().clock()); }

    /// What the clock calls with; the program's own beep unless a test listens.
    void setBell(std::function<void()> bell) { m_bell = std::move(bell); }
    bool bellOn() const { return m_bellOn; }
    void setBellOn(bool on);
    /// Reads what turned when the program ended.
    void restore();
    /// Looks at the clock now; called every second while a load turns.
    void tick();

  Q_SIGNALS:
    void ticked();

  private:
    Session& session() const { return m_session; }
    void hold();
    void ring();

    Session& m_session;
    SpinWatch m_watch;
    std::optional<HeldLoad> m_load;
    std::optional<Minutes> m_minutes;  ///< of a load that stands
    SpinShown::Call m_called = SpinShown::Call::None;
    std::int64_t m_calls = 0;
    QTimer m_timer;
    std::function<void()> m_bell;
    bool m_bellOn = true;
};

}  // namespace combwright
