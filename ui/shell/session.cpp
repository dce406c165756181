#include "ui/shell/session.h"

#include <QDateTime>
#include <QFileInfo>
#include <QTimer>
#include <filesystem>
#include <utility>

#include "core/actions/demo_season.h"
#include "core/places/copies/copy_words.h"
#include "core/places/copies/salvage_words.h"
#include "core/places/questions/questions.h"
#include "core/storage/as_it_stood.h"
#include "core/storage/what_if.h"
#include "core/words/paper_mark.h"
#include "core/words/words.h"

namespace combwright {
namespace {

/// Two paths, one file: by another name, a link or a round-about way.
bool sameFileOnDisk(const QString& one, const QString& other) {
    std::error_code ignored;
    return std::filesystem::equivalent(one.toStdString(), other.toStdString(), ignored);
}

/// The journal's instants are UTC; the person's clock on the wall is not.
QString timeOfDay(const std::string& instant) {
    return QDateTime::fromString(fromUtf8(instant), Qt::ISODate)
        .toLocalTime()
        .toString(QStringLiteral("HH:mm"));
}

QString stepWord(const JournalEntry& entry) { return word(entry.info.action); }

}  // namespace

Session::Session(const Clock& clock, QObject* parent) : QObject(parent), m_clock(clock) {}

Session::~Session() = default;

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
        m_trouble.reset();
        const auto done = deed();
        if (done) return true;
        tell(sentence(done.error()) + QLatin1Char(' ') + tr("Nothing was changed."), true);
    } catch (const StorageError& error) {
        m_trouble = error.trouble;
        tell(sentence(error), true);
        if (error.trouble == Trouble::Moved) {
            m_movedWasSaid = true;
            Q_EMIT movedAway();
        }
    }
    return false;
}

bool Session::acting(const std::function<Result<void>()>& deed) {
    const int before = m_tellings;
    if (!guarded(deed)) return false;
    if (m_tellings == before) forgetRefusal();
    return true;
}

void Session::forgetRefusal() {
    if (!std::exchange(m_toldBad, false)) return;
    // What is asked back stands behind what the caller says next, or alone.
    if (m_askPending)
        m_told.clear();
    else
        tell({});
}

/// A file that cannot be opened is told in the foot, and for the start page to show.
bool Session::opening(const QString& path, const std::function<Result<void>()>& deed) {
    if (guarded(deed)) return true;
    m_notOpened =
        NotOpened{path, m_told, m_trouble == Trouble::Newer, m_trouble == Trouble::Damaged};
    Q_EMIT openingFailed();
    return false;
}

bool Session::reading(const std::function<void()>& view) {
    if (m_isOpening) {
        view();
        return true;
    }
    QString trouble;
    try {
        view();
    } catch (const StorageError& error) {
        trouble = sentence(error);
    }
    if (!trouble.isEmpty()) tell(trouble, true);
    const bool same = trouble == std::exchange(m_unreadable, trouble);
    if (!same) Q_EMIT readingChanged();
    return trouble.isEmpty();
}

std::int64_t Session::newestStep() const {
    const auto newest = m_season->history(1);
    return newest.empty() ? 0 : newest.front().seq;
}

void Session::seeNext() {
    m_undo = m_season->nextUndo();
    m_redo = m_season->nextRedo();
}

void Session::listen() {
    m_stepAtOpening = newestStep();
    seeNext();
    m_season->onChange([this](const Change& change) {
        seeNext();
        Q_EMIT changed(change);
        // After the views, for what was told before a change is about something else.
        if (change.everything && !m_followsOurs)
            tell(tr("Another program wrote to this file; everything was read anew."));
        askBack(change);
    });
}

void Session::adopt(Season season, std::unique_ptr<QTemporaryDir> sampleFolder,
                    std::optional<Day> day) {
    if (m_season) keepCopy();
    m_season = std::make_unique<Season>(std::move(season));
    m_sampleFolder = std::move(sampleFolder);
    m_sampleClock.reset();
    if (m_sampleFolder) m_sampleClock.emplace(m_clock, day.value_or(demoSeasonDay()));
    markPapers();
    m_notOpened.reset();
    m_unreadable.clear();
    m_movedWasSaid = false;
    const QString put = m_drafts.open(isSample() || !m_leavesTrace ? QString() : path());
    listen();
    try {
        m_isOpening = true;
        Q_EMIT seasonChanged();
        Q_EMIT seasonReady();
        m_isOpening = false;
    } catch (const StorageError&) {
        // Damage the first look did not find: nothing half shown stays.
        m_isOpening = false;
        m_season.reset();
        m_sampleFolder.reset();
        m_sampleClock.reset();
        Q_EMIT seasonChanged();
        Q_EMIT seasonReady();
        throw;
    }
    if (!put.isEmpty()) tell(put);
    if (m_season->readOnly()) tell(readingOnly(), true);
}

