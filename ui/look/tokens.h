// The one place with colours and sizes. Seven places, their drawings and their prints look like one
// workshop because each takes its ink, its paper and its distances from here and nowhere else.
#pragma once

#include <QColor>
#include <QFont>
#include <QPalette>

namespace combwright {

/// What a colour of the window is for.
enum class Tone {
    Ground,     ///< the window itself
    Surface,    ///< fields, and the one card of a place
    Ink,        ///< text
    Muted,      ///< context, last values, units
    Line,       ///< edges that carry meaning
    Hairline,   ///< between rows
    Accent,     ///< the one thing to do next, and the focus ring
    OnAccent,   ///< text on the accent
    Selection,  ///< the current row
    Warn,       ///< always with a word or a letter beside it
    Bad,
    Good,
};

/// What a colour of a drawing stands for. Light and dark share them; paper has greys.
enum class Paint {
    Honey,
    HoneyDot,
    Capping,
    CappingHatch,
    Comb,
    CombDot,
    Foundation,
    FoundationMark,
    Brood,
    BroodDot,
    OldComb,
    OldCombDot,
    Wood,
    WoodGrain,
    HandHold,
    Floor,
    Peg,
    WaxLight,
    WaxMid,
    WaxDark,
    Slime,
    Mould,
    Propolis,
    Pollen,
    PollenDark,
    Crystal,        ///< granulated honey, froth of fermented honey, silk of moth
    Edge,           ///< between fills
    Lettering,      ///< text on honey, capping, comb, wood and wax
    LetteringPale,  ///< text on brood and old comb
    Chalk,
    ChalkShadow,
    QueenWhite,  ///< the five colours queens are marked with; outlined, always with their word
    QueenYellow,
    QueenRed,
    QueenGreen,
    QueenBlue,
    HoneyLine,  ///< honey as a thin line on the window, where its fill would be too pale
};

/// Sizes of type as ratios of the desktop's own.
enum class TextSize {
    Letter,  ///< 0.75: letters and chalk on drawings
    Note,    ///< 0.85: captions
    Body,    ///< 1
    Head,    ///< 1.15: block heads, the honey room's text
    Title,   ///< 1.4: the title of a place
    Big,     ///< 2.0: the one big number of a place
    Clock,   ///< 3.4: the spin clock, read across a room
};

/// The ratio of that size to the base font.
double ratio(TextSize size);

/// Colours, type and distances for one theme at one text size. Cheap to copy.
struct Look {
    bool dark = false;
    bool paper = false;   ///< greys for print; wins over dark
    QFont base;           ///< the desktop's own font, before the factor
    double factor = 1.0;  ///< the person's own text size, 1.0 to 2.0

    QColor tone(Tone which) const;
    QColor paint(Paint which) const;
    /// Around a dark shape that stands on the window itself, where in the dark theme Paint::Edge
    /// would not be seen.
    QColor outline() const;

    /// The base family at that size. Sized in pixels, so that a drawing measures the same on a
    /// screen, in a picture and on a print whose painter is scaled to 96 units an inch.
    QFont font(TextSize size, bool bold = false, bool italic = false) const;

    /// A distance written for the base font of 10 pt (multiples of 4), scaled with the type.
    int space(int multipleOf4) const;
    /// The same for a size inside a drawing (a pen, a peg, a flag), unrounded.
    double px(double atBase) const;

    /// Corners of buttons, fields and rings, px.
    int corner() const { return space(4); }
    /// Least height of something to click, px: 24, in the honey room 40.
    int target(bool honeyRoom = false) const { return space(honeyRoom ? 40 : 24); }
};

/// Whether a palette is a dark one, told from how light its window is against its text.
bool isDark(const QPalette& palette);

/// The look for a base font; factor is held within 1.0 to 2.0.
Look lookFor(const QFont& base, bool dark, double factor = 1.0);
/// Greys for print.
Look paperLook(const QFont& base);

/// The palette plain Qt widgets take their colours from.
QPalette paletteFor(bool dark);

}  // namespace combwright
