#include "core/trade/storeroom/stack_load.h"

#include <utility>

#include "core/trade/honey/jars.h"
#include "core/trade/storeroom/freezer.h"

namespace combwright {

Lift judgeLift(std::optional<double> massG, const LiftLimits& limits) {
    if (!massG) return Lift::NotKnown;
    if (*massG > limits.mostG) return Lift::TwoPeople;
    return *massG > limits.carefulG ? Lift::Careful : Lift::Light;
}

StackLoad stackLoad(std::span<const BoxToStack> boxes, const LiftLimits& limits, Working* working) {
    StackLoad load;
    for (std::size_t i = 0; i < boxes.size(); ++i) {
        const BoxToStack& box = boxes[i];
        load.heightMm += box.heightMm.value_or(0);
        if (box.outerLengthMm && box.outerWidthMm && box.heightMm)
            load.litres += boxLitres(*box.outerLengthMm, *box.outerWidthMm, *box.heightMm);
        else
            ++load.notMeasured;
        load.massG += box.massG.value_or(0);
        if (!box.massG) ++load.notWeighed;
        const Lift lift = judgeLift(box.massG, limits);
        if (lift == Lift::Careful) load.careful.push_back(i);
        if (lift == Lift::TwoPeople) load.twoPeople.push_back(i);
    }
    note(working, "stack_height_mm", load.heightMm, "mm", "sum of the boxes");
    note(working, "stack_litres", load.litres, "L", "sum of length · width · height");
    note(working, "stack_g", load.massG, "g", "sum of the boxes weighed or reckoned");
    return load;
}

Result<FloorStacks> stacksOnFloor(double floorLengthMm, double floorWidthMm, double outerLengthMm,
                                  double outerWidthMm, Working* working) {
    for (const auto& [field, side] :
         {std::pair{"floor_length_mm", floorLengthMm}, std::pair{"floor_width_mm", floorWidthMm},
          std::pair{"outer_length_mm", outerLengthMm}, std::pair{"outer_width_mm", outerWidthMm}})
        if (!(side > 0 && side < 1e7)) return Refusal{Code::OutOfRange, field, {{"low", "0"}}};
    FloorStacks stacks;
    stacks.lengthwise =
        filledBy(floorLengthMm, outerLengthMm) * filledBy(floorWidthMm, outerWidthMm);
    stacks.crosswise =
        filledBy(floorLengthMm, outerWidthMm) * filledBy(floorWidthMm, outerLengthMm);
    note(working, "stacks_lengthwise", static_cast<double>(stacks.lengthwise), "",
         "⌊floor length ÷ box length⌋ · ⌊floor width ÷ box width⌋");
    note(working, "stacks_crosswise", static_cast<double>(stacks.crosswise), "",
         "⌊floor length ÷ box width⌋ · ⌊floor width ÷ box length⌋");
    return stacks;
}

Result<std::int64_t> boxesInPayload(double payloadG, double boxG, Working* working) {
    if (!(payloadG > 0)) return Refusal{Code::OutOfRange, "payload_g", {{"low", "0"}}};
    if (!(boxG > 0)) return Refusal{Code::OutOfRange, "box_g", {{"low", "0"}}};
    const std::int64_t boxes = filledBy(payloadG, boxG);
    note(working, "payload_g", payloadG, "g");
    note(working, "payload_boxes", static_cast<double>(boxes), "", "⌊payload ÷ a box⌋");
    return boxes;
}

}  // namespace combwright
