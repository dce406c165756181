#include "ui/shell/session.h"

#include <QFileInfo>
#include <QTimer>
#include <utility>

#include "core/actions/demo_season.h"
#include "core/places/questions.h"
#include "core/storage/backup.h"
#include "core/words/words.h"

namespace combwright {

Session::Session(const Clock& clock, QObject* parent) : QObject(parent), m_clock(clock) {}

void Session::setLook(const Look& look) {
    m_look = look;
    Q_EMIT lookChanged();
}

void Session::setUnits(Units units) {
    if (units == shownUnits()) return;
    setShownUnits(units);
    Q_EMIT unitsChanged();
}

bool Session::guarded(const std::function<Result<void>()>& deed) {
    try {
        const auto done = deed();
        if (done) return true;
        tell(sentence(done.error()) + QLatin1Char(' ') + tr("Nothing was changed."), true);
    } catch (const StorageError& error) {
        tell(sentence(error), true);
    }
    return false;
}

std::int64_t Session::newestStep() const {
    const auto newest = m_season->history(1);
    return newest.empty() ? 0 : newest.front().seq;
}

void Session::listen() {
    m_stepAtOpening = newestStep();
    m_season->onChange([this](const Change& change) {
        if (change.everything)
            tell(tr("Another program wrote to this file; everything was read anew."));
        Q_EMIT changed(change);
        askBack(change);
    });
    Q_EMIT seasonChanged();
}

bool Session::open(const QString& path) {
    return guarded([&]() -> Result<void> {
        auto season = Season::open(path.toStdString(), m_clock);
        m_season = std::make_unique<Season>(std::move(season));
        listen();
        if (m_season->readOnly())
            tell(tr("This file is open for reading only; nothing will be changed in it."), true);
        return {};
    });
}

bool Session::make(const QString& path) {
    return guarded([&]() -> Result<void> {
        auto season = Season::create(path.toStdString(), m_clock);
        if (!season) return season.error();
        m_season = std::make_unique<Season>(*std::move(season));
        listen();
        return {};
    });
}

bool Session::exploreSample() {
    return guarded([&]() -> Result<void> {
        auto folder = std::make_unique<QTemporaryDir>();
        const QString path = folder->filePath(QStringLiteral("sample.combwright"));
        auto season = makeDemoSeason(path.toStdString(), m_clock);
        if (!season) return season.error();
        m_season = std::make_unique<Season>(*std::move(season));
        m_sampleFolder = std::move(folder);
        listen();
        tell(tr("An invented season to explore; it is thrown away when you leave it."));
        return {};
    });
}

void Session::keepCopy() {
    if (!m_season || m_sampleFolder || m_season->readOnly() || newestStep() == m_stepAtOpening)
        return;
    guarded([&]() -> Result<void> {
        const QFileInfo file(QString::fromStdString(m_season->path()));
        const QString folder = file.absolutePath() + QLatin1Char('/') + file.completeBaseName() +
                               QStringLiteral(".copies");
        copyInto(m_season->read().database(), folder.toStdString(), m_clock.today());
        m_stepAtOpening = newestStep();
        return {};
    });
}

void Session::close() {
    keepCopy();
    m_sampleFolder.reset();
    m_season.reset();
    Q_EMIT seasonChanged();
}

void Session::undo() {
    guarded([&]() -> Result<void> {
        const auto entry = m_season->nextUndo();
        const auto done = m_season->undo();
        if (!done) return done.error();
        tell(tr("Taken back: %1").arg(word(entry->info.action)));
        return {};
    });
}

void Session::redo() {
    guarded([&]() -> Result<void> {
        const auto entry = m_season->nextRedo();
        const auto done = m_season->redo();
        if (!done) return done.error();
        tell(tr("Done again: %1").arg(word(entry->info.action)));
        return {};
    });
}

QString Session::undoText() const {
    if (!m_season) return {};
    const auto entry = m_season->nextUndo();
    if (!entry) return {};
    const QString at = fromUtf8(entry->at).mid(11, 5);
    return tr("%1 · kept %2").arg(word(entry->info.action), at);
}

void Session::askBack(const Change& change) {
    QStringList says;
    for (const Question& question : questionsAfter(read(), change, m_clock.today()))
        says << question.says;
    m_asked = says.join(QLatin1Char(' '));
    m_askPending = !m_asked.isEmpty();
    // Whoever acted may say what was kept first; the question stands behind that, or alone.
    if (m_askPending)
        QTimer::singleShot(0, this, [this] {
            if (m_askPending) tell({});
        });
}

void Session::tell(const QString& text, bool bad) {
    m_told = text;
    if (std::exchange(m_askPending, false))
        m_told += (text.isEmpty() ? QString() : QStringLiteral("  ")) + m_asked;
    Q_EMIT told(m_told, bad);
}

}  // namespace combwright
