#include <gtest/gtest.h>

#include <QJsonArray>
#include <QJsonDocument>

#include "core/catalogue/catalogue.h"
#include "core/exchange/compute/computations.h"

namespace combwright {
namespace {

Result<QJsonObject> runStoreroom(std::string_view name, const char* json) {
    const auto document = QJsonDocument::fromJson(json);
    EXPECT_TRUE(document.isObject()) << json;
    for (const Computation& each : storeroomComputations())
        if (each.name == name) return each.run(document.object());
    return Refusal{Code::NoSuchCommand, std::string(name), {}};
}

QJsonObject storeroomAnswer(std::string_view name, const char* json) {
    const auto out = runStoreroom(name, json);
    EXPECT_TRUE(out) << json << " " << (out ? "" : out.error().field);
    return out ? *out : QJsonObject();
}

struct StoreroomSlip {
    const char* name;
    const char* json;
    Code code;
    const char* field;
};

void expectRefusals(std::initializer_list<StoreroomSlip> slips) {
    for (const StoreroomSlip& slip : slips) {
        const auto out = runStoreroom(slip.name, slip.json);
        ASSERT_FALSE(out) << slip.json;
        EXPECT_EQ(out.error().code, slip.code) << slip.json;
        EXPECT_EQ(out.error().field, slip.field) << slip.json;
    }
}

TEST(BeeSpaceComputation, AFrameInItsBox) {
    const auto out = storeroomAnswer("bee-space", R"({"box":"LANG10-MED","frame":"LANG-F-MED"})");
    EXPECT_NEAR(out["gap_mm"].toDouble(), 9.5, 1e-6);
    EXPECT_EQ(out["verdict"].toString(), "passage");
    EXPECT_NEAR(out["end_gap_mm"].toDouble(), (466.7 - 446.1) / 2, 1e-6);
    EXPECT_EQ(out["end_verdict"].toString(), "wide but usual");
    EXPECT_FALSE(out.contains("side_gap_mm"));
    EXPECT_FALSE(out.contains("side_verdict"));
    const auto ten = storeroomAnswer(
        "bee-space", R"({"box":"LANG10-MED","frame":"LANG-F-MED","frames_in_box":10})");
    EXPECT_NEAR(ten["side_gap_mm"].toDouble(), (374.6 - 349) / 2, 1e-6);
    EXPECT_EQ(ten["side_verdict"].toString(), "wide but usual");
}

TEST(BeeSpaceComputation, WhatDoesNotFitHasNoGap) {
    auto out = storeroomAnswer("bee-space", R"({"box":"LANG10-MED","frame":"LANG-F-DEEP"})");
    EXPECT_TRUE(out["gap_mm"].isNull());
    EXPECT_EQ(out["verdict"].toString(), "does not fit");
    // The bottom bar is longer than the box inside; the height would do.
    out = storeroomAnswer("bee-space", R"({"box":"NAT-BROOD","frame":"LANG-F-MED"})");
    EXPECT_EQ(out["verdict"].toString(), "does not fit");
    EXPECT_NEAR(out["gap_mm"].toDouble(), 225.4 - 158.8, 1e-6);
    EXPECT_TRUE(out["end_gap_mm"].isNull());
    EXPECT_EQ(out["end_verdict"].toString(), "does not fit");
    // The lugs do not reach the rests.
    out = storeroomAnswer("bee-space", R"({"box":"LANG10-DEEP","frame":"BS-F-DN4"})");
    EXPECT_EQ(out["verdict"].toString(), "does not fit");
    // Twelve frames do not go side by side; the height still is what it is.
    out = storeroomAnswer("bee-space",
                          R"({"box":"LANG10-MED","frame":"LANG-F-MED","frames_in_box":12})");
    EXPECT_EQ(out["verdict"].toString(), "passage");
    EXPECT_TRUE(out["side_gap_mm"].isNull());
    EXPECT_EQ(out["side_verdict"].toString(), "does not fit");
}

TEST(BeeSpaceComputation, OverAnotherBox) {
    // One system, one rest: as over its own kind.
    EXPECT_NEAR(storeroomAnswer(
                    "bee-space",
                    R"({"box":"LANG10-MED","frame":"LANG-F-MED","over":"LANG10-DEEP"})")["gap_mm"]
                    .toDouble(),
                9.5, 1e-6);
    // Nobody recorded where these keep their bee space, but they are of one system.
    EXPECT_NEAR(
        storeroomAnswer(
            "bee-space",
            R"({"box":"ZANDER10-FLAT","frame":"ZANDERFLAT-F","over":"ZANDER10-BOX"})")["gap_mm"]
            .toDouble(),
        8, 1e-6);
    // Bottom bee space over top bee space: 6.4 below and 9.5 above.
    const auto mixed = storeroomAnswer(
        "bee-space", R"({"box":"NAT-BROOD","frame":"BS-F-DN4","over":"LANG10-DEEP"})");
    EXPECT_NEAR(mixed["gap_mm"].toDouble(), 225.4 - 216 + 15.9 - 9.525, 1e-6);
    EXPECT_EQ(mixed["verdict"].toString(), "burr comb");
}

TEST(BeeSpaceComputation, EveryPairOfTheCatalogueAnswersOrSaysWhatIsUnknown) {
    int answered = 0;
    for (const PublishedBox& box : publishedBoxes())
        for (const PublishedFrame& frame : publishedFrames()) {
            const QJsonObject in{{"box", QString::fromStdString(box.id)},
                                 {"frame", QString::fromStdString(frame.id)}};
            const auto out =
                runStoreroom("bee-space", QJsonDocument(in).toJson().toStdString().c_str());
            EXPECT_EQ(out.has_value(), box.outerHeight && frame.sideBarHeight)
                << box.id << " " << frame.id;
            if (!out) {
                EXPECT_EQ(out.error().code, Code::UnknownSize);
                EXPECT_FALSE(out.error().value("name").empty());
                continue;
            }
            ++answered;
            if (box.takesFrame == frame.id) {
                EXPECT_NE(out->value("verdict").toString(), "does not fit")
                    << box.id << " " << frame.id;
            }
        }
    EXPECT_GT(answered, 1300);
}

TEST(BeeSpaceComputation, Refuses) {
    expectRefusals({
        {"bee-space", R"({"frame":"LANG-F-MED"})", Code::Missing, "box"},
        {"bee-space", R"({"box":"BARN","frame":"LANG-F-MED"})", Code::NotFound, "box"},
        {"bee-space", R"({"box":"LANG10-MED","frame":"RUG"})", Code::NotFound, "frame"},
        {"bee-space", R"({"box":"LANG10-MED","frame":"LANG-F-MED","over":"BARN"})", Code::NotFound,
         "over"},
        {"bee-space", R"({"box":"WARRE-BOX","frame":"WARRE-BAR"})", Code::UnknownSize, "frame"},
        {"bee-space", R"({"box":"LAYENS14","frame":"LAYENS-F"})", Code::UnknownSize, "box"},
        {"bee-space", R"({"box":"LANG10-MED","frame":"LANG-F-MED","over":"DNM11-BOX"})",
         Code::UnknownSize, "over"},
        {"bee-space", R"({"box":"LANG10-MED","frame":"LANG-F-MED","frames_in_box":-1})",
         Code::Negative, "frames_in_box"},
        {"bee-space", R"({"box":"LANG10-MED","frame":"LANG-F-MED","height":9})", Code::UnknownKey,
         "height"},
    });
}

TEST(ColdKillComputation, RowsAndRefusals) {
    EXPECT_EQ(storeroomAnswer("cold-kill", R"({"temperature_c":-7})")["hours"].toDouble(), 4.5);
    // The row is 20 °F: −6.67 °C, printed as −6.7 and, without a decimal, as −7.
    EXPECT_EQ(storeroomAnswer("cold-kill", R"({"temperature_c":-6.7})")["hours"].toDouble(), 4.5);
    EXPECT_EQ(storeroomAnswer("cold-kill", R"({"temperature_c":-10})")["hours"].toDouble(), 4.5);
    EXPECT_EQ(storeroomAnswer("cold-kill", R"({"temperature_c":-12})")["hours"].toDouble(), 3);
    EXPECT_EQ(storeroomAnswer("cold-kill", R"({"temperature_c":-18})")["hours"].toDouble(), 2);
    expectRefusals({
        {"cold-kill", R"({"temperature_c":-1})", Code::OutOfRange, "temperature_c"},
        {"cold-kill", R"({"temperature_c":-6.6})", Code::OutOfRange, "temperature_c"},
        {"cold-kill", R"({"temperature_c":-300})", Code::OutOfRange, "temperature_c"},
        {"cold-kill", R"({})", Code::Missing, "temperature_c"},
    });
}

TEST(FreezerRoundsComputation, AWinter) {
    const auto apart = storeroomAnswer("freezer-rounds", R"({"batches":[
        {"kind":"deep","frames":24,"capacity":10},{"kind":"medium","frames":40,"capacity":16}],
        "hours":48,"day":"2028-01-10"})");
    EXPECT_EQ(apart["rounds"].toArray().size(), 6);
    EXPECT_EQ(apart["last_out"].toString(), "2028-01-22");
    const auto third = apart["rounds"].toArray()[2].toObject();
    EXPECT_EQ(third["in"].toString(), "2028-01-14");
    EXPECT_EQ(third["out"].toString(), "2028-01-16");
    EXPECT_EQ(third["frames"].toArray()[0].toObject()["count"].toInt(), 4);
    const auto mixed = storeroomAnswer("freezer-rounds", R"({"batches":[
        {"kind":"deep","frames":24,"capacity":10},{"kind":"medium","frames":40,"capacity":16}],
        "hours":48,"day":"2028-01-10","mix":true})");
    EXPECT_EQ(mixed["rounds"].toArray().size(), 5);
    EXPECT_EQ(mixed["last_out"].toString(), "2028-01-20");
}

