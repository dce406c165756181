#include "core/trade/extractor/box_flow.h"

#include <algorithm>

namespace combwright {

BoxFlow::BoxFlow(std::vector<Box> boxes, std::vector<std::size_t> boxOf, std::size_t standing)
    : m_boxes(std::move(boxes)), m_boxOf(std::move(boxOf)), m_standing(standing) {}

std::vector<BoxFlow::Stay> BoxFlow::stays(const std::vector<SpinPlaces>& loads) const {
    std::vector<Stay> all(m_boxes.size());
    for (std::size_t load = 0; load < loads.size(); ++load)
        for (const auto& frame : loads[load]) {
            if (!frame) continue;
            Stay& stay = all[m_boxOf[*frame]];
            if (stay.from == 0) stay.from = load + 1;
            stay.to = load + 1;
        }
    for (std::size_t b = 0; b < all.size(); ++b) {
        if (m_boxes[b].begunBefore) all[b].from = 0;
        if (m_boxes[b].goesOn) all[b].to = loads.size() + 1;
    }
    return all;
}

std::size_t BoxFlow::peak(const std::vector<SpinPlaces>& loads, OpenBoxCount count) const {
    // What each load changes: boxes come in with it, boxes are finished in it, some do both.
    std::vector<std::size_t> begun(loads.size() + 2, 0);
    std::vector<std::size_t> finished(loads.size() + 2, 0);
    std::vector<std::size_t> whole(loads.size() + 2, 0);
    for (const Stay& stay : stays(loads)) {
        ++begun[stay.from];
        ++finished[stay.to];
        if (stay.from == stay.to) ++whole[stay.from];
    }
    std::size_t open = begun[0];
    std::size_t most = 0;
    for (std::size_t load = 1; load <= loads.size(); ++load) {
        const std::size_t touched = open + begun[load];
        const std::size_t through = open - (finished[load] - whole[load]);
        const std::size_t after = touched - finished[load];
        most = std::max(most, count == OpenBoxCount::WholeLoads
                                  ? touched
                                  : std::max({open, after, through + (whole[load] > 0 ? 1U : 0U)}));
        open = after;
    }
    return most + m_standing;
}

std::size_t BoxFlow::spread(const std::vector<SpinPlaces>& loads) const {
    std::size_t sum = 0;
    for (const Stay& stay : stays(loads)) sum += stay.to - stay.from + 1;
    return sum;
}

}  // namespace combwright
