#include "core/places/season_book/yield_records.h"

#include <algorithm>

#include "core/storage/queries/hive_days.h"
#include "core/storage/queries/names.h"

namespace combwright {
namespace {

bool belongs(const RecordsOf& of, const Extraction& run, const std::optional<Id<Hive>>& hive,
             const Read& file) {
    if (of.run) return run.id == *of.run;
    if (of.hive) return hive == of.hive;
    if (of.yard) {
        if (!hive) return run.yard == of.yard;
        const auto found = file.find(*hive);
        return !of.withoutHive && found && found->yard == *of.yard;
    }
    return of.withoutHive ? !hive && (of.anyYard || !run.yard) : true;
}

/// Colonies and queens: who lived in the hive decides, box by box.
bool byTaking(const RecordsOf& of) { return of.colony || of.queen || of.nobody; }

bool gaveIt(const RecordsOf& of, const TakenShare& share) {
    if (!share.hive) return false;
    if (of.nobody) return of.nobody == YieldBy::Colony ? !share.colony : !share.queen;
    return of.colony ? share.colony == of.colony : share.queen == of.queen;
}

RunRecord bareRecord(const RunBalance& balance) {
    RunRecord record;
    record.run = balance.run.id;
    record.name = balance.run.name.text();
    record.yard = balance.yard;
    record.on = balance.run.on;
    record.buckets = balance.buckets;
    record.bucketsHow = balance.bucketsHow;
    record.cappings = balance.cappings;
    record.unaccountedG = balance.unaccountedG;
    record.byEye = balance.byEye;
    return record;
}

std::optional<RunRecord> recordByTaking(const Read& file, const RunBalance& balance,
                                        const RecordsOf& of) {
    RunRecord record = bareRecord(balance);
    double all = 0;
    for (const RunBoxLine& line : balance.boxes) all += line.offG.value_or(0);
    if (!balance.boxes.empty()) record.allOffG = all;
    record.how = How::Weighed;
    bool any = false;
    Mass atClosing;
    for (const TakenShare& share : takenShares(file, balance)) {
        if (!gaveIt(of, share)) continue;
        any = true;
        for (const std::size_t box : share.boxes) record.boxes.push_back(balance.boxes[box]);
        record.offG += share.offG;
        record.share += share.mass;
        record.how = weaker(record.how, share.how);
        atClosing += share.atClosing.value_or(share.mass);
    }
    if (!any) return std::nullopt;
    if (atClosing != record.share) record.atClosing = atClosing;
    return record;
}

std::optional<RunRecord> recordOf(const Read& file, const RunBalance& balance,
                                  const RecordsOf& of) {
    if (byTaking(of)) return recordByTaking(file, balance, of);
    RunRecord record = bareRecord(balance);
    double all = 0;
    for (const RunBoxLine& line : balance.boxes) {
        all += line.offG.value_or(0);
        if (!belongs(of, balance.run, line.box.hive, file)) continue;
        record.offG += line.offG.value_or(0);
        record.boxes.push_back(line);
    }
    if (!balance.boxes.empty()) record.allOffG = all;
    bool any = false;
    bool revised = false;
    Mass atClosing;
    record.how = How::Weighed;
    for (const RunShare& share : balance.shares) {
        if (!belongs(of, balance.run, share.hive, file)) continue;
        record.share += share.mass;
        record.how = weaker(record.how, share.how);
        atClosing += share.atClosing.value_or(share.mass);
        revised = revised || share.atClosing.has_value();
        any = true;
    }
    if (!any && record.boxes.empty()) return std::nullopt;
    // The whole of a run is known as its buckets are.
    if (of.run || (!of.hive && !of.withoutHive && record.share == balance.buckets))
        record.how = balance.bucketsHow;
    if (revised && atClosing != record.share) record.atClosing = atClosing;
    return record;
}

/// Whether a hive's note counts: no run of the year knows the hive.
bool hiveNoteCounts(const SeasonYield& season, Id<Hive> hive) {
    for (const YardYield& yard : season.yards)
        for (const HiveYield& line : yard.hives)
            if (line.hive == hive) return line.noted;
    return false;
}

bool yardNoteCounts(const SeasonYield& season, Id<Yard> id) {
    return std::any_of(season.yards.begin(), season.yards.end(),
                       [&](const YardYield& yard) { return yard.yard.id == id && yard.noted; });
}

bool noteBelongs(const RecordsOf& of, const CropNote& note, const Read& file) {
    if (of.withoutHive && of.anyYard) return !note.hive;
    if (of.run || of.withoutHive) return false;
    if (of.hive) return note.hive == of.hive;
    if (byTaking(of)) {
        if (!note.hive) return false;
        const int year = static_cast<int>(note.year.value());
        const auto colony = onlyColonyIn(file, *note.hive, year);
        const auto queen = onlyQueenIn(file, *note.hive, year);
        if (of.nobody) return of.nobody == YieldBy::Colony ? !colony : !queen;
        return of.colony ? colony == of.colony : queen == of.queen;
    }
    if (!of.yard) return true;
    if (note.yard == of.yard) return true;
    const auto hive = file.find(note.hive);
    return hive && hive->yard == *of.yard;
}

std::string nameFor(const Read& file, const RecordsOf& of) {
    if (of.hive) return nameOf(file, Hive::table, of.hive->number);
    if (of.run) return nameOf(file, Extraction::table, of.run->number);
    if (of.yard) return nameOf(file, Yard::table, of.yard->number);
    if (of.queen) return nameOf(file, Queen::table, of.queen->number);
    return {};
}

}  // namespace

YieldRecords recordsBehind(const Read& file, const SeasonYield& season, const RecordsOf& of) {
    YieldRecords records;
    records.of = of;
    records.year = season.year;
    records.name = nameFor(file, of);
    if (const auto colony = file.find(of.colony)) {
        const Day last = *makeDay(season.year, 12, 31);
        records.name = calledOn(file, hiveOfColony(file, *colony, last), last);
    }
    for (const RunBalance& balance : season.runs)
        if (auto record = recordOf(file, balance, of)) records.runs.push_back(*std::move(record));
    for (const CropNote& note : file.where<CropNote>({is("year", Count(season.year))})) {
        const auto mass = note.mass ? note.mass->middle() : std::nullopt;
        if (!mass || !noteBelongs(of, note, file)) continue;
        PaperRecord paper;
        if (note.hive) paper.of = nameOf(file, Hive::table, note.hive->number);
        if (note.yard && !note.hive) paper.of = nameOf(file, Yard::table, note.yard->number);
        paper.mass = Mass::roundedGrams(*mass);
        paper.how = note.mass->how;
        paper.note = note.note;
        paper.counted = note.hive   ? hiveNoteCounts(season, *note.hive)
                        : note.yard ? yardNoteCounts(season, *note.yard)
                                    : season.noted == season.total;
        records.paper.push_back(std::move(paper));
    }
    return records;
}

}  // namespace combwright
