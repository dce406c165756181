// A freezer holds few combs and the winter many, so they go through it in rounds. What holds brood
// or pollen goes first, for that is what moths eat; the caller puts it first. Planned in whole
// days: nobody changes a freezer at night.
#pragma once

#include <cstddef>
#include <cstdint>
#include <span>
#include <string>
#include <vector>

#include "core/support/result.h"
#include "core/support/working.h"
#include "core/units/day.h"

namespace combwright {

/// Combs to freeze, in the order they should go.
struct FreezerBatch {
    std::string kind;           ///< "deep", "medium" … any text
    std::int64_t frames = 0;    ///< 0 to 100,000
    std::int64_t capacity = 1;  ///< frames of this kind the freezer takes, 1 or more
    bool apart = false;         ///< comb on hold: shares no round with any other batch
};

struct PlannedRound {
    struct Frames {
        std::string kind;
        std::int64_t count = 0;
    };
    Day in;
    Day out;
    std::vector<Frames> frames;  ///< each kind once, in the order of the batches
};

/// Rounds one after the other from `day`, each `hours` (above 0, at most 8,760) rounded up to whole
/// days; the next goes in the day the last comes out. Filled in the order given. Kinds share a
/// round only where `mix`, each frame taking 1 ÷ capacity of the room; batches of one kind and one
/// capacity that follow each other share one always, apart ones never. No frames: no rounds.
/// Refused: OutOfRange "hours"; Negative, TooMany or OutOfRange "batches[N].frames" or
/// "batches[N].capacity"; OutOfRange "day" where the last round would come out after the year 9999.
Result<std::vector<PlannedRound>> planFreezer(std::span<const FreezerBatch> batches, double hours,
                                              Day day, bool mix, Working* working = nullptr);

/// What of the batches is not through after so many rounds: one count for each batch's kind, in
/// the order of the batches, kinds with nothing waiting left out.
std::vector<PlannedRound::Frames> stillWaiting(std::span<const PlannedRound> rounds,
                                               std::size_t roundsDone);

/// What hangs at this pitch in a freezer takes so much room. Planning assumption, no source.
inline constexpr double freezerPitchMm = 38.0;
/// Share of a freezer's litres that combs really fill; 0.6 to 0.7. Planning assumption, no source:
/// a cabinet is narrow and a box 505 × 413 mm, so measure it.
inline constexpr double freezerFillShare = 0.65;

/// Litres a frame takes up: top bar · height · pitch, mm. Deep 4.25, medium 2.91.
double frameLitres(double topBarLengthMm, double heightMm, double pitchMm = freezerPitchMm);
/// Litres of a box from its sides, mm: outside sides for what it takes up, inside for what it
/// holds.
double boxLitres(double lengthMm, double widthMm, double heightMm);
/// How many of those a freezer takes: ⌊litres · fill ÷ each⌋. All above 0, the share up to 1.
/// Refused, OutOfRange: "litres", "each_litres" or "fill_share".
Result<std::int64_t> freezerHolds(double litres, double eachLitres,
                                  double fillShare = freezerFillShare, Working* working = nullptr);

}  // namespace combwright
