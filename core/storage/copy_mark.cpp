#include "core/storage/copy_mark.h"

#include "core/storage/sqlite/storage_error.h"

namespace combwright {
namespace {

constexpr std::string_view asItStoodWord = "as it stood";
constexpr std::string_view whatIfWord = "what-if";

}  // namespace

std::optional<CopyMark> copyMarkOf(const Database& database) {
    // A file of a newer program that lets us look may keep its marks elsewhere.
    if (database.number("SELECT count(*) FROM sqlite_schema WHERE name = 'copy_mark'") == 0)
        return std::nullopt;
    Statement found =
        database.prepare("SELECT what, of_file, step, digest, on_day, name FROM copy_mark");
    if (!found.run().next()) return std::nullopt;
    const auto day = parseDay(found.text(4));
    if (!day)
        throw StorageError(Trouble::Damaged, database.path(), "the mark of the copy has no day");
    return CopyMark{found.text(0) == asItStoodWord ? CopyKind::AsItStood : CopyKind::WhatIf,
                    found.text(1),
                    found.number(2),
                    found.text(3),
                    *day,
                    found.text(5)};
}

void putCopyMark(const Database& database, const CopyMark& mark) {
    database
        .prepare(
            "INSERT OR REPLACE INTO copy_mark (id, what, of_file, step, digest, on_day, name) "
            "VALUES (1, ?, ?, ?, ?, ?, ?)")
        .bind(mark.kind == CopyKind::AsItStood ? asItStoodWord : whatIfWord)
        .bind(std::string_view(mark.ofFile))
        .bind(mark.step)
        .bind(std::string_view(mark.digest))
        .bind(std::string_view(isoText(mark.on)))
        .bind(mark.name.empty() ? Value{} : Value{mark.name})
        .run();
}

}  // namespace combwright
