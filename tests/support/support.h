// What tests share: a clock that stands still, a season in a folder of its own, and short ways to
// play.
#pragma once

#include <gtest/gtest.h>

#include <QTemporaryDir>
#include <string>
#include <string_view>

#include "core/actions/play.h"
#include "core/storage/season.h"

namespace combwright::test {

class FakeClock : public Clock {
  public:
    explicit FakeClock(std::string_view today = "2027-06-09") : m_today(*parseDay(today)) {}
    Day today() const override { return m_today; }
    Instant now() const override { return Instant(m_today) + std::chrono::hours(14) + m_later; }
    std::int64_t steadyMs() const override { return m_steadyMs; }
    void set(std::string_view today) { m_today = *parseDay(today); }
    /// Time goes by, on both hands.
    void pass(std::chrono::seconds seconds) {
        m_later += seconds;
        m_steadyMs += std::chrono::milliseconds(seconds).count();
    }
    /// The hour is put right or jumps, while no time goes by.
    void jump(std::chrono::seconds seconds) { m_later += seconds; }

  private:
    Day m_today;
    std::chrono::seconds m_later{0};
    std::int64_t m_steadyMs = 0;
};

inline Day day(std::string_view text) { return *parseDay(text); }
inline Name name(std::string_view text) { return *Name::of(text); }

/// A new season file in a folder that goes with the test.
class SeasonTest : public testing::Test {
  protected:
    std::string path(const char* file = "season.combwright") const {
        return m_folder.filePath(QLatin1String(file)).toStdString();
    }
    Season newSeason() {
        auto season = Season::create(path(), clock);
        EXPECT_TRUE(season);
        return *std::move(season);
    }
    /// Plays lines that must all be accepted.
    static void playAll(Season& season, std::string_view script) {
        const PlayResult result = play(season, script);
        ASSERT_FALSE(result.stopped)
            << "line " << result.stopped->line << ": " << key(result.stopped->refusal.code) << " "
            << result.stopped->refusal.field << " " << result.stopped->refusal.value("name");
    }

    FakeClock clock;

  private:
    QTemporaryDir m_folder;
};

}  // namespace combwright::test
