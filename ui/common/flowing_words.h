// Words that wrap within a table's cell and differ in size, weight and tone, with the small raised
// letter of how a figure is known behind the figure, as it stands everywhere else in the window.
#pragma once

#include <QPainter>
#include <QRectF>
#include <vector>

#include "ui/look/tokens.h"

namespace combwright {

/// A stretch of such words; a line feed in it begins a new line.
struct FlowingRun {
    QString text;
    TextSize size = TextSize::Body;
    Tone tone = Tone::Ink;
    bool bold = false;
    bool raised = false;  ///< a letter, never parted from what stands before it
};

using FlowingWords = std::vector<FlowingRun>;

/// The letter behind a figure, raised; nothing for 0.
void addHow(FlowingWords& words, char how, TextSize size = TextSize::Body);
/// Height they take at that width, px.
double flowingHeight(const FlowingWords& words, double width, const Look& look);
void paintFlowing(QPainter& painter, const QRectF& room, const FlowingWords& words,
                  const Look& look);

}  // namespace combwright
