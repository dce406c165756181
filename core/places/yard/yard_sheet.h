// The yard sheet of a yard on a day: for each hive what was last seen, what is typed for today,
// what follows from it. Window, print and command line show this one answer.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/model/yard/queen.h"
#include "core/model/yard/sheet_line.h"
#include "core/places/yard/queens.h"
#include "core/storage/queries/yards.h"
#include "core/trade/colony/queen_dates.h"

namespace combwright {

enum class MindKind {
    QueenWait,   ///< a young queen is waited for: shut until, look from
    CellsSeen,   ///< queen cells were seen, whether one was left is not said
    MitesOver,   ///< a wash at the keeper's line or over it, or a grave fall; stands until answered
    Mites,       ///< what else was counted since the hive was opened last
    Light,       ///< hefted light: feed
    NoEggs,      ///< looked for eggs, none
    NotOpened,   ///< not opened, last opened on
    ComeBack,    ///< the keeper said so
    SuperOn,     ///< supers were put on
    MedicineIn,  ///< a medicine is in: `about`, to come out between `from` and `to`
    SupersNotYet,  ///< out, but supers may not go back before `from`; without it nobody knows when
    FoundDead,     ///< and its end is not written down yet
    NobodyLives,   ///< a colony lived there once, and none does that day
};

/// Something to keep in mind of a hive.
struct Mind {
    MindKind kind;
    Day since;  ///< the day it comes from
    std::optional<QueenDates> queen = std::nullopt;
    std::optional<double> mitesPer100 = std::nullopt;
    std::optional<Known<Count>> mites = std::nullopt;
    std::optional<Known<Count>> bees = std::nullopt;
    bool supersOn = false;  ///< over the line while supers are on: the label decides
    int count = 0;          ///< of SuperOn: boxes; of a board: the days it lay, 0 where nobody said
    bool noBrood = false;   ///< of NoEggs: no brood of any age either
    std::optional<Known<Count>> cells = std::nullopt;  ///< of CellsSeen
    std::optional<CellState> cellState = std::nullopt;
    std::optional<Known<Count>> droneCells = std::nullopt;  ///< opened, of a count in drone brood
    std::optional<double> linePer100 = std::nullopt;        ///< the line in force
    FindingMethod method = FindingMethod::Wash;
    std::string about = {};
    std::optional<Day> from = std::nullopt;
    std::optional<Day> to = std::nullopt;
    std::optional<QueenStep> step = std::nullopt;  ///< what the wait began with
};

/// A value seen on a day that may be older than the last look.
template <class T>
struct LastKnown {
    Day on;
    T value;
};

struct YardSheetRow {
    Hive hive;                      ///< with the excluder where it lay on the day
    std::vector<Box> boxes;         ///< from the floor up, as they stood at the end of the day
    std::int64_t supersNow = 0;     ///< at the end of the day
    std::int64_t supersBefore = 0;  ///< before today's line
    std::int64_t supersPutOn = 0;   ///< of those standing, put on that day however written
    std::optional<DatedInspection> last;  ///< the newest look before the day that opened the hive
    /// Each the newest that was recorded before the day, with its own day.
    std::optional<LastKnown<bool>> lastEggs;
    std::optional<LastKnown<Known<Frames>>> lastBrood;
    std::optional<LastKnown<Known<Frames>>> lastStores;
    std::optional<Inspection> today;
    SheetLine line;  ///< today's, with the line for all in it
    std::vector<Mind> minds;
    std::optional<HeadedColony> lives;  ///< who lives there that day
    std::optional<Day> foundDead;       ///< by its newest look: it lives in the records alone
    /// The day its queen is written down as gone; none while a young one is waited for.
    std::optional<Day> queenlessSince;
    std::optional<DatedInspection> lastYear;  ///< the look nearest to this day a year ago
};

/// A mean over the hives that had a figure: never over blanks.
struct MeanOf {
    double value = 0;
    int n = 0;
    How how = How::Counted;
};

/// Something to take along on the next visit.
struct TakeAlong {
    enum class What { Feed, WashJar, Super, EggFrame, TreatmentDecision, LeaveShut } what;
    int count = 0;
    std::vector<std::string> hives;
};

struct YardSheet {
    Yard yard;
    Day on;
    std::optional<Visit> visit;
    std::vector<YardSheetRow> rows;  ///< of the hives that stood there that day
    int youngerHives = 0;            ///< set up after that day
    std::optional<Day> lastVisit;    ///< before this day
    int colonies = 0;                ///< that lived there that day, none that was found dead
    int queenless = 0;               ///< of them, those whose queen is gone and who wait for none
    int waiting = 0;                 ///< of them, those who wait for a young queen
    int opened = 0;
    int notOpened = 0;
    std::vector<std::string> whyNotOpened;  ///< the notes of the hives not opened, each once
    std::int64_t supersStanding = 0;
    std::int64_t supersPutOn = 0;
    std::optional<std::int64_t> supersInStore;  ///< of the yard's usual super, that day
    std::string superName;
    std::optional<MeanOf> brood;
    std::optional<MeanOf> stores;
    std::vector<TakeAlong> takeAlong;
};

/// The days of patience after a queen has come out that are in force in a yard.
QueenPatience patienceOn(const Read& file, Id<Yard> yard, Day on);
/// What a look says about a queen cell that was left.
QueenEvent cellEvent(const Seen& seen);

/// What a printed yard sheet carries so that the visit is found again when its pencil marks are
/// typed in: "Y2-270616". Typed where a day is asked for.
std::string visitCode(Id<Yard> yard, Day day);
struct VisitMeant {
    Id<Yard> yard;
    Day on;
};
std::optional<VisitMeant> visitOfCode(std::string_view code);

/// Throws StorageError. A yard that is not there gives an empty sheet.
YardSheet yardSheet(const Read& file, Id<Yard> yard, Day on);
/// Reads one hive of a sheet anew, after its line was written, and sums the sheet up again: what
/// such a line may have done to other hives is not read. False where the hive has no row there.
/// Throws StorageError.
bool readHiveAnew(const Read& file, YardSheet& sheet, Id<Hive> hive);

}  // namespace combwright
