// Pieces that what is due and why are both said with, and what tells the kinds of one rule apart.
#pragma once

#include <QString>
#include <cstdint>

#include "core/places/due/due_list.h"

namespace combwright {

/// In the context of what is due.
QString dueTr(const char* text);
/// "1 box" or "5 boxes"; `several` has its number at %1.
QString dueCounted(std::int64_t many, const char* one, const char* several);
/// Of how many it speaks: one where it does not say.
std::int64_t dueCountOf(const DueItem& item);
/// "1 box", "5 boxes".
QString dueBoxes(const DueItem& item);
/// "1 frame", "9 frames".
QString dueFrames(const DueItem& item);
/// A day of another year than the one asked in carries its year.
QString dueDay(const DueItem& item, Day day);
QString dueSince(const DueItem& item);

/// Honey in the room: what to do with it, and why.
QString dueHoneyDo(const DueItem& item);
QString dueHoneyWhy(const DueItem& item);
/// Wax, candles and comb jars: what to do, and why.
QString dueWaxDo(const DueItem& item);
QString dueWaxWhy(const DueItem& item);
/// A wet box that was given back and is clean by now.
bool wetsComeOff(const DueItem& item);
/// A super went on while a medicine kept it off.
bool superTooEarly(const DueItem& item);
/// A clearer board or a round that goes in, not out.
bool dueGoesIn(const DueItem& item);

}  // namespace combwright
