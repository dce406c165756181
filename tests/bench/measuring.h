// How a benchmark is run that may come to nothing: a file that cannot be made, a deed refused.
#pragma once

#include <benchmark/benchmark.h>

#include <stdexcept>
#include <string>

#include "core/storage/sqlite/storage_error.h"
#include "tests/bench/ratio_table.h"

namespace combwright::bench {

/// Runs a benchmark; what cannot be measured is told in the table.
template <class Measure>
void measuring(benchmark::State& state, const std::string& what, Measure measure) {
    std::string failure;
    try {
        measure();
        return;
    } catch (const StorageError& error) {
        failure = error.detail;
    } catch (const std::runtime_error& error) {
        failure = error.what();
    }
    state.SkipWithError(failure.c_str());
    table().addUnmeasured(what, failure);
}

}  // namespace combwright::bench
