// The way of honey both ways: what is in this jar, and who else has it; told at the telephone with
// what cannot be known.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/model/honey/telling.h"
#include "core/places/trace/comb_trace.h"
#include "core/places/trace/trace_back.h"
#include "core/places/trace/trace_forward.h"
#include "core/storage/queries/vessel_holds.h"

namespace combwright {

/// What is asked for; exactly one is set.
struct TraceOf {
    std::optional<Id<Bucket>> bucket = {};
    std::optional<Id<Lot>> lot = {};
    std::optional<Id<Bottling>> bottling = {};
    std::optional<Id<Extraction>> run = {};
    std::optional<Id<Hive>> hive = {};
    std::optional<Id<Box>> box = {};
    std::optional<Id<Treatment>> treatment = {};
    std::optional<Id<HiveProject>> comb = {};
};

/// A hold on the honey, and what it was put on.
struct TraceHold {
    enum class On { Honey, Filling, Box, Hive, Frame, Nothing };
    Hold hold;
    On on = On::Nothing;
    std::string name;
};

TraceHold tracedHold(const Read& file, Hold hold);

struct Trace {
    TraceOf of;
    std::string name;  ///< "Summer blend", "L27-3-1"
    Day on;
    std::optional<TraceBack> back;  ///< of honey only: buckets, lots, jars
    TraceForward forward;           ///< of a filling that of all its bucket or lot: who else has it
    std::vector<TraceHold> holds;   ///< that stand on the honey on the day, its own and inherited
    TreatedShare treated;
    std::vector<TraceUnknown> unknown;  ///< of both ways, each once
    std::vector<KeptSheet> kept;        ///< as it was printed before, the oldest first
    std::optional<CombTrace> comb;      ///< of comb jars, which go through no bucket
};

/// As it was known at the end of a day: what happened later, and what was put right later, is not
/// in it. Nothing where there is no such thing, or was none that day yet.
std::optional<Trace> trace(const Read& file, const TraceOf& of, Day on);
/// Since when it can be traced: honey and what is given from its day on, hives and boxes always.
/// Nothing where there is no such thing.
std::optional<Day> tracedSince(const Read& file, const TraceOf& of);

/// What a trace sheet is kept under: its kind and of what.
inline constexpr std::string_view traceSheet = "trace";
std::string traceSubject(const Read& file, const TraceOf& of);

/// The newest filling up to a day, else the newest lot, else the newest run: what a trace sheet is
/// of where nobody says more. Nothing in a file without honey.
std::optional<TraceOf> newestTraced(const Read& file, Day on);

/// Everything a year's honey is traced by: each filling since New Year up to `on`, by its code;
/// then each run of the year no jar of which was filled yet, so that no run is passed over.
std::vector<TraceOf> tracedOfYear(const Read& file, int year, Day on);

}  // namespace combwright
