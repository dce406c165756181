// What a form of the wax bench says while it is filled: what clean wax is to be expected, what a
// mould takes, what a pour takes, what heat melting takes.
#pragma once

#include <QString>
#include <optional>

#include "core/places/wax_bench/wax_bench.h"

namespace combwright {

/// Clean wax of so much raw wax, with whose experience it is; empty where nobody can know.
QString expectedCleanText(const Read& file, RawWaxSource source,
                          const std::optional<WaxState>& state,
                          const std::optional<Known<Mass>>& raw, Day on);
/// What a mould makes: mass of one, the two pours, hours to set, the first guess of a wick; the
/// keeper's own burn tests stand above it.
QString mouldOutlookText(const MouldShown& mould);
/// Wax that so many pieces take, with what is usually lost, against what there is.
QString pourOutlookText(const Read& file, const MouldShown& mould, std::int64_t pieces,
                        const std::vector<BlockLedger>& blocks, Day on);
/// Heat that goes into so much wax from a room's 20 °C to that temperature, kWh as a range; pot,
/// bath and losses come on top. Empty where the mass is not known or the temperature melts nothing.
QString meltHeatText(const std::optional<Mass>& wax, const std::optional<Temperature>& to);

}  // namespace combwright
