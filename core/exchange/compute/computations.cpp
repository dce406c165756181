#include "core/exchange/compute/computations.h"

namespace combwright {

const std::vector<Computation>& computations() {
    static const std::vector<Computation> all = [] {
        std::vector<Computation> list;
        for (const auto& group : {honeyComputations(), frameComputations(), extractorComputations(),
                                  pullComputations(), colonyComputations(), storeroomComputations(),
                                  candleComputations(), waxComputations()})
            list.insert(list.end(), group.begin(), group.end());
        return list;
    }();
    return all;
}

const Computation* findComputation(std::string_view name) {
    for (const Computation& each : computations())
        if (each.name == name) return &each;
    return nullptr;
}

}  // namespace combwright
