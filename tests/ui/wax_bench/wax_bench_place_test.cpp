// The wax bench in the window: what it says of the December fair, bands walked by arrows, what if
// there were a mould more, the table twin, the pot on heat in every place, and every form with its
// refusals in words.
#include "ui/wax_bench/wax_bench_place.h"

#include <gtest/gtest.h>

#include <QPushButton>
#include <set>

#include "core/storage/queries/wax_ledger.h"
#include "tests/support/candle_lines.h"
#include "tests/support/form_keys.h"
#include "tests/support/in_window.h"
#include "ui/shell/heat_line.h"

namespace combwright {
namespace {

using test::FormKeys;

class AtTheWaxBench : public test::WindowTest {
  protected:
    void begin(bool batches = false) {
        clock.set("2027-11-13");
        openWindow(std::string(test::candleStockLines) +
                   (batches ? test::candleBatchLines : test::candleBlockLines) +
                   test::candleWishLines +
                   R"({"do":"add-yard","on":"2027-04-01","yard_name":"Hill"}
{"do":"add-hive","on":"2027-04-10","yard":"Hill","mark":"H1","boxes":"deep D1","origin":"overwintered"})");
        place = goToPlace<WaxBenchPlace>(4);
        ASSERT_NE(place, nullptr);
        QApplication::processEvents();
    }
    void key(Qt::Key pressed) { QTest::keyClick(focus() ? focus() : window.get(), pressed); }
    template <class Record>
    std::size_t count() {
        return session.read().all<Record>().size();
    }
    const Read& file() { return session.read(); }
    std::size_t steps() { return session.season().history().size(); }

