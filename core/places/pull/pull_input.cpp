#include "core/places/pull/pull_input.h"

#include <algorithm>

#include "core/places/health/treatments.h"
#include "core/places/honey_room/pegs.h"
#include "core/places/pull/clearers.h"
#include "core/places/pull/full_frame.h"
#include "core/storage/queries/constants.h"
#include "core/storage/queries/holds.h"
#include "core/storage/queries/runs.h"
#include "core/storage/queries/stays.h"
#include "core/trade/frames/frame_honey.h"

namespace combwright {
namespace {

/// How long a look speaks for a box that stayed where it was. Planning assumption, no source.
constexpr int lookHoldsDays = 35;

struct LookedInto {
    std::optional<BoxLook> speaking;
    std::optional<Day> newest;
};

LookedInto looksAt(const Read& file, const Box& box, Day on) {
    const Day since = std::max(box.since, lastMoved(file, box.id, on).value_or(box.since));
    LookedInto looked;
    for (BoxLook& look : file.where<BoxLook>({is("box", box.id)})) {
        if (look.on > on) continue;
        looked.newest = std::max(looked.newest.value_or(look.on), look.on);
        if (look.on < since || look.on + days(lookHoldsDays) < on) continue;
        if (!looked.speaking || look.on >= looked.speaking->on) looked.speaking = std::move(look);
    }
    return looked;
}

/// What holds a box back: its own hold first, then that of the colony it stands on or came from.
std::optional<Hold> holdOn(const HeldThings& held, const Box& box) {
    const auto holds = held.of(box.id);
    for (const Hold& hold : holds)
        if (hold.box) return hold;
    return holds.empty() ? std::nullopt : std::optional(holds.front());
}

/// Reads supers and hives of one plan.
class PullReader {
  public:
    PullReader(const Read& file, const PullInput& input)
        : m_file(file),
          m_on(input.on),
          m_asked(input.asked),
          m_constants(input.constants),
          m_held(heldThings(file, input.on)) {
        for (Peg& peg : file.where<Peg>({isUnknown("off_day")})) {
            if (peg.on > m_on) continue;
            const auto hive =
                peg.hive || !peg.box ? peg.hive : hiveThatFilled(file, *peg.box, m_on);
            if (hive) m_pegged[hive->number].push_back(std::move(peg));
        }
    }

    PullHiveRow hiveRow(const Yard& yard, const Hive& hive) const;

  private:
    PullBoxRow boxRow(const Box& box, Id<Yard> yard) const;
    void weigh(PullBoxRow& row, Id<Yard> yard) const;
    std::optional<Reckoned> nestStores(const Hive& hive, const std::vector<Box>& nest) const;
    BroughtBox broughtBox(const Peg& peg, const Hive& hive) const;

