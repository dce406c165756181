#include "core/actions/yard/feeds.h"

#include "core/actions/yard/hive_list.h"
#include "core/places/stores/feed_shelf.h"

namespace combwright {
namespace {

bool isNothingAtAll(const std::optional<Known<Mass>>& mass) {
    return mass && mass->value && mass->value->grams() == 0 && !mass->to;
}

Refusal moreThanNothing(const char* field) {
    return {Code::OutOfRange, field, {{"low", "1"}, {"high", "inf"}}};
}

/// So many packs of so much, where no mass was given.
Result<std::optional<Known<Mass>>> massOrPacks(const std::optional<Known<Mass>>& mass,
                                               const std::optional<Count>& packs,
                                               const std::optional<Mass>& pack, const char* field) {
    if (mass) return mass;
    if (!packs || !pack) return Refusal{Code::Missing, field, {}};
    if (packs->value() > billion || pack->grams() > billion ||
        packs->value() * pack->grams() > billion)
        return Refusal{Code::OutOfRange, "packs", {{"low", "0"}, {"high", "100000"}}};
    return std::optional(
        Known<Mass>{Mass::grams(packs->value() * pack->grams()), std::nullopt, How::Counted});
}

}  // namespace

Result<void> demandFeeding(const Feeding& feeding) {
    if (!feeding.given && !feeding.packs) return Refusal{Code::Missing, "given_g", {}};
    if (isNothingAtAll(feeding.given)) return moreThanNothing("given_g");
    if (feeding.packs && feeding.packs->value() == 0) return moreThanNothing("packs");
    return {};
}

Result<void> demandStock(const FeedStock& stock) {
    if (stock.bought && stock.counted)
        return Refusal{Code::Contradiction, "counted_g", {{"other", "bought_g"}}};
    if (!stock.bought && !stock.counted) return Refusal{Code::Missing, "bought_g", {}};
    if (isNothingAtAll(stock.bought)) return moreThanNothing("bought_g");
    if (stock.pack && stock.pack->grams() == 0) return moreThanNothing("pack_g");
    return {};
}

const Fields& FeedHives::fields() {
    static const Fields all =
        describe(field<&FeedHives::on>("on"), field<&FeedHives::yard>("yard"),
                 field<&FeedHives::hives>("hives"), field<&FeedHives::kind>("kind"),
                 known<&FeedHives::given>("given"), field<&FeedHives::packs>("packs"),
                 field<&FeedHives::note>("note"));
    return all;
}

Result<FeedHives::Answer> FeedHives::perform(Write& file) const {
    const auto fed = hivesListed(file, hives, yard, on);
    if (!fed) return fed.error();
    std::optional<Known<Mass>> each = given;
    if (packs && !given) {
        const auto mass =
            massOrPacks(given, packs, packOf(file, kind.value_or(FeedKind::Dry), on), "given_g");
        if (!mass) return mass.error();
        each = *mass;
    }
    Answer kept;
    for (const Hive& hive : *fed) {
        const Feeding feeding{{}, hive.id, std::nullopt, on, each, note, kind, packs};
        if (auto ok = demandFeeding(feeding); !ok) return ok.error();
        kept.push_back(file.add(Feeding(feeding)));
    }
    return kept;
}

const Fields& BuyFeed::fields() {
    static const Fields all = describe(
        field<&BuyFeed::on>("on"), field<&BuyFeed::kind>("kind"), known<&BuyFeed::bought>("bought"),
        field<&BuyFeed::packs>("packs"), field<&BuyFeed::pack>("pack"),
        field<&BuyFeed::supplier>("supplier"), field<&BuyFeed::note>("note"));
    return all;
}

Result<Id<FeedStock>> BuyFeed::perform(Write& file) const {
    const auto mass = massOrPacks(bought, packs, pack, "bought_g");
    if (!mass) return mass.error();
    FeedStock stock{{},       on,  kind.value_or(FeedKind::Dry), *mass, std::nullopt, pack,
                    supplier, note};
    if (auto ok = demandStock(stock); !ok) return ok.error();
    return file.add(stock);
}

const Fields& CountFeed::fields() {
    static const Fields all =
        describe(field<&CountFeed::on>("on"), field<&CountFeed::kind>("kind"),
                 known<&CountFeed::counted>("counted"), field<&CountFeed::packs>("packs"),
                 field<&CountFeed::pack>("pack"), field<&CountFeed::note>("note"));
    return all;
}

Result<Id<FeedStock>> CountFeed::perform(Write& file) const {
    const FeedKind what = kind.value_or(FeedKind::Dry);
    const auto size = pack ? pack : packOf(file, what, on);
    const auto mass = massOrPacks(counted, packs, size, "counted_g");
    if (!mass) return mass.error();
    FeedStock stock{{}, on, what, std::nullopt, *mass, pack, {}, note};
    if (auto ok = demandStock(stock); !ok) return ok.error();
    for (const FeedStock& each : file.where<FeedStock>({is("on_day", on), is("kind", what)})) {
        if (!each.counted) continue;
        stock.id = each.id;
        if (!stock.pack) stock.pack = each.pack;
        file.change(stock);
        return stock.id;
    }
    return file.add(stock);
}

}  // namespace combwright
