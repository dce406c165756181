// The year's account beside the honey: colonies through the year, winters, wax, candles, what went
// out of the door, comb and boxes. A section is a few lines of name and figure, each with the
// records it is made of and how it came about; the window, paper, a file and the command line show
// the same lines.
#pragma once

#include <QString>
#include <optional>
#include <vector>

#include "core/places/explain/explained.h"
#include "core/places/goods/sales.h"
#include "core/places/season_book/colonies_of_year.h"
#include "core/places/wax_bench/wax_bench.h"

namespace combwright {

/// One of the records a figure is made of.
struct AccountRecord {
    std::optional<Day> on;
    QString what;
    QString amount;
    QString note;
};

struct AccountLine {
    QString name;
    QString note;    ///< muted, below the name
    QString figure;  ///< "50.0", "− 1", "1 of 5"
    QString unit;
    std::optional<How> how;
    bool strong = false;
    bool sums = false;  ///< closes what stands over it
    std::vector<AccountRecord> records;
    Working working;
};

struct AccountSection {
    QString id;  ///< for the name of a file: "colonies"
    QString title;
    QString note;  ///< what holds for all of it
    std::vector<AccountLine> lines;
};

/// Standing on 1 May, who came, who left and how, who went into winter. Without lines before
/// 1 May, or where nobody wrote down any colony.
AccountSection coloniesSection(const ColoniesOfYear& colonies);
/// What the winter before took, and the one that followed, yard by yard, of all together and as the
/// mean of the yards.
AccountSection winterSection(const ColoniesOfYear& colonies, int year);
/// Raw wax, clean blocks, where they went, what is missing, and wax on a hundred of honey.
AccountSection waxSection(const Read& file, const WaxYear& wax, Day until);
/// Candles poured in a year, by kind.
AccountSection candlesSection(const Read& file, int year, Day until);
/// Sold, given, kept and broken, by kind, with what was paid.
AccountSection salesSection(const Read& file, const Sales& sales);
/// Comb and boxes that came and went, and what the year's stock-takes counted.
AccountSection equipmentSection(const Read& file, int year, Day until);
/// What is short for the spring after the year, as plan and stock stand today, each with what is
/// there of it; of another spring a note that it cannot be told.
AccountSection shortSection(const Read& file, int year, Day today);

/// What the runs of each year brought, and what is noted from paper beside it, the newest first.
AccountSection cropYearsSection(const Read& file, Day today);
/// How many stood on 1 May of each year, and what the winter before took.
AccountSection colonyYearsSection(const Read& file, Day today);

/// What stands on one page of the account.
enum class AccountPart { Colonies, Goods, Years };
std::vector<AccountSection> accountSections(const Read& file, AccountPart part, int year,
                                            Day today);

/// "50.0 kg w": a line's figure as it is read.
QString accountFigure(const AccountLine& line);
/// How a line came about.
Explained explainedLine(const AccountSection& section, const AccountLine& line);

}  // namespace combwright
