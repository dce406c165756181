#include "core/storage/find/find_cache.h"

#include <QCryptographicHash>
#include <QDir>
#include <QFileInfo>
#include <QStandardPaths>
#include <QString>
#include <algorithm>
#include <set>
#include <tuple>
#include <utility>

#include "core/storage/find/find_ask.h"
#include "core/storage/find/find_file.h"
#include "core/storage/sqlite/changes.h"
#include "core/storage/sqlite/storage_error.h"

namespace combwright {
namespace {

constexpr std::string_view inMemory = ":memory:";
/// What is done between two looks at the clock, some milliseconds each.
constexpr int docsAtOnce = 400;
constexpr int wordsAtOnce = 200;
constexpr int termsAtOnce = 10;
constexpr int stepsAtOnce = 200;
constexpr int rowsAtOnce = 200;
/// Of the whole, roughly: reading the rows, then indexing their words; merging is the rest.
constexpr double partOfReading = 0.3;
constexpr double partOfWords = 0.6;

constexpr qsizetype lettersOfWord = 50;
constexpr qsizetype longestWord = 40;

/// Whether the season's journal has that step, or the season is new to both.
bool leadsOn(const Read& season, const FindPlace& from) {
    if (season.database().number("PRAGMA user_version") != from.schema) return false;
    if (from.step == 0) return true;
    Statement& statement = season.prepared("SELECT digest FROM journal WHERE seq = ?");
    statement.bind(from.step).run();
    bool same = false;
    while (statement.next()) same = statement.text(0) == from.digest;
    return same;
}

}  // namespace

std::vector<std::string> findWords(std::string_view text, std::size_t most) {
    std::vector<std::string> words;
    const QString given = QString::fromUtf8(text.data(), static_cast<qsizetype>(text.size()))
                              .left(lettersOfWord * static_cast<qsizetype>(most));
    QString word;
    const auto end = [&] {
        if (!word.isEmpty() && words.size() < most) words.push_back(word.toStdString());
        word.clear();
    };
    for (const uint letter : given.normalized(QString::NormalizationForm_D).toLower().toUcs4()) {
        if (QChar::isMark(letter)) continue;
        if (!QChar::isLetterOrNumber(letter))
            end();
        else if (word.size() < longestWord)
            word += QString::fromUcs4(reinterpret_cast<const char32_t*>(&letter), 1);
    }
    end();
    return words;
}

/// The whole season being read anew.
struct FindGathering {
    enum class Part { Rows, Words, Merging, Terms };
    Part part = Part::Rows;
    FindPlace begun;
    std::int64_t loose = 0;
    int table = 0;
    std::int64_t row = 0;    ///< the last one read of that table
    std::int64_t read = 0;   ///< rows of all tables
    std::int64_t rows = 1;   ///< how many there may be
    std::int64_t words = 0;  ///< the last one indexed
    std::int64_t worded = 0;
    std::string term;  ///< the last one listed
    std::int64_t docs = 1;

    double share() const {
        switch (part) {
            case Part::Rows:
                return partOfReading * static_cast<double>(read) / static_cast<double>(rows);
            case Part::Words:
                return partOfReading +
                       partOfWords * static_cast<double>(worded) / static_cast<double>(docs);
            case Part::Merging:
            case Part::Terms:
                return partOfReading + partOfWords;
        }
        return 0;
    }
};

struct FindCache::Inner {
    /// A row that is to be read again.
    struct RowToRead {
        int table = 0;
        std::int64_t row = 0;
        bool loose = false;  ///< with all that refers to it
        bool operator<(const RowToRead& other) const {
            return std::tie(table, row) < std::tie(other.table, other.row);
        }
    };

    explicit Inner(std::string wanted) : path(std::move(wanted)) { open(); }

    void open() {
        batch.reset();
        gathering.reset();
        todo.clear();
        file.reset();
        if (path != inMemory && discards < 3) {
            try {
                file = std::make_unique<FindFile>(path);
                return;
            } catch (const StorageError&) {
                // A full or locked cache folder: what is looked for is found all the same.
            }
        }
        path = inMemory;
        file = std::make_unique<FindFile>(path);
    }
    void discard() {
        ++discards;
        batch.reset();
        file.reset();
        if (path != inMemory) removeFindFile(path);
        open();
    }
    /// Whether the cache itself failed, and is begun anew; else the error is the season's.
    bool isOwn(const StorageError& error) const {
        return error.path == path && file && error.path == file->database().path();
    }

    void beginGathering(const Read& season);
    void gatherRows(const Read& season);
    void gatherWords();
    void gatherTerms();
    void gatherSome(const Read& season);
    bool takeSteps(const Read& season, const FindPlace& from);
    void readSome(const Read& season);
    void readRow(const Read& season, const RowToRead& each);
    bool bringUp(const Read& season, const std::function<bool()>& rest);

