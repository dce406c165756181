#include "core/places/storeroom/freezer.h"

#include <algorithm>
#include <map>
#include <set>
#include <tuple>

#include "core/storage/queries/constants.h"
#include "core/storage/queries/machines.h"
#include "core/trade/storeroom/cold.h"
#include "core/trade/storeroom/freezer.h"

namespace combwright {
namespace {

constexpr double usualFreezerC = -18;
constexpr double usualFreezerHours = 48;
constexpr double usualStartC = 20;  // comb comes in from a room
/// What stays in within one day stays at most from morning to evening.
constexpr double mostHoursWithinADay = 12;

double hoursBetween(Instant from, Instant to) {
    return static_cast<double>((to - from).count()) / 3600;
}

std::optional<double> hoursInside(const FreezerRound& round, double usualHours) {
    const double planned = round.hours ? static_cast<double>(round.hours->value()) : usualHours;
    if (round.inAt && round.outAt) return hoursBetween(*round.inAt, *round.outAt);
    if (!round.out) return planned;
    const double nights = static_cast<double>((*round.out - round.in).count()) * 24;
    if (nights > 0) return nights;
    // Nobody said when: a day has room for the hours the keeper gave, not for more.
    if (round.hours && planned <= mostHoursWithinADay) return planned;
    return std::nullopt;
}

double litresOf(const Read& file, const FrameKind& kind, Day on) {
    if (!kind.topBarLength || !kind.height) return 0;
    return frameLitres(kind.topBarLength->mm(), kind.height->mm(),
                       constantOr(file, "freezer_pitch", {}, on, freezerPitchMm));
}

/// What the lane gathers from, read once.
class Lane {
  public:
    Lane(const Read& file, Day on) : m_file(file) {
        m_lane.on = on;
        const auto hours = constantInForce(file, "freezer_hours", {}, on);
        m_lane.hours = hours ? hours->value : usualFreezerHours;
        m_lane.hoursSource = hours ? constantSource(*hours) : std::string();
        m_lane.temperatureC = constantOr(file, "freezer_temperature_c", {}, on, usualFreezerC);
        for (const FrameKind& kind : file.all<FrameKind>()) m_kinds[kind.id.number] = kind;
        for (const Equipment& each : machinesOf(file, EquipmentItem::Freezer))
            if (each.since <= on) m_lane.freezers.push_back(each);
        std::set<std::int64_t> living;
        for (const Colony& colony : file.all<Colony>())
            (colony.ended && *colony.ended <= on ? m_deadStands : living)
                .insert(colony.hive.number);
        for (const std::int64_t hive : living) m_deadStands.erase(hive);
    }

    FreezerLane gathered(const std::vector<ShelfBox>& boxes) && {
        for (const ShelfBox& box : boxes) sortInto(box);
        order(m_lane.waiting);
        order(m_lane.dryFirst);
        tellRounds();
        plan();
        return std::move(m_lane);
    }

  private:
    std::string kindName(Id<FrameKind> kind) const {
        const auto found = m_kinds.find(kind.number);
        return found == m_kinds.end() ? std::string() : found->second.name.text();
    }

    FreezerFrames framesOf(const ShelfBox& box, const ShelfFrame& like) const {
        FreezerFrames made;
        if (box.box) made.box = box.box->id;
        made.name = box.name;
        made.stack = box.stack;
        made.kind = like.frame.kind;
        made.kindName = kindName(like.frame.kind);
        made.food = like.food;
        return made;
    }

    void count(std::vector<FreezerFrames>& list, const ShelfBox& box, const ShelfFrame& each) {
        const bool joins =
            !list.empty() && list.back().name == box.name &&
            list.back().box == (box.box ? std::optional(box.box->id) : std::nullopt) &&
            list.back().kind == each.frame.kind && list.back().food == each.food;
        if (!joins) list.push_back(framesOf(box, each));
        ++list.back().frames;
    }

