#include "core/places/trace/comb_trace.h"

namespace combwright {

std::optional<Id<HiveProject>> combCalled(const Read& file, const std::string& code) {
    if (code.empty()) return std::nullopt;
    const auto all = file.all<HiveProject>();
    for (const HiveProject& each : all)
        if (each.code == code) return each.id;
    for (const HiveProject& each : all)
        if (each.name.text() == code) return each.id;
    return std::nullopt;
}

CombTrace combTrace(const Read& file, const HiveProject& project, Day on) {
    CombTrace traced;
    traced.comb = combProject(file, project, on);
    if (!project.kind || !project.lidded || *project.lidded > on) return traced;
    traced.out = outOfNoFilling(file, *project.kind, *project.lidded, on);
    for (const TracedOut& out : traced.out)
        if (wantsBuyer(out)) traced.nobodyKnows += out.count.value_or(0);
    for (const HiveProject& other : file.where<HiveProject>({is("goods_kind", *project.kind)}))
        if (other.id != project.id && other.lidded && *other.lidded <= on) ++traced.otherSets;
    return traced;
}

}  // namespace combwright
