#include "core/places/copies/history_steps.h"

#include <QCoreApplication>
#include <QDateTime>
#include <QJsonDocument>
#include <QJsonObject>
#include <algorithm>
#include <cmath>
#include <map>

#include "core/model/records.h"
#include "core/places/copies/value_words.h"
#include "core/storage/journal.h"
#include "core/storage/queries/revisions.h"
#include "core/words/words.h"

namespace combwright {
namespace {

constexpr qsizetype mostAbout = 6;
constexpr qsizetype mostChanges = 8;

QString historySay(const char* text) { return QCoreApplication::translate("history", text); }

/// Which records a reference of that name leads to: by the name of the records themselves, else as
/// the records' own fields call it.
std::string_view tableCalled(const std::string& key) {
    static const std::map<std::string, std::string_view, std::less<>> tables = [] {
        std::map<std::string, std::string_view, std::less<>> all;
        for (const RecordType& type : recordTypes())
            for (const FieldInfo& field : type.fields())
                if (field.kind == Kind::Reference) all.emplace(field.name, field.refersTo);
        for (const RecordType& type : recordTypes()) all[std::string(type.table)] = type.table;
        all.emplace("run", "extraction");
        all.emplace("load", "spin_load");
        all.emplace("weighing", "hive_weighing");
        return all;
    }();
    const auto found = tables.find(key);
    return found == tables.end() ? std::string_view() : found->second;
}

/// A key of a line without the unit its number is in: "net_g" is net in grams.
struct KeyRead {
    std::string name;
    Kind kind = Kind::Text;
};
KeyRead keyRead(const std::string& key) {
    if (hasWord(key)) return {key, Kind::Text};
    for (const Kind kind : {Kind::Frames, Kind::Mass, Kind::Length, Kind::Share, Kind::Percent,
                            Kind::Temperature, Kind::Minutes}) {
        const std::string_view suffix = spelling(kind).keySuffix;
        if (key.size() > suffix.size() && key.ends_with(suffix))
            return {key.substr(0, key.size() - suffix.size()), kind};
    }
    return {key, Kind::Text};
}

QString saidInLine(const Read& file, const std::string& key, const KeyRead& read,
                   const QJsonValue& value) {
    if (value.isObject()) {
        QStringList parts;
        const QJsonObject object = value.toObject();
        for (const QString& inner : object.keys())
            parts << object.value(inner).toVariant().toString();
        return parts.join(QLatin1Char(' '));
    }
    FieldInfo field;
    field.name = read.name;
    field.kind = read.kind;
    if (value.isBool()) {
        field.kind = Kind::Flag;
        return valueInWords(file, field, Value{std::int64_t{value.toBool()}});
    }
    if (value.isDouble()) {
        if (field.kind == Kind::Text) return QLocale().toString(value.toDouble(), 'g', 10);
        const double scaled = value.toDouble() * std::pow(10.0, spelling(field.kind).decimals);
        return valueInWords(file, field, Value{static_cast<std::int64_t>(std::llround(scaled))});
    }
    const QString text = value.toString();
    bool isNumber = false;
    const qlonglong id = text.mid(1).toLongLong(&isNumber);
    const std::string_view table = tableCalled(key);
    if (text.startsWith(QLatin1Char('#')) && isNumber && !table.empty()) {
        field.kind = Kind::Reference;
        field.refersTo = table;
        return valueInWords(file, field, Value{static_cast<std::int64_t>(id)});
    }
    if (const auto day = parseDay(text.toStdString())) return dayText(*day);
    const std::string plain = text.toStdString();
    return hasWord(plain) || choiceText(plain) != text ? choiceInWords(read.name, plain) : text;
}

/// How a figure is known is said behind it: "mass 24 kg, weighed".
QString howBehind(const QJsonObject& line, const std::string& name) {
    const QString how = line.value(fromUtf8(name + "_how")).toString();
    return how.isEmpty() ? QString() : QStringLiteral(", ") + choiceText(how.toStdString());
}
bool isHowOfAnother(const QJsonObject& line, const QString& key) {
    if (!key.endsWith(QLatin1String("_how"))) return false;
    const std::string base = key.chopped(4).toStdString();
    const auto keys = line.keys();
    return std::any_of(keys.begin(), keys.end(), [&](const QString& each) {
        return keyRead(each.toStdString()).name == base;
    });
}

/// The rows of a table that was taken in, as a number; each of them is a line of its own.
QString rowsTakenIn(const QString& lines) {
    const auto all = lines.split(QLatin1Char('\n'), Qt::SkipEmptyParts);
    return historySay("%1 rows").arg(all.size());
}

/// What a deed was about, from its line: names first.
QString aboutLine(const Read& file, const QJsonObject& line) {
    QStringList named;
    QStringList said;
    for (const QString& key : line.keys()) {
        const QJsonValue value = line.value(key);
        if (value.isNull() || value.isArray() || key == QLatin1String("set")) continue;
        if (QStringList{QStringLiteral("do"), QStringLiteral("on"), QStringLiteral("why"),
                        QStringLiteral("sheet"), QStringLiteral("as"), QStringLiteral("rows"),
                        QStringLiteral("digest"), QStringLiteral("up_to_step")}
                .contains(key))
            continue;
        if (isHowOfAnother(line, key)) continue;
        const std::string plain = key.toStdString();
        const KeyRead read = keyRead(plain);
        QString text =
            historySay("%1 %2").arg(word(read.name), saidInLine(file, plain, read, value));
        if (key == QLatin1String("lines"))
            text = rowsTakenIn(value.toString());
        else
            text += howBehind(line, read.name);
        (tableCalled(plain).empty() ? said : named) << text;
    }
    named << said;
    const bool more = named.size() > mostAbout;
    return named.mid(0, mostAbout).join(QStringLiteral(", ")) +
           (more ? QStringLiteral(" …") : QString());
}

QString upperFirst(const QString& text) { return text.left(1).toUpper() + text.mid(1); }

QString deedSentence(const Read& file, const JournalEntry& entry, std::optional<Day> kept) {
    const QJsonObject line =
        QJsonDocument::fromJson(QByteArray::fromStdString(entry.info.line)).object();
    const QString deed = upperFirst(word(entry.info.action));
    const QString about = aboutLine(file, line);
    const auto on = parseDay(line.value(QStringLiteral("on")).toString().toStdString());
    // The day it is of is said where it is another than the one it was kept on.
    if (on && on != kept)
        return about.isEmpty() ? historySay("%1, for %2.").arg(deed, dayText(*on))
                               : historySay("%1, for %2: %3.").arg(deed, dayText(*on), about);
    return about.isEmpty() ? historySay("%1.").arg(deed) : historySay("%1: %2.").arg(deed, about);
}

QString stepSentence(const Read& file, const JournalEntry& entry, std::optional<Day> kept) {
    const QString deed = word(entry.info.action);
    switch (entry.kind) {
        case StepKind::Undo:
            return historySay("Taken back: %1, step %2.").arg(deed).arg(entry.of.value_or(0));
        case StepKind::Redo:
            return historySay("Done again: %1, step %2.").arg(deed).arg(entry.of.value_or(0));
        case StepKind::Do:
            break;
    }
    return deedSentence(file, entry, kept);
}

QStringList changesOfStep(const Read& file, std::int64_t step) {
    QStringList changes;
    qsizetype left = 0;
    for (const Revised& each : revisedBy(file, step)) {
        if (changes.size() == mostChanges) {
            ++left;
            continue;
        }
        const RecordType* type = findRecordType(each.table);
        const auto rows = file.rows(each.table, type->fields(), {Match{"id", Value{each.id}}});
        const QString name = rows.empty() ? QStringLiteral("#%1").arg(each.id)
                                          : recordInWords(file, *type, rows.front());
        changes << historySay("%1 %2, %3: %4, then %5")
                       .arg(word(each.table), name, fieldInWords(*each.field),
                            valueInWords(file, *each.field, each.was),
                            valueInWords(file, *each.field, each.is));
    }
    if (left > 0) changes << historySay("and %1 values more").arg(left);
    return changes;
}

}  // namespace

std::vector<HistoryStep> historyInWords(const Read& file, std::size_t most) {
    std::vector<HistoryStep> steps;
    for (const JournalEntry& entry : Journal(file.database()).entries(most)) {
        HistoryStep step;
        step.step = entry.seq;
        step.kind = entry.kind;
        const QDateTime at = QDateTime::fromString(fromUtf8(entry.at), Qt::ISODate).toLocalTime();
        step.day = parseDay(at.toString(QStringLiteral("yyyy-MM-dd")).toStdString());
        step.time = at.toString(QStringLiteral("HH:mm"));
        step.takenBack = entry.kind == StepKind::Do && !entry.stands;
        step.sentence = stepSentence(file, entry, step.day);
        step.why = fromUtf8(entry.info.why);
        if (entry.kind == StepKind::Do) step.changes = changesOfStep(file, entry.seq);
        steps.push_back(std::move(step));
    }
    return steps;
}

}  // namespace combwright
