#include "core/trade/learning/learn_rate.h"

#include <cmath>
#include <string>

namespace combwright {
namespace {

Result<void> refuseLearning(double published, double publishedSd, const std::vector<double>& seen,
                            double seenSd) {
    if (!std::isfinite(published)) return Refusal{Code::OutOfRange, "published"};
    if (!(publishedSd > 0.0) || !std::isfinite(publishedSd))
        return Refusal{Code::OutOfRange, "published_sd", {{"low", "0"}}};
    for (std::size_t i = 0; i < seen.size(); ++i)
        if (!std::isfinite(seen[i]))
            return Refusal{Code::OutOfRange, "seen[" + std::to_string(i) + "]"};
    if (!(seenSd > 0.0) || !std::isfinite(seenSd))
        return Refusal{Code::OutOfRange, "seen_sd", {{"low", "0"}}};
    return {};
}

}  // namespace

Result<LearnedRate> learnRate(double published, double publishedSd, const std::vector<double>& seen,
                              double seenSd, Working* working) {
    if (auto good = refuseLearning(published, publishedSd, seen, seenSd); !good)
        return good.error();
    // One run for the unit of precision: no square of a tiny deviation can run over.
    const double ratio = seenSd / publishedSd;
    const double weight = ratio * ratio;
    LearnedRate learned{published, publishedSd};
    if (const auto runs = seenRates(seen)) {
        const auto n = static_cast<double>(runs->n);
        // From the published value towards the runs, so that both alike stay what they are.
        const double towards = n / (weight + n);
        learned.value = published + towards * (runs->mean - published);
        learned.sd = seenSd / std::sqrt(weight + n);
        note(working, "published", published, "");
        note(working, "published_sd", publishedSd, "");
        note(working, "runs_seen", n, "");
        note(working, "seen_mean", runs->mean, "", "Σ seen ÷ n");
        note(working, "seen_sd", seenSd, "");
        note(working, "learned", learned.value, "",
             "(published ÷ published_sd² + Σ seen ÷ seen_sd²) ÷ (1 ÷ published_sd² + n ÷ seen_sd²)",
             "mean weighted by precision");
    }
    return learned;
}

std::optional<SeenRates> seenRates(const std::vector<double>& seen) {
    if (seen.empty()) return std::nullopt;
    SeenRates rates;
    rates.n = seen.size();
    const auto n = static_cast<double>(rates.n);
    for (const double each : seen) rates.mean += each / n;
    if (rates.n < 2) return rates;
    double squares = 0.0;
    for (const double each : seen) squares += (each - rates.mean) * (each - rates.mean);
    rates.sd = std::sqrt(squares / (n - 1.0));
    return rates;
}

}  // namespace combwright
