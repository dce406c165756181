// jars, sales and fair from the command line.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/cli/run_cli.h"

namespace combwright {
namespace {

using testing::HasSubstr;

class CliGoods : public test::CliTest {
  protected:
    void SetUp() override {
        clock.set("2027-12-20");
        Season season = newSeason();
        playAll(season, R"({"do":"open-run","on":"2027-08-08","name":"27-1"}
{"do":"fill-bucket","on":"2027-08-08","run":"27-1","mark":"B1","net_g":40000}
{"do":"add-goods","on":"2027-08-01","name":"454 g jar","net_g":454,"price":8.5}
{"do":"buy-packing","on":"2027-08-01","goods_kind":"454 g jar","bought":100}
{"do":"fill-jars","on":"2027-09-01","bucket":{"bucket":"B1","run":"27-1"},"jars":"60 454 g","weighed":"455, 456"}
{"do":"pack-fair","on":"2027-12-11","fair_name":"Advent","goods":"40 454 g","change_money":30}
{"do":"fair-home","on":"2027-12-11","fair":"Advent","home":"9, 2 broken, 1 given","cash":268})");
    }
    QString season() const { return QString::fromStdString(path()); }
};

TEST_F(CliGoods, JarsAndFairAndSales) {
    const auto jars = cli({"jars", season(), "--json"});
    ASSERT_EQ(jars.exit, 0) << jars;
    const QJsonObject kind = jars.object()["kinds"].toArray()[0].toObject();
    EXPECT_EQ(kind["left"].toInt(), 29);
    EXPECT_EQ(kind["sold"].toInt(), 28);
    EXPECT_EQ(jars.object()["packing"].toArray()[0].toObject()["left"].toInt(), 40);
    EXPECT_EQ(jars.object()["fillings"].toArray()[0].toObject()["in_jars_g"].toInt(), 27'240);

    const auto fair = cli({"fair", season(), "--json", "--why"});
    ASSERT_EQ(fair.exit, 0) << fair;
    EXPECT_EQ(fair.object()["sold"].toInt(), 28);
    EXPECT_EQ(fair.object()["takings"].toDouble(), 238.0);
    EXPECT_EQ(fair.object()["difference"].toDouble(), 0.0);
    EXPECT_EQ(fair.object()["why"].toArray().size(), 1);

    const auto sales = cli({"sales", season(), "--season", "2027", "--json"});
    ASSERT_EQ(sales.exit, 0) << sales;
    EXPECT_EQ(sales.object()["all"].toObject()["sold"].toInt(), 28);
    EXPECT_EQ(sales.object()["all"].toObject()["broken"].toInt(), 2);

    EXPECT_THAT(cli({"fair", season()}).out.toStdString(), HasSubstr("28 sold"));
    EXPECT_THAT(cli({"jars", season(), "--print", "price-list"}).out.toStdString(),
                HasSubstr("8.50"));
    EXPECT_THAT(cli({"jars", season(), "--why"}).out.toStdString(), HasSubstr("L27-1-1"));
    EXPECT_THAT(cli({"sales", season()}).out.toStdString(), HasSubstr("238.00"));
}

TEST_F(CliGoods, WhatIsNotThereIsRefused) {
    EXPECT_EQ(cli({"fair", season(), "--fair", "Lent", "--json"}).code(), "not_found");
    EXPECT_EQ(cli({"jars", season(), "--print", "labels", "--json"}).code(), "no_such_command");
    EXPECT_EQ(cli({"sales", season(), "--season", "last", "--json"}).field(), "season");
    const std::string empty = path("empty.combwright");
    ASSERT_TRUE(Season::create(empty, clock));
    const QString none = QString::fromStdString(empty);
    EXPECT_EQ(cli({"fair", none, "--json"}).code(), "missing");
    EXPECT_EQ(cli({"jars", none}).exit, 0);
    EXPECT_EQ(cli({"sales", none}).exit, 0);
}

}  // namespace
}  // namespace combwright
