// The kinds of frames and boxes the trade sells, with their measures and where each is printed.
// They seed a season file; the keeper adds and measures kinds of their own there. A blank measure
// is not known: it stays empty all the way, so that nothing is ever computed from a zero.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/units/count.h"
#include "core/units/length.h"

namespace combwright {

/// A frame, or a bar for a hive without frames.
struct PublishedFrame {
    std::string id;  ///< as scripts name it: "LANG-F-MED"
    std::string family;
    std::string commonName;
    std::optional<Length> topBarLength;
    std::optional<Length> topBarWidth;
    std::optional<Length> topBarThickness;
    std::optional<Length> sideBarHeight;  ///< top of the top bar to the underside of the bottom bar
    std::optional<Length> bottomBarLength;  ///< also the frame's outside width
    std::optional<Length> endBarSpacing;    ///< from comb to comb when the frames touch
    std::optional<Length> combInnerWidth;   ///< the opening comb can fill
    std::optional<Length> combInnerHeight;
    std::optional<double> combAreaDm2;        ///< of one side
    std::optional<Count> workerCellsOneSide;  ///< that fit, 5.4 mm each; not brood really reared
    std::string source;                       ///< keys are those of sources()
};

/// Where a box leaves the bees their way between its frames and the next box.
enum class PublishedBeeSpace { Top, Bottom, NoStacking };

/// A box. Lengths run along the frames, widths across them.
struct PublishedBox {
    std::string id;
    std::string family;
    std::string commonName;
    std::optional<Count> framesNominal;
    std::optional<Length> outerLength;
    std::optional<Length> outerWidth;
    std::optional<Length> outerHeight;  ///< what it adds to a stack
    std::optional<Length> innerLength;  ///< where the end bars hang
    std::optional<Length> innerWidth;
    std::optional<Length> restDepth;  ///< from the box's top edge to where the lugs sit
    std::optional<PublishedBeeSpace> beeSpace;
    std::string takesFrame;  ///< id of the frame it was made for
    std::string source;
};

/// A printed source, named by its key in the source texts.
struct PrintedSource {
    std::string key;  ///< "S14"
    std::string title;
};

/// All kinds in the order of the trade tables: families together, deep before shallow.
const std::vector<PublishedFrame>& publishedFrames();
const std::vector<PublishedBox>& publishedBoxes();
const std::vector<PrintedSource>& sources();

/// The kind of that id, or nothing.
const PublishedFrame* findPublishedFrame(std::string_view id);
const PublishedBox* findPublishedBox(std::string_view id);
const PrintedSource* findSource(std::string_view key);

/// How wide inside a box is that was made for so many of these frames: that of the first box kind
/// made for this frame and this many; where no such box is tabulated, as many times the room the
/// frame has in the first box made for it, or else its end bar spacing. Nothing where neither is
/// known. Only the ratio between two spacings in it matters to honey, so a few mm do little harm.
std::optional<Length> innerWidthFor(const PublishedFrame& frame, std::int64_t nominal);

}  // namespace combwright
