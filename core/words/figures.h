// Numbers in: as a person types them, with point or comma, and never with a separator between
// thousands, because "1.240" means two things.
#pragma once

#include <QString>
#include <optional>

#include "core/units/known.h"

namespace combwright {

/// The number typed: digits with at most one point or comma. Nothing for anything else, nor for a
/// number that could be read in two ways: exactly three digits behind a single point or comma after
/// one to three.
std::optional<double> typedNumber(const QString& text);

/// Kilograms of a mass in grams: with one decimal where it was weighed or is what others leave of a
/// weighed sum, whole otherwise. A tie goes to the even digit, so that a share that was rounded to
/// whole grams is not rounded up a second time.
QString kilogramsText(double grams, How how);

}  // namespace combwright
