// From page to paper: preview first, then printer or PDF.
#pragma once

#include <QPageSize>
#include <QStringList>
#include <QWidget>
#include <functional>
#include <optional>

#include "core/places/pages/page.h"
#include "ui/look/tokens.h"

namespace combwright {

/// Shows the page on paper; A4 or Letter is chosen above it, and kept for the next. From there to
/// a printer or into a PDF.
void printWithPreview(QWidget* parent, const Page& page, const Look& look);
/// The same of several sheets: the first is shown, another is chosen above it. `pageOf` gives
/// nothing where it cannot be read; the sheet shown then stays.
void printWithPreview(QWidget* parent, const QStringList& titles,
                      const std::function<std::optional<Page>(int)>& pageOf, const Look& look);

/// What is printed on until somebody chooses: Letter where that is the country's paper, or
/// pounds are shown.
QPageSize usualPaper();
/// "a4" or "letter"; nothing for any other word.
std::optional<QPageSize> paperNamed(const QString& name);

}  // namespace combwright