TEST(FreezerRoundsComputation, NothingToFreezeAndRefusals) {
    const auto out =
        storeroomAnswer("freezer-rounds", R"({"batches":[],"hours":48,"day":"2028-01-10"})");
    EXPECT_TRUE(out["rounds"].toArray().isEmpty());
    EXPECT_TRUE(out.contains("last_out"));
    EXPECT_TRUE(out["last_out"].isNull());
    expectRefusals({
        {"freezer-rounds",
         R"({"batches":[{"kind":"deep","frames":1,"capacity":0}],"hours":48,"day":"2028-01-10"})",
         Code::OutOfRange, "batches[0].capacity"},
        {"freezer-rounds",
         R"({"batches":[{"kind":"deep","frames":1.5,"capacity":1}],"hours":48,"day":"2028-01-10"})",
         Code::WrongType, "batches[0].frames"},
        {"freezer-rounds", R"({"batches":[],"hours":0,"day":"2028-01-10"})", Code::OutOfRange,
         "hours"},
        {"freezer-rounds", R"({"batches":[],"hours":48,"day":"2028-02-30"})", Code::NotADay, "day"},
        {"freezer-rounds",
         R"({"batches":[{"kind":"deep","frames":9,"capacity":1}],"hours":48,"day":"9999-12-20"})",
         Code::OutOfRange, "day"},
    });
}

