// Text on drawings and beside them: a line of runs that differ in weight, tone or height, because a
// number is a figure, a muted unit and a small raised letter, and no rich text engine is needed.
#pragma once

#include <QColor>
#include <QPainter>
#include <QPointF>
#include <QRectF>
#include <QString>
#include <vector>

#include "ui/look/tokens.h"

namespace combwright {

/// A stretch of text of one kind within a line.
struct TextRun {
    QString text;
    bool bold = false;
    Tone tone = Tone::Ink;
    bool italic = false;
    bool raised = false;  ///< a small letter above the line, 0.76 of the size
    QColor over = {};     ///< this colour instead of the tone's, on a drawing
};

using TextLine = std::vector<TextRun>;

/// Width of the line, px.
double lineWidth(const TextLine& line, TextSize size, const Look& look);

/// Draws the line with its base line at y and, by `align`, its left end, middle or right end at x.
/// Returns the x where it ends.
double paintLine(QPainter& painter, QPointF at, const TextLine& line, TextSize size,
                 const Look& look, Qt::Alignment align = Qt::AlignLeft);

/// The letters of a line as they would be read.
QString plainText(const TextLine& line);

/// One text in one font, placed as above; a short cut for drawings.
void paintText(QPainter& painter, QPointF at, const QString& text, const QFont& font,
               const QColor& color, Qt::Alignment align = Qt::AlignLeft);

/// The same, its capitals in the middle of the given height.
void paintTextIn(QPainter& painter, const QRectF& box, const QString& text, const QFont& font,
                 const QColor& color, Qt::Alignment align = Qt::AlignHCenter);

double textWidth(const QString& text, const QFont& font);
/// Height of a capital letter, px.
double capHeight(const QFont& font);
/// From base line to base line, px.
double lineStep(const QFont& font);

/// The text, or its beginning with an ellipsis where it is wider.
QString fitted(const QString& text, const QFont& font, double width);

}  // namespace combwright
