// A key as it looks on the keyboard, beside what it does: keys are shown where they are of use, not
// only in a list nobody opens.
#pragma once

#include <QPainter>
#include <QPointF>
#include <QSizeF>
#include <QString>

#include "ui/look/tokens.h"

namespace combwright {

/// What a key cap needs, px.
QSizeF keyCapSize(const QString& key, const Look& look);

/// Draws "Ctrl+P" in a rounded box, its left edge at x and its middle at y.
/// @param onAccent true on the accent's own button, whose text is of another colour
/// Returns the x of its right edge.
double paintKeyCap(QPainter& painter, QPointF leftMiddle, const QString& key, const Look& look,
                   bool onAccent = false);

}  // namespace combwright
