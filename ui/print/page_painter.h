// Paints a neutral page on paper: A4 or Letter, in greys, table heads repeated on every sheet, page
// x of y, the day, the letters explained. Screen preview, PDF and printer share this one path.
#pragma once

#include <QPagedPaintDevice>
#include <QSizeF>

#include "core/places/pages/page.h"
#include "ui/look/tokens.h"

namespace combwright {

/// Paints all sheets on a device whose page size and margins are set. Returns how many there were.
int paintPage(QPagedPaintDevice& device, const Page& page, const QFont& base);

/// Writes the page as PDF; empty text, or why it could not be written.
QString writePdf(const Page& page, const QString& path, const QFont& base,
                 const QPageSize& size = QPageSize(QPageSize::A4));

/// Writes the page as one picture without an end of sheet, in the colours of the look: an SVG with
/// text as text where the path ends so, else a PNG at twice the size. Empty text, or why not.
QString writePicture(const Page& page, const QString& path, const Look& look, int width = 760);

}  // namespace combwright
