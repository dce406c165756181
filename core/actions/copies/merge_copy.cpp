#include "core/actions/copies/merge_copy.h"

#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>
#include <map>
#include <set>

#include "core/exchange/described_json.h"
#include "core/model/records.h"
#include "core/storage/queries/lineage.h"

namespace combwright {
namespace {

constexpr const char* rowsKey = "rows";

QString fieldKeyText(const FieldInfo& field) { return QString::fromStdString(field.key()); }

/// "#12" for what is here, "+17" for what comes in with the line.
QJsonValue referenceText(std::int64_t id) {
    return id < 0 ? QStringLiteral("+%1").arg(-id) : QStringLiteral("#%1").arg(id);
}

QJsonObject valuesObject(const RecordType& type, const Row& row, const Row* present) {
    QJsonObject values;
    const Fields& fields = type.fields();
    for (std::size_t i = 1; i < fields.size(); ++i) {
        const bool nothing = std::holds_alternative<std::monostate>(row[i]);
        if (present ? row[i] == (*present)[i] : nothing) continue;
        values.insert(fieldKeyText(fields[i]), fields[i].kind == Kind::Reference && !nothing
                                                   ? referenceText(std::get<std::int64_t>(row[i]))
                                                   : toJson(fields[i], row[i]));
    }
    return values;
}

/// Does the edits of one line.
class CopyWriter {
  public:
    explicit CopyWriter(Write& file) : m_file(file) {}

    Result<Made> write(const QJsonArray& edits) {
        for (const auto& edit : edits)
            if (auto done = writeOne(edit.toObject()); !done) return done.error();
        return std::move(m_made);
    }

  private:
    Result<const RecordType*> typeNamed(const QJsonValue& name) const {
        const std::string table = name.toString().toStdString();
        if (const RecordType* type = findRecordType(table)) return type;
        return Refusal{Code::NotFound, rowsKey, {{"name", table}}};
    }

    Result<void> writeOne(const QJsonObject& edit) {
        if (edit.contains(QLatin1String("add"))) return add(edit);
        const bool changes = edit.contains(QLatin1String("change"));
        if (!changes && !edit.contains(QLatin1String("remove")))
            return Refusal{Code::UnknownKey, rowsKey, {}};
        const auto type = typeNamed(edit.value(QLatin1String(changes ? "change" : "remove")));
        if (!type) return type.error();
        const std::int64_t id = edit.value(QStringLiteral("id")).toInteger();
        auto row = recordRow(m_file, (*type)->table, id);
        if (!row) return notThere(id);
        if (!changes) {
            if (isReferredTo(**type, id))
                return Refusal{Code::Taken, rowsKey, {{"name", "#" + std::to_string(id)}}};
            m_file.removeRow((*type)->table, id);
            return {};
        }
        if (auto read = readInto(**type, edit, *row); !read) return read.error();
        m_file.changeRow((*type)->table, (*type)->fields(), *row);
        return {};
    }

    Result<void> add(const QJsonObject& edit) {
        const auto type = typeNamed(edit.value(QStringLiteral("add")));
        if (!type) return type.error();
        Row row((*type)->fields().size());
        row.front() = Value{std::int64_t{1}};
        if (auto read = readInto(**type, edit, row); !read) return read.error();
        const std::int64_t id = m_file.addRow((*type)->table, (*type)->fields(), row);
        const std::int64_t as = edit.value(QStringLiteral("as")).toInteger();
        m_came[{std::string((*type)->table), as}] = id;
        m_made.emplace_back((*type)->table, id);
        return {};
    }

    Result<void> readInto(const RecordType& type, const QJsonObject& edit, Row& row) const {
        const QJsonObject values = edit.value(QStringLiteral("values")).toObject();
        const Fields& fields = type.fields();
        for (const QString& key : values.keys()) {
            const FieldInfo* field = fields.findKey(key.toStdString());
            if (!field || field->kind == Kind::Id)
                return Refusal{
                    Code::UnknownKey, std::string(rowsKey) + "." + key.toStdString(), {}};
        }
        for (std::size_t i = 1; i < fields.size(); ++i) {
            QJsonValue json = values.value(fieldKeyText(fields[i]));
            if (json.isUndefined()) continue;
            if (fields[i].kind == Kind::Reference && json.isString()) {
                const auto id = referred(fields[i], json.toString());
                if (!id) return id.error();
                json = QStringLiteral("#%1").arg(*id);
            }
            auto value = fromJson(fields[i], json);
            if (!value) {
                Refusal refusal = value.error();
                refusal.field = std::string(rowsKey) + "." + refusal.field;
                return refusal;
            }
            row[i] = *std::move(value);
        }
        if (!type.fits(row)) return Refusal{Code::WrongType, rowsKey, {{"wanted", "record"}}};
        return {};
    }

