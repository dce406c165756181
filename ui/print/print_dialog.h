// From page to paper: preview first, then printer or PDF.
#pragma once

#include <QPageSize>
#include <QWidget>
#include <optional>

#include "core/places/pages/page.h"
#include "ui/look/tokens.h"

namespace combwright {

/// Shows the page on paper; A4 or Letter is chosen above it, and kept for the next. From there to
/// a printer or into a PDF.
void printWithPreview(QWidget* parent, const Page& page, const Look& look);

/// What is printed on until somebody chooses: Letter where that is the country's paper.
QPageSize usualPaper();
/// "a4" or "letter"; nothing for any other word.
std::optional<QPageSize> paperNamed(const QString& name);

}  // namespace combwright
