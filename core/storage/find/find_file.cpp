#include "core/storage/find/find_file.h"

#include <sqlite3.h>

#include <QDir>
#include <QFile>
#include <QFileInfo>

#include "core/storage/find/find_cache.h"
#include "core/storage/sqlite/storage_error.h"

namespace combwright {
namespace {

constexpr std::string_view memoryPath = ":memory:";
/// Pages merged at a time, some milliseconds.
constexpr int mergedAtOnce = 16;

/// More than a note has.
constexpr std::size_t wordsOfDoc = 20'000;

constexpr const char* findLayout[] = {
    "CREATE TABLE place (id INTEGER PRIMARY KEY CHECK (id = 1), format TEXT NOT NULL, step "
    "INTEGER NOT NULL, digest TEXT NOT NULL, schema INTEGER NOT NULL, loose INTEGER NOT NULL)",
    "CREATE TABLE doc (id INTEGER PRIMARY KEY, mark TEXT NOT NULL, said TEXT NOT NULL, about TEXT "
    "NOT NULL, sort TEXT NOT NULL) STRICT",
    "CREATE TABLE mark (key TEXT NOT NULL, id INTEGER NOT NULL, PRIMARY KEY (key, id)) STRICT, "
    "WITHOUT ROWID",
    // Every word there is, once: what one has begun to type is looked up here, for the index itself
    // would lay all rows of all such words together first. None is ever taken out.
    "CREATE TABLE term (word TEXT PRIMARY KEY) STRICT, WITHOUT ROWID",
    // Which of the four a word stands in, and where, nobody asks: that halves the index.
    "CREATE VIRTUAL TABLE words USING fts5 (mark, said, about, sort, content = 'doc', "
    "content_rowid = 'id', detail = 'none', prefix = '1 2 3 4', "
    "tokenize = 'unicode61 remove_diacritics 2')",
    "CREATE VIRTUAL TABLE vocabulary USING fts5vocab ('words', 'row')",
};

std::string markKey(const std::string& mark) {
    std::string key;
    for (const std::string& word : findWords(mark)) key += (key.empty() ? "" : " ") + word;
    return key;
}

bool isOfThisFormat(const Database& database) {
    if (database.number("SELECT count(*) FROM sqlite_schema WHERE name = 'place'") == 0)
        return false;
    Statement statement = database.prepare("SELECT format FROM place WHERE id = 1");
    statement.run();
    return statement.next() && statement.text(0) == findFormat();
}

Database madeFindFile(const std::string& path) {
    if (path != memoryPath) {
        removeFindFile(path);
        QDir().mkpath(QFileInfo(QString::fromStdString(path)).absolutePath());
        // It holds what the season holds: nobody else reads it.
        QFile file(QString::fromStdString(path));
        if (file.open(QIODevice::WriteOnly | QIODevice::NewOnly))
            file.setPermissions(QFile::ReadOwner | QFile::WriteOwner);
    }
    Database made = Database::open(path, Database::Mode::ReadWrite, true);
    const std::string doc =
        "CREATE INDEX doc_who ON doc (id & " + std::to_string(findWhoMask) + ")";
    for (const char* each : findLayout) made.run(each);
    made.run(doc);
    return made;
}

Database openedFindFile(const std::string& path) {
    if (path == memoryPath || !QFileInfo::exists(QString::fromStdString(path)))
        return madeFindFile(path);
    try {
        Database database = Database::open(path, Database::Mode::ReadWrite, false);
        if (isOfThisFormat(database)) return database;
    } catch (const StorageError& error) {
        // Held by another window it is whole.
        if (error.trouble == Trouble::Locked) throw;
    }
    return madeFindFile(path);
}

FindDoc docHere(const Statement& statement) {
    return {statement.number(0), statement.text(1), statement.text(2), statement.text(3),
            statement.text(4)};
}

}  // namespace

void removeFindFile(const std::string& path) {
    for (const char* behind : {"", "-journal", "-wal", "-shm"})
        QFile::remove(QString::fromStdString(path + behind));
}

FindFile::FindFile(const std::string& path)
    : m_database(openedFindFile(path)), m_prepared(m_database) {
    beQuick(!place());
}

void FindFile::beQuick(bool quick) const {
    m_database.run(quick ? "PRAGMA synchronous = OFF" : "PRAGMA synchronous = NORMAL");
    m_database.run(quick ? "PRAGMA journal_mode = MEMORY" : "PRAGMA journal_mode = DELETE");
    m_database.run("PRAGMA cache_size = -65536");
}

std::optional<FindPlace> FindFile::place() const {
    Statement& statement = prepared("SELECT step, digest, schema, loose FROM place WHERE id = 1");
    statement.run();
    std::optional<FindPlace> place;
    while (statement.next())
        place = FindPlace{statement.number(0), statement.text(1), statement.number(2),
                          statement.number(3)};
    return place;
}

void FindFile::setPlace(const FindPlace& place) {
    prepared(
        "INSERT OR REPLACE INTO place (id, format, step, digest, schema, loose) VALUES "
        "(1, ?, ?, ?, ?, ?)")
        .bind(std::string_view(findFormat()))
        .bind(place.step)
        .bind(std::string_view(place.digest))
        .bind(place.schema)
        .bind(place.loose)
        .run();
}

std::optional<FindDoc> FindFile::docOf(int table, std::int64_t row) const {
    static const std::string sql = "SELECT id, mark, said, about, sort FROM doc WHERE (id & " +
                                   std::to_string(findWhoMask) + ") = ?";
    Statement& statement = prepared(sql);
    statement.bind(findWho(table, row)).run();
    std::optional<FindDoc> found;
    while (statement.next()) found = docHere(statement);
    return found;
}

std::optional<FindDoc> FindFile::doc(std::int64_t id) const {
    Statement& statement = prepared("SELECT id, mark, said, about, sort FROM doc WHERE id = ?");
    statement.bind(id).run();
    std::optional<FindDoc> found;
    while (statement.next()) found = docHere(statement);
    return found;
}

void FindFile::add(const FindDoc& doc, bool withWords) {
    prepared("INSERT INTO doc (id, mark, said, about, sort) VALUES (?, ?, ?, ?, ?)")
        .bind(doc.id)
        .bind(std::string_view(doc.mark))
        .bind(std::string_view(doc.said))
        .bind(std::string_view(doc.about))
        .bind(std::string_view(doc.sort))
        .run();
    if (const std::string key = markKey(doc.mark); !key.empty())
        prepared("INSERT INTO mark (key, id) VALUES (?, ?)")
            .bind(std::string_view(key))
            .bind(doc.id)
            .run();
    if (!withWords) return;
    for (const std::string& word :
         findWords(doc.mark + ' ' + doc.said + ' ' + doc.about + ' ' + doc.sort, wordsOfDoc))
        prepared("INSERT OR IGNORE INTO term (word) VALUES (?)").bind(std::string_view(word)).run();
    prepared("INSERT INTO words (rowid, mark, said, about, sort) VALUES (?, ?, ?, ?, ?)")
        .bind(doc.id)
        .bind(std::string_view(doc.mark))
        .bind(std::string_view(doc.said))
        .bind(std::string_view(doc.about))
        .bind(std::string_view(doc.sort))
        .run();
}

void FindFile::remove(const FindDoc& doc) {
    // The index forgets a row by the very words it was given.
    prepared(
        "INSERT INTO words (words, rowid, mark, said, about, sort) VALUES "
        "('delete', ?, ?, ?, ?, ?)")
        .bind(doc.id)
        .bind(std::string_view(doc.mark))
        .bind(std::string_view(doc.said))
        .bind(std::string_view(doc.about))
        .bind(std::string_view(doc.sort))
        .run();
    if (const std::string key = markKey(doc.mark); !key.empty())
        prepared("DELETE FROM mark WHERE key = ? AND id = ?")
            .bind(std::string_view(key))
            .bind(doc.id)
            .run();
    prepared("DELETE FROM doc WHERE id = ?").bind(doc.id).run();
}

std::optional<std::int64_t> FindFile::addWordsAfter(std::int64_t id, int most) {
    Statement& last =
        prepared("SELECT max(id) FROM (SELECT id FROM doc WHERE id > ? ORDER BY id LIMIT ?)");
    last.bind(id).bind(std::int64_t{most}).run();
    std::optional<std::int64_t> upTo;
    while (last.next())
        if (!last.isNull(0)) upTo = last.number(0);
    if (!upTo) return std::nullopt;
    // In the order of their numbers, or the index would be written anew at each.
    prepared(
        "INSERT INTO words (rowid, mark, said, about, sort) SELECT id, mark, said, about, "
        "sort FROM doc WHERE id > ? AND id <= ? ORDER BY id")
        .bind(id)
        .bind(*upTo)
        .run();
    return upTo;
}

std::optional<std::string> FindFile::addTermsAfter(const std::string& word, int most) {
    std::vector<std::string> terms;
    Statement& next = prepared("SELECT term FROM vocabulary WHERE term > ? ORDER BY term LIMIT ?");
    next.bind(std::string_view(word)).bind(std::int64_t{most}).run();
    while (next.next()) terms.push_back(next.text(0));
    for (const std::string& each : terms)
        prepared("INSERT OR IGNORE INTO term (word) VALUES (?)").bind(std::string_view(each)).run();
    return terms.empty() ? std::nullopt : std::optional(terms.back());
}

std::vector<std::string> FindFile::termsFrom(const std::string& beginning, int most) const {
    std::vector<std::string> terms;
    Statement& statement =
        prepared("SELECT word FROM term WHERE word >= ? AND word < ? ORDER BY word LIMIT ?");
    const std::string behind = beginning + std::string(lastLetter);
    statement.bind(std::string_view(beginning))
        .bind(std::string_view(behind))
        .bind(std::int64_t{most})
        .run();
    while (statement.next()) terms.push_back(statement.text(0));
    return terms;
}

bool FindFile::mergeSome() {
    const int before = sqlite3_total_changes(m_database.handle());
    // Less than nothing asks for all parts to become one; from then on so many pages at a time.
    prepared("INSERT INTO words (words, rank) VALUES ('merge', ?)")
        .bind(std::int64_t{m_merging ? mergedAtOnce : -mergedAtOnce})
        .run();
    m_merging = true;
    // SQLite counts one change for the command itself, and one more where it did something.
    return sqlite3_total_changes(m_database.handle()) - before >= 2;
}

FindPlace findPlaceOf(const Read& season) {
    FindPlace place;
    Statement& statement =
        season.prepared("SELECT seq, digest FROM journal ORDER BY seq DESC LIMIT 1");
    statement.run();
    while (statement.next()) {
        place.step = statement.number(0);
        place.digest = statement.text(1);
    }
    place.schema = season.database().number("PRAGMA user_version");
    return place;
}

std::optional<FindDoc> findDocHere(const Statement& question, int table, std::int64_t& row) {
    const FindTable& of = findTables()[static_cast<std::size_t>(table)];
    row = question.number(0);
    if (!findRowFits(row)) return std::nullopt;
    FindDoc doc{0, question.text(1), question.text(2), question.text(3), question.text(4)};
    if (of.onlyWhenSaid && doc.mark.empty() && doc.said.empty()) return std::nullopt;
    doc.id = findId(of.kind, parseDay(question.text(5)), table, row);
    return doc;
}

std::optional<FindDoc> findDocOf(const Read& season, int table, std::int64_t row) {
    static const std::vector<std::string> questions = [] {
        std::vector<std::string> all;
        for (const FindTable& each : findTables())
            all.push_back(findQuestion(each, " WHERE t.id = ?"));
        return all;
    }();
    Statement& question = season.prepared(questions[static_cast<std::size_t>(table)]);
    question.bind(row).run();
    std::optional<FindDoc> found;
    while (question.next()) found = findDocHere(question, table, row);
    return found;
}

}  // namespace combwright