    Result<std::int64_t> referred(const FieldInfo& field, const QString& text) const {
        const std::int64_t number = text.mid(1).toLongLong();
        if (text.startsWith(QLatin1Char('+'))) {
            const auto found = m_came.find({std::string(field.refersTo), number});
            if (found == m_came.end()) return notThere(number);
            return found->second;
        }
        if (!m_file.holds(field.refersTo, number)) return notThere(number);
        return number;
    }

    static Refusal notThere(std::int64_t id) {
        return {Code::NotFound, rowsKey, {{"name", "#" + std::to_string(id)}}};
    }

    bool isReferredTo(const RecordType& removed, std::int64_t id) const {
        for (const RecordType& type : recordTypes())
            for (const FieldInfo& field : type.fields())
                if (field.kind == Kind::Reference && field.refersTo == removed.table &&
                    !m_file.rows(type.table, type.fields(), {Match{field.name, Value{id}}}).empty())
                    return true;
        return false;
    }

    Write& m_file;
    Made m_made;
    std::map<std::pair<std::string, std::int64_t>, std::int64_t> m_came;
};

std::set<std::string> findingTexts(const Read& file) {
    std::set<std::string> texts;
    for (const AuditFinding& finding : audit(file))
        texts.insert(finding.about + ": " + finding.says);
    return texts;
}

}  // namespace

const Fields& MergeCopy::fields() {
    static const Fields all =
        describe(field<&MergeCopy::on>("on"), field<&MergeCopy::otherCopy>("other_copy"),
                 field<&MergeCopy::upToStep>("up_to_step"), field<&MergeCopy::digest>("digest"),
                 field<&MergeCopy::rows>("rows"));
    return all;
}

Result<Made> MergeCopy::perform(Write& file) const {
    const QJsonObject object =
        QJsonDocument::fromJson(QByteArray::fromStdString(rows.json)).object();
    for (const QString& key : object.keys())
        if (key != QLatin1String("edits") && key != QLatin1String("same"))
            return Refusal{Code::UnknownKey, std::string(rowsKey) + "." + key.toStdString(), {}};
    return CopyWriter(file).write(object.value(QStringLiteral("edits")).toArray());
}

MergeCopy mergeCopyOf(const MergePlan& plan, Day on) {
    QJsonArray edits;
    for (const MergeEdit& edit : plan.edits) {
        const QString table = QString::fromUtf8(edit.type->table.data(),
                                                static_cast<qsizetype>(edit.type->table.size()));
        const auto id = static_cast<qint64>(edit.id);
        switch (edit.kind) {
            case ChangeKind::Added:
                edits.append(QJsonObject{
                    {QStringLiteral("add"), table},
                    {QStringLiteral("as"), id},
                    {QStringLiteral("values"), valuesObject(*edit.type, edit.row, nullptr)}});
                break;
            case ChangeKind::Changed:
                edits.append(QJsonObject{
                    {QStringLiteral("change"), table},
                    {QStringLiteral("id"), id},
                    {QStringLiteral("values"), valuesObject(*edit.type, edit.row, &edit.present)}});
                break;
            case ChangeKind::Removed:
                edits.append(
                    QJsonObject{{QStringLiteral("remove"), table}, {QStringLiteral("id"), id}});
                break;
        }
    }
    QJsonArray same;
    for (const SameRecord& each : plan.same)
        same.append(QJsonObject{{QStringLiteral("of"), QString::fromUtf8(each.type->table.data())},
                                {QStringLiteral("theirs"), static_cast<qint64>(each.theirs)},
                                {QStringLiteral("ours"), static_cast<qint64>(each.ours)}});
    MergeCopy merge;
    merge.on = on;
    merge.otherCopy = plan.from;
    merge.upToStep = Count(plan.step);
    merge.digest = plan.digest;
    const QJsonObject rows{{QStringLiteral("edits"), edits}, {QStringLiteral("same"), same}};
    merge.rows.json = QJsonDocument(rows).toJson(QJsonDocument::Compact).toStdString();
    return merge;
}

Result<std::int64_t> takeIn(Season& season, const MergePlan& plan, Day on) {
    if (plan.open() > 0)
        return Refusal{Code::ToBeChosen, {}, {{"count", std::to_string(plan.open())}}};
    if (plan.edits.empty()) return Refusal{Code::NothingToDo, {}, {}};
    const std::set<std::string> before = findingTexts(season.read());
    std::int64_t step = 0;
    const auto done = season.together([&]() -> Result<void> {
        const MergeCopy merge = mergeCopyOf(plan, on);
        const auto kept = performRow(season, *findActionType(MergeCopy::name), toRow(merge));
        if (!kept) return kept.error();
        step = kept->step.step;
        for (const std::string& text : findingTexts(season.read()))
            if (!before.contains(text)) return Refusal{Code::WouldNotFit, {}, {{"says", text}}};
        return {};
    });
    if (!done) return done.error();
    return step;
}

}  // namespace combwright
