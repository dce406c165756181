#include "ui/shell/file_ways.h"

#include <QDir>
#include <QFile>
#include <QFileDialog>
#include <QFileInfo>
#include <QMimeData>
#include <QStandardPaths>
#include <QUrl>

#include "core/actions/load_season.h"
#include "core/actions/photos/photos.h"
#include "core/exchange/export.h"
#include "core/model/season_info.h"
#include "core/storage/backup.h"
#include "core/words/words.h"
#include "ui/shell/copies/copies_dialog.h"
#include "ui/shell/copies/moved_dialog.h"
#include "ui/shell/copies/salvage_dialog.h"
#include "ui/shell/import/import_dialog.h"
#include "ui/shell/photos/photos_dialog.h"

namespace combwright {
namespace {

constexpr QLatin1String seasonEnding(".combwright");

QString documentsFolder() {
    return QStandardPaths::writableLocation(QStandardPaths::DocumentsLocation);
}

/// Where a new file shall be. An existing one is never replaced: choosing it is refused later, with
/// a sentence, rather than asked about here.
QString askWhere(QWidget* over, const QString& title, const QString& suggested) {
    QString path = QFileDialog::getSaveFileName(over, title, suggested,
                                                FileWays::tr("Season files (*.combwright)"),
                                                nullptr, QFileDialog::DontConfirmOverwrite);
    if (!path.isEmpty() && !path.endsWith(seasonEnding)) path += seasonEnding;
    return path;
}

}  // namespace

FileWays::FileWays(Session& session, QWidget& window)
    : QObject(&window), m_session(session), m_window(window) {
    connect(&session, &Session::seasonChanged, this, &FileWays::remember);
    connect(&session, &Session::pathChanged, this, &FileWays::remember);
    // Not at once: the trouble is told from the middle of keeping a line.
    connect(&session, &Session::movedAway, this, &FileWays::offerToKeepOurs, Qt::QueuedConnection);
}

void FileWays::remember() {
    if (!m_session.hasSeason() || m_session.isSample() || !m_session.leavesTrace()) return;
    const auto info = m_session.read().first<SeasonInfo>({});
    m_recent.add(m_session.path(), info ? fromUtf8(info->name.text()) : QString(),
                 m_session.clock().today());
    Q_EMIT recentChanged();
}

QString FileWays::folderToBegin() const {
    const auto seasons = m_recent.list();
    for (const RecentSeason& season : seasons)
        if (season.there) return QFileInfo(season.path).absolutePath();
    return documentsFolder();
}

QString FileWays::freshName(const QString& beside, const QString& addition) const {
    const QFileInfo file(beside);
    const QString folder =
        QFileInfo(file.absolutePath()).isWritable() ? file.absolutePath() : documentsFolder();
    const QString stem = folder + QLatin1Char('/') + file.completeBaseName() + addition;
    QString path = stem + seasonEnding;
    for (int n = 2; QFileInfo::exists(path); ++n)
        path = stem + QStringLiteral("-%1").arg(n) + seasonEnding;
    return path;
}

void FileWays::make() {
    Q_EMIT leaving();
    const QString path = askWhere(&m_window, tr("Where shall the season file be?"),
                                  folderToBegin() + QStringLiteral("/season") + seasonEnding);
    if (!path.isEmpty()) m_session.make(path);
}

void FileWays::open() {
    Q_EMIT leaving();
    const QString path =
        QFileDialog::getOpenFileName(&m_window, tr("Open a season file"), folderToBegin(),
                                     tr("Season files (*.combwright);;All files (*)"));
    if (!path.isEmpty()) openPath(path);
}

void FileWays::openPath(const QString& path) {
    Q_EMIT leaving();
    if (m_elsewhere && path != m_session.path() && m_elsewhere(path)) {
        m_session.tell(tr("%1 is open in another window, which was asked to come forward.")
                           .arg(QFileInfo(path).fileName()));
        return;
    }
    m_session.open(path);
}

void FileWays::exploreSample() {
    Q_EMIT leaving();
    m_session.exploreSample();
}

void FileWays::closeSeason() {
    if (!m_session.hasSeason()) return;
    Q_EMIT leaving();
    beforeClosing();
    m_session.close();
}

bool FileWays::hasCopies(const QString& seasonPath) const {
    return !copiesBeside(seasonPath.toStdString()).empty();
}

void FileWays::lookAtCopies(const QString& seasonPath) {
    CopiesDialog dialog(m_session.look(), seasonPath, &m_window);
    if (dialog.exec() != QDialog::Accepted) return;
    const QString beside = seasonPath.isEmpty() ? dialog.chosen() : seasonPath;
    const QString to = askWhere(&m_window, tr("Where shall the restored season be?"),
                                freshName(beside, QStringLiteral("-restored")));
    if (to.isEmpty()) return;
    Q_EMIT leaving();
    m_session.restore(dialog.chosen(), to);
}

void FileWays::salvage(const QString& damaged) {
    const QString to = askWhere(&m_window, tr("Where shall what can be read be saved?"),
                                freshName(damaged, QStringLiteral("-saved")));
    if (to.isEmpty()) return;
    Q_EMIT leaving();
    QStringList report;
    if (!m_session.salvage(damaged, to, report)) return;
    SalvageDialog(m_session.look(), report, to, &m_window).exec();
}

void FileWays::importTable() {
    if (!m_session.hasSeason()) return;
    Q_EMIT leaving();
    ImportDialog dialog(m_session, &m_window);
    dialog.exec();
}

bool FileWays::writeWhole() {
    if (!m_session.hasSeason()) return false;
    Q_EMIT leaving();
    const QFileInfo season(m_session.path());
    QString folder = QFileDialog::getSaveFileName(
        &m_window, tr("A new folder for the whole season"),
        folderToBegin() + QLatin1Char('/') + season.completeBaseName() + QStringLiteral("-tables"),
        QString(), nullptr, QFileDialog::DontConfirmOverwrite);
    if (folder.isEmpty()) return false;
    std::optional<Result<std::vector<std::string>>> written;
    QString wrong;
    m_session.reading([&] {
        try {
            written = exportSeason(m_session.read(), folder.toStdString());
        } catch (const StorageError& error) {
            wrong = sentence(error);
        }
    });
    if (!wrong.isEmpty()) {
        m_session.tell(wrong, true);
        return false;
    }
    if (!written) return false;
    if (!*written) {
        m_session.tell(sentence(written->error()), true);
        return false;
    }
    m_session.tell(tr("%1 files written to %2: every table, and the whole season as season.json.")
                       .arg((*written)->size())
                       .arg(folder));
    return true;
}

void FileWays::showPhotos(const GoTo& at) {
    if (!m_session.hasSeason()) return;
    Q_EMIT leaving();
    PhotosDialog dialog(m_session, &m_window, at);
    dialog.exec();
}

void FileWays::makeFromJson() {
    Q_EMIT leaving();
    const QString from =
        QFileDialog::getOpenFileName(&m_window, tr("Which exported season?"), folderToBegin(),
                                     tr("Exported seasons (*.json);;All files (*)"));
    if (from.isEmpty()) return;
    QFile file(from);
    if (!file.open(QIODevice::ReadOnly)) {
        m_session.tell(tr("%1 cannot be read: %2.").arg(from, file.errorString()), true);
        return;
    }
    const QByteArray json = file.readAll();
    const QString to = askWhere(&m_window, tr("Where shall the season file be?"),
                                freshName(from, QStringLiteral("-read-in")));
    if (to.isEmpty() || !m_session.make(to)) return;
    LoadSeason load;
    load.on = m_session.clock().today();
    load.fileName = QFileInfo(from).fileName().toStdString();
    load.season = json.toStdString();
    if (!m_session.run(load)) return;
    const std::string folder = QFileInfo(from).absolutePath().toStdString();
    m_session.together([&folder](Season& season) -> Result<void> {
        const auto pictures = bringPictures(season, folder);
        if (!pictures) return pictures.error();
        return {};
    });
    m_session.tell(tr("The season was read in from %1.").arg(from));
}

bool FileWays::keepOurs(QWidget* over) {
    const QString to = askWhere(over ? over : &m_window, tr("Where shall ours be kept?"),
                                freshName(m_session.path(), QStringLiteral("-ours")));
    if (to.isEmpty() || !m_session.keepOursAs(to)) return false;
    // The line whose keeping was refused is kept now.
    Q_EMIT leaving();
    return true;
}

void FileWays::offerToKeepOurs() {
    if (m_offer || m_session.standing() == Season::Standing::Ours) return;
    auto* offer = new MovedDialog(m_session, *this, &m_window);
    m_offer = offer;
    offer->setAttribute(Qt::WA_DeleteOnClose);
    offer->open();
}

void FileWays::beforeClosing() {
    if (!m_session.hasSeason() || m_session.isSample() || m_offer) return;
    if (m_session.standing() == Season::Standing::Ours) return;
    MovedDialog offer(m_session, *this, &m_window);
    m_offer = &offer;
    offer.exec();
}

QString FileWays::seasonIn(const QMimeData* dragged) {
    if (!dragged || !dragged->hasUrls() || dragged->urls().size() != 1) return {};
    const QString path = dragged->urls().constFirst().toLocalFile();
    return path.endsWith(seasonEnding) && QFileInfo(path).isFile() ? path : QString();
}

}  // namespace combwright
