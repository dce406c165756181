#include "core/storage/catalogue_seed.h"

#include <map>

#include "core/catalogue/catalogue.h"
#include "core/model/frames/box.h"

namespace combwright {
namespace {

std::optional<BeeSpace> beeSpaceOf(const std::optional<PublishedBeeSpace>& published) {
    if (!published) return std::nullopt;
    switch (*published) {
        case PublishedBeeSpace::Top:
            return BeeSpace::Top;
        case PublishedBeeSpace::Bottom:
            return BeeSpace::Bottom;
        case PublishedBeeSpace::NoStacking:
            return BeeSpace::None;
    }
    return std::nullopt;
}

}  // namespace

void seedCatalogue(Write& write) {
    std::map<std::string, Id<FrameKind>> frames;
    for (const PublishedFrame& each : publishedFrames()) {
        FrameKind kind;
        kind.code = *Name::of(each.id);
        kind.name = *Name::of(each.commonName);
        kind.family = each.family;
        kind.topBarLength = each.topBarLength;
        kind.topBarWidth = each.topBarWidth;
        kind.topBarThickness = each.topBarThickness;
        kind.height = each.sideBarHeight;
        kind.bottomBarLength = each.bottomBarLength;
        kind.spacing = each.endBarSpacing;
        kind.combWidth = each.combInnerWidth;
        kind.combHeight = each.combInnerHeight;
        kind.source = each.source;
        frames[each.id] = write.add(kind);
    }
    for (const PublishedBox& each : publishedBoxes()) {
        BoxKind kind;
        kind.code = *Name::of(each.id);
        kind.name = *Name::of(each.commonName);
        kind.family = each.family;
        kind.framesNominal = each.framesNominal;
        kind.outerLength = each.outerLength;
        kind.outerWidth = each.outerWidth;
        kind.outerHeight = each.outerHeight;
        kind.innerLength = each.innerLength;
        kind.innerWidth = each.innerWidth;
        kind.restDepth = each.restDepth;
        kind.beeSpace = beeSpaceOf(each.beeSpace);
        if (const auto found = frames.find(each.takesFrame); found != frames.end())
            kind.takes = found->second;
        kind.source = each.source;
        write.add(kind);
    }
}

}  // namespace combwright
