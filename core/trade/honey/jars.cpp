#include "core/trade/honey/jars.h"

#include <algorithm>
#include <cmath>

namespace combwright {
namespace {

// A few roundings of a double, relative; far below one gram in a thousand tonnes.
constexpr double exactFillMargin = 1e-12;

double fillsOf(double amount, double each) { return amount / each; }

double fillMargin(double fills) { return exactFillMargin * std::max(1.0, fills); }

// More than this is not counted one by one; 2^53, where doubles stop telling whole numbers apart.
constexpr double mostFills = 9007199254740992.0;

}  // namespace

std::int64_t filledBy(double amount, double each) {
    const double fills = std::min(fillsOf(amount, each), mostFills);
    return static_cast<std::int64_t>(std::floor(fills + fillMargin(fills)));
}

std::int64_t neededFor(double amount, double each) {
    const double fills = std::min(fillsOf(amount, each), mostFills);
    return static_cast<std::int64_t>(std::ceil(fills - fillMargin(fills)));
}

Result<JarCount> countJars(double honeyG, double netG, double lossShare, Working* working) {
    if (!(honeyG >= 0)) return Refusal{Code::Negative, "honey_g"};
    if (!(netG > 0)) return Refusal{Code::OutOfRange, "net_g"};
    if (!(lossShare >= 0 && lossShare <= 1)) return Refusal{Code::OutOfRange, "loss_share"};
    const double filled = honeyG * (1 - lossShare);
    if (filled / netG >= mostFills) return Refusal{Code::OutOfRange, "net_g"};
    JarCount count;
    count.jars = filledBy(filled, netG);
    count.leftG = std::max(0.0, filled - static_cast<double>(count.jars) * netG);
    note(working, "honey", honeyG, "g");
    note(working, "after_loss", filled, "g", "honey · (1 − loss)");
    note(working, "jars", static_cast<double>(count.jars), "", "⌊after loss ÷ net⌋");
    note(working, "left", count.leftG, "g", "after loss − jars · net");
    return count;
}

}  // namespace combwright
