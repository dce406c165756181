// Which hives get a clearer board in which round.
#include "core/trade/pull/clearer_rounds.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace combwright {
namespace {

using testing::ElementsAre;
using testing::IsEmpty;

TEST(ClearerRounds, OneRoundWhereThereAreEnough) {
    EXPECT_THAT(clearerRounds({2, 0, 1}, 3, 3), ElementsAre(ElementsAre(0, 2)));
    EXPECT_THAT(clearerRounds({}, 3, 3), IsEmpty());
    EXPECT_THAT(clearerRounds({0, 0}, 3, 3), IsEmpty());
}

TEST(ClearerRounds, TheHivesWithMostBoxesGoFirst) {
    EXPECT_THAT(clearerRounds({1, 2, 1, 2, 1}, 2, 2),
                ElementsAre(ElementsAre(1, 3), ElementsAre(0, 2), ElementsAre(4)));
}

TEST(ClearerRounds, BoardsThatAreInComeLater) {
    EXPECT_THAT(clearerRounds({1, 1, 1}, 1, 2), ElementsAre(ElementsAre(0), ElementsAre(1, 2)));
    EXPECT_THAT(clearerRounds({1, 1, 1}, 0, 2), ElementsAre(ElementsAre(0, 1), ElementsAre(2)));
    EXPECT_THAT(clearerRounds({1, 1, 1}, 0, 0), IsEmpty()) << "none at all: brush them";
}

}  // namespace
}  // namespace combwright
