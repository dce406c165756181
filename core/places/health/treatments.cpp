#include "core/places/health/treatments.h"

#include <algorithm>
#include <map>
#include <set>
#include <tuple>

#include "core/places/health/mite_lines.h"
#include "core/storage/queries/hive_days.h"
#include "core/storage/queries/holds.h"
#include "core/storage/queries/names.h"
#include "core/storage/queries/stays.h"
#include "core/storage/queries/yards.h"

namespace combwright {
namespace {

constexpr int lotYearDays = 365;

std::optional<int> labelDays(const std::optional<Count>& days) {
    if (!days) return std::nullopt;
    return static_cast<int>(days->value());
}

/// By the label of the medicine. Where only one end of the days is known, that one counts for both.
std::optional<DueOut> labelOut(const Treatment& treatment, const Medicine& medicine) {
    const auto from = labelDays(medicine.inHiveFrom ? medicine.inHiveFrom : medicine.inHiveTo);
    const auto to = labelDays(medicine.inHiveTo ? medicine.inHiveTo : medicine.inHiveFrom);
    if (!from || !to) return std::nullopt;
    const auto due = dueOut(treatment.on, *from, *to);
    return due ? std::optional(*due) : std::nullopt;
}

/// With the hive the colony lived in on the day asked, or ended in, as it was called and where it
/// stood then.
std::optional<TreatmentLine> lineOf(const Read& file, const Treatment& treatment, Day on) {
    const auto medicine = file.find(treatment.medicine);
    const auto colony = file.find(treatment.colony);
    const auto hive = file.find(colony ? hiveOfColony(file, *colony, std::max(on, treatment.on))
                                       : treatment.hive);
    if (!medicine || !hive) return std::nullopt;
    TreatmentLine line;
    line.hive = asItWas(file, *hive, on);
    const auto yard = file.find(line.hive.yard);
    if (!yard) return std::nullopt;
    line.treatment = treatment;
    line.medicine = *medicine;
    line.yard = *yard;
    line.dueOut = labelOut(treatment, *medicine);
    line.supersMayStay = medicine->supers == LabelSupers::MayStay;
    if (const auto back = supersBackFrom(treatment.out, labelDays(medicine->waitDays)))
        line.supersBack = *back;
    if (!treatment.out && line.dueOut)
        if (const auto earliest = supersBackFrom(line.dueOut->from, labelDays(medicine->waitDays)))
            line.supersEarliest = *earliest;
    // The keeper's own day counts where it is later than the label's, or nobody knows that.
    if (treatment.supersBack && (!line.supersBack || *treatment.supersBack > *line.supersBack))
        line.supersBack = treatment.supersBack;
    if (line.supersEarliest && treatment.supersBack)
        line.supersEarliest = std::max(*line.supersEarliest, *treatment.supersBack);
    return line;
}

bool touches(const Treatment& treatment, Day from, Day to) {
    return treatment.on <= to && (!treatment.out || *treatment.out >= from);
}

void sortLines(std::vector<TreatmentLine>& lines) {
    std::stable_sort(lines.begin(), lines.end(), [](const auto& a, const auto& b) {
        return std::tuple(a.treatment.on, a.yard.walkOrder, a.hive.standOrder) <
               std::tuple(b.treatment.on, b.yard.walkOrder, b.hive.standOrder);
    });
}

}  // namespace

std::vector<MedicineStock> medicinesOn(const Read& file, Day on) {
    const std::string region = tablesOn(file, on).medicinesRegion;
    std::vector<MedicineStock> all;
    for (Medicine& each : file.all<Medicine>()) {
        if (each.boughtOn && *each.boughtOn > on) continue;
        MedicineStock stock;
        stock.use = useOf(file, each, on);
        stock.expired = each.expires && *each.expires < on;
        if (!region.empty())
            if (const PublishedWait* found = findPublishedWait(each.active, region))
                stock.published = *found;
        stock.medicine = std::move(each);
        all.push_back(std::move(stock));
    }
    std::stable_sort(all.begin(), all.end(), [](const MedicineStock& a, const MedicineStock& b) {
        return a.medicine.boughtOn > b.medicine.boughtOn;
    });
    return all;
}

std::vector<TreatmentLine> treatmentList(const Read& file, std::optional<Id<Yard>> yard, Day from,
                                         Day to) {
    std::vector<TreatmentLine> lines;
    for (const Treatment& each : treatmentsTouching(file, from, to)) {
        auto line = lineOf(file, each, to);
        if (line && (!yard || line->yard.id == *yard)) lines.push_back(*std::move(line));
    }
    sortLines(lines);
    return lines;
}

std::vector<TreatmentLine> runningTreatments(const Read& file, std::optional<Id<Yard>> yard,
                                             Day on) {
    auto lines = treatmentList(file, yard, on, on);
    std::erase_if(lines, [on](const TreatmentLine& line) { return !isIn(line.treatment, on); });
    return lines;
}

std::vector<TreatmentLine> runningIn(const Read& file, Id<Hive> hive, Day on) {
    std::vector<TreatmentLine> lines;
    for (const Treatment& each : treatmentsIn(file, hive, on))
        if (auto line = lineOf(file, each, on)) lines.push_back(*std::move(line));
    return lines;
}

std::vector<TreatmentLine> waitingTreatments(const Read& file, std::optional<Id<Yard>> yard,
                                             Day on) {
    auto lines = treatmentList(file, yard, on - days(lotYearDays), on);
    std::erase_if(lines, [on](const TreatmentLine& line) {
        if (line.supersMayStay || isIn(line.treatment, on)) return true;
        return (line.supersBack ? *line.supersBack : *line.treatment.out + days(unknownWaitDays)) <=
               on;
    });
    return lines;
}

std::optional<SupersBack> supersBackOf(const Read& file, Id<Hive> hive, Day on) {
    std::optional<SupersBack> last;
    const auto later = [](const SupersBack& a, const SupersBack& b) {
        // One that is in, or of which nobody knows, keeps them off longest.
        return !b.from ? false : !a.from || *a.from > *b.from;
    };
    for (const Treatment& each : treatmentsHoldingSupers(file, hive, on, unknownWaitDays)) {
        auto line = lineOf(file, each, on);
        if (!line || line->supersMayStay) continue;
        SupersBack back{*line, line->supersBack};
        if (isIn(each, on))
            back.from.reset();
        else if (back.from ? *back.from <= on : *each.out + days(unknownWaitDays) <= on)
            continue;
        if (!last || later(back, *last)) last = std::move(back);
    }
    return last;
}

std::vector<SuperTooEarly> supersTooEarly(const Read& file, Id<Hive> id, Day on) {
    const auto hive = file.find(id);
    if (!hive) return {};
    std::vector<SuperTooEarly> early;
    for (const Box& box : supersStanding(file, *hive, on)) {
        std::optional<Day> wentOn;
        for (const BoxMove& move : file.where<BoxMove>({is("box", box.id), is("to_hive", id)}))
            if (move.fromHive != id && move.toPlace == BoxPlace::OnHive && move.on <= on &&
                move.on > hive->since && !wentWithColony(file, move))
                wentOn = std::max(wentOn.value_or(move.on), move.on);
        auto back = wentOn ? supersBackOf(file, id, *wentOn) : std::nullopt;
        if (!back) continue;
        const auto holds = file.where<Hold>({is("box", box.id)});
        // Held, or cleared since on some grounds: then it is answered.
        if (std::any_of(holds.begin(), holds.end(), [&](const Hold& hold) {
                return hold.why == HoldWhy::TreatedWhileOn && (standsOn(hold, on) || hold.lifted) &&
                       (!hold.lifted || *hold.lifted >= *wentOn);
            }))
            continue;
        early.push_back({box, nameOf(file, Box::table, box.id.number), *wentOn, *std::move(back)});
    }
    return early;
}

std::vector<SuperTooEarly> supersTooEarlyIn(const Read& file, std::optional<Id<Yard>> only,
                                            Day on) {
    std::vector<SuperTooEarly> all;
    for (const Yard& yard : yardsOn(file, on)) {
        if (only && yard.id != *only) continue;
        for (const Hive& hive : hivesOn(file, yard.id, on))
            for (SuperTooEarly& each : supersTooEarly(file, hive.id, on))
                all.push_back(std::move(each));
    }
    return all;
}

std::vector<TreatedBox> treatedBoxes(const Read& file, Day on) {
    std::vector<TreatedBox> all;
    for (Hold& hold : file.where<Hold>({is("why", HoldWhy::TreatedWhileOn)})) {
        const auto box = file.find(hold.box);
        if (!box || !standsOn(hold, on)) continue;
        TreatedBox treated;
        treated.box = *box;
        treated.name = nameOf(file, Box::table, box->id.number);
        if (const auto treatment = file.find(hold.treatment))
            treated.line = lineOf(file, *treatment, on);
        treated.hold = std::move(hold);
        all.push_back(std::move(treated));
    }
    std::stable_sort(all.begin(), all.end(), [](const TreatedBox& a, const TreatedBox& b) {
        return a.hold.since < b.hold.since;
    });
    return all;
}

std::vector<TreatedBox> treatedInRun(const Read& file, Id<Extraction> id) {
    const auto run = file.find(id);
    if (!run) return {};
    std::set<std::int64_t> inRun;
    for (const ExtractionBox& each : file.where<ExtractionBox>({is("extraction", id)}))
        if (each.box) inRun.insert(each.box->number);
    auto treated = treatedBoxes(file, run->on);
    std::erase_if(treated, [&](const TreatedBox& each) {
        return each.hold.lifted || !inRun.contains(each.box.id.number);
    });
    return treated;
}

std::vector<TreatmentLine> treatmentsBehind(const Read& file, Id<Extraction> id) {
    const auto run = file.find(id);
    if (!run) return {};
    const Day from = run->on - days(lotYearDays);
    const auto boxes = file.where<ExtractionBox>({is("extraction", id)});
    std::vector<Id<Box>> known;
    for (const ExtractionBox& each : boxes)
        if (each.box) known.push_back(*each.box);
    const auto stays = staysOfAny(file, known);
    std::set<Id<Hive>> hives;
    std::map<std::int64_t, std::set<std::int64_t>> boxesOn;  // of the run, by hive
    for (const ExtractionBox& each : boxes)
        if (each.hive) hives.insert(*each.hive);
    for (const auto& [box, its] : stays)
        for (const auto& [hive, stay] : its)
            if (stay.touches(from, run->on)) {
                hives.insert(hive);
                boxesOn[hive.number].insert(box);
            }
    std::vector<TreatmentLine> lines;
    for (const Treatment& treatment : treatmentsOfAny(file, {hives.begin(), hives.end()})) {
        if (!touches(treatment, from, run->on)) continue;
        auto line = lineOf(file, treatment, run->on);
        if (!line) continue;
        const auto stood = boxesOn.find(treatment.hive.number);
        if (stood != boxesOn.end())
            for (const SuperWhileIn& super : supersWhileIn(file, treatment))
                line->boxWasOn = line->boxWasOn || stood->second.contains(super.box.number);
        lines.push_back(*std::move(line));
    }
    sortLines(lines);
    return lines;
}

std::optional<InWindow> suitsPublished(const MedicineStock& stock, double warmthC) {
    const bool labelled = stock.medicine.warmFrom || stock.medicine.warmTo;
    if (labelled || !stock.published) return std::nullopt;
    return temperatureSuits(warmthC, stock.published->fromC, stock.published->toC);
}

std::optional<InWindow> suits(const Medicine& medicine, double warmthC) {
    const auto celsius = [](const std::optional<Temperature>& warmth) {
        return warmth ? std::optional(warmth->celsius()) : std::nullopt;
    };
    return temperatureSuits(warmthC, celsius(medicine.warmFrom), celsius(medicine.warmTo));
}

}  // namespace combwright
