// A page as plain text, for the command line and for whoever reads with a screen reader.
#pragma once

#include "core/places/pages/page.h"

namespace combwright {

/// The page in lines of at most `width` characters where words allow; tables aligned by blanks, the
/// how-known letter directly behind its figure.
QString pageText(const Page& page, int width = 100);

}  // namespace combwright
