// What is short for spring in the year's account: the numbers of the worked stock-take
// (tests/support/stock_take.h), each with the records it rests on.
#include <gtest/gtest.h>

#include <algorithm>

#include "core/places/season_book/account_sections.h"
#include "tests/support/deeds.h"
#include "tests/support/stock_take.h"

namespace combwright {
namespace {

class AccountShort : public test::DeedsTest {
  protected:
    void SetUp() override {
        clock.set("2027-04-05");
        done(test::stockTakeBefore());
        done(test::stockTakeDeadOuts());
    }
    AccountSection section(int year) { return shortSection(file(), year, clock.today()); }
    static const AccountLine* line(const AccountSection& section, const char* contains) {
        for (const AccountLine& each : section.lines)
            if (each.name.contains(QLatin1String(contains), Qt::CaseInsensitive)) return &each;
        return nullptr;
    }
    static std::string all(const AccountSection& section) {
        std::string names;
        for (const AccountLine& each : section.lines)
            names += each.name.toStdString() + ": " + each.figure.toStdString() + " (" +
                     each.note.toStdString() + ")\n";
        return names;
    }
};

TEST_F(AccountShort, SaysTheSameNumbersAsTheStockTake) {
    const AccountSection spring = section(2027);
    EXPECT_EQ(spring.title, QStringLiteral("Short for spring 2027"));
    const AccountLine* boxes = line(spring, "medium boxes");
    ASSERT_NE(boxes, nullptr) << all(spring);
    EXPECT_EQ(boxes->figure, QStringLiteral("5")) << "after repairs";
    EXPECT_EQ(boxes->note, QStringLiteral("needed 40, there 33, 2 in repair, 7 short until that is "
                                          "done"));
    const AccountLine* frames = line(spring, "medium frames");
    ASSERT_NE(frames, nullptr) << all(spring);
    EXPECT_EQ(frames->figure, QStringLiteral("43"));
    const AccountLine* sheets = line(spring, "foundation, medium");
    ASSERT_NE(sheets, nullptr) << all(spring);
    EXPECT_EQ(sheets->figure, QStringLiteral("at most 67")) << "nobody counted foundation";
    for (const char* piece : {"floor", "lid"}) {
        const AccountLine* each = line(spring, piece);
        ASSERT_NE(each, nullptr) << piece << " in " << all(spring);
        EXPECT_EQ(each->figure, QStringLiteral("2")) << piece;
    }
    EXPECT_EQ(line(spring, "deep boxes"), nullptr) << "none is short";
}

TEST_F(AccountShort, EachNumberOpensWhatIsThereOfIt) {
    const AccountSection spring = section(2027);
    const AccountLine* boxes = line(spring, "medium boxes");
    ASSERT_NE(boxes, nullptr);
    EXPECT_EQ(boxes->records.size(), 35U) << "33 sound and 2 to repair";
    EXPECT_EQ(std::count_if(boxes->records.begin(), boxes->records.end(),
                            [](const AccountRecord& each) {
                                return each.amount == QLatin1String("needs repair");
                            }),
              2);
    EXPECT_FALSE(boxes->working.steps.empty()) << "and how it was reckoned";
    const AccountLine* frames = line(spring, "medium frames");
    ASSERT_NE(frames, nullptr);
    EXPECT_FALSE(frames->records.empty());
}

TEST_F(AccountShort, AnotherSpringCannotBeTold) {
    const AccountSection gone = section(2024);
    EXPECT_TRUE(gone.lines.empty());
    EXPECT_NE(gone.note.indexOf(QStringLiteral("it is with the year 2026")), -1)
        << gone.note.toStdString();
}

TEST_F(AccountShort, WithoutAPlanItSaysWhereToMakeOne) {
    clock.set("2027-10-01");
    const AccountSection next = section(2027);
    EXPECT_TRUE(next.lines.empty());
    EXPECT_NE(next.note.indexOf(QStringLiteral("No plan for 2028 is kept yet")), -1)
        << next.note.toStdString();
}

}  // namespace
}  // namespace combwright
