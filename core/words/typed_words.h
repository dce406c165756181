// Lines are read and kept in English: marks, and a few words of the trade. A person who is spoken
// to in another language may type those words in that one; here they become the English ones,
// before a line is read.
#pragma once

#include <QString>

namespace combwright {

/// The line with the words and phrases of the language spoken in English: "9 ausgebaut" is "9
/// drawn". For the cells of the yard sheet, lines of boxes and the bench; faults and verdicts as
/// they are told under it too. What is English already stays, and so does what stands in quotes,
/// which is a note.
QString typedInEnglish(const QString& line);

/// The same of a line of the yard sheet: "nicht geöffnet" is "not opened", "Stifte" is "e". Only
/// the words the sheet reads become English; any other is of the note and stays.
QString sheetInEnglish(const QString& line);

/// The way back, for telling which words may be typed: "drawn, fat" is "ausgebaut, dick". Names of
/// the catalogue's kinds too, parted by ";" where they hold commas.
QString typedAsSpoken(const QString& words);

/// "Mo, Mi" and "Montag Mi." as "mon, wed"; English weekdays stay.
QString weekdaysInEnglish(const QString& line);
/// "mon, wed" as "Mo, Mi".
QString weekdaysAsSpoken(const QString& english);

/// "hell, dunkel" as "light, dark".
QString shadesInEnglish(const QString& line);
/// "light, mid" as "hell, mittel".
QString shadesAsSpoken(const QString& english);

}  // namespace combwright