TEST(KitNeedsComputation, SpringAndRefusals) {
    const auto out = storeroomAnswer("kit-needs", R"({"colonies":12,"splits":4,"items":[
        {"item":"medium","per_colony":3,"spare_share":0.1,"usable":33,"in_repair":2},
        {"item":"floor","per_split":1,"usable":2}]})");
    const auto medium = out["items"].toArray()[0].toObject();
    EXPECT_EQ(medium["item"].toString(), "medium");
    EXPECT_EQ(medium["need"].toInt(), 40);
    EXPECT_EQ(medium["short"].toInt(), 7);
    EXPECT_EQ(medium["short_after_repair"].toInt(), 5);
    const auto floor = out["items"].toArray()[1].toObject();
    EXPECT_EQ(floor["need"].toInt(), 4);
    EXPECT_EQ(floor["short_after_repair"].toInt(), 2);
    expectRefusals({
        {"kit-needs", R"({"colonies":1,"splits":0,"items":[{"item":"lid"}]})", Code::Missing,
         "items[0].usable"},
        {"kit-needs",
         R"({"colonies":1,"splits":0,"items":[{"item":"lid","usable":1},{"item":"lid","usable":1}]})",
         Code::Duplicate, "items[1].item"},
        {"kit-needs",
         R"({"colonies":1,"splits":0,"items":[{"item":"lid","usable":1,"spare_share":2}]})",
         Code::OutOfRange, "items[0].spare_share"},
        {"kit-needs", R"({"colonies":-1,"splits":0,"items":[]})", Code::Negative, "colonies"},
    });
}

