// Lines are read and kept in English: marks, and a few words of the trade. A person who is spoken
// to in another language may type those words in that one; here they become the English ones,
// before a line is read.
#pragma once

#include <QString>

namespace combwright {

/// The line with the words and phrases of the language spoken in English: "nicht geöffnet" is "not
/// opened". What is English already stays, and so does what stands in quotes, which is a note.
QString typedInEnglish(const QString& line);

}  // namespace combwright
