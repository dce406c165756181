// Described values as JSON and back: the unit is in the key (brood_frames, net_g), numbers are in
// that unit, unknown is null or absent and never 0. What is read is checked; nothing is rounded in
// secret.
#pragma once

#include <QJsonObject>
#include <QJsonValue>
#include <functional>
#include <string>

#include "core/model/changes.h"
#include "core/model/describe.h"
#include "core/support/result.h"

namespace combwright {

/// A value of the file as JSON. References come as "#12".
QJsonValue toJson(const FieldInfo& field, const Value& value);

/// A JSON value as the file holds it. Refused with WrongType, NotAChoice, NotADay, Negative or
/// OutOfRange under the field's key. References must have been turned into numbers ("#12") before.
Result<Value> fromJson(const FieldInfo& field, const QJsonValue& json);

/// How a reading is known when nobody says: masses weighed, shares by eye, the rest counted.
How usualHow(Kind kind);

/// Turns what a reference is called into the number of a row.
using Resolve = std::function<Result<std::int64_t>(const FieldInfo& field, const QJsonValue& name)>;

/// Reads the values of all fields out of an object. A key that is no field's is refused unless it
/// is one of `others`; a field that may not be absent must be there.
Result<Row> readRow(const Fields& fields, const QJsonObject& object, const QStringList& others,
                    const Resolve& resolve);

/// The row with the changes in it, each value checked as in readRow; references as "#12". A reading
/// stays one thing: a new figure takes its old range with it, nothing in place of the figure makes
/// all of it unknown, and how it is known stays unless it is said. Refused under the field's key
/// with UnknownKey for a key that is no field's, and as fromJson.
Result<Row> changedRow(const Fields& fields, const Row& present, const Changes& changes);

/// What changedRow needs to make the one row of the other; empty text where they are equal.
Changes changesBetween(const Fields& fields, const Row& before, const Row& after);

/// The object's text on one line, keys in the order given; `pairs` holds key and value.
std::string jsonLine(const std::vector<std::pair<std::string, QJsonValue>>& pairs);

}  // namespace combwright
