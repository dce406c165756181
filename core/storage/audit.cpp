#include "core/storage/audit.h"

#include <map>
#include <set>

#include "core/model/frames/frame.h"
#include "core/model/honey/room.h"
#include "core/model/honey/telling.h"
#include "core/model/photos/photo.h"
#include "core/model/storeroom/review.h"
#include "core/model/yard/queen.h"
#include "core/storage/journal.h"
#include "core/storage/pictures.h"
#include "core/storage/queries/goods_shelf.h"
#include "core/storage/queries/hive_days.h"
#include "core/storage/queries/names.h"
#include "core/storage/queries/vessel_books.h"
#include "core/storage/queries/wax_ledger.h"
#include "core/storage/queries/yards.h"
#include "core/storage/sqlite/pages_checked.h"
#include "core/storage/sqlite/storage_error.h"

namespace combwright {
namespace {

void demandWhole(const Database& database) {
    const std::string said = pagesChecked(database, "PRAGMA integrity_check(1)");
    if (said != "ok")
        throw StorageError(Trouble::Damaged, database.path(),
                           "its pages do not fit together · " + said);
    Statement references = database.prepare("PRAGMA foreign_key_check");
    if (references.run().next())
        throw StorageError(Trouble::Damaged, database.path(),
                           "a reference leads nowhere · " + references.text(0));
}

void auditHives(const Read& file, std::vector<AuditFinding>& findings) {
    for (const Yard& yard : openYards(file)) {
        std::set<std::string> marks;
        std::int64_t order = 0;
        for (const Hive& hive : openHives(file, yard.id)) {
            const std::string about = "hive " + hive.mark.text();
            if (!marks.insert(hive.mark.text()).second)
                findings.push_back({about, "its mark stands twice in yard " + yard.name.text()});
            if (hive.standOrder.value() != ++order)
                findings.push_back(
                    {about, "its place in walking order is not " + std::to_string(order)});
            std::int64_t level = 0;
            for (const Box& box : boxesOn(file, hive.id))
                if (!box.level || box.level->value() != level++)
                    findings.push_back({about, "its boxes do not count up from the floor"});
            if (file.where<Colony>({is("hive", hive.id), isUnknown("ended")}).size() > 1)
                findings.push_back({about, "two colonies live in it"});
        }
    }
    std::set<std::string> names;
    for (const Yard& yard : openYards(file))
        if (!names.insert(yard.name.text()).second)
            findings.push_back({"yard " + yard.name.text(), "its name stands twice"});
}

/// What is written down of moves leads to where things are now, and no day contradicts another.
void auditMoves(const Read& file, std::vector<AuditFinding>& findings) {
    for (const auto& [number, moves] : hiveMovesByHive(file)) {
        const auto hive = file.find(Id<Hive>{number});
        const std::string about = "hive " + nameOf(file, Hive::table, number);
        for (std::size_t i = 0; i < moves.size(); ++i) {
            const bool last = i + 1 == moves.size();
            const Id<Yard> yard = last ? hive->yard : moves[i + 1].fromYard;
            const Name mark = last ? hive->mark : moves[i + 1].fromMark;
            if (moves[i].toYard != yard || moves[i].toMark != mark)
                findings.push_back(
                    {about, "it is not where its move of " + isoText(moves[i].on) + " left it"});
            if (!last && moves[i].on > moves[i + 1].on)
                findings.push_back({about, "its moves are not in the order of their days"});
        }
    }
    std::map<std::int64_t, std::vector<ColonyStay>> byHive;
    std::optional<Id<Colony>> colony;
    for (const ColonyStay& stay : allColonyStays(file)) {
        const std::string about = "colony #" + std::to_string(stay.colony.id.number);
        if (stay.to && *stay.to < stay.from)
            findings.push_back({about, "it left a hive before it came"});
        for (const ColonyStay& other : byHive[stay.hive.number])
            if (!(stay.to && *stay.to <= other.from) && !(other.to && *other.to <= stay.from))
                findings.push_back({about, "another lived in its hive at the same time"});
        byHive[stay.hive.number].push_back(stay);
        const auto moves = file.where<ColonyMove>({is("colony", stay.colony.id)});
        if (colony != stay.colony.id && !moves.empty() && moves.back().toHive != stay.colony.hive)
            findings.push_back({about, "it is not where its last move left it"});
        colony = stay.colony.id;
    }
}

void auditQueens(const Read& file, std::vector<AuditFinding>& findings) {
    std::set<std::int64_t> headed;
    std::set<std::int64_t> heading;
    for (const QueenStay& stay : file.all<QueenStay>()) {
        const std::string about = "queen #" + std::to_string(stay.queen.number);
        const auto colony = file.find(stay.colony);
        if (stay.until && *stay.until < stay.since)
            findings.push_back({about, "she left a colony before she came"});
        if (stay.left && !stay.until)
            findings.push_back({about, "how she left and the day do not go together"});
        if (colony && stay.since < colony->since)
            findings.push_back({about, "she was there before her colony"});
        if (stay.until) continue;
        if (colony && colony->ended) findings.push_back({about, "she outlived her colony"});
        if (!headed.insert(stay.colony.number).second)
            findings.push_back({about, "another heads her colony"});
        if (!heading.insert(stay.queen.number).second)
            findings.push_back({about, "she heads two colonies"});
    }
    std::set<std::int64_t> waiting;
    for (const QueenWait& wait : file.all<QueenWait>()) {
        const std::string about = "young queen waited for #" + std::to_string(wait.id.number);
        if (wait.over && *wait.over < wait.on)
            findings.push_back({about, "it was over before it began"});
        if (wait.colony && !wait.over && !waiting.insert(wait.colony->number).second)
            findings.push_back({about, "the colony waits twice"});
    }
}

void auditBoxes(const Read& file, std::vector<AuditFinding>& findings) {
    std::map<std::int64_t, BoxMove> last;
    for (const BoxMove& move : file.all<BoxMove>()) {
        const auto before = last.find(move.box.number);
        if (before != last.end() && move.on < before->second.on)
            findings.push_back({"box " + nameOf(file, Box::table, move.box.number),
                                "its moves are not in the order of their days: on " +
                                    isoText(move.on) + " it stood in two places"});
        last[move.box.number] = move;
    }
    std::set<std::string> marks;
    for (const Box& box : file.all<Box>()) {
        const std::string about = "box " + nameOf(file, Box::table, box.id.number);
        const auto move = last.find(box.id.number);
        if (move == last.end())
            findings.push_back({about, "nothing says how it came here"});
        else if (move->second.toPlace != box.place || move->second.toHive != box.hive ||
                 move->second.toStack != box.stack)
            findings.push_back({about, "it is not where its last move left it"});
        if (inUse(box) && !box.mark.empty() && !marks.insert(box.mark).second)
            findings.push_back({about, "its mark is painted on two boxes"});
        if ((box.place == BoxPlace::OnHive) != box.level.has_value())
            findings.push_back({about, "a box on a hive needs a level, another must have none"});
    }
}

void auditFrames(const Read& file, std::vector<AuditFinding>& findings) {
    std::map<std::int64_t, std::set<std::int64_t>> places;
    for (const Frame& frame : file.all<Frame>()) {
        const std::string about = "frame #" + std::to_string(frame.id.number);
        if (frame.retired.has_value() != frame.retiredOn.has_value())
            findings.push_back({about, "out of use and its day do not go together"});
        if (frame.box && !frame.stack.empty())
            findings.push_back({about, "it is in a box and on a shelf"});
        if (frame.position && !frame.box)
            findings.push_back({about, "it has a place, but is in no box"});
        if (frame.retired || !frame.position || !frame.box) continue;
        if (!places[frame.box->number].insert(frame.position->value()).second)
            findings.push_back({about, "another frame has its place in the box"});
    }
}

void auditReviews(const Read& file, std::vector<AuditFinding>& findings) {
    std::set<std::pair<std::int64_t, Day>> seen;
    for (const BoxReview& review : file.all<BoxReview>()) {
        const std::string about = "look at the bench #" + std::to_string(review.id.number);
        if (!seen.emplace(review.box.number, review.on).second)
            findings.push_back({about, "the box was looked through twice on that day"});
        Count counted;
        for (const BoxCount& count :
             file.where<BoxCount>({is("box", review.box), is("on_day", review.on),
                                   is("occasion", Occasion::WinterReview)}))
            counted += count.frames;
        if (counted != review.found)
            findings.push_back({about, "its frames by class do not add up to what was found"});
    }
}

void auditRoom(const Read& file, std::vector<AuditFinding>& findings) {
    std::set<Day> logged;
    for (const RoomDay& each : file.all<RoomDay>())
        if (!logged.insert(each.on).second)
            findings.push_back({"honey room " + isoText(each.on), "the day is logged twice"});
    for (const SetAside& each : file.all<SetAside>()) {
        const std::string about = "frames set aside #" + std::to_string(each.id.number);
        if (each.became.has_value() != each.becameOn.has_value())
            findings.push_back({about, "what became of them and its day do not go together"});
        const auto run = file.find(each.extraction);
        if (run && run->closed && !each.became)
            findings.push_back({about, "their run is closed, and nothing became of them"});
    }
    std::set<std::pair<std::int64_t, std::int64_t>> hung;
    for (const SlotFrame& each : file.all<SlotFrame>())
        if (!hung.emplace(each.load.number, each.slot.value()).second)
            findings.push_back({"load #" + std::to_string(each.load.number),
                                "two frames hang in slot " + std::to_string(each.slot.value())});
}

void auditPegs(const Read& file, std::vector<AuditFinding>& findings) {
    const auto pegs = file.all<Peg>();
    for (std::size_t i = 0; i < pegs.size(); ++i)
        for (std::size_t j = 0; j < i; ++j) {
            const Peg& first = pegs[i].on < pegs[j].on ? pegs[i] : pegs[j];
            const Peg& second = pegs[i].on < pegs[j].on ? pegs[j] : pegs[i];
            const std::string about = nameOf(file, Peg::table, second.id.number);
            if (first.number == second.number && (!first.off || second.on <= *first.off))
                findings.push_back({about, "it is on two boxes on " + isoText(second.on)});
            if (first.box && first.box == second.box && (!first.off || second.on < *first.off))
                findings.push_back({about, "its box carries another peg too"});
        }
}

void auditBoards(const Read& file, std::vector<AuditFinding>& findings) {
    for (const ClearerBoard& board : file.all<ClearerBoard>())
        for (const ClearerBoard& other : file.where<ClearerBoard>({is("hive", board.hive)}))
            if (other.id.number < board.id.number && (!other.off || board.on < *other.off) &&
                (!board.off || other.on < *board.off))
                findings.push_back({"hive " + nameOf(file, Hive::table, board.hive.number),
                                    "two clearer boards are in it"});
}

/// Exactly one vessel is named, and none gave more honey than came into it.
void auditVessels(const Read& file, std::vector<AuditFinding>& findings) {
    const auto one = [&](const auto& record, const std::optional<Id<Lot>>& lot) {
        if (record.bucket.has_value() == lot.has_value())
            findings.push_back({std::string(record.table) + " #" + std::to_string(record.id.number),
                                "it does not name exactly one bucket or lot"});
    };
    for (const LotPart& each : file.all<LotPart>()) {
        one(each, each.from);
        if (each.mass <= Mass())
            findings.push_back(
                {"part of a lot #" + std::to_string(each.id.number), "it weighs nothing, or less"});
        if (each.from == each.lot)
            findings.push_back(
                {"part of a lot #" + std::to_string(each.id.number), "the lot went into itself"});
    }
    for (const WaterReading& each : file.all<WaterReading>()) one(each, each.lot);
    for (const HoneyStep& each : file.all<HoneyStep>()) one(each, each.lot);
    for (const HoneyLeft& each : file.all<HoneyLeft>()) one(each, each.lot);
    std::set<std::string> lots;
    for (const Lot& lot : file.all<Lot>())
        if (!lots.insert(lot.name.text()).second)
            findings.push_back({"lot " + lot.name.text(), "its name stands twice"});
    const auto vessels = allVessels(file);
    const VesselBooks books(file, vessels);
    for (const Vessel& vessel : vessels) {
        const VesselLedger ledger = books.ledger(vessel, lastOfAllDays);
        for (const VesselEntry& entry : ledger.entries) {
            if (entry.left && *entry.left < Mass())
                findings.push_back(
                    {nameOf(file, vessel),
                     "more honey was taken out than was in it, " + isoText(entry.on)});
            if (entry.on < ledger.since)
                findings.push_back(
                    {nameOf(file, vessel),
                     "honey was taken out before it was there, " + isoText(entry.on)});
        }
    }
}

/// Never more jars went out than there were, each filling is of one vessel, each code on its own.
void auditGoods(const Read& file, std::vector<AuditFinding>& findings) {
    for (const GoodsKind& kind : file.all<GoodsKind>()) {
        if (const auto lacks = goodsShort(file, kind.id))
            findings.push_back({"goods " + kind.name.text(),
                                "on " + isoText(lacks->on) + " more went out than there were"});
        if (cameBackTooMany(file, kind.id) > 0)
            findings.push_back({"goods " + kind.name.text(), "more came back than went out"});
    }
    std::set<std::string> codes;
    for (const Bottling& each : file.all<Bottling>()) {
        const std::string about = "filling " + each.code.text();
        if (each.bucket.has_value() == each.lot.has_value())
            findings.push_back({about, "it is of no honey, or of two"});
        if (!codes.insert(each.code.text()).second)
            findings.push_back({about, "its code stands on another filling too"});
    }
    for (const GoingOut& each : file.all<GoingOut>())
        if (each.kind.has_value() + each.bucket.has_value() + each.lot.has_value() != 1)
            findings.push_back({"gone out #" + std::to_string(each.id.number),
                                "it is of no goods and no honey, or of two"});
    for (const PackingStock& each : file.all<PackingStock>())
        if (each.kind.has_value() == !each.lid.empty())
            findings.push_back({"jars or lids #" + std::to_string(each.id.number),
                                "it is neither jars nor lids, or both"});
    for (const FairLine& each : file.all<FairLine>()) {
        const auto fair = file.find(each.fair);
        const std::string about = "fair " + (fair ? fair->name.text() : std::string());
        if (fair && fair->closed && !each.home)
            findings.push_back({about, "it is over, and nobody counted what came home"});
        if (soldOf(each).value_or(0) < 0)
            findings.push_back({about, "more came home than was packed"});
    }
}

/// A flower stands on labels on the keeper's own statement only.
void auditLabels(const Read& file, std::vector<AuditFinding>& findings) {
    for (const LabelText& each : file.all<LabelText>())
        if (!each.flower.empty() && each.flowerGrounds.empty())
            findings.push_back(
                {"labels since " + isoText(each.since),
                 "they name a flower, " + each.flower + ", and nobody stated why they may"});
}

/// Pours an evening of one cavity at most, as the action that pours has it.
constexpr std::int64_t mostPoursOfCavity = 50;

std::int64_t piecesPoured(const Pour& pour) {
    const auto many = [](const std::optional<Count>& count) { return count ? count->value() : 0; };
    return pour.good.value() + many(pour.failed) + many(pour.seconds);
}

/// Wax is kept like money: nothing comes out that did not go in.
void auditWax(const Read& file, std::vector<AuditFinding>& findings) {
    const Day ever = *parseDay("9999-12-31");
    for (const BlockLedger& each : blockLedgers(file, ever)) {
        const std::string about = "block " + each.block.name.text();
        const auto most = atMost(each.block.mass);
        if (most && each.used > *most)
            findings.push_back({about, "more was taken from it than it weighed"});
        for (const WaxUse& use : each.uses) {
            if (use.on < each.block.on)
                findings.push_back({about, "wax was taken from it before it was there"});
            if ((use.went == WaxWent::Poured) != use.pour.has_value())
                findings.push_back({about, "wax was poured without a pour, or the other way"});
        }
    }
    for (const BatchLedger& each : batchLedgers(file, ever))
        if (each.in && each.clean > *each.in)
            findings.push_back(
                {"wax batch " + each.batch.name.text(), "it gave more than went into it"});
    for (const PropolisMove& each : file.all<PropolisMove>())
        if (propolisLeft(file, each.on) < 0)
            findings.push_back({"propolis " + isoText(each.on), "more went than there was"});
    for (const Pour& each : file.all<Pour>()) {
        const auto mould = file.find(each.mould);
        const std::string about = "pour #" + std::to_string(each.id.number);
        if (!mould || piecesPoured(each) < 1 ||
            piecesPoured(each) > mould->cavities.value() * mostPoursOfCavity)
            findings.push_back({about, "its pieces do not fit the cavities of its mould"});
        if (!file.first<WaxUse>({is("pour", each.id)}))
            findings.push_back({about, "no wax was taken for it"});
    }
    for (const HiveProject& each : file.all<HiveProject>())
        if (each.good && *each.good > each.pieces)
            findings.push_back({"comb " + each.name.text(), "more are good than there are"});
}

/// What wax is of, when the pot was on, and comb jars step by step.
void auditWaxWork(const Read& file, std::vector<AuditFinding>& findings) {
    for (const BatchLedger& each : batchLedgers(file, *parseDay("9999-12-31"))) {
        const std::string about = "wax batch " + each.batch.name.text();
        if (const auto above = stepAboveBatch(each))
            findings.push_back(
                {about, "a step of " + isoText(above->step.on) + " had more of it than there was"});
        for (const WaxSource& source : each.sources)
            if (source.run && each.batch.source == RawWaxSource::OldComb)
                findings.push_back({about, "it is old comb, and cappings of a run"});
        for (const WaxBlock& block : each.blocks)
            if (!block.supplier.empty())
                findings.push_back(
                    {"block " + block.name.text(), "it was cast of a batch, and bought"});
    }
    for (const HeatSession& each : file.all<HeatSession>())
        if (!isAboutDay(each.begun, each.on))
            findings.push_back(
                {"heat of " + each.what.text(), "it was heated on another day than its"});
    for (const Pour& each : file.all<Pour>()) {
        const std::string about = "pour #" + std::to_string(each.id.number);
        if (each.at && !isAboutDay(*each.at, each.on))
            findings.push_back({about, "it was poured on another day than its"});
        if (each.returned && each.returned->value &&
            *each.returned->value > waxPoured(file, each.id))
            findings.push_back({about, "more wax came back of it than was poured"});
    }
    for (const HiveProject& each : file.all<HiveProject>()) {
        const std::string about = "comb " + each.name.text();
        if ((each.lidded && !each.off) || (each.off && !each.putOn))
            findings.push_back({about, "a step that comes before is missing"});
        std::optional<Day> before;
        for (const auto& step : {each.starter, each.putOn, each.off, each.lidded}) {
            if (step && before && *step < *before)
                findings.push_back({about, "its steps are not in the order of their days"});
            if (step) before = step;
        }
    }
}

/// Every link has its picture, and every picture is what it was.
void auditPhotos(const Read& file, std::vector<AuditFinding>& findings) {
    for (const PictureFault& fault : pictureFaults(file.database())) {
        std::string about = "picture " + fault.digest.substr(0, 12);
        for (const Photo& photo : file.where<Photo>({is("digest", fault.digest)}))
            about = "photo " + photo.name.text() + " of " + isoText(photo.on);
        findings.push_back({about, fault.isMissing ? "its picture is not in the file"
                                                   : "its picture is not what it was"});
    }
}

}  // namespace

std::vector<AuditFinding> audit(const Read& file) {
    demandWhole(file.database());
    std::vector<AuditFinding> findings;
    auditHives(file, findings);
    auditMoves(file, findings);
    auditQueens(file, findings);
    auditBoxes(file, findings);
    auditFrames(file, findings);
    auditReviews(file, findings);
    auditRoom(file, findings);
    auditPegs(file, findings);
    auditBoards(file, findings);
    auditVessels(file, findings);
    auditGoods(file, findings);
    auditLabels(file, findings);
    auditWax(file, findings);
    auditWaxWork(file, findings);
    auditPhotos(file, findings);
    if (const auto broken = Journal(file.database()).firstBroken())
        findings.push_back({"journal " + std::to_string(*broken),
                            "its digest does not follow from the rows before: it was altered"});
    return findings;
}

}  // namespace combwright
