// Paints a neutral page on paper: A4 or Letter, in greys, table heads repeated on every sheet, page
// x of y, the day, the letters explained. Screen preview, PDF and printer share this one path.
#pragma once

#include <QPagedPaintDevice>
#include <QSizeF>
#include <QString>
#include <vector>

#include "core/places/pages/page.h"
#include "ui/look/tokens.h"

namespace combwright {

/// Everything on the paper larger by that, for who reads it at arm's length or without glasses.
inline constexpr double largeType = 1.3;

/// Where a page begins among the sheets that were painted.
struct PaintedPage {
    QString title;
    int begins = 1;
    int sheets = 1;
    bool turned = false;  ///< a wide page lies on its side on upright paper
};

/// Paints all sheets on a device whose page size and margins are set, and behind them those of the
/// pages bound to it, numbered through. Returns where each began.
std::vector<PaintedPage> paintPages(QPagedPaintDevice& device, const Page& page, const QFont& base,
                                    double zoom = 1);
/// The same; returns how many sheets there were.
int paintPage(QPagedPaintDevice& device, const Page& page, const QFont& base, double zoom = 1);

/// How the paper of a page lies.
QPageLayout::Orientation orientationOf(const Page& page);

/// Writes the page as PDF; empty text, or why it could not be written.
QString writePdf(const Page& page, const QString& path, const QFont& base,
                 const QPageSize& size = QPageSize(QPageSize::A4), double zoom = 1);

/// Writes the page as one picture without an end of sheet, in the colours of the look: an SVG with
/// text as text where the path ends so, else a PNG at twice the size. Empty text, or why not.
QString writePicture(const Page& page, const QString& path, const Look& look, int width = 760);

}  // namespace combwright
