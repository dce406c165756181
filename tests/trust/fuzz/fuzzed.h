// What is thrown at the readers of tables and of JSON: bytes of any kind. Each takes one input and
// ends the program where a promise is broken. libFuzzer (fuzz_main.cpp) makes them up; an ordinary
// test takes those that were kept.
#pragma once

#include <cstddef>
#include <cstdint>

namespace combwright::test {

/// A table from elsewhere: letters, parter, headings, numbers and days in its cells; of one in many
/// the whole plan, and that it does what it showed. The first byte chooses. Of those that would be
/// planned one in so many is kept, which takes a season of its own, and eight times as many are
/// looked at; the first in any case.
void readAnyTable(const std::uint8_t* bytes, std::size_t size, long keptOneIn = 1);

/// JSON from elsewhere: read strictly, reckoned with, done as a line of play and taken back. The
/// first byte chooses.
void readAnyJson(const std::uint8_t* bytes, std::size_t size);

}  // namespace combwright::test
