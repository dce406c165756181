#include "core/places/explain/explain_pull.h"

#include <QCoreApplication>
#include <cmath>

#include "core/places/pull/full_frame.h"
#include "core/storage/queries/constants.h"
#include "core/trade/frames/frame_honey.h"
#include "core/trade/honey/jars.h"
#include "core/words/figures.h"
#include "core/words/words.h"

namespace combwright {
namespace {

QString explainSay(const char* text) { return QCoreApplication::translate("pull", text); }

std::string lookHow(How how) { return std::string(word(how)); }

class PullExplained {
  public:
    PullExplained(const Read& file, const PullInput& input, const PullSheet& sheet)
        : m_file(file), m_input(input), m_sheet(sheet) {}

    void box(const PullYardRow& yard, const PullHiveRow& hive, const PullBoxRow& row);
    void hive(const PullYardRow& yard, const PullHiveRow& hive);
    void whole();
    std::vector<Explained> figures() && { return std::move(m_figures); }

  private:
    Working* begin(const QString& what, const QString& answer) {
        m_figures.push_back({what, answer, {}});
        return &m_figures.back().working;
    }
    /// A constant as it went into the answer: supposed for this plan, the keeper's or printed.
    void constant(Working* working, const std::string& name, double value, const char* unit,
                  bool supposed = false) const {
        const auto found = constantInForce(m_file, name, {}, m_sheet.on);
        note(working, name, value, unit, {},
             supposed ? "typed for this plan, not kept yet"
             : found  ? constantSource(*found)
                      : "planning assumption, no source");
    }
    std::string fullFrameSource(const FrameKind& frame, Id<Yard> yard) const;
    std::optional<double> fullFrame(const FrameKind& frame, Id<Yard> yard) const;
    void honeyInAll();
    void bound();
    void carry();
    void room();
    void jars();

