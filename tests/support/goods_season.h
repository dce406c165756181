// One big bucket, three kinds of goods with prices, sixty jars filled: what is tested about goods
// before they are kept. All numbers are invented; what must follow was worked out by hand.
#pragma once

#include "tests/support/deeds.h"

namespace combwright::test {

class GoodsSeason : public DeedsTest {
  protected:
    void SetUp() override {
        clock.set("2028-12-20");
        done(R"({"do":"name-season","on":"2027-04-01","season":"Hill bees"}
{"do":"add-yard","on":"2027-04-01","yard_name":"Hill"}
{"do":"open-run","on":"2027-08-08","name":"27-1","yard":"Hill"}
{"do":"fill-bucket","on":"2027-08-08","run":"27-1","mark":"B1","net_g":40000}
{"do":"add-goods","on":"2027-08-01","name":"454 g jar","net_g":454,"lid":"63 mm","price":8.5}
{"do":"add-goods","on":"2027-08-01","name":"227 g jar","net_g":227,"lid":"63 mm"}
{"do":"add-goods","on":"2027-08-01","name":"skep candle","what":"candle","price":6}
{"do":"set-prices","on":"2027-08-01","prices":"skep 6","currency":"€"}
{"do":"buy-packing","on":"2027-08-01","goods_kind":"454 g jar","bought":100}
{"do":"buy-packing","on":"2027-08-01","lid":"63 mm","bought":80}
{"do":"fill-jars","on":"2027-09-01","bucket":{"bucket":"B1","run":"27-1"},"jars":"60 454 g, 10 227 g"}
{"do":"count-goods","on":"2027-11-20","goods_kind":"skep candle","count":12})");
    }
    GoodsKind kind(std::int64_t number) const { return *file().find(Id<GoodsKind>{number}); }
    Bottling filling() const { return file().all<Bottling>().front(); }
};

}  // namespace combwright::test
