// How far a long job has come, and whether it is still wanted: one thread works, another looks and
// may stop it. The job asks at every row, so that a stop is felt at once.
#pragma once

#include <algorithm>
#include <atomic>
#include <cstddef>

namespace combwright {

class Progress {
  public:
    /// The steps of the whole job, before its first.
    void begin(std::size_t all) {
        m_done = 0;
        m_all = all;
    }
    /// False once the job is no longer wanted.
    bool advance(std::size_t steps = 1) {
        m_done += steps;
        return !m_stopped;
    }
    void stop() { m_stopped = true; }
    bool isStopped() const { return m_stopped; }
    /// 0 to 100.
    int percent() const {
        const std::size_t all = m_all;
        return all == 0 ? 0 : static_cast<int>(std::min(all, m_done.load()) * 100 / all);
    }

  private:
    std::atomic<std::size_t> m_done = 0;
    std::atomic<std::size_t> m_all = 0;
    std::atomic<bool> m_stopped = false;
};

}  // namespace combwright
