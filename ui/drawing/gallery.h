// Every drawing once, with an invented season: the sheet one looks at after changing a drawing, and
// the picture the manual shows.
#pragma once

#include <QImage>
#include <QPainter>
#include <QSize>

#include "ui/look/tokens.h"

namespace combwright {

/// The size the sheet was laid out for at the base font; other text sizes scale it.
QSize gallerySize(const Look& look);

/// Paints the sheet from the origin, for any painter.
void paintGallery(QPainter& painter, const Look& look);

/// The sheet in one look as a picture. A smaller size cuts it off at the right and below.
/// @param pixelRatio device pixels a unit, for sharp pictures
QImage drawingGallery(const Look& look, QSize size, double pixelRatio = 1.0);

}  // namespace combwright
