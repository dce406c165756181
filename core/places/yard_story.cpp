#include "core/places/yard_story.h"

#include <algorithm>
#include <set>
#include <tuple>

#include "core/model/honey/pull.h"
#include "core/places/run_balance.h"
#include "core/storage/queries/names.h"
#include "core/storage/queries/runs.h"
#include "core/storage/queries/yards.h"
#include "core/words/shorthand.h"

namespace combwright {
namespace {

using What = StoryEntry::What;

/// An entry and where it stands within its day. Boxes that came and went are told in the order they
/// were written down, which is known; of the other kinds as such a day goes: a hive is set up
/// before bees come to live in it, opened before it is fed, and empty when all is told.
struct Told {
    StoryEntry entry;
    int rank = 0;
    std::int64_t record = 0;  ///< the first move of what was moved
};

constexpr int movesRank = 3;
constexpr int lastRank = 20;

int rankOf(What what) {
    switch (what) {
        case What::Began:
            return 0;
        case What::ColonyCame:
            return 1;
        case What::Look:
            return 2;
        case What::BoxesOn:
        case What::BoxesOff:
            return movesRank;
        case What::BoxLooked:
            return 4;
        case What::BoxCounted:
            return 5;
        case What::Fed:
            return 6;
        case What::HeldBack:
            return 7;
        case What::Planned:
            return 8;
        case What::Honey:
            return 9;
        case What::HoldLifted:
            return 10;
        case What::ColonyEnded:
            return 11;
    }
    return lastRank;
}

/// Gathers the entries of one hive; each of its functions reads one kind of record.
class StoryTeller {
  public:
    StoryTeller(const Read& file, Id<Hive> hive, Day until)
        : m_file(file), m_hive(hive), m_until(until) {
        for (const BoxMove& move : file.where<BoxMove>({is("to_hive", hive)}))
            m_boxes.insert(move.box.number);
    }

    std::vector<StoryEntry> told() {
        tellLooks();
        tellMoves();
        tellBoxes();
        tellPlans();
        tellRuns();
        tellFeedings();
        tellHolds();
        tellColonies();
        std::erase_if(m_story, [&](const Told& told) { return told.entry.on > m_until; });
        // Within a day the newest stands first too: each kind was told in the order it was written.
        std::reverse(m_story.begin(), m_story.end());
        std::stable_sort(m_story.begin(), m_story.end(), [](const Told& a, const Told& b) {
            return std::tuple(a.entry.on, a.rank, a.record) >
                   std::tuple(b.entry.on, b.rank, b.record);
        });
        std::vector<StoryEntry> story;
        for (Told& told : m_story) story.push_back(std::move(told.entry));
        return story;
    }

  private:
    StoryEntry& add(What what, Day on) {
        return m_story.emplace_back(Told{StoryEntry{what, on}, rankOf(what)}).entry;
    }

    StoryBox named(Id<Box> id) const {
        const auto box = m_file.find(id);
        const auto kind = box ? m_file.find(box->kind) : std::nullopt;
        return {box ? box->mark : std::string(), kind ? kind->name.text() : std::string(), {}};
    }
    /// A box with what was counted in it up to that day.
    StoryBox withCounts(Id<Box> id, Day on) const {
        StoryBox box = named(id);
        std::optional<Day> newest;
        for (const BoxCount& count : m_file.where<BoxCount>({is("box", id)})) {
            if (count.on > on || (newest && count.on < *newest)) continue;
            if (newest != count.on) box.counts.clear();
            newest = count.on;
            box.counts.push_back(count);
        }
        return box;
    }
    bool stoodHere(Id<Box> box, Day on) const { return hiveThatFilled(m_file, box, on) == m_hive; }

    void tellLooks() {
        for (const DatedInspection& each : inspectionsOf(m_file, m_hive)) {
            const auto visit = m_file.find(each.inspection.visit);
            StoryEntry& entry = add(What::Look, each.on);
            entry.line = readShorthand(visit ? visit->all : std::string(), each.inspection.line);
            entry.line.seen = each.inspection.seen;
            entry.looked = each.inspection.seen.looked;
            // Boxes a line moved are named with it: the line itself says only how many.
            for (const BoxMove& move :
                 m_file.where<BoxMove>({is("inspection", each.inspection.id)})) {
                if (move.toHive == m_hive) entry.boxes.push_back(named(move.box));
                if (move.fromHive == m_hive) entry.left.push_back(named(move.box));
                if (m_story.back().rank == movesRank) continue;
                m_story.back().rank = movesRank;
                m_story.back().record = move.id.number;
            }
        }
    }

    /// Boxes that came from or went to the same place on one day are told together.
    StoryEntry& entryFor(What what, const BoxMove& move, std::optional<BoxPlace> place,
                         const std::string& otherHive) {
        for (Told& told : m_story)
            if (told.entry.what == what && told.entry.on == move.on && told.entry.place == place &&
                told.entry.otherHive == otherHive)
                return told.entry;
        StoryEntry& entry = add(what, move.on);
        m_story.back().record = move.id.number;
        entry.place = place;
        entry.otherHive = otherHive;
        return entry;
    }

    void tellMoves() {
        const auto hive = m_file.find(m_hive);
        const auto other = [&](const std::optional<Id<Hive>>& id) {
            return id ? nameOf(m_file, Hive::table, id->number) : std::string();
        };
        for (const BoxMove& move : m_file.where<BoxMove>({is("to_hive", m_hive)})) {
            if (move.inspection || move.fromHive == m_hive) continue;
            const bool began = !move.fromPlace && hive && move.on == hive->since;
            entryFor(began ? What::Began : What::BoxesOn, move, move.fromPlace,
                     other(move.fromHive))
                .boxes.push_back(withCounts(move.box, move.on));
        }
        for (const BoxMove& move : m_file.where<BoxMove>({is("from_hive", m_hive)})) {
            if (move.inspection || move.toHive == m_hive) continue;
            entryFor(What::BoxesOff, move, move.toPlace, other(move.toHive))
                .boxes.push_back(named(move.box));
        }
    }

