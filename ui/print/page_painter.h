// Paints a neutral page on paper: A4 or Letter, in greys, table heads repeated on every sheet, page
// x of y, the day, the letters explained. Screen preview, PDF and printer share this one path.
#pragma once

#include <QPagedPaintDevice>
#include <QSizeF>

#include "core/places/pages/page.h"

namespace combwright {

/// Paints all sheets on a device whose page size and margins are set. Returns how many there were.
int paintPage(QPagedPaintDevice& device, const Page& page, const QFont& base);

/// Writes the page as PDF; empty text, or why it could not be written.
QString writePdf(const Page& page, const QString& path, const QFont& base,
                 const QPageSize& size = QPageSize(QPageSize::A4));

}  // namespace combwright
