#include "core/trade/storeroom/frame_needs.h"

#include <algorithm>
#include <string>
#include <utility>

#include "core/trade/honey/published_table.h"

namespace combwright {
namespace {

constexpr std::int64_t mostPlacesInBox = 1000;
constexpr std::int64_t mostBoxesToFill = 1'000'000;

}  // namespace

Result<std::int64_t> placesToFill(const BoxesToFill& fill, std::int64_t drawn, Working* working) {
    if (fill.boxes < 0) return Refusal{Code::Negative, "boxes"};
    if (fill.boxes > mostBoxesToFill)
        return Refusal{Code::TooMany, "boxes", {{"most", std::to_string(mostBoxesToFill)}}};
    if (drawn < 0) return Refusal{Code::Negative, "drawn"};
    for (const auto& [field, count] : {std::pair{"drawn_per_box", fill.drawnPerBox},
                                       std::pair{"undrawn_per_box", fill.undrawnPerBox}})
        if (count < 1 || count > mostPlacesInBox)
            return outOfRange(field, static_cast<double>(count), 1, mostPlacesInBox);
    const std::int64_t drawnBoxes = std::min(fill.boxes, drawn / fill.drawnPerBox);
    const std::int64_t places =
        drawnBoxes * fill.drawnPerBox + (fill.boxes - drawnBoxes) * fill.undrawnPerBox;
    note(working, "drawn_boxes", static_cast<double>(drawnBoxes), "", "⌊drawn ÷ drawn a box⌋");
    note(working, "frame_places", static_cast<double>(places), "",
         "drawn boxes · drawn a box + other boxes · undrawn a box");
    return places;
}

Result<FrameAnswer> frameNeeds(std::int64_t places, const FrameStock& stock, Working* working) {
    for (const auto& [field, count] :
         {std::pair{"slots", places}, std::pair{"drawn", stock.drawn},
          std::pair{"with_foundation", stock.withFoundation},
          std::pair{"bare_sound", stock.bareSound}, std::pair{"repairable", stock.repairable}})
        if (count < 0) return Refusal{Code::Negative, field};
    FrameAnswer answer;
    answer.places = places;
    const std::int64_t withComb = stock.drawn + stock.withFoundation;
    answer.usable = withComb + stock.bareSound + stock.repairable;
    answer.buyFrames = std::max<std::int64_t>(0, places - answer.usable);
    answer.foundationSheets = std::max<std::int64_t>(0, places - withComb);
    note(working, "frame_places", static_cast<double>(places), "");
    note(working, "frames_usable", static_cast<double>(answer.usable), "",
         "drawn + with foundation + bare + repairable");
    note(working, "frames_to_buy", static_cast<double>(answer.buyFrames), "",
         "places − usable, not below 0");
    note(working, "sheets_needed", static_cast<double>(answer.foundationSheets), "",
         "places − drawn − with foundation, not below 0");
    return answer;
}

}  // namespace combwright