    void sortInto(const ShelfBox& box) {
        const bool stored = !box.box || box.box->place == BoxPlace::Storeroom ||
                            box.box->place == BoxPlace::Freezer || box.box->place == BoxPlace::Wet;
        // A dead-out's combs on their own stand: no bees keep the moths out of them any more.
        const bool onDeadStand = box.box && box.box->place == BoxPlace::OnHive && box.box->hive &&
                                 m_deadStands.contains(box.box->hive->number);
        if (!stored && !onDeadStand) return;
        // Alike frames of a box stand together, whatever order they were counted in.
        std::vector<ShelfFrame> frames = box.frames;
        std::stable_sort(frames.begin(), frames.end(),
                         [](const ShelfFrame& a, const ShelfFrame& b) {
                             return std::tie(a.frame.kind.number, a.food) <
                                    std::tie(b.frame.kind.number, b.food);
                         });
        for (const ShelfFrame& each : frames) {
            // What nobody explained yet stays where it stands.
            if (each.load || (onDeadStand && each.held)) continue;
            if (each.frozen) {
                ++m_lane.frozenCombs;
            } else if (each.held) {
                if (each.comb()) count(m_lane.held, box, each);
            } else if (waitsForCold(each)) {
                count(each.wet ? m_lane.dryFirst : m_lane.waiting, box, each);
            } else if (each.use == FrameUse::Drawn) {
                ++m_lane.superCombs;
            }
        }
    }

    /// What a moth eats before what only the keeper chose; then the bulky kinds, then box by box.
    void order(std::vector<FreezerFrames>& list) const {
        const auto bulk = [&](const FreezerFrames& each) {
            const auto kind = m_kinds.find(each.kind.number);
            return kind == m_kinds.end() ? 0.0 : -litresOf(m_file, kind->second, m_lane.on);
        };
        std::stable_sort(list.begin(), list.end(),
                         [&](const FreezerFrames& a, const FreezerFrames& b) {
                             return std::tuple(a.food == MothFood::None, bulk(a), a.kind.number) <
                                    std::tuple(b.food == MothFood::None, bulk(b), b.kind.number);
                         });
    }

    void tellRounds() {
        std::map<std::int64_t, std::vector<FreezerLoad>> loads;
        for (const FreezerLoad& load : m_file.all<FreezerLoad>())
            loads[load.round.number].push_back(load);
        std::map<std::int64_t, Box> boxes;
        for (const Box& box : m_file.all<Box>()) boxes[box.id.number] = box;
        for (const FreezerRound& round : m_file.all<FreezerRound>()) {
            if (round.in > m_lane.on) continue;
            FreezerRoundRow row;
            row.round = round;
            for (const Equipment& each : m_lane.freezers)
                if (each.id == round.freezer) row.freezer = each.name;
            for (const FreezerLoad& load : loads[round.id.number]) {
                FreezerFrames frames;
                frames.box = load.box;
                if (load.box)
                    if (const auto box = boxes.find(load.box->number); box != boxes.end()) {
                        frames.name = box->second.mark.empty()
                                          ? "#" + std::to_string(load.box->number)
                                          : box->second.mark;
                        frames.stack = box->second.stack;
                    }
                frames.kind = load.frameKind;
                frames.kindName = kindName(load.frameKind);
                frames.frames = load.frames.value();
                frames.faults = load.faults;
                frames.stale = load.stale;
                frames.staleWhy = load.staleWhy;
                row.frames += frames.frames;
                row.loads.push_back(std::move(frames));
            }
            const double stays =
                round.hours ? static_cast<double>(round.hours->value()) : m_lane.hours;
            row.due = round.in + days(static_cast<int>((stays + 23) / 24));
            if (round.inAt)
                row.dueAt =
                    *round.inAt + std::chrono::seconds(static_cast<std::int64_t>(stays * 3600));
            row.proof = coldProof(m_file, round);
            (round.out ? m_lane.done : m_lane.in).push_back(std::move(row));
        }
        const auto byDay = [](const FreezerRoundRow& a, const FreezerRoundRow& b) {
            return a.round.in < b.round.in;
        };
        std::stable_sort(m_lane.done.begin(), m_lane.done.end(), byDay);
        std::stable_sort(m_lane.in.begin(), m_lane.in.end(), byDay);
    }

