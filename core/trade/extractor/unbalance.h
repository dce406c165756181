// What an offset does to the machine: the force that goes round with it, and how that compares with
// what a balanced rotor of that mass is allowed to keep. It is advice, not a safety certificate:
// the standard speaks of a rigid rotor's own unbalance, honey leaves while the machine turns, and
// the machine's own manual decides.
#pragma once

#include "core/support/result.h"
#include "core/support/working.h"

namespace combwright {

/// Parts of crushing and agricultural machinery (ISO 21940-11, in a table printed by S102). No
/// grade is published for extractors as such.
inline constexpr double agriculturalGrade = 16.0;

/// A loaded machine that turns.
struct TurningRotor {
    double radiusMm = 0.0;             ///< at which the offset is reckoned: the largest of the load
    double rpm = 0.0;                  ///< above 0
    double rotorKg = 0.0;              ///< what turns, the frames included; above 0
    double grade = agriculturalGrade;  ///< G of ISO 21940-11, mm/s; above 0
};

struct Unbalance {
    double gMm = 0.0;             ///< offset · radius, g·mm
    double newton = 0.0;          ///< the force that goes round
    double allowedGMm = 0.0;      ///< permissible residual unbalance
    double shareOfAllowed = 0.0;  ///< above 1: more than the grade allows
};

/// The unbalance of an offset in grams at the rotor's radius: U = offset · r, F = U · ω² with
/// ω = 2π · rpm / 60, and U_per = 1000 · G · m / ω. Refused: a negative offset or radius
/// ("offset_g", "radius_mm"), speed, mass or grade not above 0 ("rpm", "rotor_kg", "grade").
Result<Unbalance> unbalanceOf(double offsetG, const TurningRotor& rotor,
                              Working* working = nullptr);

/// The offset that uses up the whole allowance, grams at the rotor's radius: what the ring is drawn
/// at until one load has run smooth on the machine. Refused as unbalanceOf; a radius of 0 as well.
Result<double> allowedOffsetG(const TurningRotor& rotor);

}  // namespace combwright
