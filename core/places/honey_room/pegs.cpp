#include "core/places/honey_room/pegs.h"

#include "core/model/honey/room.h"

namespace combwright {

std::set<std::int64_t> pegsTaken(const Read& file, Day on) {
    std::set<std::int64_t> taken;
    for (const Peg& peg : file.all<Peg>())
        if (!peg.off || on <= *peg.off) taken.insert(peg.number.value());
    return taken;
}

std::int64_t nextFreePeg(const std::set<std::int64_t>& taken) {
    std::int64_t number = 1;
    while (number < 1000 && taken.contains(number)) ++number;
    return number;
}

}  // namespace combwright
