// From honey back to where it came from: the blends it went through, the buckets, the runs, the
// hives with their grams, the boxes and what was given to the hives while they were on. Honey in a
// bucket is its run's mixture and a blend is taken as mixed through; that is said.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/model/honey/bottling.h"
#include "core/places/health/treatments.h"
#include "core/places/trace/trace_gaps.h"
#include "core/storage/queries/revisions.h"
#include "core/storage/queries/vessels.h"

namespace combwright {

/// What one hive gave of the honey that is traced.
struct TraceHive {
    std::optional<Id<Hive>> hive;  ///< none: of boxes whose hive nobody knows
    std::string mark;              ///< as it was called on the day of the run
    double part = 0;               ///< of the honey of its run, 0 to 1
    std::optional<Mass> mass;      ///< none where the mass of all is not known
    How how = How::Unknown;
    std::optional<Mass> atClosing;  ///< where it was another when the run was closed
};

struct TraceBox {
    ExtractionBox entry;
    std::string mark;
    std::string hive;       ///< empty: nobody knows
    std::optional<Day> on;  ///< since when it stood on that hive, the last time before the run
    std::optional<Day> off;
};

/// A treatment of a hive behind the honey, in the year before the run.
struct TraceMedicine {
    TreatmentLine line;
    std::string hive;  ///< as it was called when it was given
    int boxesOn = 0;   ///< boxes of the run that were on meanwhile
    int boxes = 0;     ///< of so many boxes of the run
};

struct TraceRun {
    Extraction run;
    std::string yard;
    double part = 0;           ///< of the honey traced, 0 to 1
    std::optional<Mass> mass;  ///< of the honey traced
    How how = How::Unknown;
    std::vector<TraceHive> hives;  ///< add up to `mass` to the gram; the unknown line last
    std::vector<TraceBox> boxes;
    std::vector<TraceMedicine> medicines;
    bool revised = false;  ///< a tag or weight was put right after the run was closed
    std::vector<RunRevision> revisions;
};

/// A bucket, or a lot that goes no further back.
struct TraceSource {
    Vessel vessel;
    std::string name;
    double part = 0;
    std::optional<Mass> mass;  ///< all of them add up to the honey traced, to the gram
    How how = How::Unknown;
};

/// A blend on the way.
struct TraceBlend {
    Lot lot;
    std::vector<VesselPart> parts;
    std::vector<std::string> names;  ///< of the parts
};

struct TraceBack {
    std::optional<Mass> mass;  ///< of the honey traced
    How how = How::Unknown;
    std::vector<TraceBlend> blends;  ///< the nearest first
    std::vector<TraceSource> sources;
    std::vector<TraceRun> runs;  ///< by day
    std::vector<TraceUnknown> unknown;
};

/// The way back of all that came into a bucket or lot up to a day, as it was known at its end.
TraceBack traceBack(const Read& file, const Vessel& vessel, Day on);
/// The way back of what the jars of a filling hold; of all it took, where that is not known.
TraceBack traceBack(const Read& file, const Bottling& bottling, Day on);

}  // namespace combwright
