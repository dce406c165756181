// A pot on heat, told in every place until somebody ticks that it is off: what, since when, how
// long. When nobody has said for a quarter of an hour that they are there, it calls, loudly, until
// somebody does. Wax is never left alone on heat.
#pragma once

#include <QTimer>
#include <QVBoxLayout>
#include <QWidget>
#include <functional>
#include <vector>

#include "core/places/wax_bench/heat_watch.h"
#include "ui/shell/session.h"

namespace combwright {

class HeatLine : public QWidget {
    Q_OBJECT

  public:
    /// Only one of them rings.
    HeatLine(Session& session, bool rings, QWidget* parent = nullptr);
    /// Looks again what is on; hides where nothing is.
    void look();
    /// Not shown here: the place in front has one of its own. It rings all the same.
    void standAside(bool aside);
    /// The pot that has been on longest is off. False where none is on.
    bool tickOff();
    /// Somebody is there: the clock is quiet again for a while.
    void quiet();
    const std::vector<HeatShown>& shown() const { return m_shown; }
    bool calls() const;
    QString words() const;

    /// What the clock calls with; the program's own beep unless a test listens.
    void setBell(std::function<void()> bell) { m_bell = std::move(bell); }
    /// Looks at the clock now; called every second while a pot is on.
    void tick();

  protected:
    void paintEvent(QPaintEvent*) override;

  private:
    void see(std::vector<HeatShown> now);
    void fill();
    QString sinceText(const HeatSession& heat) const;
    bool off(Id<HeatSession> pot);
    std::optional<Instant> lookedAt() const;

    Session& m_session;
    bool m_rings;
    bool m_aside = false;
    std::vector<HeatShown> m_shown;
    QVBoxLayout* m_rows;
    std::vector<QWidget*> m_rowWidgets;
    QTimer m_timer;
    std::int64_t m_calls = 0;
    std::function<void()> m_bell;
};

}  // namespace combwright
