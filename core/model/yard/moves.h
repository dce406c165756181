// What moves while its past stays: a hive to another yard or under another mark, a colony to
// another stand. With these, who stood where is known for any day.
#pragma once

#include "core/model/describe.h"
#include "core/model/yard/yard.h"

namespace combwright {

/// A hive went to another yard, or its mark was painted over.
struct HiveMove {
    static constexpr std::string_view table = "hive_move";
    Id<HiveMove> id;
    Id<Hive> hive;
    Day on;
    Id<Yard> fromYard;
    Name fromMark;
    Id<Yard> toYard;
    Name toMark;
    static const Fields& fields();
};

/// A colony went to live on another stand.
struct ColonyMove {
    static constexpr std::string_view table = "colony_move";
    Id<ColonyMove> id;
    Id<Colony> colony;
    Day on;
    Id<Hive> fromHive;
    Id<Hive> toHive;
    std::string note;
    static const Fields& fields();
};

}  // namespace combwright
