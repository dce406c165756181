#include "core/places/trace/trace_named.h"

#include "core/places/honey/blend_line.h"
#include "core/storage/queries/names.h"

namespace combwright {
namespace {

/// Found, or whether several things of that sort bear the name.
template <class Record>
std::optional<Id<Record>> namedOf(const Read& file, const std::string& name, Day on,
                                  bool& several) {
    const auto found = findNamed(file, Record::table, NameQuery{.name = name, .on = on});
    if (found) return Id<Record>{*found};
    several = several || found.error().code == Code::Ambiguous;
    return std::nullopt;
}

}  // namespace

Result<std::vector<TraceOf>> tracesNamed(const Read& file, const std::string& name, Day on) {
    std::vector<TraceOf> all;
    bool several = false;
    const auto add = [&](auto TraceOf::*member, const auto& id) {
        if (!id) return;
        TraceOf of;
        of.*member = *id;
        all.push_back(of);
    };
    add(&TraceOf::bottling, namedOf<Bottling>(file, name, on, several));
    if (const auto vessel = vesselNamed(file, name, on, "trace"))
        all.push_back(vessel->bucket ? TraceOf{.bucket = vessel->bucket}
                                     : TraceOf{.lot = vessel->lot});
    else
        several = several || vessel.error().code == Code::Ambiguous;
    add(&TraceOf::run, namedOf<Extraction>(file, name, on, several));
    add(&TraceOf::hive, namedOf<Hive>(file, name, on, several));
    add(&TraceOf::box, namedOf<Box>(file, name, on, several));
    add(&TraceOf::comb, combCalled(file, name));
    if (all.empty())
        return Refusal{several ? Code::Ambiguous : Code::NotFound, "trace", {{"name", name}}};
    return all;
}

std::string_view traceSort(const TraceOf& of) {
    if (of.bottling) return "bottling";
    if (of.bucket) return "bucket";
    if (of.lot) return "lot";
    if (of.run) return "run";
    if (of.hive) return "hive";
    if (of.box) return "box";
    if (of.comb) return "comb honey";
    return "treatment";
}

}  // namespace combwright