    const Read& m_file;
    const PullInput& m_input;
    const PullSheet& m_sheet;
    std::vector<Explained> m_figures;
};

std::optional<double> PullExplained::fullFrame(const FrameKind& frame, Id<Yard> yard) const {
    return pullFullFrame(m_file, m_sheet.on, m_sheet.asked, m_sheet.constants, frame, yard);
}

std::string PullExplained::fullFrameSource(const FrameKind& frame, Id<Yard> yard) const {
    const auto found =
        constantInForce(m_file, "full_frame_g " + frame.code.text(), yard, m_sheet.on);
    const bool ofYard = found && found->own && found->own->yard;
    const auto& usual = m_sheet.constants.usualFrame;
    if (m_sheet.asked.supposed.fullFrameG && usual && usual->id == frame.id && !ofYard)
        return "typed for this plan, not kept yet";
    if (found) return constantSource(*found);
    const auto area = constantInForce(m_file, "full_frame_honey", {}, m_sheet.on);
    return "comb area · full_frame_honey" + (area ? ", " + area->source : std::string());
}

void PullExplained::box(const PullYardRow& yard, const PullHiveRow& hive, const PullBoxRow& row) {
    if (!row.honey || !row.frameKind || !row.look) return;
    const QString name =
        explainSay("%1 on %2")
            .arg(row.box.mark.empty() ? explainSay("no mark") : fromUtf8(row.box.mark),
                 fromUtf8(hive.hive.mark.text()));
    const auto full = fullFrame(*row.frameKind, yard.yard.id);
    if (!full) return;
    const auto filled = row.look->filled ? row.look->filled->middle() : std::nullopt;
    const double share = filled ? *filled / 10000.0 : row.cappedShare.value_or(0);

    Working* honey =
        begin(explainSay("Honey in %1").arg(name), massKnown(row.honey->grams, row.honey->how));
    (void)frameHoney({*full, share, share, std::nullopt}, {}, honey);
    for (Working::Step& step : honey->steps) {
        if (step.what == "full_frame_g")
            step.source = fullFrameSource(*row.frameKind, yard.yard.id);
        if (step.what == "left_filled" || step.what == "right_filled")
            step.how = filled ? lookHow(row.look->filled->how) : "capped frames ÷ frames";
    }
    note(honey, "frames", static_cast<double>(row.frames), "");
    note(honey, "spread_g", row.honey->spreadG, "g",
         "√((frames · shared)² + frames · own²), one standard deviation");
    note(honey, "box_honey", row.honey->grams, "g", "frames · honey of one");

    if (!row.gross) return;
    Working* gross = begin(explainSay("Weight of %1 to lift").arg(name),
                           massKnown(row.gross->grams, row.gross->how));
    (void)emptyBoxGramsOf(m_file, *row.kind, yard.yard.id, m_sheet.on, gross);
    note(gross, "box_honey", row.honey->grams, "g");
    note(gross, "gross", row.gross->grams, "g", "box with empty combs + honey");
}

void PullExplained::hive(const PullYardRow& yard, const PullHiveRow& hive) {
    if (!hive.remainingG) return;
    const QString mark = fromUtf8(hive.hive.mark.text());
    Working* keeps =
        begin(explainSay("Left to %1").arg(mark), massKnown(*hive.remainingG, How::ByEye));
    note(keeps, "nest_stores", hive.nest->grams, "g",
         "frames of stores last counted · honey of a full frame of the nest");
    double supers = 0;
    for (const PullBoxRow& box : hive.boxes)
        if (box.verdict != PullVerdict::Take && box.honey) supers += box.honey->grams;
    note(keeps, "left_in_supers", supers, "g", "supers that stay");
    note(keeps, "remaining_g", hive.nest->grams + supers, "g", "nest + supers that stay");
    Working* feed = begin(explainSay("To feed %1").arg(mark), massKnown(hive.shortG, How::ByEye));
    note(feed, "winter_need", hive.needG, "g", {},
         yard.yard.winterNeed ? "the yard's own" : "this plan's");
    note(feed, "remaining_g", *hive.remainingG, "g");
    note(feed, "short_g", std::max(0.0, hive.needG - *hive.remainingG), "g",
         "need − what is left, never below 0");
}

void PullExplained::honeyInAll() {
    Working* honey =
        begin(explainSay("Honey in all"), massKnown(m_sheet.honey.grams, m_sheet.honey.how));
    double sum = 0;
    for (const PullYardRow& yard : m_sheet.yards) {
        if (yard.taken == 0) continue;
        note(honey, "yard_honey", yard.honeyG, "g", yard.yard.name.text() + ": Σ boxes taken");
        sum += yard.honeyG;
    }
    note(honey, "spread_g", m_sheet.honey.spreadG, "g",
         "Σ boxes: a full comb is misjudged for all alike");
    note(honey, "honey_taken", sum, "g", "Σ yards");
}

void PullExplained::bound() {
    Working* bound =
        begin(explainSay("Most that any choice takes"), massKnown(m_sheet.boundG, How::ByEye));
    (void)reckonPull(m_input, bound);
}

void PullExplained::carry() {
    if (m_sheet.gross.grams <= 0) return;
    Working* carry = begin(explainSay("To carry"), massKnown(m_sheet.gross.grams, How::Assumed));
    double honey = 0;
    double empty = 0;
    for (const PullYardRow& yard : m_sheet.yards)
        for (const PullHiveRow& hive : yard.hives)
            for (const PullBoxRow& box : hive.boxes) {
                if (box.verdict != PullVerdict::Take || !box.gross) continue;
                honey += box.honey->grams;
                empty += *box.emptyG;
            }
    note(carry, "honey_taken", honey, "g", "Σ boxes taken");
    note(carry, "empty_boxes", empty, "g", "Σ boxes taken, each with its empty combs");
    note(carry, "gross", honey + empty, "g", "honey + boxes");
}

void PullExplained::room() {
    const RoomRates& rates = m_sheet.room;
    const PullSupposed& supposed = m_sheet.asked.supposed;
    Working all;
    if (!planDay(m_sheet.lots, rates, &all)) return;
    // One working tells of loads, day and buckets; each figure gets the steps up to its own.
    const auto until = [&](Working* working, std::string_view from, std::string_view last) {
        bool within = from.empty();
        for (const Working::Step& step : all.steps) {
            within = within || step.what == from;
            if (within) working->steps.push_back(step);
            if (step.what == last) return;
        }
    };
    const auto slots = static_cast<double>(rates.slotsOfKind.begin()->second);
    Working* loads = begin(explainSay("Loads"), QString::number(m_sheet.day->loads));
    for (const PlanLot& lot : m_sheet.lots)
        note(loads, "lot_frames", static_cast<double>(lot.frames), "", lot.lot + ", " + lot.kind);
    constant(loads, "extractor_slots", slots, "", supposed.slots.has_value());
    until(loads, {}, "loads");
    Working* day = begin(explainSay("The day"),
                         QString::number(std::lround(m_sheet.day->dayMin)) + explainSay(" min"));
    constant(day, "uncap_min_per_frame", rates.uncapMinPerFrame, "min");
    constant(day, "spin_min_per_load", rates.spinMinPerLoad, "min");
    constant(day, "swap_min", rates.swapMin, "min");
    constant(day, "lot_change_min", rates.lotChangeMin, "min");
    constant(day, "set_up_min", rates.setUpMin, "min");
    constant(day, "wash_min", rates.washMin, "min");
    until(day, {}, "day");
    Working* buckets =
        begin(explainSay("Buckets with spare"), QString::number(m_sheet.day->bucketsWithSpare));
    constant(buckets, "bucket_g", rates.bucketG, "g", supposed.bucketG.has_value());
    constant(buckets, "spare_share", rates.spareShare, "", supposed.spareShare.has_value());
    until(buckets, "buckets", "buckets_with_spare");
}

void PullExplained::jars() {
    Working* jars = begin(explainSay("Jars"), QString::number(m_sheet.jars));
    constant(jars, "jar_net_g", m_sheet.jarG, "g");
    constant(jars, "jar_loss_share", m_sheet.jarLossShare, "");
    std::int64_t sum = 0;
    for (const PullYardRow& yard : m_sheet.yards) {
        if (yard.taken == 0) continue;
        const auto lot = countJars(yard.honeyG, m_sheet.jarG, m_sheet.jarLossShare, jars);
        if (lot) sum += lot->jars;
    }
    note(jars, "jars", static_cast<double>(sum), "", "Σ lots");
}

void PullExplained::whole() {
    if (m_sheet.taken == 0) return;
    honeyInAll();
    bound();
    carry();
    if (m_sheet.day) room();
    jars();
}

}  // namespace

std::vector<Explained> explainPull(const Read& file, const PullInput& input, const PullSheet& sheet,
                                   std::optional<std::int64_t> box) {
    PullExplained explained(file, input, sheet);
    const auto each = [&](bool chosen) {
        for (const PullYardRow& yard : sheet.yards)
            for (const PullHiveRow& hive : yard.hives) {
                bool here = false;
                for (const PullBoxRow& row : hive.boxes) {
                    here = here || row.box.id.number == box;
                    if ((row.box.id.number == box) == chosen) explained.box(yard, hive, row);
                }
                if (here == chosen && !hive.boxes.empty()) explained.hive(yard, hive);
            }
    };
    if (box) each(true);
    explained.whole();
    each(false);
    return std::move(explained).figures();
}

}  // namespace combwright
