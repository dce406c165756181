// The names of the questions in JSON; keys are added, never changed.
#include <array>
#include <string_view>
#include <utility>

#include "core/places/questions/questions.h"

namespace combwright {
namespace {

constexpr std::array askedKeys{
    std::pair{Asked::NotComeYet, std::string_view("not_come_yet")},
    std::pair{Asked::MoreFramesThanFit, std::string_view("more_frames_than_fit")},
    std::pair{Asked::BroodJumped, std::string_view("brood_jumped")},
    std::pair{Asked::MoreMitesThanBees, std::string_view("more_mites_than_bees")},
    std::pair{Asked::SampleUnusual, std::string_view("sample_unusual")},
    std::pair{Asked::MuchFed, std::string_view("much_fed")},
    std::pair{Asked::BoxTooHeavy, std::string_view("box_too_heavy")},
    std::pair{Asked::HardlyEmptied, std::string_view("hardly_emptied")},
    std::pair{Asked::BucketAgain, std::string_view("bucket_again")},
    std::pair{Asked::BucketTooHeavy, std::string_view("bucket_too_heavy")},
    std::pair{Asked::WaterUnusual, std::string_view("water_unusual")},
    std::pair{Asked::MarksDisagree, std::string_view("marks_disagree")},
    std::pair{Asked::NobodyLives, std::string_view("nobody_lives")},
    std::pair{Asked::MoreOutThanIn, std::string_view("more_out_than_in")},
    std::pair{Asked::BoxFromNowhere, std::string_view("box_unknown_before")},
    std::pair{Asked::SetOutInOpen, std::string_view("set_out_in_open")},
    std::pair{Asked::HeldCombLivedIn, std::string_view("held_comb_lived_in")},
    std::pair{Asked::TraceContacts, std::string_view("trace_contacts")},
    std::pair{Asked::NameAlike, std::string_view("name_alike")},
    std::pair{Asked::FramesDiffer, std::string_view("frames_differ")},
    std::pair{Asked::ReviewOvertaken, std::string_view("review_overtaken")},
    std::pair{Asked::ReviewedTwice, std::string_view("reviewed_twice")},
    std::pair{Asked::FoundAgain, std::string_view("found_again")},
    std::pair{Asked::MuchScraped, std::string_view("much_scraped")},
    std::pair{Asked::TwoDepths, std::string_view("two_depths")},
    std::pair{Asked::FoundationUsedUp, std::string_view("foundation_used_up")},
    std::pair{Asked::NotColdEnough, std::string_view("not_cold_enough")},
    std::pair{Asked::FreezerOverfull, std::string_view("freezer_overfull")},
    std::pair{Asked::WetIntoFreezer, std::string_view("wet_into_freezer")},
    std::pair{Asked::WetsToNucleus, std::string_view("wets_to_nucleus")},
    std::pair{Asked::DeadOutStillHeld, std::string_view("dead_out_still_held")},
    std::pair{Asked::StayHeld, std::string_view("stay_held")},
    std::pair{Asked::LeftOutHeld, std::string_view("left_out_held")},
    std::pair{Asked::LotsRunTogether, std::string_view("lots_run_together")},
    std::pair{Asked::WetsElsewhere, std::string_view("wets_elsewhere")},
    std::pair{Asked::NoFrames, std::string_view("no_frames")},
    std::pair{Asked::OtherYard, std::string_view("other_yard")},
    std::pair{Asked::SuspectedHoney, std::string_view("suspected_honey")},
    std::pair{Asked::HiveTooHeavy, std::string_view("hive_too_heavy")},
    std::pair{Asked::TareWrong, std::string_view("tare_wrong")},
    std::pair{Asked::SidesDiffer, std::string_view("sides_differ")},
    std::pair{Asked::WeighedAgain, std::string_view("weighed_again")},
    std::pair{Asked::FedUnderSupers, std::string_view("fed_under_supers")},
    std::pair{Asked::FedNobody, std::string_view("fed_nobody")},
    std::pair{Asked::FeedUsedUp, std::string_view("feed_used_up")},
    std::pair{Asked::MedicineExpired, std::string_view("medicine_expired")},
    std::pair{Asked::BeforeBought, std::string_view("before_bought")},
    std::pair{Asked::AlreadyTreated, std::string_view("already_treated")},
    std::pair{Asked::MoreMedicineThanThere, std::string_view("more_medicine_than_there")},
    std::pair{Asked::SupersTreated, std::string_view("supers_treated")},
    std::pair{Asked::SuperTooEarly, std::string_view("super_too_early")},
    std::pair{Asked::SignsToReport, std::string_view("signs_to_report")},
    std::pair{Asked::TreatedHoney, std::string_view("treated_honey")},
    std::pair{Asked::LineReplaced, std::string_view("line_replaced")},
    std::pair{Asked::ColourOfAnotherYear, std::string_view("colour_of_another_year")},
    std::pair{Asked::SeenAfterLost, std::string_view("seen_after_lost")},
    std::pair{Asked::TwoQueens, std::string_view("two_queens")},
    std::pair{Asked::EggsWithoutQueen, std::string_view("eggs_without_queen")},
    std::pair{Asked::QueenOverQueen, std::string_view("queen_over_queen")},
    std::pair{Asked::OutTooEarly, std::string_view("out_too_early")},
    std::pair{Asked::LeftUntreated, std::string_view("left_untreated")},
    std::pair{Asked::ClosedSince, std::string_view("closed_since")},
    std::pair{Asked::FoundDead, std::string_view("found_dead")},
    std::pair{Asked::BeesNotSaid, std::string_view("bees_not_said")},
    std::pair{Asked::MuchWaxInCandle, std::string_view("much_wax_in_candle")},
    std::pair{Asked::LittleWaxInCandle, std::string_view("little_wax_in_candle")},
    std::pair{Asked::YieldUnusual, std::string_view("yield_unusual")},
    std::pair{Asked::WaxTooHot, std::string_view("wax_too_hot")},
    std::pair{Asked::HeldWax, std::string_view("held_wax")},
    std::pair{Asked::CappingsInCold, std::string_view("cappings_in_cold")},
    std::pair{Asked::ManyCombs, std::string_view("many_combs")},
    std::pair{Asked::MuchCappings, std::string_view("much_cappings")},
    std::pair{Asked::MouldUnknown, std::string_view("mould_unknown")},
    std::pair{Asked::MouldSizesDiffer, std::string_view("mould_sizes_differ")},
    std::pair{Asked::OtherCandle, std::string_view("other_candle")},
    std::pair{Asked::MuchWick, std::string_view("much_wick")},
    std::pair{Asked::WickNotBought, std::string_view("wick_not_bought")},
    std::pair{Asked::NoStarter, std::string_view("no_starter")},
    std::pair{Asked::TreatedComb, std::string_view("treated_comb")},
    std::pair{Asked::NotCorrected, std::string_view("not_corrected")},
    std::pair{Asked::ReadsTooDry, std::string_view("reads_too_dry")},
    std::pair{Asked::WarmthNotSaid, std::string_view("warmth_not_said")},
    std::pair{Asked::CalibratedLongAgo, std::string_view("calibrated_long_ago")},
    std::pair{Asked::WarmedMuch, std::string_view("warmed_much")},
    std::pair{Asked::HoneyMissing, std::string_view("honey_missing")},
    std::pair{Asked::BlendWetter, std::string_view("blend_wetter")},
};

}  // namespace

std::string_view key(Asked asked) {
    for (const auto& [each, text] : askedKeys)
        if (each == asked) return text;
    return "unknown";
}

}  // namespace combwright
