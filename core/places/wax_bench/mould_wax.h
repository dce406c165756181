// What a mould's candles take, whoever asks: the deed that pours, or a question put back about it.
#pragma once

#include <cstdint>
#include <optional>

#include "core/model/wax/candle.h"

namespace combwright {

/// A candle may take so much more than its mould holds: film, sprue and spilt wax. Planning
/// assumption, no source; 5 to 10 % is common practice.
inline constexpr double waxOverMould = 1.15;
/// And so much on top of that is never asked about: scales and drops.
inline constexpr std::int64_t overMouldFreeG = 10;
/// What is measured and what follows from the size may differ by so much before it is asked about,
/// and by so much before one of them must be wrong. Planning assumptions, no source: walls, a
/// rounded top, a foot.
inline constexpr double volumesDiffer = 1.25;
inline constexpr double volumesCannotBoth = 2.0;

/// A mould's measure in millimetres; 0 where nobody wrote it down, so that nothing comes of it.
double mouldMm(const std::optional<Length>& length);
/// The volume said of a mould against the one its size gives.
enum class VolumeAgainstSize { Alike, Differs, Impossible };
/// Alike too where one of them is not known.
VolumeAgainstSize volumeAgainstSize(const Mould& mould);
/// Millilitres by shape and size; none where they do not tell.
std::optional<double> volumeBySize(const Mould& mould);

/// Good, failed and seconds.
std::int64_t piecesOf(const Pour& pour);
/// Wax in so many pieces, by the volume of a cavity; none where nobody knows it.
std::optional<Mass> neededFor(const Mould& mould, std::int64_t pieces);

}  // namespace combwright
