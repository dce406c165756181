// What one types of a box's contents: a decimal comma is no list comma, and words that libraries
// take for numbers are none.
#include <gtest/gtest.h>

#include "core/actions/boxes/box_list.h"

namespace combwright {
namespace {

TEST(TypedContents, ADecimalCommaIsNoListComma) {
    const auto half = parseContents("9 drawn; 6,5 capped");
    ASSERT_TRUE(half);
    ASSERT_EQ(half->tallies.size(), 1U);
    EXPECT_EQ(half->frames(), Count(9));
    EXPECT_EQ(half->capped->value, Frames::tenths(65));
    const auto full = parseContents("12,5 % full");
    ASSERT_TRUE(full);
    EXPECT_EQ(full->filled->value, Share::tenThousandths(1250));
    const auto list = parseContents("8 drawn,1 broken");
    ASSERT_TRUE(list);
    EXPECT_EQ(list->tallies.size(), 2U);
    EXPECT_FALSE(parseContents("8,1 broken")) << "could mean two things";
}

TEST(TypedContents, WordsThatLibrariesTakeForNumbersAreNone) {
    for (const char* typed : {"nan drawn", "inf capped", "nan % full", "infinity % full"}) {
        const auto read = parseContents(typed);
        ASSERT_FALSE(read) << typed;
        EXPECT_EQ(read.error().code, Code::WrongType) << typed;
    }
}

}  // namespace
}  // namespace combwright