    std::string path;
    int discards = 0;
    std::unique_ptr<FindFile> file;
    std::optional<FindGathering> gathering;
    // What steps of the journal changed is taken over all at once: a mark with all that bears it.
    std::unique_ptr<Transaction> batch;
    std::set<RowToRead> todo;
    FindPlace batchTo;
};

// Bringing up ---------------------------------------------------------------------------------

void FindCache::Inner::beginGathering(const Read& season) {
    // An empty file is made faster than a full one is emptied.
    batch.reset();
    todo.clear();
    const std::string at = path;
    file.reset();
    if (at != inMemory) removeFindFile(at);
    open();
    gathering.emplace();
    gathering->begun = findPlaceOf(season);
    gathering->rows = 1;
    for (const FindTable& each : findTables())
        gathering->rows +=
            season.database().number("SELECT max(id) FROM \"" + std::string(each.table) + '"');
}

void FindCache::Inner::gatherRows(const Read& season) {
    FindGathering& now = *gathering;
    if (now.table == static_cast<int>(findTables().size())) {
        now.loose = findPlaceOf(season).step;
        now.docs = std::max<std::int64_t>(1, file->database().number("SELECT count(*) FROM doc"));
        now.part = FindGathering::Part::Words;
        return;
    }
    // No transaction of the season stands between two pieces: whoever writes there is not held up.
    static const std::string behind = " WHERE t.id > ? ORDER BY t.id LIMIT ?";
    Statement& question =
        season.prepared(findQuestion(findTables()[static_cast<std::size_t>(now.table)], behind));
    question.bind(now.row).bind(std::int64_t{docsAtOnce}).run();
    Transaction transaction(file->database());
    int rows = 0;
    while (question.next()) {
        ++rows;
        if (const auto doc = findDocHere(question, now.table, now.row)) file->add(*doc, false);
    }
    transaction.commit();
    now.read += rows;
    if (rows == docsAtOnce) return;
    ++now.table;
    now.row = 0;
}

void FindCache::Inner::gatherWords() {
    FindGathering& now = *gathering;
    Transaction transaction(file->database());
    const auto upTo = file->addWordsAfter(now.words, wordsAtOnce);
    transaction.commit();
    now.worded += wordsAtOnce;
    if (upTo)
        now.words = *upTo;
    else
        now.part = FindGathering::Part::Merging;
}

void FindCache::Inner::gatherSome(const Read& season) {
    switch (gathering->part) {
        case FindGathering::Part::Rows:
            return gatherRows(season);
        case FindGathering::Part::Words:
            return gatherWords();
        case FindGathering::Part::Merging:
            if (!file->mergeSome()) gathering->part = FindGathering::Part::Terms;
            return;
        case FindGathering::Part::Terms:
            return gatherTerms();
    }
}

void FindCache::Inner::gatherTerms() {
    {
        Transaction terms(file->database());
        const auto upTo = file->addTermsAfter(gathering->term, termsAtOnce);
        terms.commit();
        if (upTo) gathering->term = *upTo;
        if (upTo) return;
    }
    // From here on it is what is kept, and it says so itself: a file without a place is no cache.
    file->beQuick(false);
    Transaction transaction(file->database());
    FindPlace place = gathering->begun;
    place.loose = gathering->loose;
    file->setPlace(place);
    transaction.commit();
    gathering.reset();
}

bool FindCache::Inner::takeSteps(const Read& season, const FindPlace& from) {
    const Database& database = season.database();
    std::vector<std::pair<std::int64_t, Bytes>> steps;
    FindPlace to = from;
    {
        Statement statement = database.prepare(
            "SELECT seq, digest, changes FROM journal WHERE seq > ? ORDER BY seq LIMIT ?");
        statement.bind(from.step).bind(std::int64_t{stepsAtOnce}).run();
        while (statement.next()) {
            steps.emplace_back(statement.number(0), statement.blob(2));
            to.step = statement.number(0);
            to.digest = statement.text(1);
        }
    }
    if (steps.empty()) return false;
    for (const auto& [step, changes] : steps)
        for (const RowChange& change : rowsIn(database, changes)) {
            const int table = findTableNumber(change.table);
            if (table < 0 || !findRowFits(change.id)) continue;
            const bool loose = step <= from.loose && change.kind == ChangeKind::Changed;
            RowToRead each{table, change.id, loose};
            if (const auto known = todo.find(each); known != todo.end()) {
                each.loose = each.loose || known->loose;
                todo.erase(known);
            }
            todo.insert(each);
        }
    batchTo = to;
    batch = std::make_unique<Transaction>(file->database());
    return true;
}

void FindCache::Inner::readRow(const Read& season, const RowToRead& each) {
    const auto was = file->docOf(each.table, each.row);
    const auto is = findDocOf(season, each.table, each.row);
    if (was != is) {
        if (was) file->remove(*was);
        if (is) file->add(*is, true);
    }
    // What bears its mark or its day bears another now. A row that is new here has nothing that
    // refers to it but what comes with the same steps.
    const bool anotherFace = was && is && (was->mark != is->mark || was->id != is->id);
    if (!is || !(anotherFace || each.loose)) return;
    for (const FindReference& reference : findReferences(each.table)) {
        const std::string sql =
            "SELECT id FROM \"" +
            std::string(findTables()[static_cast<std::size_t>(reference.from)].table) +
            "\" WHERE \"" + reference.column + "\" = ?";
        Statement& statement = season.prepared(sql);
        statement.bind(each.row).run();
        while (statement.next())
            if (findRowFits(statement.number(0)))
                todo.insert({reference.from, statement.number(0), false});
    }
}

void FindCache::Inner::readSome(const Read& season) {
    for (int done = 0; done < rowsAtOnce && !todo.empty(); ++done) {
        const RowToRead each = *todo.begin();
        todo.erase(todo.begin());
        readRow(season, each);
    }
    if (!todo.empty()) return;
    file->setPlace(batchTo);
    batch->commit();
    batch.reset();
}

bool FindCache::Inner::bringUp(const Read& season, const std::function<bool()>& rest) {
    for (;;) {
        if (gathering) {
            gatherSome(season);
        } else if (batch) {
            readSome(season);
        } else {
            const auto from = file->place();
            if (from && *from == findPlaceOf(season)) return true;
            if (!from || !leadsOn(season, *from))
                beginGathering(season);
            else if (!takeSteps(season, *from))
                return true;
        }
        if (rest()) return false;
    }
}

// FindCache -----------------------------------------------------------------------------------

FindCache::FindCache(std::string path) : m_inner(std::make_unique<Inner>(std::move(path))) {}
FindCache::~FindCache() = default;
FindCache::FindCache(FindCache&&) noexcept = default;
FindCache& FindCache::operator=(FindCache&&) noexcept = default;

std::string FindCache::pathFor(const std::string& season) {
    const QString cache = QStandardPaths::writableLocation(QStandardPaths::GenericCacheLocation);
    if (cache.isEmpty()) return std::string(inMemory);
    return pathFor(season, (cache + QStringLiteral("/combwright/find")).toStdString());
}

std::string FindCache::pathFor(const std::string& season, const std::string& folder) {
    const QFileInfo info(QString::fromStdString(season));
    const QString whole =
        info.exists() ? info.canonicalFilePath() : QDir::cleanPath(info.absoluteFilePath());
    const QByteArray digest = QCryptographicHash::hash(whole.toUtf8(), QCryptographicHash::Sha256);
    return folder + '/' + digest.toHex().left(32).toStdString() + ".words";
}

bool FindCache::bringUp(const Read& season, const std::function<bool()>& rest) {
    for (;;) {
        try {
            return m_inner->bringUp(season, rest);
        } catch (const StorageError& error) {
            if (!m_inner->isOwn(error) || m_inner->path == inMemory) throw;
            m_inner->discard();
        }
    }
}

void FindCache::bringUp(const Read& season) {
    (void)bringUp(season, [] { return false; });
}

bool FindCache::isUpTo(const Read& season) const {
    if (m_inner->gathering || m_inner->batch) return false;
    try {
        return m_inner->file->place() == findPlaceOf(season);
    } catch (const StorageError& error) {
        if (!m_inner->isOwn(error)) throw;
        return false;
    }
}

double FindCache::gathered() const { return m_inner->gathering ? m_inner->gathering->share() : 1; }

std::vector<FoundKind> FindCache::ask(std::string_view typed, std::size_t mostOfKind) {
    std::vector<FoundKind> all;
    const std::vector<std::string> words = findWords(typed);
    if (words.empty()) return all;
    try {
        all = FindAsk(*m_inner->file, !m_inner->gathering).byWords(words, mostOfKind);
    } catch (const StorageError&) {
        // Damaged on the disk; what was gathered is gathered again.
        m_inner->discard();
        all.clear();
    }
    return all;
}

std::vector<FoundKind> FindCache::ofDay(Day day, std::size_t mostOfKind) {
    std::vector<FoundKind> all;
    try {
        all = FindAsk(*m_inner->file, !m_inner->gathering).ofDay(day, mostOfKind);
    } catch (const StorageError&) {
        m_inner->discard();
        all.clear();
    }
    return all;
}

std::int64_t FindCache::rows() const {
    return m_inner->file->database().number("SELECT count(*) FROM doc");
}

std::string FindCache::dump() const {
    const Database& database = m_inner->file->database();
    try {
        database.run("INSERT INTO words (words, rank) VALUES ('integrity-check', 1)");
    } catch (const StorageError&) {
        return {};
    }
    std::string text;
    for (const char* sql :
         {"SELECT id || '|' || quote(mark) || quote(said) || quote(about) || quote(sort) FROM doc "
          "ORDER BY id",
          "SELECT key || '|' || id FROM mark ORDER BY key, id"}) {
        Statement statement = database.prepare(sql);
        statement.run();
        while (statement.next()) text += statement.text(0) + '\n';
    }
    return text;
}

const std::string& FindCache::path() const { return m_inner->path; }

}  // namespace combwright
