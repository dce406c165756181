#include "core/actions/load_season.h"

#include <QJsonArray>
#include <QJsonObject>

#include "core/exchange/described_json.h"
#include "core/exchange/strict_json.h"
#include "core/model/records.h"
#include "core/storage/whole_rows.h"

namespace combwright {
namespace {

/// "#12" means row 12 of what is being read; whether there is one is seen in the end.
Result<std::int64_t> asItStands(const FieldInfo& field, const QJsonValue& json) {
    bool isNumber = false;
    const QString text = json.toString();
    const qlonglong id = text.mid(1).toLongLong(&isNumber);
    if (!text.startsWith(QLatin1Char('#')) || !isNumber || id < 1)
        return Refusal{Code::WrongType, field.key(), {{"wanted", "#number"}}};
    return static_cast<std::int64_t>(id);
}

Result<std::vector<Row>> rowsOf(const RecordType& type, const QJsonValue& json) {
    const std::string table(type.table);
    if (!json.isArray()) return Refusal{Code::WrongType, table, {{"wanted", "list"}}};
    const QJsonArray given = json.toArray();
    std::vector<Row> rows;
    for (const auto& each : given) {
        if (!each.isObject()) return Refusal{Code::WrongType, table, {{"wanted", "object"}}};
        auto row = readRow(type.fields(), each.toObject(), {}, &asItStands);
        if (!row) {
            Refusal refusal = row.error();
            refusal.field = table + '.' + refusal.field;
            return refusal;
        }
        rows.push_back(*std::move(row));
    }
    return rows;
}

}  // namespace

const Fields& LoadSeason::fields() {
    static const Fields all =
        describe(field<&LoadSeason::on>("on"), field<&LoadSeason::fileName>("file_name"),
                 field<&LoadSeason::season>("season_json"));
    return all;
}

Result<Made> LoadSeason::perform(Write& file) const {
    if (!isUntouched(file)) return Refusal{Code::NotClosed, "season_json", {{"loaded", "yes"}}};
    const auto json = strictObject(season);
    if (!json) return Refusal{Code::WrongType, "season_json", {{"wanted", "season.json"}}};
    WholeRows whole;
    Made made;
    for (const QString& key : json->keys()) {
        const std::string table = key.toStdString();
        const RecordType* type = findRecordType(table);
        if (!type) return Refusal{Code::UnknownKey, table, {}};
        auto rows = rowsOf(*type, json->value(key));
        if (!rows) return rows.error();
        for (const Row& row : *rows)
            made.emplace_back(type->table, std::get<std::int64_t>(row.front()));
        whole.emplace(table, *std::move(rows));
    }
    if (made.empty()) return Refusal{Code::Missing, "season_json", {}};
    if (auto put = putWholeRows(file, whole); !put) return put.error();
    return made;
}

}  // namespace combwright
