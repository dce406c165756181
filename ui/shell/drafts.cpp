#include "ui/shell/drafts.h"

#include <QCryptographicHash>
#include <QDir>
#include <QFile>
#include <QFileInfo>
#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>
#include <QSaveFile>

namespace combwright {
namespace {

/// A draft is a line or a note; what is larger was not written by us.
constexpr qint64 largestDraftFile = 1'000'000;

const QFile::Permissions onlyOurs = QFile::ReadOwner | QFile::WriteOwner;

}  // namespace

Drafts::Drafts(QObject* parent) : QObject(parent) {
    m_timer.setSingleShot(true);
    m_timer.setInterval(writtenAfterMs);
    connect(&m_timer, &QTimer::timeout, this, &Drafts::flush);
}

Drafts::~Drafts() { flush(); }

QString Drafts::defaultFolder() {
    // Qt 6.4 knows no state folder. A relative path is to be ignored.
    QString state = qEnvironmentVariable("XDG_STATE_HOME");
    if (!QDir::isAbsolutePath(state)) state = QDir::homePath() + QStringLiteral("/.local/state");
    return state + QStringLiteral("/combwright/drafts");
}

QString Drafts::fileFor(const QString& folder, const QString& seasonPath) {
    const QByteArray digest =
        QCryptographicHash::hash(seasonPath.toUtf8(), QCryptographicHash::Sha256);
    return folder + QLatin1Char('/') + QString::fromLatin1(digest.toHex().left(32)) +
           QStringLiteral(".json");
}

QString Drafts::open(const QString& seasonPath, const QString& folder) {
    flush();
    m_lines.clear();
    m_season.clear();
    m_file.clear();
    m_folder = folder;
    if (seasonPath.isEmpty() || folder.isEmpty()) return {};
    nameFile(seasonPath);
    return read();
}

void Drafts::nameFile(const QString& seasonPath) {
    const QFileInfo season(seasonPath);
    m_season = season.exists() ? season.canonicalFilePath() : season.absoluteFilePath();
    m_file = fileFor(m_folder, m_season);
}

void Drafts::follow(const QString& seasonPath) {
    if (m_file.isEmpty()) return;
    const QString before = m_file;
    nameFile(seasonPath);
    if (m_file == before) return;
    m_changed = !m_lines.empty();
    flush();
    QFile::remove(before);
}

QString Drafts::read() {
    QFile file(m_file);
    if (!file.exists()) return {};
    const auto damaged = [&] {
        m_lines.clear();
        file.close();
        QFile::remove(m_file);
        return tr(
            "The half-typed lines of last time could not be read and were put away; the "
            "season itself is whole.");
    };
    if (!file.open(QIODevice::ReadOnly) || file.size() > largestDraftFile) return damaged();
    const QJsonObject whole = QJsonDocument::fromJson(file.readAll()).object();
    const QJsonValue lines = whole.value(QStringLiteral("lines"));
    // Two paths with one digest there are not; a file copied here by hand there may be.
    if (whole.value(QStringLiteral("season")).toString() != m_season || !lines.isArray())
        return damaged();
    const QJsonArray drafts = lines.toArray();
    for (const QJsonValueConstRef each : drafts) {
        const QJsonValue sheet = each[QStringLiteral("sheet")];
        const QJsonValue row = each[QStringLiteral("row")];
        const QJsonValue text = each[QStringLiteral("text")];
        if (!sheet.isString() || !row.isString() || !text.isString()) return damaged();
        m_lines[{sheet.toString(), row.toString()}] = text.toString();
    }
    return {};
}

void Drafts::hold(const QString& sheet, const QString& row, const QString& text) {
    if (m_file.isEmpty()) return;
    m_lines[{sheet, row}] = text;
    m_changed = true;
    if (!m_timer.isActive()) m_timer.start();
}

void Drafts::drop(const QString& sheet, const QString& row) {
    if (m_lines.erase({sheet, row}) == 0) return;
    m_changed = true;
    // A line that is in the season now must not be offered once more after a crash.
    flush();
}

void Drafts::dropKept(const QString& sheet, const QString& row) {
    if (m_lines.erase({sheet, row}) == 0) return;
    m_changed = true;
    // To take the file away waits for no disk; to write it anew does.
    if (m_lines.empty())
        flush();
    else if (!m_timer.isActive())
        m_timer.start();
}

std::map<QString, QString> Drafts::of(const QString& sheet) const {
    std::map<QString, QString> rows;
    for (const auto& [where, text] : m_lines)
        if (where.first == sheet) rows[where.second] = text;
    return rows;
}

std::vector<std::pair<QString, QString>> Drafts::rows() const {
    std::vector<std::pair<QString, QString>> all;
    for (const auto& [where, text] : m_lines) all.push_back(where);
    return all;
}

void Drafts::flush() {
    m_timer.stop();
    if (!m_changed || m_file.isEmpty()) return;
    m_changed = false;
    if (m_lines.empty()) {
        QFile::remove(m_file);
        return;
    }
    QJsonArray lines;
    for (const auto& [where, text] : m_lines)
        lines.append(QJsonObject{{QStringLiteral("sheet"), where.first},
                                 {QStringLiteral("row"), where.second},
                                 {QStringLiteral("text"), text}});
    const QJsonObject whole{{QStringLiteral("season"), m_season}, {QStringLiteral("lines"), lines}};
    QDir().mkpath(QFileInfo(m_file).absolutePath());
    QSaveFile file(m_file);
    const QByteArray text = QJsonDocument(whole).toJson(QJsonDocument::Compact);
    // An older draft stays where there is no room for this one, and the next letter tries again.
    m_changed = !(file.open(QIODevice::WriteOnly) && file.setPermissions(onlyOurs) &&
                  file.write(text) == text.size() && file.flush() && file.commit());
}

}  // namespace combwright
