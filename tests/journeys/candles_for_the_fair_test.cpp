// The candles for the December fair, planned at the window by keyboard alone: a keeper's own
// figures, from moulds and blocks to what bites first, to the digit on the screen's own words.
#include <gtest/gtest.h>

#include "tests/support/form_keys.h"
#include "tests/support/in_window.h"
#include "ui/wax_bench/wax_bench_place.h"

namespace combwright {
namespace {

using test::FormKeys;

class CandlesAtTheWindow : public test::WindowTest {
  protected:
    void SetUp() override {
        clock.set("2027-11-13");
        openWindow(R"({"do":"add-yard","on":"2027-04-01","yard_name":"Hill"})");
        place = goToPlace<WaxBenchPlace>(4);
        ASSERT_NE(place, nullptr);
    }
    void add(Qt::Key key, const FormKeys::Fields& fields) { FormKeys::fill(*window, key, fields); }
    BitesCard::Line line(const char* name) {
        for (const BitesCard::Line& each : place->bites().lines())
            if (each.name == QLatin1String(name)) return each;
        ADD_FAILURE() << "no line " << name;
        return {};
    }

    WaxBenchPlace* place = nullptr;
};

TEST_F(CandlesAtTheWindow, FromMouldsToWhatBitesToTheDigit) {
    add(Qt::Key_M, {{"mould", "Skeps"},
                    {"kind", "a new kind"},
                    {"new_kind", "skep"},
                    {"cavities", "4"},
                    {"volume", "46.8750"},
                    {"wick", "#1"},
                    {"wick_length", "12 cm"},
                    {"set_hours", "2"}});
    add(Qt::Key_M, {{"mould", "Tapers"},
                    {"kind", "a new kind"},
                    {"new_kind", "taper"},
                    {"cavities", "6"},
                    {"volume", "70.833333"},
                    {"wick", "2/0"},
                    {"wick_length", "30 cm"},
                    {"set_hours", "2"}});
    add(Qt::Key_M, {{"mould", "Pillars"},
                    {"kind", "a new kind"},
                    {"new_kind", "pillar"},
                    {"cavities", "2"},
                    {"volume", "322.916667"},
                    {"wick", "#5"},
                    {"wick_length", "20 cm"},
                    {"set_hours", "12"}});
    add(Qt::Key_C, {{"block", "L"}, {"shade", "light"}, {"mass", "3.40"}});
    add(Qt::Key_C, {{"block", "M"}, {"shade", "mid"}, {"mass", "2.15"}});
    add(Qt::Key_C, {{"block", "D"}, {"shade", "dark"}, {"mass", "1.20"}});
    add(Qt::Key_N, {{"wick", "#1"}, {"length", "5 m"}});
    add(Qt::Key_N, {{"wick", "2/0"}, {"length", "15 m"}});
    add(Qt::Key_N, {{"wick", "#5"}, {"length", "3 m"}});
    add(Qt::Key_E, {{"from", "15 Nov"}, {"to", "10 Dec"}, {"weekdays", "mon wed fri"}});
    add(Qt::Key_W, {{"kind", "skep"},
                    {"count", "60"},
                    {"by", "11 Dec"},
                    {"what_for", "fair"},
                    {"order", "1"},
                    {"shades", "light"}});
    add(Qt::Key_W, {{"kind", "taper"}, {"count", "40"}, {"order", "2"}, {"shades", "mid, light"}});
    add(Qt::Key_W, {{"kind", "pillar"}, {"count", "12"}, {"order", "3"}, {"shades", "dark"}});

    EXPECT_EQ(place->head().big.figure, QStringLiteral("2.87"));
    const BitesCard::Line wax = line("Wax");
    EXPECT_EQ(wax.have, QStringLiteral("6.75"));
    EXPECT_EQ(wax.need, QStringLiteral("9.62"));
    EXPECT_EQ(wax.verdict, QStringLiteral("short 2.87"));
    EXPECT_EQ(wax.note, QStringLiteral("9.14 net, 5 % lost in pouring"));
    const BitesCard::Line moulds = line("Skep moulds");
    EXPECT_EQ(moulds.have + QStringLiteral(" of ") + moulds.need, QStringLiteral("48 of 60"));
    EXPECT_EQ(moulds.verdict, QStringLiteral("short 12"));
    EXPECT_EQ(moulds.note, QStringLiteral("15 evenings needed, 12 to come"));
    EXPECT_EQ(line("Wick #1").verdict, QStringLiteral("short 2.2"));
    EXPECT_EQ(line("Wick 2/0").verdict, QStringLiteral("3.0 over"));
    EXPECT_EQ(line("Wick #5").verdict, QStringLiteral("0.6 over"));
    const QString said = place->bites().words();
    EXPECT_TRUE(said.contains(QStringLiteral("shades apart: 60, 37 and 3; 0.28 kg left.")))
        << said.toStdString();
    EXPECT_TRUE(said.contains(QStringLiteral("may be mixed: 60, 40 and 3; 0.07 kg left.")))
        << said.toStdString();
    EXPECT_EQ(place->evenings().ends(0).byMoulds, QStringLiteral("48 of 60"));
    EXPECT_EQ(place->evenings().ends(0).note, QStringLiteral("12 short: one mould more"));
    EXPECT_EQ(place->evenings().ends(1).note, QStringLiteral("7 evenings; wax for 37"));
    EXPECT_EQ(place->evenings().ends(2).note, QStringLiteral("6 evenings; wax for 3"));
    EXPECT_EQ(place->evenings().board().columns.size(), 12U);

    // One mould more gives exactly sixty.
    QLineEdit* skeps = place->evenings().field(0);
    skeps->setFocus();
    skeps->selectAll();
    QTest::keyClicks(skeps, QStringLiteral("5"));
    QTest::keyClick(skeps, Qt::Key_Return);
    EXPECT_EQ(place->evenings().ends(0).byMoulds, QStringLiteral("60 of 60"));
    EXPECT_FALSE(place->evenings().ends(0).missing);
}

}  // namespace
}  // namespace combwright
