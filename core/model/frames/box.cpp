#include "core/model/frames/box.h"

#include <algorithm>

namespace combwright {

const Fields& FrameKind::fields() {
    static const Fields all = describe(
        ownId<&FrameKind::id>(), field<&FrameKind::code>("code"), field<&FrameKind::name>("name"),
        field<&FrameKind::family>("family"), field<&FrameKind::topBarLength>("top_bar_length"),
        field<&FrameKind::topBarWidth>("top_bar_width"),
        field<&FrameKind::topBarThickness>("top_bar_thickness"),
        field<&FrameKind::height>("height"),
        field<&FrameKind::bottomBarLength>("bottom_bar_length"),
        field<&FrameKind::spacing>("spacing"), field<&FrameKind::combWidth>("comb_width"),
        field<&FrameKind::combHeight>("comb_height"), field<&FrameKind::source>("source"));
    return all;
}

const Fields& BoxKind::fields() {
    static const Fields all = describe(
        ownId<&BoxKind::id>(), field<&BoxKind::code>("code"), field<&BoxKind::name>("name"),
        field<&BoxKind::family>("family"), field<&BoxKind::framesNominal>("frames_nominal"),
        field<&BoxKind::outerLength>("outer_length"), field<&BoxKind::outerWidth>("outer_width"),
        field<&BoxKind::outerHeight>("outer_height"), field<&BoxKind::innerLength>("inner_length"),
        field<&BoxKind::innerWidth>("inner_width"), field<&BoxKind::restDepth>("rest_depth"),
        field<&BoxKind::beeSpace>("bee_space"), field<&BoxKind::takes>("takes"),
        field<&BoxKind::source>("source"));
    return all;
}

bool isNucleusBox(const BoxKind& kind) {
    std::string name = kind.name.text() + " " + kind.code.text();
    std::transform(name.begin(), name.end(), name.begin(),
                   [](char c) { return c >= 'A' && c <= 'Z' ? char(c - 'A' + 'a') : c; });
    return name.find("nuc") != std::string::npos;
}

const Fields& Box::fields() {
    static const Fields all = describe(
        ownId<&Box::id>(), field<&Box::kind>("kind"), field<&Box::mark>("mark"),
        field<&Box::condition>("condition"), field<&Box::place>("place"), field<&Box::hive>("hive"),
        field<&Box::level>("level"), field<&Box::stack>("stack"), field<&Box::since>("since"),
        field<&Box::note>("note"), field<&Box::wantsPaint>("wants_paint"));
    return all;
}

bool inUse(const Box& box) {
    return box.place != BoxPlace::Gone && box.condition != BoxCondition::Scrapped &&
           box.condition != BoxCondition::Burnt;
}

const Fields& BoxMove::fields() {
    static const Fields all = describe(
        ownId<&BoxMove::id>(), field<&BoxMove::box>("box"), field<&BoxMove::on>("on_day"),
        field<&BoxMove::fromPlace>("from_place"), field<&BoxMove::fromHive>("from_hive"),
        field<&BoxMove::fromLevel>("from_level"), field<&BoxMove::toPlace>("to_place"),
        field<&BoxMove::toHive>("to_hive"), field<&BoxMove::toLevel>("to_level"),
        field<&BoxMove::inspection>("inspection"), field<&BoxMove::fromStack>("from_stack"),
        field<&BoxMove::toStack>("to_stack"), field<&BoxMove::fromUnder>("from_under"));
    return all;
}

const Fields& BoxLook::fields() {
    static const Fields all =
        describe(ownId<&BoxLook::id>(), field<&BoxLook::box>("box"), field<&BoxLook::on>("on_day"),
                 field<&BoxLook::inspection>("inspection"), field<&BoxLook::frames>("frames"),
                 known<&BoxLook::cappedFrames>("capped"), known<&BoxLook::filled>("filled"),
                 known<&BoxLook::toFork>("to_fork"), field<&BoxLook::water>("water"),
                 field<&BoxLook::broodIn>("brood_in"), field<&BoxLook::note>("note"));
    return all;
}

}  // namespace combwright