    void plan() {
        std::vector<FreezerFrames> planned;
        const auto known = [&](const Equipment& freezer) {
            if (freezer.litres) return true;
            const auto rows = machineRows(m_file, freezer.item, freezer.name);
            return std::any_of(rows.begin(), rows.end(),
                               [](const Equipment& row) { return row.holds.has_value(); });
        };
        // The first freezer that somebody measured or counted; with none nothing is planned.
        for (const Equipment& freezer : m_lane.freezers) {
            if (m_lane.freezer && known(*m_lane.freezer)) break;
            m_lane.freezer = freezer;
        }
        std::map<std::int64_t, std::int64_t> holds;
        for (const FreezerFrames& each : m_lane.waiting) {
            if (holds.contains(each.kind.number)) continue;
            holds[each.kind.number] = 0;
            const auto kind = m_kinds.find(each.kind.number);
            const auto room = m_lane.freezer && kind != m_kinds.end()
                                  ? freezerRoom(m_file, *m_lane.freezer, kind->second, m_lane.on)
                                  : std::nullopt;
            if (room && room->holds > 0) {
                holds[each.kind.number] = room->holds;
                m_lane.rooms.push_back(*room);
            } else {
                m_lane.noRoomKnown.push_back(each.kindName);
            }
        }
        for (const FreezerFrames& each : m_lane.waiting)
            if (holds[each.kind.number] > 0) planned.push_back(each);
        Day from = m_lane.on;
        for (const FreezerRoundRow& row : m_lane.in)
            if (m_lane.freezer && row.round.freezer == m_lane.freezer->id && row.due)
                from = std::max(from, *row.due);
        m_lane.next = planOf(planned, holds, from, false);
        FreezerPlan shared = planOf(planned, holds, from, true);
        if (shared.rounds.size() < m_lane.next.rounds.size()) m_lane.shared = std::move(shared);
    }

    FreezerPlan planOf(const std::vector<FreezerFrames>& queue,
                       const std::map<std::int64_t, std::int64_t>& holds, Day from,
                       bool mix) const {
        std::vector<FreezerBatch> batches;
        for (const FreezerFrames& each : queue) {
            const std::string kind = std::to_string(each.kind.number);
            if (batches.empty() || batches.back().kind != kind)
                batches.push_back({kind, 0, holds.at(each.kind.number), false});
            batches.back().frames += each.frames;
        }
        FreezerPlan plan;
        const auto rounds = planFreezer(batches, m_lane.hours, from, mix, &plan.working);
        if (!rounds) return plan;
        std::vector<FreezerFrames> left = queue;
        for (const PlannedRound& round : *rounds) {
            FreezerNext next{round.in, round.out, {}};
            for (const auto& share : round.frames) take(left, share.kind, share.count, next.loads);
            plan.lastOut = round.out;
            plan.rounds.push_back(std::move(next));
        }
        return plan;
    }

    /// The next so many frames of a kind out of the queue.
    static void take(std::vector<FreezerFrames>& left, const std::string& kind, std::int64_t many,
                     std::vector<FreezerFrames>& into) {
        for (FreezerFrames& each : left) {
            if (many == 0) return;
            if (each.frames == 0 || std::to_string(each.kind.number) != kind) continue;
            FreezerFrames part = each;
            part.frames = std::min(each.frames, many);
            each.frames -= part.frames;
            many -= part.frames;
            into.push_back(std::move(part));
        }
    }

