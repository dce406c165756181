#include "core/words/working_words.h"

#include <QCoreApplication>
#include <QLocale>
#include <algorithm>
#include <cmath>
#include <iterator>
#include <string_view>

#include "core/words/figures.h"
#include "core/words/units.h"
#include "core/words/words.h"

namespace combwright {
namespace {

struct StepLabel {
    std::string_view key;
    const char* label;
};

// In alphabetical order of the keys, which are those the trade functions note.
constexpr StepLabel stepLabels[] = {
    {"act_after_days", QT_TRANSLATE_NOOP("working", "patience until one must act")},
    {"after_loss", QT_TRANSLATE_NOOP("working", "what is left after losses")},
    {"allowed_g_mm", QT_TRANSLATE_NOOP("working", "imbalance the grade allows")},
    {"allowed_offset_g", QT_TRANSLATE_NOOP("working", "off balance the grade allows")},
    {"bees", QT_TRANSLATE_NOOP("working", "bees in the sample")},
    {"bees_about", QT_TRANSLATE_NOOP("working", "bees, about")},
    {"bees_per_frame", QT_TRANSLATE_NOOP("working", "bees on a frame")},
    {"board_days", QT_TRANSLATE_NOOP("working", "days a board is in before the pull")},
    {"board_rounds", QT_TRANSLATE_NOOP("working", "rounds")},
    {"boards_in", QT_TRANSLATE_NOOP("working", "boards that are in")},
    {"boards_owned", QT_TRANSLATE_NOOP("working", "boards there are")},
    {"bottom_space_mm", QT_TRANSLATE_NOOP("working", "clear below the frames")},
    {"box_full_g", QT_TRANSLATE_NOOP("working", "box, full")},
    {"box_height_mm", QT_TRANSLATE_NOOP("working", "box, height")},
    {"box_honey", QT_TRANSLATE_NOOP("working", "honey in the box")},
    {"box_inner_width_mm", QT_TRANSLATE_NOOP("working", "box, inside width")},
    {"box_wet_g", QT_TRANSLATE_NOOP("working", "box, wet")},
    {"boxes_about", QT_TRANSLATE_NOOP("working", "boxes there are")},
    {"boxes_held", QT_TRANSLATE_NOOP("working", "held")},
    {"boxes_in_nests", QT_TRANSLATE_NOOP("working", "in nests of living colonies")},
    {"boxes_judged", QT_TRANSLATE_NOOP("working", "boxes judged by eye and weighed")},
    {"boxes_lent", QT_TRANSLATE_NOOP("working", "lent")},
    {"boxes_to_fill", QT_TRANSLATE_NOOP("working", "boxes to fill")},
    {"boxes_to_repair", QT_TRANSLATE_NOOP("working", "free once repaired")},
    {"boxes_usable", QT_TRANSLATE_NOOP("working", "usable")},
    {"boxes_weighed", QT_TRANSLATE_NOOP("working", "boxes weighed full and wet")},
    {"brix", QT_TRANSLATE_NOOP("working", "Brix reading")},
    {"brood_combs", QT_TRANSLATE_NOOP("working", "brood combs")},
    {"bucket_g", QT_TRANSLATE_NOOP("working", "a bucket is filled with")},
    {"buckets", QT_TRANSLATE_NOOP("working", "buckets")},
    {"buckets_with_spare", QT_TRANSLATE_NOOP("working", "buckets and spare")},
    {"by_difference", QT_TRANSLATE_NOOP("working", "left for the box without a weight")},
    {"cappings_of_honey", QT_TRANSLATE_NOOP("working", "cappings of the honey")},
    {"change", QT_TRANSLATE_NOOP("working", "more than the year beside it")},
    {"clearer_out_days", QT_TRANSLATE_NOOP("working", "days until a board comes out")},
    {"colonies", QT_TRANSLATE_NOOP("working", "colonies")},
    {"colonies_at_risk", QT_TRANSLATE_NOOP("working", "colonies at the start")},
    {"colonies_dead", QT_TRANSLATE_NOOP("working", "colonies that died")},
    {"comb_cells", QT_TRANSLATE_NOOP("working", "cells of a comb, both sides")},
    {"comb_cull_share", QT_TRANSLATE_NOOP("working", "share taken out a year")},
    {"comb_share", QT_TRANSLATE_NOOP("working", "comb against it")},
    {"comb_spread_share", QT_TRANSLATE_NOOP("working", "spread of combs among themselves")},
    {"comb_thickness_mm", QT_TRANSLATE_NOOP("working", "thickness of a comb at this spacing")},
    {"comb_wax_g", QT_TRANSLATE_NOOP("working", "wax in the comb")},
    {"combs_on_shelf", QT_TRANSLATE_NOOP("working", "drawn combs on the shelf")},
    {"core_lag_hours", QT_TRANSLATE_NOOP("working", "until the core is cold")},
    {"crop_spread_share", QT_TRANSLATE_NOOP("working", "spread of the crop")},
    {"cull_target", QT_TRANSLATE_NOOP("working", "combs to take out a year")},
    {"day", QT_TRANSLATE_NOOP("working", "the day")},
    {"days_a_round", QT_TRANSLATE_NOOP("working", "days a round")},
    {"days_in", QT_TRANSLATE_NOOP("working", "days it is in")},
    {"days_to_act", QT_TRANSLATE_NOOP("working", "act by, days after")},
    {"days_to_look", QT_TRANSLATE_NOOP("working", "may be looked into, days after")},
    {"days_to_test_frame", QT_TRANSLATE_NOOP("working", "frame with eggs, days after")},
    {"days_waiting", QT_TRANSLATE_NOOP("working", "days it waits")},
    {"decided_g", QT_TRANSLATE_NOOP("working", "taken by your own decision")},
    {"doubt_g", QT_TRANSLATE_NOOP("working", "doubt")},
    {"drawn_boxes", QT_TRANSLATE_NOOP("working", "boxes filled with drawn comb")},
    {"each_litres", QT_TRANSLATE_NOOP("working", "room one takes")},
    {"emerges_from", QT_TRANSLATE_NOOP("working", "queen out, earliest")},
    {"emerges_to", QT_TRANSLATE_NOOP("working", "queen out, latest")},
    {"empty_box_g", QT_TRANSLATE_NOOP("working", "an empty box")},
    {"empty_boxes", QT_TRANSLATE_NOOP("working", "boxes with empty combs")},
    {"end_gap_mm", QT_TRANSLATE_NOOP("working", "gap at each end")},
    {"end_offset_g", QT_TRANSLATE_NOOP("working", "off balance at the end")},
    {"extract_by_days", QT_TRANSLATE_NOOP("working", "days it may wait")},
    {"extractor_slots", QT_TRANSLATE_NOOP("working", "slots of the extractor")},
    {"eye_off", QT_TRANSLATE_NOOP("working", "how far the eye was off")},
    {"eye_spread", QT_TRANSLATE_NOOP("working", "one box beside the mean, give or take")},
    {"feed_up_to", QT_TRANSLATE_NOOP("working", "willing to feed")},
    {"fill_by_eye", QT_TRANSLATE_NOOP("working", "doubt of a fill judged by eye")},
    {"fill_by_eye_g", QT_TRANSLATE_NOOP("working", "the same in honey")},
    {"filled_share", QT_TRANSLATE_NOOP("working", "filled")},
    {"frame_g", QT_TRANSLATE_NOOP("working", "one frame as it goes in")},
    {"frame_height_mm", QT_TRANSLATE_NOOP("working", "frame, height")},
    {"frame_packs", QT_TRANSLATE_NOOP("working", "packs of frames")},
    {"frame_places", QT_TRANSLATE_NOOP("working", "places for frames")},
    {"frames", QT_TRANSLATE_NOOP("working", "frames")},
    {"frames_burnt", QT_TRANSLATE_NOOP("working", "burnt")},
    {"frames_drawn", QT_TRANSLATE_NOOP("working", "drawn combs there")},
    {"frames_ever", QT_TRANSLATE_NOOP("working", "ever entered")},
    {"frames_free", QT_TRANSLATE_NOOP("working", "free to use, held ones too")},
    {"frames_gone", QT_TRANSLATE_NOOP("working", "gone with their box")},
    {"frames_in_nests", QT_TRANSLATE_NOOP("working", "in nests of living colonies")},
    {"frames_kept", QT_TRANSLATE_NOOP("working", "kept")},
    {"frames_lent", QT_TRANSLATE_NOOP("working", "lent")},
    {"frames_melted", QT_TRANSLATE_NOOP("working", "melted")},
    {"frames_missing", QT_TRANSLATE_NOOP("working", "missing")},
    {"frames_of_bees", QT_TRANSLATE_NOOP("working", "frames of bees")},
    {"frames_of_splits", QT_TRANSLATE_NOOP("working", "frames for splits")},
    {"frames_sold", QT_TRANSLATE_NOOP("working", "sold")},
    {"frames_to_buy", QT_TRANSLATE_NOOP("working", "frames to buy")},
    {"frames_uncapped", QT_TRANSLATE_NOOP("working", "frames uncapped")},
    {"frames_usable", QT_TRANSLATE_NOOP("working", "frames usable")},
    {"frames_weighed", QT_TRANSLATE_NOOP("working", "frames in boxes weighed full and wet")},
    {"freezer_fill_share", QT_TRANSLATE_NOOP("working", "of the freezer filled")},
    {"freezer_holds", QT_TRANSLATE_NOOP("working", "the freezer takes")},
    {"freezer_hours", QT_TRANSLATE_NOOP("working", "in the freezer")},
    {"freezer_litres", QT_TRANSLATE_NOOP("working", "freezer")},
    {"freezer_rounds", QT_TRANSLATE_NOOP("working", "rounds")},
    {"freezer_stay_hours", QT_TRANSLATE_NOOP("working", "in the freezer at least")},
    {"full_frame_from_got", QT_TRANSLATE_NOOP("working", "a full frame, from what was got")},
    {"full_frame_g", QT_TRANSLATE_NOOP("working", "honey in a full frame")},
    {"g_mm", QT_TRANSLATE_NOOP("working", "imbalance")},
    {"gap_mm", QT_TRANSLATE_NOOP("working", "gap between the boxes' frames")},
    {"got_per_frame", QT_TRANSLATE_NOOP("working", "got a frame")},
    {"got_per_frame_g", QT_TRANSLATE_NOOP("working", "got a frame")},
    {"grade", QT_TRANSLATE_NOOP("working", "balance grade")},
    {"gross", QT_TRANSLATE_NOOP("working", "to lift")},
    {"heft_between_g", QT_TRANSLATE_NOOP("working", "boxes differ by")},
    {"heft_feel_g", QT_TRANSLATE_NOOP("working", "how far the hand is off")},
    {"heft_heavy_g", QT_TRANSLATE_NOOP("working", "honey of a heavy frame")},
    {"heft_light_g", QT_TRANSLATE_NOOP("working", "honey of a light frame")},
    {"heft_mean_g", QT_TRANSLATE_NOOP("working", "honey of a frame, on average")},
    {"heft_sd_g", QT_TRANSLATE_NOOP("working", "frames differ by")},
    {"heft_within_g", QT_TRANSLATE_NOOP("working", "frames of a box differ by")},
    {"hive_bees_g", QT_TRANSLATE_NOOP("working", "bees and brood")},
    {"hive_frames_g", QT_TRANSLATE_NOOP("working", "frames, empty")},
    {"hive_gross_g", QT_TRANSLATE_NOOP("working", "hive on the scale, both sides")},
    {"hive_honey", QT_TRANSLATE_NOOP("working", "honey of a hive")},
    {"hive_wood_g", QT_TRANSLATE_NOOP("working", "hive without frames and bees")},
    {"hives", QT_TRANSLATE_NOOP("working", "hives")},
    {"hives_needing_boards", QT_TRANSLATE_NOOP("working", "hives that need a board")},
    {"hives_opened", QT_TRANSLATE_NOOP("working", "hives opened")},
    {"hives_with_a_figure", QT_TRANSLATE_NOOP("working", "hives with a figure")},
    {"honey", QT_TRANSLATE_NOOP("working", "honey")},
    {"honey_before", QT_TRANSLATE_NOOP("working", "honey of the year beside it")},
    {"honey_bound", QT_TRANSLATE_NOOP("working", "most that could be taken")},
    {"honey_g", QT_TRANSLATE_NOOP("working", "honey")},
    {"honey_per_hive", QT_TRANSLATE_NOOP("working", "honey a hive")},
    {"honey_per_wax", QT_TRANSLATE_NOOP("working", "honey for wax")},
    {"honey_spared_g", QT_TRANSLATE_NOOP("working", "honey spared the bees")},
    {"honey_sum", QT_TRANSLATE_NOOP("working", "honey together")},
    {"honey_taken", QT_TRANSLATE_NOOP("working", "honey taken")},
    {"in_bucket", QT_TRANSLATE_NOOP("working", "in a bucket")},
    {"in_buckets", QT_TRANSLATE_NOOP("working", "in the buckets")},
    {"in_store", QT_TRANSLATE_NOOP("working", "in the storeroom")},
    {"jar_loss_share", QT_TRANSLATE_NOOP("working", "lost on tank and sieve")},
    {"jar_net_g", QT_TRANSLATE_NOOP("working", "honey in a jar")},
    {"jars", QT_TRANSLATE_NOOP("working", "jars")},
    {"judged_filled", QT_TRANSLATE_NOOP("working", "judged full")},
    {"kg_per_l", QT_TRANSLATE_NOOP("working", "density")},
    {"kg_per_l_20c", QT_TRANSLATE_NOOP("working", "density at 20 °C")},
    {"kill_hours", QT_TRANSLATE_NOOP("working", "core at that temperature for")},
    {"kit_in_repair", QT_TRANSLATE_NOOP("working", "in repair")},
    {"kit_need", QT_TRANSLATE_NOOP("working", "needed")},
    {"kit_short", QT_TRANSLATE_NOOP("working", "short now")},
    {"kit_short_after_repair", QT_TRANSLATE_NOOP("working", "short after repairs")},
    {"kit_spare", QT_TRANSLATE_NOOP("working", "to spare")},
    {"kit_there", QT_TRANSLATE_NOOP("working", "there and whole")},
    {"kit_usable", QT_TRANSLATE_NOOP("working", "usable")},
    {"kit_wanted", QT_TRANSLATE_NOOP("working", "wanted by colonies and splits")},
    {"last_load_ends", QT_TRANSLATE_NOOP("working", "last load ends")},
    {"learned", QT_TRANSLATE_NOOP("working", "from now on")},
    {"left", QT_TRANSLATE_NOOP("working", "left over")},
    {"left_filled", QT_TRANSLATE_NOOP("working", "side A filled")},
    {"left_in_supers", QT_TRANSLATE_NOOP("working", "in supers that stay")},
    {"loads", QT_TRANSLATE_NOOP("working", "loads")},
    {"look_after_days", QT_TRANSLATE_NOOP("working", "patience until one may look")},
    {"look_from", QT_TRANSLATE_NOOP("working", "look from")},
    {"loss_mean_share", QT_TRANSLATE_NOOP("working", "mean of the yards")},
    {"loss_total_share", QT_TRANSLATE_NOOP("working", "of all colonies")},
    {"lot_change_min", QT_TRANSLATE_NOOP("working", "change of lot")},
    {"lot_frames", QT_TRANSLATE_NOOP("working", "frames of the lot")},
    {"lower_bound_g", QT_TRANSLATE_NOOP("working", "no order is better than")},
    {"mean", QT_TRANSLATE_NOOP("working", "mean")},
    {"mean_filled", QT_TRANSLATE_NOOP("working", "filled")},
    {"minutes", QT_TRANSLATE_NOOP("working", "minutes")},
    {"minutes_a_hive", QT_TRANSLATE_NOOP("working", "minutes a hive")},
    {"minutes_per_frame", QT_TRANSLATE_NOOP("working", "a frame at the knife")},
    {"minutes_per_load", QT_TRANSLATE_NOOP("working", "minutes a load")},
    {"mite_doubling_days", QT_TRANSLATE_NOOP("working", "days in which mites double")},
    {"mite_line_per_100", QT_TRANSLATE_NOOP("working", "line of the keeper, in 100 bees")},
    {"mites", QT_TRANSLATE_NOOP("working", "mites found")},
    {"mites_high_per_100", QT_TRANSLATE_NOOP("working", "mites in 100 bees, at most")},
    {"mites_low_per_100", QT_TRANSLATE_NOOP("working", "mites in 100 bees, at least")},
    {"mites_over_in_days", QT_TRANSLATE_NOOP("working", "days until the line")},
    {"mites_per_100", QT_TRANSLATE_NOOP("working", "mites in 100 bees")},
    {"nest_stores", QT_TRANSLATE_NOOP("working", "stores in the nest")},
    {"newton", QT_TRANSLATE_NOOP("working", "pull on the axle")},
    {"noted_from_paper", QT_TRANSLATE_NOOP("working", "noted from paper")},
    {"off_box", QT_TRANSLATE_NOOP("working", "off the box, full less wet")},
    {"off_boxes", QT_TRANSLATE_NOOP("working", "off the boxes, full less wet")},
    {"off_hive_boxes", QT_TRANSLATE_NOOP("working", "off this hive's boxes")},
    {"off_own_boxes", QT_TRANSLATE_NOOP("working", "off these boxes, full less wet")},
    {"offset_g", QT_TRANSLATE_NOOP("working", "off balance")},
    {"omega", QT_TRANSLATE_NOOP("working", "turning speed")},
    {"on_empty_hives", QT_TRANSLATE_NOOP("working", "on hives without a colony")},
    {"on_hand", QT_TRANSLATE_NOOP("working", "in the shed")},
    {"on_hives", QT_TRANSLATE_NOOP("working", "on hives in use")},
    {"ordinary_comb_thickness_mm",
     QT_TRANSLATE_NOOP("working", "thickness of a comb at the usual spacing")},
    {"pa_s", QT_TRANSLATE_NOOP("working", "how thick the honey is")},
    {"packs", QT_TRANSLATE_NOOP("working", "packs")},
    {"payload_boxes", QT_TRANSLATE_NOOP("working", "boxes it carries")},
    {"payload_g", QT_TRANSLATE_NOOP("working", "payload")},
    {"published", QT_TRANSLATE_NOOP("working", "published")},
    {"published_sd", QT_TRANSLATE_NOOP("working", "published, give or take")},
    {"radius_mm", QT_TRANSLATE_NOOP("working", "radius")},
    {"ran_smooth_g", QT_TRANSLATE_NOOP("working", "ran smooth before")},
    {"rate_in_force", QT_TRANSLATE_NOOP("working", "rate in force")},
    {"reckoned_in_boxes", QT_TRANSLATE_NOOP("working", "reckoned in the boxes")},
    {"reckoned_per_frame", QT_TRANSLATE_NOOP("working", "reckoned a frame")},
    {"refractive_index", QT_TRANSLATE_NOOP("working", "refractive index")},
    {"refractive_index_20c", QT_TRANSLATE_NOOP("working", "refractive index at 20 °C")},
    {"remaining_g", QT_TRANSLATE_NOOP("working", "left to the hive")},
    {"rendered_g", QT_TRANSLATE_NOOP("working", "wax by your guess")},
    {"rendered_high_g", QT_TRANSLATE_NOOP("working", "wax at most")},
    {"rendered_low_g", QT_TRANSLATE_NOOP("working", "wax at least")},
    {"right_filled", QT_TRANSLATE_NOOP("working", "side B filled")},
    {"room_damp", QT_TRANSLATE_NOOP("working", "humidity of the room")},
    {"rotor_kg", QT_TRANSLATE_NOOP("working", "drum with its load")},
    {"rpm", QT_TRANSLATE_NOOP("working", "turns a minute")},
    {"runs_seen", QT_TRANSLATE_NOOP("working", "runs seen")},
    {"scrapings", QT_TRANSLATE_NOOP("working", "scrapings")},
    {"seen_mean", QT_TRANSLATE_NOOP("working", "seen, on average")},
    {"seen_sd", QT_TRANSLATE_NOOP("working", "one run, give or take")},
    {"set_up", QT_TRANSLATE_NOOP("working", "setting up")},
    {"set_up_min", QT_TRANSLATE_NOOP("working", "setting up, given")},
    {"share_g", QT_TRANSLATE_NOOP("working", "its share of the buckets")},
    {"share_of_allowed", QT_TRANSLATE_NOOP("working", "of what is allowed")},
    {"share_of_run", QT_TRANSLATE_NOOP("working", "share of the run's buckets")},
    {"sheet_packs", QT_TRANSLATE_NOOP("working", "packs of foundation")},
    {"sheets_needed", QT_TRANSLATE_NOOP("working", "sheets of foundation")},
    {"sheets_there", QT_TRANSLATE_NOOP("working", "sheets on the shelf")},
    {"sheets_to_buy", QT_TRANSLATE_NOOP("working", "sheets to buy")},
    {"short_g", QT_TRANSLATE_NOOP("working", "to feed")},
    {"side_gap_mm", QT_TRANSLATE_NOOP("working", "gap at each wall")},
    {"spare_share", QT_TRANSLATE_NOOP("working", "buckets to spare")},
    {"spin_min_per_load", QT_TRANSLATE_NOOP("working", "spinning a load")},
    {"spinning", QT_TRANSLATE_NOOP("working", "spinning")},
    {"splits", QT_TRANSLATE_NOOP("working", "splits")},
    {"spread_g", QT_TRANSLATE_NOOP("working", "give or take, one standard deviation")},
    {"stack_g", QT_TRANSLATE_NOOP("working", "stack, mass known")},
    {"stack_height_mm", QT_TRANSLATE_NOOP("working", "stack, height")},
    {"stack_litres", QT_TRANSLATE_NOOP("working", "stack, room")},
    {"stacks_crosswise", QT_TRANSLATE_NOOP("working", "stacks, boxes across")},
    {"stacks_lengthwise", QT_TRANSLATE_NOOP("working", "stacks, boxes along")},
    {"start_offset_g", QT_TRANSLATE_NOOP("working", "off balance at the start")},
    {"stores_floor_g", QT_TRANSLATE_NOOP("working", "stores never to be touched")},
    {"stores_g", QT_TRANSLATE_NOOP("working", "stores")},
    {"stores_gap_g", QT_TRANSLATE_NOOP("working", "stores that are short")},
    {"stores_last_days", QT_TRANSLATE_NOOP("working", "days the stores last")},
    {"stores_per_sugar", QT_TRANSLATE_NOOP("working", "stores a kilogram of sugar makes")},
    {"stores_use_g_per_day", QT_TRANSLATE_NOOP("working", "stores used a day")},
    {"strain_high", QT_TRANSLATE_NOOP("working", "strainer, at most")},
    {"strain_low", QT_TRANSLATE_NOOP("working", "strainer, at least")},
    {"strain_rate", QT_TRANSLATE_NOOP("working", "strainer")},
    {"strain_seen", QT_TRANSLATE_NOOP("working", "strainer, seen before")},
    {"sugar_g", QT_TRANSLATE_NOOP("working", "sugar")},
    {"sugar_water_ml", QT_TRANSLATE_NOOP("working", "water")},
    {"supers", QT_TRANSLATE_NOOP("working", "supers")},
    {"supers_standing", QT_TRANSLATE_NOOP("working", "supers on")},
    {"swap_min", QT_TRANSLATE_NOOP("working", "emptying and filling")},
    {"temperature_c", QT_TRANSLATE_NOOP("working", "temperature")},
    {"test_frame_after_days", QT_TRANSLATE_NOOP("working", "patience until a frame with eggs")},
    {"top_space_mm", QT_TRANSLATE_NOOP("working", "clear above the top bars below")},
    {"unaccounted", QT_TRANSLATE_NOOP("working", "missing")},
    {"uncap_min_per_frame", QT_TRANSLATE_NOOP("working", "uncapping a frame")},
    {"uncapping", QT_TRANSLATE_NOOP("working", "uncapping")},
    {"value_offered", QT_TRANSLATE_NOOP("working", "offered, as it would be kept")},
    {"visits", QT_TRANSLATE_NOOP("working", "visits with their hours")},
    {"wash_min", QT_TRANSLATE_NOOP("working", "washing up, given")},
    {"washing", QT_TRANSLATE_NOOP("working", "washing up")},
    {"water_percent", QT_TRANSLATE_NOOP("working", "water")},
    {"wax_on_shelf", QT_TRANSLATE_NOOP("working", "wax in them")},
    {"weighed_box_g", QT_TRANSLATE_NOOP("working", "a medium with empty combs")},
    {"weighed_filled", QT_TRANSLATE_NOOP("working", "full by the scales")},
    {"wet_cappings", QT_TRANSLATE_NOOP("working", "wet cappings")},
    {"wet_frame_g", QT_TRANSLATE_NOOP("working", "wood and wet comb")},
    {"wettest_percent", QT_TRANSLATE_NOOP("working", "water at most")},
    {"winter_need", QT_TRANSLATE_NOOP("working", "left for winter")},
    {"without_hive", QT_TRANSLATE_NOOP("working", "honey without a hive")},
    {"yard_honey", QT_TRANSLATE_NOOP("working", "honey of a yard")},
};

const StepLabel* findStepLabel(std::string_view key) {
    const auto* found = std::find_if(std::begin(stepLabels), std::end(stepLabels),
                                     [&](const StepLabel& label) { return label.key == key; });
    return found == std::end(stepLabels) ? nullptr : found;
}

QString workingNumber(double number, int decimals) {
    return QLocale().toString(number, 'f', decimals);
}

/// As few decimals as the number has, up to four: 12, 0.85, 1.4915.
QString shortest(double number) {
    for (int decimals = 0; decimals < 4; ++decimals) {
        const double steps = std::pow(10.0, decimals);
        if (std::abs(number * steps - std::round(number * steps)) < 1e-7)
            return workingNumber(number, decimals);
    }
    return workingNumber(number, 4);
}

QString massValue(double grams) {
    if (shownUnits() == Units::UsCustomary)
        return ShownFigure{workingNumber(inMassUnits(grams), 3), massUnit()}.text();
    if (std::abs(grams) < 1000.0)
        return ShownFigure{workingNumber(grams, grams == std::round(grams) ? 0 : 1),
                           QStringLiteral("g")}
            .text();
    return ShownFigure{workingNumber(grams / 1000.0, 3), massUnit()}.text();
}

}  // namespace

bool hasStepWord(std::string_view key) { return findStepLabel(key) || hasWord(key); }

QString stepWord(const Working::Step& step) {
    if (const StepLabel* label = findStepLabel(step.what))
        return QCoreApplication::translate("working", label->label);
    return word(step.what);
}

QString stepValue(const Working::Step& step) {
    if (!std::isfinite(step.value)) return QStringLiteral("?");
    if (step.unit == "g") return massValue(step.value);
    if (step.unit == "kg") return massValue(step.value * 1000.0);
    if (step.unit == "mm") return shownLength(step.value).text();
    if (step.unit == "°C") return shownTemperature(step.value).text();
    return ShownFigure{shortest(step.value), fromUtf8(step.unit)}.text();
}

}  // namespace combwright
