// What goes into a blend in one line, as one would say it: "B1 all, B3 6.2 kg, Spring lot 900 g". A
// bucket is called by its mark, "B1 of 27-2" where several bear it; a name with a comma or quotes
// in it stands in quotes.
#pragma once

#include <string>
#include <vector>

#include "core/storage/queries/vessels.h"
#include "core/support/result.h"

namespace combwright {

/// So much of a vessel; without a mass all there is.
struct PartMeant {
    Vessel from;
    std::optional<Mass> mass;
};

/// The bucket or lot meant by a name: a lot's name before a bucket's, of several buckets of that
/// mark the one that is not empty on the day. Refused with NotFound or Ambiguous, field `field`.
Result<Vessel> vesselNamed(const Read& file, const std::string& name, Day on,
                           const std::string& field);

/// A mass needs its unit, so that the line means the same to everybody. Refused with Missing for an
/// empty line, with WrongType for a part without "all" or a mass, with Duplicate for a vessel named
/// twice, with OutOfRange for no mass above 0, and as vesselNamed; field "parts".
Result<std::vector<PartMeant>> readBlendLine(const Read& file, const std::string& line, Day on);

/// What may go into a tank that holds so much to the brim: the headroom for stirring and froth is
/// kept ("tank_headroom_share").
Mass roomInTank(const Read& file, Mass holds, Day on);

/// The line that says just that, in grams.
std::string blendLine(const Read& file, const std::vector<PartMeant>& parts);

}  // namespace combwright
