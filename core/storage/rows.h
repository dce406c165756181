// Reading and writing described records. An action sees a file only through Write, a place only
// through Read and the queries beside it: the words SELECT and INSERT stay in core/storage.
#pragma once

#include <functional>
#include <initializer_list>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <unordered_map>
#include <utility>
#include <vector>

#include "core/model/describe.h"
#include "core/storage/sqlite/database.h"
#include "core/support/result.h"

namespace combwright {

/// A field must equal a value; an empty value asks for rows where it is unknown. A day may also
/// have to lie on one side of another: then rows where it is unknown do not match.
struct Match {
    enum class By { Equal, From, After, UpTo, Before };
    std::string_view field;  ///< base name
    Value value;
    By by = By::Equal;
};

template <class T>
Match is(std::string_view field, const T& value) {
    return {field, Codec<T>::pack(value)};
}
inline Match isUnknown(std::string_view field) { return {field, {}}; }
inline Match isFrom(std::string_view field, Day day) {
    return {field, Codec<Day>::pack(day), Match::By::From};
}
inline Match isAfter(std::string_view field, Day day) {
    return {field, Codec<Day>::pack(day), Match::By::After};
}
inline Match isUpTo(std::string_view field, Day day) {
    return {field, Codec<Day>::pack(day), Match::By::UpTo};
}
inline Match isBefore(std::string_view field, Day day) {
    return {field, Codec<Day>::pack(day), Match::By::Before};
}

/// Short answers given while one state is held: of a hive the same is asked from many sides.
struct AnswersRemembered {
    std::unordered_map<std::string, std::vector<Row>> answers;
    std::size_t values = 0;  ///< in all answers
    int changes = 0;         ///< of the connection, as they were given
};

class Read {
  public:
    explicit Read(const Database& database) : m_database(&database), m_prepared(database) {}

    template <class Record>
    std::optional<Record> find(Id<Record> id) const {
        auto found = where<Record>({is("id", id)});
        if (found.empty()) return std::nullopt;
        return std::move(found.front());
    }
    template <class Record>
    std::optional<Record> find(const std::optional<Id<Record>>& id) const {
        return id ? find(*id) : std::nullopt;
    }

    /// Every row that matches, in order of id.
    template <class Record>
    std::vector<Record> where(std::initializer_list<Match> matches) const {
        std::vector<Record> records;
        each<Record>(matches, [&](Record&& record) { records.push_back(std::move(record)); });
        return records;
    }
    /// The same one by one, where there may be a million. Nothing may be asked of the file in
    /// between.
    template <class Record, class Take>
    void each(std::initializer_list<Match> matches, Take take) const {
        eachRow(Record::table, Record::fields(), matches, [&](const Row& row) {
            auto record = fromRow<Record>(row);
            if (!record) unreadable(Record::table, row);
            take(*std::move(record));
        });
    }
    /// Every row whose id or reference `field` is one of these, in order of id: one question,
    /// however many they are.
    template <class Record, class Other>
    std::vector<Record> whereAny(std::string_view field, const std::vector<Id<Other>>& ids) const {
        if (ids.empty()) return {};
        if (ids.size() == 1) return where<Record>({is(field, ids.front())});
        std::string set = "[";
        for (const Id<Other>& id : ids)
            set += (set.size() > 1 ? "," : "") + std::to_string(id.number);
        return recordsOf<Record>(rowsOfAny(Record::table, Record::fields(), field, set + "]"));
    }
    /// The rows of these ids by their number; what is gone is not among them.
    template <class Record>
    std::map<std::int64_t, Record> findAny(const std::vector<Id<Record>>& ids) const {
        std::map<std::int64_t, Record> found;
        for (Record& each : whereAny<Record>("id", ids))
            found.emplace(each.id.number, std::move(each));
        return found;
    }
    template <class Record>
    std::vector<Record> all() const {
        return where<Record>({});
    }
    /// The matching row with the lowest id.
    template <class Record>
    std::optional<Record> first(std::initializer_list<Match> matches) const {
        auto found = where<Record>(matches);
        if (found.empty()) return std::nullopt;
        return std::move(found.front());
    }

