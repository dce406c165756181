// Goods in one line, as one packs a box: "40 454 g, 12 skep", "197x454 g, 3x227 g", with the
// filling behind "of" and the price of one behind "at" where they are said: "12 454 g of L27-4-2 at
// 8.50". A kind is called by its name, the words its name begins with, a word of it, or by what it
// holds. A name with a comma in it stands in quotes, or is called by its number, "#3". Read and
// checked here; the actions write it down.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/model/honey/going_out.h"
#include "core/storage/rows.h"
#include "core/support/result.h"

namespace combwright {

/// So many of a kind.
struct GoodsMeant {
    GoodsKind kind;
    std::int64_t count = 0;
    std::optional<Id<Bottling>> bottling;  ///< where it was said
    std::optional<Money> each;             ///< where it was said
};

/// Refused under `field` with WrongType for a part without a number, OutOfRange for none or more
/// than a million, NotFound and Ambiguous for the kind or the filling, Missing for nothing at all.
Result<std::vector<GoodsMeant>> readGoods(const Read& file, std::string_view line,
                                          const char* field);

/// The kind meant by some words. Refused as readGoods.
Result<GoodsKind> goodsKindMeant(const Read& file, std::string_view words, const char* field);

/// "454 g 8.50, skep 6": kinds with what one costs. Refused as readGoods.
struct PriceMeant {
    GoodsKind kind;
    Money each;
};
Result<std::vector<PriceMeant>> readPrices(const Read& file, std::string_view line,
                                           const char* field);

/// What came home of one kind and what became of the rest.
struct HomeMeant {
    std::optional<GoodsKind> kind;         ///< none: told by its place in the line
    std::optional<Id<Bottling>> bottling;  ///< where it was said
    std::int64_t home = 0;
    std::optional<std::int64_t> broken;
    std::optional<std::int64_t> given;
};
/// "9 454 g, 2 broken, 1 given; 3 skep"; where the kinds are not named, "9, 2 broken, 1 given; 3"
/// in the order they were packed. Refused as readGoods; a 0 may stand here.
Result<std::vector<HomeMeant>> readHome(const Read& file, std::string_view line, const char* field);

/// Grams of "456, 455.5, 453", in the order they were weighed. Refused with WrongType or
/// OutOfRange under `field`.
Result<std::vector<double>> readGrams(std::string_view line, const char* field);

/// Where a comma between two digits belongs to a number.
enum class Decimals { Anywhere, InPrices, None };

/// Parts parted by commas or semicolons outside quotes, without blanks at their ends. Empty ones
/// too.
std::vector<std::string> goodsParts(std::string_view line, std::string_view parters = ",;",
                                    Decimals decimals = Decimals::Anywhere);

}  // namespace combwright
