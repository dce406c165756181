// Where honey ends on a comb. Honey is the comb less an arch standing on the bottom bar, capped is
// the comb less a larger arch; both are found by bisection on area, with the wobble in it, so the
// share drawn is the share recorded whatever the hand did.
#pragma once

#include <QPainterPath>
#include <QPolygonF>
#include <QRectF>
#include <cstdint>
#include <vector>

namespace combwright {

/// A height at evenly spaced columns across the comb, px from its upper edge, left to right.
using Profile = std::vector<double>;

/// Lower edge of comb that fills the sheet: nearly to the bottom bar, corners rounded by the bees.
Profile fullComb(const QRectF& sheet, std::uint64_t seed);

/// Lower edge of comb begun at the top bar and covering `share` of the sheet, 0 to 1.
Profile begunComb(const QRectF& sheet, double share, std::uint64_t seed);

/// Upper edge of the arch that leaves `share` of the comb above and beside it, 0 to 1.
Profile archAbove(const QRectF& sheet, const Profile& comb, double share, std::uint64_t seed);

/// Area between the upper edge of the sheet and the higher of the two lines, px².
double areaAbove(const QRectF& sheet, const Profile& arch, const Profile& comb);

/// The outline from the upper edge of the sheet down to the higher of the two lines.
QPainterPath regionAbove(const QRectF& sheet, const Profile& arch, const Profile& comb);
/// The outline of the whole comb.
QPainterPath combOutline(const QRectF& sheet, const Profile& comb);
/// The line itself, where it lies within the comb: pieces of it.
std::vector<QPolygonF> edgeWithin(const QRectF& sheet, const Profile& arch, const Profile& comb);

}  // namespace combwright