    bool holds(std::string_view table, std::int64_t id) const;

    std::vector<Row> rows(std::string_view table, const Fields& fields,
                          std::initializer_list<Match> matches) const;
    /// `set` is a list of numbers as JSON has it, "[3,7]".
    std::vector<Row> rowsOfAny(std::string_view table, const Fields& fields, std::string_view field,
                               std::string_view set) const;

    /// For the hand-written queries of core/storage/queries.
    const Database& database() const { return *m_database; }
    /// The same, kept ready; read to its end before anything else is asked.
    Statement& prepared(std::string_view sql) const { return m_prepared(sql); }
    /// Every row such a query answers, `columns` of each; while OneState stands, from memory where
    /// it was asked before.
    std::vector<Row> answered(std::string_view sql, int columns,
                              std::initializer_list<Value> bound) const;

  protected:
    [[noreturn]] void unreadable(std::string_view table, const Row& row) const;

    const Database* m_database;

  private:
    friend class OneState;

    template <class Record>
    std::vector<Record> recordsOf(const std::vector<Row>& rows) const {
        std::vector<Record> records;
        records.reserve(rows.size());
        for (const Row& row : rows) {
            auto record = fromRow<Record>(row);
            if (!record) unreadable(Record::table, row);
            records.push_back(*std::move(record));
        }
        return records;
    }
    void eachRow(std::string_view table, const Fields& fields, std::initializer_list<Match> matches,
                 const std::function<void(const Row&)>& take) const;
    /// What was asked, and the statement that asks it.
    using Asked = std::map<std::string, Statement*, std::less<>>;
    const Asked::value_type& asking(std::string_view table, const Fields& fields,
                                    std::initializer_list<Match> matches) const;
    /// What is remembered under this name; nothing where it was not asked, or something was
    /// written since.
    const std::vector<Row>* recalled(const std::string& name) const;
    void remember(std::string name, const std::vector<Row>& rows) const;

    mutable Prepared m_prepared;
    mutable Asked m_asked;  ///< of `rows`
    mutable std::optional<AnswersRemembered> m_remembered;
};

/// Holds the file as it is while many questions are asked of it that belong together: they see one
/// state, SQLite need not look at the file's head for each, and short answers are remembered.
/// Within a transaction it does nothing. Nothing may be written while it stands.
class OneState {
  public:
    explicit OneState(const Read& file);
    ~OneState();
    OneState(const OneState&) = delete;
    OneState& operator=(const OneState&) = delete;

  private:
    const Read& m_file;
    bool m_begun = false;
};

/// What an action may do to the file. Only Season makes one, inside a transaction.
class Write : public Read {
  public:
    explicit Write(const Database& database) : Read(database) {}

    /// Stores a new record; its id is filled in and returned.
    template <class Record>
    Id<Record> add(Record& record) {
        record.id = Id<Record>{insert(Record::table, Record::fields(), toRow(record))};
        return record.id;
    }
    template <class Record>
    Id<Record> add(Record&& record) {
        return add(record);
    }
    /// Stores the present values of a record that is in the file.
    template <class Record>
    void change(const Record& record) {
        update(Record::table, Record::fields(), toRow(record));
    }
    template <class Record>
    void remove(Id<Record> id) {
        erase(Record::table, id.number);
    }
    /// Does the deed, or leaves no trace of it where it refuses; what was done before it stays.
    Result<void> attempt(const std::function<Result<void>()>& deed);

    /// The same for rows without their type, as two copies of a season are put together. The row
    /// must fit its record; its own number is given anew and returned.
    std::int64_t addRow(std::string_view table, const Fields& fields, const Row& row) {
        return insert(table, fields, row);
    }
    void changeRow(std::string_view table, const Fields& fields, const Row& row) {
        update(table, fields, row);
    }
    void removeRow(std::string_view table, std::int64_t id) { erase(table, id); }

  private:
    std::int64_t insert(std::string_view table, const Fields& fields, const Row& row);
    void update(std::string_view table, const Fields& fields, const Row& row);
    void erase(std::string_view table, std::int64_t id);
};

}  // namespace combwright
