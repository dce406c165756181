#include "core/actions/wax/batches.h"

#include <algorithm>

#include "core/actions/storeroom/frame_work.h"
#include "core/actions/storeroom/quarantine.h"
#include "core/actions/wax/wax_rules.h"
#include "core/storage/queries/holds.h"
#include "core/storage/queries/names.h"
#include "core/storage/queries/wax_holds.h"
#include "core/storage/queries/wax_ledger.h"

namespace combwright {
namespace {

Result<void> addRuns(const Read& file, const std::string& line, Day on,
                     std::vector<WaxSource>& sources) {
    for (const std::string& name : waxParts(line)) {
        const auto found = findNamed(file, Extraction::table, NameQuery{.name = name, .on = on});
        if (!found) return Refusal{found.error().code, "runs", {{"name", name}}};
        const Id<Extraction> run{*found};
        if (const auto began = file.find(run); began && on < began->on)
            return Refusal{Code::BeforeItBegan, "on", {{"since", isoText(began->on)}}};
        for (const ExtractionBox& each : file.where<ExtractionBox>({is("extraction", run)}))
            if (const auto box = file.find(each.box))
                if (auto ok = demandNotApart(file, *box, on, "runs"); !ok) return ok.error();
        // The box may be long off the hive that filled it when the hive is held.
        if (const auto holds = HeldWax(file, on).of(run); !holds.empty())
            return heldWax("runs", name, holds.front());
        WaxSource source;
        source.run = run;
        sources.push_back(source);
    }
    return {};
}

Result<void> addBoxes(const Read& file, const std::string& line, Day on,
                      std::vector<WaxSource>& sources) {
    for (const std::string& name : waxParts(line)) {
        const auto found = findNamed(file, Box::table, NameQuery{.name = name, .on = on});
        if (!found) return Refusal{found.error().code, "boxes", {{"name", name}}};
        const auto box = file.find(Id<Box>{*found});
        if (auto ok = demandNotApart(file, *box, on, "boxes"); !ok) return ok.error();
        WaxSource source;
        source.box = box->id;
        sources.push_back(source);
    }
    return {};
}

Result<void> addBench(const Read& file, RawWaxSource kind, Day on,
                      std::vector<WaxSource>& sources) {
    const HeldThings held = heldThings(file, on);
    bool any = false;
    for (const RawWax& heap : file.all<RawWax>()) {
        const bool meant = kind == RawWaxSource::Mixed || heap.source == kind;
        if (!meant || heap.on > on || file.first<WaxSource>({is("raw_wax", heap.id)})) continue;
        const auto box = file.find(heap.box);
        // What came out of a box that is held since stays out, and waits where it is.
        if (box && held.apart(box->id)) continue;
        WaxSource source;
        source.rawWax = heap.id;
        sources.push_back(source);
        any = true;
    }
    if (!any) return Refusal{Code::NotFound, "from_bench"};
    return {};
}

/// Combs cut out of a box, said with the batch: its frames are bare since. What the frames' own
/// work cut out waits on the bench already, and is not taken a second time.
void cutOut(Write& file, const WaxBatch& batch, const std::vector<WaxSource>& sources) {
    std::optional<Id<Box>> box;
    for (const WaxSource& each : sources) {
        if (each.box && box) return;  // nobody said how many of which box
        if (each.box) box = each.box;
    }
    if (!box || !batch.combs || batch.source != RawWaxSource::OldComb) return;
    std::int64_t many = batch.combs->value();
    for (const RawWax& heap : file.where<RawWax>({is("box", *box)})) {
        const auto in = file.first<WaxSource>({is("raw_wax", heap.id)});
        const bool here = !in || in->batch == batch.id;
        if (here && heap.source == RawWaxSource::OldComb && heap.combs && heap.on <= batch.on)
            many -= heap.combs->value();
    }
    const HeldThings held = heldThings(file, batch.on);
    std::vector<Frame> combs;
    for (Frame& frame : file.where<Frame>({is("box", *box), isUnknown("retired")})) {
        const bool none = frame.comb == Comb::Bare || frame.comb == Comb::Foundation;
        const bool other = batch.frameKind && frame.kind != *batch.frameKind;
        if (!none && !other && !held.holds(frame)) combs.push_back(std::move(frame));
    }
    // Those that were to be melted anyway come first.
    std::stable_partition(combs.begin(), combs.end(), [](const Frame& frame) {
        return frame.verdict == Verdict::Melt || frame.verdict == Verdict::Refit;
    });
    for (Frame& frame : combs) {
        if (many-- <= 0) return;
        takeCombOut(frame);
        file.change(frame);
    }
}

}  // namespace

const Fields& GatherWax::fields() {
    static const Fields all =
        describe(field<&GatherWax::on>("on"), field<&GatherWax::batch>("name"),
                 field<&GatherWax::source>("source"), field<&GatherWax::state>("state"),
                 field<&GatherWax::shade>("shade"), known<&GatherWax::raw>("raw"),
                 field<&GatherWax::runs>("runs"), field<&GatherWax::boxes>("boxes"),
                 field<&GatherWax::fromBench>("from_bench"), field<&GatherWax::combs>("combs"),
                 field<&GatherWax::frameKind>("frame_kind"), field<&GatherWax::kept>("kept"),
                 field<&GatherWax::keptSince>("kept_since"), field<&GatherWax::note>("note"));
    return all;
}

Result<Id<WaxBatch>> GatherWax::perform(Write& file) const {
    WaxBatch made;
    made.name = batch;
    made.on = on;
    made.source = source;
    made.state = state;
    made.shade = shade;
    made.raw = raw;
    made.combs = combs;
    made.frameKind = frameKind;
    made.kept = kept;
    if (kept) made.keptSince = keptSince.value_or(on);
    made.note = note;
    if (auto ok = demandBatch(file, made); !ok) return ok.error();
    if (made.keptSince && *made.keptSince < on)
        return Refusal{Code::Contradiction, "kept_since", {{"other", "on"}}};
    if (source == RawWaxSource::OldComb && !waxParts(runs).empty())
        return Refusal{Code::Contradiction, "runs", {{"other", "source"}}};
    std::vector<WaxSource> sources;
    if (auto ok = addRuns(file, runs, on, sources); !ok) return ok.error();
    if (auto ok = addBoxes(file, boxes, on, sources); !ok) return ok.error();
    if (fromBench == true)
        if (auto ok = addBench(file, source, on, sources); !ok) return ok.error();
    file.add(made);
    for (WaxSource& each : sources) {
        each.batch = made.id;
        file.add(each);
    }
    cutOut(file, made, sources);
    return made.id;
}

const Fields& WorkWax::fields() {
    static const Fields all =
        describe(field<&WorkWax::on>("on"), field<&WorkWax::batch>("batch"),
                 field<&WorkWax::work>("work"), known<&WorkWax::putIn>("put_in"),
                 known<&WorkWax::cameOut>("came_out"), field<&WorkWax::bucket>("bucket"),
                 field<&WorkWax::into>("into_batch"), field<&WorkWax::hive>("hive"),
                 field<&WorkWax::temperature>("temperature"), field<&WorkWax::note>("note"));
    return all;
}

Result<Id<WaxStep>> WorkWax::perform(Write& file) const {
    WaxStep step;
    step.batch = batch;
    step.on = on;
    step.work = work;
    step.putIn = putIn;
    step.cameOut = cameOut;
    step.bucket = bucket;
    step.into = into;
    step.hive = hive;
    step.temperature = temperature;
    step.note = note;
    if (auto ok = demandWaxStep(file, step); !ok) return ok.error();
    if (auto ok = demandBeesMayClean(file, step); !ok) return ok.error();
    file.add(step);
    if (auto ok = demandStepLedger(file, batch); !ok) return ok.error();
    return step.id;
}

const Fields& KeepWax::fields() {
    static const Fields all = describe(field<&KeepWax::on>("on"), field<&KeepWax::batch>("batch"),
                                       field<&KeepWax::kept>("kept"));
    return all;
}

Result<Id<WaxBatch>> KeepWax::perform(Write& file) const {
    auto found = file.find(batch);
    if (!found) return Refusal{Code::NotFound, "batch"};
    if (on < found->on) return Refusal{Code::BeforeItBegan, "on", {{"since", isoText(found->on)}}};
    if (found->kept == kept)
        return Refusal{
            Code::NothingToDo, "kept", {{"since", isoText(found->keptSince.value_or(found->on))}}};
    found->kept = kept;
    found->keptSince = on;
    file.change(*found);
    return batch;
}

const Fields& HeatOn::fields() {
    static const Fields all =
        describe(field<&HeatOn::on>("on"), field<&HeatOn::begun>("begun"),
                 field<&HeatOn::what>("what_heated"), field<&HeatOn::batch>("batch"),
                 field<&HeatOn::temperature>("temperature"), field<&HeatOn::note>("note"));
    return all;
}

Result<Id<HeatSession>> HeatOn::perform(Write& file) const {
    HeatSession session;
    session.on = on;
    session.begun = begun;
    session.what = what;
    session.batch = batch;
    session.temperature = temperature;
    session.note = note;
    if (auto ok = demandWaxHeat(temperature); !ok) return ok.error();
    if (auto ok = demandAboutDay(begun, on, "begun"); !ok) return ok.error();
    return file.add(session);
}

const Fields& HeatOff::fields() {
    static const Fields all =
        describe(field<&HeatOff::on>("on"), field<&HeatOff::session>("heat_session"),
                 field<&HeatOff::off>("off_at"), field<&HeatOff::temperature>("temperature"),
                 field<&HeatOff::note>("note"));
    return all;
}

Result<Id<HeatSession>> HeatOff::perform(Write& file) const {
    std::optional<HeatSession> meant = file.find(session);
    if (session && !meant) return Refusal{Code::NotFound, "heat_session"};
    if (!meant) {
        const auto open = openHeat(file);
        if (open.size() != 1)
            return Refusal{open.empty() ? Code::NotFound : Code::Ambiguous,
                           "heat_session",
                           {{"count", std::to_string(open.size())}}};
        meant = open.front();
    }
    if (meant->off) return Refusal{Code::Closed, "heat_session"};
    if (off < meant->begun)
        return Refusal{Code::OutOfRange, "off_at", {{"low", isoText(meant->begun)}}};
    if (auto ok = demandAboutDay(off, on, "off_at"); !ok) return ok.error();
    if (auto ok = demandWaxHeat(temperature); !ok) return ok.error();
    meant->off = off;
    if (temperature) meant->temperature = temperature;
    if (!note.empty()) meant->note += (meant->note.empty() ? "" : "; ") + note;
    file.change(*meant);
    return meant->id;
}

}  // namespace combwright
