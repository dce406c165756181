#include "core/trade/storeroom/dead_out.h"

#include <algorithm>

namespace combwright {
namespace {

bool answeredNo(const std::optional<bool>& answer) { return answer && !*answer; }
bool answeredYes(const std::optional<bool>& answer) { return answer && *answer; }

bool suspectsFoulbrood(const DeadOutSigns& card) {
    if (card.finding == BroodFinding::Clear) return false;
    const bool lookedAndClear = answeredNo(card.ropy) && answeredNo(card.scale);
    return answeredYes(card.ropy) || answeredYes(card.scale) ||
           (card.brood == DeadBrood::Sunken && !lookedAndClear);
}

bool foulbroodLookedFor(const DeadOutSigns& card) {
    return card.finding == BroodFinding::Clear ||
           (answeredNo(card.ropy) && answeredNo(card.scale) && card.brood != DeadBrood::Sunken);
}

bool looksStarved(const DeadOutSigns& card) {
    return card.cluster == ClusterFound::TightHeadsIn && card.storesNear &&
           *card.storesNear != DeadStores::Touching;
}

bool looksMiteKilled(const DeadOutSigns& card) {
    return answeredYes(card.frass) || card.brood == DeadBrood::DeadEmerging;
}

bool looksQueenless(const DeadOutSigns& card) {
    if (card.brood == DeadBrood::DronesOnly) return true;
    // "No queen" of a hive whose bees are gone tells nothing: nobody is left to be queenless.
    return answeredNo(card.queen) && card.brood == DeadBrood::None && card.cluster &&
           *card.cluster != ClusterFound::Gone;
}

std::vector<LooksLike> causesOf(const DeadOutSigns& card) {
    std::vector<LooksLike> causes;
    const auto add = [&](bool holds, LooksLike cause) {
        if (holds) causes.push_back(cause);
    };
    add(card.finding == BroodFinding::AmericanFoulbrood || suspectsFoulbrood(card),
        LooksLike::Foulbrood);
    add(card.finding == BroodFinding::EuropeanFoulbrood ||
            (card.brood == DeadBrood::Twisted && card.finding != BroodFinding::Clear),
        LooksLike::EuropeanFoulbrood);
    add(looksStarved(card), LooksLike::Starvation);
    add(looksMiteKilled(card), LooksLike::VarroaAndVirus);
    add(card.cluster == ClusterFound::Gone, LooksLike::MitesOrDwindling);
    add(looksQueenless(card), LooksLike::QueenLoss);
    add(card.droppings == DeadDroppings::BeesStreaks, LooksLike::Dysentery);
    add(answeredYes(card.wet), LooksLike::Damp);
    add(card.droppings == DeadDroppings::Mouse, LooksLike::Mouse);
    add(card.cluster == ClusterFound::Few && card.brood == DeadBrood::Chilled, LooksLike::Chilled);
    return causes;
}

bool holds(const std::vector<LooksLike>& causes, LooksLike cause) {
    return std::find(causes.begin(), causes.end(), cause) != causes.end();
}

CombUse combUseOf(const DeadOutSigns& card, const std::vector<LooksLike>& causes) {
    if (card.finding == BroodFinding::AmericanFoulbrood) return CombUse::Never;
    if (holds(causes, LooksLike::Foulbrood)) return CombUse::Quarantine;
    if (holds(causes, LooksLike::EuropeanFoulbrood) || !foulbroodLookedFor(card) ||
        card.poisonedOrMedicated)
        return CombUse::Hold;
    const bool frosted = card.frozen || card.coldWinter;
    if (!frosted && !holds(causes, LooksLike::Mouse)) return CombUse::ReuseAfterFreezing;
    if (holds(causes, LooksLike::Mouse)) return CombUse::ReuseAfterCutting;
    if (holds(causes, LooksLike::Dysentery)) return CombUse::ReuseAfterScrubbing;
    if (holds(causes, LooksLike::Damp)) return CombUse::ReuseAfterDrying;
    return CombUse::Reuse;
}

std::vector<DoToday> deedsFor(const DeadOutSigns& card, const DeadOutReading& reading) {
    std::vector<DoToday> deeds;
    const auto add = [&](bool needed, DoToday deed) {
        if (needed) deeds.push_back(deed);
    };
    const bool foulbrood = holds(reading.causes, LooksLike::Foulbrood);
    const bool european = holds(reading.causes, LooksLike::EuropeanFoulbrood);
    add(foulbrood || european, DoToday::CallInspector);
    add(foulbrood || european, DoToday::MoveNothing);
    deeds.push_back(DoToday::CloseHive);
    if (foulbrood || european) return deeds;  // nothing else is touched before the inspector came
    add(card.finding != BroodFinding::Clear && (!card.ropy || !card.scale),
        DoToday::LookForScaleAndRope);
    add(holds(reading.causes, LooksLike::VarroaAndVirus) ||
            holds(reading.causes, LooksLike::MitesOrDwindling),
        DoToday::WashDeadBees);
    add(holds(reading.causes, LooksLike::Damp), DoToday::DryCombs);
    add(holds(reading.causes, LooksLike::Dysentery), DoToday::ScrubCombs);
    add(holds(reading.causes, LooksLike::Mouse), DoToday::CutOutChewed);
    add(!card.frozen && !card.coldWinter, DoToday::FreezeCombs);
    deeds.push_back(DoToday::HoneyToBeesOnly);
    return deeds;
}

SampleToKeep sampleOf(const std::vector<LooksLike>& causes) {
    if (holds(causes, LooksLike::Foulbrood) || holds(causes, LooksLike::EuropeanFoulbrood))
        return SampleToKeep::LeaveToInspector;
    return holds(causes, LooksLike::VarroaAndVirus) ? SampleToKeep::HalfCupOfBees
                                                    : SampleToKeep::BeesForSpores;
}

}  // namespace

std::string_view key(LooksLike cause) {
    switch (cause) {
        case LooksLike::Foulbrood:
            return "foulbrood";
        case LooksLike::EuropeanFoulbrood:
            return "european_foulbrood";
        case LooksLike::Starvation:
            return "starvation";
        case LooksLike::VarroaAndVirus:
            return "varroa_and_virus";
        case LooksLike::MitesOrDwindling:
            return "mites_or_dwindling";
        case LooksLike::QueenLoss:
            return "queen_loss";
        case LooksLike::Dysentery:
            return "dysentery";
        case LooksLike::Damp:
            return "damp";
        case LooksLike::Mouse:
            return "mouse";
        case LooksLike::Chilled:
            return "chilled";
    }
    return {};
}

std::string_view key(CombUse use) {
    switch (use) {
        case CombUse::Reuse:
            return "reuse";
        case CombUse::ReuseAfterDrying:
            return "reuse_after_drying";
        case CombUse::ReuseAfterScrubbing:
            return "reuse_after_scrubbing";
        case CombUse::ReuseAfterCutting:
            return "reuse_after_cutting";
        case CombUse::ReuseAfterFreezing:
            return "reuse_after_freezing";
        case CombUse::Hold:
            return "hold";
        case CombUse::Quarantine:
            return "quarantine";
        case CombUse::Never:
            return "never";
    }
    return {};
}

std::string_view key(DoToday deed) {
    switch (deed) {
        case DoToday::CallInspector:
            return "call_inspector";
        case DoToday::MoveNothing:
            return "move_nothing";
        case DoToday::CloseHive:
            return "close_hive";
        case DoToday::LookForScaleAndRope:
            return "look_for_scale_and_rope";
        case DoToday::WashDeadBees:
            return "wash_dead_bees";
        case DoToday::DryCombs:
            return "dry_combs";
        case DoToday::ScrubCombs:
            return "scrub_combs";
        case DoToday::CutOutChewed:
            return "cut_out_chewed";
        case DoToday::FreezeCombs:
            return "freeze_combs";
        case DoToday::HoneyToBeesOnly:
            return "honey_to_bees_only";
    }
    return {};
}

std::string_view key(SampleToKeep sample) {
    switch (sample) {
        case SampleToKeep::LeaveToInspector:
            return "leave_to_inspector";
        case SampleToKeep::HalfCupOfBees:
            return "half_cup_of_bees";
        case SampleToKeep::BeesForSpores:
            return "bees_for_spores";
    }
    return {};
}

DeadOutReading readDeadOut(const DeadOutSigns& card) {
    DeadOutReading reading;
    reading.causes = causesOf(card);
    reading.combs = combUseOf(card, reading.causes);
    reading.today = deedsFor(card, reading);
    reading.sample = sampleOf(reading.causes);
    return reading;
}

}  // namespace combwright
