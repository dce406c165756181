#include "core/actions/wax/hive_goods.h"

#include <utility>

namespace combwright {
namespace {

/// What a second line about the lid tells that the first left out.
bool addsToLidded(const WorkProject& told, const HiveProject& there) {
    const bool other = (told.good && there.good && *told.good != *there.good) ||
                       (told.net && there.net && *told.net != *there.net) ||
                       (!told.code.empty() && !there.code.empty() && told.code != there.code);
    return !other && ((told.good && !there.good) || (told.net && !there.net) ||
                      (!told.code.empty() && there.code.empty()));
}

}  // namespace

const Fields& NotePropolis::fields() {
    static const Fields all =
        describe(field<&NotePropolis::on>("on"), field<&NotePropolis::went>("went"),
                 known<&NotePropolis::mass>("mass"), field<&NotePropolis::hive>("hive"),
                 field<&NotePropolis::box>("box"), field<&NotePropolis::frozen>("frozen"),
                 field<&NotePropolis::price>("price"), field<&NotePropolis::place>("place"),
                 field<&NotePropolis::buyer>("buyer"), field<&NotePropolis::note>("note"));
    return all;
}

Result<Id<PropolisMove>> NotePropolis::perform(Write& file) const {
    PropolisMove move;
    move.on = on;
    move.went = went;
    move.mass = mass;
    move.hive = hive;
    move.box = box;
    move.frozen = frozen;
    move.price = price;
    move.place = place;
    move.buyer = buyer;
    move.note = note;
    if (auto ok = demandWax(mass, "mass_g", true); !ok) return ok.error();
    if (price && went != PropolisWent::Sold)
        return Refusal{Code::Contradiction, "price", {{"other", "went"}}};
    file.add(move);
    if (auto ok = demandPropolis(file, move.id, "mass_g"); !ok) return ok.error();
    return move.id;
}

const Fields& StartProject::fields() {
    static const Fields all =
        describe(field<&StartProject::on>("on"), field<&StartProject::project>("name"),
                 field<&StartProject::what>("what"), field<&StartProject::pieces>("pieces"),
                 field<&StartProject::kind>("goods_kind"), field<&StartProject::hive>("hive"),
                 field<&StartProject::wantedBy>("wanted_by"), field<&StartProject::fair>("fair"),
                 field<&StartProject::note>("note"));
    return all;
}

Result<Id<HiveProject>> StartProject::perform(Write& file) const {
    HiveProject made;
    made.name = project;
    made.what = what.value_or(ProjectWhat::CombJars);
    made.pieces = pieces;
    made.on = on;
    made.kind = kind;
    made.hive = hive;
    made.wantedBy = wantedBy;
    made.fair = fair;
    made.note = note;
    if (auto ok = demandProject(file, made); !ok) return ok.error();
    return file.add(made);
}

const Fields& WorkProject::fields() {
    static const Fields all =
        describe(field<&WorkProject::on>("on"), field<&WorkProject::project>("project"),
                 field<&WorkProject::work>("project_work"), field<&WorkProject::hive>("hive"),
                 field<&WorkProject::good>("good"), known<&WorkProject::net>("net"),
                 field<&WorkProject::code>("code"), field<&WorkProject::reason>("reason"),
                 field<&WorkProject::note>("note"));
    return all;
}

Result<Id<HiveProject>> WorkProject::perform(Write& file) const {
    auto found = file.find(project);
    if (!found) return Refusal{Code::NotFound, "project"};
    if (on < found->on) return Refusal{Code::BeforeItBegan, "on", {{"since", isoText(found->on)}}};
    const bool ends = work == ProjectWork::Lidded;
    if (!ends && (good || net || !code.empty()))
        return Refusal{Code::Contradiction,
                       good  ? "good"
                       : net ? "net_g"
                             : "code",
                       {{"other", "project_work"}}};
    std::optional<Day>& step = work == ProjectWork::Starter ? found->starter
                               : work == ProjectWork::PutOn ? found->putOn
                               : work == ProjectWork::Off   ? found->off
                                                            : found->lidded;
    if (step && !(ends && addsToLidded(*this, *found)))
        return Refusal{Code::NothingToDo, "project_work"};
    if (step && on < *step) return Refusal{Code::BeforeItBegan, "on", {{"since", isoText(*step)}}};
    if (!step) step = on;
    if (hive) found->hive = hive;
    if (work == ProjectWork::PutOn && !found->hive) return Refusal{Code::Missing, "hive"};
    if (good) found->good = good;
    if (net) found->net = net;
    if (!code.empty()) found->code = code;
    if (!reason.empty()) found->reason = reason;
    if (!note.empty()) found->note += (found->note.empty() ? "" : "; ") + note;
    if (auto ok = demandProject(file, *found); !ok) return ok.error();
    if (auto ok = demandProjectFree(file, *found, on, reason); !ok) return ok.error();
    file.change(*found);
    return project;
}

const Fields& LookAtProject::fields() {
    static const Fields all = describe(
        field<&LookAtProject::on>("on"), field<&LookAtProject::project>("project"),
        field<&LookAtProject::built>("built"), field<&LookAtProject::filled>("filled_pieces"),
        field<&LookAtProject::note>("note"));
    return all;
}

Result<Id<ProjectLook>> LookAtProject::perform(Write& file) const {
    const auto found = file.find(project);
    if (!found) return Refusal{Code::NotFound, "project"};
    if (!found->putOn || on < *found->putOn)
        return Refusal{Code::BeforeItBegan,
                       "on",
                       {{"since", found->putOn ? isoText(*found->putOn) : std::string()}}};
    if (found->off && *found->off < on)
        return Refusal{Code::Closed, "project", {{"since", isoText(*found->off)}}};
    for (const auto& [many, field] :
         {std::pair(built, "built"), std::pair(filled, "filled_pieces")})
        if (many && *many > found->pieces)
            return Refusal{Code::TooMany, field, {{"most", std::to_string(found->pieces.value())}}};
    if (built && filled && *built < *filled)
        return Refusal{Code::Contradiction, "filled_pieces", {{"other", "built"}}};
    ProjectLook look;
    look.project = project;
    look.on = on;
    look.built = built;
    look.filled = filled;
    look.note = note;
    return file.add(look);
}

}  // namespace combwright