TEST(FrameNeedsComputation, PlacesOrBoxes) {
    const auto slots = storeroomAnswer("frame-needs", R"({"slots":360,"drawn":262,
        "with_foundation":31,"bare_sound":24,"repairable":0})");
    EXPECT_EQ(slots["usable"].toInt(), 317);
    EXPECT_EQ(slots["buy_frames"].toInt(), 43);
    EXPECT_EQ(slots["foundation_sheets"].toInt(), 67);
    // 262 drawn fill 29 boxes by nines, eleven boxes take ten: 371 places.
    const auto boxes = storeroomAnswer("frame-needs", R"({"boxes":40,"drawn_per_box":9,
        "undrawn_per_box":10,"drawn":262,"with_foundation":31,"bare_sound":24,"repairable":0})");
    EXPECT_EQ(boxes["buy_frames"].toInt(), 371 - 317);
    EXPECT_EQ(boxes["foundation_sheets"].toInt(), 371 - 293);
    // More drawn comb than places: nothing to buy.
    const auto plenty = storeroomAnswer("frame-needs", R"({"boxes":2,"drawn_per_box":9,
        "undrawn_per_box":10,"drawn":30,"with_foundation":0,"bare_sound":0,"repairable":0})");
    EXPECT_EQ(plenty["buy_frames"].toInt(), 0);
    EXPECT_EQ(plenty["foundation_sheets"].toInt(), 0);
}

TEST(FrameNeedsComputation, Refuses) {
    expectRefusals({
        {"frame-needs", R"({"drawn":1,"with_foundation":0,"bare_sound":0,"repairable":0})",
         Code::Missing, "slots"},
        {"frame-needs",
         R"({"slots":9,"boxes":1,"drawn":1,"with_foundation":0,"bare_sound":0,"repairable":0})",
         Code::Contradiction, "boxes"},
        {"frame-needs",
         R"({"boxes":1,"drawn_per_box":9,"drawn":1,"with_foundation":0,"bare_sound":0,"repairable":0})",
         Code::Missing, "undrawn_per_box"},
        {"frame-needs",
         R"({"boxes":1,"drawn_per_box":0,"undrawn_per_box":9,"drawn":1,"with_foundation":0,"bare_sound":0,"repairable":0})",
         Code::OutOfRange, "drawn_per_box"},
        {"frame-needs", R"({"slots":9,"drawn":1,"with_foundation":0,"bare_sound":0})",
         Code::Missing, "repairable"},
    });
}

}  // namespace
}  // namespace combwright
