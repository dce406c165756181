// What is due, in words: what to do, and why with its days and figures, one sentence a rule.
// Window, print, command line and calendar say the same; nobody is nagged, urged or counted out.
#pragma once

#include "core/places/due/due_list.h"
#include "core/places/pages/page.h"

namespace combwright {

/// "late", "today", "this week", "later".
QString groupText(DueGroup group);
/// "Yard", "Pull", "Honey room", "Storeroom".
QString whereText(DueWhere where);
/// The rule as the keeper quiets it: "mite sample".
QString ruleText(DueRule rule);

/// What is to be done at a hive, short: "M03, M07 back", "give 5 kg syrup", "look for eggs".
QString dueDoText(const DueItem& item);
/// Why: "Wet since Fri 6 Aug; bees of their own hive clean them." Ends with a full stop.
QString dueWhyText(const DueItem& item);

/// "Hill: 7 wet boxes back, 1 to look at, H4 leave shut to 30 Jun", "Extract 5 boxes of Creek",
/// "H3: decide on treatment".
QString tripText(const DueTrip& trip);
/// The same without the yard before the colon.
QString tripWorkText(const DueTrip& trip);
/// Below it: of a trip "30 min; take 7 wet boxes, 1 feeder", of one thing why.
QString tripNoteText(const DueTrip& trip);
/// At its right: "24 days", "by Mon 9 Aug", "Mon 9 Aug"; empty for today.
QString tripWhenText(const DueTrip& trip, Day today);

/// "7 wet boxes", "5 kg syrup".
QString kitText(const DueKit& kit);
/// "30 min", "1 h 10 min".
QString minutesText(double minutes);
/// "mite sample at H3: sold in May (until Sat 14 Aug)".
QString quietedText(const Quieted& quieted);

}  // namespace combwright
