// The short forms of moulds and one-way holders, burn tests and wick.
#pragma once

#include "core/model/wax/candle.h"
#include "core/units/day.h"
#include "ui/shell/session.h"

class QWidget;

namespace combwright {

/// Each says whether it was done.
bool askToAddMould(QWidget* parent, Session& session, Day on);
bool askToRetireMould(QWidget* parent, Session& session, Day on);
bool askToTestBurn(QWidget* parent, Session& session, Day on);
bool askAboutWick(QWidget* parent, Session& session, Day on);

/// A number of cavities typed on the board of evenings: moulds like the first come, or the last go.
/// Where the kind has no mould yet it is asked for. False where nothing was done.
bool changeMoulds(QWidget* parent, Session& session, Id<GoodsKind> kind, std::int64_t cavities,
                  Day on);

}  // namespace combwright
