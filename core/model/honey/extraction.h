// A run of the extractor: boxes in by weight, frames spun by load, honey out by bucket. A hive's
// yield is never typed: it is computed from these, and keeps saying how well it is known.
#pragma once

#include "core/model/describe.h"
#include "core/model/frames/box.h"

namespace combwright {

struct Equipment;

/// One lot through the honey room: honey handled together. On screen: a run.
struct Extraction {
    static constexpr std::string_view table = "extraction";
    Id<Extraction> id;
    Name name;  ///< the lot's name, unique in the file
    Day on;
    std::optional<Id<Yard>> yard;  ///< none: from several yards
    std::optional<Instant> begun;
    std::optional<Instant> ended;
    std::optional<Temperature> room;
    std::optional<Share> damp;  ///< relative humidity of the room
    std::optional<Known<Mass>> cappings;
    std::optional<Known<Mass>> scrapings;
    std::optional<Day> closed;
    std::string note;
    static const Fields& fields();
};

/// A box in a run. Without hive its tag was lost: it keeps a line of its own until it is named.
struct ExtractionBox {
    static constexpr std::string_view table = "extraction_box";
    Id<ExtractionBox> id;
    Id<Extraction> extraction;
    std::optional<Id<Box>> box;
    std::optional<Id<Hive>> hive;  ///< whose honey it is; none where nobody knows
    std::string knownAs;           ///< what is on the tag, or what is known instead
    std::optional<Id<FrameKind>> frameKind;
    std::optional<Count> frames;
    std::optional<Known<Share>> filled;
    std::optional<Known<Mass>> gross;
    std::optional<Known<Mass>> wet;
    static const Fields& fields();
};

enum class Ran { Smooth, Walked, Stopped };
template <>
struct Choices<Ran> {
    static constexpr auto words = std::to_array<std::string_view>({"smooth", "walked", "stopped"});
};

struct SpinLoad {
    static constexpr std::string_view table = "spin_load";
    Id<SpinLoad> id;
    Id<Extraction> extraction;
    Count number;
    Day on;
    std::optional<Minutes> minutes;
    std::optional<Ran> ran;
    std::optional<Count> rpm;
    std::optional<Mass> startOffset, endOffset, doubt;  ///< as it was loaded
    std::optional<Id<Equipment>> machine;               ///< none: the only one, or nobody said
    std::optional<Instant> begun;                       ///< when it began to turn
    std::optional<Minutes> uncapping;  ///< what its frames took at the knife, all hands together
    static const Fields& fields();
};

/// So many frames of a box went into a load.
struct LoadBox {
    static constexpr std::string_view table = "load_box";
    Id<LoadBox> id;
    Id<SpinLoad> load;
    Id<ExtractionBox> box;
    Count frames;
    static const Fields& fields();
};

/// What is told of honey beside its mass and water.
struct HoneyTraits {
    std::string strainer;  ///< what it ran through: "double sieve", "200 µm cloth"
    std::string colour;
    std::optional<Length> pfund;  ///< measured on the Pfund scale, mm
    std::string place;            ///< where it stands
    std::string taste;            ///< a word for it; never a claim of flowers
    static const Fields& fields();
};

struct Bucket {
    static constexpr std::string_view table = "bucket";
    Id<Bucket> id;
    Id<Extraction> extraction;
    Name mark;
    std::optional<Known<Mass>> net;  ///< honey in it: weighed, or by the level it stands at
    std::optional<WaterContent> water;
    std::optional<bool> lidded;
    std::string note;
    HoneyTraits traits;
    std::optional<Id<Equipment>> kind;  ///< which sort of bucket: what it holds
    static const Fields& fields();
};

/// A share as it stood when the run was closed; what differs later is "revised".
struct ClosingShare {
    static constexpr std::string_view table = "closing_share";
    Id<ClosingShare> id;
    Id<Extraction> extraction;
    std::optional<Id<Hive>> hive;  ///< none: the line of the unknown boxes
    Mass mass;
    How how = How::Unknown;
    static const Fields& fields();
};

}  // namespace combwright
