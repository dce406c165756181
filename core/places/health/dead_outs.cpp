#include "core/places/health/dead_outs.h"

#include <algorithm>
#include <array>

#include "core/storage/queries/holds.h"

namespace combwright {
namespace {

template <class T>
void takeGiven(std::optional<T>& into, const std::optional<T>& given) {
    if (given) into = given;
}
void takeGiven(std::string& into, const std::string& given) {
    if (!given.empty()) into = given;
}

void takeSaid(std::string& into, const std::string& given) {
    if (saysSomething(given)) into = given;
}

}  // namespace

bool saysSomething(std::string_view text) {
    std::string plain;
    for (std::size_t i = 0; i < text.size(); ++i) {
        // The apostrophe is typed in two ways, and is left out.
        if (text.substr(i).starts_with("\u2019")) {
            i += 2;
            continue;
        }
        const char c = text[i];
        const bool letter = (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || c < 0;
        const bool figure = c >= '0' && c <= '9';
        if (letter || figure)
            plain += c >= 'A' && c <= 'Z' ? static_cast<char>(c + ('a' - 'A')) : c;
    }
    static constexpr std::array<std::string_view, 6> blanks{"unknown",   "notknown",  "dontknow",
                                                            "idontknow", "donotknow", "noidea"};
    return !plain.empty() && std::find(blanks.begin(), blanks.end(), plain) == blanks.end();
}

DeadOut answersOf(const Read& file, Id<Colony> colony, Day on) {
    auto given = file.where<DeadOut>({is("colony", colony)});
    std::erase_if(given, [&](const DeadOut& each) { return each.on > on; });
    std::stable_sort(given.begin(), given.end(),
                     [](const DeadOut& a, const DeadOut& b) { return a.on < b.on; });
    DeadOut all;
    all.colony = colony;
    all.on = on;
    for (const DeadOut& each : given) {
        all.id = each.id;
        all.on = each.on;
        takeGiven(all.cluster, each.cluster);
        takeGiven(all.stores, each.stores);
        takeGiven(all.brood, each.brood);
        takeGiven(all.frass, each.frass);
        takeGiven(all.wet, each.wet);
        takeGiven(all.queen, each.queen);
        takeGiven(all.droppings, each.droppings);
        takeGiven(all.ropy, each.ropy);
        takeGiven(all.scale, each.scale);
        takeGiven(all.mouse, each.mouse);
        takeGiven(all.sampleKept, each.sampleKept);
        takeSaid(all.cause, each.cause);
        takeSaid(all.by, each.by);
        takeGiven(all.note, each.note);
    }
    return all;
}

DeadOutSigns signsOf(const DeadOut& said) {
    DeadOutSigns signs;
    if (said.cluster == DeadCluster::None) signs.cluster = ClusterFound::Gone;
    if (said.cluster == DeadCluster::Small) signs.cluster = ClusterFound::Few;
    if (said.cluster == DeadCluster::HeadsInCells) signs.cluster = ClusterFound::TightHeadsIn;
    if (said.stores == StoresNear::None) signs.storesNear = DeadStores::None;
    if (said.stores == StoresNear::Away) signs.storesNear = DeadStores::InchesAway;
    if (said.stores == StoresNear::Touching) signs.storesNear = DeadStores::Touching;
    if (said.brood) switch (*said.brood) {
            case BroodSeen::None:
                signs.brood = DeadBrood::None;
                break;
            case BroodSeen::Sound:
                signs.brood = DeadBrood::Healthy;
                break;
            case BroodSeen::Chilled:
                signs.brood = DeadBrood::Chilled;
                break;
            case BroodSeen::Sunken:
                signs.brood = DeadBrood::Sunken;
                break;
            case BroodSeen::Twisted:
                signs.brood = DeadBrood::Twisted;
                break;
            case BroodSeen::DroneOnly:
                signs.brood = DeadBrood::DronesOnly;
                break;
        }
    signs.frass = said.frass;
    signs.wet = said.wet;
    signs.queen = said.queen;
    signs.ropy = said.ropy;
    signs.scale = said.scale;
    if (said.mouse == true)
        signs.droppings = DeadDroppings::Mouse;
    else if (said.droppings == true)
        signs.droppings = DeadDroppings::BeesStreaks;
    else if (said.droppings == false)
        signs.droppings = DeadDroppings::None;
    return signs;
}

DeadOutReading readingOf(const DeadOut& said) { return readDeadOut(signsOf(said)); }

bool looksLikeDisease(const DeadOut& said) {
    const DeadOutReading reading = readDeadOut(signsOf(said));
    const auto looks = [&](LooksLike cause) {
        return std::find(reading.causes.begin(), reading.causes.end(), cause) !=
               reading.causes.end();
    };
    return looks(LooksLike::Foulbrood) || looks(LooksLike::EuropeanFoulbrood) ||
           said.brood == BroodSeen::Sunken;
}

bool foulbroodRuledOut(const DeadOut& said) {
    return !looksLikeDisease(said) && readDeadOut(signsOf(said)).combs < CombUse::Hold;
}

std::optional<Colony> lastDeadIn(const Read& file, Id<Hive> hive) {
    std::optional<Colony> last;
    for (Colony& each : file.where<Colony>({is("hive", hive)}))
        if (leftDeadCombs(each) && (!last || *each.ended >= *last->ended)) last = std::move(each);
    return last;
}

namespace {

std::vector<Box> heldFor(const Read& file, const HeldThings& held, Id<Colony> colony) {
    std::vector<Box> boxes;
    for (const auto& [number, holds] : held.boxes)
        if (std::any_of(holds.begin(), holds.end(), [&](const Hold& hold) {
                return hold.colony == colony && keepsApart(hold);
            }))
            if (const auto box = file.find(Id<Box>{number})) boxes.push_back(*box);
    std::stable_sort(boxes.begin(), boxes.end(), [](const Box& a, const Box& b) {
        return std::pair(a.mark.size(), a.mark) < std::pair(b.mark.size(), b.mark);
    });
    return boxes;
}

/// What is held for the colony, and whether all its combs have been in the freezer.
bool gatherHeld(const Read& file, const HeldThings& held, DeadOutCard& card) {
    bool allFrozen = true;
    const auto count = [&](const Frame& frame) {
        ++card.frames[useOf(frame, false)];
        allFrozen = allFrozen && frame.frozen && *frame.frozen >= *card.colony.ended;
    };
    for (Box& box : heldFor(file, held, card.colony.id)) {
        HeldBox each{std::move(box), {}, 0};
        if (const auto kind = file.find(each.box.kind)) each.kind = kind->name.text();
        for (const Frame& frame :
             file.where<Frame>({is("box", each.box.id), isUnknown("retired")})) {
            ++each.frames;
            count(frame);
        }
        card.boxes.push_back(std::move(each));
    }
    for (const auto& [number, holds] : held.frames) {
        const auto frame = file.find(Id<Frame>{number});
        if (!frame || frame->retired) continue;
        const bool inItsBox = frame->box && std::any_of(card.boxes.begin(), card.boxes.end(),
                                                        [&](const HeldBox& each) {
                                                            return each.box.id == *frame->box;
                                                        });
        const bool its = std::any_of(holds.begin(), holds.end(), [&](const Hold& hold) {
            return hold.colony == card.colony.id;
        });
        if (inItsBox || !its) continue;
        ++card.looseFrames;
        count(*frame);
    }
    return allFrozen && card.heldFrames() > 0;
}

DeadOutCard cardOf(const Read& file, const HeldThings& held, const Colony& colony, Day on) {
    DeadOutCard card;
    card.colony = colony;
    card.hive = *file.find(colony.hive);
    card.yard = *file.find(card.hive.yard);
    card.given = file.where<DeadOut>({is("colony", colony.id)});
    std::erase_if(card.given, [&](const DeadOut& each) { return each.on > on; });
    std::stable_sort(card.given.begin(), card.given.end(),
                     [](const DeadOut& a, const DeadOut& b) { return a.on < b.on; });
    card.answers = answersOf(file, colony.id, on);
    bool treated = false;
    for (const Hold& hold : file.where<Hold>({is("colony", colony.id)})) {
        if (hold.since > on) continue;
        card.history.push_back(hold);
        card.everSuspected = card.everSuspected || hold.why == HoldWhy::SuspectedDisease;
        if (!standsOn(hold, on)) continue;
        treated = treated || hold.why == HoldWhy::TreatedWhileOn;
        if (keepsApart(hold) && (!card.hold || quarantines(hold))) card.hold = hold;
    }
    DeadOutSigns signs = signsOf(card.answers);
    signs.frozen = gatherHeld(file, held, card);
    signs.poisonedOrMedicated = treated;
    const bool suspected = card.hold && quarantines(*card.hold);
    if (card.everSuspected && !suspected)
        signs.finding = BroodFinding::Clear;  // released by whoever looked
    card.reading = readDeadOut(signs);
    // A suspicion stands until it is lifted, whatever was answered later.
    if (suspected) {
        const bool destroyed = colony.ending == Ending::DestroyedForDisease;
        card.reading.combs = destroyed ? CombUse::Never : CombUse::Quarantine;
        card.reading.today = {DoToday::CallInspector, DoToday::MoveNothing, DoToday::CloseHive};
        card.reading.sample = SampleToKeep::LeaveToInspector;
    }
    if (card.hold && !card.hive.closed) card.floors = card.lids = 1;
    const auto blank = [&](bool missing, std::string_view field) {
        if (missing) card.stillToAnswer.push_back(field);
    };
    blank(!card.answers.ropy, "ropy");
    blank(!card.answers.scale, "scale");
    blank(card.answers.cause.empty(), "cause");
    blank(card.answers.by.empty(), "by");
    return card;
}

}  // namespace

std::int64_t DeadOutCard::heldFrames() const {
    std::int64_t sum = 0;
    for (const auto& [use, count] : frames) sum += count;
    return sum;
}

std::int64_t DeadOutCard::uncountedBoxes() const {
    return std::count_if(boxes.begin(), boxes.end(),
                         [](const HeldBox& each) { return each.frames == 0; });
}

std::optional<DeadOutCard> deadOutCard(const Read& file, Id<Colony> id, Day on) {
    const auto colony = file.find(id);
    if (!colony || !leftDeadCombs(*colony) || *colony->ended > on) return std::nullopt;
    return cardOf(file, heldThings(file, on), *colony, on);
}

std::vector<DeadOutCard> deadOuts(const Read& file, Day on) {
    const HeldThings held = heldThings(file, on);
    std::vector<DeadOutCard> cards;
    for (const Colony& colony : file.all<Colony>())
        if (leftDeadCombs(colony) && *colony.ended <= on)
            cards.push_back(cardOf(file, held, colony, on));
    std::stable_sort(cards.begin(), cards.end(), [](const DeadOutCard& a, const DeadOutCard& b) {
        if (a.hold.has_value() != b.hold.has_value()) return a.hold.has_value();
        return *a.colony.ended > *b.colony.ended;
    });
    return cards;
}

}  // namespace combwright
