// What the person reads when the world did something to a file: plain words, never those of SQLite.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/storage/sqlite/storage_error.h"
#include "core/words/words.h"

namespace combwright {
namespace {

using testing::HasSubstr;
using testing::Not;

TEST(TroubleWords, AreNeverThoseOfSqlite) {
    // Generic error, out of memory, reading failed, damaged, cannot be opened, a constraint.
    for (const int code : {1, 7, 10, 266, 11, 267, 14, 19})
        for (const Trouble trouble : allTroubles()) {
            if (trouble == Trouble::Newer) continue;  // its detail is the version
            const StorageError error(
                trouble, "/bees/2027.combwright",
                "database disk image is malformed Unable to fetch row · SELECT seq FROM journal",
                code);
            const std::string says = sentence(error).toStdString();
            for (const char* raw : {"malformed", "Unable", "SELECT", "journal", "%2", "()"})
                EXPECT_THAT(says, Not(HasSubstr(raw))) << key(trouble) << ' ' << code;
            EXPECT_THAT(says, HasSubstr("/bees/2027.combwright"));
        }
}

TEST(RefusalWords, ARangeOfMassesIsSaidAsTheScalesSayIt) {
    const Refusal wet{Code::OutOfRange, "wet_g", {{"low", "0"}, {"high", "60000"}}};
    EXPECT_THAT(sentence(wet).toStdString(), HasSubstr("Weight wet is outside what can be: 0"));
    EXPECT_THAT(sentence(wet).toStdString(), HasSubstr(" to 60 kg."));
    const Refusal frames{Code::OutOfRange, "frames", {{"low", "1"}, {"high", "72"}}};
    EXPECT_THAT(sentence(frames).toStdString(), HasSubstr("1 to 72."));
}

TEST(TroubleWords, SayWhatIsOursAndLeaveOutWhatIsForAReport) {
    const StorageError part(Trouble::Damaged, "bees",
                            "a part of the file is missing or altered · CREATE TABLE box");
    EXPECT_THAT(sentence(part).toStdString(),
                HasSubstr("bees is damaged (a part of the file is missing or altered)."));
    const StorageError rights(Trouble::NotWritable, "bees", "Permission denied");
    EXPECT_THAT(sentence(rights).toStdString(), HasSubstr("(Permission denied)"));
    const StorageError disk(Trouble::Failed, "bees", "disk I/O error · COMMIT", 10);
    EXPECT_EQ(sentence(disk).toStdString(),
              "bees could not be read or written (the disk or its connection failed). What was "
              "being done is not kept, all before it is. Try again; where that does not help, open "
              "one of the copies.");
}

}  // namespace
}  // namespace combwright
