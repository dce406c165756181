// Medicines and treatments on a day: what is left of each pack, what is in which hive and when it
// comes out, when supers may go back, and which boxes were on meanwhile and where they are now.
// Nothing says more than the label the keeper wrote down; what is published stands beside it.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/catalogue/colony_tables.h"
#include "core/model/health/medicine.h"
#include "core/model/honey/extraction.h"
#include "core/model/season_info.h"
#include "core/places/explain/explained.h"
#include "core/storage/queries/treatments.h"
#include "core/storage/rows.h"
#include "core/trade/colony/waiting_days.h"

namespace combwright {

struct MedicineStock {
    Medicine medicine;
    MedicineUse use;
    bool expired = false;  ///< past its last day on the day asked
    /// What is published for its active ingredient in the region chosen: a prompt beside the label.
    std::optional<PublishedWait> published;
};
/// Bought by that day, the newest first.
std::vector<MedicineStock> medicinesOn(const Read& file, Day on);

/// A treatment with the names it is told by: the hive where the colony lives on the day asked, and
/// its yard, as they were then.
struct TreatmentLine {
    Treatment treatment;
    Medicine medicine;
    Hive hive;
    Yard yard;
    /// When it comes out by the label; nothing where nobody wrote the days down.
    std::optional<DueOut> dueOut;
    /// When supers may go back; nothing where it is in still, or the days are not known.
    std::optional<Day> supersBack;
    /// While it is in: when supers may go back at the earliest, the first day it may come out and
    /// the label's days to wait after it.
    std::optional<Day> supersEarliest;
    bool supersMayStay = false;
    bool boxWasOn = false;  ///< of a run: a box of it stood there meanwhile
};
/// All that were in a hive on some day from `from` to `to`, by day and hive, named as on `to`.
std::vector<TreatmentLine> treatmentList(const Read& file, std::optional<Id<Yard>> yard, Day from,
                                         Day to);
/// Those that are in on a day; the one that went in first comes first.
std::vector<TreatmentLine> runningTreatments(const Read& file, std::optional<Id<Yard>> yard,
                                             Day on);
/// The same of one hive.
std::vector<TreatmentLine> runningIn(const Read& file, Id<Hive> hive, Day on);

/// Those that are in the colony of one hive, or hang in a hive nobody lives in.
std::vector<TreatmentLine> runningIn(const Read& file, Id<Hive> hive, Day on);

/// Those that are out and keep supers off on a day still; where nobody wrote down how long to wait,
/// for `unknownWaitDays`.
std::vector<TreatmentLine> waitingTreatments(const Read& file, std::optional<Id<Yard>> yard,
                                             Day on);

/// What keeps supers off a hive.
struct SupersBack {
    TreatmentLine line;
    std::optional<Day> from;  ///< the first day they may go back; none: it is in, or nobody knows
};
/// What keeps supers off a hive on a day; nothing where nothing does. Where nobody wrote down how
/// long to wait, it is asked about for `unknownWaitDays` after it was out.
std::optional<SupersBack> supersBackOf(const Read& file, Id<Hive> hive, Day on);
/// No label asks for longer. Planning assumption, no source; the longest printed is 14 days.
inline constexpr int unknownWaitDays = 60;

/// A super that stands on a hive since a day on which a medicine kept supers off it, and that
/// nobody holds back.
struct SuperTooEarly {
    Box box;
    std::string name;
    Day wentOn;
    SupersBack back;  ///< what kept supers off that day
};
/// Said until it is off the hive or held, however long ago that was: what it took in it has in it.
std::vector<SuperTooEarly> supersTooEarly(const Read& file, Id<Hive> hive, Day on);
/// Of every hive of a yard, or of all.
std::vector<SuperTooEarly> supersTooEarlyIn(const Read& file, std::optional<Id<Yard>> yard, Day on);

/// A box that was on while a medicine was in, and where it is now.
struct TreatedBox {
    Box box;
    std::string name;
    Hold hold;
    std::optional<TreatmentLine> line;  ///< none: held by hand
};
/// Whose hold stands on a day, the first held first.
std::vector<TreatedBox> treatedBoxes(const Read& file, Day on);

/// The boxes of a run that are held because of a medicine and nobody cleared since.
std::vector<TreatedBox> treatedInRun(const Read& file, Id<Extraction> run);
/// Every treatment of the hives the boxes of a run stood on, in the year up to its day: what a lot
/// inherits.
std::vector<TreatmentLine> treatmentsBehind(const Read& file, Id<Extraction> run);

/// Whether the warmth of a day suits the label; nothing where it says nothing.
std::optional<InWindow> suits(const Medicine& medicine, double warmthC);
/// The same by what is published for its active ingredient: only where the label of the pack was
/// not written down.
std::optional<InWindow> suitsPublished(const MedicineStock& stock, double warmthC);

/// How what is left, when it comes out and when supers go back come about.
std::vector<Explained> explainTreatments(const Read& file, std::optional<Id<Yard>> yard, Day on);

}  // namespace combwright
