#include "core/places/yard_sheet.h"

#include <algorithm>
#include <cstdlib>

#include "core/catalogue/constants.h"
#include "core/places/queens.h"
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

std::optional<Mind> cellsMind(const Seen& seen, Day on) {
    if (seen.cellsLeft || !some(seen.queenCells)) return std::nullopt;
    Mind mind{MindKind::CellsSeen, on};
    mind.cells = seen.queenCells;
    mind.cellState = seen.cellState;
    return mind;
}

/// By a cell a look left, or by what was written down of the wait itself.
std::optional<Mind> queenMind(const Read& file, const Hive& hive, Day on) {
    const auto waiting = waitingFor(file, hive, on);
    if (!waiting) return std::nullopt;
    Mind mind{MindKind::QueenWait, waiting->since};
    mind.queen = waiting->dates;
    mind.step = waiting->step;
    return mind;
}

std::optional<Mind> washMind(const Read& file, Id<Yard> yard, const Finding& finding,
                             bool supersOn) {
    if (!finding.mites || !finding.mites->value) return std::nullopt;
    Mind mind{MindKind::Mites, finding.on};
    mind.mites = finding.mites;
    mind.bees = finding.bees;
    mind.supersOn = supersOn;
    const auto bees = finding.bees ? finding.bees->middle() : std::nullopt;
    if (bees && *bees > 0) {
        mind.mitesPer100 = 100.0 * *finding.mites->middle() / *bees;
        const double line = constantOr(file, "mite_line_per_100", yard, finding.on, 2.0);
        if (*mind.mitesPer100 >= line) mind.kind = MindKind::MitesOver;
    }
    return mind;
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
    for (DatedInspection& each : inspectionsOf(file, row.hive.id, on)) {
        lines.push_back(std::move(each));
        if (opened()) break;
    }
    return lines;
}

std::vector<Mind> mindsOf(const Read& file, const Yard& yard, const YardSheetRow& row, Day on) {
    std::vector<Mind> minds;
    const bool openedToday = row.today && row.today->seen.looked == Looked::Opened;
    if (row.today && !openedToday)
        minds.push_back({MindKind::NotOpened, row.last ? row.last->on : on});
    if (const auto mind = queenMind(file, row.hive, on)) minds.push_back(*mind);
    // Until the hive was opened again what was seen last still holds.
    const auto opened = openedToday ? std::optional(DatedInspection{on, *row.today}) : row.last;
    if (opened) {
        const Seen& seen = opened->inspection.seen;
        if (const auto mind = cellsMind(seen, opened->on)) minds.push_back(*mind);
        if (seen.eggs == false && !cellWasLeft(seen))
            minds.push_back({MindKind::NoEggs, opened->on});
        for (const Finding& finding :
             file.where<Finding>({is("inspection", opened->inspection.id)}))
            if (const auto mind = washMind(file, yard.id, finding, row.supersNow > 0))
                minds.push_back(*mind);
    }
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
    if (!openedToday && row.last) {
        const SheetLine lastLine = readShorthand(row.last->inspection.line);
        if (lastLine.supersOn) {
            Mind mind{MindKind::SuperOn, row.last->on};
            mind.count = static_cast<int>(lastLine.supersOn->value());
            minds.push_back(mind);
        }
    }
    return minds;
}

/// Whether a box came to a hive on a day; the boxes a hive is set up with are not put on.
bool putOnThatDay(const Read& file, const Box& box, const Hive& hive, Day on) {
    const auto moves = file.where<BoxMove>({is("box", box.id), is("to_hive", hive.id)});
    return std::any_of(moves.begin(), moves.end(), [&](const BoxMove& move) {
        const bool setUp = !move.fromPlace && !move.inspection && move.on == hive.since;
        return move.on == on && move.fromHive != hive.id && !setUp;
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

/// That nobody wrote a queen down is not "no queen".
bool lostItsQueen(const Read& file, Id<Colony> colony, Day on) {
    if (queenStayOn(file, colony, on)) return false;
    const auto stays = file.where<QueenStay>({is("colony", colony)});
    return std::any_of(stays.begin(), stays.end(),
                       [&](const QueenStay& stay) { return stay.until && *stay.until <= on; });
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
    for (DatedInspection& each : inspectionsOf(file, hive.id, on)) {
        const auto away = [yearAgo](Day day) { return std::abs((day - yearAgo).count()); };
        if (away(each.on) <= aboutNow && (!row.lastYear || away(each.on) < away(row.lastYear->on)))
            row.lastYear = each;
        if (each.inspection.seen.looked != Looked::Opened) continue;
        keepNewest(row.lastEggs, each.inspection.seen.eggs, each.on);
        keepNewest(row.lastBrood, each.inspection.seen.brood, each.on);
        keepNewest(row.lastStores, each.inspection.seen.stores, each.on);
        if (!row.last) row.last = std::move(each);
    }
    if (visit) row.today = inspectionOf(file, visit->id, hive.id);
    if (row.today) {
        row.line = readShorthand(visit->all, row.today->line);
        for (const BoxMove& move : file.where<BoxMove>({is("inspection", row.today->id)})) {
            if (move.toHive == hive.id) --row.supersBefore;
            if (move.fromHive == hive.id) ++row.supersBefore;
        }
    }
    row.minds = mindsOf(file, yard, row, on);
    if (const auto living = colonyLivingOn(file, hive.id, on)) {
        row.lives = true;
        row.queenless = !waits(row) && lostItsQueen(file, living->colony.id, on);
    }
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
    if (row.lives) {
        ++sheet.colonies;
        if (waits(row)) ++sheet.waiting;
        if (row.queenless) ++sheet.queenless;
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
            if (mind.kind == MindKind::QueenWait)
                if (const auto asked = askedByQueen(*mind.queen, on)) add(*asked, row.hive);
        }
    std::stable_sort(list.begin(), list.end(),
                     [](const TakeAlong& a, const TakeAlong& b) { return a.what < b.what; });
    return list;
}

}  // namespace

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
    YardSheet sheet;
    sheet.on = on;
    const auto yard = file.find(id);
    if (!yard) return sheet;
    sheet.yard = *yard;
    sheet.visit = visitOn(file, id, on);
    for (const Visit& visit : file.where<Visit>({is("yard", id)}))
        if (visit.on < on && (!sheet.lastVisit || visit.on > *sheet.lastVisit))
            sheet.lastVisit = visit.on;
    // On a day before it was set up there is no stand to draw, not an empty one.
    for (const Hive& hive : openHives(file, id))
        if (on < hive.since) ++sheet.youngerHives;
    for (const Hive& hive : hivesOn(file, id, on)) {
        sheet.rows.push_back(rowOf(file, *yard, hive, sheet.visit, on));
        countRow(sheet, sheet.rows.back());
    }
    for (std::optional<MeanOf>* mean : {&sheet.brood, &sheet.stores})
        if (*mean) (*mean)->value /= (*mean)->n;
    if (const auto kind = file.find(yard->usualSuper)) {
        sheet.supersInStore = static_cast<std::int64_t>(boxesReadyOn(file, kind->id, on).size());
        sheet.superName = kind->name.text();
    }
    sheet.takeAlong = takeAlongOf(sheet.rows, on);
    return sheet;
}

}  // namespace combwright
