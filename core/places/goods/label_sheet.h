// Labels of a filling on sheets one buys: which text stands on them, where each lies on the paper,
// and what a keeper is reminded of. Reminders come from a table with its sources; none of it is
// legal advice.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/catalogue/honey_tables.h"
#include "core/model/honey/bottling.h"
#include "core/model/honey/telling.h"
#include "core/model/wax/hive_goods.h"
#include "core/storage/rows.h"
#include "core/support/result.h"

namespace combwright {

struct LabelsAsked {
    Id<Bottling> bottling;
    std::optional<Id<GoodsKind>> kind = {};  ///< none: every kind of the filling
    std::string grid = "a4-3x7";
    int startCell = 1;  ///< 1 is the first of the sheet: those before it are used up
    std::optional<std::int64_t> count = {};    ///< of each kind; none: one a jar
    std::optional<Id<HiveProject>> comb = {};  ///< of comb jars, in place of a filling
};

/// What stands on one label.
struct JarLabel {
    std::string kind;
    std::optional<Mass> net;
    std::string code;
    std::optional<Day> bestBefore;
    std::string producer;
    std::string address;
    std::string origin;
    std::string flower;  ///< only with the keeper's statement
    std::string more;
    std::optional<double> ounces;  ///< where the region wants them beside grams
};

/// A label in its cell; millimetres from the sheet's upper left corner, moved by the offset.
struct LabelAt {
    int sheet = 0;
    int cell = 1;  ///< from 1, row by row
    double leftMm = 0;
    double topMm = 0;
    std::size_t label = 0;  ///< of `labels`
};

/// Whether what a reminder asks for stands on the label.
enum class LabelWordState { There, Lacks, Yours };
struct LabelReminder {
    PublishedLabelWord word;
    LabelWordState state = LabelWordState::Yours;
};

struct LabelSheet {
    Bottling bottling;  ///< of comb jars no more than its code and day
    PublishedLabelGrid grid;
    PaperMeasures paper{};
    double rightMm = 0;  ///< what the printer is off, taken back
    double downMm = 0;
    std::vector<JarLabel> labels;
    std::vector<LabelAt> placed;
    int sheets = 0;
    std::vector<LabelReminder> reminders;  ///< the infant caution always first
    std::string flowerGrounds;             ///< why the flower may be named, in the keeper's words
    bool textSet = false;                  ///< somebody wrote what stands on labels
};

/// Most labels printed at once.
inline constexpr std::int64_t mostLabels = 10000;

/// Refused with NotFound for a filling or kind that is not there, with NotAChoice for a grid no
/// table has, with OutOfRange for a start cell the sheet has not or a count beyond 1 to 10,000.
Result<LabelSheet> labelSheet(const Read& file, const LabelsAsked& asked, Day on);

/// Every cell of a grid empty, with the offset taken back: the page to calibrate by.
Result<LabelSheet> emptyLabelSheet(const Read& file, const std::string& grid, Day on);

/// Grids of a paper, "A4" or "Letter"; all of them for an empty word.
std::vector<std::string> labelGridsOf(const std::string& paper);

/// The grid whose offset was measured last, else 3 by 7 of A4, or 3 by 10 of Letter where pounds
/// are shown.
std::string usualLabelGrid(const Read& file, Day on);

/// The newest filling up to a day.
std::optional<Id<Bottling>> newestFilling(const Read& file, Day on);

}  // namespace combwright
