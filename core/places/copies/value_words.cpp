#include "core/places/copies/value_words.h"

#include <QCoreApplication>
#include <QDateTime>
#include <QLocale>
#include <QStringList>
#include <cmath>

#include "core/storage/queries/names.h"
#include "core/words/figures.h"
#include "core/words/money_words.h"
#include "core/words/wax_figures.h"
#include "core/words/words.h"

namespace combwright {
namespace {

QString valueSay(const char* text) { return QCoreApplication::translate("values", text); }

bool saysNothing(const Value& value) {
    const auto* text = std::get_if<std::string>(&value);
    return std::holds_alternative<std::monostate>(value) || (text && text->empty());
}

QString textInWords(const FieldInfo& field, const std::string& text) {
    if (field.kind == Kind::Choice) return choiceInWords(field.name, text);
    if (field.kind == Kind::Day) {
        const auto day = parseDay(text);
        return day ? dayText(*day) : fromUtf8(text);
    }
    if (field.kind == Kind::Instant) {
        const QDateTime at = QDateTime::fromString(fromUtf8(text), Qt::ISODate).toLocalTime();
        return at.isValid() ? QLocale().toString(at, QStringLiteral("d MMM yyyy HH:mm"))
                            : fromUtf8(text);
    }
    return fromUtf8(text);
}

QString figureInWords(const FieldInfo& field, std::int64_t number) {
    const int decimals = spelling(field.kind).decimals;
    const double amount = static_cast<double>(number) / std::pow(10.0, decimals);
    const QString figure = QLocale()
                               .toString(amount, 'f', QLocale::FloatingPointShortest)
                               .remove(QLocale().groupSeparator());
    switch (field.kind) {
        case Kind::Mass:
            return QStringLiteral("%1 %2").arg(massTold(Mass::grams(number)), massUnit());
        case Kind::Length:
            return shownLength(amount).text();
        case Kind::Temperature:
            return shownTemperature(amount).text();
        case Kind::Share:
            return valueSay("%1 %").arg(QLocale().toString(amount * 100, 'g', 6));
        case Kind::Percent:
            return valueSay("%1 %").arg(figure);
        case Kind::Minutes:
            return valueSay("%1 min").arg(figure);
        case Kind::Money:
            return moneyFigure(Money::hundredths(number));
        default:
            return figure;
    }
}

/// The days and things a record without a name is known by.
bool tellsApart(const FieldInfo& field) {
    return field.kind == Kind::Day || field.kind == Kind::Reference;
}

}  // namespace

QString choiceInWords(std::string_view field, const std::string& choice) {
    // Light wax is not light in weight, and propolis that was given was not fed.
    if (field == "shade" || field == "shades") return shadeText(choice);
    if (field == "went") return choiceText(choice);
    const QString text = choiceText(choice);
    return text == fromUtf8(choice) ? word(choice) : text;
}

QString valueInWords(const Read& file, const FieldInfo& field, const Value& value) {
    if (saysNothing(value)) return valueSay("not known");
    if (const auto* text = std::get_if<std::string>(&value)) return textInWords(field, *text);
    const std::int64_t number = std::get<std::int64_t>(value);
    if (field.kind == Kind::Flag) return number ? valueSay("yes") : valueSay("no");
    if (field.kind == Kind::Id) return QStringLiteral("#%1").arg(number);
    if (field.kind != Kind::Reference) return figureInWords(field, number);
    const std::string name = nameOf(file, field.refersTo, number);
    if (!name.starts_with('#')) return fromUtf8(name);
    const RecordType* type = findRecordType(field.refersTo);
    const auto rows =
        type ? file.rows(type->table, type->fields(), {Match{"id", value}}) : std::vector<Row>();
    return rows.empty() ? fromUtf8(name) : recordInWords(file, *type, rows.front());
}

QString fieldInWords(const FieldInfo& field) {
    const QString name = word(field.name);
    if (field.part == ReadingPart::To) return valueSay("%1, at most").arg(name);
    if (field.part == ReadingPart::How) return valueSay("%1, how known").arg(name);
    return name;
}

QString recordInWords(const Read& file, const RecordType& type, const Row& row) {
    const auto* id = row.empty() ? nullptr : std::get_if<std::int64_t>(&row.front());
    const std::string name =
        id && file.holds(type.table, *id) ? nameOf(file, type.table, *id) : std::string("#");
    if (!name.starts_with('#')) return fromUtf8(name);
    QStringList parts;
    const Fields& fields = type.fields();
    for (std::size_t i = 1; i < fields.size() && i < row.size() && parts.size() < 3; ++i) {
        if (saysNothing(row[i])) continue;
        const bool named = fields[i].kind == Kind::Text && !fields[i].optional;
        const bool mark = fields[i].name == "mark";
        if (!named && !mark && !tellsApart(fields[i])) continue;
        // What refers to its own kind would be told by itself, again and again.
        if (fields[i].refersTo == type.table) continue;
        parts << valueInWords(file, fields[i], row[i]);
    }
    if (!parts.isEmpty()) return parts.join(QStringLiteral(", "));
    return id ? QStringLiteral("#%1").arg(*id) : QString();
}

QString rowInWords(const Read& file, const RecordType& type, const Row& row, std::size_t most) {
    QStringList parts;
    const Fields& fields = type.fields();
    bool more = false;
    for (std::size_t i = 1; i < fields.size() && i < row.size(); ++i) {
        if (saysNothing(row[i])) continue;
        more = static_cast<std::size_t>(parts.size()) == most;
        if (more) break;
        parts << valueSay("%1 %2").arg(fieldInWords(fields[i]),
                                       valueInWords(file, fields[i], row[i]));
    }
    return parts.join(QStringLiteral(", ")) + (more ? QStringLiteral(" …") : QString());
}

}  // namespace combwright
