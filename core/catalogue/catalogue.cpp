#include "core/catalogue/catalogue.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>

#include "core/catalogue/resource_table.h"

namespace combwright {
namespace {

std::optional<Count> catalogueCount(const ResourceRow& row, std::string_view column) {
    const auto number = row.number(column);
    if (!number) return std::nullopt;
    return Count(std::llround(*number));
}

std::optional<PublishedBeeSpace> catalogueBeeSpace(const ResourceRow& row) {
    const std::string text = row.text("bee_space_position");
    if (text.empty()) return std::nullopt;
    if (text == "top") return PublishedBeeSpace::Top;
    if (text == "bottom") return PublishedBeeSpace::Bottom;
    if (text == "none") return PublishedBeeSpace::NoStacking;
    throw std::logic_error("trade table box_kinds: unknown bee space position " + text);
}

PublishedFrame frameKindOf(const ResourceRow& row) {
    PublishedFrame kind;
    kind.id = row.text("id");
    kind.family = row.text("family");
    kind.commonName = row.text("common_name");
    kind.topBarLength = row.length("top_bar_len_mm");
    kind.topBarWidth = row.length("top_bar_width_mm");
    kind.topBarThickness = row.length("top_bar_thickness_mm");
    kind.sideBarHeight = row.length("side_bar_h_mm");
    kind.bottomBarLength = row.length("bottom_bar_len_mm");
    kind.endBarSpacing = row.length("end_bar_spacing_mm");
    kind.combInnerWidth = row.length("comb_inner_w_mm");
    kind.combInnerHeight = row.length("comb_inner_h_mm");
    kind.combAreaDm2 = row.number("comb_area_one_side_dm2");
    kind.workerCellsOneSide = catalogueCount(row, "worker_cells_one_side");
    kind.source = row.text("source");
    return kind;
}

PublishedBox boxKindOf(const ResourceRow& row) {
    PublishedBox kind;
    kind.id = row.text("id");
    kind.family = row.text("family");
    kind.commonName = row.text("common_name");
    kind.framesNominal = catalogueCount(row, "frames_nominal");
    kind.outerLength = row.length("outer_l_mm");
    kind.outerWidth = row.length("outer_w_mm");
    kind.outerHeight = row.length("outer_h_mm");
    kind.innerLength = row.length("inner_l_mm");
    kind.innerWidth = row.length("inner_w_mm");
    kind.restDepth = row.length("rest_depth_mm");
    kind.beeSpace = catalogueBeeSpace(row);
    kind.takesFrame = row.text("takes_frame_id");
    kind.source = row.text("source");
    return kind;
}

PrintedSource sourceOf(const ResourceRow& row) { return {row.text("key"), row.text("title")}; }

template <class Kind>
std::vector<Kind> readKinds(std::string_view table, Kind (*kindOf)(const ResourceRow&)) {
    std::vector<Kind> kinds;
    const ResourceTable resource(table);
    for (const ResourceRow& row : resource.rows()) kinds.push_back(kindOf(row));
    return kinds;
}

template <class Kind, class Key>
const Kind* findKind(const std::vector<Kind>& kinds, Key Kind::*key, std::string_view wanted) {
    const auto found = std::find_if(kinds.begin(), kinds.end(),
                                    [&](const Kind& each) { return each.*key == wanted; });
    return found == kinds.end() ? nullptr : &*found;
}

}  // namespace

const std::vector<PublishedFrame>& publishedFrames() {
    static const std::vector<PublishedFrame> kinds = readKinds("frame_kinds", &frameKindOf);
    return kinds;
}

const std::vector<PublishedBox>& publishedBoxes() {
    static const std::vector<PublishedBox> kinds = readKinds("box_kinds", &boxKindOf);
    return kinds;
}

const std::vector<PrintedSource>& sources() {
    static const std::vector<PrintedSource> all = readKinds("sources", &sourceOf);
    return all;
}

const PublishedFrame* findPublishedFrame(std::string_view id) {
    return findKind(publishedFrames(), &PublishedFrame::id, id);
}

const PublishedBox* findPublishedBox(std::string_view id) {
    return findKind(publishedBoxes(), &PublishedBox::id, id);
}

const PrintedSource* findSource(std::string_view key) {
    return findKind(sources(), &PrintedSource::key, key);
}

std::optional<Length> innerWidthFor(const PublishedFrame& frame, std::int64_t nominal) {
    std::optional<double> pitchMm;
    for (const PublishedBox& box : publishedBoxes()) {
        if (box.takesFrame != frame.id || !box.innerWidth || !box.framesNominal) continue;
        if (box.framesNominal->value() == nominal) return box.innerWidth;
        if (!pitchMm)
            pitchMm = box.innerWidth->mm() / static_cast<double>(box.framesNominal->value());
    }
    if (!pitchMm && frame.endBarSpacing) pitchMm = frame.endBarSpacing->mm();
    if (!pitchMm) return std::nullopt;
    return Length::roundedMm(*pitchMm * static_cast<double>(nominal));
}

}  // namespace combwright
