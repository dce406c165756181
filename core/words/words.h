// The one place with shown words. Labels stand under the base name of the field or figure they
// label, so that a form, a table head, a sentence of history and a page use the same word. All of
// them go through the translator with the context "words".
#pragma once

#include <QDate>
#include <QString>
#include <string>
#include <string_view>
#include <vector>

#include "core/storage/sqlite/storage_error.h"
#include "core/support/refusal.h"
#include "core/units/day.h"
#include "core/units/known.h"

namespace combwright {

/// The label of a key: "brood" is "brood". A key without a word comes back with blanks for
/// underscores; hasWord tells, and a test sees to it that every field has one.
QString word(std::string_view key);
bool hasWord(std::string_view key);

/// What a refusal says: what was wrong and what to do.
QString sentence(const Refusal& refusal);
/// What happened to the file, what was kept and what to do.
QString sentence(const StorageError& error);
/// Why nothing will be changed in a file, and what to do for changing it all the same.
QString sentence(ReadOnlyWhy why);

/// "Wed 9 Jun 2027", in the person's language.
/// A day in the order of the language, "ddd d MMM" in English and "ddd d. MMM" in German. Words cut
/// short have no stop behind them: a sentence may end there.
QString dayShown(const QDate& day, const char* pattern);
QString dayText(Day day);
/// "Wed 9 Jun".
QString shortDayText(Day day);
/// The same; with its year where that is another than the one of `asked`: "Tue 1 Sep 2026".
QString shortDayText(Day day, Day asked);
/// "9 Jun".
QString dayAndMonth(Day day);

/// "weighed", "by eye" … and the letter's foot: "w weighed   c counted …".
QString howWord(How how);

QString fromUtf8(std::string_view text);
/// The word of a choice of a record ("to scrape"), in the person's language.
QString choiceText(std::string_view word);
/// A sentence of a table of the trade (resources/trade), in the person's language.
QString tableText(const std::string& text);
/// What belongs on every label and paper that goes with honey.
QString infantCaution();
/// "B4, B6": names in their order, with commas between.
QString listed(const std::vector<std::string>& names);

}  // namespace combwright
