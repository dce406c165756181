// What was asked for in the one box that finds anything: records by their marks and words, days as
// one says them, and where each is shown. The window adds its places and deeds, the command line
// prints the same.
#pragma once

#include <QString>
#include <cstdint>
#include <optional>
#include <string_view>
#include <utility>
#include <vector>

#include "core/model/yard/yard.h"
#include "core/storage/find/find_cache.h"
#include "core/storage/rows.h"

namespace combwright {

/// One record that was found.
struct FindHit {
    FindKind kind = FindKind::Note;
    std::string_view table;
    std::int64_t row = 0;
    std::optional<Day> on;
    QString title;        ///< its mark, or the marks of what it is of
    QString context;      ///< what it is, when, and its own words, in one line
    bool byMark = false;  ///< it is called just so
};

/// Those of one kind, the best first.
struct FindGroup {
    FindKind kind = FindKind::Note;
    QString title;
    std::vector<FindHit> hits;
    bool more = false;
};

/// Groups with something called just so come first.
std::vector<FindGroup> findRecords(FindCache& cache, const QString& typed, std::size_t mostOfKind);

/// The day meant by "9 jun", "last tuesday", "2026-06-09"; nothing for what is rather a word.
std::optional<Day> findDay(const QString& typed, Day today);
/// What is written down of that day.
std::vector<FindGroup> findOnDay(FindCache& cache, Day day, std::size_t mostOfKind);

/// Where a record is shown.
struct FindLead {
    enum class Where { Today, Yard, Pull, HoneyRoom, WaxBench, Storeroom, SeasonBook };
    enum class Page { Front, Story, Health, Stores, Sheet, Honey, Jars, Fair };
    Where where = Where::Today;
    Page page = Page::Front;
    std::optional<Id<Yard>> yard = std::nullopt;
    std::optional<Id<Hive>> hive = std::nullopt;
    std::optional<Day> on = std::nullopt;  ///< as it was on that day; today, when left out
    /// The record and those it names, by table and number: the place goes to the first it lists.
    std::vector<std::pair<std::string_view, std::int64_t>> records = {};
};

/// Nothing where the record is gone.
std::optional<FindLead> findLead(const Read& file, const FindHit& hit, Day today);

}  // namespace combwright
