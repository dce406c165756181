// The real clock; the only place that asks the machine what day it is.
#pragma once

#include <chrono>
#include <ctime>

#include "core/support/clock.h"

namespace combwright {

class SystemClock : public Clock {
  public:
    Day today() const override {
        // The day where the keeper is, which may differ from the day in UTC.
        const std::time_t now = std::time(nullptr);
        std::tm local{};
        localtime_r(&now, &local);
        return *makeDay(local.tm_year + 1900, static_cast<unsigned>(local.tm_mon + 1),
                        static_cast<unsigned>(local.tm_mday));
    }
    Instant now() const override {
        return std::chrono::floor<std::chrono::seconds>(std::chrono::system_clock::now());
    }
    std::int64_t steadyMs() const override {
        return std::chrono::duration_cast<std::chrono::milliseconds>(
                   std::chrono::steady_clock::now().time_since_epoch())
            .count();
    }
};

}  // namespace combwright
