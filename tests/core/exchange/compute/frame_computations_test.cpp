#include <gtest/gtest.h>

#include <QJsonDocument>

#include "core/catalogue/catalogue.h"
#include "core/exchange/compute/computations.h"

namespace combwright {
namespace {

Result<QJsonObject> runFrame(std::string_view name, const QJsonObject& input) {
    for (const Computation& each : frameComputations())
        if (each.name == name) return each.run(input);
    return Refusal{Code::NoSuchCommand, std::string(name), {}};
}

Result<QJsonObject> runFrame(std::string_view name, const char* json) {
    return runFrame(name, QJsonDocument::fromJson(json).object());
}

TEST(FrameHoneyComputation, AFullMedium) {
    const auto out =
        runFrame("frame-honey", R"({"frame":"LANG-F-MED","left_filled":1,"right_filled":1})");
    ASSERT_TRUE(out);
    EXPECT_EQ(out->size(), 2);
    EXPECT_NEAR(out->value("honey_g").toDouble(), 5.58 * 333, 1e-6);
    EXPECT_NEAR(out->value("spread_g").toDouble(), 5.58 * 333 * 0.180278, 0.01);
}

TEST(FrameHoneyComputation, EveryFrameOfKnownAreaAnswersInProportion) {
    int answered = 0;
    for (const PublishedFrame& each : publishedFrames()) {
        QJsonObject input{{"frame", QString::fromStdString(each.id)},
                          {"left_filled", 0.8},
                          {"right_filled", 0.4}};
        const auto out = runFrame("frame-honey", input);
        ASSERT_EQ(out.has_value(), each.combAreaDm2.has_value()) << each.id;
        if (!out) {
            EXPECT_EQ(out.error().code, Code::UnknownSize);
            EXPECT_EQ(out.error().field, "frame");
            continue;
        }
        ++answered;
        EXPECT_NEAR(out->value("honey_g").toDouble(), *each.combAreaDm2 * 333 * 0.6, 1e-6);

        // As many as nominal change nothing, one fewer is fatter, whatever the box.
        input.insert("box_nominal", 10);
        input.insert("frames_in_box", 10);
        EXPECT_NEAR(runFrame("frame-honey", input)->value("honey_g").toDouble(),
                    out->value("honey_g").toDouble(), 1e-6);
        input.insert("frames_in_box", 9);
        const double gain = runFrame("frame-honey", input)->value("honey_g").toDouble() /
                            out->value("honey_g").toDouble();
        EXPECT_GT(gain, 10.0 / 9.0) << each.id;
        EXPECT_LT(gain, 1.18) << each.id;
    }
    EXPECT_EQ(answered, 40);
}

TEST(FrameHoneyComputation, NineAndEightOfTen) {
    // Total comb grows by one bee space of 9.525 mm for each frame left out of 269.9 mm.
    auto frame = [](int n) {
        const QJsonObject input{{"frame", "LANG-F-MED"},
                                {"left_filled", 1},
                                {"right_filled", 1},
                                {"frames_in_box", n},
                                {"box_nominal", 10}};
        return runFrame("frame-honey", input)->value("honey_g").toDouble();
    };
    EXPECT_NEAR(frame(9) * 9 / (frame(10) * 10), 1.0353, 0.0002);
    EXPECT_NEAR(frame(8) * 8 / (frame(10) * 10), 1.0706, 0.0002);
}

TEST(FrameHoneyComputation, NullIsAsIfLeftOut) {
    const auto out = runFrame("frame-honey", R"({"frame":"LANG-F-MED","left_filled":1,
        "right_filled":1,"frames_in_box":null,"box_nominal":null})");
    ASSERT_TRUE(out);
    EXPECT_NEAR(out->value("honey_g").toDouble(), 5.58 * 333, 1e-6);
}

struct RefusedFrame {
    const char* json;
    Code code;
    const char* field;
};

TEST(FrameHoneyComputation, RefusalsNameTheKey) {
    const RefusedFrame cases[] = {
        {R"({"left_filled":1,"right_filled":1})", Code::Missing, "frame"},
        {R"({"frame":"LANG-F-MED","right_filled":1})", Code::Missing, "left_filled"},
        {R"({"frame":"LANG-F-MED","left_filled":1,"right_filled":null})", Code::Missing,
         "right_filled"},
        {R"({"frame":"lang-f-med","left_filled":1,"right_filled":1})", Code::NotFound, "frame"},
        {R"({"frame":7,"left_filled":1,"right_filled":1})", Code::WrongType, "frame"},
        {R"({"frame":"KTBH-BAR","left_filled":1,"right_filled":1})", Code::UnknownSize, "frame"},
        {R"({"frame":"LANG-F-MED","left_filled":-0.1,"right_filled":1})", Code::Negative,
         "left_filled"},
        {R"({"frame":"LANG-F-MED","left_filled":1,"right_filled":1.1})", Code::OutOfRange,
         "right_filled"},
        {R"({"frame":"LANG-F-MED","left_filled":"1","right_filled":1})", Code::WrongType,
         "left_filled"},
        {R"({"frame":"LANG-F-MED","left_filled":1,"right_filled":1,"fill":1})", Code::UnknownKey,
         "fill"},
        {R"({"frame":"LANG-F-MED","left_filled":1,"right_filled":1,"frames_in_box":9})",
         Code::Missing, "box_nominal"},
        {R"({"frame":"LANG-F-MED","left_filled":1,"right_filled":1,"box_nominal":10})",
         Code::Missing, "frames_in_box"},
        {R"({"frame":"LANG-F-MED","left_filled":1,"right_filled":1,"frames_in_box":9,
            "box_nominal":null})",
         Code::Missing, "box_nominal"},
        {R"({"frame":"LANG-F-MED","left_filled":1,"right_filled":1,"frames_in_box":11,
            "box_nominal":10})",
         Code::TooMany, "frames_in_box"},
        {R"({"frame":"LANG-F-MED","left_filled":1,"right_filled":1,"frames_in_box":5,
            "box_nominal":10})",
         Code::OutOfRange, "frames_in_box"},
        {R"({"frame":"LANG-F-MED","left_filled":1,"right_filled":1,"frames_in_box":0,
            "box_nominal":10})",
         Code::OutOfRange, "frames_in_box"},
        {R"({"frame":"LANG-F-MED","left_filled":1,"right_filled":1,"frames_in_box":8.5,
            "box_nominal":10})",
         Code::WrongType, "frames_in_box"},
        {R"({"frame":"LANG-F-MED","left_filled":1,"right_filled":1,"frames_in_box":1,
            "box_nominal":-1})",
         Code::OutOfRange, "box_nominal"}};
    for (const RefusedFrame& each : cases) {
        SCOPED_TRACE(each.json);
        const auto out = runFrame("frame-honey", each.json);
        ASSERT_FALSE(out);
        EXPECT_EQ(out.error().code, each.code);
        EXPECT_EQ(out.error().field, each.field);
    }
}

}  // namespace
}  // namespace combwright
