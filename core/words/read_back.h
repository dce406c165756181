// What the program understood, said back in words before it is kept: "Eggs. 7 brood, 3 stores. 1
// super on." Words it did not understand come back in quotation marks, as the note they are.
#pragma once

#include <QString>
#include <string_view>

#include "core/model/yard/sheet_line.h"
#include "core/words/shorthand.h"

namespace combwright {

/// The sentence beside a line of the yard sheet; empty when nothing was typed.
QString readBack(const SheetLine& line);

/// What a line said of a whole yard means: what every hive not written yet gets, and the yard's
/// note.
QString readBackYard(const YardLine& line);

/// The same of a line for all as it is typed; of one that is not kept it says why.
QString readBackForAll(std::string_view all);

/// The same of a line as it is typed, under the line for all; of two marks that cannot both hold it
/// says so, for such a line is not kept.
QString readBackTyped(std::string_view all, std::string_view own);

}  // namespace combwright