    WaxBenchPlace* place = nullptr;
};

TEST_F(AtTheWaxBench, StandsFifthAndSaysWhatIsShort) {
    begin();
    EXPECT_EQ(place->head().big.figure, QStringLiteral("2.87"));
    EXPECT_EQ(place->head().bigNote, QStringLiteral("more wax wanted\nfor the fair"));
    EXPECT_EQ(place->head().actionKey, QStringLiteral("Ctrl+P"));
    EXPECT_TRUE(place->dates().currentText().startsWith(QStringLiteral("Fair, ")));
    EXPECT_EQ(place->flow().lineWords(),
              QStringLiteral("blocks 6.75 kg → wanted 9.62 kg, short 2.87 kg"));
}

TEST_F(AtTheWaxBench, BandsAreWalkedAndOpened) {
    begin(true);
    FlowBoard& flow = place->flow();
    EXPECT_FALSE(flow.asLine());
    flow.setFocus();
    QStringList parts;
    for (const FlowBoard::Band& band : flow.bands()) parts << band.part;
    EXPECT_EQ(parts.count(QStringLiteral("raw")), 4);
    EXPECT_EQ(parts.count(QStringLiteral("blocks")), 3);
    EXPECT_EQ(parts.count(QStringLiteral("wanted")), 3);
    const auto places =
        waxFlowPlaces(QRectF(flow.rect()).adjusted(2, 2, -2, -2), flow.drawn(), session.look());
    EXPECT_EQ(places.size(), flow.bands().size());
    for (std::size_t n = 1; n < flow.bands().size(); ++n) {
        key(Qt::Key_Down);
        EXPECT_EQ(flow.current(), static_cast<int>(n));
        EXPECT_TRUE(flow.accessibleDescription().contains(flow.bands()[n].name));
    }
    key(Qt::Key_Home);
    key(Qt::Key_Right);
    EXPECT_NE(flow.bands()[static_cast<std::size_t>(flow.current())].part, QStringLiteral("raw"));
    key(Qt::Key_Home);
    int rows = 0;
    FormKeys::open(*window, Qt::Key_Return, [&rows](QDialog& records) {
        auto* table = records.findChild<QTableWidget*>(QStringLiteral("wax_records_table"));
        if (table) rows = table->rowCount();
        QTest::keyClick(&records, Qt::Key_Escape);
    });
    EXPECT_EQ(rows, 2) << "gathered, and gone together with Mill Lane";
}

TEST_F(AtTheWaxBench, AMouldMoreIsTriedThenKept) {
    begin();
    QLineEdit* skeps = place->evenings().field(0);
    ASSERT_TRUE(skeps->hasFocus()) << "the place begins there";
    EXPECT_EQ(skeps->text(), QStringLiteral("4"));
    EXPECT_EQ(place->evenings().ends(0).byMoulds, QStringLiteral("48 of 60"));
    const std::size_t before = steps();
    skeps->selectAll();
    QTest::keyClicks(skeps, QStringLiteral("5"));
    EXPECT_EQ(place->evenings().ends(0).byMoulds, QStringLiteral("60 of 60"));
    EXPECT_EQ(steps(), before) << "only tried";
    key(Qt::Key_Escape);
    EXPECT_EQ(skeps->text(), QStringLiteral("4"));
    EXPECT_EQ(place->evenings().ends(0).byMoulds, QStringLiteral("48 of 60"));
    skeps->selectAll();
    QTest::keyClicks(skeps, QStringLiteral("5"));
    key(Qt::Key_Return);
    EXPECT_EQ(steps(), before + 1);
    EXPECT_EQ(count<Mould>(), 4U);
    EXPECT_EQ(place->evenings().ends(0).byMoulds, QStringLiteral("60 of 60"));
    EXPECT_TRUE(place->evenings().typed().empty());
    // Fewer again: the one that came last goes.
    skeps->selectAll();
    QTest::keyClicks(skeps, QStringLiteral("4"));
    key(Qt::Key_Return);
    EXPECT_EQ(place->evenings().ends(0).byMoulds, QStringLiteral("48 of 60"));
    EXPECT_TRUE(file().first<Mould>({is("name", test::name("Skeps 2"))})->gone);
}

TEST_F(AtTheWaxBench, UndoLetsGoWhatWasTypedFirst) {
    begin();
    QLineEdit* skeps = place->evenings().field(0);
    skeps->selectAll();
    QTest::keyClicks(skeps, QStringLiteral("9"));
    ASSERT_EQ(place->evenings().typed().size(), 1U);
    EXPECT_TRUE(place->takeBack());
    EXPECT_EQ(skeps->text(), QStringLiteral("4"));
    EXPECT_FALSE(place->takeBack());
}

TEST_F(AtTheWaxBench, ATableTwinSaysAllOfIt) {
    begin(true);
    key(Qt::Key_T);
    ASSERT_TRUE(place->tableShown());
    EXPECT_TRUE(place->table().hasFocus());
    EXPECT_FALSE(place->flow().isVisible());
    const int rows = static_cast<int>(place->flow().bands().size() + place->evenings().rows() +
                                      place->bites().lines().size());
    // Below them the moulds and the wick there is.
    EXPECT_EQ(place->table().rowCount(), rows + 6);
    QString all;
    for (int n = 0; n < rows; ++n)
        for (int c = 0; c < 4; ++c) all += place->table().item(n, c)->text() + QLatin1Char(' ');
    for (const char* figure : {"60 of 60", "48 of 60", "short 2.87", "short 2.2", "3.0 over"})
        EXPECT_EQ(all.contains(QString::fromUtf8(figure)), QByteArray(figure) != "60 of 60")
            << figure;
    key(Qt::Key_T);
    EXPECT_FALSE(place->tableShown());
    EXPECT_TRUE(place->flow().isVisible());
}

TEST_F(AtTheWaxBench, APotOnHeatIsToldInEveryPlaceUntilItIsTicked) {
    begin();
    FormKeys::fill(*window, Qt::Key_H, {{"temperature", "75"}});
    ASSERT_EQ(openHeat(file()).size(), 1U);
    EXPECT_TRUE(place->heat().isVisible());
    EXPECT_FALSE(window->heat().isVisible()) << "the place has its own";
    for (int n = 0; n < static_cast<int>(window->places().size()); ++n) {
        window->goTo(n);
        EXPECT_EQ(window->heat().isVisible(),
                  window->places()[static_cast<std::size_t>(n)] != place);
        EXPECT_TRUE(window->heat().words().contains(QStringLiteral("wax pot in the water bath")));
    }
    int rung = 0;
    window->heat().setBell([&rung] { ++rung; });
    window->heat().tick();
    EXPECT_EQ(rung, 0);
    clock.pass(std::chrono::minutes(38));
    window->heat().tick();
    EXPECT_EQ(rung, 1);
    EXPECT_TRUE(window->heat().words().contains(QStringLiteral("38 min")));
    window->heat().tick();
    window->heat().tick();
    EXPECT_EQ(rung, 2) << "every other second";
    place = goToPlace<WaxBenchPlace>(4);
    key(Qt::Key_Q);
    window->heat().tick();
    EXPECT_EQ(rung, 2) << "somebody is there";
    EXPECT_FALSE(window->heat().calls());
    clock.pass(std::chrono::minutes(16));
    window->heat().tick();
    EXPECT_EQ(rung, 3);
    key(Qt::Key_O);
    EXPECT_TRUE(openHeat(file()).empty());
    EXPECT_FALSE(place->heat().isVisible());
    window->heat().tick();
    EXPECT_EQ(rung, 3);
    key(Qt::Key_O);
    EXPECT_EQ(session.lastTold(), QStringLiteral("No pot is on heat."));
}

TEST_F(AtTheWaxBench, TheTickIsReachedByTabInAnotherPlace) {
    begin();
    FormKeys::fill(*window, Qt::Key_H, {});
    window->goTo(0);
    QApplication::processEvents();
    QPushButton* off = window->heat().findChild<QPushButton*>(QStringLiteral("heat_off"));
    ASSERT_NE(off, nullptr);
    bool reached = false;
    for (int n = 0; n < 60 && !reached; ++n) {
        QTest::keyClick(focus() ? focus() : window.get(), Qt::Key_Tab);
        reached = focus() == off;
    }
    ASSERT_TRUE(reached);
    QTest::keyClick(off, Qt::Key_Return);
    EXPECT_TRUE(openHeat(file()).empty());
}

TEST_F(AtTheWaxBench, ATemperatureIsJudgedWhileItIsTyped) {
    begin();
    FormKeys::open(*window, Qt::Key_H, [](QDialog& form) {
        const auto said = [&form] {
            return form.findChild<QLabel*>(QStringLiteral("heat_says"))->text();
        };
        FormKeys::answer(form, "temperature", "72");
        EXPECT_TRUE(said().contains(QStringLiteral("Right for pouring"))) << said().toStdString();
        FormKeys::answer(form, "temperature", "90");
        EXPECT_TRUE(said().contains(QStringLiteral("discolours")));
        FormKeys::answer(form, "temperature", "120");
        EXPECT_TRUE(said().contains(QStringLiteral("100 °C")));
        const auto* energy = form.findChild<QLabel*>(QStringLiteral("energy_says"));
        ASSERT_NE(energy, nullptr);
        EXPECT_FALSE(energy->text().contains(QStringLiteral("kWh"))) << "nobody said of what";
        form.reject();
    });
    EXPECT_FALSE(FormKeys::refused(*window, Qt::Key_H, {{"temperature", "120"}}).isEmpty());
    EXPECT_TRUE(openHeat(file()).empty());
}

TEST_F(AtTheWaxBench, FromTheScrapingsToTheBlock) {
    begin();
    FormKeys::fill(
        *window, Qt::Key_G,
        {{"batch", "autumn"}, {"source", "cappings"}, {"state", "drained"}, {"raw", "4"}});
    FormKeys::fill(*window, Qt::Key_S,
                   {{"batch", "autumn"}, {"work", "washed"}, {"came_out", "2"}});
    EXPECT_TRUE(place->stockWords().contains(QStringLiteral("it ferments")));
    EXPECT_EQ(place->waiting(), 1);
    FormKeys::open(*window, Qt::Key_H, [](QDialog& form) {
        FormKeys::answer(form, "batch", "autumn");
        FormKeys::answer(form, "temperature", "75");
        // 4 kg · (2.1 · 55 K + 180) = 1182 kJ, 4 kg · (2.9 · 55 K + 180) = 1358 kJ.
        EXPECT_TRUE(form.findChild<QLabel*>(QStringLiteral("energy_says"))
                        ->text()
                        .contains(QStringLiteral("0.33 to 0.38 kWh into 4.00 kg")));
        form.reject();
    });
    EXPECT_FALSE(
        FormKeys::refused(*window, Qt::Key_C, {{"block", "Z"}, {"batch", "autumn"}, {"mass", "5"}})
            .isEmpty())
        << "more out than went in";
    FormKeys::fill(*window, Qt::Key_C,
                   {{"block", "Z"}, {"batch", "autumn"}, {"shade", "mid"}, {"mass", "1.8"}});
    EXPECT_EQ(place->waiting(), 0);
    FormKeys::fill(*window, Qt::Key_U, {{"block", "Z"}, {"went", "sold"}, {"mass", "500 g"}});
    EXPECT_EQ(blockLedgers(file(), test::day("2027-11-13")).back().left, Mass::grams(1300));
    EXPECT_FALSE(
        FormKeys::refused(*window, Qt::Key_U, {{"block", "Z"}, {"went", "lost"}, {"mass", "9"}})
            .isEmpty());
}

TEST_F(AtTheWaxBench, PouredFinishedAndOnTheShelf) {
    begin();
    FormKeys::open(*window, Qt::Key_P, [](QDialog& form) {
        FormKeys::answer(form, "mould", "Skeps");
        FormKeys::answer(form, "good", "4");
        const QString says = form.findChild<QLabel*>(QStringLiteral("outlook"))->text();
        EXPECT_TRUE(says.contains(QStringLiteral("4 pieces take 180 g"))) << says.toStdString();
        form.reject();
    });
    EXPECT_FALSE(
        FormKeys::refused(*window, Qt::Key_P, {{"mould", "Skeps"}, {"good", "4"}, {"blocks", ""}})
            .isEmpty())
        << "a pour without wax";
    FormKeys::fill(
        *window, Qt::Key_P,
        {{"mould", "Skeps"}, {"good", "4"}, {"blocks", "L 180 g"}, {"temperature", "72"}});
    ASSERT_EQ(count<Pour>(), 1U);
    EXPECT_EQ(place->evenings().ends(0).byMoulds, QStringLiteral("52 of 60"));
    FormKeys::fill(*window, Qt::Key_F, {{"work", "paired"}});
    EXPECT_TRUE(file().all<Pour>().front().labelled);
    FormKeys::fill(*window, Qt::Key_B,
                   {{"mould", "Skeps"}, {"hours", "3"}, {"verdict", "burns well"}});
    EXPECT_EQ(count<BurnTest>(), 1U);
}

TEST_F(AtTheWaxBench, MouldsByWaterOrSizeAndNeverByNothing) {
    begin();
    EXPECT_FALSE(FormKeys::refused(*window, Qt::Key_M,
                                   {{"mould", "Hearts"}, {"cavities", "3"}, {"volume", ""}})
                     .isEmpty())
        << "no volume";
    FormKeys::open(*window, Qt::Key_M, [](QDialog& form) {
        FormKeys::answer(form, "mould", "Bark");
        FormKeys::answer(form, "kind", "a new kind");
        FormKeys::answer(form, "new_kind", "bark light");
        FormKeys::answer(form, "cavities", "6");
        FormKeys::answer(form, "volume_by", "from its size: round");
        FormKeys::answer(form, "diameter", "76.2 mm");
        FormKeys::answer(form, "height", "69.9 mm");
        const QString says = form.findChild<QLabel*>(QStringLiteral("outlook"))->text();
        // π · 3.81² · 6.99 = 318.8 ml, · 0.96 = 306 g.
        EXPECT_TRUE(says.contains(QStringLiteral("306 g"))) << says.toStdString();
        EXPECT_TRUE(says.contains(QStringLiteral("first guess"))) << says.toStdString();
        FormKeys::answer(form, "one_way", "goes with the candle");
        FormKeys::answer(form, "made_of", "bark");
        FormKeys::answer(form, "wick", "#5");
        QTest::keyClick(form.focusWidget(), Qt::Key_Return);
    });
    const auto bark = file().first<Mould>({is("name", test::name("Bark"))});
    ASSERT_TRUE(bark);
    EXPECT_EQ(bark->oneWay, true);
    EXPECT_EQ(count<GoodsKind>(), 4U);
    FormKeys::fill(*window, Qt::Key_X, {{"mould", "Bark"}});
    EXPECT_TRUE(file().first<Mould>({is("name", test::name("Bark"))})->gone);
}

TEST_F(AtTheWaxBench, PropolisAndCombJars) {
    begin();
    FormKeys::fill(*window, Qt::Key_R, {{"went", "scraped"}, {"mass", "340 g"}});
    EXPECT_TRUE(place->stockWords().contains(QStringLiteral("Propolis 340 g")));
    EXPECT_FALSE(
        FormKeys::refused(*window, Qt::Key_R, {{"went", "sold"}, {"mass", "341"}}).isEmpty())
        << "a bare number has the unit of its example: 341 g";
    FormKeys::fill(*window, Qt::Key_J, {{"project", "jars 27"}, {"pieces", "12"}, {"hive", "H1"}});
    EXPECT_TRUE(place->stockWords().contains(QStringLiteral("jars 27, 12 pieces")));
    FormKeys::fill(*window, Qt::Key_I, {{"work", "starter in"}});
    FormKeys::fill(*window, Qt::Key_I, {{"work", "put on"}});
    FormKeys::fill(*window, Qt::Key_L, {{"built", "5"}, {"filled", "2"}});
    EXPECT_EQ(count<ProjectLook>(), 1U);
    EXPECT_FALSE(
        FormKeys::refused(*window, Qt::Key_L, {{"built", "1"}, {"filled", "2"}}).isEmpty());
}

TEST_F(AtTheWaxBench, WishesEveningsAndWickFromNothing) {
    begin();
    FormKeys::fill(*window, Qt::Key_W,
                   {{"kind", "pillar"}, {"count", "2"}, {"by", "20 Dec"}, {"what_for", "gifts"}});
    EXPECT_EQ(place->dates().count(), 2);
    FormKeys::fill(*window, Qt::Key_V, {{"wish", "2 pillar"}});
    EXPECT_EQ(place->dates().count(), 1);
    FormKeys::fill(*window, Qt::Key_A, {{"evening", "10 Dec"}, {"what", "kept for"}});
    EXPECT_TRUE(place->evenings().board().lastKept);
    FormKeys::fill(*window, Qt::Key_N, {{"wick", "#1"}, {"length", "25 m"}});
    EXPECT_EQ(wickLeft(file(), "#1", test::day("2027-11-13")), Length::mm(30'000));
    FormKeys::fill(*window, Qt::Key_N, {{"wick", "#1"}, {"what", "measured"}, {"length", "0"}});
    EXPECT_EQ(wickLeft(file(), "#1", test::day("2027-11-13")), Length());
    FormKeys::fill(*window, Qt::Key_G, {{"batch", "b"}, {"raw", "1"}});
    FormKeys::fill(*window, Qt::Key_K, {{"kept", "frozen"}});
    EXPECT_EQ(file().all<WaxBatch>().back().kept, WaxKeeping::Frozen);
}

TEST_F(AtTheWaxBench, WhatCameBackFromTheMouldsIsCastWithoutABatch) {
    begin(true);
    FormKeys::fill(*window, Qt::Key_P,
                   {{"mould", "Skeps"},
                    {"good", "1"},
                    {"failed", "1"},
                    {"blocks", "L 90 g"},
                    {"returned", "45 g"}});
    ASSERT_EQ(count<Pour>(), 1U) << session.lastTold().toStdString();
    ASSERT_EQ(waxBench(file(), test::day("2027-11-13")).returned, Mass::grams(45));
    FormKeys::fill(*window, Qt::Key_C, {{"block", "F1"}, {"batch", "failed"}, {"mass", "45 g"}});
    const WaxBlock block = file().all<WaxBlock>().back();
    EXPECT_EQ(block.name, test::name("F1"));
    EXPECT_EQ(block.fromCandles, true);
    EXPECT_FALSE(block.batch);
    EXPECT_TRUE(block.supplier.empty());
    EXPECT_EQ(waxBench(file(), test::day("2027-11-13")).returned, Mass());
}

TEST_F(AtTheWaxBench, EveryFieldOfEveryFormHasANameAndIsReached) {
    begin(true);
    FormKeys::fill(*window, Qt::Key_P, {{"mould", "Skeps"}, {"good", "1"}, {"blocks", "L 45 g"}});
    FormKeys::fill(*window, Qt::Key_J, {{"project", "jars"}, {"pieces", "3"}});
    FormKeys::fill(*window, Qt::Key_G, {{"batch", "new"}});
    for (const Qt::Key each :
         {Qt::Key_G, Qt::Key_S, Qt::Key_H, Qt::Key_C, Qt::Key_U, Qt::Key_K, Qt::Key_R,
          Qt::Key_P, Qt::Key_F, Qt::Key_W, Qt::Key_V, Qt::Key_E, Qt::Key_A, Qt::Key_M,
          Qt::Key_X, Qt::Key_B, Qt::Key_N, Qt::Key_J, Qt::Key_I, Qt::Key_L}) {
        FormKeys::open(*window, each, [](QDialog& form) {
            EXPECT_FALSE(form.windowTitle().isEmpty());
            for (QWidget* field : form.findChildren<QWidget*>()) {
                const bool asks =
                    qobject_cast<QLineEdit*>(field) || qobject_cast<QComboBox*>(field);
                if (!asks || !field->isVisible() || field->objectName().isEmpty() ||
                    field->objectName().startsWith("qt_"))
                    continue;
                EXPECT_FALSE(field->accessibleName().isEmpty())
                    << form.windowTitle().toStdString() << field->objectName().toStdString();
                FormKeys::goTo(form, field->objectName().toUtf8().constData());
            }
            QTest::keyClick(&form, Qt::Key_Escape);
        });
    }
}

TEST_F(AtTheWaxBench, TabGoesRoundAndIsNeverTrapped) {
    begin();
    std::set<QString> seen;
    place->flow().setFocus();
    for (int n = 0; n < 80; ++n) {
        if (focus()) seen.insert(focus()->objectName());
        key(Qt::Key_Tab);
    }
    for (const char* stop : {"wax_flow", "cavities_0", "cavities_1", "cavities_2", "bites",
                             "do_gather", "do_pour", "do_project_look", "candle_date"})
        EXPECT_TRUE(seen.contains(QLatin1String(stop))) << stop;
}

TEST_F(AtTheWaxBench, WithNothingWantedItSaysHowToBegin) {
    clock.set("2027-11-13");
    openWindow(R"({"do":"add-yard","on":"2027-04-01","yard_name":"Hill"})");
    place = goToPlace<WaxBenchPlace>(4);
    ASSERT_NE(place, nullptr);
    auto* empty = place->findChild<QLabel*>(QStringLiteral("wax_empty"));
    EXPECT_TRUE(empty->isVisible());
    EXPECT_FALSE(place->evenings().isVisible());
    EXPECT_FALSE(place->bites().isVisible());
    EXPECT_TRUE(place->head().big.figure.isEmpty()) << "no wax is no 0.00";
    EXPECT_TRUE(place->flow().lineWords().contains(QStringLiteral("G gathers")));
    key(Qt::Key_W);
    EXPECT_TRUE(session.lastTold().contains(QStringLiteral("M adds a mould")));
}

TEST_F(AtTheWaxBench, LargeTypeOnASmallWindowFallsBackToALine) {
    begin(true);
    setTextSize(2.0);
    place->reload();
    QApplication::processEvents();
    EXPECT_TRUE(place->flow().asLine());
    EXPECT_FALSE(place->flow().lineWords().isEmpty());
    place->flow().setFocus();
    key(Qt::Key_Down);
    EXPECT_EQ(place->flow().current(), 1);
    setTextSize(1.0);
}

}  // namespace
}  // namespace combwright
