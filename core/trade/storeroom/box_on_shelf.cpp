#include "core/trade/storeroom/box_on_shelf.h"

#include <algorithm>

#include "core/trade/frames/frame_honey.h"

namespace combwright {

Between boxOnShelfGrams(const BoxOnShelf& box) {
    const auto wood = [&](std::int64_t frames) {
        const double part = static_cast<double>(frames) / static_cast<double>(box.nominal);
        return box.emptyG * (1 - framesShareOfBox + framesShareOfBox * part);
    };
    const std::int64_t likely = box.frames.value_or(box.nominal);
    const double least = wood(box.frames.value_or(0)) * (1 - woodSpreadShare);
    const double most = wood(box.frames.value_or(box.nominal)) * (1 + woodSpreadShare);
    HoneyShare honey;
    for (const HoneyShare& each : box.honey) {
        honey.low += each.low;
        honey.likely += each.likely;
        honey.high += each.high;
    }
    const double crop = HoneyRates{}.cropSpreadShare;
    Between grams;
    grams.low = least + honey.low * box.fullFrameG * (1 - crop);
    grams.likely = wood(likely) + honey.likely * box.fullFrameG;
    grams.high = most + honey.high * box.fullFrameG * (1 + crop);
    return grams;
}

}  // namespace combwright
