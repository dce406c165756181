// Time on the clock that only goes forward and that all processes share.
#pragma once

#include <chrono>

namespace combwright::bench {

/// Milliseconds since it was made.
class Stopwatch {
  public:
    double ms() const {
        return std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - m_begun)
            .count();
    }
    /// Nanoseconds on the shared clock when it was made.
    long long begunNs() const {
        return std::chrono::duration_cast<std::chrono::nanoseconds>(m_begun.time_since_epoch())
            .count();
    }

  private:
    std::chrono::steady_clock::time_point m_begun = std::chrono::steady_clock::now();
};

}  // namespace combwright::bench
