#include "core/words/import_words.h"

#include <QCoreApplication>

#include "core/words/words.h"

namespace combwright {
namespace {

QString sayImport(const char* text) { return QCoreApplication::translate("import", text); }

}  // namespace

QString importKindText(std::string_view kind) {
    if (kind == "hives") return sayImport("Hives");
    if (kind == "boxes") return sayImport("Boxes");
    if (kind == "weights") return sayImport("Weights of hives");
    if (kind == "visits") return sayImport("Visits, a hive a row");
    if (kind == "crop-notes") return sayImport("Crops of earlier years");
    if (kind == "sales") return sayImport("Sales");
    return fromUtf8(kind);
}

QString verdictText(std::string_view verdict) {
    if (verdict == "will_be_added") return sayImport("will be added");
    if (verdict == "already_there") return sayImport("already there");
    if (verdict == "changed_since") return sayImport("was changed here since");
    if (verdict == "left_out") return sayImport("another of that day counts");
    if (verdict == "refused") return sayImport("refused");
    if (verdict == "asked") return sayImport("asked");
    return fromUtf8(verdict);
}

QString importQuestionText(std::string_view ask, const QString& field, const QString& example) {
    if (ask == "columns")
        return sayImport("Which column holds %1?").arg(importFieldText(field.toStdString()));
    if (ask == "decimal")
        return sayImport("\"%1\" can be read in two ways. Which sign parts the decimals?")
            .arg(example);
    if (ask == "dates")
        return sayImport("\"%1\" can be two days. Does the day stand first, or the month?")
            .arg(example);
    if (ask == "unit") return sayImport("\"%1\": which unit are the weights in?").arg(example);
    if (ask == "of_day")
        return sayImport("A hive was weighed several times on one day (%1). Which weighing counts?")
            .arg(example);
    if (ask == "origin") return sayImport("Where did the bees come from, or are the hives empty?");
    if (ask == "yard") return sayImport("Which yard do the hives stand in?");
    if (ask == "day") return sayImport("From which day on? The table names none.");
    if (ask == "add_yards")
        return sayImport("There is no yard \"%1\" yet. Are yards that are not there to be added?")
            .arg(example);
    return fromUtf8(ask);
}

QString importAnswerText(std::string_view ask, const QString& answer) {
    if (ask == "add_yards")
        return answer == QLatin1String("true") ? sayImport("add them")
                                               : sayImport("leave them out");
    if (ask == "decimal")
        return answer == QLatin1String("comma") ? sayImport("the comma: 1,240 is less than two")
                                                : sayImport("the point: 1,240 is over a thousand");
    if (ask == "dates")
        return answer == QLatin1String("day first") ? sayImport("the day stands first")
                                                    : sayImport("the month stands first");
    if (ask == "of_day")
        return answer == QLatin1String("first") ? sayImport("the first") : sayImport("the last");
    if (ask == "origin")
        return answer == QLatin1String("empty") ? sayImport("no bees: the hives are empty")
                                                : word(answer.toStdString());
    return answer;
}

QString importFieldText(std::string_view field) {
    if (field == "hive") return sayImport("hive");
    if (field == "weight") return sayImport("weight of the whole hive");
    if (field == "crop") return sayImport("crop");
    if (field == "line") return sayImport("line in shorthand");
    if (field == "fed") return sayImport("sugar fed");
    if (hasWord(field)) return word(field);
    const std::size_t last = field.rfind('_');
    if (last != std::string_view::npos && hasWord(field.substr(0, last)))
        return word(field.substr(0, last));
    return fromUtf8(field);
}

}  // namespace combwright
