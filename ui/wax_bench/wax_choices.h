// What the short forms of the wax bench have to choose from: batches, blocks, moulds, pours, hives.
#pragma once

#include <QComboBox>
#include <QLineEdit>

#include "core/places/wax_bench/wax_bench.h"
#include "ui/shell/session.h"

namespace combwright {

/// "1 skep", "60 skeps" without the number: what candles of a kind are called.
QString candlesText(const std::string& kind, std::int64_t count);
QString batchText(const BatchShown& batch);
QString blockText(const BlockLedger& block);

/// The words for none first, where there are any.
void addBatches(QComboBox* choice, const WaxBench& bench, const QString& none);
void addBuckets(QComboBox* choice, const Read& file, const QString& none);
void addHives(QComboBox* choice, const Read& file, Day on, const QString& none);
void addMoulds(QComboBox* choice, const WaxBench& bench);
/// Goods of that kind.
void addGoods(QComboBox* choice, const Read& file, GoodsWhat what, const QString& none);

/// A name has to be typed; where none is that is told and the cursor goes there.
bool readWaxName(Session& session, QLineEdit* field, Name& name);

}  // namespace combwright
