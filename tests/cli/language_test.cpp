#include "core/words/language.h"

#include <gtest/gtest.h>

#include <QRegularExpression>

#include "tests/cli/run_cli.h"
#include "tests/support/book_season.h"

namespace combwright {
namespace {

class SpokenAnswers : public test::CliTest {
  protected:
    void SetUp() override {
        clock.set("2027-11-20");
        Season season = newSeason();
        playAll(season, test::bookYears());
    }
    test::CliAnswer yields(const QStringList& more) const {
        return cli(QStringList{QStringLiteral("yields"), QString::fromStdString(path())} + more);
    }
};

TEST_F(SpokenAnswers, TextIsInTheLanguageAskedFor) {
    const test::CliAnswer english = yields({});
    ASSERT_EQ(english.exit, 0) << english;
    EXPECT_EQ(yields({QStringLiteral("--language"), QStringLiteral("en")}).out, english.out);
    const test::CliAnswer german = yields({QStringLiteral("--language"), QStringLiteral("de")});
    ASSERT_EQ(german.exit, 0) << german;
    EXPECT_NE(german.out, english.out);
    static const QRegularExpression point(QStringLiteral("\\d\\.\\d{1,2} kg"));
    static const QRegularExpression comma(QStringLiteral("\\d,\\d{1,2} kg"));
    EXPECT_TRUE(english.out.contains(point)) << english;
    EXPECT_FALSE(german.out.contains(point)) << german;
    EXPECT_TRUE(german.out.contains(comma)) << german;
    // It was spoken for that answer alone.
    EXPECT_EQ(yields({}).out, english.out);
}

TEST_F(SpokenAnswers, JsonIsEnglishWhateverIsSpoken) {
    const test::CliAnswer english = yields({QStringLiteral("--json")});
    EXPECT_FALSE(english.object().isEmpty() && english.array().isEmpty()) << english;
    EXPECT_EQ(
        yields({QStringLiteral("--json"), QStringLiteral("--language"), QStringLiteral("de")}).out,
        english.out);
}

TEST_F(SpokenAnswers, AnUnknownLanguageIsRefused) {
    const test::CliAnswer answer = yields({QStringLiteral("--language"), QStringLiteral("xx")});
    EXPECT_EQ(answer.exit, 2) << answer;
    EXPECT_TRUE(answer.err.contains(QStringLiteral("--language xx"))) << answer;
}

}  // namespace
}  // namespace combwright
