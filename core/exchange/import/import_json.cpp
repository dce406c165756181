#include "core/exchange/import/import_json.h"

#include <QJsonArray>
#include <QJsonDocument>
#include <array>

#include "core/words/import_words.h"
#include "core/words/words.h"

namespace combwright {
namespace {

QJsonObject rowJson(const PlannedRow& row) {
    QJsonObject json{{QStringLiteral("line"), static_cast<qint64>(row.line)},
                     {QStringLiteral("verdict"), fromUtf8(key(row.verdict))}};
    QJsonArray asks;
    for (const std::string& ask : row.asks) asks.append(fromUtf8(ask));
    if (!asks.isEmpty()) json.insert(QStringLiteral("asks"), asks);
    if (row.why) {
        json.insert(QStringLiteral("code"), fromUtf8(key(row.why->code)));
        json.insert(QStringLiteral("field"), fromUtf8(row.why->field));
        json.insert(QStringLiteral("says"), sentence(*row.why));
    }
    QJsonArray odd;
    for (const std::string& each : row.odd) odd.append(fromUtf8(each));
    if (!odd.isEmpty()) json.insert(QStringLiteral("odd"), odd);
    if (row.verdict == RowVerdict::WillBeAdded && !row.play.empty())
        json.insert(QStringLiteral("does"),
                    QJsonDocument::fromJson(QByteArray::fromStdString(row.play)).object());
    return json;
}

QJsonObject questionJson(const ImportQuestion& question) {
    QJsonArray choices;
    for (const std::string& choice : question.choices) choices.append(fromUtf8(choice));
    QJsonArray lines;
    for (const std::size_t line : question.lines) lines.append(static_cast<qint64>(line));
    QJsonObject json{
        {QStringLiteral("ask"), fromUtf8(question.ask)},
        {QStringLiteral("says"),
         importQuestionText(question.ask, fromUtf8(question.field), fromUtf8(question.example))},
        {QStringLiteral("lines"), lines}};
    if (!question.field.empty()) json.insert(QStringLiteral("field"), fromUtf8(question.field));
    if (!question.example.empty())
        json.insert(QStringLiteral("example"), fromUtf8(question.example));
    if (!choices.isEmpty()) json.insert(QStringLiteral("choices"), choices);
    return json;
}

}  // namespace

QJsonObject toJson(const ImportPlan& plan) {
    QJsonArray columns;
    for (const PlannedColumn& column : plan.columns)
        columns.append(QJsonObject{
            {QStringLiteral("heading"), fromUtf8(column.heading)},
            {QStringLiteral("field"), column.field.empty() ? QJsonValue(QJsonValue::Null)
                                                           : QJsonValue(fromUtf8(column.field))}});
    QJsonArray rows;
    for (const PlannedRow& row : plan.rows) rows.append(rowJson(row));
    QJsonArray questions;
    for (const ImportQuestion& each : plan.questions) questions.append(questionJson(each));
    QJsonArray first;
    for (const std::string& line : plan.first)
        first.append(QJsonDocument::fromJson(QByteArray::fromStdString(line)).object());
    QJsonObject counts;
    for (const RowVerdict verdict :
         {RowVerdict::WillBeAdded, RowVerdict::AlreadyThere, RowVerdict::LeftOut,
          RowVerdict::Refused, RowVerdict::Asked, RowVerdict::ChangedSince})
        counts.insert(fromUtf8(key(verdict)), static_cast<qint64>(plan.count(verdict)));
    return {{QStringLiteral("kind"), fromUtf8(word(plan.kind))},
            {QStringLiteral("encoding"), fromUtf8(plan.encoding)},
            {QStringLiteral("delimiter"), QString(QLatin1Char(plan.parter))},
            {QStringLiteral("header"), plan.header},
            {QStringLiteral("columns"), columns},
            {QStringLiteral("counts"), counts},
            {QStringLiteral("first"), first},
            {QStringLiteral("rows"), rows},
            {QStringLiteral("questions"), questions},
            {QStringLiteral("map"), toJson(plan.map)}};
}

}  // namespace combwright
