// Amending what was recorded: what is left out stays, null is unknown and not zero, every rule of
// the field holds, and the old value stays where it can be found.
#include "core/actions/amend/amend.h"

#include <gtest/gtest.h>

#include "tests/support/amendments.h"

namespace combwright {
namespace {

class AmendedBucket : public test::Amended {
  protected:
    void SetUp() override {
        done(R"({"do":"open-run","on":"2027-08-01","name":"27-1"}
{"do":"fill-bucket","on":"2027-08-01","run":"27-1","mark":"B4","net_g":12000,"water_percent":17.4,"lidded":false,"note":"pale"}
{"do":"fill-bucket","on":"2027-08-01","run":"27-1","mark":"B5","net_g":0})");
    }
    static std::string bucket(const std::string& set) {
        return amend(R"("bucket":{"bucket":"B4","run":"27-1"})", set);
    }
    Bucket b4() const { return file().all<Bucket>().front(); }
};

TEST_F(AmendedBucket, ChangesWhatIsSaidAndLeavesTheRest) {
    EXPECT_EQ(outcome(bucket(R"("net_g":12500)")), "kept");
    EXPECT_EQ(b4().net, (Known<Mass>{Mass::grams(12500), {}, How::Weighed}));
    EXPECT_EQ(b4().water, WaterContent::hundredths(1740));
    EXPECT_EQ(b4().lidded, false);
    EXPECT_EQ(b4().note, "pale");
    EXPECT_EQ(b4().mark.text(), "B4");
    EXPECT_EQ(season.history(1)[0].info.why, "misread");
    EXPECT_EQ(
        season.history(1)[0].info.line,
        R"({"do":"amend","on":"2027-11-20","bucket":"#1","set":{"net_g":12500},"why":"misread"})");
    expectReplays();
}

TEST_F(AmendedBucket, NullIsUnknownZeroIsZeroBlankIsNeither) {
    EXPECT_EQ(outcome(bucket(R"("water_percent":null,"lidded":null)")), "kept");
    EXPECT_FALSE(b4().water);
    EXPECT_FALSE(b4().lidded) << "unknown is not no";
    EXPECT_EQ(outcome(bucket(R"("net_g":0)")), "kept");
    EXPECT_EQ(b4().net->value, Mass::grams(0));
    EXPECT_EQ(outcome(bucket(R"("net_g":"")")), "wrong_type set.net_g");
    EXPECT_EQ(outcome(bucket(R"("net_g":null)")), "kept");
    EXPECT_FALSE(b4().net) << "neither figure nor how is left";
    EXPECT_EQ(outcome(bucket(R"("note":"")")), "kept");
    EXPECT_EQ(b4().note, "");
    EXPECT_EQ(outcome(bucket(R"("mark":null)")), "missing set.mark");
    EXPECT_EQ(outcome(bucket(R"("mark":"")")), "missing set.mark");
    expectReplays();
}

TEST_F(AmendedBucket, RefusesWhatNoActionWouldTake) {
    EXPECT_EQ(outcome(bucket(R"("smell":"sour")")), "unknown_key set.smell");
    EXPECT_EQ(outcome(bucket(R"("id":"#2")")), "unknown_key set.id");
    EXPECT_EQ(outcome(bucket(R"("net_g":"12500")")), "wrong_type set.net_g");
    EXPECT_EQ(outcome(bucket(R"("net_g":12500.5)")), "wrong_type set.net_g");
    EXPECT_EQ(outcome(bucket(R"("net_g":-1)")), "negative set.net_g");
    EXPECT_EQ(outcome(bucket(R"("net_g":1000001)")), "out_of_range set.net_g");
    EXPECT_EQ(outcome(bucket(R"("water_percent":174)")), "out_of_range set.water_percent");
    EXPECT_EQ(outcome(bucket(R"("water_percent":31)")), "out_of_range set.water_percent");
    EXPECT_EQ(outcome(bucket(R"("lidded":1)")), "wrong_type set.lidded");
    EXPECT_EQ(outcome(bucket(R"("net_how":"weighted")")), "not_a_choice set.net_how");
    EXPECT_EQ(outcome(bucket(R"("mark":"B5")")), "taken set.mark");
    EXPECT_EQ(outcome(bucket(R"("extraction":"27-1")")), "fixed set.extraction");
    EXPECT_EQ(outcome(bucket(R"("net_g":12500,"water_percent":"wet")")),
              "wrong_type set.water_percent")
        << "and the weight that was right is not kept either";
}

TEST_F(AmendedBucket, NeedsARecordAChangeAndAReason) {
    EXPECT_EQ(outcome(bucket("")), "missing set");
    EXPECT_EQ(outcome(R"({"do":"amend","on":"2027-11-20","bucket":"B4","why":"misread"})"),
              "missing set");
    EXPECT_EQ(outcome(R"({"do":"amend","on":"2027-11-20","bucket":"B4","set":7,"why":"misread"})"),
              "wrong_type set");
    EXPECT_EQ(outcome(R"({"do":"amend","on":"2027-11-20","set":{"net_g":12500},"why":"misread"})"),
              "missing record");
    EXPECT_EQ(outcome(amend(R"("bucket":"B4","run":"27-1")", R"("note":"x")")),
              "contradiction bucket");
    EXPECT_EQ(outcome(amend(R"("bucket":"B9")", R"("note":"x")")), "not_found bucket");
    for (const char* why : {R"()", R"(,"why":null)", R"(,"why":"")", R"(,"why":"  ")"})
        EXPECT_EQ(outcome(R"({"do":"amend","on":"2027-11-20","bucket":"B4","set":{"net_g":12500})" +
                          std::string(why) + "}"),
                  "missing why")
            << why;
    EXPECT_EQ(b4().net->value, Mass::grams(12000));
}

TEST_F(AmendedBucket, ThatChangesNothingLeavesNoStep) {
    const auto before = steps();
    EXPECT_EQ(outcome(bucket(R"("net_g":12000,"note":"pale")")), "kept");
    EXPECT_EQ(steps(), before);
}

TEST_F(AmendedBucket, IsTakenBackAndDoneAgain) {
    const std::string before = season.dump();
    done(bucket(R"("net_g":12500)"));
    const std::string after = season.dump();
    ASSERT_TRUE(season.undo());
    EXPECT_EQ(season.dump(), before);
    ASSERT_TRUE(season.redo());
    EXPECT_EQ(season.dump(), after);
}

TEST_F(AmendedBucket, KeepsTheOldValueInTheJournal) {
    done(bucket(R"("net_g":12500,"water_percent":null)"));
    const auto revised = season.revisedBy(season.history(1)[0].seq);
    ASSERT_EQ(revised.size(), 2U);
    EXPECT_EQ(revised[0].table, "bucket");
    EXPECT_EQ(revised[0].id, b4().id.number);
    EXPECT_EQ(revised[0].field->key(), "net_g");
    EXPECT_EQ(revised[0].was, Value{std::int64_t{12000}});
    EXPECT_EQ(revised[0].is, Value{std::int64_t{12500}});
    EXPECT_EQ(revised[1].field->key(), "water_percent");
    EXPECT_EQ(revised[1].was, Value{std::int64_t{1740}});
    EXPECT_EQ(revised[1].is, Value{});
}

TEST_F(AmendedBucket, IsMadeOfTwoRecordsToo) {
    const Bucket before = b4();
    Bucket after = before;
    EXPECT_FALSE(amendment(test::day("2027-11-20"), before, after));
    after.net = Known<Mass>{Mass::grams(11000), Mass::grams(12000), How::ByEye};
    after.water.reset();
    const auto amend = amendment(test::day("2027-11-20"), before, after);
    ASSERT_TRUE(amend);
    EXPECT_FALSE(perform(season, *amend)) << "a reason is asked of the window too";
    ASSERT_TRUE(perform(season, *amend, StepNote{.why = "by level"}));
    EXPECT_EQ(toRow(b4()), toRow(after));
    expectReplays();
}

/// A reading is one thing of three values.
TEST_F(AmendedBucket, AReadingStaysOneThing) {
    const auto net = [&] { return *b4().net; };
    using Reading = Known<Mass>;
    EXPECT_EQ(outcome(bucket(R"("net_how":"by eye")")), "kept");
    EXPECT_EQ(net(), (Reading{Mass::grams(12000), {}, How::ByEye}));
    EXPECT_EQ(outcome(bucket(R"("net_g":12500)")), "kept");
    EXPECT_EQ(net(), (Reading{Mass::grams(12500), {}, How::ByEye})) << "how is left as it was";
    EXPECT_EQ(outcome(bucket(R"("net_g":12000,"net_how":"weighed")")), "kept");
    EXPECT_EQ(outcome(bucket(R"("net_to_g":13000)")), "kept");
    EXPECT_EQ(net(), (Reading{Mass::grams(12000), Mass::grams(13000), How::ByEye}))
        << "nobody weighs a range";
    EXPECT_EQ(outcome(bucket(R"("net_to_g":11999)")), "contradiction set.net_to_g");
    EXPECT_EQ(outcome(bucket(R"("net_g":14000)")), "kept");
    EXPECT_EQ(net(), (Reading{Mass::grams(14000), {}, How::ByEye}))
        << "a new figure takes the old range with it";
    EXPECT_EQ(outcome(bucket(R"("net_how":null)")), "missing set.net_how");
    EXPECT_EQ(outcome(bucket(R"("net_g":null,"net_how":"unknown")")), "kept");
    EXPECT_EQ(net(), (Reading{{}, {}, How::Unknown})) << "looked and could not tell";
    EXPECT_EQ(outcome(bucket(R"("net_to_g":13000)")), "contradiction set.net_to_g");
    EXPECT_EQ(outcome(bucket(R"("net_g":12345)")), "kept");
    EXPECT_EQ(net(), (Reading{Mass::grams(12345), {}, How::Weighed})) << "as a mass given anew";
}

}  // namespace
}  // namespace combwright
