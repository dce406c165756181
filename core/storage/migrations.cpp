#include "core/storage/migrations.h"

#include <QCryptographicHash>
#include <QFile>
#include <QString>

#include "core/storage/sqlite/storage_error.h"
#include "core/support/version.h"

namespace combwright {
namespace {

std::string resourceText(const QString& path) {
    QFile file(path);
    if (!file.open(QIODevice::ReadOnly))
        throw StorageError(Trouble::Failed, {}, "missing resource " + path.toStdString());
    return file.readAll().toStdString();
}

/// The statements between the marker lines; SQL is never split at its semicolons, which may stand
/// inside texts.
std::vector<std::string> statementsOf(const std::string& sql) {
    std::vector<std::string> statements;
    std::string current;
    std::size_t from = 0;
    while (from <= sql.size()) {
        const std::size_t end = std::min(sql.find('\n', from), sql.size());
        const std::string line = sql.substr(from, end - from);
        from = end + 1;
        if (line == "-- next") {
            statements.push_back(current);
            current.clear();
        } else if (!line.starts_with("--")) {
            current += line + '\n';
        }
    }
    if (current.find_first_not_of(" \n") != std::string::npos) statements.push_back(current);
    return statements;
}

void runStep(const Database& database, const Migration& migration) {
    for (const std::string& statement : statementsOf(migration.sql)) database.run(statement);
    database.prepare("INSERT INTO schema_step (step, name, digest, program) VALUES (?, ?, ?, ?)")
        .bind(std::int64_t{migration.step})
        .bind(std::string_view(migration.name))
        .bind(std::string_view(migration.digest()))
        .bind(programVersion)
        .run();
    database
        .prepare(
            "INSERT INTO file_info (id, min_reader, made_by) VALUES (1, ?, ?) "
            "ON CONFLICT (id) DO UPDATE SET min_reader = excluded.min_reader")
        .bind(std::int64_t{migration.minReader})
        .bind(programVersion)
        .run();
    database.run("PRAGMA user_version = " + std::to_string(migration.step));
}

}  // namespace

std::string Migration::digest() const {
    return QCryptographicHash::hash(QByteArray::fromStdString(sql), QCryptographicHash::Sha256)
        .toHex()
        .toStdString();
}

const std::vector<Migration>& migrations() {
    static const std::vector<Migration> all{
        {1, "first", resourceText(QStringLiteral(":/combwright/migrations/0001_first.sql")), 1},
        {2, "storeroom", resourceText(QStringLiteral(":/combwright/migrations/0002_storeroom.sql")),
         1},
        {3, "honey_room",
         resourceText(QStringLiteral(":/combwright/migrations/0003_honey_room.sql")), 1},
        {4, "colonies", resourceText(QStringLiteral(":/combwright/migrations/0004_colonies.sql")),
         1},
        {5, "honey", resourceText(QStringLiteral(":/combwright/migrations/0005_honey.sql")), 1},
        {6, "wax", resourceText(QStringLiteral(":/combwright/migrations/0006_wax.sql")), 1},
        {7, "photos", resourceText(QStringLiteral(":/combwright/migrations/0007_photos.sql")), 1},
        {8, "copies", resourceText(QStringLiteral(":/combwright/migrations/0008_copies.sql")), 1},
        {9, "found_sooner",
         resourceText(QStringLiteral(":/combwright/migrations/0009_found_sooner.sql")), 1},
    };
    return all;
}

void migrate(const Database& database, const std::vector<Migration>& steps) {
    const std::int64_t version = database.number("PRAGMA user_version");
    if (version == 0) database.run("PRAGMA application_id = " + std::to_string(applicationId));
    // Inside a transaction the switch is ignored, so it stands outside all steps.
    database.run("PRAGMA foreign_keys = OFF");
    try {
        // All or none: a file half on its way would be of no shape that was ever shown to anybody.
        Transaction transaction(database);
        for (const Migration& migration : steps)
            if (migration.step > version) runStep(database, migration);
        transaction.commit();
    } catch (...) {
        database.run("PRAGMA foreign_keys = ON");
        throw;
    }
    database.run("PRAGMA foreign_keys = ON");
    Statement broken = database.prepare("PRAGMA foreign_key_check");
    if (broken.run().next())
        throw StorageError(Trouble::Damaged, database.path(),
                           "a reference leads nowhere after an upgrade · " + broken.text(0));
}

std::vector<std::string> schemaOf(const Database& database) {
    Statement statement = database.prepare(
        "SELECT type || ' ' || name || ' ' || coalesce(sql, '') FROM sqlite_schema "
        "WHERE name NOT LIKE 'sqlite\\_%' ESCAPE '\\' ORDER BY type, name");
    statement.run();
    std::vector<std::string> entries;
    while (statement.next()) entries.push_back(statement.text(0));
    return entries;
}

}  // namespace combwright
