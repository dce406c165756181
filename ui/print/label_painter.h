// Labels on the paper they are bought on: no head, no foot, no margin; each text as large as its
// cell allows, the code square enough for a telephone.
#pragma once

#include <QPagedPaintDevice>

#include "core/places/pages/page.h"
#include "ui/look/tokens.h"

class QPainter;

namespace combwright {

/// The labels of a page that is nothing else; nullptr for any other page.
const LabelsBlock* labelsOf(const Page& page);

/// One sheet in millimetres; the painter's units are millimetres too.
void paintLabelSheet(QPainter& painter, const Look& look, const LabelsBlock& block,
                     std::size_t sheet);

/// All sheets on a device; returns how many. Its margins are taken off again, so that a label lies
/// where it should whatever they are.
int paintLabels(QPagedPaintDevice& device, const LabelsBlock& block, const Look& look);

}  // namespace combwright
