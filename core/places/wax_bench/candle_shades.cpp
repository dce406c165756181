#include "core/places/wax_bench/candle_shades.h"

#include <algorithm>

namespace combwright {

std::vector<std::string> waxParts(std::string_view line) {
    std::vector<std::string> parts;
    while (true) {
        const std::size_t comma = line.find(',');
        std::string_view part = line.substr(0, comma);
        while (part.starts_with(' ') || part.starts_with('\t')) part.remove_prefix(1);
        while (part.ends_with(' ') || part.ends_with('\t')) part.remove_suffix(1);
        if (!part.empty()) parts.emplace_back(part);
        if (comma == std::string_view::npos) return parts;
        line.remove_prefix(comma + 1);
    }
}

Result<std::vector<WaxShade>> readShades(std::string_view line) {
    std::vector<WaxShade> shades;
    for (const std::string& part : waxParts(line)) {
        const auto& words = Choices<WaxShade>::words;
        const auto found = std::find(words.begin(), words.end(), part);
        if (found == words.end())
            return Refusal{
                Code::NotAChoice, "shades", {{"value", part}, {"choices", "light, mid, dark"}}};
        const auto shade = static_cast<WaxShade>(found - words.begin());
        if (std::find(shades.begin(), shades.end(), shade) != shades.end())
            return Refusal{Code::Duplicate, "shades", {{"name", part}}};
        shades.push_back(shade);
    }
    return shades;
}

}  // namespace combwright
