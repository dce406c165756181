// One line of `play` read against a file: what its words name becomes numbers, what it says the row
// of its action. Scripts, and rows that come out of a table, are read by this alone.
#pragma once

#include <QJsonObject>
#include <map>
#include <optional>
#include <string>

#include "core/actions/action.h"

namespace combwright {

/// What earlier lines made under a name of their own ("as"), for "@name".
using NamedHere = std::map<std::string, Made, std::less<>>;

struct ActionLine {
    Row row;
    StepNote note;
    std::optional<std::string> as;
    std::optional<Day> on;  ///< its day, where it has one
};

/// The action a line's "do" names. Refused with Missing where it names none, NoSuchAction.
Result<const ActionType*> actionOfLine(const QJsonObject& object);

/// Names mean what they meant on the line's day, or on `today` where it has none. Refused as
/// readRow and findNamed.
Result<ActionLine> readActionLine(const Read& file, const ActionType& type, QJsonObject object,
                                  const NamedHere& named, Day today);

}  // namespace combwright
