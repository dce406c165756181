// One card of a sheet: what it is, its drawing, and lines to write on with a pencil in a gloved
// hand. The drawings are the window's own, in greys, so that a peg looks the same on the tag as on
// the screen.
#pragma once

#include <QRectF>

#include "core/places/pages/page.h"
#include "ui/look/tokens.h"

class QPainter;

namespace combwright {

/// The least height the card needs, in the painter's units (96 to an inch).
double cardHeight(QPainter& painter, const Look& look, const Card& card, double width);
void paintCard(QPainter& painter, const Look& look, const Card& card, const QRectF& box);

}  // namespace combwright
