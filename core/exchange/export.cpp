#include "core/exchange/export.h"

#include <QDir>
#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>
#include <QSaveFile>

#include "core/exchange/described_json.h"
#include "core/model/records.h"
#include "core/storage/sqlite/storage_error.h"

namespace combwright {
namespace {

QString exportText(std::string_view text) {
    return QString::fromUtf8(text.data(), static_cast<qsizetype>(text.size()));
}

void writeWhole(const QString& path, const QByteArray& bytes) {
    QSaveFile file(path);
    if (!file.open(QIODevice::WriteOnly) || file.write(bytes) != bytes.size() || !file.commit())
        throw StorageError(Trouble::NotWritable, path.toStdString(),
                           file.errorString().toStdString());
}

/// A value as it stands in a cell: numbers and days bare, text guarded.
std::string cellOf(const FieldInfo& field, const Value& value) {
    if (std::holds_alternative<std::monostate>(value)) return {};
    const QJsonValue json = toJson(field, value);
    if (json.isBool()) return json.toBool() ? "true" : "false";
    if (json.isDouble()) return QByteArray::number(json.toDouble(), 'g', 15).toStdString();
    return csvCell(json.toString().toStdString());
}

QByteArray csvOf(const Fields& fields, const std::vector<Row>& rows) {
    std::string text;
    const auto endLine = [&text] { text += "\r\n"; };
    for (std::size_t i = 0; i < fields.size(); ++i) text += (i ? "," : "") + fields[i].key();
    endLine();
    for (const Row& row : rows) {
        for (std::size_t i = 0; i < row.size(); ++i)
            text += (i ? "," : "") + cellOf(fields[i], row[i]);
        endLine();
    }
    return QByteArray::fromStdString(text);
}

QJsonArray jsonOf(const Fields& fields, const std::vector<Row>& rows) {
    QJsonArray list;
    for (const Row& row : rows) {
        QJsonObject object;
        for (std::size_t i = 0; i < row.size(); ++i)
            object.insert(exportText(fields[i].key()), toJson(fields[i], row[i]));
        list.append(object);
    }
    return list;
}

}  // namespace

std::string csvCell(const std::string& text) {
    std::string guarded = text;
    // A spreadsheet would run these as formulas; an apostrophe in front says text.
    if (!text.empty() && std::string_view("=+-@\t\r'").find(text.front()) != std::string_view::npos)
        guarded.insert(guarded.begin(), '\'');
    if (guarded.find_first_of(",\"\r\n") == std::string::npos) return guarded;
    std::string quotedText = "\"";
    for (const char c : guarded) {
        if (c == '"') quotedText += '"';
        quotedText += c;
    }
    return quotedText + '"';
}

Result<std::vector<std::string>> exportSeason(const Read& file, const std::string& folder) {
    QDir directory(QString::fromStdString(folder));
    if (directory.exists() && !directory.isEmpty())
        return Refusal{Code::PathTaken, {}, {{"path", folder}}};
    if (!directory.mkpath(QStringLiteral(".")))
        throw StorageError(Trouble::NotWritable, folder, "the folder cannot be made");
    std::vector<std::string> written;
    QJsonObject season;
    for (const RecordType& type : recordTypes()) {
        const std::vector<Row> rows = file.rows(type.table, type.fields(), {});
        const QString path = directory.filePath(exportText(type.table) + QStringLiteral(".csv"));
        writeWhole(path, csvOf(type.fields(), rows));
        written.push_back(path.toStdString());
        season.insert(exportText(type.table), jsonOf(type.fields(), rows));
    }
    const QString json = directory.filePath(QStringLiteral("season.json"));
    writeWhole(json, QJsonDocument(season).toJson(QJsonDocument::Indented));
    written.push_back(json.toStdString());
    return written;
}

}  // namespace combwright
