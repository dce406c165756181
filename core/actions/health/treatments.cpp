#include "core/actions/health/treatments.h"

#include <algorithm>

#include "core/actions/health/meant_hives.h"
#include "core/actions/storeroom/marked_boxes.h"
#include "core/model/season_info.h"
#include "core/storage/queries/hive_days.h"
#include "core/storage/queries/holds.h"
#include "core/storage/queries/names.h"
#include "core/storage/queries/treatments.h"
#include "core/storage/queries/yards.h"

namespace combwright {
namespace {

/// The colony that lived in a hive that day.
std::optional<Id<Colony>> treatedColony(const Read& file, Id<Hive> hive, Day on) {
    const auto colony = colonyMetIn(file, hive, on);
    return colony ? std::optional(colony->id) : std::nullopt;
}

Result<void> demandNotGivenTwice(const Read& file, const Treatment& treatment) {
    for (const Treatment& each :
         file.where<Treatment>({is("hive", treatment.hive), is("on_day", treatment.on),
                                is("medicine", treatment.medicine)}))
        if (each.id != treatment.id)
            return Refusal{Code::Duplicate,
                           "hives",
                           {{"name", nameOf(file, Hive::table, treatment.hive.number)}}};
    return {};
}

/// The treatments that are in the hives meant and come out that day.
Result<std::vector<Treatment>> comingOut(const Read& file, const TakeOutMedicine& asked) {
    const auto fits = [&](const Treatment& each) {
        return !each.out && (!asked.medicine || each.medicine == *asked.medicine);
    };
    std::vector<Treatment> out;
    const auto parts = listedParts(asked.hives);
    const bool all = parts.empty() || (parts.size() == 1 && parts.front() == "all");
    if (all) {
        // A hive that stands empty by now may still have its strips in.
        for (const Treatment& each : file.all<Treatment>()) {
            const auto hive = file.find(each.hive);
            if (fits(each) && each.on <= asked.on && (!asked.yard || hive->yard == *asked.yard))
                out.push_back(each);
        }
        return out;
    }
    const auto hives = meantHives(file, asked.yard, asked.hives, asked.on);
    if (!hives) return hives.error();
    for (const Hive& hive : *hives) {
        bool found = false;
        for (const Treatment& each : treatmentsOfColonyIn(file, hive.id, asked.on)) {
            if (!fits(each)) continue;
            if (each.on > asked.on)
                return Refusal{Code::BeforeItBegan,
                               "on",
                               {{"name", hive.mark.text()}, {"since", isoText(each.on)}}};
            out.push_back(each);
            found = true;
        }
        if (!found)
            return Refusal{
                Code::NotFound, "hives", {{"name", hive.mark.text()}, {"lacks", "medicine"}}};
    }
    return out;
}

}  // namespace

Result<void> demandTreatment(const Read& file, const Treatment& treatment) {
    const auto hive = file.find(treatment.hive);
    if (!hive) return Refusal{Code::NotFound, "hive", {}};
    if (!file.find(treatment.medicine)) return Refusal{Code::NotFound, "medicine", {}};
    if (treatment.amount && *treatment.amount <= Number())
        return Refusal{Code::OutOfRange, "amount", {{"low", "0"}}};
    if (treatment.out && *treatment.out < treatment.on)
        return Refusal{Code::Contradiction, "out_day", {{"other", "on"}}};
    if (treatment.supersBack && *treatment.supersBack < treatment.out.value_or(treatment.on))
        return Refusal{Code::Contradiction, "supers_back", {{"other", "out_day"}}};
    return demandStands(*hive, treatment.on, "hives", "on");
}

void followTreatment(Write& file, const Treatment& treatment) {
    const auto medicine = file.find(treatment.medicine);
    // What is held stays held until the keeper says on what grounds it is free.
    if (!medicine || medicine->supers == LabelSupers::MayStay) return;
    const auto supers = supersWhileIn(file, treatment);
    auto holds = file.where<Hold>({is("treatment", treatment.id)});
    for (const Hold& hold : holds) {
        const bool stillOn =
            std::any_of(supers.begin(), supers.end(),
                        [&](const SuperWhileIn& each) { return hold.box == each.box; });
        if (!stillOn && !hold.lifted) file.remove(hold.id);
    }
    for (const SuperWhileIn& each : supers) {
        const auto held = std::find_if(holds.begin(), holds.end(),
                                       [&](const Hold& hold) { return hold.box == each.box; });
        if (held != holds.end()) {
            if (held->lifted || held->since == each.from) continue;
            held->since = each.from;
            file.change(*held);
            continue;
        }
        Hold hold;
        hold.box = each.box;
        hold.why = HoldWhy::TreatedWhileOn;
        hold.since = each.from;
        hold.treatment = treatment.id;
        hold.note = medicine->name.text();
        file.add(hold);
    }
}

const Fields& Treat::fields() {
    static const Fields all = describe(
        field<&Treat::on>("on"), field<&Treat::medicine>("medicine"), field<&Treat::yard>("yard"),
        field<&Treat::hives>("hives"), field<&Treat::amount>("amount"),
        field<&Treat::out>("out_day"), field<&Treat::supersBack>("supers_back"),
        field<&Treat::by>("given_by"), field<&Treat::note>("note"));
    return all;
}

Result<std::vector<Id<Treatment>>> Treat::perform(Write& file) const {
    const auto given = file.find(medicine);
    if (!given) return Refusal{Code::NotFound, "medicine", {}};
    const auto meant = meantHives(file, yard, hives, on);
    if (!meant) return meant.error();
    std::vector<Id<Treatment>> made;
    for (const Hive& hive : *meant) {
        Treatment treatment{{},         medicine,
                            hive.id,    treatedColony(file, hive.id, on),
                            on,         amount,
                            out,        supersStood(file, hive.id, on),
                            supersBack, given->withdrawal,
                            by,         note};
        if (auto good = demandTreatment(file, treatment); !good) return good.error();
        if (auto once = demandNotGivenTwice(file, treatment); !once) return once.error();
        made.push_back(file.add(treatment));
        followTreatment(file, treatment);
    }
    return made;
}

const Fields& TakeOutMedicine::fields() {
    static const Fields all =
        describe(field<&TakeOutMedicine::on>("on"), field<&TakeOutMedicine::medicine>("medicine"),
                 field<&TakeOutMedicine::yard>("yard"), field<&TakeOutMedicine::hives>("hives"));
    return all;
}

Result<std::vector<Id<Treatment>>> TakeOutMedicine::perform(Write& file) const {
    auto out = comingOut(file, *this);
    if (!out) return out.error();
    if (out->empty())
        return Refusal{Code::NotFound,
                       "hives",
                       {{"name", yard ? nameOf(file, Yard::table, yard->number) : std::string()},
                        {"lacks", "medicine"}}};
    std::vector<Id<Treatment>> done;
    for (Treatment& treatment : *out) {
        treatment.out = on;
        if (treatment.supersBack && *treatment.supersBack < on) treatment.supersBack.reset();
        file.change(treatment);
        followTreatment(file, treatment);
        done.push_back(treatment.id);
    }
    return done;
}

}  // namespace combwright
