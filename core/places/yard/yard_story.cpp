#include "core/places/yard/yard_story.h"

#include <algorithm>
#include <set>
#include <tuple>

#include "core/model/honey/pull.h"
#include "core/model/storeroom/dead_out.h"
#include "core/places/honey_room/run_balance.h"
#include "core/places/yard/line_revisions.h"
#include "core/places/yard/queens.h"
#include "core/storage/queries/hive_days.h"
#include "core/storage/queries/names.h"
#include "core/storage/queries/queens.h"
#include "core/storage/queries/runs.h"
#include "core/storage/queries/treatments.h"
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
        case What::Weighed:
        case What::Found:
        case What::MedicineOut:
        case What::MedicineIn:
        case What::ProjectOn:
        case What::ProjectOff:
        case What::Photographed:
            return 6;
        case What::HeldBack:
            return 7;
        case What::Planned:
            return 8;
        case What::Honey:
            return 9;
        case What::HoldLifted:
            return 10;
        case What::SplitOff:
        case What::SwarmCaught:
        case What::Joined:
            return 11;
        case What::QueenWent:
            return 12;
        case What::QueenCame:
            return 13;
        case What::QueenWaitOver:
            return 14;
        case What::QueenWait:
            return 15;
        case What::ColonyWent:
            return 16;
        case What::HiveMoved:
        case What::Relabelled:
            return 17;
        case What::ColonyEnded:
            return 18;
    }
    return lastRank;
}

