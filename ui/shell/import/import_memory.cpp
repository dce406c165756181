#include "ui/shell/import/import_memory.h"

#include <QCryptographicHash>
#include <QJsonDocument>
#include <QJsonObject>
#include <QSettings>
#include <QStringList>

#include "core/exchange/import/import_json.h"
#include "core/words/words.h"

namespace combwright {
namespace {

constexpr QLatin1String tablesKey("import/tables");
constexpr qsizetype mostTables = 40;

/// The kind and the headings, in their order; a short name for them.
QString nameOfTable(ImportKind kind, const std::vector<PlannedColumn>& columns) {
    QCryptographicHash hash(QCryptographicHash::Sha256);
    const auto add = [&hash](std::string_view text) {
        hash.addData(QByteArrayView(text.data(), static_cast<qsizetype>(text.size())));
        hash.addData(QByteArrayView("\0", 1));
    };
    add(word(kind));
    for (const PlannedColumn& column : columns) add(column.heading);
    return QString::fromLatin1(hash.result().toHex().left(32));
}

QString keyOfTable(const QString& name) { return QStringLiteral("import/") + name; }

}  // namespace

std::optional<ImportMap> rememberedImport(ImportKind kind, const std::vector<PlannedColumn>& as) {
    if (as.empty()) return std::nullopt;
    const QByteArray kept = QSettings().value(keyOfTable(nameOfTable(kind, as))).toByteArray();
    if (kept.isEmpty()) return std::nullopt;
    // One that cannot be read is as if none had been kept.
    const auto map = importMapOf(QJsonDocument::fromJson(kept).object(), kind);
    return map ? std::optional(*map) : std::nullopt;
}

void rememberImport(ImportKind kind, const std::vector<PlannedColumn>& as, const ImportMap& map) {
    QJsonObject json = toJson(map);
    // Which day and which yard a table without them is of is another thing each time.
    json.remove(QStringLiteral("day"));
    json.remove(QStringLiteral("yard"));
    if (as.empty() || json.isEmpty()) return;
    QSettings settings;
    const QString name = nameOfTable(kind, as);
    QStringList tables = settings.value(tablesKey).toStringList();
    tables.removeAll(name);
    tables.prepend(name);
    while (tables.size() > mostTables) settings.remove(keyOfTable(tables.takeLast()));
    settings.setValue(tablesKey, tables);
    settings.setValue(keyOfTable(name), QJsonDocument(json).toJson(QJsonDocument::Compact));
}

}  // namespace combwright
