// The square code on a jar's label, for a telephone's camera: the lot's code and nothing else, no
// address, no server.
#pragma once

#include <optional>
#include <string_view>
#include <vector>

namespace combwright {

struct QrCode {
    int side = 0;            ///< modules along an edge, without the white rim of four around it
    std::vector<bool> dark;  ///< row by row
};

/// A code that can still be read with a seventh of it scratched (level M). Nothing for an empty
/// text, one with a zero byte, or one longer than such a code holds.
std::optional<QrCode> qrCode(std::string_view text);

/// Modules of white that belong around it (ISO/IEC 18004).
inline constexpr int qrRim = 4;

}  // namespace combwright
