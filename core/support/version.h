// The program's own version and the contract of its command line.
#pragma once

#include <string_view>

namespace combwright {

constexpr std::string_view programVersion = COMBWRIGHT_VERSION;
/// The promise of commands and JSON keys: raised only if one were ever taken away.
constexpr int commandContract = 1;

}  // namespace combwright