bool Session::open(const QString& path) {
    // A file we have open must not be touched but through its one connection.
    if (m_season && standing() == Season::Standing::Ours && sameFileOnDisk(path, this->path())) {
        tell(tr("That season is open here already."));
        return true;
    }
    return opening(path, [&]() -> Result<void> {
        adopt(Season::open(path.toStdString(), m_clock));
        return {};
    });
}

bool Session::make(const QString& path) {
    return guarded([&]() -> Result<void> {
        auto season = Season::create(path.toStdString(), m_clock);
        if (!season) return season.error();
        adopt(*std::move(season));
        return {};
    });
}

bool Session::exploreSample() {
    return guarded([&]() -> Result<void> {
        auto folder = std::make_unique<QTemporaryDir>();
        const QString path = folder->filePath(QStringLiteral("sample.combwright"));
        auto season = makeDemoSeason(path.toStdString(), m_clock);
        if (!season) return season.error();
        adopt(*std::move(season), std::move(folder));
        tell(tr("An invented season to explore; it is thrown away when you leave it."));
        return {};
    });
}

bool Session::exploreSample(DemoShelf& shelf, DemoUntil until) {
    return guarded([&]() -> Result<void> {
        auto folder = std::make_unique<QTemporaryDir>();
        const std::string path =
            folder->filePath(QStringLiteral("sample.combwright")).toStdString();
        if (auto laid = shelf.copyTo(until, path); !laid) return laid.error();
        adopt(Season::open(path, m_clock), std::move(folder), demoDay(until));
        return {};
    });
}

bool Session::tellOn(DemoShelf& shelf) {
    return guarded([&] { return shelf.tellOn(); });
}

std::unique_ptr<Session> Session::asItStood(std::int64_t step, Day day) {
    auto other = std::make_unique<Session>(m_clock);
    const bool made = guarded([&]() -> Result<void> {
        auto aside = asItStoodAside(m_season->read().database(), step, day);
        if (!aside) return aside.error();
        other->setLook(m_look);
        other->leaveNoTrace();
        other->adopt(Season::open(aside->path, m_clock, Database::Mode::ReadOnly),
                     std::move(aside->folder), day);
        return {};
    });
    markPapers();
    if (!made) return nullptr;
    return other;
}

std::unique_ptr<Session> Session::beside(const QString& path) {
    auto other = std::make_unique<Session>(m_clock);
    other->setLook(m_look);
    const bool opened = other->open(path);
    markPapers();
    if (opened) return other;
    tell(other->lastTold(), true);
    return nullptr;
}

bool Session::beginWhatIf(const QString& to, const QString& name) {
    return acting([&] {
        return combwright::beginWhatIf(m_season->read().database(), to.toStdString(),
                                       name.trimmed().toStdString(), clock().today());
    });
}

QString Session::copyTitle() const {
    const auto mark = m_season ? m_season->copyMark() : std::nullopt;
    return mark ? combwright::copyTitle(*mark) : QString();
}

QString Session::copySentence() const {
    const auto mark = m_season ? m_season->copyMark() : std::nullopt;
    return mark ? combwright::copySentence(*mark) : QString();
}

void Session::markPapers() const { setPaperMark(copyTitle()); }

bool Session::restore(const QString& copy, const QString& to) {
    const bool made = guarded([&]() -> Result<void> {
        restoreCopy(copy.toStdString(), to.toStdString());
        return {};
    });
    if (!made || !open(to)) return false;
    if (readingOnly().isEmpty())
        tell(tr("Restored into %1 and proven; the copy stays as it is.")
                 .arg(QFileInfo(to).fileName()));
    return true;
}

bool Session::salvage(const QString& from, const QString& to, QStringList& report) {
    std::optional<Salvaged> saved;
    const bool made = guarded([&]() -> Result<void> {
        auto done = combwright::salvage(from.toStdString(), to.toStdString(), m_clock);
        if (!done) return done.error();
        saved = *std::move(done);
        return {};
    });
    if (!made || !open(to)) return false;
    report = salvageReport(*saved);
    tell(salvageSentence(*saved, QFileInfo(to).fileName()), !saved->isComplete());
    return true;
}

std::optional<CopyContents> Session::lookInto(const QString& copy, QString& trouble) {
    try {
        return contentsOf(copy.toStdString());
    } catch (const StorageError& error) {
        trouble = sentence(error);
        return std::nullopt;
    }
}

bool Session::keepOursAs(const QString& path) {
    return guarded([&]() -> Result<void> {
        if (auto kept = m_season->copyTo(path.toStdString()); !kept) return kept.error();
        m_season = std::make_unique<Season>(Season::open(path.toStdString(), m_clock));
        m_sampleFolder.reset();
        m_sampleClock.reset();
        m_movedWasSaid = false;
        m_drafts.follow(this->path());
        listen();
        Q_EMIT pathChanged();
        Q_EMIT changed(Change{0, {}, true});
        tell(tr("Kept and proven; from here on everything goes into %1.")
                 .arg(QFileInfo(path).fileName()));
        return {};
    });
}

