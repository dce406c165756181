// The dot a marked queen wears, in its colour, beside the word for it: who opens a hive looks for
// that dot. A colour of the keeper's own that is none of the five stands as its word alone.
#pragma once

#include <QPainter>
#include <QPointF>
#include <QString>
#include <optional>

#include "ui/look/tokens.h"

namespace combwright {

/// The paint of a colour's word, "white" or "Yellow"; nothing for any but the five.
std::optional<Paint> queenPaint(const QString& colour);
/// Room of a dot within a line of text of that size, px.
double queenDotSize(TextSize size, const Look& look);
/// Outlined in ink, so that white is seen on white and blue on dark.
void paintQueenDot(QPainter& painter, QPointF middle, double size, Paint paint, const Look& look);
/// The dot within a line of rich text, a space behind it; empty where the word stands alone.
QString queenDotHtml(const QString& colour, TextSize size, const Look& look);

}  // namespace combwright
