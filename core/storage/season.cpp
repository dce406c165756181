#include "core/storage/season.h"

#include <sqlite3.h>

#include <QFileInfo>
#include <QString>
#include <utility>

#include "core/model/records.h"
#include "core/storage/backup.h"
#include "core/storage/catalogue_seed.h"
#include "core/storage/hot_journal.h"
#include "core/storage/journal.h"
#include "core/storage/pictures.h"
#include "core/storage/queries/revisions.h"
#include "core/storage/sqlite/storage_error.h"

namespace combwright {
namespace {

std::vector<std::string_view> recordedTables() {
    std::vector<std::string_view> tables;
    for (const RecordType& type : recordTypes()) tables.push_back(type.table);
    return tables;
}

/// The path must still lead to the file we opened: a sync program may have put another in its
/// place.
bool hasMoved(const Database& database) {
    int moved = 0;
    const int code =
        sqlite3_file_control(database.handle(), "main", SQLITE_FCNTL_HAS_MOVED, &moved);
    return code == SQLITE_OK && moved;
}

void dumpTable(const Database& database, const RecordType& type, std::string& text) {
    // Put together by SQLite: quote() tells NULL, 7 and '7' apart.
    std::string columns;
    for (const FieldInfo& info : type.fields())
        columns += " || '|' || quote(\"" + info.column() + "\")";
    Statement statement = database.prepare("SELECT '" + std::string(type.table) + "'" + columns +
                                           " FROM " + std::string(type.table) + " ORDER BY id");
    statement.run();
    while (statement.next()) text += statement.text(0) + '\n';
}

}  // namespace

struct Season::Inner {
    Inner(OpenedFile opened, const Clock& usedClock)
        : file(std::move(opened)),
          clock(&usedClock),
          read(file.database),
          write(file.database),
          journal(file.database) {
        dataVersion = file.database.number("PRAGMA data_version");
    }

    OpenedFile file;
    const Clock* clock;
    Read read;
    Write write;  ///< kept, for what it has prepared
    Journal journal;
    std::vector<Listener> listeners;
    std::int64_t dataVersion = 0;
    bool inTogether = false;
    bool heldStill = false;
    std::vector<Change> pending;

    const Database& database() const { return file.database; }

    Standing standing();
    /// Looked at before a lock is asked for and again within the transaction.
    void demandSameFile() {
        if (standing() != Standing::Ours)
            throw StorageError(Trouble::Moved, database().path(), "the file was replaced or moved");
        if (sqlite3_get_autocommit(database().handle()) != 0 && database().path() != ":memory:")
            demandOwnJournal(database().path());
    }

    /// True when another program wrote since we last looked; call inside a transaction.
    bool othersWrote() {
        const std::int64_t now = database().number("PRAGMA data_version");
        return std::exchange(dataVersion, now) != now;
    }

    void tell(const Change& change) {
        for (const Listener& listener : listeners) listener(change);
    }

