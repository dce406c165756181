#include "core/storage/journal.h"

#include <QByteArray>
#include <QCryptographicHash>
#include <algorithm>
#include <map>
#include <set>

namespace combwright {
namespace {

// `stands` of a deed; turns (undo, redo) carry `stepGivenUp`, for they are no deeds to walk back
// to.
constexpr int stepStands = 1;
constexpr int stepTakenBack = 0;
constexpr int stepGivenUp = -1;

constexpr std::string_view kindText(StepKind kind) {
    return kind == StepKind::Do ? "do" : kind == StepKind::Undo ? "undo" : "redo";
}

StepKind kindOf(const std::string& text) { return stepKindOf(text).value_or(StepKind::Do); }

const std::string entryColumns = "seq, at, kind, action, line, why, sheet, of, stands";

JournalEntry entryAt(const Statement& statement) {
    JournalEntry entry;
    entry.seq = statement.number(0);
    entry.at = statement.text(1);
    entry.kind = kindOf(statement.text(2));
    entry.info = {statement.text(3), statement.text(4), statement.text(5), statement.text(6)};
    if (!statement.isNull(7)) entry.of = statement.number(7);
    entry.stands = statement.number(8) == stepStands;
    return entry;
}

std::string chained(const std::string& previous, std::string_view at, StepKind kind,
                    const StepInfo& info, std::optional<std::int64_t> of, const Bytes& changes) {
    QCryptographicHash hash(QCryptographicHash::Sha256);
    // Each part is preceded by its length, so that no two rows give the same bytes.
    const auto add = [&hash](std::string_view part) {
        const std::string size = std::to_string(part.size()) + ':';
        hash.addData(QByteArrayView(size.data(), static_cast<qsizetype>(size.size())));
        hash.addData(QByteArrayView(part.data(), static_cast<qsizetype>(part.size())));
    };
    add(previous);
    add(at);
    add(kindText(kind));
    add(info.action);
    add(info.line);
    add(info.why);
    add(info.sheet);
    add(of ? std::to_string(*of) : std::string());
    add({reinterpret_cast<const char*>(changes.data()), changes.size()});
    return hash.result().toHex().toStdString();
}

Value textOrNull(const std::string& text) { return text.empty() ? Value{} : Value{text}; }

std::optional<JournalEntry> oneEntry(Statement statement) {
    statement.run();
    if (!statement.next()) return std::nullopt;
    return entryAt(statement);
}

}  // namespace

std::string chainedDigest(const std::string& previous, const JournalEntry& entry,
                          const Bytes& changes) {
    return chained(previous, entry.at, entry.kind, entry.info, entry.of, changes);
}

std::optional<StepKind> stepKindOf(std::string_view text) {
    for (const StepKind kind : {StepKind::Do, StepKind::Undo, StepKind::Redo})
        if (text == kindText(kind)) return kind;
    return std::nullopt;
}

std::int64_t Journal::append(StepKind kind, const std::string& at, const StepInfo& info,
                             std::optional<std::int64_t> of, int stands, const Bytes& changes) {
    std::string previous;
    Statement& last = m_prepared("SELECT digest FROM journal ORDER BY seq DESC LIMIT 1").run();
    while (last.next()) previous = last.text(0);
    put(Value{}, at, kind, info, of, stands, changes,
        chained(previous, at, kind, info, of, changes));
    return m_database->lastId();
}

void Journal::putWhole(const WholeStep& step) {
    const JournalEntry& entry = step.entry;
    put(Value{entry.seq}, entry.at, entry.kind, entry.info, entry.of, step.stands, step.changes,
        step.digest);
}

/// Of an import the line and the changes are long: they are handed to SQLite as they are.
void Journal::put(const Value& seq, const std::string& at, StepKind kind, const StepInfo& info,
                  std::optional<std::int64_t> of, std::int64_t stands, const Bytes& changes,
                  const std::string& digest) {
    m_prepared(
        "INSERT INTO journal (seq, at, kind, action, line, why, sheet, of, stands, changes, "
        "digest) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)")
        .bind(seq)
        .bind(std::string_view(at))
        .bind(kindText(kind))
        .bind(std::string_view(info.action))
        .bindHeld(info.line)
        .bind(textOrNull(info.why))
        .bind(textOrNull(info.sheet))
        .bind(of ? Value{*of} : Value{})
        .bind(stands)
        .bindHeld(changes)
        .bind(std::string_view(digest))
        .run();
}

std::int64_t Journal::appendDo(const std::string& at, const StepInfo& info, const Bytes& changes) {
    m_prepared("UPDATE journal SET stands = -1 WHERE stands = 0").run();
    return append(StepKind::Do, at, info, std::nullopt, stepStands, changes);
}

std::int64_t Journal::appendTurn(StepKind kind, const std::string& at, const JournalEntry& of,
                                 const Bytes& changes) {
    m_database->prepare("UPDATE journal SET stands = ? WHERE seq = ?")
        .bind(std::int64_t{kind == StepKind::Undo ? stepTakenBack : stepStands})
        .bind(of.seq)
        .run();
    StepInfo info = of.info;
    info.line.clear();
    return append(kind, at, info, of.seq, stepGivenUp, changes);
}

std::optional<JournalEntry> Journal::newestStanding() const {
    return oneEntry(m_database->prepare(
        "SELECT " + entryColumns + " FROM journal WHERE stands = 1 ORDER BY seq DESC LIMIT 1"));
}

std::optional<JournalEntry> Journal::oldestTakenBack() const {
    return oneEntry(m_database->prepare("SELECT " + entryColumns +
                                        " FROM journal WHERE stands = 0 ORDER BY seq LIMIT 1"));
}

std::optional<JournalEntry> Journal::entry(std::int64_t seq) const {
    Statement statement =
        m_database->prepare("SELECT " + entryColumns + " FROM journal WHERE seq = ?");
    statement.bind(seq);
    return oneEntry(std::move(statement));
}

Bytes Journal::changesOf(std::int64_t seq) const {
    Statement statement = m_database->prepare("SELECT changes FROM journal WHERE seq = ?");
    statement.bind(seq).run();
    return statement.next() ? statement.blob(0) : Bytes();
}

std::vector<JournalEntry> Journal::entries(std::size_t most) const {
    Statement statement =
        m_database->prepare("SELECT " + entryColumns + " FROM journal ORDER BY seq DESC" +
                            (most ? " LIMIT " + std::to_string(most) : std::string()));
    statement.run();
    std::vector<JournalEntry> entries;
    while (statement.next()) entries.push_back(entryAt(statement));
    return entries;
}

std::vector<JournalEntry> Journal::linesSaidOf(std::string_view hive) const {
    // The words of the index, so that it is used: a book of many years has a hundred thousand
    // lines.
    const std::string said = "substr(line, instr(line, '\"hive\":\"') + 8, 32)";
    Statement statement = m_database->prepare(
        "SELECT " + entryColumns +
        " FROM journal WHERE kind = 'do' AND action IN ('write-line', 'look-into') AND " + said +
        " >= ? AND " + said + " < ? AND +stands = 1 ORDER BY seq DESC");
    // The mark up to its closing quote, or as much of it as the index holds.
    constexpr std::size_t held = 32;
    std::string from(hive.substr(0, held - 1));
    if (hive.size() < held - 1) from += '"';
    const std::string to = from + '\xff';
    statement.bind(std::string_view(from)).bind(std::string_view(to)).run();
    std::vector<JournalEntry> entries;
    while (statement.next()) entries.push_back(entryAt(statement));
    return entries;
}

std::int64_t Journal::newest() const {
    return m_database->number("SELECT coalesce(max(seq), 0) FROM journal");
}

std::int64_t Journal::newestUpTo(std::string_view at) const {
    Statement statement =
        m_database->prepare("SELECT coalesce(max(seq), 0) FROM journal WHERE at <= ?");
    statement.bind(at).run();
    return statement.next() ? statement.number(0) : 0;
}

std::string Journal::digestOf(std::int64_t seq) const {
    Statement statement = m_database->prepare("SELECT digest FROM journal WHERE seq = ?");
    statement.bind(seq).run();
    return statement.next() ? statement.text(0) : std::string();
}

std::int64_t Journal::lastCommon(const Journal& other) const {
    std::int64_t common = 0;
    std::int64_t beyond = std::min(newest(), other.newest()) + 1;
    while (common + 1 < beyond) {
        const std::int64_t middle = common + (beyond - common) / 2;
        const std::string digest = digestOf(middle);
        (!digest.empty() && digest == other.digestOf(middle) ? common : beyond) = middle;
    }
    return common;
}

void Journal::forgetAfter(std::int64_t seq) {
    m_database->prepare("DELETE FROM journal WHERE seq > ?").bind(seq).run();
    std::map<std::int64_t, int> stands;
    std::set<std::int64_t> takenBack;
    std::map<std::int64_t, int> written;
    Statement rows = m_database->prepare("SELECT seq, kind, of, stands FROM journal ORDER BY seq");
    for (rows.run(); rows.next();) {
        const std::int64_t row = rows.number(0);
        const StepKind kind = kindOf(rows.text(1));
        written[row] = static_cast<int>(rows.number(3));
        stands[row] = kind == StepKind::Do ? stepStands : stepGivenUp;
        if (kind == StepKind::Do) {
            for (const std::int64_t given : takenBack) stands[given] = stepGivenUp;
            takenBack.clear();
            continue;
        }
        const std::int64_t of = rows.number(2);
        stands[of] = kind == StepKind::Undo ? stepTakenBack : stepStands;
        if (kind == StepKind::Undo)
            takenBack.insert(of);
        else
            takenBack.erase(of);
    }
    for (const auto& [row, stood] : stands)
        if (stood != written[row])
            m_prepared("UPDATE journal SET stands = ? WHERE seq = ?")
                .bind(std::int64_t{stood})
                .bind(row)
                .run();
}

std::optional<std::int64_t> Journal::firstBroken() const {
    Statement statement = m_database->prepare("SELECT " + entryColumns +
                                              ", changes, digest FROM journal ORDER BY seq");
    statement.run();
    std::string previous;
    while (statement.next()) {
        const JournalEntry entry = entryAt(statement);
        const std::string digest = statement.text(10);
        if (digest != chainedDigest(previous, entry, statement.blob(9))) return entry.seq;
        previous = digest;
    }
    return std::nullopt;
}

}  // namespace combwright