    void tellBoxes() {
        for (const std::int64_t number : m_boxes) {
            const Id<Box> id{number};
            for (const BoxLook& look : m_file.where<BoxLook>({is("box", id)})) {
                if (!stoodHere(id, look.on)) continue;
                StoryEntry& entry = add(What::BoxLooked, look.on);
                entry.boxes.push_back(named(id));
                entry.look = look;
            }
            std::map<Day, std::vector<BoxCount>> byDay;
            for (const BoxCount& count : m_file.where<BoxCount>({is("box", id)}))
                if (count.occasion != Occasion::Added && stoodHere(id, count.on))
                    byDay[count.on].push_back(count);
            for (auto& [on, counts] : byDay) {
                StoryEntry& entry = add(What::BoxCounted, on);
                entry.boxes.push_back(named(id));
                entry.boxes.back().counts = std::move(counts);
            }
        }
    }

    void tellPlans() {
        std::map<std::int64_t, std::size_t> byPlan;
        for (const PullLine& line : m_file.where<PullLine>({is("hive", m_hive)})) {
            const auto plan = m_file.find(line.plan);
            if (!plan) continue;
            if (!byPlan.contains(plan->id.number)) {
                byPlan[plan->id.number] = m_story.size();
                add(What::Planned, plan->on).forDay = plan->forDay;
            }
            StoryEntry& entry = m_story[byPlan[plan->id.number]].entry;
            (line.verdict == PullVerdict::Take ? entry.boxes : entry.left)
                .push_back(named(line.box));
        }
    }

    void tellRuns() {
        std::set<std::int64_t> runs;
        for (const ExtractionBox& box : m_file.where<ExtractionBox>({is("hive", m_hive)}))
            runs.insert(box.extraction.number);
        for (const std::int64_t number : runs) {
            const auto run = m_file.find(Id<Extraction>{number});
            if (!run) continue;
            StoryEntry& entry = add(What::Honey, run->on);
            entry.run = run->name.text();
            for (const ExtractionBox& box :
                 m_file.where<ExtractionBox>({is("extraction", run->id), is("hive", m_hive)}))
                entry.boxes.push_back(box.box ? named(*box.box) : StoryBox{box.knownAs, {}, {}});
            const auto balance = runBalance(m_file, run->id);
            if (!balance) continue;
            for (const RunShare& share : balance->shares)
                if (share.hive == m_hive) {
                    entry.honey = share.mass;
                    entry.how = share.how;
                }
        }
    }

    void tellFeedings() {
        // What a line of the sheet fed stands in that line's sentence already.
        for (const Feeding& feeding : m_file.where<Feeding>({is("hive", m_hive)})) {
            if (feeding.inspection) continue;
            StoryEntry& entry = add(What::Fed, feeding.on);
            entry.fed = feeding.given;
            entry.note = feeding.note;
        }
    }

    void tellHold(const Hold& hold, std::vector<StoryBox> boxes) {
        StoryEntry& held = add(What::HeldBack, hold.since);
        held.why = hold.why;
        held.note = hold.note;
        held.boxes = boxes;
        if (!hold.lifted) return;
        StoryEntry& lifted = add(What::HoldLifted, *hold.lifted);
        lifted.why = hold.why;
        lifted.note = hold.grounds;
        lifted.by = hold.liftedBy;
        lifted.boxes = std::move(boxes);
    }

    void tellHolds() {
        for (const Colony& colony : m_file.where<Colony>({is("hive", m_hive)}))
            for (const Hold& hold : m_file.where<Hold>({is("colony", colony.id)}))
                tellHold(hold, {});
        for (const std::int64_t number : m_boxes)
            for (const Hold& hold : m_file.where<Hold>({is("box", Id<Box>{number})}))
                if (stoodHere(Id<Box>{number}, hold.since)) tellHold(hold, {named({number})});
    }

    void tellColonies() {
        std::optional<Day> endedBefore;
        for (const Colony& colony : m_file.where<Colony>({is("hive", m_hive)})) {
            StoryEntry& came = add(What::ColonyCame, colony.since);
            // Bees that came the day others went came into the empty hive.
            if (endedBefore == colony.since) m_story.back().rank = lastRank;
            endedBefore = colony.ended;
            came.origin = colony.origin;
            if (const auto mother = m_file.find(colony.mother))
                came.mother = nameOf(m_file, Hive::table, mother->hive.number);
            if (!colony.ended) continue;
            add(What::ColonyEnded, *colony.ended).ending = colony.ending;
        }
    }

    const Read& m_file;
    Id<Hive> m_hive;
    Day m_until;
    std::set<std::int64_t> m_boxes;  ///< every box that ever stood here
    std::vector<Told> m_story;
};

}  // namespace

std::vector<StoryEntry> hiveStory(const Read& file, Id<Hive> hive, Day until) {
    return StoryTeller(file, hive, until).told();
}

HiveHead hiveHead(const Read& file, Id<Hive> hive, Day on) {
    HiveHead head;
    head.colony = colonyIn(file, hive);
    if (!head.colony) return head;
    if (const auto mother = file.find(head.colony->mother))
        head.mother = nameOf(file, Hive::table, mother->hive.number);
    for (const DatedInspection& each : inspectionsOf(file, hive, on + days(1)))
        if (each.inspection.seen.queenSeen == true && each.on >= head.colony->since) {
            head.queenSeen = each.on;
            break;
        }
    return head;
}

}  // namespace combwright