    /// Runs one step in a transaction of its own, or within that of `together` behind a savepoint,
    /// so that a step that refuses leaves no trace. Views are told after the commit.
    Result<StepDone> inTransaction(const std::function<Result<StepDone>()>& step);
    Result<StepDone> performHere(const StepInfo& info,
                                 const std::function<Result<void>(Write&)>& deed);
    Result<StepDone> turn(StepKind kind, const JournalEntry& entry);
};

/// A file that moved is read on within one transaction: beginning anew, SQLite would take a journal
/// beside the other file for ours and play it back into what is open here.
Season::Standing Season::Inner::standing() {
    const bool moved = hasMoved(database());
    const QString at = QString::fromStdString(database().path());
    const bool inTransaction = sqlite3_get_autocommit(database().handle()) == 0;
    if (moved && !heldStill && !inTransaction) {
        if (QFileInfo::exists(QString::fromStdString(journalPath(database().path()))))
            throw StorageError(Trouble::Locked, database().path(), "another file is being written");
        database().run("BEGIN");
        (void)database().number("SELECT count(*) FROM journal");
        heldStill = true;
    }
    if (!moved && heldStill) {
        database().run("COMMIT");
        heldStill = false;
    }
    if (!moved) return Standing::Ours;
    return QFileInfo::exists(at) ? Standing::Replaced : Standing::Gone;
}

Season::Season(std::unique_ptr<Inner> inner) : m_inner(std::move(inner)) {}
Season::~Season() = default;
Season::Season(Season&&) noexcept = default;
Season& Season::operator=(Season&&) noexcept = default;

Result<Season> Season::create(const std::string& path, const Clock& clock) {
    if (path != ":memory:" && QFileInfo::exists(QString::fromStdString(path)))
        return Refusal{Code::PathTaken, {}, {{"path", path}}};
    const auto seeded = [](Database database) {
        Transaction transaction(database);
        Write write(database);
        seedCatalogue(write);
        transaction.commit();
        return database;
    };
    const auto opened = [&clock](Database database) {
        OpenedFile file{std::move(database), std::nullopt, {}, std::nullopt, std::nullopt};
        return Season(std::make_unique<Inner>(std::move(file), clock));
    };
    if (path == ":memory:") return opened(seeded(createSeasonFile(path)));
    makeUnderItsName(path, [&](const std::string& part) { (void)seeded(createSeasonFile(part)); });
    try {
        return opened(Database::open(path, Database::Mode::ReadWrite));
    } catch (const StorageError&) {
        removeHalfMade(path);
        throw;
    }
}

Season Season::open(const std::string& path, const Clock& clock, Database::Mode mode) {
    Season season(std::make_unique<Inner>(openSeasonFile(path, mode), clock));
    // A file with a damaged page is left as it is; about a millisecond for 400 kB.
    demandPagesWhole(season.read().database());
    return season;
}

const Read& Season::read() const { return m_inner->read; }
const Clock& Season::clock() const { return *m_inner->clock; }
const std::string& Season::path() const { return m_inner->database().path(); }
std::optional<ReadOnlyWhy> Season::readOnly() const { return m_inner->file.readOnly; }
const std::vector<std::string>& Season::foreignSchema() const {
    return m_inner->file.foreignSchema;
}
const std::optional<std::string>& Season::copyBeforeUpgrade() const {
    return m_inner->file.copyBeforeUpgrade;
}

const std::optional<CopyMark>& Season::copyMark() const { return m_inner->file.mark; }

Season::Standing Season::standing() const { return m_inner->standing(); }

Result<void> Season::copyTo(const std::string& to) const {
    if (QFileInfo::exists(QString::fromStdString(to)))
        return Refusal{Code::PathTaken, {}, {{"path", to}}};
    (void)m_inner->standing();
    copyVerified(m_inner->database(), to);
    return {};
}

void Season::rehearse(const std::function<void(Write&)>& deed) const {
    const Database copy = copyWithoutName(m_inner->database());
    const Transaction transaction(copy);
    Write write(copy);
    deed(write);
}

SeasonSeen Season::seen() const {
    m_inner->demandSameFile();
    const std::int64_t step = m_inner->journal.newest();
    return {path(), step, m_inner->journal.digestOf(step), readOnly()};
}

Season Season::openBeside(const SeasonSeen& seen, const Clock& clock, Database::Mode mode) {
    // By SQLite alone: to read it in another way would drop the locks of the connection there is.
    OpenedFile file{Database::open(seen.path, mode), seen.readOnly, {}, std::nullopt};
    if (seen.readOnly && file.database.number("PRAGMA user_version") < migrations().back().step)
        file.database = inShapeOfToday(file.database);
    Season season(std::make_unique<Inner>(std::move(file), clock));
    if (season.m_inner->journal.digestOf(seen.step) != seen.digest)
        throw StorageError(Trouble::Moved, seen.path, "the file was replaced or moved");
    return season;
}

bool Season::lookAgain() {
    if (m_inner->standing() != Standing::Ours || !m_inner->othersWrote()) return false;
    m_inner->tell(Change{0, {}, true});
    return true;
}

void Season::follow(std::int64_t step) {
    (void)m_inner->othersWrote();
    m_inner->tell(Change{step, {}, true});
}

Result<StepDone> Season::Inner::inTransaction(const std::function<Result<StepDone>()>& step) {
    if (file.readOnly) return Refusal{Code::ReadOnly, {}, {}};
    if (inTogether) {
        database().run("SAVEPOINT step");
        auto done = step();
        if (!done) database().run("ROLLBACK TO step");
        database().run("RELEASE step");
        if (done && done->step) pending.push_back(done->change);
        return done;
    }
    Result<StepDone> done = StepDone{};
    {
        demandSameFile();
        Transaction transaction(database());
        demandSameFile();
        const bool everything = othersWrote();
        done = step();
        if (!done || !done->step) return done;
        done->change.everything = everything;
        transaction.commit();
    }
    tell(done->change);
    return done;
}

Result<StepDone> Season::Inner::performHere(const StepInfo& info,
                                            const std::function<Result<void>(Write&)>& deed) {
    const ChangeRecorder recorder(database(), recordedTables());
    if (auto done = deed(write); !done) return done.error();
    const Bytes changes = recorder.changes();
    if (changes.empty()) return StepDone{};
    StepDone done;
    done.step = journal.appendDo(isoText(clock->now()), info, changes);
    done.change = {done.step, rowsIn(database(), changes), false};
    return done;
}

Result<StepDone> Season::Inner::turn(StepKind kind, const JournalEntry& entry) {
    const Bytes original = journal.changesOf(entry.seq);
    const Bytes changes = kind == StepKind::Undo ? inverted(database(), original) : original;
    if (apply(database(), changes) == Applied::Conflict)
        return Refusal{Code::MovedOn, {}, {{"step", std::to_string(entry.seq)}}};
    StepDone done;
    done.step = journal.appendTurn(kind, isoText(clock->now()), entry, changes);
    done.change = {done.step, rowsIn(database(), changes), false};
    return done;
}

Result<StepDone> Season::perform(const StepInfo& info,
                                 const std::function<Result<void>(Write&)>& deed) {
    return m_inner->inTransaction([&] { return m_inner->performHere(info, deed); });
}

Result<void> Season::together(const std::function<Result<void>()>& deeds) {
    Inner& inner = *m_inner;
    if (inner.file.readOnly) return Refusal{Code::ReadOnly, {}, {}};
    if (inner.inTogether) return deeds();
    bool everything = false;
    {
        inner.demandSameFile();
        Transaction transaction(inner.database());
        inner.demandSameFile();
        everything = inner.othersWrote();
        struct Guard {
            Inner& inner;
            explicit Guard(Inner& guarded) : inner(guarded) { inner.inTogether = true; }
            ~Guard() { inner.inTogether = false; }
        } guard(inner);
        inner.pending.clear();
        if (auto done = deeds(); !done) {
            inner.pending.clear();
            return done.error();
        }
        transaction.commit();
    }
    for (Change& change : std::exchange(inner.pending, {})) {
        change.everything = everything;
        inner.tell(change);
    }
    return {};
}

Result<void> Season::keepPicture(const Bytes& jpeg) {
    if (m_inner->file.readOnly) return Refusal{Code::ReadOnly, {}, {}};
    return together([&]() -> Result<void> {
        layPicture(m_inner->database(), jpeg);
        return {};
    });
}

Result<StepDone> Season::undo(std::optional<std::int64_t> expected) {
    return m_inner->inTransaction([&]() -> Result<StepDone> {
        const auto entry = m_inner->journal.newestStanding();
        if (!entry) return Refusal{Code::NothingToUndo, {}, {}};
        if (expected && entry->seq != *expected)
            return Refusal{
                Code::NotThatStep,
                {},
                {{"step", std::to_string(*expected)}, {"would", std::to_string(entry->seq)}}};
        return m_inner->turn(StepKind::Undo, *entry);
    });
}

Result<StepDone> Season::redo() {
    return m_inner->inTransaction([&]() -> Result<StepDone> {
        const auto entry = m_inner->journal.oldestTakenBack();
        if (!entry) return Refusal{Code::NothingToRedo, {}, {}};
        return m_inner->turn(StepKind::Redo, *entry);
    });
}

std::vector<JournalEntry> Season::history(std::size_t most) const {
    return m_inner->journal.entries(most);
}
std::vector<Revised> Season::revisedBy(std::int64_t step) const {
    return combwright::revisedBy(read(), step);
}

std::optional<JournalEntry> Season::nextUndo() const { return m_inner->journal.newestStanding(); }
std::optional<JournalEntry> Season::nextRedo() const { return m_inner->journal.oldestTakenBack(); }

void Season::onChange(Listener listener) { m_inner->listeners.push_back(std::move(listener)); }

std::string Season::dump() const {
    std::string text;
    for (const RecordType& type : recordTypes()) dumpTable(m_inner->database(), type, text);
    return text;
}

}  // namespace combwright
