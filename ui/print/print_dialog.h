// From page to paper: preview first, then printer or PDF.
#pragma once

#include <QWidget>

#include "core/places/pages/page.h"
#include "ui/look/tokens.h"

namespace combwright {

void printWithPreview(QWidget* parent, const Page& page, const Look& look);

}  // namespace combwright
