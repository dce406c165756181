// A new file starts with the trade's own sizes of frames and boxes; the keeper adds and measures
// more.
#pragma once

#include "core/storage/rows.h"

namespace combwright {

/// Stores every frame kind and box kind of the catalogue, in its order.
void seedCatalogue(Write& write);

}  // namespace combwright
