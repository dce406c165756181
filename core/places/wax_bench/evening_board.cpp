#include "core/places/wax_bench/evening_board.h"

#include <algorithm>
#include <array>
#include <chrono>
#include <cmath>
#include <map>
#include <set>

namespace combwright {
namespace {

/// So many evenings back that were poured on are shown.
constexpr std::size_t pastEvenings = 6;
/// A candle whose wick is over five times as long as a cube of its volume is wide is a slender one.
constexpr double slender = 5.0;

CandleForm formOf(const Mould& mould) {
    if (mould.shape == MouldShape::Taper) return CandleForm::Taper;
    if (mould.shape == MouldShape::Cylinder) return CandleForm::Pillar;
    if (mould.volume && mould.volume->value() > 0 && mould.wickLength &&
        mould.wickLength->mm() / std::cbrt(mould.volume->value() * 1000.0) > slender)
        return CandleForm::Taper;
    return CandleForm::Domed;
}

std::vector<Mould> mouldsOf(const Read& file, Id<GoodsKind> kind, Day on) {
    std::vector<Mould> moulds;
    for (Mould& mould : file.where<Mould>({is("goods_kind", kind)}))
        if (mould.since <= on && (!mould.gone || on < *mould.gone))
            moulds.push_back(std::move(mould));
    return moulds;
}

std::string shadeOfPour(const Read& file, const Pour& pour) {
    std::set<std::string> shades;
    for (const WaxUse& use : file.where<WaxUse>({is("pour", pour.id)}))
        if (const auto block = file.find(use.block)) shades.emplace(word(block->shade));
    return shades.size() == 1 ? *shades.begin() : std::string();
}

/// Since when pours count for what is wanted: its first wish was written down.
Day wishedFrom(const Read& file, const CandleEvenings& plan) {
    Day from = plan.on;
    for (const CandleWish& wish :
         file.where<CandleWish>({isFrom("wanted_by", std::min(plan.on, plan.date.by)),
                                 isUpTo("wanted_by", plan.date.by)}))
        if (!wish.dropped) from = std::min(from, wish.on);
    return from;
}

void addColumns(EveningBoard& board, const CandleEvenings& plan,
                const std::vector<std::pair<Day, std::pair<std::size_t, EveningCandles>>>& poured) {
    std::set<Day> past;
    for (const auto& [day, candles] : poured) past.insert(day);
    while (past.size() > pastEvenings) past.erase(past.begin());
    std::set<Day> days = past;
    std::set<Day> free;
    for (const FreeEvening& evening : plan.evenings)
        if (evening.on < plan.date.by) free.insert(evening.on);
    days.insert(free.begin(), free.end());
    for (const Day day : days) {
        EveningColumn column{day, past.contains(day) && !free.contains(day), false};
        column.finishing = plan.plan.finishing == day;
        board.columns.push_back(column);
    }
    std::array<bool, 7> weekdays{};
    for (const FreeEvening& evening : plan.evenings)
        weekdays.at(std::chrono::weekday(evening.on).iso_encoding() - 1) = true;
    static constexpr const char* names[] = {"Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"};
    for (std::size_t n = 0; n < weekdays.size(); ++n)
        if (weekdays.at(n))
            board.weekdays += (board.weekdays.empty() ? "" : ", ") + std::string(names[n]);
    if (plan.plan.finishing) {
        board.last = plan.plan.finishing;
        board.lastKept = true;
    } else if (!plan.evenings.empty()) {
        for (const FreeEvening& evening : plan.evenings)
            if (evening.on < plan.date.by) board.last = evening.on;
    }
}

/// The candles of a kind in the order they are poured, each with the wax there is for it.
class WaxInTurn {
  public:
    WaxInTurn(const CandleEvenings& plan, std::size_t want) {
        for (const CandlesOfShade& each : plan.needs.fromStock)
            if (each.want == want) m_left.push_back({each.shade, each.count});
    }
    std::vector<EveningCandles> take(std::int64_t count) {
        std::vector<EveningCandles> taken;
        while (count > 0) {
            while (!m_left.empty() && m_left.front().second == 0) m_left.erase(m_left.begin());
            if (m_left.empty()) {
                taken.push_back({EveningCandles::State::NoWax, {}, count});
                break;
            }
            const std::int64_t some = std::min(count, m_left.front().second);
            taken.push_back({EveningCandles::State::Planned, m_left.front().first, some});
            m_left.front().second -= some;
            count -= some;
        }
        return taken;
    }

