// The pure computations as scripts reach them: one JSON object in, one out, no file. Names, keys
// and ranges are a promise (README, "Command line"): only ever added to.
#pragma once

#include <QJsonObject>
#include <string_view>
#include <vector>

#include "core/support/result.h"

namespace combwright {

struct Computation {
    std::string_view name;  ///< as in `compute NAME`
    Result<QJsonObject> (*run)(const QJsonObject& input);
};

/// Every computation, in the order they are listed to the person.
const std::vector<Computation>& computations();
const Computation* findComputation(std::string_view name);

// One list for each of the trade's rooms; each file of this folder defines one.
std::vector<Computation> honeyComputations();
std::vector<Computation> frameComputations();
std::vector<Computation> extractorComputations();
std::vector<Computation> pullComputations();
std::vector<Computation> colonyComputations();
std::vector<Computation> storeroomComputations();
std::vector<Computation> candleComputations();
std::vector<Computation> waxComputations();

}  // namespace combwright
