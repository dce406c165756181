// A filling as a sheet: which honey, how many jars of which kind, what it took and lost, what the
// scale said against what the label promises, what is left of it, what is held and what was said.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/model/honey/telling.h"
#include "core/storage/queries/goods_shelf.h"
#include "core/storage/queries/vessel_holds.h"
#include "core/storage/queries/vessels.h"
#include "core/support/working.h"

namespace combwright {

/// Jars of one kind in a filling, and what the scale said of them.
struct FilledJars {
    BottledJars line;
    GoodsKind kind;
    std::optional<bool> meanHolds;         ///< none: nothing was weighed, or nobody knows the net
    std::optional<double> deficitG;        ///< what a jar may lack; none: no table for the place
    std::optional<bool> lightestShort;     ///< lacks more than that
    std::optional<bool> lightestFarShort;  ///< lacks more than twice that: never to be sold
    std::string table;                     ///< whose tolerances: "76/211/EEC"
    FillingLeft left;                      ///< on the shelf of that kind
};

struct FillingSheet {
    Bottling bottling;
    Vessel vessel;
    std::string from;  ///< what the vessel is called
    std::vector<FilledJars> jars;
    Drawn drawn;
    std::optional<Mass> inJars;
    std::vector<Hold> holds;  ///< its own first, then those it inherits
    TreatedShare treated;
    std::vector<Complaint> complaints;
};

FillingSheet fillingSheet(const Read& file, const Bottling& bottling, Day on);
/// Every filling by that day, the newest first.
std::vector<FillingSheet> fillings(const Read& file, Day on);

/// Judges a mean and the lightest of some jars. Adds how to `working`.
void judgeNet(FilledJars& jars, const std::string& region, Working* working = nullptr);

}  // namespace combwright
