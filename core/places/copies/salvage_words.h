// What a salvage saved, and what it did not, said to the keeper in the window and on the command
// line alike.
#pragma once

#include <QStringList>

#include "core/storage/salvage/salvage.h"

namespace combwright {

/// The outcome in one sentence, for a line of the window.
QString salvageSentence(const Salvaged& done, const QString& to);
/// All of it, a sentence each: records, history, pictures, what was left out.
QStringList salvageReport(const Salvaged& done);

}  // namespace combwright
