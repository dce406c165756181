// What a reader of a bound PDF finds at its side: the sheets by their titles. Qt writes none, so
// the finished file is given one; its metadata and colours stay, so that it stays what may be
// archived.
#pragma once

#include <QByteArray>
#include <vector>

#include "ui/print/page_painter.h"

namespace combwright {

/// The same file with a line of contents for each page, and with pages that lie on their side
/// shown upright; the file unchanged where it cannot be read.
QByteArray withOutline(const QByteArray& pdf, const std::vector<PaintedPage>& pages);

}  // namespace combwright
