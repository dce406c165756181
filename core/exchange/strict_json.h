// JSON as its standard has it (RFC 8259), for what comes from outside. The reader of Qt takes more
// than that: of a key given twice the last, "1." and "01" as numbers, any bytes as text. What a
// script meant by those nobody knows, so they are refused before they are read.
#pragma once

#include <QJsonObject>
#include <string_view>

#include "core/support/result.h"

namespace combwright {

/// The one object a text is. Refused with Duplicate under the path of the key ("frames[2].start_g")
/// where one stands twice in an object, and with WrongType under no field where the text is not
/// UTF-8 or not exactly one JSON object.
Result<QJsonObject> strictObject(std::string_view text);

}  // namespace combwright
