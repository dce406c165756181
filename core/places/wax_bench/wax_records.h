// The records behind a band of the wax bench: what was done to a batch, what became of the blocks
// of a shade, what was poured and wished of a candle.
#pragma once

#include <QString>
#include <optional>
#include <vector>

#include "core/storage/queries/wax_ledger.h"

namespace combwright {

/// Whose records; with nothing set every step of every batch.
struct WaxRecordsOf {
    std::optional<Id<WaxBatch>> batch = std::nullopt;
    std::optional<WaxShade> shade = std::nullopt;
    std::optional<Id<GoodsKind>> kind = std::nullopt;
    bool operator==(const WaxRecordsOf&) const = default;
};

struct WaxRecordLine {
    Day on;
    QString what;  ///< the record in a few words
    QString mass;  ///< with its letter; empty: not weighed
    QString note;
};

/// By day, up to one.
std::vector<WaxRecordLine> waxRecords(const Read& file, const WaxRecordsOf& of, Day until);

}  // namespace combwright
