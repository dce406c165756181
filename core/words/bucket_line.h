// All buckets of a day in one line, as one would say them: "6 full, 1 half", "6 13.0, half". By the
// number pad alone: "6.5*" is six and a half full ones, "6*13" six of thirteen, "-" parts them.
#pragma once

#include <QString>
#include <optional>
#include <vector>

#include "core/units/known.h"
#include "core/units/mass.h"

namespace combwright {

/// One bucket: the level it stands at, or what it weighs.
struct TypedBucket {
    std::optional<double> level;  ///< by eye, 0 to 1
    std::optional<Known<Mass>> mass;
};

struct TypedBuckets {
    std::vector<TypedBucket> each;  ///< in the order they were said; none for an empty line
    QString notRead;                ///< the part nobody can read; then there are none
};

/// More than a day fills.
inline constexpr int mostBucketsTyped = 200;

/// Never fails: what cannot be read is in `notRead`. A number alone is a weight; of more than
/// `mostBucketsTyped` none is read.
TypedBuckets readBuckets(const QString& text);

/// "half", "tub half", "0.5*": how full a tub is. Nothing for anything else, so for a weight.
std::optional<double> typedTubLevel(const QString& text);

}  // namespace combwright
