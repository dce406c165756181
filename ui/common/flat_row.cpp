#include "ui/common/flat_row.h"

#include "ui/drawing/strokes.h"

namespace combwright {
namespace {

CombState combOf(const std::optional<Comb>& comb) {
    if (!comb) return CombState::Unknown;
    switch (*comb) {
        case Comb::Bare:
            return CombState::Bare;
        case Comb::Foundation:
            return CombState::Foundation;
        case Comb::PartDrawn:
            return CombState::PartDrawn;
        case Comb::Drawn:
        case Comb::DrawnFat:
            return CombState::Drawn;
    }
    return CombState::Unknown;
}

}  // namespace

FrameShape frameShapeOf(const std::optional<FrameKind>& kind) {
    FrameShape shape;
    if (!kind) return shape;
    const auto take = [](double& into, const std::optional<Length>& length) {
        if (length) into = length->mm();
    };
    take(shape.topBarLength, kind->topBarLength);
    take(shape.topBarThickness, kind->topBarThickness);
    take(shape.height, kind->height);
    take(shape.bottomBarLength, kind->bottomBarLength);
    take(shape.combWidth, kind->combWidth);
    take(shape.combHeight, kind->combHeight);
    return shape;
}

FrameView flatView(const FlatFrame& flat, const FrameShape& shape, std::uint64_t seed) {
    FrameView view;
    view.shape = shape;
    view.comb = combOf(flat.comb);
    if (view.comb == CombState::PartDrawn) view.drawn = 0.5;
    view.wet = flat.wet;
    view.a = {flat.filledA, flat.capped, std::nullopt};
    view.b = SideView{flat.filledB, flat.capped, std::nullopt};
    for (const char letter : flat.faults)
        if (const auto fault = faultFor(QLatin1Char(letter))) view.faults.push_back(*fault);
    view.seed = seed;
    return view;
}

FrameRowView flatRow(const QString& mark, const std::vector<FlatFrame>& frames,
                     const FrameShape& shape) {
    FrameRowView row;
    row.mark = mark;
    std::uint64_t seed = seedOf(mark);
    for (const FlatFrame& flat : frames)
        (flat.place ? row.pointed : row.counted).push_back(flatView(flat, shape, ++seed));
    return row;
}

}  // namespace combwright