    const Read& m_file;
    FreezerLane m_lane;
    std::map<std::int64_t, FrameKind> m_kinds;
    std::set<std::int64_t> m_deadStands;  ///< hives whose last colony ended
};

}  // namespace

ColdProof coldProof(const Read& file, const FreezerRound& round) {
    ColdProof proof;
    proof.temperatureC = constantOr(file, "freezer_temperature_c", {}, round.in, usualFreezerC);
    proof.assumed = true;
    if (round.temperature) {
        proof.temperatureC = round.temperature->celsius();
        proof.assumed = false;
        proof.measured = round.measured.value_or(false);
    } else if (const auto freezer = file.find(round.freezer); freezer && freezer->coldest) {
        // What it can do was measured once; of this round nobody measured anything.
        proof.temperatureC = freezer->coldest->celsius();
        proof.byFreezer = true;
    }
    proof.stayedHours =
        hoursInside(round, constantOr(file, "freezer_hours", {}, round.in, usualFreezerHours));
    const CombPack pack =
        round.packed.value_or(false) ? CombPack::PackedBox : CombPack::SingleFrames;
    note(&proof.working, "temperature_c", proof.temperatureC, "°C",
         proof.measured    ? "measured inside"
         : !proof.assumed  ? "what the dial said"
         : proof.byFreezer ? "what the freezer can do; nobody measured this round"
                           : "nobody said; the usual of a freezer");
    const auto stay = freezerStay(pack, proof.temperatureC, usualStartC, &proof.working);
    if (!stay) {
        proof.doubt = ColdDoubt::TooWarm;
        return proof;
    }
    proof.lagHours = stay->lagHours;
    proof.killHours = stay->killHours;
    proof.coreC = stay->coreC;
    if (proof.stayedHours)
        proof.doubt =
            *proof.stayedHours >= stay->hours() ? ColdDoubt::None : ColdDoubt::NotLongEnough;
    return proof;
}

std::optional<FreezerRoom> freezerRoom(const Read& file, const Equipment& freezer,
                                       const FrameKind& kind, Day on) {
    FreezerRoom room{kind.id, kind.name.text()};
    const double each = litresOf(file, kind, on);
    auto own = holdingOf(file, freezer, kind.id);
    if (!own) own = holdingOf(file, freezer, std::nullopt);
    if (own) {
        room.holds = own->holds->value();
        room.counted = true;
        note(&room.working, "freezer_holds", static_cast<double>(room.holds), "",
             "the keeper's own count");
        return room;
    }
    for (const Equipment& row : machineRows(file, freezer.item, freezer.name)) {
        if (!row.holds) continue;
        room.holds = row.holds->value();
        const auto counted = file.find(row.frameKind);
        const double countedLitres = counted ? litresOf(file, *counted, on) : 0;
        if (countedLitres <= 0 || each <= 0) return std::nullopt;
        const auto fit = freezerHolds(static_cast<double>(room.holds) * countedLitres, each, 1);
        if (!fit) return std::nullopt;
        note(&room.working, "each_litres", each, "L");
        note(&room.working, "freezer_holds", static_cast<double>(*fit), "",
             "the keeper's count of another kind, by the room its frames take");
        room.holds = *fit;
        return room;
    }
    if (!freezer.litres) return std::nullopt;
    const auto fit = freezerHolds(static_cast<double>(freezer.litres->value()), each,
                                  constantOr(file, "freezer_fill_share", {}, on, freezerFillShare),
                                  &room.working);
    if (!fit) return std::nullopt;
    room.holds = *fit;
    return room;
}

std::optional<Count> freezerHolding(const Read& file, const Equipment& freezer,
                                    std::optional<Id<FrameKind>> kind) {
    const auto row = holdingOf(file, freezer, kind);
    return row ? row->holds : std::nullopt;
}

bool waitsForCold(const ShelfFrame& frame) {
    if (frame.held || frame.load || frame.frozen) return false;
    if (frame.frame.verdict == Verdict::Freeze) return true;
    const bool kept = frame.use == FrameUse::Drawn || frame.use == FrameUse::Unknown;
    return kept && frame.comb() && frame.food != MothFood::None;
}

std::int64_t framesIn(const std::vector<FreezerFrames>& loads) {
    std::int64_t sum = 0;
    for (const FreezerFrames& each : loads) sum += each.frames;
    return sum;
}

std::int64_t FreezerNext::frames() const { return framesIn(loads); }
std::int64_t FreezerLane::waitingFrames() const { return framesIn(waiting); }

FreezerLane freezerLane(const Read& file, Day on) {
    return freezerLane(file, on, shelfComb(file, on));
}

FreezerLane freezerLane(const Read& file, Day on, const std::vector<ShelfBox>& comb) {
    return Lane(file, on).gathered(comb);
}

}  // namespace combwright
