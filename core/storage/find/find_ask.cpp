#include "core/storage/find/find_ask.h"

#include <algorithm>
#include <limits>
#include <set>

#include "core/storage/sqlite/storage_error.h"

namespace combwright {
namespace {

/// Words that begin as one typed; of more of them the index itself makes one list.
constexpr int mostTerms = 64;

/// Puts what was found of a kind in order.
class FindRanking {
  public:
    FindRanking(std::size_t most, const std::vector<std::string>& words)
        : m_most(most), m_words(words) {}

    /// Not taken yet.
    bool wants(std::int64_t id) { return !isCrowded() && m_seen.insert(id).second; }
    void add(FoundRow row) {
        // "hive ML3" asks for the one that is called so, though it was found by its words.
        const auto mark = findWords(row.mark);
        if (mark.size() == 1 && std::find(m_words.begin(), m_words.end(), mark[0]) != m_words.end())
            row.by = FoundRow::By::Mark;
        m_rows.push_back(std::move(row));
    }
    bool isFull() const { return m_rows.size() > m_most; }
    std::vector<FoundRow> ranked() {
        // Within one way of being found they came newest first.
        std::stable_sort(m_rows.begin(), m_rows.end(),
                         [](const FoundRow& a, const FoundRow& b) { return a.by < b.by; });
        return std::move(m_rows);
    }

  private:
    bool isCrowded() const { return m_rows.size() > m_most * 8; }

