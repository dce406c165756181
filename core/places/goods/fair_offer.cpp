#include "core/places/goods/fair_offer.h"

#include <algorithm>

namespace combwright {
namespace {

std::optional<Fair> lastOver(const Read& file, const std::string& name, Day day) {
    std::optional<Fair> ofAny;
    for (Fair& each : fairs(file)) {
        if (!each.closed || each.on >= day) continue;
        if (each.name.text() == name) return std::move(each);
        if (!ofAny) ofAny = std::move(each);
    }
    return ofAny;
}

std::optional<Fair> openOne(const Read& file, const std::string& name, Day day) {
    for (Fair& each : file.where<Fair>({is("on_day", day)}))
        if (!each.closed && each.name.text() == name) return std::move(each);
    return std::nullopt;
}

void addLast(const FairSheet& last, FairOffer& offer) {
    bool someHome = false;
    for (const FairRow& row : last.rows) {
        if (row.kind.id != offer.shelf.kind.id) continue;
        offer.packedBefore = offer.packedBefore.value_or(0) + row.line.packed.value();
        if (row.sold) offer.soldBefore = offer.soldBefore.value_or(0) + *row.sold;
        // Of two fillings of a kind both must have run out.
        someHome = someHome || !row.ranOut;
    }
    offer.ranOutBefore = offer.packedBefore && !someHome;
}

}  // namespace

FairOffers fairOffers(const Read& file, const std::string& name, Day day) {
    const OneState still(file);
    FairOffers offers;
    offers.open = openOne(file, name, day);
    offers.before = lastOver(file, name, day);
    const auto last = offers.before ? std::optional(fairSheet(file, *offers.before)) : std::nullopt;
    const auto box =
        offers.open ? file.where<FairLine>({is("fair", offers.open->id)}) : std::vector<FairLine>{};
    for (GoodsShelf& shelf : goodsShelves(file, day)) {
        FairOffer offer;
        offer.shelf = std::move(shelf);
        for (const FairLine& line : box)
            if (line.kind == offer.shelf.kind.id) offer.inBox += line.packed.value();
        if (last) addLast(*last, offer);
        if (offer.shelf.left > 0 || offer.inBox > 0 || offer.packedBefore)
            offers.kinds.push_back(std::move(offer));
    }
    return offers;
}

}  // namespace combwright
