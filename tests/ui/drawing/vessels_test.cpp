#include <gtest/gtest.h>

#include <QImage>
#include <QPainter>

#include "ui/drawing/balance.h"
#include "ui/drawing/bucket.h"
#include "ui/drawing/frame_row.h"
#include "ui/drawing/ribbon.h"

namespace combwright {

namespace {

Look vesselLook() { return lookFor(QFont(QStringLiteral("DejaVu Sans"), 10), false); }

QImage bucketImage(const BucketView& bucket) {
    QImage image(90, 110, QImage::Format_RGB32);
    image.fill(Qt::white);
    QPainter painter(&image);
    paintBucket(painter, image.rect(), bucket, vesselLook());
    return image;
}

int honeyPixels(const QImage& image) {
    const QRgb honey = vesselLook().paint(Paint::Honey).rgb();
    int count = 0;
    for (int y = 0; y < image.height(); ++y) {
        for (int x = 0; x < image.width(); ++x) count += image.pixel(x, y) == honey;
    }
    return count;
}

BandView weighedBand(const QString& name, double grams, BandFill fill = BandFill::Honey) {
    return {name, grams, {QString::number(grams / 1000.0, 'f', 1), "kg", 'w'}, fill, {}};
}

}  // namespace

TEST(BucketTest, FilledToItsLevel) {
    const int half = honeyPixels(bucketImage({"B1", 0.5}));
    const int full = honeyPixels(bucketImage({"B1", 1.0}));
    EXPECT_EQ(honeyPixels(bucketImage({"B1", 0.0})), 0);
    // Its sides close in towards the foot, so the lower half holds a little less.
    EXPECT_GT(static_cast<double>(half) / full, 0.42);
    EXPECT_LT(static_cast<double>(half) / full, 0.5);
}

TEST(BucketTest, AnUnknownLevelIsNoHoneyAndAQuestion) {
    BucketView unknown{"B1", {}};
    EXPECT_EQ(honeyPixels(bucketImage(unknown)), 0);
    EXPECT_NE(bucketImage(unknown), bucketImage({"B1", 0.0}));
    EXPECT_TRUE(spoken(unknown).contains(QLatin1String("level unknown")));
}

TEST(BucketTest, TheSentenceSaysWhatTheDrawingShows) {
    BucketView bucket{"B6", 0.96, "18.9", true, true, true};
    EXPECT_EQ(spoken(bucket), QLatin1String("B6, 96 % full, 18.9 % water, lidded, do not bottle, "
                                            "under the gate."));
    EXPECT_NE(bucketImage(bucket), bucketImage({"B6", 0.96, "18.9", true, false, true}));
    EXPECT_NE(bucketImage(bucket), bucketImage({"B6", 0.96, "18.9", true, true, false}));
    EXPECT_NE(bucketImage(bucket), bucketImage({"B6", 0.96, "18.9", false, true, true}));
}

TEST(BalanceTest, WidthIsMass) {
    BalanceView balance;
    balance.in = {weighedBand("H1", 30000), weighedBand("H2", 15000)};
    balance.out = {weighedBand("buckets", 40000), weighedBand("missing", 5000, BandFill::Missing)};
    const auto bands = balanceBands(QRectF(0, 0, 700, 200), balance, vesselLook());
    ASSERT_EQ(bands.size(), 4U);
    EXPECT_NEAR(bands[0].height() / bands[1].height(), 2.0, 1e-9);
    EXPECT_NEAR(bands[2].height() / bands[3].height(), 8.0, 1e-9);
    EXPECT_NEAR(bands[0].height() + bands[1].height(), bands[2].height() + bands[3].height(), 1e-9);
    EXPECT_GE(bands[0].top(), 0.0);
    EXPECT_LE(bands[1].bottom(), 200.0);
}

TEST(BalanceTest, ABandIsAtLeastTwoPixels) {
    BalanceView balance;
    balance.in = {weighedBand("H1", 90000)};
    balance.out = {weighedBand("buckets", 89990), weighedBand("propolis", 10)};
    const Look look = vesselLook();
    const auto bands = balanceBands(QRectF(0, 0, 700, 200), balance, look);
    EXPECT_NEAR(bands[2].height(), look.px(2.0), 1e-9);
}

TEST(BalanceTest, OneMarkedChangeOfScale) {
    BalanceView balance;
    balance.in = {weighedBand("cappings", 50000, BandFill::Cappings)};
    balance.out = {weighedBand("light", 5000, BandFill::WaxLight)};
    balance.change = BalanceScale{5.0, 5000.0, "5 kg", 1000.0, "1 kg"};
    const auto bands = balanceBands(QRectF(0, 0, 700, 240), balance, vesselLook());
    EXPECT_NEAR(bands[0].height() / bands[1].height(), 2.0, 1e-9);  // 50 kg against 5 kg × 5
}

TEST(BalanceTest, TheSentenceNamesEveryBand) {
    BalanceView balance;
    balance.in = {weighedBand("H1", 31000), weighedBand("box without tag", 14400)};
    balance.out = {{"missing", 600, {"0.6", "kg", 'd'}, BandFill::Missing, "0.6 %"}};
    balance.total = {"45.4", "kg", 'w'};
    const QString words = spoken(balance);
    for (const char* part : {"H1 31.0 kg weighed", "box without tag 14.4 kg weighed",
                             "missing 0.6 kg by difference, 0.6 %", "Together 45.4 kg weighed"}) {
        EXPECT_TRUE(words.contains(QLatin1String(part))) << part << " in " << words.toStdString();
    }
}

TEST(RibbonTest, MonthsAreAsLongAsTheirDays) {
    const Look look = vesselLook();
    const QRectF box(0, 0, 1000, 200);
    for (const int year : {2027, 2028}) {
        RibbonView ribbon;
        ribbon.year = year;
        ribbon.lanes = {{"Yard visits", {}}};
        const auto at = [&](int month) {
            return ribbonX(box, ribbon, look, QDate(year, 1, 1).addMonths(month - 1));
        };
        const double aDay = (at(13) - at(1)) / QDate(year, 1, 1).daysInYear();
        for (int month = 1; month <= 12; ++month) {
            EXPECT_NEAR(at(month + 1) - at(month), QDate(year, month, 1).daysInMonth() * aDay,
                        1e-9);
        }
        EXPECT_NEAR(at(13), 1000.0, 1e-9);
    }
}

TEST(RibbonTest, TheSentenceCountsDoneAndPlanned) {
    RibbonView ribbon;
    ribbon.year = 2027;
    ribbon.todayWords = "8 August";
    ribbon.lanes = {
        {"Yard visits",
         {{QDate(2027, 8, 4), {}, true, {}}, {QDate(2027, 8, 13), {}, false, "look at ML3"}}},
        {"Wax", {}}};
    const QString words = spoken(ribbon);
    EXPECT_TRUE(words.contains(QLatin1String("Yard visits: 1 done, 1 planned, look at ML3")));
    EXPECT_TRUE(words.contains(QLatin1String("Wax: nothing")));
    EXPECT_TRUE(words.contains(QLatin1String("Today is 8 August")));
}

TEST(FrameRowTest, CountedFramesStandAtTheRightOfThosePointedAt) {
    FrameRowView row{"M11", {FrameView{}, FrameView{}}, {}};
    row.counted.assign(3, FrameView{});
    const Look look = vesselLook();
    const auto places = frameRowPlaces(QRectF(0, 0, 400, 30), row, look);
    ASSERT_EQ(places.size(), 5U);
    const double step = places[1].left() - places[0].left();
    EXPECT_GT(places[2].left() - places[1].left(), step + 5.0);
    EXPECT_NEAR(places[4].left() - places[3].left(), step, 1e-9);
    EXPECT_TRUE(spoken(row).contains(QLatin1String("3 counted")));
    row.counted.back().found = false;
    EXPECT_TRUE(spoken(row).contains(QLatin1String("2 counted")));
    EXPECT_TRUE(spoken(row).contains(QLatin1String("not found")));
}

}  // namespace combwright
