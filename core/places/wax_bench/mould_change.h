// More or fewer cavities for a candle, as moulds that come and go: a number is typed on the board
// of evenings, and moulds are what the file knows.
#pragma once

#include <optional>
#include <vector>

#include "core/storage/queries/wax_ledger.h"

namespace combwright {

struct MouldChange {
    std::vector<Mould> gone;
    std::optional<Mould> comes;  ///< like the first of the kind; its name is not taken yet
    bool anything() const { return !gone.empty() || comes; }
};

/// Nothing comes where no mould of the kind is known to make another like it; then it has to be
/// described.
MouldChange mouldChange(const Read& file, Id<GoodsKind> kind, std::int64_t cavities, Day on);

}  // namespace combwright
