#include "core/storage/queries/names.h"

#include <algorithm>
#include <array>
#include <set>
#include <type_traits>

#include "core/model/health/medicine.h"
#include "core/model/honey/bottling.h"
#include "core/model/honey/pull.h"
#include "core/model/honey/room.h"
#include "core/model/season_info.h"
#include "core/model/storeroom/equipment.h"
#include "core/model/storeroom/review.h"
#include "core/model/storeroom/season_plan.h"
#include "core/model/yard/due.h"
#include "core/model/yard/queen.h"
#include "core/model/yard/weighing.h"
#include "core/storage/queries/hive_days.h"
#include "core/storage/queries/honey_names.h"
#include "core/storage/queries/machines.h"
#include "core/storage/queries/pegs.h"
#include "core/storage/queries/queens.h"
#include "core/storage/queries/wax_names.h"
#include "core/storage/queries/yards.h"

namespace combwright {
namespace {

std::string nameKey(std::string_view table) { return std::string(table); }

Result<std::int64_t> onlyOne(const std::vector<std::int64_t>& found, std::string_view table,
                             const std::string& name) {
    if (found.size() == 1) return found.front();
    return Refusal{found.empty() ? Code::NotFound : Code::Ambiguous,
                   nameKey(table),
                   {{"name", name}, {"count", std::to_string(found.size())}}};
}

template <class Record>
bool stoodOn(const Record& record, Day on) {
    return record.since <= on && (!record.closed || on < *record.closed);
}

/// Those that stood on the day; failing that, any of the name: a note about last year's hive.
template <class Record, class HasName>
std::vector<std::int64_t> standing(const std::vector<Record>& all, Day on, HasName hasName) {
    std::vector<std::int64_t> then;
    std::vector<std::int64_t> ever;
    for (const Record& each : all) {
        if (!hasName(each)) continue;
        ever.push_back(each.id.number);
        if (stoodOn(each, on)) then.push_back(each.id.number);
    }
    return then.empty() ? ever : then;
}

Result<std::int64_t> findYard(const Read& file, const NameQuery& query) {
    return onlyOne(standing(file.all<Yard>(), query.on,
                            [&](const Yard& yard) { return yard.name.text() == query.name; }),
                   Yard::table, query.name);
}

Result<std::int64_t> findHive(const Read& file, const NameQuery& query) {
    std::optional<Id<Yard>> yard;
    if (query.yard) {
        const auto found = findYard(file, NameQuery{.name = *query.yard, .on = query.on});
        if (!found) return found;
        yard = Id<Yard>{*found};
    }
    const auto meant = [&](const Hive& hive) {
        return hive.mark.text() == query.name && (!yard || hive.yard == *yard);
    };
    // Asked for by the mark, not looked for among all: a table of a scale names a hive in each of
    // its hundred thousand rows.
    std::vector<Id<Hive>> called;
    for (const Hive& hive : file.where<Hive>({is("mark", query.name)})) called.push_back(hive.id);
    for (const HiveMove& move : file.where<HiveMove>({is("from_mark", query.name)}))
        called.push_back(move.hive);
    // What it was called at the end of the day counts, then at its beginning: a hive is moved in
    // the middle of a round. Failing both, any hive that was ever called so.
    std::vector<std::int64_t> atEnd;
    std::vector<std::int64_t> atBeginning;
    std::vector<std::int64_t> ever;
    for (const auto& [id, hive] : file.findAny(called)) {
        const auto its = file.where<HiveMove>({is("hive", hive.id)});
        const bool stood = stoodOn(hive, query.on);
        if (stood && meant(asItWas(hive, its, query.on))) atEnd.push_back(id);
        if (stood && meant(asItWas(hive, its, query.on - days(1)))) atBeginning.push_back(id);
        bool was = meant(hive);
        for (const HiveMove& move : its) was = was || meant(asItWas(hive, its, move.on - days(1)));
        if (was) ever.push_back(id);
    }
    return onlyOne(!atEnd.empty()         ? atEnd
                   : !atBeginning.empty() ? atBeginning
                                          : ever,
                   Hive::table, query.name);
}

Result<std::int64_t> findBox(const Read& file, const NameQuery& query) {
    if (query.hive) {
        const auto hive =
            findHive(file, NameQuery{.name = *query.hive, .yard = query.yard, .on = query.on});
        if (!hive) return hive;
        const auto boxes = boxesOn(file, Id<Hive>{*hive});
        for (const Box& box : boxes)
            if (query.level && box.level && box.level->value() == *query.level)
                return box.id.number;
        return Refusal{Code::NotFound, "box", {{"name", *query.hive}}};
    }
    std::vector<std::int64_t> used;
    std::vector<std::int64_t> ever;
    for (const Box& box : file.where<Box>({is("mark", query.name)})) {
        ever.push_back(box.id.number);
        if (inUse(box)) used.push_back(box.id.number);
    }
    return onlyOne(used.empty() ? ever : used, Box::table, query.name);
}

std::optional<Id<Extraction>> runNamed(const Read& file, const std::string& name) {
    for (const Extraction& run : file.all<Extraction>())
        if (run.name.text() == name) return run.id;
    return std::nullopt;
}

/// A row of a run by its name; without a run the newest run that has one.
template <class Record, class HasName>
Result<std::int64_t> findInRun(const Read& file, const NameQuery& query, HasName hasName) {
    std::optional<Id<Extraction>> run;
    if (query.run) {
        run = runNamed(file, *query.run);
        if (!run) return Refusal{Code::NotFound, "run", {{"name", *query.run}}};
    }
    std::vector<std::int64_t> found;
    std::int64_t newest = 0;
    for (const Record& each : file.all<Record>()) {
        if (!hasName(each) || (run && each.extraction != *run)) continue;
        if (each.extraction.number > newest) found.clear();
        if (each.extraction.number < newest) continue;
        newest = each.extraction.number;
        found.push_back(each.id.number);
    }
    return onlyOne(found, Record::table, query.name);
}

/// The box of a run that carries the peg "peg 14" means on the day, marked or not.
std::optional<std::int64_t> pegged(const Read& file, const NameQuery& query) {
    const auto number = pegOfTag(query.name);
    const auto peg = number ? pegOn(file, *number, query.on) : std::nullopt;
    if (!peg || !peg->box) return std::nullopt;
    const auto run = query.run ? runNamed(file, *query.run) : std::nullopt;
    std::optional<std::int64_t> newest;
    for (const ExtractionBox& each : file.where<ExtractionBox>({is("box", *peg->box)}))
        if (!run || each.extraction == *run) newest = each.id.number;
    return newest;
}

Result<std::int64_t> findPeg(const Read& file, const NameQuery& query) {
    const auto number = pegOfTag(query.name.starts_with("peg ") ? query.name : "peg " + query.name);
    const auto peg = number ? pegOn(file, *number, query.on) : std::nullopt;
    if (!peg) return Refusal{Code::NotFound, "peg", {{"name", query.name}, {"lacks", "peg"}}};
    return peg->id.number;
}

bool isNamed(const Read& file, const ExtractionBox& each, const std::string& name) {
    if (each.knownAs == name) return true;
    const auto box = file.find(each.box);
    return box && box->mark == name;
}

template <class Kind>
Result<std::int64_t> findKind(const Read& file, const NameQuery& query) {
    const auto lower = [](std::string text) {
        std::transform(text.begin(), text.end(), text.begin(), [](char c) {
            return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
        });
        return text;
    };
    const std::string wanted = lower(query.name);
    std::vector<std::int64_t> bearing;
    for (const Kind& kind : file.all<Kind>()) {
        const std::string name = lower(kind.name.text());
        if (lower(kind.code.text()) == wanted || name == wanted) return kind.id.number;
        // "Langstroth medium frame (6 1/4 in)" bears the word medium, "10-frame medium" too.
        const bool ofFrames = std::is_same_v<Kind, FrameKind> &&
                              name.find(" " + wanted + " frame") != std::string::npos;
        bool ofNuclei = false;
        if constexpr (std::is_same_v<Kind, BoxKind>)
            ofNuclei = isNucleusBox(kind) &&
                       (wanted == "nuc" || wanted == "nuc box" || wanted == "nucleus");
        if (name.ends_with(" " + wanted) || ofFrames || ofNuclei) bearing.push_back(kind.id.number);
    }
    // A word of the trade alone ("medium") means the kind already in use here, else the first of
    // the catalogue: the ten-frame box.
    if constexpr (std::is_same_v<Kind, BoxKind>)
        for (const std::int64_t each : bearing)
            if (file.first<Box>({is("kind", Id<BoxKind>{each})})) return each;
    if constexpr (std::is_same_v<Kind, FrameKind>)
        for (const std::int64_t each : bearing)
            if (file.first<Frame>({is("kind", Id<FrameKind>{each})})) return each;
    if (bearing.empty())
        return Refusal{Code::NotFound, nameKey(Kind::table), {{"name", query.name}}};
    return bearing.front();
}

/// By its own name; a thing there is but one of its kind by what it is: "freezer".
Result<std::int64_t> findEquipment(const Read& file, const NameQuery& query) {
    std::vector<std::int64_t> named;
    std::vector<std::int64_t> such;
    std::set<std::pair<EquipmentItem, std::string>> machines;
    for (const Equipment& each : file.all<Equipment>()) {
        if (each.since > query.on) continue;
        // What a machine holds of another kind of frame makes no second machine.
        if (isMachine(each.item) && !machines.emplace(each.item, each.name).second) continue;
        if (each.name == query.name) named.push_back(each.id.number);
        const auto item = Choices<EquipmentItem>::words[static_cast<std::size_t>(each.item)];
        if (item == query.name) such.push_back(each.id.number);
    }
    return onlyOne(named.empty() ? such : named, Equipment::table, query.name);
}

/// What is in the truck that day, else what once was.
Result<std::int64_t> findTruckItem(const Read& file, const NameQuery& query) {
    std::vector<std::int64_t> then;
    std::vector<std::int64_t> ever;
    for (const TruckItem& each : file.all<TruckItem>()) {
        if (each.item.text() != query.name) continue;
        ever.push_back(each.id.number);
        if (each.since <= query.on && (!each.until || query.on < *each.until))
            then.push_back(each.id.number);
    }
    return onlyOne(then.empty() ? ever : then, TruckItem::table, query.name);
}

/// By the name on the pack, with the batch behind it where that is not enough; those bought by that
/// day before those bought later.
Result<std::int64_t> findMedicine(const Read& file, const NameQuery& query) {
    std::vector<std::int64_t> then;
    std::vector<std::int64_t> ever;
    for (const Medicine& each : file.all<Medicine>()) {
        const std::string& name = each.name.text();
        if (query.name != name && (each.batch.empty() || query.name != name + " " + each.batch))
            continue;
        ever.push_back(each.id.number);
        if (!each.boughtOn || *each.boughtOn <= query.on) then.push_back(each.id.number);
    }
    return onlyOne(then.empty() ? ever : then, Medicine::table, query.name);
}

/// The day a row is named by, else the day of the query.
Result<Day> dayMeant(const NameQuery& query) {
    if (query.name.empty()) return query.on;
    if (const auto day = parseDay(query.name)) return *day;
    return Refusal{Code::NotADay, {}, {{"value", query.name}}};
}

template <class Record>
std::vector<std::int64_t> idsOf(const std::vector<Record>& records) {
    std::vector<std::int64_t> ids;
    for (const Record& each : records) ids.push_back(each.id.number);
    return ids;
}

NameQuery asked(const NameQuery& query, const std::optional<std::string>& name, Day on) {
    return NameQuery{.name = name.value_or(std::string()), .yard = query.yard, .on = on};
}

Result<std::int64_t> findVisit(const Read& file, const NameQuery& query, Day on) {
    const auto yard = findYard(file, asked(query, query.yard, on));
    if (!yard) return yard;
    return onlyOne(idsOf(file.where<Visit>({is("yard", Id<Yard>{*yard}), is("on_day", on)})),
                   Visit::table, isoText(on));
}

Result<std::int64_t> findOfHive(const Read& file, std::string_view table, const NameQuery& query,
                                Day on) {
    const auto hive = findHive(file, asked(query, query.hive, on));
    if (!hive) return hive;
    const Id<Hive> id{*hive};
    std::vector<std::int64_t> found;
    if (table == ClearerBoard::table) {
        if (const auto board = boardIn(file, id, on)) found.push_back(board->id.number);
    } else if (table == HiveWeighing::table) {
        found = idsOf(file.where<HiveWeighing>({is("hive", id), is("on_day", on)}));
    } else if (table == Feeding::table) {
        found = idsOf(file.where<Feeding>({is("hive", id), is("on_day", on)}));
    } else if (table == Finding::table) {
        found = idsOf(file.where<Finding>({is("hive", id), is("on_day", on)}));
    } else if (table == Treatment::table) {
        found = idsOf(file.where<Treatment>({is("hive", id), is("on_day", on)}));
    } else if (table == Inspection::table) {
        for (const DatedInspection& each : inspectionsOf(file, id))
            if (each.on == on) found.push_back(each.inspection.id.number);
    } else if (table == HiveMove::table) {
        found = idsOf(file.where<HiveMove>({is("hive", id), is("on_day", on)}));
    } else if (table == ColonyMove::table) {
        for (const char* way : {"to_hive", "from_hive"})
            for (const ColonyMove& each : file.where<ColonyMove>({is(way, id), is("on_day", on)}))
                found.push_back(each.id.number);
    } else if (table == QueenWait::table) {
        found = idsOf(file.where<QueenWait>({is("hive", id), is("on_day", on)}));
    } else if (const auto living = colonyLivingOn(file, id, on)) {
        const auto stay = queenStayOn(file, living->colony.id, on);
        if (table == Colony::table) found.push_back(living->colony.id.number);
        if (table == QueenStay::table && stay) found.push_back(stay->id.number);
        if (table == Queen::table && stay) found.push_back(stay->queen.number);
    }
    return onlyOne(found, table, isoText(on));
}

/// By the number on her, those that head a colony before those that are gone.
Result<std::int64_t> findQueen(const Read& file, const NameQuery& query) {
    std::vector<std::int64_t> heading;
    std::vector<std::int64_t> ever;
    if (!query.name.empty())
        for (const Queen& queen : file.where<Queen>({is("number", query.name)})) {
            ever.push_back(queen.id.number);
            if (file.first<QueenStay>({is("queen", queen.id), isUnknown("until")}))
                heading.push_back(queen.id.number);
        }
    return onlyOne(heading.empty() ? ever : heading, Queen::table, query.name);
}

Result<std::int64_t> findOfBox(const Read& file, std::string_view table, const NameQuery& query,
                               Day on) {
    NameQuery inner = query;
    inner.name = query.box.value_or(std::string());
    inner.hive.reset();
    inner.on = on;
    const auto box = findBox(file, inner);
    if (!box) return box;
    const Id<Box> id{*box};
    std::vector<std::int64_t> found;
    if (table == BoxLook::table)
        found = idsOf(file.where<BoxLook>({is("box", id), is("on_day", on)}));
    if (table == BoxReview::table)
        found = idsOf(file.where<BoxReview>({is("box", id), is("on_day", on)}));
    if (table == Hold::table) found = idsOf(file.where<Hold>({is("box", id), isUnknown("lifted")}));
    if (table == Frame::table && query.level)
        found = idsOf(file.where<Frame>(
            {is("box", id), is("position", Count(*query.level + 1)), isUnknown("retired")}));
    return onlyOne(found, table, *query.box);
}

/// The hold that stands on a bucket, a lot or a filling itself.
Result<std::int64_t> findHoldOnHoney(const Read& file, const NameQuery& query, Day on) {
    const std::string_view thing = query.bucket ? Bucket::table
                                   : query.lot  ? Lot::table
                                                : Bottling::table;
    NameQuery inner{.run = query.run, .on = on};
    inner.name = query.bucket ? *query.bucket : query.lot ? *query.lot : *query.bottling;
    const auto id = findNamed(file, thing, inner);
    if (!id) return id;
    return onlyOne(
        idsOf(query.bucket ? file.where<Hold>({is("bucket", Id<Bucket>{*id}), isUnknown("lifted")})
              : query.lot
                  ? file.where<Hold>({is("lot", Id<Lot>{*id}), isUnknown("lifted")})
                  : file.where<Hold>({is("bottling", Id<Bottling>{*id}), isUnknown("lifted")})),
        Hold::table, inner.name);
}

}  // namespace

Result<std::int64_t> findNamed(const Read& file, std::string_view table, const NameQuery& query) {
    if (table == Yard::table) return findYard(file, query);
    if (table == Hive::table) return findHive(file, query);
    if (table == Box::table) return findBox(file, query);
    if (table == BoxKind::table) return findKind<BoxKind>(file, query);
    if (table == FrameKind::table) return findKind<FrameKind>(file, query);
    if (table == Equipment::table) return findEquipment(file, query);
    if (table == Extraction::table) {
        const auto run = runNamed(file, query.name);
        if (!run) return Refusal{Code::NotFound, "run", {{"name", query.name}}};
        return run->number;
    }
    if (table == Bucket::table)
        return findInRun<Bucket>(
            file, query, [&](const Bucket& each) { return each.mark.text() == query.name; });
    if (table == ExtractionBox::table) {
        if (const auto found = pegged(file, query)) return *found;
        return findInRun<ExtractionBox>(file, query, [&](const ExtractionBox& each) {
            return isNamed(file, each, query.name);
        });
    }
    if (isHoneyNamed(table)) return onlyOne(honeyNamed(file, table, query), table, query.name);
    if (isOfHoney(table)) {
        const auto found = ofHoneyNamed(file, table, query);
        if (!found) return found.error();
        return onlyOne(*found, table, query.name.empty() ? isoText(query.on) : query.name);
    }
    if (isWaxNamed(table)) return onlyOne(waxNamed(file, table, query), table, query.name);
    if (table == SeasonPlan::table) {
        const auto plans = file.all<SeasonPlan>();
        std::vector<std::int64_t> found;
        for (const SeasonPlan& each : plans)
            if (std::to_string(each.year.value()) == query.name) found.push_back(each.id.number);
        return onlyOne(found, table, query.name);
    }
    if (table == Peg::table) return findPeg(file, query);
    if (table == TruckItem::table) return findTruckItem(file, query);
    if (table == Medicine::table) return findMedicine(file, query);
    if (table == Queen::table && !query.hive) return findQueen(file, query);
    if (table == Frame::table && !query.box && !query.name.empty())
        return onlyOne(idsOf(file.where<Frame>({is("mark", query.name)})), table, query.name);
    if (table == Task::table) {
        std::vector<std::int64_t> found;
        for (const Task& each : file.where<Task>({isUnknown("done")}))
            if (each.text.text() == query.name) found.push_back(each.id.number);
        return onlyOne(found, table, query.name);
    }
    if (table == Quiet::table) {
        std::vector<std::int64_t> found;
        for (const Quiet& each : file.all<Quiet>())
            if (each.reason.text() == query.name && (!each.until || query.on <= *each.until))
                found.push_back(each.id.number);
        return onlyOne(found, table, query.name);
    }
    const auto on = dayMeant(query);
    if (!on) return Refusal{on.error().code, nameKey(table), on.error().values};
    if (table == FreezerRound::table)
        return onlyOne(idsOf(file.where<FreezerRound>({is("in_day", *on)})), table, isoText(*on));
    if (table == EquipmentCount::table && query.equipment) {
        const auto what = findEquipment(file, asked(query, query.equipment, query.on));
        if (!what) return what;
        return onlyOne(idsOf(file.where<EquipmentCount>(
                           {is("equipment", Id<Equipment>{*what}), is("on_day", *on)})),
                       table, isoText(*on));
    }
    if (table == RoomDay::table)
        return onlyOne(idsOf(file.where<RoomDay>({is("on_day", *on)})), table, isoText(*on));
    if (table == Visit::table && query.yard) return findVisit(file, query, *on);
    if (table == FeedStock::table)
        return onlyOne(idsOf(file.where<FeedStock>({is("on_day", *on)})), table, isoText(*on));
    const bool ofHive =
        table == Inspection::table || table == Colony::table || table == ClearerBoard::table ||
        table == HiveWeighing::table || table == Feeding::table || table == Finding::table ||
        table == Treatment::table || table == HiveMove::table || table == ColonyMove::table ||
        table == QueenWait::table || table == Queen::table || table == QueenStay::table;
    if (ofHive && query.hive) return findOfHive(file, table, query, *on);
    if (table == Hold::table && (query.bucket || query.lot || query.bottling))
        return findHoldOnHoney(file, query, *on);
    const bool ofBox = table == BoxLook::table || table == BoxReview::table ||
                       table == Frame::table || table == Hold::table;
    if (ofBox && query.box) return findOfBox(file, table, query, *on);
    return Refusal{Code::WrongType, nameKey(table), {{"wanted", "#number"}}};
}

std::string boxByPlace(const std::string& hive, Count level) {
    constexpr std::array spoken{"first", "second",  "third",  "fourth", "fifth",
                                "sixth", "seventh", "eighth", "ninth",  "tenth"};
    const auto at = static_cast<std::size_t>(level.value());
    const std::string place =
        at < spoken.size() ? std::string(spoken[at]) : "number " + std::to_string(at + 1);
    return hive + ", " + place + " from the floor";
}

std::string nameOf(const Read& file, std::string_view table, std::int64_t id) {
    const std::string number = "#" + std::to_string(id);
    if (isHoneyNamed(table)) return honeyNameOf(file, table, id).value_or(number);
    if (isWaxNamed(table)) return waxNameOf(file, table, id).value_or(number);
    if (table == Yard::table) {
        const auto yard = file.find(Id<Yard>{id});
        return yard ? yard->name.text() : number;
    }
    if (table == Hive::table) {
        const auto hive = file.find(Id<Hive>{id});
        return hive ? hive->mark.text() : number;
    }
    if (table == Extraction::table) {
        const auto run = file.find(Id<Extraction>{id});
        return run ? run->name.text() : number;
    }
    if (table == Bucket::table) {
        const auto bucket = file.find(Id<Bucket>{id});
        return bucket ? bucket->mark.text() : number;
    }
    if (table == Queen::table) {
        const auto queen = file.find(Id<Queen>{id});
        return queen && !queen->number.empty() ? queen->number : number;
    }
    if (table == Peg::table) {
        const auto peg = file.find(Id<Peg>{id});
        return peg ? "peg " + std::to_string(peg->number.value()) : number;
    }
    if (table == ClearerBoard::table) {
        const auto board = file.find(Id<ClearerBoard>{id});
        return board ? nameOf(file, Hive::table, board->hive.number) : number;
    }
    if (table == TruckItem::table) {
        const auto item = file.find(Id<TruckItem>{id});
        return item ? item->item.text() : number;
    }
    if (table == Medicine::table) {
        const auto medicine = file.find(Id<Medicine>{id});
        return medicine ? medicine->name.text() : number;
    }
    if (table == BoxKind::table) {
        const auto kind = file.find(Id<BoxKind>{id});
        return kind ? kind->name.text() : number;
    }
    if (table == Task::table) {
        const auto task = file.find(Id<Task>{id});
        return task ? task->text.text() : number;
    }
    if (table == Quiet::table) {
        const auto quiet = file.find(Id<Quiet>{id});
        return quiet ? quiet->reason.text() : number;
    }
    if (table == Box::table) {
        const auto box = file.find(Id<Box>{id});
        if (box && !box->mark.empty()) return box->mark;
        if (box && box->hive && box->level)
            return boxByPlace(nameOf(file, Hive::table, box->hive->number), *box->level);
    }
    return number;
}

}  // namespace combwright
