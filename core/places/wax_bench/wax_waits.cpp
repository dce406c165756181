#include "core/places/wax_bench/wax_waits.h"

#include "core/places/wax_bench/wax_bench.h"

namespace combwright {

int waxThatWaits(const Read& file, Day on) {
    const WaxBench bench = waxBench(file, on);
    int waits = static_cast<int>(bench.heat.size());
    for (const BatchShown& batch : bench.batches)
        if (batch.washedOn) ++waits;
    for (const PourShown& pour : bench.unfinished)
        if (!pour.setBy || *pour.setBy <= on) ++waits;
    return waits;
}

}  // namespace combwright
