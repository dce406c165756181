// The evenings until candles are wanted as a board: a row a kind, a column an evening, and in each
// field the candles that were poured or will be, of which wax, and which of them there is no wax
// for. Below it what is short first.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/places/wax_bench/candle_evenings.h"

namespace combwright {

/// What a candle looks like, as far as its mould tells.
enum class CandleForm { Domed, Taper, Pillar };

/// Candles of one kind on one evening that are alike.
struct EveningCandles {
    enum class State { Done, Planned, NoWax };
    State state = State::Planned;
    std::string shade;  ///< empty: nobody knows, or several
    std::int64_t count = 0;
    bool operator==(const EveningCandles&) const = default;
};

struct EveningColumn {
    Day day;
    bool past = false;       ///< poured before that day
    bool finishing = false;  ///< kept for trimming, wicks and labels
};

struct EveningRow {
    std::size_t kind = 0;             ///< index into the kinds wanted
    std::optional<std::size_t> want;  ///< into what the plan reckons with; none: mass not known
    CandleForm form = CandleForm::Domed;
    std::int64_t cavitiesInFile = 0;
    std::vector<std::vector<EveningCandles>> cells;  ///< one for each column
    std::int64_t wanted = 0;
    std::int64_t byMoulds = 0;  ///< with what is ready
    std::int64_t byWax = 0;     ///< with what is ready
    std::int64_t finish = 0;    ///< to trim, wick and label: what moulds and wax allow
    std::int64_t missing = 0;   ///< that the moulds do not give
    std::optional<std::int64_t> cavitiesToAdd;
    std::optional<std::int64_t> evenings;  ///< it takes
};

struct EveningBoard {
    std::vector<EveningColumn> columns;
    std::vector<EveningRow> rows;
    std::optional<Day> last;  ///< the evening for finishing: the one kept, else the last free one
    bool lastKept = false;
    std::string weekdays;  ///< "mon, wed, fri": of the free evenings
};

EveningBoard eveningBoard(const Read& file, const CandleEvenings& plan);

/// One thing that may be short, in grams, pieces or metres.
struct CandleLimitRow {
    CandleLimit what = CandleLimit::Wax;
    std::string name;  ///< the kind, or the size of the wick
    double have = 0;
    double need = 0;
    double over = 0;                       ///< below 0: short
    std::optional<std::int64_t> evenings;  ///< Moulds: needed
    std::int64_t pieces = 0;               ///< Wick: of so many,
    double each = 0;                       ///< metres for one; 0 where kinds differ
};
/// Wax first, then moulds that do not suffice, then each wick.
std::vector<CandleLimitRow> candleLimits(const CandleEvenings& plan);

/// What the keeper's order gives of each kind in the order wanted, and the wax left.
struct WithThisWax {
    std::vector<std::int64_t> counts;
    double leftG = 0;
};
WithThisWax withThisWax(const CandleEvenings& plan, const CandleNeeds& needs);

}  // namespace combwright
