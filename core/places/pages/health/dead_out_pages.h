// The card one takes to a dead hive, to be ticked with gloves on, and filled where it was answered;
// and the list of contacts for the bee inspector.
#pragma once

#include "core/places/health/contact_trace.h"
#include "core/places/health/dead_outs.h"
#include "core/places/pages/page.h"

namespace combwright {

/// The card of one dead colony. What was answered is ticked.
Page deadOutPage(const Read& file, const DeadOutCard& card, Day on);
/// What moved in or out of a hive since it was last found sound.
Page contactTracePage(const Read& file, const ContactTrace& trace);

/// "2 boxes, 20 frames (19 drawn, 1 bare), 1 floor, 1 lid": what is held for it.
QString heldText(const DeadOutCard& card);
/// "held: dead-out unexplained, since 10 Feb", or since when and by whom it is free.
QString holdStateText(const DeadOutCard& card);
/// "looks starved; damp, often after another cause".
QString looksLikeList(const DeadOutCard& card);
/// Since when disease is suspected, since when it was sound, and from what day on things count: a
/// line each.
QString contactTraceText(const ContactTrace& trace);
/// What is not written down and was perhaps shared.
QString contactsNotWritten();
/// What a contact is: "box M1", "a frame, into box D2", "the colony of H2, by box M1".
QString contactText(const Read& file, const Contact& contact);

}  // namespace combwright