    std::size_t m_most;
    const std::vector<std::string>& m_words;
    std::set<std::int64_t> m_seen;
    std::vector<FoundRow> m_rows;
};

}  // namespace

FindAsk::IdsOfKinds FindAsk::byMatch(const std::string& match, int most) const {
    IdsOfKinds all;
    if (match.empty()) return all;
    Statement& statement = m_file.prepared(
        "SELECT rowid FROM words WHERE words MATCH ? AND rowid <= ? ORDER BY rowid DESC LIMIT ?");
    // From the last kind to the first: the next one found tells which kinds have none.
    std::int64_t upTo = std::numeric_limits<std::int64_t>::max();
    try {
        while (upTo >= 0) {
            std::vector<std::int64_t> ids;
            statement.bind(std::string_view(match)).bind(upTo).bind(std::int64_t{most}).run();
            while (statement.next()) ids.push_back(statement.number(0));
            if (ids.empty()) break;
            const auto kind = static_cast<FindKind>(ids.front() >> findKindShift);
            upTo = findSpan(kind).from - 1;
            std::erase_if(ids, [&](std::int64_t id) { return id <= upTo; });
            all[kind] = std::move(ids);
        }
    } catch (const StorageError& error) {
        // A letter SQLite takes for the end of a word: nothing is called so.
        if (error.trouble != Trouble::Failed) throw;
    }
    return all;
}

/// What asks the index for rows with words that begin so; empty where there are no such words.
std::string FindAsk::beginnings(const std::vector<std::string>& words) const {
    // Quoted, a word is only ever a word.
    std::string match;
    for (const std::string& word : words) {
        std::string part = '"' + word + "\"*";
        const auto letters = std::count_if(word.begin(), word.end(), [](char c) {
            return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U;
        });
        if (static_cast<std::size_t>(letters) > indexedLetters && m_termsAreWhole) {
            const auto terms = m_file.termsFrom(word, mostTerms + 1);
            if (terms.empty()) return {};
            if (terms.size() <= static_cast<std::size_t>(mostTerms)) {
                part.clear();
                for (const std::string& term : terms)
                    part += (part.empty() ? "(\"" : " OR \"") + term + '"';
                part += ')';
            }
        }
        match += (match.empty() ? "" : " AND ") + part;
    }
    return match;
}

std::vector<std::int64_t> FindAsk::byMark(const std::string& key, FindSpan span, int most) const {
    std::vector<std::int64_t> ids;
    Statement& statement = m_file.prepared(
        "SELECT id FROM mark WHERE key = ? AND id BETWEEN ? AND ? ORDER BY id DESC LIMIT ?");
    statement.bind(std::string_view(key))
        .bind(span.from)
        .bind(span.to)
        .bind(std::int64_t{most})
        .run();
    while (statement.next()) ids.push_back(statement.number(0));
    return ids;
}

std::vector<std::int64_t> FindAsk::byBeginning(const std::string& key) const {
    std::vector<std::int64_t> ids;
    Statement& statement =
        m_file.prepared("SELECT id FROM mark WHERE key > ? AND key < ? ORDER BY key LIMIT 1000");
    const std::string behind = key + std::string(lastLetter);
    statement.bind(std::string_view(key)).bind(std::string_view(behind)).run();
    while (statement.next()) ids.push_back(statement.number(0));
    std::sort(ids.begin(), ids.end(), std::greater<>());
    return ids;
}

std::optional<FoundRow> FindAsk::found(std::int64_t id, FoundRow::By by) const {
    const auto doc = m_file.doc(id);
    if (!doc) return std::nullopt;
    const FindTable& of = findTables()[static_cast<std::size_t>(findTableOf(id))];
    const auto lines = [](const std::string& text) {
        std::vector<std::string> all;
        for (std::size_t at = 0; at < text.size();) {
            const std::size_t end = std::min(text.find('\n', at), text.size());
            if (end > at) all.push_back(text.substr(at, end - at));
            at = end + 1;
        }
        return all;
    };
    FoundRow row{by,        of.kind,          of.table,          findRowOf(id),   findDayOf(id),
                 doc->mark, lines(doc->said), lines(doc->about), lines(doc->sort)};
    // The first is what sort of record it is.
    row.sorts.erase(row.sorts.begin());
    return row;
}

std::vector<FoundKind> FindAsk::byWords(const std::vector<std::string>& words,
                                        std::size_t most) const {
    std::string key;
    std::string whole;
    for (const std::string& word : words) {
        key += (key.empty() ? "" : " ") + word;
        whole += (whole.empty() ? "\"" : " AND \"") + word + '"';
    }
    // More than are shown, for a whole mark among them goes before what is newer.
    const int looked = static_cast<int>(most) * 4 + 1;
    const auto begins = byBeginning(key);
    auto byWhole = byMatch(whole, looked);
    auto byBegin = byMatch(beginnings(words), looked);
    std::vector<FoundKind> all;
    for (int number = 0; number < findKinds; ++number) {
        const auto kind = static_cast<FindKind>(number);
        FindRanking ranking(most, words);
        const FindSpan span = findSpan(kind);
        const auto take = [&](const std::vector<std::int64_t>& ids, FoundRow::By by) {
            for (const std::int64_t id : ids) {
                if (id < span.from || id > span.to || !ranking.wants(id)) continue;
                if (auto row = found(id, by)) ranking.add(*std::move(row));
            }
        };
        take(byMark(key, span, looked), FoundRow::By::Mark);
        take(begins, FoundRow::By::MarkBegins);
        take(byWhole[kind], FoundRow::By::Words);
        if (!ranking.isFull()) take(byBegin[kind], FoundRow::By::Words);
        FoundKind answer{kind, ranking.ranked(), false};
        answer.more = answer.found.size() > most;
        if (answer.more) answer.found.resize(most);
        if (!answer.found.empty()) all.push_back(std::move(answer));
    }
    return all;
}

std::vector<FoundKind> FindAsk::ofDay(Day day, std::size_t most) const {
    std::vector<FoundKind> all;
    for (int kind = 0; kind < findKinds; ++kind) {
        FoundKind each{static_cast<FindKind>(kind), {}, false};
        const FindSpan span = findSpan(each.kind, day);
        std::vector<std::int64_t> ids;
        Statement& statement =
            m_file.prepared("SELECT id FROM doc WHERE id BETWEEN ? AND ? ORDER BY id LIMIT ?");
        statement.bind(span.from).bind(span.to).bind(static_cast<std::int64_t>(most) + 1).run();
        while (statement.next()) ids.push_back(statement.number(0));
        each.more = ids.size() > most;
        if (each.more) ids.resize(most);
        for (const std::int64_t id : ids)
            if (auto row = found(id, FoundRow::By::Words)) each.found.push_back(*std::move(row));
        if (!each.found.empty()) all.push_back(std::move(each));
    }
    return all;
}

}  // namespace combwright