void Session::keepCopy() {
    if (!m_season || m_sampleFolder || m_season->readOnly()) return;
    // Of a file that is gone from its place the copy may be all that stays.
    const bool ours = standing() == Season::Standing::Ours;
    if (ours && newestStep() == m_stepAtOpening) return;
    if (!ours && !QFileInfo(QFileInfo(path()).absolutePath()).isDir()) return;
    guarded([&]() -> Result<void> {
        copyInto(m_season->read().database(), copiesFolder(m_season->path()), m_clock.today());
        m_stepAtOpening = newestStep();
        return {};
    });
}

void Session::close() {
    keepCopy();
    m_drafts.open({});
    m_unreadable.clear();
    m_season.reset();
    m_sampleFolder.reset();
    m_sampleClock.reset();
    markPapers();
    Q_EMIT seasonChanged();
    Q_EMIT seasonReady();
}

QString Session::path() const { return m_season ? fromUtf8(m_season->path()) : QString(); }

Season::Standing Session::standing() const {
    if (!m_season) return Season::Standing::Ours;
    try {
        return m_season->standing();
    } catch (const StorageError&) {
        // Another file is being written in its place this moment.
        return Season::Standing::Replaced;
    }
}

std::optional<SeasonSeen> Session::seen() {
    std::optional<SeasonSeen> seen;
    guarded([&]() -> Result<void> {
        seen = m_season->seen();
        return {};
    });
    return seen;
}

bool Session::keptByOurs(const std::function<Result<std::int64_t>()>& outcome) {
    return acting([&]() -> Result<void> {
        const auto step = outcome();
        if (!step) return step.error();
        m_followsOurs = true;
        if (*step) m_season->follow(*step);
        m_followsOurs = false;
        return {};
    });
}

void Session::lookAgain() {
    if (!m_season || m_awaitsOurs) return;
    guarded([&]() -> Result<void> {
        // Said once; after that only who tries to write is told again.
        const bool moved = m_season->standing() != Season::Standing::Ours;
        if (moved && !std::exchange(m_movedWasSaid, true)) Q_EMIT movedAway();
        if (moved) return {};
        if (std::exchange(m_movedWasSaid, false)) Q_EMIT pathChanged();
        m_season->lookAgain();
        return {};
    });
}

QString Session::readingOnly() const {
    if (!m_season || !m_season->readOnly()) return {};
    if (m_season->readOnly() == ReadOnlyWhy::AsItStood) return copySentence();
    return sentence(*m_season->readOnly()) + QLatin1Char(' ') +
           tr("Nothing will be changed in it.");
}

bool Session::stepIsAnother(const std::optional<JournalEntry>& shown,
                            const std::optional<JournalEntry>& now) {
    if (!now || (shown && shown->seq == now->seq)) return false;
    if (!m_season->lookAgain()) {
        seeNext();
        Q_EMIT changed(Change{0, {}, true});
    }
    tell(sentence(Refusal{Code::FileMovedOn, {}, {}}), true);
    return true;
}

void Session::undo() {
    guarded([&]() -> Result<void> {
        const auto entry = m_season->nextUndo();
        if (stepIsAnother(m_undo, entry)) return {};
        const auto done = entry ? m_season->undo(entry->seq) : m_season->undo();
        if (!done) return done.error();
        const bool others = done->change.everything;
        tell(tr("Taken back: %1").arg(stepWord(*entry)) +
             (others ? tr(" · another program wrote too; everything was read anew") : QString()));
        return {};
    });
}

void Session::redo() {
    guarded([&]() -> Result<void> {
        const auto entry = m_season->nextRedo();
        if (stepIsAnother(m_redo, entry)) return {};
        const auto done = m_season->redo();
        if (!done) return done.error();
        const bool others = done->change.everything;
        tell(tr("Done again: %1").arg(stepWord(*entry)) +
             (others ? tr(" · another program wrote too; everything was read anew") : QString()));
        return {};
    });
}

QString Session::undoText() const {
    if (!m_season || !m_undo) return {};
    return tr("%1 · kept %2").arg(stepWord(*m_undo), timeOfDay(m_undo->at));
}

QString Session::redoText() const {
    return m_season && m_redo ? tr("do again: %1").arg(stepWord(*m_redo)) : QString();
}

void Session::askBack(const Change& change) {
    QStringList says;
    for (const Question& question : questionsAfter(read(), change, clock().today()))
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
    m_toldBad = bad;
    ++m_tellings;
    if (std::exchange(m_askPending, false))
        m_told += (text.isEmpty() ? QString() : QStringLiteral("  ")) + m_asked;
    Q_EMIT told(m_told, bad);
}

}  // namespace combwright
