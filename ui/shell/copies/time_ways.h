// The window's ways through time and copies: the history in words, the season as it stood beside
// today's, what differs, what-ifs, and another copy taken in.
#pragma once

#include <QObject>
#include <QPointer>
#include <memory>
#include <vector>

#include "ui/shell/session.h"

class QWidget;

namespace combwright {

class MainWindow;

class TimeWays : public QObject {
    Q_OBJECT

  public:
    TimeWays(Session& session, QWidget& window);

    /// The history; what is chosen there is done after it was closed.
    void showHistory();
    /// The season as it stood after a step in a window of its own; nothing where it could not be
    /// made, which was told.
    MainWindow* showAsItStood(std::int64_t step, Day day);
    /// What differs between then and now, to be looked at and printed.
    void showDifferencesSince(std::int64_t step, Day day);
    /// What differs between two days, to be chosen and looked at; it begins with that one.
    void compareDays(Day from);
    void printHistory();
    /// Asks for a name and a place, then opens the what-if in a window of its own.
    void planWhatIf();
    /// Asks which, then compares it with what was done and offers to adopt it or to drop it.
    void settleWhatIf();
    void settleWhatIf(const QString& path);
    /// Asks which, then shows what would come.
    void takeInCopy();
    void takeInCopy(const QString& path);
    /// Windows opened from here go with the one they belong to.
    void closeBeside();
    MainWindow* openBeside(std::unique_ptr<Session> session);

  private:
    QString askCopy(const QString& title) const;
    bool isThisSeason(const QString& path);
    /// The session of a window opened from here on that file; nothing where there is none.
    Session* besideOf(const QString& path) const;

    Session& m_session;
    QWidget& m_window;
    struct Beside {
        QPointer<QWidget> window;
        QPointer<Session> session;
    };
    std::vector<Beside> m_beside;
};

}  // namespace combwright
