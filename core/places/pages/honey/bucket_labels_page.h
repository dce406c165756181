// Labels for buckets, eight a sheet: number, lot, day, and lines for what is found out at the gate.
// A bucket already filled carries what is known of it.
#pragma once

#include <optional>

#include "core/places/honey/bucket_sheet.h"
#include "core/places/pages/page.h"

namespace combwright {

/// Of every open lot, the one given first, its buckets and those it will fill; numbers are counted
/// on over all of them. Of a closed run only its own; with no run at all for the lot that comes
/// next.
Page bucketLabelsPage(const Read& file, std::optional<Id<Extraction>> run, Day on);

}  // namespace combwright
