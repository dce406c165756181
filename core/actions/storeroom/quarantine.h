// What may be done with what is held back. One rule for every action that moves a box or mixes what
// is in it, so that no way leads round the quarantine.
#pragma once

#include <string>

#include "core/actions/boxes/box_steps.h"
#include "core/storage/queries/holds.h"

namespace combwright {

/// The refusal that says so: HeldBack with the name, why and since when.
Refusal heldBack(std::string field, std::string name, const Hold& hold);

/// Whether a box may be moved there. What is quarantined stays where it is; with the inspector's
/// word given as reason it may be taken apart, taken away or burnt, never onto another hive, into
/// the freezer, lent or to the extractor. What is a dead-out nobody explained, or holds frames held
/// by their own verdict, goes onto no other hive, to nobody else and is not thrown away, and
/// nothing new goes onto a hive that is quarantined, unless the keeper gives a reason. Refused with
/// HeldBack.
Result<void> demandMayMove(const Read& file, const Box& box, const BoxSpot& spot, Day on);

/// Before anything of a hive, or bees of it, goes elsewhere, or anything new goes onto it: refused
/// with HeldBack under `field` where it is quarantined.
Result<void> demandHiveFree(const Read& file, Id<Hive> hive, Day on, const std::string& field);
/// Before frames are hung into a box: refused with HeldBack under `field` where it is quarantined,
/// or stands on a hive that is, and no reason is given.
Result<void> demandTakesIn(const Read& file, const Box& box, Day on, const std::string& reason,
                           const std::string& field);
/// Before bees are put on a hive: refused with HeldBack under `field` where it is quarantined, or a
/// box that stands there is held apart, and no reason is given.
Result<void> demandLivable(const Read& file, Id<Hive> hive, Day on, const std::string& reason,
                           const std::string& field);
/// Refused with HeldBack under `field` where frames of the box are held by their own verdict.
Result<void> demandNoFrameHeld(const Read& file, const Box& box, const std::string& field);

/// Foulbrood was suspected on a frame of the box: the whole box is quarantined from that day, and
/// the colony it stood on; each where it is not yet.
void quarantineSeen(Write& file, Id<Box> box, Day on);
/// Likewise where what was counted of the box has such a frame.
void quarantineCounted(Write& file, Id<Box> box, const BoxContents& seen, Day on);

/// Before comb, wax or honey of a box is put together with that of others: refused with HeldBack
/// under `field` where the box is quarantined.
Result<void> demandNotQuarantined(const Read& file, const Box& box, Day on,
                                  const std::string& field);
/// Likewise where it is held apart at all: a dead-out nobody explained counts too.
Result<void> demandNotApart(const Read& file, const Box& box, Day on, const std::string& field);

/// Writes on the box that it is moved there although it, frames in it or the hive is held, and on
/// what grounds; nothing where none is.
void noteOverruled(Write& file, Id<Box> box, const BoxSpot& spot, Day on);
/// Likewise on every box of a hive that is held, where bees are put onto it all the same.
void noteLivedIn(Write& file, Id<Hive> hive, const std::string& reason, Day on);
/// "2027-06-21, held (suspected disease): told so", behind what is noted already.
void addOverruled(std::string& note, Day on, std::string_view why, const std::string& reason);

}  // namespace combwright
