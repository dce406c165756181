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

TEST(ClearerRounds, AYardIsOneTripWhereThatCostsNoRoundMore) {
    // Hill four hives, Creek three, five boards: two rounds either way, so no yard is parted.
    const std::vector<std::int64_t> boxes{2, 2, 2, 1, 1, 2, 2};
    const std::vector<std::int64_t> yards{1, 1, 1, 1, 2, 2, 2};
    EXPECT_THAT(clearerRounds(boxes, 5, 5, yards),
                ElementsAre(ElementsAre(0, 1, 2, 3), ElementsAre(4, 5, 6)));
    // A small yard goes along where it fits.
    EXPECT_THAT(clearerRounds({2, 2, 2, 1, 1}, 4, 4, {1, 1, 1, 2, 3}),
                ElementsAre(ElementsAre(0, 1, 2, 3), ElementsAre(4)));
}

TEST(ClearerRounds, AYardIsPartedRatherThanARoundAdded) {
    // Three yards of two by three boards: whole yards would take three rounds, two are enough.
    EXPECT_THAT(clearerRounds({2, 2, 1, 1, 1, 1}, 3, 3, {1, 1, 2, 2, 3, 3}),
                ElementsAre(ElementsAre(0, 1, 2), ElementsAre(3, 4, 5)));
    // A yard larger than all boards is parted, most boxes first.
    EXPECT_THAT(clearerRounds({1, 2, 2, 1}, 2, 2, {7, 7, 7, 7}),
                ElementsAre(ElementsAre(1, 2), ElementsAre(0, 3)));
}

}  // namespace
}  // namespace combwright
