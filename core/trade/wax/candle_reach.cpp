#include "core/trade/wax/candle_reach.h"

#include <algorithm>

#include "core/trade/wax/candle_amounts.h"

namespace combwright {
namespace {

constexpr double oneKilogramG = 1000;

CandleReaches reachOf(const CandleAmounts& amounts) {
    CandleReaches reaches;
    std::vector<std::int64_t> wax = amounts.wax;
    std::vector<std::int64_t> wick = amounts.wick;
    for (std::size_t i = 0; i < amounts.kinds.size(); ++i) {
        const CandleAmounts::Kind& kind = amounts.kinds[i];
        CandleReach reach;
        reach.byWax = amounts.fromWax(kind, wax, kind.count);
        reach.byMoulds = std::min(kind.count, kind.byMoulds);
        reach.byWick =
            kind.wick == 0 ? kind.count : std::min(kind.count, wick[kind.wickSize] / kind.wick);
        reach.made = std::min({kind.count, reach.byWax, reach.byMoulds, reach.byWick});
        if (reach.made < kind.count) {
            if (reach.byWax == reach.made) reach.bites.push_back(CandleLimit::Wax);
            if (reach.byMoulds == reach.made) reach.bites.push_back(CandleLimit::Moulds);
            if (reach.byWick == reach.made) reach.bites.push_back(CandleLimit::Wick);
        }
        wick[kind.wickSize] -= reach.made * kind.wick;
        std::int64_t open = reach.made;
        for (const std::size_t shade : kind.shades) {
            const std::int64_t pieces = std::min(open, wax[shade] / kind.mass);
            if (pieces == 0) continue;
            open -= pieces;
            wax[shade] -= pieces * kind.mass;
            reaches.ofShade.push_back({i, amounts.shades[shade], pieces});
        }
        reaches.kinds.push_back(std::move(reach));
    }
    return reaches;
}

/// Each plan with one thing more, held against the plan as it is.
class OneMore {
  public:
    OneMore(const CandleStock& stock, std::int64_t evenings, std::span<const CandleWanted> wants,
            CandleReaches before)
        : m_stock(stock),
          m_evenings(evenings),
          m_wants(wants.begin(), wants.end()),
          m_before(std::move(before)) {}

    Result<std::vector<OneMoreCandleThing>> all() {
        using What = OneMoreCandleThing::What;
        for (std::size_t i = 0; i < m_wants.size(); ++i) {
            auto wants = m_wants;
            ++wants[i].cavities;
            add({What::Cavity, i, {}}, m_stock, m_evenings, wants);
        }
        add({What::Evening, 0, {}}, m_stock, m_evenings + 1, m_wants);
        for (const std::string& shade : shades()) {
            CandleStock stock = m_stock;
            stock.wax.push_back({shade, oneKilogramG});
            add({What::Kilogram, 0, shade}, stock, m_evenings, m_wants);
        }
        for (const std::string& size : wicks()) {
            CandleStock stock = m_stock;
            stock.wickM[size] += 1;
            add({What::Metre, 0, size}, stock, m_evenings, m_wants);
        }
        return m_all;
    }

  private:
    std::vector<std::string> shades() const {
        if (m_stock.mixed) return {std::string()};
        std::vector<std::string> names;
        const auto add = [&](const std::string& shade) {
            if (std::find(names.begin(), names.end(), shade) == names.end()) names.push_back(shade);
        };
        for (const ShadeOfWax& block : m_stock.wax) add(block.shade);
        for (const CandleWanted& want : m_wants)
            for (const std::string& shade : want.shades) add(shade);
        return names;
    }
    std::vector<std::string> wicks() const {
        std::vector<std::string> names;
        for (const CandleWanted& want : m_wants)
            if (want.wickM > 0 && std::find(names.begin(), names.end(), want.wick) == names.end())
                names.push_back(want.wick);
        return names;
    }
    /// What lies at the end of what may be asked already has no more: it is left out.
    void add(OneMoreCandleThing thing, const CandleStock& stock, std::int64_t evenings,
             std::span<const CandleWanted> wants) {
        const auto after = candleReach(stock, evenings, wants);
        if (!after) return;
        for (std::size_t i = 0; i < m_wants.size(); ++i) {
            thing.change.push_back(after->kinds[i].made - m_before.kinds[i].made);
            thing.more += thing.change.back();
        }
        m_all.push_back(std::move(thing));
    }

    const CandleStock& m_stock;
    std::int64_t m_evenings;
    std::vector<CandleWanted> m_wants;
    CandleReaches m_before;
    std::vector<OneMoreCandleThing> m_all;
};

}  // namespace

std::string_view key(CandleLimit limit) {
    switch (limit) {
        case CandleLimit::Wax:
            return "wax";
        case CandleLimit::Moulds:
            return "moulds";
        case CandleLimit::Wick:
            return "wick";
    }
    return {};
}

std::string_view key(OneMoreCandleThing::What what) {
    switch (what) {
        case OneMoreCandleThing::What::Cavity:
            return "cavity";
        case OneMoreCandleThing::What::Evening:
            return "evening";
        case OneMoreCandleThing::What::Kilogram:
            return "kilogram";
        case OneMoreCandleThing::What::Metre:
            return "metre";
    }
    return {};
}

Result<CandleReaches> candleReach(const CandleStock& stock, std::int64_t evenings,
                                  std::span<const CandleWanted> wants) {
    const auto amounts = candleAmounts(stock, evenings, wants);
    if (!amounts) return amounts.error();
    return reachOf(*amounts);
}

Result<std::vector<OneMoreCandleThing>> oneMoreOfEach(const CandleStock& stock,
                                                      std::int64_t evenings,
                                                      std::span<const CandleWanted> wants) {
    auto before = candleReach(stock, evenings, wants);
    if (!before) return before.error();
    return OneMore(stock, evenings, wants, std::move(before).value()).all();
}

}  // namespace combwright
