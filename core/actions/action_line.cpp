#include "core/actions/action_line.h"

#include <algorithm>

#include "core/exchange/described_json.h"
#include "core/model/records.h"
#include "core/storage/queries/names.h"

namespace combwright {
namespace {

std::optional<std::string> optionalText(const QJsonObject& object, const char* key) {
    const QJsonValue value = object.value(QLatin1String(key));
    if (!value.isString()) return std::nullopt;
    return value.toString().toStdString();
}

class LineReader {
  public:
    LineReader(const Read& file, const NamedHere& named) : m_file(file), m_named(named) {}

    Result<ActionLine> read(const ActionType& type, QJsonObject object, Day today) const {
        for (const char* key : {"why", "as", "sheet"}) {
            const QJsonValue value = object.value(QLatin1String(key));
            if (!value.isUndefined() && !value.isNull() && !value.isString())
                return Refusal{Code::WrongType, key, {{"wanted", "text"}}};
        }
        ActionLine line;
        const auto day = optionalText(object, "on");
        line.on = day ? parseDay(*day) : std::nullopt;
        const Resolve resolve = [&](const FieldInfo& field, const QJsonValue& json) {
            return resolved(field, json, line.on.value_or(today));
        };
        if (auto known = nameChanged(type, object, resolve); !known) return known.error();
        auto row = readRow(type.fields(), object,
                           {QStringLiteral("do"), QStringLiteral("why"), QStringLiteral("as"),
                            QStringLiteral("sheet")},
                           resolve);
        if (!row) return row.error();
        line.row = *std::move(row);
        line.note = {optionalText(object, "why").value_or(std::string()),
                     optionalText(object, "sheet").value_or(std::string())};
        line.as = optionalText(object, "as");
        return line;
    }

  private:
    /// Turns what references among the fields to change are called into "#12", so that the line
    /// kept means the same on any day. The fields are those of the record the line names.
    static Result<void> nameChanged(const ActionType& type, QJsonObject& object,
                                    const Resolve& resolve) {
        const Fields& fields = type.fields();
        const auto changes = std::find_if(fields.begin(), fields.end(), [](const FieldInfo& each) {
            return each.kind == Kind::Changes;
        });
        if (changes == fields.end()) return {};
        const QString key = QString::fromStdString(changes->key());
        if (!object.value(key).isObject()) return {};
        QJsonObject set = object.value(key).toObject();
        for (const FieldInfo& target : fields) {
            const QString named = QString::fromStdString(target.key());
            if (target.kind != Kind::Reference || object.value(named).isNull() ||
                object.value(named).isUndefined())
                continue;
            for (const FieldInfo& field : findRecordType(target.refersTo)->fields()) {
                const QString changed = QString::fromStdString(field.key());
                const QJsonValue json = set.value(changed);
                if (field.kind != Kind::Reference || json.isNull() || json.isUndefined()) continue;
                const auto id = resolve(field, json);
                if (!id) {
                    Refusal refusal = id.error();
                    refusal.field = changes->key() + "." + refusal.field;
                    return refusal;
                }
                set.insert(changed, QStringLiteral("#%1").arg(*id));
            }
            break;
        }
        object.insert(key, set);
        return {};
    }

    Result<std::int64_t> resolved(const FieldInfo& field, const QJsonValue& json, Day on) const {
        const std::string table(field.refersTo);
        if (json.isObject()) return resolvedObject(field, json.toObject(), on);
        if (!json.isString()) return Refusal{Code::WrongType, field.key(), {{"wanted", "name"}}};
        const std::string text = json.toString().toStdString();
        if (text.starts_with('#')) return resolvedNumber(field, text);
        if (text.starts_with('@')) {
            const auto found = m_named.find(text.substr(1));
            if (found != m_named.end())
                for (const auto& [madeTable, id] : found->second)
                    if (madeTable == table) return id;
            return Refusal{Code::NotFound, field.key(), {{"name", text}}};
        }
        return named(field, NameQuery{.name = text, .on = on});
    }

    Result<std::int64_t> resolvedNumber(const FieldInfo& field, const std::string& text) const {
        bool isNumber = false;
        const qlonglong id = QString::fromStdString(text.substr(1)).toLongLong(&isNumber);
        if (!isNumber || id < 1)
            return Refusal{Code::WrongType, field.key(), {{"wanted", "#number"}}};
        if (!m_file.holds(field.refersTo, id))
            return Refusal{Code::NotFound, field.key(), {{"name", text}}};
        return static_cast<std::int64_t>(id);
    }

    Result<std::int64_t> resolvedObject(const FieldInfo& field, const QJsonObject& object,
                                        Day on) const {
        NameQuery query;
        query.on = on;
        for (const QString& key : object.keys()) {
            const QJsonValue value = object.value(key);
            const std::string text = value.toString().toStdString();
            if (key.toStdString() == field.refersTo)
                query.name = text;
            else if (key == QLatin1String("yard"))
                query.yard = text;
            else if (key == QLatin1String("hive"))
                query.hive = text;
            else if (key == QLatin1String("run"))
                query.run = text;
            else if (key == QLatin1String("box"))
                query.box = text;
            else if (key == QLatin1String("equipment"))
                query.equipment = text;
            else if (key == QLatin1String("bucket"))
                query.bucket = text;
            else if (key == QLatin1String("lot"))
                query.lot = text;
            else if (key == QLatin1String("bottling"))
                query.bottling = text;
            // "place" counts from the floor as one does in the yard: the lowest box is 1.
            else if (key == QLatin1String("place") && value.isDouble())
                query.level = static_cast<std::int64_t>(value.toDouble()) - 1;
            else
                return Refusal{Code::UnknownKey, field.key() + "." + key.toStdString(), {}};
        }
        return named(field, query);
    }

    Result<std::int64_t> named(const FieldInfo& field, const NameQuery& query) const {
        auto found = findNamed(m_file, field.refersTo, query);
        if (found) return found;
        Refusal refusal = found.error();
        refusal.field = field.key();
        return refusal;
    }

    const Read& m_file;
    const NamedHere& m_named;
};

}  // namespace

Result<const ActionType*> actionOfLine(const QJsonObject& object) {
    const auto name = optionalText(object, "do");
    if (!name) return Refusal{Code::Missing, "do", {}};
    const ActionType* type = findActionType(*name);
    if (!type) return Refusal{Code::NoSuchAction, "do", {{"name", *name}}};
    return type;
}

Result<ActionLine> readActionLine(const Read& file, const ActionType& type, QJsonObject object,
                                  const NamedHere& named, Day today) {
    return LineReader(file, named).read(type, std::move(object), today);
}

}  // namespace combwright
