// What one would ask back after a line was kept: a visit of next month, forty-five kilograms in a
// medium super, more mites than bees. Nothing here is refused, because life does odd things; but
// nothing odd is kept without a word. Window and command line ask the same questions.
#pragma once

#include <QString>
#include <string_view>
#include <vector>

#include "core/storage/season.h"

namespace combwright {

enum class Asked {
    NotComeYet,         ///< a visit of a day that has not come
    MoreFramesThanFit,  ///< brood and stores together, or a look, against the frames of the boxes
    BroodJumped,        ///< more than five frames within a fortnight
    MoreMitesThanBees,  ///<
    SampleUnusual,      ///< a wash of fewer than 50 or more than 2,000 bees
    MuchFed,            ///< more than 25 kg at once
    BoxTooHeavy,        ///< heavier than full of honey; in pounds it would fit
    HardlyEmptied,      ///< wet, yet over half of what it weighed full
    BucketAgain,        ///< a weighed bucket of this run filled anew with another mass
    BucketTooHeavy,     ///< more than the keeper's bucket holds
    WaterUnusual,       ///< honey is known from 13 to 21 %
    MarksDisagree,      ///< not opened, yet brood or eggs were seen
    NobodyLives,        ///< brood or eggs, or a box put on, where no colony lives
    MoreOutThanIn,      ///< more in buckets and cappings than left the boxes
    BoxFromNowhere,     ///< a line put on a box where none was left in the storeroom
    SetOutInOpen,       ///< comb or cappings set out for all bees of the place
    HeldCombLivedIn,    ///< bees moved in where combs are held back
    TraceContacts,      ///< disease is suspected: what moved in or out is not held yet
    NameAlike,          ///< a yard or hive of the same name but for capitals
    FramesDiffer,       ///< the bench found more or fewer frames than the box should hold
    ReviewOvertaken,    ///< a look at the bench older than what the box went through since
    ReviewedTwice,      ///< a second look on the same day replaced the first
    FoundAgain,         ///< more frames than known, where some of the box were melted or burnt
    MuchScraped,        ///< over 1 kg of scrapings or 500 g of propolis off one box
    TwoDepths,          ///< frames of another kind than the box is made for
    FoundationUsedUp,   ///< the last sheet counted went into a frame
    NotColdEnough,      ///< a round came out before the cold had killed
    FreezerOverfull,    ///< more frames than fit
    WetIntoFreezer,     ///< wet comb moulds
    WetsToNucleus,      ///< too few bees to clean and guard a box
    DeadOutStillHeld,   ///< a dead-out was answered, and its combs stay held
    StayHeld,           ///< a look would release frames held by their verdict, without a reason
    LeftOutHeld,        ///< not put into the freezer because they are held
    LotsRunTogether,    ///< a lot spun behind another without the drum run empty between
    WetsElsewhere,      ///< given back to another yard, or nobody knows where the box came from
    NoFrames,           ///< a box of a run without a frame
    OtherYard,          ///< a box of another yard in a yard's lot
    SuspectedHoney,     ///< honey of a hive under suspicion of disease is in a run
    HiveTooHeavy,       ///< heavier than with every comb full; in pounds it would fit
    TareWrong,          ///< a hive lighter than it should be empty
    SidesDiffer,        ///< one side of a hive over twice the other
    WeighedAgain,       ///< a second weighing of a hive on the same day
    FedUnderSupers,     ///< sugar given while supers are on
    FedNobody,          ///< a hive fed in which no colony lives
    FeedUsedUp,         ///< more given than bought or counted
    MedicineExpired,    ///< given, or bought, after its last day
    BeforeBought,       ///< a medicine given before it was bought
    AlreadyTreated,     ///< the same medicine is in the hive still
    MoreMedicineThanThere,  ///< more given and disposed of than bought
    SupersTreated,          ///< supers were on while a medicine was in that does not allow it
    SuperTooEarly,          ///< a super put on while a medicine is in, or not long enough out
    SignsToReport,          ///< signs of brood disease ticked under another name
    TreatedHoney,           ///< a box treated while on is in a run
    OutTooEarly,            ///< a medicine taken out before the days its label says
    LeftUntreated,          ///< all of a yard treated, but for hives in which nobody lives
    ClosedSince,            ///< a box put on late stood there until the hive was closed
    NotCorrected,           ///< water read of warm honey and not corrected
    ReadsTooDry,            ///< of cold honey: there is more water in it than it says
    WarmthNotSaid,          ///< water read, and nobody said how warm the sample was
    CalibratedLongAgo,      ///< water read with an instrument checked over a year ago
    WarmedMuch,             ///< warming that is noticeable or harsh
    HoneyMissing,           ///< less, or more, left in a bucket or lot than was written down
    BlendWetter,            ///< a blend with honey in it that reads too dry
    LineReplaced,           ///< a second line of a hive and day leaves out what the first said
    ColourOfAnotherYear,    ///< a queen marked in another colour than that of her year
    SeenAfterLost,          ///< a queen was seen where the last one is written down as gone
    TwoQueens,              ///< a queen of her own moved in where another is written down
    EggsWithoutQueen,       ///< eggs long after the queen went, and no other written down
    QueenOverQueen,         ///< a queen put in where one was seen, or laying, within days
    FoundDead,              ///< and its colony still lives by what is written down
    BeesNotSaid,            ///< mites in nobody knows how many bees
    MuchWaxInCandle,        ///< more wax taken for candles than their mould holds
    LittleWaxInCandle,      ///< or less
    YieldUnusual,           ///< a batch gave far less or more wax than such wax does
    WaxTooHot,              ///< wax so hot that it discolours
    HeldWax,                ///< wax of what is held back since is melted, cast or given away
    CappingsInCold,         ///< cappings given to bees that do not fly
    ManyCombs,              ///< more combs cut out than the boxes hold
    MuchCappings,           ///< more cappings than the honey of their run lets expect
    MouldUnknown,           ///< neither volume nor size of a mould
    MouldSizesDiffer,       ///< the volume said is far from what the size gives
    OtherCandle,            ///< another candle poured than the mould makes
    MuchWick,               ///< more wick than a candle takes, or than there was
    WickNotBought,          ///< wick of a size nobody bought
    NoStarter,              ///< comb jars put on without a starter
    TreatedComb,            ///< comb that hung beside a medicine went to people
};

/// The question's name in JSON: "not_come_yet".
std::string_view key(Asked asked);

struct Question {
    Asked asked;
    QString says;  ///< what looks odd, and what it might be
    bool operator==(const Question&) const = default;
};

/// The questions the rows of a step raise, in the order of the rows; of a deed done to many hives
/// at once in walking order. The limits are common practice without a source but for the water: 13
/// to 21 % is the range of the published density table.
std::vector<Question> questionsAfter(const Read& file, const Change& change, Day today);

}  // namespace combwright