/// Gathers the entries of one hive; each of its functions reads one kind of record.
class StoryTeller {
  public:
    StoryTeller(const Read& file, Id<Hive> hive, Day until)
        : m_file(file), m_hive(hive), m_until(until), m_lived(colonyStaysIn(file, hive)) {
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
        tellWeighings();
        tellFindings();
        tellTreatments();
        tellProjects();
        tellHolds();
        tellColonies();
        tellStands();
        tellPhotos();
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
        auto anew = linesWrittenAnew(m_file, m_hive);
        for (const DatedInspection& each : inspectionsOf(m_file, m_hive)) {
            const auto visit = m_file.find(each.inspection.visit);
            StoryEntry& entry = add(What::Look, each.on);
            entry.was = std::move(anew[each.inspection.id.number]);
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
        const auto other = [&](const std::optional<Id<Hive>>& id, Day on) {
            return id ? calledThen(*id, on) : std::string();
        };
        for (const BoxMove& move : m_file.where<BoxMove>({is("to_hive", m_hive)})) {
            if (move.inspection || move.fromHive == m_hive) continue;
            const bool began = !move.fromPlace && hive && move.on == hive->since;
            entryFor(began ? What::Began : What::BoxesOn, move, move.fromPlace,
                     other(move.fromHive, move.on))
                .boxes.push_back(withCounts(move.box, move.on));
        }
        for (const BoxMove& move : m_file.where<BoxMove>({is("from_hive", m_hive)})) {
            if (move.inspection || move.toHive == m_hive) continue;
            entryFor(What::BoxesOff, move, move.toPlace, other(move.toHive, move.on))
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
            entry.fedAs = feeding.kind;
            entry.packs = feeding.packs;
            entry.note = feeding.note;
        }
    }

    void tellWeighings() {
        for (const HiveWeighing& weighing : m_file.where<HiveWeighing>({is("hive", m_hive)}))
            if (!weighing.inspection) add(What::Weighed, weighing.on).weighing = weighing;
    }

    void tellFindings() {
        for (const Finding& finding : m_file.where<Finding>({is("hive", m_hive)})) {
            if (finding.inspection) continue;
            StoryEntry& entry = add(What::Found, finding.on);
            entry.sample = sampleOf(m_file, finding);
            if (finding.box) entry.boxes.push_back(named(*finding.box));
        }
    }

    void tellTreatments() {
        for (const Treatment& treatment : treatmentsOf(m_file, m_hive)) {
            const auto medicine = m_file.find(treatment.medicine);
            const auto tell = [&](What what, Day on) {
                StoryEntry& entry = add(what, on);
                entry.treatment = treatment;
                entry.medicine = medicine;
            };
            tell(What::MedicineIn, treatment.on);
            if (treatment.out) tell(What::MedicineOut, *treatment.out);
        }
    }

    void tellProjects() {
        for (const HiveProject& project : m_file.where<HiveProject>({is("hive", m_hive)})) {
            if (project.putOn) add(What::ProjectOn, *project.putOn).project = project;
            if (project.off) add(What::ProjectOff, *project.off).project = project;
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
        for (const ColonyStay& stay : m_lived)
            for (const Hold& hold : m_file.where<Hold>({is("colony", stay.colony.id)}))
                if (during(stay, hold.since)) tellHold(hold, {});
        for (const std::int64_t number : m_boxes)
            for (const Hold& hold : m_file.where<Hold>({is("box", Id<Box>{number})}))
                if (stoodHere(Id<Box>{number}, hold.since)) tellHold(hold, {named({number})});
    }

    /// Told of this stand: a colony that moved on has the rest of its story elsewhere. What is held
    /// or found once it ended belongs to where it ended.
    static bool during(const ColonyStay& stay, Day on) {
        return on >= stay.from && (!stay.to || on <= *stay.to || stay.to == stay.colony.ended);
    }

    std::string calledThen(Id<Hive> hive, Day on) const { return calledOn(m_file, hive, on); }
    std::string hiveOf(Id<Colony> id, Day on) const {
        const auto colony = m_file.find(id);
        return colony ? calledThen(hiveOfColony(m_file, *colony, on), on) : std::string();
    }

    void tellColonies() {
        std::optional<Day> endedBefore;
        for (const ColonyStay& stay : m_lived) {
            const Colony& colony = stay.colony;
            const bool began = stay.from == colony.since && firstStay(stay);
            StoryEntry& came = add(What::ColonyCame, stay.from);
            // Bees that came the day others went came into the empty hive.
            if (endedBefore == stay.from) m_story.back().rank = lastRank;
            endedBefore = stay.to;
            came.origin = colony.origin;
            if (colony.mother) came.mother = hiveOf(*colony.mother, colony.since);
            if (!began) {
                const auto move = moveOf(stay.colony.id, stay.from, &ColonyMove::toHive);
                came.otherHive = move ? calledThen(move->fromHive, move->on) : std::string();
                came.fromNucleus = move && outOfNucleus(*move);
            }
            tellKin(stay);
            tellQueens(stay);
            if (!stay.to) continue;
            if (stay.to != colony.ended || stay.hive != colony.hive) {
                StoryEntry& went = add(What::ColonyWent, *stay.to);
                const auto move = moveOf(stay.colony.id, *stay.to, &ColonyMove::fromHive);
                went.otherHive = move ? calledThen(move->toHive, move->on) : std::string();
                went.fromNucleus = move && outOfNucleus(*move);
                continue;
            }
            StoryEntry& ended = add(What::ColonyEnded, *colony.ended);
            ended.ending = colony.ending;
            ended.note = colony.note;
            if (colony.unitedInto) ended.otherHive = hiveOf(*colony.unitedInto, *colony.ended);
            for (const DeadOut& said : m_file.where<DeadOut>({is("colony", colony.id)}))
                if (said.on <= m_until && !said.cause.empty()) ended.cause = said.cause;
        }
    }

    bool firstStay(const ColonyStay& stay) const {
        return colonyStaysOf(m_file, stay.colony).front().hive == stay.hive;
    }
    /// A colony's move of that day to or from this stand.
    std::optional<ColonyMove> moveOf(Id<Colony> colony, Day on, Id<Hive> ColonyMove::*here) const {
        for (ColonyMove& move : m_file.where<ColonyMove>({is("colony", colony)}))
            if (move.*here == m_hive && move.on == on) return std::move(move);
        return std::nullopt;
    }
    /// Whether a nucleus became a full hive by it: what stood under the bees was a nucleus box, and
    /// is none on the new stand.
    bool outOfNucleus(const ColonyMove& move) const {
        const auto bottom = [&](Id<Hive> id, Day on) -> std::optional<BoxKind> {
            const auto hive = m_file.find(id);
            const auto boxes = hive ? standingOn(m_file, *hive, on).boxes : std::vector<Box>();
            return boxes.empty() ? std::nullopt : m_file.find(boxes.front().kind);
        };
        auto before = bottom(move.fromHive, move.on - days(1));
        if (!before) before = bottom(move.fromHive, move.on);
        const auto after = bottom(move.toHive, move.on);
        return before && after && isNucleusBox(*before) && !isNucleusBox(*after);
    }

    /// Daughters split off or swarmed while it lived here, and who was united with it.
    void tellKin(const ColonyStay& stay) {
        for (const Colony& each : m_file.where<Colony>({is("mother", stay.colony.id)})) {
            if (!during(stay, each.since)) continue;
            const What what = each.origin == Origin::Swarm ? What::SwarmCaught : What::SplitOff;
            add(what, each.since).otherHive = hiveOf(each.id, each.since);
        }
        for (const Colony& each : m_file.where<Colony>({is("united_into", stay.colony.id)}))
            if (each.ended && during(stay, *each.ended))
                add(What::Joined, *each.ended).otherHive = calledThen(each.hive, *each.ended);
    }

    void tellQueens(const ColonyStay& lived) {
        for (const QueenStay& stay : m_file.where<QueenStay>({is("colony", lived.colony.id)})) {
            const auto queen = m_file.find(stay.queen);
            // One met only as she went has no coming to tell.
            if (during(lived, stay.since) && stay.until != stay.since) {
                StoryEntry& came = add(What::QueenCame, stay.since);
                came.queen = queen;
                if (queen) came.colour = colourOf(m_file, *queen, stay.since);
            }
            // She who ends with her colony is told with it.
            if (!stay.until || stay.left == QueenLeft::WithColony) continue;
            if (!during(lived, *stay.until)) continue;
            StoryEntry& went = add(What::QueenWent, *stay.until);
            went.queen = queen;
            if (queen) went.colour = colourOf(m_file, *queen, *stay.until);
            went.queenLeft = stay.left;
            for (const QueenStay& next : m_file.where<QueenStay>({is("queen", stay.queen)}))
                if (next.since == *stay.until && next.colony != stay.colony)
                    went.otherHive = hiveOf(next.colony, next.since);
        }
        for (const QueenWait& wait : m_file.where<QueenWait>({is("colony", lived.colony.id)})) {
            if (!during(lived, wait.on)) continue;
            StoryEntry& begun = add(What::QueenWait, wait.on);
            begun.step = wait.step;
            begun.note = wait.note;
            if (!wait.over || lived.colony.ended == wait.over) continue;
            add(What::QueenWaitOver, *wait.over).step = wait.step;
        }
    }

    void tellStands() {
        for (const HiveMove& move : m_file.where<HiveMove>({is("hive", m_hive)})) {
            if (move.fromYard != move.toYard)
                add(What::HiveMoved, move.on).otherYard =
                    nameOf(m_file, Yard::table, move.fromYard.number);
            if (move.fromMark != move.toMark)
                add(What::Relabelled, move.on).otherHive = move.fromMark.text();
        }
    }

    void tellPhotos() {
        for (const Photo& photo : m_file.where<Photo>({is("hive", m_hive)}))
            add(What::Photographed, photo.on).photo = photo;
    }

    const Read& m_file;
    Id<Hive> m_hive;
    Day m_until;
    std::vector<ColonyStay> m_lived;
    std::set<std::int64_t> m_boxes;  ///< every box that ever stood here
    std::vector<Told> m_story;
};

}  // namespace

std::vector<StoryEntry> hiveStory(const Read& file, Id<Hive> hive, Day until) {
    const OneState still(file);
    return StoryTeller(file, hive, until).told();
}

HiveHead hiveHead(const Read& file, Id<Hive> hive, Day on) {
    HiveHead head;
    if (const auto now = file.find(hive)) {
        const Hive then = asItWas(file, *now, on);
        head.mark = then.mark.text();
        head.yard = nameOf(file, Yard::table, then.yard.number);
    }
    const auto living = colonyLivingOn(file, hive, on);
    if (!living) return head;
    head.colony = living->colony;
    if (const auto mother = file.find(head.colony->mother))
        head.mother =
            calledOn(file, hiveOfColony(file, *mother, head.colony->since), head.colony->since);
    // A look at the stand it lived on before was a look at it.
    Day known = living->colony.since;
    if (const auto stay = queenStayOn(file, head.colony->id, on)) {
        head.queen = file.find(stay->queen);
        head.queenSince = stay->since;
        if (head.queen) head.colour = colourOf(file, *head.queen, on);
        if (head.queen) head.queenMother = file.find(head.queen->mother);
        known = std::max(known, stay->since);
    } else {
        for (const QueenStay& left : file.where<QueenStay>({is("colony", head.colony->id)}))
            if (left.until && *left.until <= on) {
                head.queenLeft = left;
                known = std::max(known, *left.until);
            }
    }
    lookBackAtColony(file, hive, on, [&](const DatedInspection& each) {
        if (each.on < known) return false;
        if (each.inspection.seen.queenSeen == true) head.queenSeen = each.on;
        return !head.queenSeen.has_value();
    });
    if (const auto stand = file.find(hive))
        if (const auto waiting = waitingFor(file, *stand, on))
            head.lookFrom = waiting->dates.lookFrom;
    return head;
}

}  // namespace combwright