    const Read& m_file;
    Day m_on;
    const PullAsked& m_asked;
    const PullConstants& m_constants;
    HeldThings m_held;
    std::map<std::int64_t, std::vector<Peg>> m_pegged;  ///< by the hive their boxes came off
};

BroughtBox PullReader::broughtBox(const Peg& peg, const Hive& hive) const {
    BroughtBox row;
    row.peg = peg;
    row.box = m_file.find(peg.box);
    if (!row.box) return row;
    row.kind = m_file.find(row.box->kind);
    if (const auto frames = framesIn(m_file, *row.box)) row.frames = frames->value();
    const auto empty =
        row.kind ? emptyBoxGramsOf(m_file, *row.kind, hive.yard, m_on) : std::nullopt;
    for (const PullLine& line : m_file.where<PullLine>({is("box", row.box->id)}))
        if (const auto honey = line.honey ? line.honey->middle() : std::nullopt; honey && empty)
            row.grossG = *honey + *empty;
    return row;
}

std::optional<Day> fedUnder(const Read& file, const Box& box, Day on) {
    if (!box.hive) return std::nullopt;
    const Day since = lastMoved(file, box.id, on).value_or(box.since);
    std::optional<Day> newest;
    for (const Feeding& each : file.where<Feeding>({is("hive", *box.hive)}))
        if (each.kind != FeedKind::Comb && since <= each.on && each.on <= on)
            newest = std::max(newest.value_or(each.on), each.on);
    return newest;
}

PullBoxRow PullReader::boxRow(const Box& box, Id<Yard> yard) const {
    PullBoxRow row;
    row.box = box;
    row.hold = holdOn(m_held, box);
    if (!row.hold && box.hive)
        for (const SuperTooEarly& early : supersTooEarly(m_file, *box.hive, m_on)) {
            if (early.box.id != box.id) continue;
            // Nobody held it; until somebody answers it stays off the list as if one had.
            Hold hold;
            hold.box = box.id;
            hold.why = HoldWhy::TreatedWhileOn;
            hold.since = early.wentOn;
            hold.treatment = early.back.line.treatment.id;
            hold.note = early.back.line.medicine.name.text();
            row.hold = std::move(hold);
        }
    row.fedOn = fedUnder(m_file, box, m_on);
    LookedInto looked = looksAt(m_file, box, m_on);
    row.look = std::move(looked.speaking);
    if (!row.look) row.lookedOnce = looked.newest;
    row.kind = m_file.find(box.kind);
    if (!row.kind) return row;
    row.kindName = row.kind->name.text();
    row.frameKind = m_file.find(row.kind->takes);
    const auto inBox = m_file.where<Frame>({is("box", box.id), isUnknown("retired")});
    row.frames = row.look && row.look->frames ? row.look->frames->value()
                 : !inBox.empty()             ? static_cast<std::int64_t>(inBox.size())
                 : row.kind->framesNominal    ? row.kind->framesNominal->value()
                                              : 0;
    row.flat = framesFlat(inBox, row.look, row.frames);
    weigh(row, yard);
    return row;
}

void PullReader::weigh(PullBoxRow& row, Id<Yard> yard) const {
    row.emptyG = emptyBoxGramsOf(m_file, *row.kind, yard, m_on);
    if (!row.look) return;
    const auto capped = row.look->cappedFrames ? row.look->cappedFrames->middle() : std::nullopt;
    if (capped && row.frames > 0)
        row.cappedShare = std::min(1.0, *capped / 10.0 / static_cast<double>(row.frames));
    const auto filled = row.look->filled ? row.look->filled->middle() : std::nullopt;
    // Where only the capped frames were counted, at least those are full.
    const auto share = filled ? std::optional(*filled / 10000.0) : row.cappedShare;
    const auto full = row.frameKind
                          ? pullFullFrame(m_file, m_on, m_asked, m_constants, *row.frameKind, yard)
                          : std::nullopt;
    if (!share || !full) return;
    const auto one = frameHoney({*full, *share, *share, std::nullopt});
    if (!one) return;
    const HoneyEstimate whole = alike(*one, row.frames);
    row.honey = Reckoned{whole.grams, whole.spreadG(), filled ? How::ByEye : How::Assumed};
    if (row.emptyG)
        row.gross = Reckoned{row.honey->grams + *row.emptyG, row.honey->spreadG, How::Assumed};
}

/// Stores in the nest: the frames of stores last counted, at what a full frame of the nest holds.
std::optional<Reckoned> PullReader::nestStores(const Hive& hive,
                                               const std::vector<Box>& nest) const {
    if (nest.empty()) return std::nullopt;
    const auto kind = m_file.find(nest.front().kind);
    const auto frame = kind ? m_file.find(kind->takes) : std::nullopt;
    const auto full =
        frame ? pullFullFrame(m_file, m_on, m_asked, m_constants, *frame, hive.yard) : std::nullopt;
    if (!full) return std::nullopt;
    for (const DatedInspection& each :
         inspectionsBetween(m_file, hive.id, m_on - days(lookHoldsDays), m_on)) {
        const auto& stores = each.inspection.seen.stores;
        if (!stores || !stores->middle()) continue;
        const double frames = *stores->middle() / 10.0;
        const auto one = frameHoney({*full, 1.0, 1.0, std::nullopt});
        if (!one) return std::nullopt;
        // Counted in tenths, yet how full such a frame is was judged by eye.
        return Reckoned{one->grams * frames, one->spreadG() * frames, How::ByEye};
    }
    return std::nullopt;
}

PullHiveRow PullReader::hiveRow(const Yard& yard, const Hive& hive) const {
    PullHiveRow row;
    row.hive = hive;
    const auto standing = boxesOn(m_file, hive.id);
    const auto supers = supersOn(hive, standing);
    const std::vector<Box> nest(standing.begin(),
                                standing.end() - static_cast<std::ptrdiff_t>(supers.size()));
    row.nest = nestStores(hive, nest);
    row.needG = yard.winterNeed ? static_cast<double>(yard.winterNeed->grams())
                : m_asked.limits.winterNeed
                    ? static_cast<double>(m_asked.limits.winterNeed->grams())
                    : 0;
    for (auto box = supers.rbegin(); box != supers.rend(); ++box) {
        row.boxes.push_back(boxRow(*box, yard.id));
        row.boxes.back().fromTop = row.boxes.size();
    }
    if (const auto pegged = m_pegged.find(hive.id.number); pegged != m_pegged.end())
        for (const Peg& peg : pegged->second) {
            const auto box = m_file.find(peg.box);
            if (!box || box->place != BoxPlace::OnHive)
                row.brought.push_back(broughtBox(peg, hive));
        }
    return row;
}

/// The kind most supers of the yards are of; where there are none, the first yard's usual one.
std::optional<BoxKind> usualSuperOf(const Read& file, const std::vector<Id<Yard>>& yards) {
    std::map<std::int64_t, int> supers;
    std::optional<Id<BoxKind>> usual;
    for (const Id<Yard> yard : yards) {
        for (const Hive& hive : openHives(file, yard))
            for (const Box& box : supersOn(hive, boxesOn(file, hive.id))) ++supers[box.kind.number];
        if (const auto found = file.find(yard); found && !usual) usual = found->usualSuper;
    }
    const auto most = std::max_element(supers.begin(), supers.end(),
                                       [](auto& a, auto& b) { return a.second < b.second; });
    if (most != supers.end()) usual = Id<BoxKind>{most->first};
    return file.find(usual);
}

PullConstants constantsFor(const Read& file, Day on, const std::vector<Id<Yard>>& yards) {
    PullConstants constants;
    if (const auto kind = usualSuperOf(file, yards)) {
        constants.usualBox = kind->name.text();
        constants.usualFrame = file.find(kind->takes);
        if (constants.usualFrame)
            constants.fullFrameG = fullFrameGramsOf(file, *constants.usualFrame, {}, on);
    }
    constants.slots = constantOr(file, "extractor_slots", {}, on, 12);
    constants.bucketG = constantOr(file, "bucket_g", {}, on, 13600);
    constants.spareShare = constantOr(file, "spare_share", {}, on, 0.1);
    return constants;
}

}  // namespace

PlanLimits startingLimits(const Read& file, Day on) {
    const auto plans = file.all<PullPlan>();
    if (!plans.empty()) return plans.back().limits;
    PlanLimits limits;
    limits.winterNeed = Mass::roundedGrams(constantOr(file, "winter_need_g", {}, on, 25000));
    limits.feedUpTo = Mass::roundedGrams(constantOr(file, "feed_up_to_g", {}, on, 0));
    limits.minCapped = Share::rounded(constantOr(file, "min_capped_share", {}, on, 0.8));
    return limits;
}

std::optional<KeptPull> keptPull(const Read& file, Day on) {
    std::optional<KeptPull> kept;
    for (PullPlan& plan : file.all<PullPlan>())
        if (plan.forDay >= on && plan.on <= on) kept = KeptPull{std::move(plan), {}, 0, 0, 0, 0};
    if (!kept) return std::nullopt;
    kept->asked.forDay = kept->plan.forDay;
    kept->asked.limits = kept->plan.limits;
    auto& yards = kept->asked.yards;
    for (const PullLine& line : file.where<PullLine>({is("plan", kept->plan.id)})) {
        const auto hive = file.find(line.hive);
        if (hive && std::find(yards.begin(), yards.end(), hive->yard) == yards.end())
            yards.push_back(hive->yard);
        const double honeyG = line.honey ? line.honey->middle().value_or(0) : 0;
        if (line.verdict == PullVerdict::Take) {
            ++kept->taken;
            kept->honeyG += honeyG;
        }
        // A box that has left its hive since is past deciding.
        const auto box = file.find(line.box);
        const bool there = box && box->place == BoxPlace::OnHive && box->hive == line.hive;
        if (line.verdict == PullVerdict::Take) {
            kept->brought += !there;
            kept->leftG += there ? honeyG : 0;
        }
        if (line.forced.value_or(false) && there)
            kept->asked.forced[line.box.number] = ForcedVerdict(line.verdict, line.why);
    }
    return kept;
}

PullAsked startingQuestion(const Read& file, Day on) {
    PullAsked asked;
    if (auto kept = keptPull(file, on); kept && !kept->asked.yards.empty()) return kept->asked;
    for (const Yard& yard : openYards(file)) asked.yards.push_back(yard.id);
    asked.forDay = on + days(boardDays);
    asked.limits = startingLimits(file, on);
    return asked;
}

std::optional<double> pullFullFrame(const Read& file, Day on, const PullAsked& asked,
                                    const PullConstants& constants, const FrameKind& frame,
                                    Id<Yard> yard) {
    const auto& usual = constants.usualFrame;
    if (asked.supposed.fullFrameG && usual && usual->id == frame.id) {
        const auto own = constantInForce(file, "full_frame_g " + frame.code.text(), yard, on);
        if (!own || !own->own || !own->own->yard) return asked.supposed.fullFrameG;
    }
    return fullFrameGramsOf(file, frame, yard, on);
}

PullInput pullInput(const Read& file, Day on, const PullAsked& asked) {
    PullInput input;
    input.on = on;
    input.asked = asked;
    input.constants = constantsFor(file, on, asked.yards);
    const PullReader reader(file, input);
    for (const Id<Yard> id : asked.yards) {
        const auto yard = file.find(id);
        if (!yard) continue;
        PullYardRow row;
        row.yard = *yard;
        for (const Hive& hive : openHives(file, id))
            row.hives.push_back(reader.hiveRow(*yard, hive));
        input.yards.push_back(std::move(row));
    }
    const auto rate = [&](const char* name, double fallback) {
        return constantOr(file, name, {}, on, fallback);
    };
    const PullConstants& constants = input.constants;
    input.room.slotsOfKind[""] =
        static_cast<std::int64_t>(asked.supposed.slots.value_or(constants.slots));
    input.room.uncapMinPerFrame = rate("uncap_min_per_frame", 1.5);
    input.room.spinMinPerLoad = rate("spin_min_per_load", 15);
    input.room.swapMin = rate("swap_min", 0);
    input.room.lotChangeMin = rate("lot_change_min", 0);
    input.room.setUpMin = rate("set_up_min", 45);
    input.room.washMin = rate("wash_min", 90);
    input.room.bucketG = asked.supposed.bucketG.value_or(constants.bucketG);
    input.room.spareShare = asked.supposed.spareShare.value_or(constants.spareShare);
    input.jarG = rate("jar_net_g", 454);
    input.jarLossShare = rate("jar_loss_share", 0.02);
    input.pegsTaken = pegsTaken(file, on);
    input.boardsOwned = clearerBoardsOwned(file, on);
    for (const Id<Hive> cleared : clearedHives(file, on))
        for (PullYardRow& yard : input.yards)
            for (PullHiveRow& row : yard.hives)
                if (row.hive.id == cleared) row.boardIn = true;
    return input;
}

}  // namespace combwright
