// The small letter of how a figure is known, raised behind its unit in running text, as it stands
// behind every figure that is drawn: "12.4 kg" and a raised w.
#pragma once

#include <QString>

namespace combwright {

/// Plain words as rich text: escaped, a letter behind kilograms or pounds raised, line feeds kept.
QString withRaisedLetters(const QString& plain);

}  // namespace combwright
