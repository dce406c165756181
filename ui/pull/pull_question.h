// For which yards and which day: a tick for each open yard and the day as one says it. It wraps
// where the window is small or the type large.
#pragma once

#include <QCheckBox>
#include <QLabel>
#include <QLineEdit>
#include <QWidget>
#include <vector>

#include "core/places/pull/pull_input.h"
#include "ui/shell/session.h"

namespace combwright {

class PullQuestion : public QWidget {
    Q_OBJECT

  public:
    explicit PullQuestion(Session& session, QWidget* parent = nullptr);
    void show(const std::vector<Yard>& yards, const PullAsked& asked);
    /// Another season: nothing that was typed is kept.
    void forget();
    std::vector<Id<Yard>> yards() const;
    Day forDay() const { return m_forDay; }
    bool hasHeightForWidth() const override { return true; }
    int heightForWidth(int width) const override;
    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;

  Q_SIGNALS:
    void changed();

  protected:
    void resizeEvent(QResizeEvent*) override;

  private:
    void takeDay();
    /// Places everything from the left, line by line; returns the height. Only measures unless
    /// told.
    int flow(int width, bool place) const;

    Session& m_session;
    std::vector<std::pair<Id<Yard>, QCheckBox*>> m_ticks;
    QLabel* m_for;
    QLineEdit* m_day;
    QLabel* m_trouble;
    Day m_forDay;
};

/// The day meant for something still to come, seen from today: as dayInWords, but a weekday is the
/// next one, today included, and a day and month without a year the next that comes within eleven
/// months. Nothing for a day that is past or none at all.
std::optional<Day> comingDay(std::string_view text, Day today);

}  // namespace combwright
