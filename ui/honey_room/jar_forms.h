// The short forms about jars: filled out of a bucket or a lot, put on the scale, counted.
#pragma once

#include <optional>

#include "core/model/honey/bottling.h"
#include "core/storage/queries/vessels.h"
#include "ui/shell/session.h"

class QWidget;

namespace combwright {

/// Each says whether anything was kept.
bool askToFillJars(QWidget* parent, Session& session, const std::optional<Vessel>& from, Day on);
bool askToWeighJars(QWidget* parent, Session& session, const std::optional<Id<Bottling>>& filling,
                    Day on);
/// Full jars and goods, empty jars and lids: a line each, those typed are counted.
bool askToCountShelf(QWidget* parent, Session& session, Day on);

}  // namespace combwright
