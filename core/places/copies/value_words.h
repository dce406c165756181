// A recorded value in the trade's words, whatever its kind: what history, the difference between
// two days and the question "ours or theirs" show. The figures are exact, as they would be typed.
#pragma once

#include <QString>
#include <string>
#include <string_view>

#include "core/model/records.h"
#include "core/storage/rows.h"

namespace combwright {

/// "21.4 kg", "Wed 9 Jun 2027", "swarm", "yes"; "not known" for nothing. A reference is what the
/// row of that number is called in the file.
QString valueInWords(const Read& file, const FieldInfo& field, const Value& value);

/// A choice of a record as it is meant in that field: "light" of a shade is "hell" in German, of a
/// heft "leicht".
QString choiceInWords(std::string_view field, const std::string& choice);

/// What a field is called: "net", "net, at most", "net, how known".
QString fieldInWords(const FieldInfo& field);

/// What a record is called: "ML3"; where it has no name of its own by what it is of and its day:
/// "Hill, Wed 9 Jun 2027". Its row is given, for it may be gone from the file.
QString recordInWords(const Read& file, const RecordType& type, const Row& row);

/// The values that say something, "place in walking order 3, since …", at most so many.
QString rowInWords(const Read& file, const RecordType& type, const Row& row, std::size_t most);

}  // namespace combwright
