// A number as this program writes it: figure, thin space, muted unit, thin space, and a small
// raised letter for how it is known. In columns the whole parts end on one edge and fraction, unit
// and letter each start on one; Qt 6.4 cannot ask a font for tabular figures, so the edges are
// ours.
#pragma once

#include <QMetaType>
#include <QPainter>
#include <QPointF>
#include <QString>
#include <optional>
#include <vector>

#include "ui/drawing/lettering.h"
#include "ui/look/tokens.h"

namespace combwright {

/// A number in words ready to be shown. An empty figure is nothing recorded, and draws nothing.
struct FigureText {
    QString figure;     ///< as it is to be read, "12.4" or "1 of 9"
    QString unit = {};  ///< "kg", or empty
    char how = 0;       ///< w c e d a, '?' for unknown, 0 where none belongs
    bool operator==(const FigureText&) const = default;
};

/// Widths the columns of several figures need, px.
struct FigureColumns {
    double whole = 0.0;     ///< up to the edge the whole parts end on
    double fraction = 0.0;  ///< decimal point and what follows
    double unit = 0.0;      ///< with the thin space before it
    double letter = 0.0;    ///< with the thin space before it
    double width() const { return whole + fraction + unit + letter; }
};

struct FigureStyle {
    TextSize size = TextSize::Body;
    bool bold = false;
    Tone tone = Tone::Ink;  ///< of the figure
    Tone unitTone = Tone::Muted;
    QColor over = {};  ///< one colour for all of it, on a drawing
};

/// The number as runs, to stand within a line of text.
TextLine figureRuns(const FigureText& figure, const FigureStyle& style = {});
/// The runs of the second placed behind those of the first.
TextLine joined(TextLine first, const TextLine& second);

/// Widths that hold every one of the figures.
FigureColumns measureFigures(const std::vector<FigureText>& figures, const FigureStyle& style,
                             const Look& look);

/// Draws the number with its base line at y, its columns beginning at x.
void paintFigure(QPainter& painter, QPointF at, const FigureText& figure,
                 const FigureColumns& columns, const FigureStyle& style, const Look& look);
/// The same for a number that stands alone: figure, unit and how-known letter close together.
/// Returns the x where it ends.
double paintFigure(QPainter& painter, QPointF at, const QString& figure, const QString& unit,
                   char how, const FigureStyle& style, const Look& look,
                   Qt::Alignment align = Qt::AlignLeft);

/// The word a how-known letter stands for ("weighed"); empty for a letter that is none.
QString howWord(char how);

/// "12.4 kilograms weighed": the unit as given, the letter as its word, "unknown" for '?'.
QString spoken(const FigureText& figure);

}  // namespace combwright

Q_DECLARE_METATYPE(combwright::FigureText)
