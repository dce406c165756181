// The steps actions on colonies and queens are made of. They keep three promises: two colonies are
// never in one hive, a colony has one queen at a time as far as written down, and what ended with a
// colony ends with it everywhere.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/model/frames/box.h"
#include "core/model/yard/moves.h"
#include "core/model/yard/queen.h"
#include "core/storage/rows.h"
#include "core/support/result.h"

namespace combwright {

/// The hive, open on that day. Refused under `field` with NotFound or Closed, under "on" with
/// BeforeItBegan.
Result<Hive> openStand(const Read& file, Id<Hive> hive, Day on, const std::string& field);

/// A colony in its hive.
struct LivingColony {
    Hive hive;
    Colony colony;
};
/// The colony that lives in a hive, and did on that day. Refused as openStand, with NotFound where
/// none lives there, with BeforeItBegan under "on" where it came later.
Result<LivingColony> livingColony(const Read& file, Id<Hive> hive, Day on,
                                  const std::string& field);
/// Before another comes to live there: refused with Taken where one lives, with BeforeItBegan under
/// "on" where the one before was still there on that day.
Result<void> demandEmptyHive(const Read& file, const Hive& hive, Day on, const std::string& field);
/// Refused with Contradiction under `field` where two colonies were in one hive at once.
Result<void> demandColoniesApart(const Read& file, Id<Hive> hive, const std::string& field);

/// A stand that is there and empty, or a new one to be made.
struct StandMeant {
    std::optional<Id<Hive>> hive;
    std::optional<Id<Yard>> yard;
    std::string mark;
    std::string boxes;  ///< of a new stand: "nuc N7"
};
/// The empty stand meant, made where it is new. Refused with Missing "mark" where neither is said,
/// with Contradiction where both are, and as openStand, demandEmptyHive and AddHive.
Result<Id<Hive>> emptyStand(Write& file, const StandMeant& meant, Day on, const std::string& field);

/// Boxes named by their marks go from one hive to the top of another, the first named lowest; "all"
/// are all of them. Of the boxes that stand there one may also be named by its kind ("deep", the
/// topmost of several), or by where it stands: "bottom", "second", "third", "fourth" from the
/// floor, "top". Nothing where none is named. Refused under "boxes" with NotFound for one that
/// does not stand there, and as moveBoxTo.
Result<void> carryBoxes(Write& file, Id<Hive> from, Id<Hive> to, const std::string& boxes, Day on,
                        const std::string& reason);
/// The combs of the boxes that stay behind on one hive hang in the lowest box of another from now
/// on, each at the place where it hung as far as that is written down and free. Refused with
/// Missing under "combs" where no box stands there, TooMany where they do not fit, and as
/// MoveFrames.
Result<void> carryCombs(Write& file, Id<Hive> from, Id<Hive> to, Day on, const std::string& reason);
/// Every box of a hive goes to one place, from the floor up. Refused with Missing or Contradiction
/// under "onto", and as moveBoxTo.
Result<void> clearAway(Write& file, Id<Hive> from, BoxPlace to, std::optional<Id<Hive>> onto,
                       const std::string& stack, const std::string& reason, Day on);

/// Before a colony ends: refused with BeforeItBegan under "on" where a queen came, or the colony
/// came to this stand, after that day.
Result<void> demandMayEnd(const Read& file, const Colony& colony, Day on);
/// Writes a colony's end down, with what hangs on it: its queen's stay, what was waited for, the
/// hold on its combs.
void endColony(Write& file, Colony colony, Day on, std::optional<Ending> ending,
               const std::string& note);
/// Where the end was amended: the queen's stay that ended with it goes along.
void followEndingOfQueen(Write& file, const Colony& before, const Colony& after);

/// Refused with BeforeItBegan under "on" where the queen who heads it came later.
Result<void> demandQueenBy(const Read& file, Id<Colony> colony, Day on);
/// The stay of the queen who heads a colony; where nobody wrote one down, a queen of whom nothing
/// is known, met that day.
QueenStay metQueen(Write& file, Id<Colony> colony, Day on);
/// Her stay ends; nothing where none is written down.
void endQueenStay(Write& file, Id<Colony> colony, Day on, QueenLeft left);
Id<QueenStay> beginQueenStay(Write& file, Id<Queen> queen, Id<Colony> colony, Day on);

/// What an action says of a wait for a young queen.
struct WaitMeant {
    std::optional<QueenStep> step;
    std::optional<Day> notSeenOn;
};
/// Refused with Contradiction "not_seen_on" where that is after the day, or nothing is waited for.
Result<void> demandWait(const WaitMeant& wait, Day on);
/// A wait begins; one that went on for the colony is over with it.
Id<QueenWait> beginWait(Write& file, Id<Hive> hive, Id<Colony> colony, Day on, QueenStep step,
                        std::optional<Day> notSeenOn, const std::string& note);
/// What was waited for in a colony is over.
void endWaits(Write& file, Id<Colony> colony, Day on);

/// "first; second", for a note that was there already.
void addNote(std::string& note, const std::string& more);

}  // namespace combwright
