#include "core/exchange/qr_code.h"

#include <qrencode.h>

#include <memory>
#include <string>

namespace combwright {

std::optional<QrCode> qrCode(std::string_view text) {
    if (text.empty() || text.find('\0') != std::string_view::npos) return std::nullopt;
    const std::unique_ptr<QRcode, void (*)(QRcode*)> made(
        QRcode_encodeString(std::string(text).c_str(), 0, QR_ECLEVEL_M, QR_MODE_8, 1),
        &QRcode_free);
    if (!made) return std::nullopt;
    QrCode code;
    code.side = made->width;
    const auto modules = static_cast<std::size_t>(code.side) * static_cast<std::size_t>(code.side);
    for (std::size_t i = 0; i < modules; ++i)
        // The lowest bit of a module says whether it is dark.
        code.dark.push_back((made->data[i] & 1U) != 0);
    return code;
}

}  // namespace combwright
