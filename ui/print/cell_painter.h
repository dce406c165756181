// One cell of a printed table: text, a bar, a small stack, room for the pencil. Nothing is cut
// short on paper: words that do not fit go onto a second line, and the row grows with them.
#pragma once

#include <QRectF>

#include "core/places/pages/page.h"
#include "ui/look/tokens.h"

class QPainter;

namespace combwright {

/// How high the cell wants its row, in the painter's units; 0 where any height does.
double cellHeight(QPainter& painter, const Look& look, const Cell& cell, double width);
void paintCell(QPainter& painter, const Look& look, const Cell& cell, const QRectF& box,
               bool right);

/// The flags that break such words in that width: between words, within one only where it is wider
/// than the whole.
int breakingFlags(const QPainter& painter, const QString& words, double width);

}  // namespace combwright
