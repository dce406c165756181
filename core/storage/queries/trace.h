// The way of honey asked for a whole set at once: everything a lot came from, everything that came
// of a bucket, and the jars and sales behind them. One question a step of the way, however many
// lots lie on it: a complaint is answered from the telephone.
#pragma once

#include <vector>

#include "core/model/honey/going_out.h"
#include "core/storage/queries/vessels.h"
#include "core/storage/rows.h"

namespace combwright {

/// What went into the lots and into all lots they came from, in the order it was written down.
std::vector<LotPart> partsBehind(const Read& file, const std::vector<Id<Lot>>& lots);
/// What went into every lot that honey of the vessels reached, straight or through others: also
/// what came into these lots from elsewhere.
std::vector<LotPart> partsBeyond(const Read& file, const std::vector<Vessel>& vessels);

/// Fillings from any of the vessels, in the order they were written down.
std::vector<Bottling> fillingsFrom(const Read& file, const std::vector<Vessel>& vessels);
/// Honey that left any of the vessels in bulk.
std::vector<GoingOut> bulkFrom(const Read& file, const std::vector<Vessel>& vessels);

/// Jars of any of the fillings that went out, and what a fair's box held of them.
std::vector<GoingOut> goneOf(const Read& file, const std::vector<Id<Bottling>>& fillings);
std::vector<FairLine> atFairsOf(const Read& file, const std::vector<Id<Bottling>>& fillings);

/// Jars of these kinds that went out from a day on and of which nobody said the filling.
std::vector<GoingOut> goneOfNoFilling(const Read& file, const std::vector<Id<GoodsKind>>& kinds,
                                      Day from);
/// The same of fairs held from that day on.
std::vector<FairLine> atFairsOfNoFilling(const Read& file, const std::vector<Id<GoodsKind>>& kinds,
                                         Day from);

}  // namespace combwright
