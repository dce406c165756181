#include "core/storage/queries/pegs.h"

#include <algorithm>
#include <charconv>

namespace combwright {

std::optional<Peg> pegOn(const Read& file, Count number, Day on) {
    std::optional<Peg> found;
    for (Peg& each : file.where<Peg>({is("number", number)}))
        if (each.on <= on && (!each.off || on <= *each.off)) found = std::move(each);
    return found;
}

std::optional<Peg> pegOfBox(const Read& file, Id<Box> box, Day on) {
    for (Peg& each : file.where<Peg>({is("box", box)}))
        if (each.on <= on && (!each.off || on < *each.off)) return std::move(each);
    return std::nullopt;
}

std::optional<Peg> lastPegOfBox(const Read& file, Id<Box> box, Day on) {
    std::optional<Peg> last;
    for (Peg& each : file.where<Peg>({is("box", box)}))
        if (each.on <= on && (!last || each.on >= last->on)) last = std::move(each);
    return last;
}

std::string pegTag(const Read& file, const Peg& peg, Day runBegan) {
    const std::string tag = "peg " + std::to_string(peg.number.value());
    for (const Peg& each : file.where<Peg>({is("number", peg.number)}))
        if (each.on < peg.on && (!each.off || *each.off >= runBegan))
            return tag + " of " + isoText(peg.on);
    return tag;
}

std::optional<Count> pegOfTag(std::string_view name) {
    constexpr std::string_view lead = "peg ";
    if (!name.starts_with(lead)) return std::nullopt;
    const std::string_view digits = name.substr(lead.size());
    std::int64_t number = 0;
    const auto [end, error] = std::from_chars(digits.data(), digits.data() + digits.size(), number);
    if (error != std::errc() || end != digits.data() + digits.size() || number < 1)
        return std::nullopt;
    return Count(number);
}

std::optional<ClearerBoard> boardIn(const Read& file, Id<Hive> hive, Day on) {
    for (ClearerBoard& each : file.where<ClearerBoard>({is("hive", hive)}))
        if (each.on <= on && (!each.off || on < *each.off)) return std::move(each);
    return std::nullopt;
}

}  // namespace combwright
