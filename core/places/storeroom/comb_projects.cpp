#include "core/places/storeroom/comb_projects.h"

#include <algorithm>

#include "core/storage/queries/names.h"
#include "core/storage/queries/vessel_holds.h"

namespace combwright {
namespace {

ProjectStage stageOf(const HiveProject& project, Day on) {
    const auto done = [on](const std::optional<Day>& day) { return day && *day <= on; };
    if (done(project.lidded)) return ProjectStage::Lidded;
    if (done(project.off)) return ProjectStage::OffHive;
    if (done(project.putOn)) return ProjectStage::OnHive;
    return done(project.starter) ? ProjectStage::StarterIn : ProjectStage::Written;
}

/// Every piece filled and capped, or every one built and most of them filled.
bool isReady(const HiveProject& project, const ProjectLook& look) {
    if (!look.filled) return false;
    const std::int64_t filled = look.filled->value();
    if (filled >= project.pieces.value()) return true;
    return look.built && look.built->value() >= project.pieces.value() &&
           static_cast<double>(filled) >=
               combFilledShare * static_cast<double>(project.pieces.value());
}

}  // namespace

CombProject combProject(const Read& file, const HiveProject& project, Day on) {
    CombProject shown;
    shown.project = project;
    shown.stage = stageOf(project, on);
    if (project.hive) shown.hive = nameOf(file, Hive::table, project.hive->number);
    if (project.kind) shown.goods = nameOf(file, GoodsKind::table, project.kind->number);
    for (ProjectLook& look : file.where<ProjectLook>({is("project", project.id)}))
        if (look.on <= on) shown.looks.push_back(std::move(look));
    std::stable_sort(shown.looks.begin(), shown.looks.end(),
                     [](const ProjectLook& a, const ProjectLook& b) { return a.on < b.on; });
    if (!shown.looks.empty()) shown.built = isReady(project, shown.looks.back());
    if (shown.stage == ProjectStage::OnHive)
        shown.nextLook =
            (shown.looks.empty() ? *project.putOn : shown.looks.back().on) + days(combLookDays);
    if (project.wantedBy && shown.stage < ProjectStage::OnHive)
        shown.onLatest = *project.wantedBy - days(combBuildDays);
    if (!project.hive || !project.putOn || *project.putOn > on) return shown;
    const Day until = project.off ? std::min(*project.off, on) : on;
    for (TreatmentLine& line : treatmentList(file, std::nullopt, *project.putOn, until))
        if (line.treatment.hive == *project.hive && !line.supersMayStay)
            shown.treated.push_back(std::move(line));
    // What was ruled out since is lifted; what stands says something of the comb that came off
    // before.
    shown.quarantine = quarantineOn(file, heldThings(file, on), *project.hive, on);
    return shown;
}

namespace {

std::vector<CombProject> liddedAs(const Read& file, Id<GoodsKind> kind, Day on) {
    std::vector<CombProject> all;
    for (const HiveProject& project : file.where<HiveProject>({is("goods_kind", kind)}))
        if (project.lidded && *project.lidded <= on && project.good && *project.good > Count())
            all.push_back(combProject(file, project, on));
    return all;
}

}  // namespace

std::vector<CombProject> treatedComb(const Read& file, Id<GoodsKind> kind, Day on) {
    auto all = liddedAs(file, kind, on);
    std::erase_if(all, [](const CombProject& each) { return each.treated.empty(); });
    return all;
}

std::vector<CombProject> quarantinedComb(const Read& file, Id<GoodsKind> kind, Day on) {
    if (!anythingApart(file, on)) return {};
    auto all = liddedAs(file, kind, on);
    std::erase_if(all, [](const CombProject& each) {
        return !each.quarantine ||
               each.quarantine->since > *each.project.lidded + days(suspectedAfterRunDays);
    });
    return all;
}

std::vector<CombProject> combProjects(const Read& file, Day on) {
    const OneState still(file);
    std::vector<CombProject> all;
    for (const HiveProject& project : file.all<HiveProject>())
        if (project.on <= on && (!project.lidded || yearOf(*project.lidded) == yearOf(on)))
            all.push_back(combProject(file, project, on));
    return all;
}

}  // namespace combwright
