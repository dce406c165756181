#include "core/actions/wax/moulds.h"

#include "core/actions/wax/wax_rules.h"

namespace combwright {

const Fields& AddMould::fields() {
    static const Fields all =
        describe(field<&AddMould::on>("on"), field<&AddMould::mould>("name"),
                 field<&AddMould::kind>("goods_kind"), field<&AddMould::cavities>("cavities"),
                 field<&AddMould::volume>("volume_ml"), field<&AddMould::measured>("measured"),
                 field<&AddMould::shape>("shape"), field<&AddMould::diameter>("diameter"),
                 field<&AddMould::tip>("tip"), field<&AddMould::height>("height"),
                 field<&AddMould::oneWay>("one_way"), field<&AddMould::madeOf>("made_of"),
                 field<&AddMould::wick>("wick"), field<&AddMould::wickLength>("wick_length"),
                 field<&AddMould::cycles>("cycles"), field<&AddMould::setHours>("set_hours"),
                 field<&AddMould::oneWeighs>("one_weighs"), field<&AddMould::note>("note"));
    return all;
}

Result<Id<Mould>> AddMould::perform(Write& file) const {
    Mould made;
    made.name = mould;
    made.kind = kind;
    made.cavities = cavities;
    made.volume = volume;
    made.measured = measured;
    made.shape = shape;
    made.diameter = diameter;
    made.tip = tip;
    made.height = height;
    made.oneWay = oneWay;
    made.madeOf = madeOf;
    made.wick = wick;
    made.wickLength = wickLength;
    made.cycles = cycles;
    made.setHours = setHours;
    made.oneWeighs = oneWeighs;
    made.since = on;
    made.note = note;
    if (auto ok = demandMould(file, made); !ok) return ok.error();
    return file.add(made);
}

const Fields& RetireMould::fields() {
    static const Fields all =
        describe(field<&RetireMould::on>("on"), field<&RetireMould::mould>("mould"),
                 field<&RetireMould::note>("note"));
    return all;
}

Result<Id<Mould>> RetireMould::perform(Write& file) const {
    auto found = file.find(mould);
    if (!found) return Refusal{Code::NotFound, "mould"};
    if (on < found->since)
        return Refusal{Code::BeforeItBegan, "on", {{"since", isoText(found->since)}}};
    if (found->gone) return Refusal{Code::Closed, "mould", {{"since", isoText(*found->gone)}}};
    found->gone = on;
    if (!note.empty()) found->note += (found->note.empty() ? "" : "; ") + note;
    file.change(*found);
    return mould;
}

const Fields& TestBurn::fields() {
    static const Fields all =
        describe(field<&TestBurn::on>("on"), field<&TestBurn::mould>("mould"),
                 field<&TestBurn::wick>("wick"), field<&TestBurn::block>("block"),
                 field<&TestBurn::hours>("hours"), known<&TestBurn::burnt>("burnt"),
                 field<&TestBurn::verdict>("verdict"), field<&TestBurn::note>("note"));
    return all;
}

Result<Id<BurnTest>> TestBurn::perform(Write& file) const {
    const auto burnt_of = mouldOn(file, mould, on);
    if (!burnt_of) return burnt_of.error();
    const auto size = Name::of(wick.empty() ? burnt_of->wick : wick);
    if (!size) return Refusal{Code::Missing, "wick"};
    if (hours && (hours->value() <= 0 || hours->value() > 1000))
        return Refusal{Code::OutOfRange, "hours", {{"low", "0"}, {"high", "1000"}}};
    if (auto ok = demandBurnt(*burnt_of, burnt); !ok) return ok.error();
    BurnTest test;
    test.mould = mould;
    test.on = on;
    test.wick = *size;
    test.block = block;
    test.hours = hours;
    test.burnt = burnt;
    test.verdict = verdict;
    test.note = note;
    return file.add(test);
}

const Fields& BuyWick::fields() {
    static const Fields all =
        describe(field<&BuyWick::on>("on"), field<&BuyWick::wick>("wick"),
                 field<&BuyWick::bought>("bought_length"), field<&BuyWick::supplier>("supplier"),
                 field<&BuyWick::note>("note"));
    return all;
}

Result<Id<WickStock>> BuyWick::perform(Write& file) const {
    if (bought <= Length()) return Refusal{Code::OutOfRange, "bought_length_mm", {{"low", "0.1"}}};
    WickStock stock;
    stock.on = on;
    stock.wick = wick;
    stock.bought = bought;
    stock.supplier = supplier;
    stock.note = note;
    return file.add(stock);
}

const Fields& MeasureWick::fields() {
    static const Fields all =
        describe(field<&MeasureWick::on>("on"), field<&MeasureWick::wick>("wick"),
                 field<&MeasureWick::counted>("counted_length"), field<&MeasureWick::note>("note"));
    return all;
}

Result<Id<WickStock>> MeasureWick::perform(Write& file) const {
    WickStock stock;
    stock.on = on;
    stock.wick = wick;
    stock.counted = counted;
    stock.note = note;
    return file.add(stock);
}

}  // namespace combwright
