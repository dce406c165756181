// Whether what is written and drawn can be seen: contrast, reckoned from the tokens for the light
// theme, the dark one and paper, as the Web Content Accessibility Guidelines 2.1 ask. Text 4.5 to 1
// (1.4.3); lines, bars, marks and the focus ring 3 to 1 (1.4.11).
#include <gtest/gtest.h>

#include <QPalette>
#include <cmath>
#include <vector>

#include "ui/drawing/mark_chart.h"
#include "ui/look/tokens.h"

namespace combwright {
namespace {

constexpr double textLeast = 4.5;
constexpr double shapeLeast = 3.0;

/// Relative luminance as WCAG 2.1 defines it (w3.org/TR/WCAG21/#dfn-relative-luminance), with the
/// 0.03928 of its text.
double channelLight(double value) {
    return value <= 0.03928 ? value / 12.92 : std::pow((value + 0.055) / 1.055, 2.4);
}

double relativeLuminance(const QColor& color) {
    return 0.2126 * channelLight(color.redF()) + 0.7152 * channelLight(color.greenF()) +
           0.0722 * channelLight(color.blueF());
}

/// (L1 + 0.05) / (L2 + 0.05), the lighter first (w3.org/TR/WCAG21/#dfn-contrast-ratio).
double contrast(const QColor& a, const QColor& b) {
    const double one = relativeLuminance(a) + 0.05, other = relativeLuminance(b) + 0.05;
    return one > other ? one / other : other / one;
}

struct NamedLook {
    const char* name;
    Look look;
};

std::vector<NamedLook> threeLooks() {
    const QFont font(QStringLiteral("DejaVu Sans"), 10);
    return {
        {"light", lookFor(font, false)}, {"dark", lookFor(font, true)}, {"paper", paperLook(font)}};
}

/// Whatever a text or a line stands on: the window, a card or a field, the current row.
constexpr Tone grounds[] = {Tone::Ground, Tone::Surface, Tone::Selection};

/// Whether a shape that stands there is seen, by its fill or by its edge.
bool isSeen(const Look& look, Paint fill, const QColor& edge, const QColor& ground) {
    return contrast(look.paint(fill), ground) >= shapeLeast || contrast(edge, ground) >= shapeLeast;
}

}  // namespace

TEST(Contrast, IsReckonedAsWcagDoes) {
    EXPECT_NEAR(contrast(Qt::black, Qt::white), 21.0, 1e-9);  // the largest there is
    EXPECT_NEAR(contrast(Qt::white, Qt::black), 21.0, 1e-9);  // whichever is in front
    EXPECT_NEAR(contrast(Qt::white, Qt::white), 1.0, 1e-9);
    // The greys on both sides of 4.5 on white, as the checkers of the guidelines have them: the
    // second was settled to fail (davidmacd.com/test/check-color.html).
    EXPECT_NEAR(contrast(QColor(0x767676), Qt::white), 4.54, 0.005);
    EXPECT_NEAR(contrast(QColor(0x777777), Qt::white), 4.48, 0.005);
    // Primaries weigh as their channel does: 1.05 / (0.0722 + 0.05).
    EXPECT_NEAR(contrast(Qt::blue, Qt::white), 1.05 / 0.1222, 1e-9);
}

TEST(Contrast, TextIsReadOnEveryGround) {
    for (const auto& [name, look] : threeLooks()) {
        for (const Tone text :
             {Tone::Ink, Tone::Muted, Tone::Accent, Tone::Warn, Tone::Bad, Tone::Good}) {
            for (const Tone ground : grounds) {
                EXPECT_GE(contrast(look.tone(text), look.tone(ground)), textLeast)
                    << name << ", text " << static_cast<int>(text) << " on "
                    << static_cast<int>(ground);
            }
        }
        EXPECT_GE(contrast(look.tone(Tone::OnAccent), look.tone(Tone::Accent)), textLeast) << name;
    }
}

TEST(Contrast, PlainWidgetsAreReadToo) {
    using P = QPalette;
    const std::vector<std::pair<P::ColorRole, P::ColorRole>> pairs{
        {P::WindowText, P::Window},
        {P::Text, P::Base},
        {P::Text, P::AlternateBase},
        {P::ButtonText, P::Button},
        {P::HighlightedText, P::Highlight},
        {P::PlaceholderText, P::Base},
        {P::ToolTipText, P::ToolTipBase},
        {P::Link, P::Base},
        {P::Link, P::Window},
        {P::LinkVisited, P::Base}};
    for (const bool dark : {false, true}) {
        const QPalette palette = paletteFor(dark);
        for (const auto group : {P::Active, P::Inactive, P::Disabled}) {
            for (const auto& [text, ground] : pairs) {
                EXPECT_GE(contrast(palette.color(group, text), palette.color(group, ground)),
                          textLeast)
                    << "dark " << dark << ", group " << group << ", role " << text << " on "
                    << ground;
            }
        }
    }
}

/// Accent is the focus ring and the mark of what is to be done next; Line goes around fields,
/// buttons and what may be chosen, in the current row too.
TEST(Contrast, LinesThatCarryMeaningAreSeen) {
    for (const auto& [name, look] : threeLooks()) {
        for (const Tone line :
             {Tone::Line, Tone::Accent, Tone::Warn, Tone::Bad, Tone::Good, Tone::Muted}) {
            for (const Tone ground : grounds) {
                EXPECT_GE(contrast(look.tone(line), look.tone(ground)), shapeLeast)
                    << name << ", line " << static_cast<int>(line) << " on "
                    << static_cast<int>(ground);
            }
        }
    }
}

TEST(Contrast, SeriesOfAChartAreSeen) {
    for (const auto& [name, look] : threeLooks()) {
        for (const Tone ground : {Tone::Ground, Tone::Surface}) {
            for (std::size_t slot = 0; slot < 6; ++slot) {
                EXPECT_GE(contrast(seriesStyle(slot, look).color, look.tone(ground)), shapeLeast)
                    << name << ", series " << slot;
            }
            EXPECT_GE(contrast(look.paint(Paint::HoneyLine), look.tone(ground)), shapeLeast)
                << name;
        }
    }
}

TEST(Contrast, LetteringIsReadOnEveryFill) {
    for (const auto& [name, look] : threeLooks()) {
        for (const Paint fill :
             {Paint::Honey, Paint::Capping, Paint::Comb, Paint::Foundation, Paint::Wood, Paint::Peg,
              Paint::WaxLight, Paint::WaxMid, Paint::WaxDark}) {
            EXPECT_GE(contrast(look.paint(Paint::Lettering), look.paint(fill)), textLeast)
                << name << ", fill " << static_cast<int>(fill);
        }
        for (const Paint fill : {Paint::Brood, Paint::OldComb}) {
            EXPECT_GE(contrast(look.paint(Paint::LetteringPale), look.paint(fill)), textLeast)
                << name << ", fill " << static_cast<int>(fill);
        }
        EXPECT_GE(contrast(look.paint(Paint::Chalk), look.paint(Paint::ChalkShadow)), shapeLeast);
        EXPECT_GE(contrast(look.paint(Paint::ChalkShadow), look.paint(Paint::Wood)), shapeLeast);
    }
}

TEST(Contrast, EdgesPartTheFills) {
    for (const auto& [name, look] : threeLooks()) {
        for (const Paint fill : {Paint::Honey, Paint::Capping, Paint::Comb, Paint::Wood}) {
            EXPECT_GE(contrast(look.paint(Paint::Edge), look.paint(fill)), shapeLeast)
                << name << ", fill " << static_cast<int>(fill);
        }
    }
}

/// By its own fill or by the edge around it; colours of queens always stand in such an edge.
TEST(Contrast, ShapesStandOutFromTheWindow) {
    for (const auto& [name, look] : threeLooks()) {
        for (const Tone ground : {Tone::Ground, Tone::Surface}) {
            for (const Paint fill :
                 {Paint::Honey, Paint::Capping, Paint::Comb, Paint::Foundation, Paint::Brood,
                  Paint::Wood, Paint::Peg, Paint::WaxLight, Paint::WaxMid, Paint::WaxDark,
                  Paint::QueenWhite, Paint::QueenYellow, Paint::QueenRed, Paint::QueenGreen,
                  Paint::QueenBlue}) {
                EXPECT_TRUE(isSeen(look, fill, look.paint(Paint::Edge), look.tone(ground)))
                    << name << ", fill " << static_cast<int>(fill) << ": "
                    << contrast(look.paint(fill), look.tone(ground));
            }
            // The floor board and old comb are dark in both themes.
            for (const Paint fill : {Paint::Floor, Paint::OldComb}) {
                EXPECT_TRUE(isSeen(look, fill, look.outline(), look.tone(ground)))
                    << name << ", fill " << static_cast<int>(fill);
            }
        }
    }
}

}  // namespace combwright
