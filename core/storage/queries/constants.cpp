#include "core/storage/queries/constants.h"

#include "core/catalogue/constants.h"

namespace combwright {

std::optional<ConstantInForce> constantInForce(const Read& file, std::string_view name,
                                               std::optional<Id<Yard>> yard, Day on) {
    std::optional<Constant> own;
    // Later ones overrule earlier ones of the same day; the yard's own overrules the file's.
    for (Constant& each : file.where<Constant>({{"name", std::string(name)}})) {
        if (each.since > on || (each.until && *each.until <= on)) continue;
        if (each.yard && each.yard != yard) continue;
        const bool nearer =
            !own || (each.yard && !own->yard) ||
            (each.yard.has_value() == own->yard.has_value() && each.since >= own->since);
        if (nearer) own = std::move(each);
    }
    if (own) {
        const double value = own->value.value();
        std::string source = own->source;
        return ConstantInForce{value, std::move(own), std::move(source)};
    }
    const auto* published = findPublishedConstant(name);
    if (!published) return std::nullopt;
    return ConstantInForce{published->value, std::nullopt, published->source};
}

std::string constantSource(const ConstantInForce& constant) {
    if (!constant.own) return constant.source;
    std::string text = "own figure since " + isoText(constant.own->since);
    if (!constant.source.empty()) text += ": " + constant.source;
    return text;
}

double constantOr(const Read& file, std::string_view name, std::optional<Id<Yard>> yard, Day on,
                  double fallback) {
    const auto found = constantInForce(file, name, yard, on);
    return found ? found->value : fallback;
}

}  // namespace combwright
