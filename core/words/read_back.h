// What the program understood, said back in words before it is kept: "Eggs. 7 brood, 3 stores. 1
// super on." Words it did not understand come back in quotation marks, as the note they are.
#pragma once

#include <QString>

#include "core/model/yard/sheet_line.h"

namespace combwright {

/// The sentence beside a line of the yard sheet; empty when nothing was typed.
QString readBack(const SheetLine& line);

}  // namespace combwright
