// The blocks of the season book, as they stand in the window, on paper and in an exported file: one
// source for all three, so that they cannot differ.
#pragma once

#include <QStringList>
#include <cstdint>
#include <map>
#include <vector>

#include "core/places/pages/page.h"
#include "core/places/pages/season_book/reckoned_words.h"
#include "core/places/season_book/reckoned_got.h"
#include "core/places/season_book/season_yield.h"
#include "core/places/season_book/yield_records.h"

namespace combwright {

/// Marks for a scale from 0 to `top`, at round numbers, at most `most` of them; the last one names
/// the unit where one is given.
std::vector<ScaleMark> scaleMarks(double top, int most, const QString& unit = {});

/// The scale of all bars of a season.
struct BarScale {
    double topGrams = 1000;
    std::vector<ScaleMark> marks;
};
BarScale barScale(const SeasonYield& season);

/// "+ 6.5", "− 3.7"; empty where either is not known, whole where either is only by eye.
QString changeText(const std::optional<Mass>& now, const std::optional<Mass>& before, How how);
/// "22.9 per producing hive, 18.3 per hive on 1 May"; the first alone before anybody stood there,
/// the second alone where nobody knows how many gave honey (`producing` 0). `brief` is "22.9
/// producing, 18.3 on 1 May".
QString averagesText(Mass total, How how, int producing, int standing, bool brief = false);

TableBlock yieldBlock(const SeasonYield& season);
TableBlock runsBlock(const SeasonYield& season);
/// The steps of a year and of those beside it, the year itself first.
StepsBlock timelineBlock(const SeasonYield& season, const std::vector<SeasonYield>& beside);
TableBlock recordsBlock(const YieldRecords& records);

/// "H1, 2027": what the records are of.
QString recordsTitle(const YieldRecords& records);

/// The foot of the yields: revisions with their old values, boxes by difference, what is from
/// paper. Numbered are those a row of yieldBlock points at.
QStringList yieldNotes(const SeasonYield& season);

/// "¹", "¹ ³": the marks of the footnotes that speak of a hive, or of a yard's boxes without one.
struct FootnoteMarks {
    std::map<std::int64_t, QString> ofHive;
    std::map<std::int64_t, QString> ofYard;
    static QString of(const std::map<std::int64_t, QString>& marks, std::int64_t id) {
        const auto found = marks.find(id);
        return found == marks.end() ? QString() : found->second;
    }
};
FootnoteMarks footnoteMarks(const SeasonYield& season);

/// How a hive's figure is known: its part by weighed boxes, and the total by eye, told apart.
QString howKnownText(const HiveYield& hive, bool wholeFromPaper);

/// A block as rows of text for a file: masses in the shown unit, named in the heading, and grams in
/// a column of their own; points are decimal points; an empty cell is unknown.
struct HarvestTable {
    QStringList head;
    std::vector<QStringList> rows;
};
HarvestTable yieldTable(const SeasonYield& season);
HarvestTable timelineTable(const SeasonYield& season, const std::vector<SeasonYield>& beside);
HarvestTable reckonedTable(const ReckonedAndGot& reckoned);
HarvestTable recordsTable(const YieldRecords& records);

}  // namespace combwright
