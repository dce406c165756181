// Honey from two runs to two lots and jars, small enough to reckon by hand; all numbers invented.
//
//   run 27-2, Hill:  H1a gave 15 kg, H2a 5 kg    -> 3 to 1; buckets B1 12 kg, B2 8 kg
//   run 27-3, Creek: C1a gave 10 kg, a box whose tag was lost 10 kg -> 1 to 1; bucket B3 10 kg
//   Summer blend = B1 12,000 g + B3 7,001 g                         = 19,001 g
//   Winter mix   = 4,000 g of Summer blend + 1,000 g of Neighbour's = 5,000 g
//   L27-1 = 30 jars of 454 g out of Summer blend = 13,620 g
#pragma once

#include <string>

#include "core/model/honey/going_out.h"
#include "core/storage/queries/honey_names.h"
#include "core/storage/queries/vessels.h"
#include "tests/support/deeds.h"

namespace combwright::test {

class HoneyLotsTest : public DeedsTest {
  protected:
    Id<Lot> summer, winter, bought;
    Id<Bottling> jars;
    Id<GoodsKind> pound;

    void SetUp() override {
        clock.set("2027-11-20");
        std::string script;
        for (const char* yard : {"Hill", "Creek"})
            script += R"({"do":"add-yard","on":"2027-04-01","yard_name":")" + std::string(yard) +
                      R"(","usual_super":"medium"})" + "\n";
        for (const auto& [yard, mark] :
             {std::pair("Hill", "H1"), std::pair("Hill", "H2"), std::pair("Creek", "C1")})
            script += R"({"do":"add-hive","on":"2027-04-01","yard":")" + std::string(yard) +
                      R"(","mark":")" + mark + R"(","boxes":"deep, x, medium )" + mark +
                      R"(a 9 drawn","origin":"overwintered"})" + "\n";
        script +=
            R"({"do":"buy-medicine","on":"2027-05-01","name":"Strips","active":"amitraz",)"
            R"("quantity":10,"unit":"strips","supers":"off","wait_days":14})"
            "\n"
            R"({"do":"treat","on":"2027-06-01","yard":"Hill","hives":"H1","medicine":"Strips",)"
            R"("amount":2,"out_day":"2027-06-20"})"
            "\n";
        script += run("27-2", "Hill", "2027-08-07", R"("box":"H1a","gross_g":20000,"wet_g":5000)",
                      R"("box":"H2a","gross_g":10000,"wet_g":5000)");
        script += bucket("27-2", "2027-08-07", "B1", 12000) +
                  bucket("27-2", "2027-08-07", "B2", 8000) + close("27-2", "2027-08-07");
        script += run("27-3", "Creek", "2027-08-08", R"("box":"C1a","gross_g":15000,"wet_g":5000)",
                      R"("known_as":"tag lost","gross_g":15000,"wet_g":5000)");
        script += bucket("27-3", "2027-08-08", "B3", 10000) + close("27-3", "2027-08-08");
        done(script);
        write([this](Write& file) { fill(file); });
    }
    template <class Deed>
    void write(Deed deed) {
        const auto step = season.perform({"test", "{}", "", ""}, [&](Write& file) -> Result<void> {
            deed(file);
            return {};
        });
        ASSERT_TRUE(step);
    }
    Id<Bucket> bucketNamed(const char* mark) const {
        for (const Bucket& each : file().all<Bucket>())
            if (each.mark.text() == mark) return each.id;
        ADD_FAILURE() << mark;
        return {};
    }
    static Known<Mass> weighed(std::int64_t grams) {
        return {Mass::grams(grams), std::nullopt, How::Weighed};
    }

  private:
    static std::string run(const char* run, const char* yard, const char* on, const char* first,
                           const char* second) {
        const std::string head = R"("on":")" + std::string(on) + R"(","run":")" + run + "\",";
        return R"({"do":"open-run","on":")" + std::string(on) + R"(","name":")" + run +
               R"(","yard":")" + yard + "\"}\n" + R"({"do":"weigh-box",)" + head + first + "}\n" +
               R"({"do":"weigh-box",)" + head + second + "}\n" + R"({"do":"weigh-cappings",)" +
               head + "\"cappings_g\":0}\n";
    }
    static std::string bucket(const char* run, const char* on, const char* mark, int grams) {
        return R"({"do":"fill-bucket","on":")" + std::string(on) + R"(","run":")" + run +
               R"(","mark":")" + mark + R"(","net_g":)" + std::to_string(grams) + "}\n";
    }
    static std::string close(const char* run, const char* on) {
        return R"({"do":"close-run","on":")" + std::string(on) + R"(","run":")" + run + "\"}\n";
    }
    void fill(Write& file) {
        Lot lot;
        lot.name = name("Summer blend");
        lot.on = day("2027-09-01");
        summer = file.add(lot);
        lot = {};
        lot.name = name("Neighbour's");
        lot.on = day("2027-09-05");
        lot.origin = LotOrigin::BoughtIn;
        lot.net = weighed(10000);
        lot.supplier = "Dora";
        bought = file.add(lot);
        lot = {};
        lot.name = name("Winter mix");
        lot.on = day("2027-10-01");
        winter = file.add(lot);
        const auto part = [&](Id<Lot> into, std::optional<Id<Bucket>> bucket,
                              std::optional<Id<Lot>> from, const char* on, std::int64_t grams) {
            file.add(LotPart{{}, into, bucket, from, day(on), Mass::grams(grams), How::Weighed});
        };
        part(summer, bucketNamed("B1"), std::nullopt, "2027-09-01", 12000);
        part(summer, bucketNamed("B3"), std::nullopt, "2027-09-01", 7001);
        part(winter, std::nullopt, summer, "2027-10-01", 4000);
        part(winter, std::nullopt, bought, "2027-10-01", 1000);
        GoodsKind kind;
        kind.name = name("454 g jar");
        kind.net = Mass::grams(454);
        pound = file.add(kind);
        Bottling bottling;
        bottling.lot = summer;
        bottling.on = day("2027-09-10");
        bottling.code = name("L27-1");
        bottling.bestBefore = day("2029-09-10");
        jars = file.add(bottling);
        BottledJars filled;
        filled.bottling = jars;
        filled.kind = pound;
        filled.count = Count(30);
        file.add(filled);
        GoingOut out;
        out.kind = pound;
        out.bottling = jars;
        out.on = day("2027-09-20");
        out.count = Count(12);
        out.buyer = "Ann";
        file.add(out);
        out.on = day("2027-09-25");
        out.how = OutHow::Given;
        out.count = Count(3);
        out.buyer.clear();
        file.add(out);
        Fair fair;
        fair.name = name("Harvest fair");
        fair.on = day("2027-10-03");
        fair.place = "Market";
        const Id<Fair> held = file.add(fair);
        FairLine line;
        line.fair = held;
        line.kind = pound;
        line.bottling = jars;
        line.packed = Count(10);
        line.home = Count(4);
        line.broken = Count(1);
        line.given = Count(1);
        file.add(line);
    }
};

}  // namespace combwright::test
