// The invented season behind the gallery: values only, so that tests and the manual draw the same.
#pragma once

#include <QString>
#include <utility>
#include <vector>

#include "ui/drawing/balance.h"
#include "ui/drawing/bucket.h"
#include "ui/drawing/extractor.h"
#include "ui/drawing/frame.h"
#include "ui/drawing/frame_row.h"
#include "ui/drawing/ribbon.h"
#include "ui/drawing/stack.h"

namespace combwright {

/// A drawing with its two lines of words.
template <class View>
struct DrawnSample {
    View view;
    QString title;
    QString words = {};
};

/// Comb states, then the sixteen faults: three rows of eight.
std::vector<DrawnSample<FrameView>> frameSamples();
/// Four kinds at one scale, 70 % filled, half capped.
std::vector<DrawnSample<FrameView>> kindSamples();
/// A frame whose two sides differ.
FrameView twoSidedSample();
std::vector<DrawnSample<StackView>> stackSamples();
std::vector<DrawnSample<BucketView>> bucketSamples();
std::vector<DrawnSample<FrameRowView>> rowSamples();
std::vector<DrawnSample<ExtractorView>> extractorSamples();
RibbonView ribbonSample();
BalanceView balanceSample();
std::vector<std::pair<FigureText, QString>> figureSamples();

}  // namespace combwright
