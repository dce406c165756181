#include "core/storage/queries/constants.h"

#include "core/catalogue/constants.h"

namespace combwright {

ConstantOverDays::ConstantOverDays(const Read& file, std::string_view name,
                                   std::optional<Id<Yard>> yard)
    : m_name(name), m_yard(yard), m_own(file.where<Constant>({{"name", m_name}})) {}

std::optional<ConstantInForce> ConstantOverDays::on(Day day) const {
    const Constant* own = nullptr;
    // Later ones overrule earlier ones of the same day; the yard's own overrules the file's.
    for (const Constant& each : m_own) {
        if (each.since > day || (each.until && *each.until <= day)) continue;
        if (each.yard && each.yard != m_yard) continue;
        const bool nearer =
            !own || (each.yard && !own->yard) ||
            (each.yard.has_value() == own->yard.has_value() && each.since >= own->since);
        if (nearer) own = &each;
    }
    if (own) return ConstantInForce{own->value.value(), *own, own->source};
    const auto* published = findPublishedConstant(m_name);
    if (!published) return std::nullopt;
    return ConstantInForce{published->value, std::nullopt, published->source};
}

double ConstantOverDays::onOr(Day day, double fallback) const {
    const auto found = on(day);
    return found ? found->value : fallback;
}

std::optional<ConstantInForce> constantInForce(const Read& file, std::string_view name,
                                               std::optional<Id<Yard>> yard, Day on) {
    return ConstantOverDays(file, name, yard).on(on);
}

std::string constantSource(const ConstantInForce& constant) {
    if (!constant.own) return constant.source;
    std::string text = "own figure since " + isoText(constant.own->since);
    if (!constant.source.empty()) text += ": " + constant.source;
    return text;
}

double constantOr(const Read& file, std::string_view name, std::optional<Id<Yard>> yard, Day on,
                  double fallback) {
    return ConstantOverDays(file, name, yard).onOr(on, fallback);
}

}  // namespace combwright
