#include "ui/look/tokens.h"

#include <QGuiApplication>
#include <QScreen>
#include <algorithm>
#include <cmath>

namespace combwright {

namespace {

// Base font the distances were drawn for: 10 pt at 96 dots an inch.
constexpr double drawnForPx = 13.333;

struct ToneRow {
    Tone tone;
    QRgb light, dark, paper;
};

constexpr ToneRow toneTable[] = {
    {Tone::Ground, 0xFAF8F3, 0x1D2023, 0xFFFFFF},    {Tone::Surface, 0xFFFFFF, 0x272B2F, 0xFFFFFF},
    {Tone::Ink, 0x22262A, 0xECE9E2, 0x111111},       {Tone::Muted, 0x5A6068, 0xAEB4BB, 0x4A4A4A},
    {Tone::Line, 0x8C877B, 0x82888D, 0x777777},      {Tone::Hairline, 0xDAD6CB, 0x3D4246, 0xBBBBBB},
    {Tone::Accent, 0x0B5C8A, 0x7CC4F0, 0x111111},    {Tone::OnAccent, 0xFFFFFF, 0x1D2023, 0xFFFFFF},
    {Tone::Selection, 0xE6EFF4, 0x2E3D48, 0xEEEEEE}, {Tone::Warn, 0xA04400, 0xF2A65A, 0x111111},
    {Tone::Bad, 0x9E1B32, 0xF28B9B, 0x111111},       {Tone::Good, 0x00694B, 0x5FD0A5, 0x111111},
};

struct PaintRow {
    Paint paint;
    QRgb screen, paper;
};

constexpr PaintRow paintTable[] = {
    {Paint::Honey, 0xD98E04, 0xA8A8A8},         {Paint::HoneyDot, 0xEBB34A, 0xC2C2C2},
    {Paint::Capping, 0xF3D9A4, 0xE6E6E6},       {Paint::CappingHatch, 0x9C7A45, 0x8A8A8A},
    {Paint::Comb, 0xEFE4CC, 0xF6F6F6},          {Paint::CombDot, 0xC3AE86, 0xC4C4C4},
    {Paint::Foundation, 0xF8F0DC, 0xFCFCFC},    {Paint::FoundationMark, 0xD9CBA8, 0xCCCCCC},
    {Paint::Brood, 0x9F6932, 0x6A6A6A},         {Paint::BroodDot, 0xB98A50, 0x8E8E8E},
    {Paint::OldComb, 0x6E4A28, 0x4C4C4C},       {Paint::OldCombDot, 0x3F2914, 0x2C2C2C},
    {Paint::Wood, 0xC9A77A, 0xC6C6C6},          {Paint::WoodGrain, 0xB08D5F, 0xABABAB},
    {Paint::HandHold, 0x9A774A, 0x8C8C8C},      {Paint::Floor, 0x6B4A2B, 0x4C4C4C},
    {Paint::Peg, 0xF0DEB8, 0xF2F2F2},           {Paint::WaxLight, 0xF3D9A4, 0xE6E6E6},
    {Paint::WaxMid, 0xE2B559, 0xC8C8C8},        {Paint::WaxDark, 0xB98235, 0xA0A0A0},
    {Paint::Slime, 0xB98235, 0xA0A0A0},         {Paint::Mould, 0x8F8F8A, 0x8F8F8F},
    {Paint::Propolis, 0x7A2E14, 0x3C3C3C},      {Paint::Pollen, 0xD9973F, 0xB4B4B4},
    {Paint::PollenDark, 0xA85A2A, 0x7C7C7C},    {Paint::Crystal, 0xFFF6DE, 0xFFFFFF},
    {Paint::Edge, 0x33302B, 0x222222},          {Paint::Lettering, 0x22262A, 0x111111},
    {Paint::LetteringPale, 0xFFFFFF, 0xFFFFFF}, {Paint::Chalk, 0xFFFFFF, 0xFFFFFF},
    {Paint::ChalkShadow, 0x4A3820, 0x333333},   {Paint::QueenWhite, 0xFFFFFF, 0xFFFFFF},
    {Paint::QueenYellow, 0xF0BE12, 0xDCDCDC},   {Paint::QueenRed, 0xD0402F, 0x6E6E6E},
    {Paint::QueenGreen, 0x2F9A4C, 0x8C8C8C},    {Paint::QueenBlue, 0x3F7FDB, 0x505050},
    {Paint::HoneyLine, 0xC27E03, 0x111111},
};

double basePixels(const QFont& font) {
    if (font.pixelSize() > 0) return font.pixelSize();
    const auto* screen = QGuiApplication::primaryScreen();
    const double dotsPerInch = screen ? screen->logicalDotsPerInch() : 96.0;
    return font.pointSizeF() * dotsPerInch / 72.0;
}

}  // namespace

double ratio(TextSize size) {
    switch (size) {
        case TextSize::Letter:
            return 0.75;
        case TextSize::Note:
            return 0.85;
        case TextSize::Body:
            return 1.0;
        case TextSize::Head:
            return 1.15;
        case TextSize::Title:
            return 1.4;
        case TextSize::Big:
            return 2.0;
        case TextSize::Clock:
            return 3.4;
    }
    return 1.0;
}

QColor Look::tone(Tone which) const {
    for (const auto& row : toneTable) {
        if (row.tone == which) return QColor(paper ? row.paper : dark ? row.dark : row.light);
    }
    return {};
}

QColor Look::paint(Paint which) const {
    for (const auto& row : paintTable) {
        if (row.paint == which) return QColor(paper ? row.paper : row.screen);
    }
    return {};
}

QColor Look::outline() const { return dark && !paper ? tone(Tone::Line) : paint(Paint::Edge); }

QFont Look::font(TextSize size, bool bold, bool italic) const {
    QFont font(base);
    const double pixels = basePixels(base) * factor * ratio(size);
    font.setPixelSize(std::max(1, static_cast<int>(std::lround(pixels))));
    font.setBold(bold);
    font.setItalic(italic);
    return font;
}

int Look::space(int multipleOf4) const { return static_cast<int>(std::lround(px(multipleOf4))); }

double Look::px(double atBase) const { return atBase * factor * basePixels(base) / drawnForPx; }

bool isDark(const QPalette& palette) {
    return palette.color(QPalette::Window).lightnessF() <
           palette.color(QPalette::WindowText).lightnessF();
}

Look lookFor(const QFont& base, bool dark, double factor) {
    return Look{dark, false, base, std::clamp(factor, 1.0, 2.0)};
}

Look paperLook(const QFont& base) { return Look{false, true, base, 1.0}; }

QPalette paletteFor(bool dark) {
    const Look look{dark, false, QFont(), 1.0};
    QPalette palette;
    palette.setColor(QPalette::Window, look.tone(Tone::Ground));
    palette.setColor(QPalette::WindowText, look.tone(Tone::Ink));
    palette.setColor(QPalette::Base, look.tone(Tone::Surface));
    palette.setColor(QPalette::AlternateBase, look.tone(Tone::Ground));
    palette.setColor(QPalette::Text, look.tone(Tone::Ink));
    palette.setColor(QPalette::PlaceholderText, look.tone(Tone::Muted));
    palette.setColor(QPalette::Button, look.tone(Tone::Surface));
    palette.setColor(QPalette::ButtonText, look.tone(Tone::Ink));
    palette.setColor(QPalette::BrightText, look.tone(Tone::OnAccent));
    palette.setColor(QPalette::Highlight, look.tone(Tone::Accent));
    palette.setColor(QPalette::HighlightedText, look.tone(Tone::OnAccent));
    palette.setColor(QPalette::Link, look.tone(Tone::Accent));
    palette.setColor(QPalette::LinkVisited, look.tone(Tone::Accent));
    palette.setColor(QPalette::ToolTipBase, look.tone(Tone::Surface));
    palette.setColor(QPalette::ToolTipText, look.tone(Tone::Ink));
    palette.setColor(QPalette::Light, look.tone(Tone::Surface));
    palette.setColor(QPalette::Midlight, look.tone(Tone::Hairline));
    palette.setColor(QPalette::Mid, look.tone(Tone::Line));
    palette.setColor(QPalette::Dark, look.tone(Tone::Line));
    palette.setColor(QPalette::Shadow, look.tone(Tone::Ink));
    for (const auto role : {QPalette::WindowText, QPalette::Text, QPalette::ButtonText}) {
        palette.setColor(QPalette::Disabled, role, look.tone(Tone::Muted));
    }
    return palette;
}

}  // namespace combwright
