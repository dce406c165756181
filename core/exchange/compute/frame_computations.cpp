#include "core/catalogue/catalogue.h"
#include "core/exchange/compute/computations.h"
#include "core/exchange/compute/object_reader.h"
#include "core/trade/frames/frame_honey.h"

namespace combwright {
namespace {

/// The frame kind a key names; nothing, and refused, where there is none.
const PublishedFrame* frameKindOfKey(ObjectReader& in, std::string_view key) {
    const std::string id = in.text(key);
    const PublishedFrame* kind = findPublishedFrame(id);
    if (!kind) in.refuse(Code::NotFound, key, {{"name", id}});
    return kind;
}

/// Both counts or neither.
std::optional<BoxSpacing> boxSpacingOfKeys(ObjectReader& in, const PublishedFrame* kind) {
    const auto frames = in.optionalCount("frames_in_box", {1});
    const auto nominal = in.optionalCount("box_nominal", {1});
    const bool hasFrames = in.has("frames_in_box");
    if (hasFrames != in.has("box_nominal"))
        in.refuse(Code::Missing, hasFrames ? "box_nominal" : "frames_in_box",
                  {{"other", hasFrames ? "frames_in_box" : "box_nominal"}});
    if (!kind || !frames || !nominal) return std::nullopt;
    const auto width = innerWidthFor(*kind, *nominal);
    if (!width) {
        in.refuse(Code::UnknownSize, "frame", {{"name", kind->id}});
        return std::nullopt;
    }
    return BoxSpacing{width->mm(), *frames, *nominal};
}

Result<QJsonObject> computeFrameHoney(const QJsonObject& input) {
    ObjectReader in(input);
    const PublishedFrame* kind = frameKindOfKey(in, "frame");
    FrameFill fill{};
    fill.leftFilled = in.share("left_filled");
    fill.rightFilled = in.share("right_filled");
    if (kind && !kind->combAreaDm2) in.refuse(Code::UnknownSize, "frame", {{"name", kind->id}});
    fill.spacing = boxSpacingOfKeys(in, kind);
    if (auto good = in.finish(); !good) return good.error();

    fill.fullFrameG = fullFrameGrams(*kind->combAreaDm2);
    const auto honey = frameHoney(fill);
    if (!honey) return honey.error();
    return QJsonObject{{"honey_g", honey->grams}, {"spread_g", honey->spreadG()}};
}

}  // namespace

std::vector<Computation> frameComputations() { return {{"frame-honey", &computeFrameHoney}}; }

}  // namespace combwright
