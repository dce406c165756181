#include "core/words/held_refusals.h"

#include <QCoreApplication>

namespace combwright {
namespace {

/// Of frames that are held, or a box for the frames in it.
const char* heldText(const Refusal& refusal) {
    const auto has = [&](const char* name) { return !refusal.value(name).empty(); };
    if (has("disease"))
        return QT_TRANSLATE_NOOP(
            "refusals",
            "{name} is held back ({reason}). Suspected disease is never overruled: call your bee "
            "inspector and move nothing until the hold is released.");
    if (has("verdict"))
        return QT_TRANSLATE_NOOP(
            "refusals",
            "{name}: what waits there is held back ({reason}). Judge its frames anew first, with a "
            "note that gives the reason; it stays written on them. Suspected disease is never "
            "overruled.");
    if (has("frames"))
        return QT_TRANSLATE_NOOP(
            "refusals",
            "{name}: frames in it are held back ({reason}; {frames} of them). Take them out, or "
            "release them with a note that gives the reason. Moving the box as it is needs a "
            "reason too; it stays written on it.");
    return QT_TRANSLATE_NOOP(
        "refusals",
        "{name} is held back ({reason}). A note with the reason is needed; it stays written on the "
        "frame. Suspected disease is never overruled.");
}

/// Of honey in a bucket, lot or jar.
const char* heldHoneyText(const Refusal& refusal) {
    const std::string_view why = refusal.value("why");
    if (why == "suspected disease" || why == "contact" || why == "dead-out unexplained")
        return QT_TRANSLATE_NOOP(
            "refusals",
            "{honey} is held since {since} ({why}). Ask your bee inspector before any of it is "
            "mixed, filled or given away. Where the inspector has said that it may go, give that "
            "as "
            "the reason; it stays written down.");
    return QT_TRANSLATE_NOOP(
        "refusals",
        "{honey} is held since {since} ({why}). Release it first, or give a reason; it stays "
        "written down with what is made of it.");
}

/// Of wax, what it is of and what is held.
const char* heldWaxText(const Refusal& refusal) {
    if (refusal.value("why") == "dead-out unexplained")
        return QT_TRANSLATE_NOOP(
            "refusals",
            "{wax}: {name} is held since {since}: its colony died and nobody has said yet of what. "
            "Disease stays in wax. Answer the dead-out's questions first, and keep this apart "
            "until then; nothing was kept.");
    return QT_TRANSLATE_NOOP(
        "refusals",
        "{wax}: {name} is held since {since} ({why}), and this is of it. Disease stays in wax and "
        "in what honey clings to it: keep it apart, marked and under a tight lid, give none of it "
        "to bees, and ask your bee inspector what becomes of it. Nothing was kept.");
}

/// Of candles in a holder that goes with them.
const char* untestedHolderText(const Refusal& refusal) {
    const auto has = [&](const char* name) { return !refusal.value(name).empty(); };
    if (has("went_badly"))
        return QT_TRANSLATE_NOOP(
            "refusals",
            "{candle}: the last test burn in the holder “{mould}” did not go well. A holder that "
            "stays with the candle may catch fire, crack or grow too hot. Change the wick or the "
            "holder, burn one again on stone and watched, and write it down; nothing was kept.");
    if (has("other_wick"))
        return QT_TRANSLATE_NOOP(
            "refusals",
            "{candle}: in the holder “{mould}” they have wick {wick}, and what burnt well there "
            "had wick {other_wick}. Another wick makes another flame. Burn one with {wick}, on "
            "stone and watched, and write it down; nothing was kept.");
    return QT_TRANSLATE_NOOP(
        "refusals",
        "{candle}: nobody has burnt one in the holder “{mould}” to test. A holder that stays with "
        "the candle may catch fire, crack or grow too hot. Burn one first, on stone and watched, "
        "and write it down; nothing was kept.");
}

}  // namespace

const char* heldBackText(const Refusal& refusal) {
    const auto has = [&](const char* name) { return !refusal.value(name).empty(); };
    if (has("reason")) return heldText(refusal);
    if (has("left"))
        return QT_TRANSLATE_NOOP(
            "refusals",
            "Only boxes that are held back are left in the storeroom ({left}; {name} is "
            "held since {since}: {why}). None of them is taken unasked. Put it on by its "
            "mark if it is meant (in Yard: B), or leave it out of the line. Nothing of the "
            "line was kept.");
    if (has("honey")) return heldHoneyText(refusal);
    if (has("wax")) return heldWaxText(refusal);
    if (has("candle")) return untestedHolderText(refusal);
    return refusal.value("why") == "dead-out unexplained"
               ? QT_TRANSLATE_NOOP("refusals",
                                   "%1: {name} is held since {since}: its colony died and "
                                   "nobody has said "
                                   "yet of what. Answer the dead-out's questions first, or "
                                   "give a reason; "
                                   "it stays written on the box.")
               : QT_TRANSLATE_NOOP(
                     "refusals",
                     "%1: {name} is held since {since} ({why}). Call your bee inspector "
                     "and "
                     "move nothing. Where the inspector has said that it may go, give that "
                     "as the reason.");
}

}  // namespace combwright
