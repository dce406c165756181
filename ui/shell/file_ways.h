// The window's ways to season files: make, open, explore, close, restore from a copy, and keep what
// is open as a new file where its own was moved or replaced. The start page, the keys and what is
// dropped on the window all come here.
#pragma once

#include <QObject>
#include <QPointer>
#include <functional>

#include "ui/shell/place.h"
#include "ui/shell/session.h"
#include "ui/shell/start/recent_seasons.h"

class QDialog;
class QMimeData;
class QWidget;

namespace combwright {

class FileWays : public QObject {
    Q_OBJECT

  public:
    FileWays(Session& session, QWidget& window);

    /// Asks where, then makes a new season there.
    void make();
    /// Asks which, then opens it.
    void open();
    void openPath(const QString& path);
    void exploreSample();
    void closeSeason();
    /// Whether there are copies beside a season.
    bool hasCopies(const QString& seasonPath) const;
    /// Shows the copies beside a season, and restores one into a new file.
    void lookAtCopies(const QString& seasonPath);
    /// Asks where, then saves what a damaged season still holds into a new file, shows what came of
    /// it, and opens that.
    void salvage(const QString& damaged);
    /// Looks at a table together with the person, and takes its rows in.
    void importTable();
    /// Asks where, then writes every table and the one JSON there. Whether it did.
    bool writeWhole();
    /// The photos in the season file; the next one is of where the person is.
    void showPhotos(const GoTo& at);
    /// Makes a new season out of the one JSON of an export.
    void makeFromJson();
    /// Asks where, then goes on with what is open in a new file. Whether it did.
    bool keepOurs(QWidget* over = nullptr);

    /// The file was moved or replaced under us: says so and offers to keep ours. Answers at once;
    /// one offer at a time.
    void offerToKeepOurs();
    /// Before the window closes: where what is open would be lost with it, offers to keep it and
    /// waits for the answer.
    void beforeClosing();

    /// The season file among what is dragged, or nothing.
    static QString seasonIn(const QMimeData* dragged);

    RecentSeasons& recent() { return m_recent; }
    /// Asks the window that has a file open to come forward; true when it does.
    void setElsewhere(std::function<bool(const QString&)> elsewhere) {
        m_elsewhere = std::move(elsewhere);
    }

  Q_SIGNALS:
    void leaving();  ///< what is half typed is to be kept now
    void recentChanged();

  private:
    void remember();
    QString folderToBegin() const;
    QString freshName(const QString& beside, const QString& addition) const;

    Session& m_session;
    QWidget& m_window;
    RecentSeasons m_recent;
    QPointer<QDialog> m_offer;
    std::function<bool(const QString&)> m_elsewhere;
};

}  // namespace combwright
