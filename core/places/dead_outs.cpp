#include "core/places/dead_outs.h"

#include <algorithm>

namespace combwright {
namespace {

template <class T>
void takeGiven(std::optional<T>& into, const std::optional<T>& given) {
    if (given) into = given;
}
void takeGiven(std::string& into, const std::string& given) {
    if (!given.empty()) into = given;
}

}  // namespace

DeadOut answersOf(const Read& file, Id<Colony> colony, Day on) {
    auto given = file.where<DeadOut>({is("colony", colony)});
    std::erase_if(given, [&](const DeadOut& each) { return each.on > on; });
    std::stable_sort(given.begin(), given.end(),
                     [](const DeadOut& a, const DeadOut& b) { return a.on < b.on; });
    DeadOut all;
    all.colony = colony;
    all.on = on;
    for (const DeadOut& each : given) {
        all.id = each.id;
        all.on = each.on;
        takeGiven(all.cluster, each.cluster);
        takeGiven(all.stores, each.stores);
        takeGiven(all.brood, each.brood);
        takeGiven(all.frass, each.frass);
        takeGiven(all.wet, each.wet);
        takeGiven(all.queen, each.queen);
        takeGiven(all.droppings, each.droppings);
        takeGiven(all.ropy, each.ropy);
        takeGiven(all.scale, each.scale);
        takeGiven(all.mouse, each.mouse);
        takeGiven(all.sampleKept, each.sampleKept);
        takeGiven(all.cause, each.cause);
        takeGiven(all.by, each.by);
        takeGiven(all.note, each.note);
    }
    return all;
}

bool looksLikeDisease(const DeadOut& said) {
    return said.ropy == true || said.scale == true || said.brood == BroodSeen::Sunken ||
           said.brood == BroodSeen::Twisted;
}

bool foulbroodRuledOut(const DeadOut& said) {
    return said.ropy == false && said.scale == false && !looksLikeDisease(said);
}

std::optional<Colony> lastDeadIn(const Read& file, Id<Hive> hive) {
    std::optional<Colony> last;
    for (Colony& each : file.where<Colony>({is("hive", hive)}))
        if (leftDeadCombs(each) && (!last || *each.ended >= *last->ended)) last = std::move(each);
    return last;
}

}  // namespace combwright
