#include "core/model/wax/candle.h"

namespace combwright {

const Fields& Mould::fields() {
    static const Fields all =
        describe(ownId<&Mould::id>(), field<&Mould::name>("name"),
                 field<&Mould::kind>("goods_kind"), field<&Mould::cavities>("cavities"),
                 field<&Mould::volume>("volume_ml"), field<&Mould::measured>("measured"),
                 field<&Mould::shape>("shape"), field<&Mould::diameter>("diameter"),
                 field<&Mould::tip>("tip"), field<&Mould::height>("height"),
                 field<&Mould::oneWay>("one_way"), field<&Mould::madeOf>("made_of"),
                 field<&Mould::wick>("wick"), field<&Mould::wickLength>("wick_length"),
                 field<&Mould::cycles>("cycles"), field<&Mould::setHours>("set_hours"),
                 field<&Mould::since>("since"), field<&Mould::gone>("gone"),
                 field<&Mould::note>("note"), field<&Mould::oneWeighs>("one_weighs"));
    return all;
}

const Fields& BurnTest::fields() {
    static const Fields all = describe(
        ownId<&BurnTest::id>(), field<&BurnTest::mould>("mould"), field<&BurnTest::on>("on_day"),
        field<&BurnTest::wick>("wick"), field<&BurnTest::block>("block"),
        field<&BurnTest::hours>("hours"), known<&BurnTest::burnt>("burnt"),
        field<&BurnTest::verdict>("verdict"), field<&BurnTest::note>("note"));
    return all;
}

const Fields& Pour::fields() {
    static const Fields all =
        describe(ownId<&Pour::id>(), field<&Pour::mould>("mould"), field<&Pour::kind>("goods_kind"),
                 field<&Pour::on>("on_day"), field<&Pour::at>("poured_at"),
                 field<&Pour::good>("good"), field<&Pour::failed>("failed"),
                 field<&Pour::seconds>("seconds"), known<&Pour::returned>("returned"),
                 field<&Pour::temperature>("temperature"), field<&Pour::wick>("wick"),
                 field<&Pour::wickUsed>("wick_used"), field<&Pour::released>("released"),
                 field<&Pour::trimmed>("trimmed"), field<&Pour::labelled>("labelled"),
                 field<&Pour::reason>("reason"), field<&Pour::note>("note"));
    return all;
}

const Fields& CandleWish::fields() {
    static const Fields all =
        describe(ownId<&CandleWish::id>(), field<&CandleWish::kind>("goods_kind"),
                 field<&CandleWish::count>("count"), field<&CandleWish::on>("on_day"),
                 field<&CandleWish::by>("wanted_by"), field<&CandleWish::whatFor>("what_for"),
                 field<&CandleWish::fair>("fair"), field<&CandleWish::order>("wish_order"),
                 field<&CandleWish::shades>("shades"), field<&CandleWish::dropped>("dropped"),
                 field<&CandleWish::note>("note"));
    return all;
}

const Fields& FreeEvening::fields() {
    static const Fields all =
        describe(ownId<&FreeEvening::id>(), field<&FreeEvening::on>("on_day"),
                 field<&FreeEvening::cycles>("cycles"), field<&FreeEvening::finishing>("finishing"),
                 field<&FreeEvening::free>("free"), field<&FreeEvening::note>("note"));
    return all;
}

const Fields& WickStock::fields() {
    static const Fields all = describe(
        ownId<&WickStock::id>(), field<&WickStock::on>("on_day"), field<&WickStock::wick>("wick"),
        field<&WickStock::bought>("bought_length"), field<&WickStock::counted>("counted_length"),
        field<&WickStock::supplier>("supplier"), field<&WickStock::note>("note"));
    return all;
}

}  // namespace combwright
