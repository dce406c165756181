// The jar leaf as a page: to hang on a jar, for a class, a fair, a customer.
#pragma once

#include "core/places/goods/jar_leaf.h"
#include "core/places/pages/page.h"

namespace combwright {

Page jarLeafPage(const Read& file, const JarLeaf& leaf, const LeafTold& told);

/// Of the newest filling up to a day; a page saying that there is none where there is none.
Page newestJarLeafPage(const Read& file, Day on);

}  // namespace combwright
