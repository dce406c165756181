#include "core/actions/play.h"

#include <QJsonArray>
#include <QJsonObject>
#include <algorithm>

#include "core/exchange/described_json.h"
#include "core/exchange/strict_json.h"
#include "core/model/records.h"
#include "core/storage/queries/names.h"

namespace combwright {
namespace {

constexpr std::string_view undoLine = "undo";
constexpr std::string_view redoLine = "redo";

std::optional<std::string> optionalText(const QJsonObject& object, const char* key) {
    const QJsonValue value = object.value(QLatin1String(key));
    if (!value.isString()) return std::nullopt;
    return value.toString().toStdString();
}

class Player {
  public:
    explicit Player(Season& season) : m_season(season) {}

    Result<Played> perform(std::string_view text) {
        auto read = strictObject(text);
        if (!read) return read.error();
        const QJsonObject object = *std::move(read);
        const auto name = optionalText(object, "do");
        if (!name) return Refusal{Code::Missing, "do", {}};
        if (*name == undoLine || *name == redoLine) return turn(*name == undoLine, object);
        const ActionType* type = findActionType(*name);
        if (!type) return Refusal{Code::NoSuchAction, "do", {{"name", *name}}};
        return performAction(*type, object);
    }

  private:
    Result<Played> turn(bool back, const QJsonObject& object) {
        if (object.size() > 1) {
            for (const QString& key : object.keys())
                if (key != QLatin1String("do"))
                    return Refusal{Code::UnknownKey, key.toStdString(), {}};
        }
        auto done = back ? m_season.undo() : m_season.redo();
        if (!done) return done.error();
        return Played{0, done->step, {}};
    }

    Result<Played> performAction(const ActionType& type, QJsonObject object) {
        for (const char* key : {"why", "as", "sheet"}) {
            const QJsonValue value = object.value(QLatin1String(key));
            if (!value.isUndefined() && !value.isNull() && !value.isString())
                return Refusal{Code::WrongType, key, {{"wanted", "text"}}};
        }
        const auto day = optionalText(object, "on");
        const auto on = day ? parseDay(*day) : std::nullopt;
        const Resolve resolve = [&](const FieldInfo& field, const QJsonValue& json) {
            return resolved(field, json, on.value_or(m_season.clock().today()));
        };
        if (auto named = nameChanged(type, object, resolve); !named) return named.error();
        const auto row = readRow(type.fields(), object,
                                 {QStringLiteral("do"), QStringLiteral("why"), QStringLiteral("as"),
                                  QStringLiteral("sheet")},
                                 resolve);
        if (!row) return row.error();
        const StepNote note{optionalText(object, "why").value_or(std::string()),
                            optionalText(object, "sheet").value_or(std::string())};
        auto done = performRow(m_season, type, *row, note);
        if (!done) return done.error();
        if (const auto as = optionalText(object, "as")) m_named[*as] = done->made;
        Played played{0, done->step.step, std::move(done->made)};
        // A day mistyped a month ahead looks like one noted in advance; a script of next year is
        // neither. All are kept, so that a season plays the same whatever the day, and all are
        // said.
        if (on && *on > m_season.clock().today()) played.ahead = on;
        return played;
    }

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

    Result<std::int64_t> resolved(const FieldInfo& field, const QJsonValue& json, Day on) {
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

    Result<std::int64_t> resolvedNumber(const FieldInfo& field, const std::string& text) {
        bool isNumber = false;
        const qlonglong id = QString::fromStdString(text.substr(1)).toLongLong(&isNumber);
        if (!isNumber || id < 1)
            return Refusal{Code::WrongType, field.key(), {{"wanted", "#number"}}};
        if (!m_season.read().holds(field.refersTo, id))
            return Refusal{Code::NotFound, field.key(), {{"name", text}}};
        return static_cast<std::int64_t>(id);
    }

    Result<std::int64_t> resolvedObject(const FieldInfo& field, const QJsonObject& object, Day on) {
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

    Result<std::int64_t> named(const FieldInfo& field, const NameQuery& query) {
        auto found = findNamed(m_season.read(), field.refersTo, query);
        if (found) return found;
        Refusal refusal = found.error();
        refusal.field = field.key();
        return refusal;
    }

    Season& m_season;
    std::map<std::string, Made, std::less<>> m_named;
};

bool isSkipped(std::string_view line) {
    const std::size_t first = line.find_first_not_of(" \t\r");
    return first == std::string_view::npos || line[first] == '#';
}

PlayResult playLines(Season& season, std::string_view script) {
    PlayResult result;
    Player player(season);
    std::size_t number = 0;
    while (!script.empty()) {
        const std::size_t end = std::min(script.find('\n'), script.size());
        const std::string_view line = script.substr(0, end);
        script.remove_prefix(std::min(end + 1, script.size()));
        ++number;
        if (isSkipped(line)) continue;
        auto played = player.perform(line);
        if (!played) {
            result.stopped = PlayStopped{number, played.error(), result.steps.size()};
            break;
        }
        played->line = number;
        result.steps.push_back(*std::move(played));
    }
    return result;
}

}  // namespace

const std::vector<std::string_view>& turnLines() {
    static const std::vector<std::string_view> lines{undoLine, redoLine};
    return lines;
}

PlayResult play(Season& season, std::string_view script, AllOrNothing all) {
    if (all == AllOrNothing::No) return playLines(season, script);
    PlayResult result;
    const auto together = season.together([&]() -> Result<void> {
        result = playLines(season, script);
        if (result.stopped) return result.stopped->refusal;
        return {};
    });
    if (!together) {
        if (!result.stopped) result.stopped = PlayStopped{0, together.error(), 0};
        result.stopped->kept = 0;
        result.steps.clear();
    }
    return result;
}

std::string scriptOf(const Season& season) {
    auto entries = season.history();
    std::reverse(entries.begin(), entries.end());
    std::string script;
    for (const JournalEntry& entry : entries) {
        switch (entry.kind) {
            case StepKind::Do:
                script += entry.info.line;
                break;
            case StepKind::Undo:
                script += R"({"do":"undo"})";
                break;
            case StepKind::Redo:
                script += R"({"do":"redo"})";
                break;
        }
        script += '\n';
    }
    return script;
}

}  // namespace combwright
