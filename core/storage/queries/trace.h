// The way of honey asked for a whole set at once: everything a lot came from, everything that came
// of a bucket, and the jars and sales behind them. One question a step of the way, however many
// lots lie on it: a complaint is answered from the telephone. What happened after the day asked for
// is no part of any answer.
#pragma once

#include <vector>

#include "core/model/honey/going_out.h"
#include "core/storage/queries/vessels.h"
#include "core/storage/rows.h"

namespace combwright {

/// What went into the lots and into all lots they came from, in the order it was written down.
std::vector<LotPart> partsBehind(const Read& file, const std::vector<Id<Lot>>& lots, Day until);
/// What went into every lot that honey of the vessels reached, straight or through others: also
/// what came into these lots from elsewhere.
std::vector<LotPart> partsBeyond(const Read& file, const std::vector<Vessel>& vessels, Day until);

/// Jars of any of the fillings that went out, by day; and what a fair's box held of them.
std::vector<GoingOut> goneOf(const Read& file, const std::vector<Id<Bottling>>& fillings,
                             Day until);
/// Jars of these kinds that went out from a day on and of which nobody said the filling.
std::vector<GoingOut> goneOfNoFilling(const Read& file, const std::vector<Id<GoodsKind>>& kinds,
                                      Day from, Day until);

/// What was packed for a fair, and the fair; as somebody knew it on a day: before it was over
/// nobody had counted what came home.
struct PackedLine {
    FairLine line;
    Fair fair;
};
std::vector<PackedLine> packedOf(const Read& file, const std::vector<Id<Bottling>>& fillings,
                                 Day until);
/// The same of kinds without a filling, of fairs held from a day on.
std::vector<PackedLine> packedOfNoFilling(const Read& file, const std::vector<Id<GoodsKind>>& kinds,
                                          Day from, Day until);

}  // namespace combwright
