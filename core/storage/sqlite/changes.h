// SQLite's session extension: what a transaction changed, as bytes that can be inverted and
// applied. The journal keeps these bytes; undo applies their inverse. Names of the C interface stay
// in here.
#pragma once

#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/storage/sqlite/database.h"

struct sqlite3_session;

namespace combwright {

enum class ChangeKind { Added, Changed, Removed };

struct RowChange {
    std::string table;
    std::int64_t id = 0;
    ChangeKind kind = ChangeKind::Changed;
    bool operator==(const RowChange&) const = default;
};

/// A value of a row that was changed, as it was and as it became; rows added or removed have none.
struct ValueChange {
    std::string table;
    std::int64_t id = 0;
    int column = 0;
    Value was;
    Value is;
};

/// Records what is changed in the given tables from its construction on.
class ChangeRecorder {
  public:
    ChangeRecorder(const Database& database, const std::vector<std::string_view>& tables);
    ~ChangeRecorder();
    ChangeRecorder(const ChangeRecorder&) = delete;
    ChangeRecorder& operator=(const ChangeRecorder&) = delete;
    /// Empty when nothing was changed in the end.
    Bytes changes() const;

  private:
    const Database& m_database;
    sqlite3_session* m_session = nullptr;
};

Bytes inverted(const Database& database, const Bytes& changes);
/// Which rows the changes touch, in their order.
std::vector<RowChange> rowsIn(const Database& database, const Bytes& changes);

/// The single values of the rows that were changed, in their order.
std::vector<ValueChange> valuesIn(const Database& database, const Bytes& changes);

/// What the changes make of each row they touch, in their order.
struct RowMade {
    std::string_view table;
    std::int64_t id = 0;
    ChangeKind kind = ChangeKind::Changed;
    /// Column by column; nothing where a change does not speak of it. Empty for a row removed.
    std::vector<std::optional<Value>> values;
};
void eachRowMade(const Database& database, const Bytes& changes,
                 const std::function<void(const RowMade&)>& take);

enum class Applied { Yes, Conflict };
/// Applies within the open transaction: all of it or, at the first row that has moved on, nothing.
/// Throws StorageError(Damaged) where a table or column of the changes is not in the file: SQLite
/// would pass over it in silence.
Applied apply(const Database& database, const Bytes& changes);

}  // namespace combwright
