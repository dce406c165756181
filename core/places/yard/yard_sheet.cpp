#include "core/places/yard/yard_sheet.h"

#include <algorithm>
#include <cstdlib>

#include "core/catalogue/constants.h"
#include "core/model/yard/due.h"
#include "core/places/health/mites.h"
#include "core/places/health/treatments.h"
#include "core/places/yard/queens.h"
#include "core/storage/queries/constants.h"
#include "core/storage/queries/hive_days.h"
#include "core/storage/queries/queens.h"
#include "core/words/shorthand.h"

namespace combwright {
namespace {

/// How far from the same day a year ago a look may lie to be shown beside this one.
constexpr int aboutNow = 10;

bool some(const std::optional<Known<Count>>& cells) {
    return cells && cells->value && cells->value->value() > 0;
}

/// Only the keeper knows: cells that were seen may all have been cut.
bool cellWasLeft(const Seen& seen) { return some(seen.cellsLeft); }

/// So long cells stand where the hive was opened again and nobody said what became of them: a
/// queen of the youngest is out after 13 days and laying a week later. Common practice, no source.
constexpr int cellsStandDays = 21;
/// The same for no eggs. Common practice, no source.
constexpr int noEggsStandDays = 60;

/// The looks that opened the hive, newest first. The newest holds until it is opened again.
bool stillHolds(const std::vector<DatedInspection>& looks, const DatedInspection& look, int stands,
                Day on) {
    return &look == &looks.front() || look.on + days(stands) >= on;
}

/// Cells stand until a look says what became of them.
std::optional<Mind> cellsMind(const std::vector<DatedInspection>& looks, Day on) {
    for (const DatedInspection& look : looks) {
        const Seen& seen = look.inspection.seen;
        if (seen.cellsLeft || !stillHolds(looks, look, cellsStandDays, on)) return std::nullopt;
        if (!seen.queenCells) continue;
        if (!some(seen.queenCells)) return std::nullopt;
        Mind mind{MindKind::CellsSeen, look.on};
        mind.cells = seen.queenCells;
        mind.cellState = seen.cellState;
        return mind;
    }
    return std::nullopt;
}

bool noFrames(const std::optional<Known<Frames>>& frames) {
    return frames && frames->value && frames->value->count() == 0 && !frames->to;
}

/// No eggs stands until somebody sees eggs, young brood or the queen, or puts one in.
std::optional<Mind> noEggsMind(const Read& file, const std::vector<DatedInspection>& looks,
                               const std::optional<Id<Colony>>& colony, Day on) {
    for (const DatedInspection& look : looks) {
        const Seen& seen = look.inspection.seen;
        if (!stillHolds(looks, look, noEggsStandDays, on)) return std::nullopt;
        if (seen.eggs == true || seen.openBrood == true || seen.queenSeen == true ||
            cellWasLeft(seen))
            return std::nullopt;
        if (seen.eggs != false) continue;
        if (colony)
            for (const QueenStay& stay : file.where<QueenStay>({is("colony", *colony)}))
                if (look.on <= stay.since && stay.since <= on) return std::nullopt;
        Mind mind{MindKind::NoEggs, look.on};
        mind.noBrood =
            noFrames(seen.brood) || (seen.openBrood == false && seen.cappedBrood == false);
        return mind;
    }
    return std::nullopt;
}

std::optional<Mind> queenMind(const Read& file, const YardSheetRow& row, Day on) {
    // Where nobody wrote down who lives there, a cell that was left is waited for all the same.
    const auto waiting = row.lives ? row.lives->waiting : waitingFor(file, row.hive, on);
    if (!waiting) return std::nullopt;
    Mind mind{MindKind::QueenWait, waiting->since};
    mind.queen = waiting->dates;
    mind.step = waiting->step;
    return mind;
}

bool quietedFor(const Read& file, DueRule rule, const Hive& hive, Day on) {
    const auto all = file.where<Quiet>({is("rule", rule)});
    return std::any_of(all.begin(), all.end(), [&](const Quiet& each) {
        const bool inForce = each.since <= on && (!each.until || on <= *each.until);
        return inForce && (each.hive ? each.hive == hive.id : each.yard == hive.yard);
    });
}

Mind mindOf(const MiteSample& sample, const HiveMites& mites) {
    Mind mind{MindKind::Mites, sample.finding.on};
    mind.mites = sample.finding.mites;
    mind.bees = sample.finding.bees;
    mind.method = sample.finding.method;
    mind.droneCells = sample.finding.cells;
    if (sample.finding.daysOnBoard)
        mind.count = static_cast<int>(sample.finding.daysOnBoard->value());
    if (sample.rate) mind.mitesPer100 = sample.rate->per100;
    if (mites.standsBy)
        mind.linePer100 = mites.standsBy->per100;
    else if (mites.line)
        mind.linePer100 = mites.line->per100;
    return mind;
}

/// What was counted: over the line until it is answered (treated, sampled again, quieted); the rest
/// since the hive was opened last, of each way of counting the newest.
std::vector<Mind> mitesMinds(const Read& file, const YardSheetRow& row, std::optional<Day> opened,
                             Day on) {
    std::vector<Mind> minds;
    const auto mites = mitesOf(file, row.hive.id, on);
    if (!mites) return minds;
    const auto stands = [&](const MiteSample& each) {
        return each.finding.on + days(miteFindingStandsDays) >= on;
    };
    const bool answered = mites->treatedSince || quietedFor(file, DueRule::Treat, row.hive, on);
    const bool over =
        mites->standing == HiveMites::Standing::At || mites->standing == HiveMites::Standing::Over;
    std::optional<Id<Finding>> told;
    const auto tell = [&](const MiteSample& each) {
        Mind mind = mindOf(each, *mites);
        mind.kind = MindKind::MitesOver;
        mind.supersOn = row.supersNow > 0;
        minds.push_back(std::move(mind));
        told = each.finding.id;
    };
    if (mites->board && !answered && stands(*mites->board))
        tell(*mites->board);
    else if (mites->sample && over && !answered && stands(*mites->sample))
        tell(*mites->sample);
    const auto onBees = [](FindingMethod method) {
        return method == FindingMethod::Wash || method == FindingMethod::SugarRoll;
    };
    for (const FindingMethod way :
         {FindingMethod::Wash, FindingMethod::Board, FindingMethod::DroneBrood}) {
        const auto newest =
            std::find_if(mites->samples.begin(), mites->samples.end(), [&](const MiteSample& each) {
                const FindingMethod method = each.finding.method;
                return method == way || (way == FindingMethod::Wash && onBees(method));
            });
        if (newest == mites->samples.end() || newest->finding.id == told) continue;
        const Finding& finding = newest->finding;
        if ((opened && finding.on < *opened) || !finding.mites || !finding.mites->value) continue;
        minds.push_back(mindOf(*newest, *mites));
    }
    return minds;
}

/// What a medicine asks to be kept in mind: when it comes out, and that supers must wait.
std::optional<Mind> medicineMind(const Read& file, Id<Hive> hive, Day on) {
    const auto back = supersBackOf(file, hive, on);
    if (back && back->line.treatment.out && *back->line.treatment.out <= on) {
        Mind mind{MindKind::SupersNotYet, *back->line.treatment.out};
        mind.about = back->line.medicine.name.text();
        mind.from = back->from;
        return mind;
    }
    for (const TreatmentLine& line : runningIn(file, hive, on)) {
        Mind mind{MindKind::MedicineIn, line.treatment.on};
        mind.about = line.medicine.name.text();
        if (line.dueOut) {
            mind.from = line.dueOut->from;
            mind.to = line.dueOut->to;
        }
        return mind;
    }
    return std::nullopt;
}

/// The lines since the hive was last opened, that one too, newest first. Hefting it and making up
/// one's mind to come back need no opening.
std::vector<DatedInspection> linesSinceOpened(const Read& file, const YardSheetRow& row, Day on) {
    std::vector<DatedInspection> lines;
    if (row.today) lines.push_back({on, *row.today});
    const auto opened = [&] {
        return !lines.empty() && lines.back().inspection.seen.looked == Looked::Opened;
    };
    if (opened()) return lines;
    lookBackAtColony(file, row.hive.id, on, [&](DatedInspection& each) {
        if (each.on == on) return true;  // that is the row's own line
        lines.push_back(std::move(each));
        return !opened();
    });
    return lines;
}

/// The looks that opened the hive since the colony that lives there came, newest first: the newest,
/// and those before it that may still hold.
std::vector<DatedInspection> looksOfColony(const Read& file, const YardSheetRow& row, Day on) {
    std::vector<DatedInspection> looks;
    lookBackAtColony(file, row.hive.id, on, [&](DatedInspection& each) {
        const bool tooOld = each.on + days(std::max(cellsStandDays, noEggsStandDays)) < on;
        if (tooOld && !looks.empty()) return false;
        if (each.inspection.seen.looked == Looked::Opened) looks.push_back(std::move(each));
        return true;
    });
    return looks;
}

std::vector<Mind> mindsOf(const Read& file, const YardSheetRow& row, Day on) {
    std::vector<Mind> minds;
    if (row.foundDead) {
        minds.push_back({MindKind::FoundDead, *row.foundDead});
        return minds;
    }
    // A hive of a keeper who writes no colonies down is not called empty.
    if (!row.lives && !colonyStaysIn(file, row.hive.id).empty())
        minds.push_back({MindKind::NobodyLives, on});
    const bool openedToday = row.today && row.today->seen.looked == Looked::Opened;
    if (row.today && !openedToday)
        minds.push_back({MindKind::NotOpened, row.last ? row.last->on : on});
    // Until the hive was opened again what was seen last still holds.
    const auto opened = openedToday ? std::optional(on)
                        : row.last  ? std::optional(row.last->on)
                                    : std::nullopt;
    const auto waiting = queenMind(file, row, on);
    if (waiting) minds.push_back(*waiting);
    const auto looks = looksOfColony(file, row, on);
    if (const auto mind = cellsMind(looks, on)) minds.push_back(*mind);
    if (const auto mind = noEggsMind(
            file, looks, row.lives ? std::optional(row.lives->colony.id) : std::nullopt, on))
        minds.push_back(*mind);
    for (Mind& mind : mitesMinds(file, row, opened, on)) minds.push_back(std::move(mind));
    const auto lines = linesSinceOpened(file, row, on);
    const auto hefted = std::find_if(lines.begin(), lines.end(), [](const DatedInspection& each) {
        return each.inspection.seen.heft.has_value();
    });
    if (hefted != lines.end() && hefted->inspection.seen.heft == Heft::Light)
        minds.push_back({MindKind::Light, hefted->on});
    const auto back = std::find_if(lines.begin(), lines.end(), [](const DatedInspection& each) {
        return each.inspection.seen.comeBack.value_or(false);
    });
    if (back != lines.end()) minds.push_back({MindKind::ComeBack, back->on});
    if (const auto mind = medicineMind(file, row.hive.id, on)) minds.push_back(*mind);
    // Supers go on with the hive unopened too.
    for (const DatedInspection& each : lines) {
        if (openedToday || each.on == on) continue;
        const SheetLine then = readShorthand(each.inspection.line);
        if (!then.supersOn) continue;
        Mind mind{MindKind::SuperOn, each.on};
        mind.count = static_cast<int>(then.supersOn->value());
        minds.push_back(mind);
        break;
    }
    return minds;
}

/// Whether a box came to a hive on a day; the boxes a hive is set up with are not put on.
bool putOnThatDay(const Read& file, const Box& box, const Hive& hive, Day on) {
    const auto moves =
        file.where<BoxMove>({is("box", box.id), is("to_hive", hive.id), is("on_day", on)});
    return std::any_of(moves.begin(), moves.end(), [&](const BoxMove& move) {
        const bool setUp = !move.fromPlace && !move.inspection && move.on == hive.since;
        return move.fromHive != hive.id && !setUp;
    });
}

/// Looks come newest first, so the first that says anything is kept.
template <class T>
void keepNewest(std::optional<LastKnown<T>>& known, const std::optional<T>& seen, Day on) {
    if (!known && seen) known = LastKnown<T>{on, *seen};
}

bool waits(const YardSheetRow& row) {
    return std::any_of(row.minds.begin(), row.minds.end(),
                       [](const Mind& mind) { return mind.kind == MindKind::QueenWait; });
}

/// Since when. That nobody wrote a queen down is not "no queen".
std::optional<Day> lostItsQueen(const Read& file, Id<Colony> colony, Day on) {
    if (queenStayOn(file, colony, on)) return std::nullopt;
    std::optional<Day> since;
    for (const QueenStay& stay : file.where<QueenStay>({is("colony", colony)}))
        if (stay.until && *stay.until <= on)
            since = std::max(since.value_or(*stay.until), *stay.until);
    return since;
}

YardSheetRow rowOf(const Read& file, const Yard& yard, const Hive& hive,
                   const std::optional<Visit>& visit, Day on) {
    YardSheetRow row;
    row.hive = hive;
    Standing standing = standingOn(file, hive, on);
    row.boxes = std::move(standing.boxes);
    row.hive.excluderAbove = standing.excluderAbove;
    const auto supers = supersOn(row.hive, row.boxes);
    row.supersNow = static_cast<std::int64_t>(supers.size());
    row.supersBefore = row.supersNow;
    row.supersPutOn = std::count_if(supers.begin(), supers.end(), [&](const Box& box) {
        return putOnThatDay(file, box, hive, on);
    });
    const Day yearAgo = on - days(365);
    const auto away = [yearAgo](Day day) { return std::abs((day - yearAgo).count()); };
    for (DatedInspection& each :
         inspectionsBetween(file, hive.id, yearAgo - days(aboutNow), yearAgo + days(aboutNow)))
        if (!row.lastYear || away(each.on) < away(row.lastYear->on)) row.lastYear = std::move(each);
    // What was seen last goes with the colony; another's before it on this stand says nothing.
    lookBackAtColony(file, hive.id, on, [&row, on](DatedInspection& each) {
        if (each.on == on || each.inspection.seen.looked != Looked::Opened) return true;
        keepNewest(row.lastEggs, each.inspection.seen.eggs, each.on);
        keepNewest(row.lastBrood, each.inspection.seen.brood, each.on);
        keepNewest(row.lastStores, each.inspection.seen.stores, each.on);
        if (!row.last) row.last = std::move(each);
        return !row.lastEggs || !row.lastBrood || !row.lastStores;
    });
    if (visit) row.today = inspectionOf(file, visit->id, hive.id);
    if (row.today) {
        row.line = readShorthand(visit->all, row.today->line);
        for (const BoxMove& move : file.where<BoxMove>({is("inspection", row.today->id)})) {
            if (move.toHive == hive.id) --row.supersBefore;
            if (move.fromHive == hive.id) ++row.supersBefore;
        }
    }
    row.lives = headedIn(file, yard, hive, on);
    row.foundDead = foundDeadOn(file, hive.id, on);
    row.minds = mindsOf(file, row, on);
    if (row.lives && !row.foundDead && !waits(row))
        row.queenlessSince = lostItsQueen(file, row.lives->colony.id, on);
    return row;
}

void addTo(std::optional<MeanOf>& mean, const std::optional<Known<Frames>>& reading) {
    const auto middle = reading ? reading->middle() : std::nullopt;
    if (!middle) return;
    if (!mean) mean = MeanOf{};
    mean->value += *middle / 10.0;
    mean->n += 1;
    mean->how = weaker(mean->how, reading->how);
}

void countRow(YardSheet& sheet, const YardSheetRow& row) {
    sheet.supersStanding += row.supersNow;
    sheet.supersPutOn += row.supersPutOn;
    if (row.lives && !row.foundDead) {
        ++sheet.colonies;
        if (waits(row)) ++sheet.waiting;
        if (row.queenlessSince) ++sheet.queenless;
    }
    if (!row.today) return;
    const Seen& seen = row.today->seen;
    if (seen.looked != Looked::Opened) {
        ++sheet.notOpened;
        auto& whys = sheet.whyNotOpened;
        if (!seen.note.empty() && std::find(whys.begin(), whys.end(), seen.note) == whys.end())
            whys.push_back(seen.note);
        return;
    }
    ++sheet.opened;
    addTo(sheet.brood, seen.brood);
    addTo(sheet.stores, seen.stores);
}

/// Boxes of a kind left at the end of the day. One that was put on without its mark, because all
/// that stood there are elsewhere by now, was one of them.
std::int64_t leftInStore(const Read& file, Id<BoxKind> kind, const std::optional<Visit>& visit,
                         Day on) {
    auto left = static_cast<std::int64_t>(boxesReadyOn(file, kind, on).size());
    if (!visit) return left;
    for (const Inspection& each : file.where<Inspection>({is("visit", visit->id)}))
        for (const BoxMove& move : file.where<BoxMove>({is("inspection", each.id)})) {
            const auto box = file.find(move.box);
            if (!move.fromPlace && box && box->kind == kind) --left;
        }
    return std::max<std::int64_t>(left, 0);
}

/// What a wait for a young queen asks for next time: leave shut, or a frame with eggs.
std::optional<TakeAlong::What> askedByQueen(const QueenDates& dates, Day on) {
    if (on <= dates.doNotOpenUntil) return TakeAlong::What::LeaveShut;
    if (on + days(7) >= dates.testFrameFrom) return TakeAlong::What::EggFrame;
    return std::nullopt;
}

std::vector<TakeAlong> takeAlongOf(const std::vector<YardSheetRow>& rows, Day on) {
    using What = TakeAlong::What;
    std::vector<TakeAlong> list;
    const auto add = [&list](What what, const Hive& hive) {
        auto found = std::find_if(list.begin(), list.end(),
                                  [&](const TakeAlong& each) { return each.what == what; });
        if (found == list.end()) found = list.insert(list.end(), TakeAlong{what, 0, {}});
        ++found->count;
        found->hives.push_back(hive.mark.text());
    };
    for (const YardSheetRow& row : rows)
        for (const Mind& mind : row.minds) {
            if (mind.kind == MindKind::Light) add(What::Feed, row.hive);
            if (mind.kind == MindKind::MitesOver) {
                add(What::WashJar, row.hive);
                add(What::TreatmentDecision, row.hive);
            }
            const bool waited =
                std::any_of(row.minds.begin(), row.minds.end(),
                            [](const Mind& other) { return other.kind == MindKind::QueenWait; });
            if (mind.kind == MindKind::NoEggs && !waited) add(What::EggFrame, row.hive);
            if (mind.kind == MindKind::QueenWait)
                if (const auto asked = askedByQueen(*mind.queen, on)) add(*asked, row.hive);
        }
    std::stable_sort(list.begin(), list.end(),
                     [](const TakeAlong& a, const TakeAlong& b) { return a.what < b.what; });
    return list;
}

/// What the rows come to.
void sumUp(YardSheet& sheet) {
    sheet.colonies = sheet.queenless = sheet.waiting = sheet.opened = sheet.notOpened = 0;
    sheet.supersStanding = sheet.supersPutOn = 0;
    sheet.whyNotOpened.clear();
    sheet.brood.reset();
    sheet.stores.reset();
    for (const YardSheetRow& row : sheet.rows) countRow(sheet, row);
    for (std::optional<MeanOf>* mean : {&sheet.brood, &sheet.stores})
        if (*mean) (*mean)->value /= (*mean)->n;
    sheet.takeAlong = takeAlongOf(sheet.rows, sheet.on);
}

}  // namespace

std::string visitCode(Id<Yard> yard, Day day) {
    const std::string iso = isoText(day);
    return "Y" + std::to_string(yard.number) + "-" + iso.substr(2, 2) + iso.substr(5, 2) +
           iso.substr(8, 2);
}

std::optional<VisitMeant> visitOfCode(std::string_view code) {
    const std::size_t dash = code.find('-');
    if (code.empty() || (code.front() != 'Y' && code.front() != 'y') || dash < 2 || dash > 9 ||
        code.size() != dash + 7)
        return std::nullopt;
    std::int64_t number = 0;
    for (const char c : code.substr(1, dash - 1)) {
        if (c < '0' || c > '9') return std::nullopt;
        number = 10 * number + (c - '0');
    }
    const std::string_view day = code.substr(dash + 1);
    const auto on = parseDay("20" + std::string(day.substr(0, 2)) + "-" +
                             std::string(day.substr(2, 2)) + "-" + std::string(day.substr(4, 2)));
    if (!on) return std::nullopt;
    return VisitMeant{Id<Yard>{number}, *on};
}

/// A cell counts as capped on the sheet's word; without a word the safer, later case of an open
/// one.
QueenEvent cellEvent(const Seen& seen) {
    return seen.cellState == CellState::Capped ? QueenEvent::CellSealed : QueenEvent::CellOpen;
}

QueenPatience patienceOn(const Read& file, Id<Yard> yard, Day on) {
    QueenPatience patience;
    patience.look = static_cast<int>(constantOr(file, "look_after_days", yard, on, patience.look));
    patience.testFrame =
        static_cast<int>(constantOr(file, "test_frame_after_days", yard, on, patience.testFrame));
    patience.act = static_cast<int>(constantOr(file, "act_after_days", yard, on, patience.act));
    return patience;
}

YardSheet yardSheet(const Read& file, Id<Yard> id, Day on) {
    const OneState still(file);
    YardSheet sheet;
    sheet.on = on;
    const auto yard = file.find(id);
    if (!yard) return sheet;
    sheet.yard = *yard;
    sheet.visit = visitOn(file, id, on);
    if (const auto before = newestVisit(file, id, on - days(1))) sheet.lastVisit = before->on;
    // On a day before it was set up there is no stand to draw, not an empty one.
    for (const Hive& hive : openHives(file, id))
        if (on < hive.since) ++sheet.youngerHives;
    for (const Hive& hive : hivesOn(file, id, on)) {
        // A hive closed since stood there still.
        if (hive.closed && *hive.closed <= on) continue;
        sheet.rows.push_back(rowOf(file, *yard, hive, sheet.visit, on));
    }
    if (const auto kind = file.find(yard->usualSuper)) {
        sheet.supersInStore = leftInStore(file, kind->id, sheet.visit, on);
        sheet.superName = kind->name.text();
    }
    sumUp(sheet);
    return sheet;
}

bool readHiveAnew(const Read& file, YardSheet& sheet, Id<Hive> id) {
    const auto row = std::find_if(sheet.rows.begin(), sheet.rows.end(),
                                  [&](const YardSheetRow& each) { return each.hive.id == id; });
    const auto hive = file.find(id);
    if (row == sheet.rows.end() || !hive) return false;
    const OneState still(file);
    sheet.visit = visitOn(file, sheet.yard.id, sheet.on);
    auto fresh = rowOf(file, sheet.yard, asItWas(file, *hive, sheet.on), sheet.visit, sheet.on);
    const bool boxesMoved = fresh.boxes.size() != row->boxes.size() ||
                            !std::equal(fresh.boxes.begin(), fresh.boxes.end(), row->boxes.begin(),
                                        [](const Box& a, const Box& b) { return a.id == b.id; });
    *row = std::move(fresh);
    if (boxesMoved && sheet.supersInStore)
        sheet.supersInStore = leftInStore(file, *sheet.yard.usualSuper, sheet.visit, sheet.on);
    sumUp(sheet);
    return true;
}

}  // namespace combwright