  private:
    std::vector<std::pair<std::string, std::int64_t>> m_left;
};

void planRow(EveningBoard& board, EveningRow& row, const CandleEvenings& plan) {
    const std::size_t want = *row.want;
    WaxInTurn wax(plan, want);
    for (const PouringEvening& evening : plan.plan.evenings)
        for (const PouringEvening::Pours& pours : evening.pours) {
            if (pours.want != want) continue;
            for (std::size_t n = 0; n < board.columns.size(); ++n) {
                if (board.columns[n].day != evening.day) continue;
                auto& cell = row.cells[n];
                for (EveningCandles& each : wax.take(pours.count)) cell.push_back(std::move(each));
            }
        }
    const std::int64_t ready = plan.kinds[row.kind].ready;
    const CandleNeeds::Kind& needs = plan.needs.kinds[want];
    std::int64_t ofWax = 0;
    for (const CandlesOfShade& each : plan.needs.fromStock)
        if (each.want == want) ofWax += each.count;
    row.byMoulds = needs.possible + ready;
    row.byWax = ofWax + ready;
    row.missing = needs.missing;
    row.cavitiesToAdd = needs.cavitiesToAdd;
    row.evenings = needs.eveningsNeeded;
    row.finish = std::min(plan.plan.poured[want], ofWax) + ready;
}

}  // namespace

EveningBoard eveningBoard(const Read& file, const CandleEvenings& plan) {
    const OneState still(file);
    EveningBoard board;
    const Day from = wishedFrom(file, plan);
    std::vector<std::pair<Day, std::pair<std::size_t, EveningCandles>>> poured;
    for (std::size_t n = 0; n < plan.kinds.size(); ++n)
        for (const Pour& pour : file.where<Pour>({is("goods_kind", plan.kinds[n].kind.id)}))
            if (pour.on >= from && pour.on <= plan.on && pour.good.value() > 0)
                poured.push_back(
                    {pour.on,
                     {n,
                      {EveningCandles::State::Done, shadeOfPour(file, pour), pour.good.value()}}});
    addColumns(board, plan, poured);
    std::size_t want = 0;
    for (std::size_t n = 0; n < plan.kinds.size(); ++n) {
        const CandlesWantedShown& kind = plan.kinds[n];
        EveningRow row;
        row.kind = n;
        row.wanted = kind.wished;
        const auto moulds = mouldsOf(file, kind.kind.id, plan.on);
        if (!moulds.empty()) row.form = formOf(moulds.front());
        for (const Mould& mould : moulds) row.cavitiesInFile += mould.cavities.value();
        row.cells.resize(board.columns.size());
        for (const auto& [day, candles] : poured)
            for (std::size_t at = 0; at < board.columns.size(); ++at)
                if (candles.first == n && board.columns[at].day == day)
                    row.cells[at].push_back(candles.second);
        // The plan leaves out kinds nobody knows the mass of.
        if (kind.massG && *kind.massG > 0) {
            row.want = want++;
            planRow(board, row, plan);
        } else {
            row.byMoulds = kind.ready;
            row.byWax = kind.ready;
        }
        board.rows.push_back(std::move(row));
    }
    return board;
}

std::vector<CandleLimitRow> candleLimits(const CandleEvenings& plan) {
    std::vector<CandleLimitRow> rows;
    CandleLimitRow wax;
    for (const ShadeOfWax& each : plan.stock.wax) wax.have += each.massG;
    wax.need = plan.needs.waxNeededG;
    wax.over = plan.needs.waxShortG > 0 ? -plan.needs.waxShortG : wax.have - wax.need;
    rows.push_back(wax);
    for (std::size_t n = 0; n < plan.wants.size(); ++n) {
        const CandleNeeds::Kind& kind = plan.needs.kinds[n];
        if (kind.missing == 0) continue;
        CandleLimitRow moulds;
        moulds.what = CandleLimit::Moulds;
        moulds.name = plan.wants[n].what;
        moulds.have = static_cast<double>(kind.possible);
        moulds.need = static_cast<double>(plan.wants[n].count);
        moulds.over = -static_cast<double>(kind.missing);
        moulds.evenings = kind.eveningsNeeded;
        rows.push_back(moulds);
    }
    std::vector<std::string> sizes;
    for (const CandleWanted& want : plan.wants)
        if (want.wickM > 0 && std::find(sizes.begin(), sizes.end(), want.wick) == sizes.end())
            sizes.push_back(want.wick);
    for (const std::string& size : sizes) {
        CandleLimitRow wick;
        wick.what = CandleLimit::Wick;
        wick.name = size;
        const auto have = plan.stock.wickM.find(size);
        if (have != plan.stock.wickM.end()) wick.have = have->second;
        std::set<double> lengths;
        for (const CandleWanted& want : plan.wants)
            if (want.wick == size) {
                wick.pieces += want.count;
                wick.need += static_cast<double>(want.count) * want.wickM;
                lengths.insert(want.wickM);
            }
        if (lengths.size() == 1) wick.each = *lengths.begin();
        const auto left = plan.needs.wickLeftM.find(size);
        wick.over = left != plan.needs.wickLeftM.end() ? left->second : wick.have - wick.need;
        rows.push_back(wick);
    }
    return rows;
}

WithThisWax withThisWax(const CandleEvenings& plan, const CandleNeeds& needs) {
    WithThisWax with;
    with.counts.resize(plan.wants.size());
    for (const CandlesOfShade& each : needs.fromStock) with.counts[each.want] += each.count;
    for (const ShadeOfWax& each : needs.waxLeft) with.leftG += each.massG;
    return with;
}

}  // namespace combwright
