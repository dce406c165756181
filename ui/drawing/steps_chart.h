// Amounts added up over a year as steps, each step named where it rises, the year beside it dashed
// with its own end; drawn by Qt Charts, the words by us, because a legend far from its line has to
// be looked up. One drawing for window, picture and paper.
#pragma once

#include <QPainter>
#include <QRectF>
#include <QString>
#include <optional>
#include <vector>

#include "core/units/day.h"
#include "ui/drawing/year_axis.h"
#include "ui/look/tokens.h"

namespace combwright {

struct StepsView {
    struct Step {
        Day on;
        double amount = 0.0;
        QString label;
    };
    struct Line {
        int year = 0;
        QString end;
        bool dashed = false;
        std::vector<Step> steps;
        double rest = 0.0;  ///< of the sum, on no known day: a short dotted line at the end
    };
    QString axis;
    std::vector<Line> lines;  ///< the year itself first
    double top = 1.0;
    std::vector<AxisMark> marks;
    std::optional<std::size_t> current = std::nullopt;  ///< step that is marked
    std::size_t currentLine = 0;                        ///< whose it is; 0: of the year itself
    QString said = {};  ///< the marked step as a sentence, at the head
};

/// A label and where it came to stand; none of them touches another or the year's own line.
struct PlacedLabel {
    QRectF box;
    QString text;
    bool bold = false;
    bool muted = false;
};

/// Where the words stand when drawn into that box; steps that found no free place are left out.
std::vector<PlacedLabel> stepLabels(const QRectF& box, const StepsView& view, const Look& look);
/// Where a step rises, of the year itself or of a line beside it: from below to above, px.
QRectF stepRise(const QRectF& box, const StepsView& view, std::size_t step, const Look& look,
                std::size_t line = 0);

void paintSteps(QPainter& painter, const QRectF& box, const StepsView& view, const Look& look);

/// "2027: 8 Aug Creek 66.0 kg; …; together 403.3."
QString spoken(const StepsView& view);

}  // namespace combwright
