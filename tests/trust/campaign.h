// How long and with which seed the campaigns run: short in every test run, long on demand through
// tests/trust/run. What was counted goes into the test's properties and onto the screen.
#pragma once

#include <gtest/gtest.h>

#include <cstdlib>
#include <iostream>
#include <string>

namespace combwright::test {

inline bool isLongCampaign() {
    const char* asked = std::getenv("COMBWRIGHT_TRUST");
    return asked && std::string(asked) == "long";
}

inline unsigned campaignSeed() {
    const char* asked = std::getenv("COMBWRIGHT_TRUST_SEED");
    return asked ? static_cast<unsigned>(std::strtoul(asked, nullptr, 10)) : 20280229U;
}

inline void report(const std::string& what, long count) {
    testing::Test::RecordProperty(what, std::to_string(count));
    std::cout << "    " << what << ": " << count << '\n';
}

}  // namespace combwright::test
