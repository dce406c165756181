#include "core/exchange/export.h"

#include <QDir>
#include <QFile>
#include <QFileInfo>
#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>
#include <algorithm>
#include <utility>

#include "core/exchange/described_json.h"
#include "core/model/photos/photo.h"
#include "core/model/records.h"
#include "core/storage/pictures.h"
#include "core/storage/sqlite/storage_error.h"
#include "core/storage/whole_file.h"

namespace combwright {
namespace {

QString exportText(std::string_view text) {
    return QString::fromUtf8(text.data(), static_cast<qsizetype>(text.size()));
}

/// A file to be: its name and what goes into it.
using FileToBe = std::pair<QString, QByteArray>;

/// Writes them all, or leaves none of them behind.
std::vector<std::string> writeAll(QDir& directory, const std::vector<FileToBe>& files) {
    const bool wasThere = directory.exists();
    if (!directory.mkpath(QStringLiteral(".")))
        throw StorageError(Trouble::NotWritable, directory.path().toStdString(),
                           "the folder cannot be made");
    std::vector<std::string> written;
    try {
        for (const auto& [name, bytes] : files) {
            if (!directory.mkpath(QFileInfo(name).path()))
                throw StorageError(Trouble::NotWritable, directory.path().toStdString(),
                                   "the folder cannot be made");
            writeWholeFile(directory.filePath(name).toStdString(),
                           {bytes.constData(), static_cast<std::size_t>(bytes.size())});
            written.push_back(directory.filePath(name).toStdString());
        }
    } catch (const StorageError&) {
        for (const std::string& path : written) QFile::remove(QString::fromStdString(path));
        directory.rmdir(QStringLiteral("photos"));
        if (!wasThere) directory.rmdir(directory.absolutePath());
        throw;
    }
    return written;
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

bool isFormulaSign(char first) {
    return std::string_view("=+-@\t\r'").find(first) != std::string_view::npos;
}

std::string csvCell(const std::string& text) {
    std::string guarded = text;
    // A spreadsheet would run these as formulas; an apostrophe in front says text.
    if (!text.empty() && isFormulaSign(text.front())) guarded.insert(guarded.begin(), '\'');
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
    const QFileInfo place(QString::fromStdString(folder));
    if ((place.exists() && !place.isDir()) || (directory.exists() && !directory.isEmpty()))
        return Refusal{Code::PathTaken, {}, {{"path", folder}}};
    // Everything is read before anything is written: a damaged file leaves no half a folder.
    std::vector<FileToBe> files;
    QJsonObject season;
    for (const RecordType& type : recordTypes()) {
        const std::vector<Row> rows = file.rows(type.table, type.fields(), {});
        files.emplace_back(exportText(type.table) + QStringLiteral(".csv"),
                           csvOf(type.fields(), rows));
        season.insert(exportText(type.table), jsonOf(type.fields(), rows));
    }
    for (const Photo& photo : file.all<Photo>()) {
        if (!isDigest(photo.digest.text())) continue;
        // Called by its digest: what a photo was once called is no name for a file of ours.
        const QString name = QStringLiteral("photos/%1.jpg").arg(exportText(photo.digest.text()));
        const auto jpeg = pictureOf(file.database(), photo.digest.text());
        const auto same = [&name](const FileToBe& each) { return each.first == name; };
        if (jpeg && std::none_of(files.begin(), files.end(), same))
            files.emplace_back(name, QByteArray(reinterpret_cast<const char*>(jpeg->data()),
                                                static_cast<qsizetype>(jpeg->size())));
    }
    files.emplace_back(QStringLiteral("season.json"),
                       QJsonDocument(season).toJson(QJsonDocument::Indented));
    return writeAll(directory, files);
}

}  // namespace combwright
