// Jars filled out of a bucket or a lot, under one code: which honey, how many of which kind, what
// was lost, what the scale said.
#pragma once

#include "core/actions/action.h"
#include "core/model/honey/bottling.h"
#include "core/storage/queries/vessels.h"

namespace combwright {

/// Fills jars from one bucket or lot. `jars` and `spoiled` as goods_line.h: "197x454 g, 3x227 g";
/// `weighed` is honey alone in grams, jar by jar, "456, 455.5, 453", of the first kind named, or
/// "227 g: 229, 228; 454 g: 456". Without a code the keeper's rule makes one, and it is always
/// one no other jars bear; without a best-before day the keeper's months count. Of honey held back
/// only with a reason, which stays written on the filling. Refused with Missing or Contradiction
/// where not one vessel is named, BeforeItBegan, HeldBack, TooMany where more honey would have gone
/// than is written down as there on that day or later, NotAChoice for what is not filled, Duplicate
/// for a kind named twice, Taken for a code in use, Contradiction where the jars hold more than was
/// drawn.
struct FillJars {
    static constexpr std::string_view name = "fill-jars";
    using Answer = Id<Bottling>;
    Day on;
    std::optional<Id<Bucket>> bucket;
    std::optional<Id<Lot>> lot;
    std::string jars;
    std::string spoiled;
    std::string weighed;
    std::optional<Known<Mass>> drawn;
    std::optional<Known<Mass>> lost;
    std::string code;
    std::optional<Day> bestBefore;
    std::string reason;
    std::string note;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

/// Kinds that honey is filled into.
bool isFilled(const GoodsKind& kind);
/// Before jars of a filling go out. Refused with HeldBack under `field` where it is held and no
/// reason is given; a vessel is asked by demandMayGo.
Result<void> demandFillingFree(const Read& file, Id<Bottling> bottling, Day on,
                               const std::string& reason, const char* field);
/// Codes are unique, and a best-before day comes after the filling. Refused with Taken,
/// Contradiction.
Result<void> demandBottling(const Read& file, const Bottling& bottling);
/// Its jars, as the file now has them, hold no more than was drawn, 2 % aside. Refused with
/// Contradiction.
Result<void> demandDrawn(const Read& file, const Bottling& bottling);

/// The code a filling would get by the keeper's rule; nothing where it is typed. Refused as
/// lotCode.
Result<std::optional<std::string>> codeByRule(const Read& file, const Vessel& vessel, Day on,
                                              const std::optional<Day>& bestBefore);
/// The best-before day by the keeper's months; nothing where no months are written down.
std::optional<Day> bestBeforeByRule(const Read& file, Day on);

}  // namespace combwright
