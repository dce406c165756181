#include "ui/drawing/comb_area.h"

#include <algorithm>
#include <cmath>

#include "ui/drawing/strokes.h"

namespace combwright {

namespace {

// Forty halvings leave less than a millionth of the sheet; fixed, so every machine draws the same.
constexpr int combHalvings = 40;
// Narrow combs need few columns, wide ones stay smooth up to print size.
constexpr double pxPerColumn = 2.0;

std::size_t columnsFor(const QRectF& sheet) {
    const double wanted = std::ceil(sheet.width() / pxPerColumn);
    return static_cast<std::size_t>(std::clamp(wanted, 16.0, 240.0)) + 1;
}

double columnStep(const QRectF& sheet, const Profile& profile) {
    return sheet.width() / static_cast<double>(profile.size() - 1);
}

/// −1 at the left end bar, 1 at the right.
double sideways(std::size_t i, std::size_t count) {
    return 2.0 * static_cast<double>(i) / static_cast<double>(count - 1) - 1.0;
}

/// The curve of an arch or of comb begun: 1 in the middle, 0 at its ends and beyond.
double bow(double u) {
    const double reach = 1.0 - std::abs(u) * u * u;
    return reach > 0.0 ? std::sqrt(reach) : 0.0;
}

/// Half the width of an arch of that size, as a share of half the comb: wide before it is high.
double bowWidth(double size) { return std::pow(size, 0.75); }

Profile archOf(const QRectF& sheet, double size, const Wobble& wobble) {
    Profile arch(columnsFor(sheet));
    const double half = std::max(bowWidth(size), 1e-9) * 1.02;
    for (std::size_t i = 0; i < arch.size(); ++i) {
        const double u = sideways(i, arch.size());
        const double shake = 1.0 + 0.09 * wobble.at(u * 0.5 + 0.5);
        arch[i] = sheet.height() * (1.0 - size * bow(u / half) * shake);
    }
    return arch;
}

template <class AreaOf>
double sizeFor(double area, AreaOf areaOf) {
    // Two and a half sheets high is beyond any comb, so the whole range of shares lies between.
    double low = 0.0, high = 2.5;
    for (int i = 0; i < combHalvings; ++i) {
        const double middle = (low + high) / 2.0;
        (areaOf(middle) < area ? low : high) = middle;
    }
    return (low + high) / 2.0;
}

double lowerEdge(double arch, double comb) { return std::clamp(arch, 0.0, comb); }

}  // namespace

Profile fullComb(const QRectF& sheet, std::uint64_t seed) {
    const Wobble wobble(seed);
    Profile comb(columnsFor(sheet));
    const double gap = sheet.height() * 0.055;
    const double corner = sheet.height() * 0.13;
    for (std::size_t i = 0; i < comb.size(); ++i) {
        const double u = sideways(i, comb.size());
        const double fromEnd = (1.0 - std::abs(u)) * sheet.width() / 2.0;
        const double inside = std::min(fromEnd / corner, 1.0);
        const double rounding = corner * (1.0 - std::sqrt(1.0 - (1.0 - inside) * (1.0 - inside)));
        comb[i] = sheet.height() - gap * (1.0 + 0.55 * wobble.at(u * 0.5 + 0.5)) - rounding;
    }
    return comb;
}

Profile begunComb(const QRectF& sheet, double share, std::uint64_t seed) {
    const Wobble wobble(seed);
    const auto made = [&](double size) {
        Profile comb(columnsFor(sheet));
        const double half = std::max(bowWidth(size), 1e-9) * 1.02;
        for (std::size_t i = 0; i < comb.size(); ++i) {
            const double u = sideways(i, comb.size());
            const double shake = 1.0 + 0.07 * wobble.at(u * 0.5 + 0.5);
            comb[i] = std::min(sheet.height(), sheet.height() * size * bow(u / half) * shake);
        }
        return comb;
    };
    const double wanted = std::clamp(share, 0.0, 1.0) * sheet.width() * sheet.height();
    return made(sizeFor(wanted, [&](double size) {
        const Profile comb = made(size);
        return areaAbove(sheet, comb, comb);
    }));
}

Profile archAbove(const QRectF& sheet, const Profile& comb, double share, std::uint64_t seed) {
    const Wobble wobble(seed);
    const double whole = areaAbove(sheet, comb, comb);
    const double below = (1.0 - std::clamp(share, 0.0, 1.0)) * whole;
    return archOf(sheet,
                  sizeFor(below,
                          [&](double size) {
                              return whole - areaAbove(sheet, archOf(sheet, size, wobble), comb);
                          }),
                  wobble);
}

double areaAbove(const QRectF& sheet, const Profile& arch, const Profile& comb) {
    double area = 0.0;
    for (std::size_t i = 1; i < comb.size(); ++i) {
        area += (lowerEdge(arch[i - 1], comb[i - 1]) + lowerEdge(arch[i], comb[i])) / 2.0;
    }
    return area * columnStep(sheet, comb);
}

QPainterPath regionAbove(const QRectF& sheet, const Profile& arch, const Profile& comb) {
    QPainterPath region(sheet.topLeft());
    const double step = columnStep(sheet, comb);
    for (std::size_t i = 0; i < comb.size(); ++i) {
        region.lineTo(sheet.left() + static_cast<double>(i) * step,
                      sheet.top() + lowerEdge(arch[i], comb[i]));
    }
    region.lineTo(sheet.topRight());
    region.closeSubpath();
    return region;
}

QPainterPath combOutline(const QRectF& sheet, const Profile& comb) {
    return regionAbove(sheet, comb, comb);
}

std::vector<QPolygonF> edgeWithin(const QRectF& sheet, const Profile& arch, const Profile& comb) {
    std::vector<QPolygonF> pieces;
    const double step = columnStep(sheet, comb);
    const auto at = [&](std::size_t i) {
        return QPointF(sheet.left() + static_cast<double>(i) * step,
                       sheet.top() + lowerEdge(arch[i], comb[i]));
    };
    bool inside = false;
    for (std::size_t i = 0; i < comb.size(); ++i) {
        const bool now = arch[i] > 0.0 && arch[i] < comb[i];
        if (now && !inside) pieces.emplace_back();
        // The line is carried to where it meets the edge of the comb, one column further.
        if (now && !inside && i > 0) pieces.back() << at(i - 1);
        if (now || inside) pieces.back() << at(i);
        inside = now;
    }
    return pieces;
}

}  // namespace combwright
