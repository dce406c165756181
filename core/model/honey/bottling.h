// Fillings of jars, and what somebody said of one later.
#pragma once

#include "core/model/honey/goods.h"
#include "core/model/honey/lot.h"

namespace combwright {

/// One filling of jars from one bucket or lot: what carries one code.
struct Bottling {
    static constexpr std::string_view table = "bottling";
    Id<Bottling> id;
    std::optional<Id<Bucket>> bucket;  ///< either from a bucket
    std::optional<Id<Lot>> lot;        ///< or from a lot
    Day on;
    Name code;  ///< as printed on the jars
    std::optional<Day> bestBefore;
    std::optional<Known<Mass>> drawn;  ///< honey taken; none: what the jars hold and what was lost
    std::optional<Known<Mass>> lost;   ///< on tank, sieve and spoon
    std::string note;
    static const Fields& fields();
};

/// So many jars of a kind in a filling.
struct BottledJars {
    static constexpr std::string_view table = "bottled_jars";
    Id<BottledJars> id;
    Id<Bottling> bottling;
    Id<GoodsKind> kind;
    Count count;
    std::optional<Count> spoiled;  ///< jars broken or cracked while filling
    std::optional<Count> weighed;  ///< jars put on the scale
    std::optional<Number> mean;    ///< of those weighed, grams of honey
    std::optional<Mass> lightest;  ///< of those weighed
    static const Fields& fields();
};

/// Somebody says something of honey that went out.
struct Complaint {
    static constexpr std::string_view table = "complaint";
    Id<Complaint> id;
    Day on;
    std::optional<Id<Bottling>> bottling;  ///< none: nobody knows which jar
    Name what;                             ///< what is said of it
    std::string who;
    std::optional<Day> closed;
    std::string became;  ///< what was found and done
    static const Fields& fields();
};

}  // namespace combwright
