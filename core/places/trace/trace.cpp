#include "core/places/trace/trace.h"

#include <algorithm>
#include <set>

#include "core/storage/queries/names.h"

namespace combwright {
namespace {

template <class Record>
std::optional<Day> dayOf(const Read& file, const std::optional<Id<Record>>& id) {
    const auto record = file.find(id);
    return record ? std::optional(record->on) : std::nullopt;
}

std::vector<TraceStart> startsOf(const Read& file, Trace& traced) {
    const TraceOf& of = traced.of;
    if (of.run) return startsOfRun(file, *of.run);
    if (of.hive) return startsOfHive(file, *of.hive, traced.on, traced.unknown);
    if (of.box) return startsOfBox(file, *of.box, traced.on, traced.unknown);
    if (const auto treatment = file.find(of.treatment))
        return startsOfTreatment(file, *treatment, traced.on, traced.unknown);
    if (const auto bottling = file.find(of.bottling))
        return {{vesselOf(*bottling), 1.0, How::Weighed}};
    return {{{of.bucket, of.lot}, 1.0, How::Weighed}};
}

template <class Record>
std::optional<Id<Record>> newestUpTo(const Read& file, Day on) {
    std::optional<Record> newest;
    for (Record& each : file.where<Record>({isUpTo("on_day", on)}))
        if (!newest || each.on >= newest->on) newest = std::move(each);
    return newest ? std::optional(newest->id) : std::nullopt;
}

}  // namespace

TraceHold tracedHold(const Read& file, Hold hold) {
    TraceHold traced;
    if (hold.bottling) {
        traced.on = TraceHold::On::Filling;
        traced.name = nameOf(file, Bottling::table, hold.bottling->number);
    } else if (hold.bucket || hold.lot) {
        traced.on = TraceHold::On::Honey;
        traced.name = nameOf(file, Vessel{hold.bucket, hold.lot});
    } else if (hold.box) {
        traced.on = TraceHold::On::Box;
        traced.name = nameOf(file, Box::table, hold.box->number);
    } else if (const auto colony = file.find(hold.colony)) {
        traced.on = TraceHold::On::Hive;
        traced.name = nameOf(file, Hive::table, colony->hive.number);
    } else if (hold.frame) {
        traced.on = TraceHold::On::Frame;
    }
    traced.hold = std::move(hold);
    return traced;
}

std::string traceSubject(const Read& file, const TraceOf& of) {
    if (of.bucket || of.lot) return nameOf(file, Vessel{of.bucket, of.lot});
    if (of.bottling) return nameOf(file, Bottling::table, of.bottling->number);
    if (of.run) return nameOf(file, Extraction::table, of.run->number);
    if (of.hive) return nameOf(file, Hive::table, of.hive->number);
    if (of.box) return nameOf(file, Box::table, of.box->number);
    if (const auto comb = file.find(of.comb))
        return comb->code.empty() ? comb->name.text() : comb->code;
    const auto treatment = file.find(of.treatment);
    if (!treatment) return {};
    return nameOf(file, Medicine::table, treatment->medicine.number) + ", " +
           nameOf(file, Hive::table, treatment->hive.number) + ", " + isoText(treatment->on);
}

std::optional<Day> tracedSince(const Read& file, const TraceOf& of) {
    if (of.lot) return dayOf(file, of.lot);
    if (of.bottling) return dayOf(file, of.bottling);
    if (of.run) return dayOf(file, of.run);
    if (of.treatment) return dayOf(file, of.treatment);
    if (of.comb) return dayOf(file, of.comb);
    if (const auto bucket = file.find(of.bucket))
        return dayOf(file, std::optional(bucket->extraction));
    const bool stands = file.find(of.hive) || file.find(of.box);
    return stands ? std::optional(Day::min()) : std::nullopt;
}

std::optional<Trace> trace(const Read& file, const TraceOf& of, Day on) {
    const OneState still(file);
    const auto since = tracedSince(file, of);
    if (!since || *since > on) return std::nullopt;
    Trace traced;
    traced.of = of;
    traced.name = traceSubject(file, of);
    traced.on = on;
    if (const auto bottling = file.find(of.bottling)) {
        traced.back = traceBack(file, *bottling, on);
        for (Hold& each : holdsOn(file, bottling->id, on))
            traced.holds.push_back(tracedHold(file, std::move(each)));
        traced.treated = treatedShare(file, bottling->id, on);
    } else if (of.bucket || of.lot) {
        const Vessel vessel{of.bucket, of.lot};
        traced.back = traceBack(file, vessel, on);
        for (Hold& each : holdsOn(file, vessel, on))
            traced.holds.push_back(tracedHold(file, std::move(each)));
        traced.treated = treatedShare(file, vessel, on);
    }
    if (const auto comb = file.find(of.comb)) {
        traced.comb = combTrace(file, *comb, on);
        if (traced.comb->comb.quarantine)
            traced.holds.push_back(tracedHold(file, *traced.comb->comb.quarantine));
    } else {
        traced.forward = traceForward(file, startsOf(file, traced), on);
    }
    if (traced.back)
        for (const TraceUnknown& each : traced.back->unknown) sayOnce(traced.unknown, each);
    for (const TraceUnknown& each : traced.forward.unknown) sayOnce(traced.unknown, each);
    if (const auto subject = Name::of(traced.name))
        traced.kept = file.where<KeptSheet>({is("what_sheet", *Name::of(traceSheet)),
                                             is("subject", *subject), isUpTo("on_day", on)});
    return traced;
}

std::optional<TraceOf> newestTraced(const Read& file, Day on) {
    TraceOf of;
    if ((of.bottling = newestUpTo<Bottling>(file, on)) || (of.lot = newestUpTo<Lot>(file, on)) ||
        (of.run = newestUpTo<Extraction>(file, on)))
        return of;
    return std::nullopt;
}

std::vector<TraceOf> tracedOfYear(const Read& file, int year, Day on) {
    std::vector<Bottling> fillings =
        file.where<Bottling>({isFrom("on_day", *makeDay(year, 1, 1)), isUpTo("on_day", on)});
    std::stable_sort(fillings.begin(), fillings.end(), [](const Bottling& a, const Bottling& b) {
        return a.on != b.on ? a.on < b.on : a.code.text() < b.code.text();
    });
    std::vector<TraceOf> all;
    std::set<std::int64_t> filled;
    for (const Bottling& filling : fillings) {
        TraceOf of;
        of.bottling = filling.id;
        all.push_back(of);
        for (const TraceRun& run : traceBack(file, filling, on).runs)
            filled.insert(run.run.id.number);
    }
    for (const Extraction& run :
         file.where<Extraction>({isFrom("on_day", *makeDay(year, 1, 1)),
                                 isUpTo("on_day", std::min(on, *makeDay(year, 12, 31)))})) {
        if (filled.contains(run.id.number)) continue;
        TraceOf of;
        of.run = run.id;
        all.push_back(of);
    }
    return all;
}

}  // namespace combwright
