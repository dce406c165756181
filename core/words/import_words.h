// What an import says of its rows and asks of the person, on the command line and in the window.
#pragma once

#include <QString>
#include <string_view>

namespace combwright {

/// "hives", "weights of a scale" … for a kind's word.
QString importKindText(std::string_view kind);
/// "will be added" … for a verdict's key.
QString verdictText(std::string_view verdict);
/// The question whose answer the map holds under `ask`; `example` is a cell of the table, `field` a
/// field's key.
QString importQuestionText(std::string_view ask, const QString& field, const QString& example);
/// An answer as one reads it: "day first".
QString importAnswerText(std::string_view ask, const QString& answer);
/// The label of a field an import can fill.
QString importFieldText(std::string_view field);

}  // namespace combwright
