#include "core/places/wax_bench/candle_evenings.h"

#include <algorithm>
#include <map>
#include <utility>

#include "core/places/wax_bench/candle_shades.h"
#include "core/places/wax_bench/wax_bench.h"
#include "core/storage/queries/constants.h"
#include "core/storage/queries/goods_shelf.h"
#include "core/trade/wax/candle_time.h"

namespace combwright {
namespace {

/// Mixes tried: some tens of milliseconds at the worst, for Today asks for the evenings too.
constexpr std::int64_t mixTrials = 200'000;

double metresOf(const std::optional<Length>& length) {
    return length ? static_cast<double>(length->count()) / 10'000.0 : 0.0;
}

bool stoodOn(const CandleWish& wish, Day on) {
    return wish.on <= on && (!wish.dropped || *wish.dropped > on);
}

std::vector<CandleWish> wishesUpTo(const Read& file, const CandleDate& date, Day on) {
    std::vector<CandleWish> wishes;
    // A day that is past is looked at by itself.
    for (CandleWish& wish : file.where<CandleWish>(
             {isFrom("wanted_by", std::min(on, date.by)), isUpTo("wanted_by", date.by)}))
        if (stoodOn(wish, on)) wishes.push_back(std::move(wish));
    std::stable_sort(wishes.begin(), wishes.end(), [](const CandleWish& a, const CandleWish& b) {
        const auto place = [](const CandleWish& wish) {
            return std::pair(wish.by, wish.order ? wish.order->value() : std::int64_t{1'000'000});
        };
        return place(a) < place(b);
    });
    return wishes;
}

/// Shades a kind may be of in all its wishes, those of the soonest first; none: any.
void addWishedShades(const CandleWish& wish, bool first, std::vector<std::string>& shades) {
    const auto named = readShades(wish.shades);
    if (!named || named->empty() || (!first && shades.empty())) {
        shades.clear();
        return;
    }
    for (const WaxShade each : *named)
        if (std::find(shades.begin(), shades.end(), word(each)) == shades.end())
            shades.emplace_back(word(each));
}

CandlesWantedShown wantedOf(const Read& file, const GoodsKind& kind, Day on) {
    CandlesWantedShown wanted;
    wanted.kind = kind;
    if (kind.net) wanted.massG = static_cast<double>(kind.net->grams());
    bool first = true;
    for (const Mould& mould : file.where<Mould>({is("goods_kind", kind.id)})) {
        if (mould.since > on || (mould.gone && *mould.gone <= on)) continue;
        const MouldShown shown = mouldShown(file, mould, on);
        wanted.cavities += mould.cavities.value();
        wanted.safe = wanted.safe && shown.safe;
        if (!std::exchange(first, false)) continue;
        // What candles of a kind have in common is asked of the first mould that makes them.
        if (!wanted.massG && shown.mass) {
            wanted.massG = shown.mass->massG;
            wanted.massByMould = true;
        }
        wanted.wick = mould.wick;
        wanted.wickLength = mould.wickLength;
        if (mould.cycles) wanted.cycles = mould.cycles->value();
        if (shown.setHours) wanted.setHours = *shown.setHours;
    }
    for (const Pour& pour : file.where<Pour>({is("goods_kind", kind.id)}))
        if (pour.on == on) wanted.pouredOn.insert(pour.on);
    return wanted;
}

/// Hours of a whole free day at the pot: planning assumption, no source.
constexpr double freeDayHours = 10;

/// How often moulds of a kind are filled on an evening: as often as the keeper said of that
/// evening, where the wax sets so fast, else as their own cycles say; not again where they were.
std::int64_t cyclesOf(const CandlesWantedShown& kind, const FreeEvening& evening) {
    if (kind.pouredOn.contains(evening.on)) return 0;
    if (!evening.cycles) return kind.cycles;
    const auto fast = cyclesIn(freeDayHours, kind.setHours);
    return std::min(evening.cycles->value(), fast ? *fast : kind.cycles);
}

/// Good candles of pours that are not on the shelf yet.
std::int64_t beingFinished(const Read& file, Id<GoodsKind> kind, Day on) {
    std::int64_t many = 0;
    for (const Pour& pour : file.where<Pour>({is("goods_kind", kind)}))
        if (pour.on <= on && (!pour.labelled || *pour.labelled > on)) many += pour.good.value();
    return many;
}

}  // namespace

std::vector<CandleDate> candleDates(const Read& file, Day from) {
    std::vector<CandleDate> dates;
    std::map<Day, std::vector<std::string>> purposes;
    for (const CandleWish& wish : file.where<CandleWish>({isFrom("wanted_by", from)})) {
        if (!stoodOn(wish, from)) continue;
        auto same = std::find_if(dates.begin(), dates.end(),
                                 [&](const CandleDate& each) { return each.by == wish.by; });
        if (same == dates.end()) same = dates.insert(dates.end(), {wish.by, {}, 0});
        same->candles += wish.count.value();
        auto& named = purposes[wish.by];
        if (wish.whatFor.empty() ||
            std::find(named.begin(), named.end(), wish.whatFor) != named.end())
            continue;
        named.push_back(wish.whatFor);
        same->whatFor += (same->whatFor.empty() ? "" : ", ") + wish.whatFor;
    }
    std::stable_sort(dates.begin(), dates.end(),
                     [](const CandleDate& a, const CandleDate& b) { return a.by < b.by; });
    return dates;
}

Result<std::optional<CandleEvenings>> candleEvenings(const Read& file, Day on,
                                                     std::optional<CandleDate> date,
                                                     const std::vector<std::int64_t>& worth,
                                                     const std::vector<CavitiesIf>& whatIf,
                                                     bool withBestMix) {
    const OneState still(file);
    if (!date) {
        const auto dates = candleDates(file, on);
        if (dates.empty()) return std::optional<CandleEvenings>();
        date = dates.front();
    }
    CandleEvenings all;
    all.on = on;
    all.date = *date;
    all.lossShare = constantOr(file, "candle_loss_share", {}, on, 0.05);
    std::map<std::int64_t, std::size_t> places;
    for (const CandleWish& wish : wishesUpTo(file, *date, on)) {
        const auto kind = file.find(wish.kind);
        if (!kind) continue;
        const auto [place, isNew] = places.emplace(kind->id.number, all.kinds.size());
        if (isNew) all.kinds.push_back(wantedOf(file, *kind, on));
        CandlesWantedShown& of = all.kinds[place->second];
        addWishedShades(wish, isNew, of.shades);
        of.wishes.push_back({wish.by, wish.whatFor, wish.count.value()});
        of.wished += wish.count.value();
    }
    all.stock.lossShare = all.lossShare;
    for (const ShadeStock& shade : waxBench(file, on).shades)
        if (shade.left > Mass())
            all.stock.wax.push_back(
                {std::string(word(shade.shade)), static_cast<double>(shade.left.grams())});
    for (const std::string& size : wickStocked(file))
        if (const auto left = wickLeft(file, size, on))
            all.stock.wickM[size] = std::max(metresOf(left), 0.0);
    FreeEvenings free;
    free.wantedOn = date->by;
    free.keepLast = false;
    all.evenings = freeEvenings(file, on, date->by);
    std::vector<FreeEvening> before;
    for (const FreeEvening& evening : all.evenings)
        if (evening.on < date->by) before.push_back(evening);
    for (std::size_t n = 0; n < before.size(); ++n) {
        // The last one may be kept for finishing; one so marked before it is another date's.
        const bool last = n + 1 == before.size();
        if (!last && before[n].finishing == true) continue;
        free.days.push_back(before[n].on);
        if (last) free.keepLast = before[n].finishing == true;
    }
    all.eveningsFree = pouringEvenings(free);
    std::vector<KindToPour> pours;
    for (CandlesWantedShown& kind : all.kinds) {
        for (const CavitiesIf& each : whatIf)
            if (each.kind == kind.kind.id) kind.cavities = each.cavities;
        const std::int64_t there = std::max<std::int64_t>(goodsShelf(file, kind.kind, on).left, 0) +
                                   beingFinished(file, kind.kind.id, on);
        kind.ready = std::min(there, kind.wished);
        if (!kind.massG || *kind.massG <= 0) {
            all.unknown.push_back(kind.kind.name.text());
            continue;
        }
        CandleWanted want;
        want.what = kind.kind.name.text();
        want.count = kind.wished - kind.ready;
        want.massG = *kind.massG;
        want.wick = kind.wick;
        want.wickM = metresOf(kind.wickLength);
        want.cavities = kind.cavities;
        want.cyclesPerEvening = kind.cycles;
        want.shades = kind.shades;
        KindToPour pour{want.what, want.count, want.cavities, want.cyclesPerEvening,
                        std::min(kind.setHours, 240.0)};
        for (const FreeEvening& evening : before) {
            if (std::find(free.days.begin(), free.days.end(), evening.on) == free.days.end())
                continue;
            const std::int64_t cycles = cyclesOf(kind, evening);
            pour.cyclesOn.emplace(evening.on, cycles);
            if (static_cast<std::int64_t>(want.cyclesOn.size()) < all.eveningsFree)
                want.cyclesOn.push_back(cycles);
        }
        pours.push_back(std::move(pour));
        all.wants.push_back(std::move(want));
    }
    const auto needs = candleNeeds(all.stock, all.eveningsFree, all.wants);
    if (!needs) return needs.error();
    all.needs = *needs;
    CandleStock together = all.stock;
    together.mixed = true;
    auto anyShade = all.wants;
    for (CandleWanted& want : anyShade) want.shades.clear();
    const auto mixed = candleNeeds(together, all.eveningsFree, anyShade);
    if (!mixed) return mixed.error();
    all.mixed = *mixed;
    const auto reach = candleReach(all.stock, all.eveningsFree, all.wants);
    if (!reach) return reach.error();
    all.reach = *reach;
    const auto more = oneMoreOfEach(all.stock, all.eveningsFree, all.wants);
    if (!more) return more.error();
    all.oneMore = *more;
    const std::vector<std::int64_t> alike(all.wants.size(), 1);
    if (withBestMix) {
        const auto best = bestMix(all.stock, all.eveningsFree, all.wants,
                                  worth.empty() ? alike : worth, {.trials = mixTrials});
        if (!best) return best.error();
        all.best = *best;
    }
    const auto plan = planEvenings(free, pours);
    if (!plan) return plan.error();
    all.plan = *plan;
    return std::optional(std::move(all));
}

}  // namespace combwright
