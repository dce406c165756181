#include "core/actions/amend/amend_rules.h"
#include "core/model/storeroom/review.h"

namespace combwright {
namespace {

/// A day mistyped at the bench: what the look left behind is of the right day too.
Result<void> moveReview(Write& file, const BoxReview& before, const BoxReview& after) {
    const auto box = file.find(after.box);
    if (after.on < box->since)
        return Refusal{
            Code::BeforeItBegan, "on_day", {{"name", box->mark}, {"since", isoText(box->since)}}};
    if (file.first<BoxReview>({is("box", after.box), is("on_day", after.on)}))
        return Refusal{Code::Taken, "on_day", {{"name", isoText(after.on)}}};
    for (BoxCount& count : file.where<BoxCount>({is("box", before.box), is("on_day", before.on),
                                                 is("occasion", Occasion::WinterReview)})) {
        count.on = after.on;
        file.change(count);
    }
    for (Frame& frame : file.where<Frame>({is("box", before.box), is("reviewed", before.on)})) {
        frame.reviewed = after.on;
        file.change(frame);
    }
    return {};
}

Result<void> settleReview(Write& file, const BoxReview& before, BoxReview& after) {
    if (after.on != before.on)
        if (auto moved = moveReview(file, before, after); !moved) return moved;
    if (after.on == before.on && after.scrapings == before.scrapings) return {};
    auto wax = file.first<RawWax>({is("review", after.id)});
    const bool some =
        after.scrapings && (!after.scrapings->value || *after.scrapings->value > Mass());
    if (!some) {
        if (wax) file.remove(wax->id);
        return {};
    }
    if (!wax) {
        wax.emplace();
        wax->source = RawWaxSource::Scrapings;
        wax->review = after.id;
        wax->box = after.box;
    }
    wax->on = after.on;
    wax->clean = after.scrapings;
    if (wax->id)
        file.change(*wax);
    else
        file.add(*wax);
    return {};
}

/// Scrapings follow the look they were taken at.
Result<void> settleRawWax(Write&, const RawWax& before, RawWax& after) {
    if (!after.review) return {};
    if (after.on != before.on) return against("on_day", "box_review");
    if (after.clean != before.clean) return against("clean_g", "box_review");
    return {};
}

}  // namespace

std::vector<AmendType> benchAmends() {
    return {
        amends<BoxReview>({{"box", ""},
                           {"expected", ""},
                           {"found", "review-box"},
                           {"line", "review-box"},
                           {"comb_years", "review-box"}},
                          &settleReview),
        amends<RawWax>({{"source", ""}, {"review", ""}, {"box", ""}, {"frame_kind", ""}},
                       &settleRawWax),
    };
}

}  // namespace combwright
