#include "core/actions/yard/truck.h"

#include <algorithm>
#include <charconv>
#include <set>

#include "core/actions/storeroom/marked_boxes.h"

namespace combwright {
namespace {

struct TruckThing {
    Name item;
    std::optional<Count> howMany;
};

/// "2 hive tool": the number in front, where there is one.
Result<TruckThing> truckThing(const std::string& part) {
    auto words = wordsOf(part);
    TruckThing thing;
    std::int64_t number = 0;
    const std::string& first = words.front();
    const auto read = std::from_chars(first.data(), first.data() + first.size(), number);
    const bool counted =
        words.size() > 1 && read.ec == std::errc() && read.ptr == first.data() + first.size();
    if (counted) {
        if (number < 1 || number > 1000)
            return Refusal{Code::OutOfRange, "items", {{"low", "1"}, {"high", "1000"}}};
        thing.howMany = Count(number);
    }
    const auto item = Name::of(joinedWords(words, counted ? 1 : 0, words.size()));
    if (!item) return Refusal{Code::WrongType, "items", {{"value", part}, {"wanted", "smoker"}}};
    thing.item = *item;
    return thing;
}

std::optional<TruckItem> inTruck(const Read& file, const Name& item) {
    return file.first<TruckItem>({is("item", item), isUnknown("until")});
}

}  // namespace

Result<void> demandTruckItem(const Read& file, const TruckItem& item) {
    if (item.until && *item.until < item.since)
        return Refusal{Code::Contradiction, "until", {{"other", "since"}}};
    if (item.howMany && item.howMany->value() < 1)
        return Refusal{Code::OutOfRange, "how_many", {{"low", "1"}, {"high", "1000"}}};
    if (!item.until)
        if (const auto other = inTruck(file, item.item); other && other->id != item.id)
            return Refusal{Code::Taken, "item", {{"name", item.item.text()}}};
    return {};
}

const Fields& PutInTruck::fields() {
    static const Fields all =
        describe(field<&PutInTruck::on>("on"), field<&PutInTruck::items>("items"));
    return all;
}

Result<PutInTruck::Answer> PutInTruck::perform(Write& file) const {
    Answer kept;
    std::set<std::string> named;
    bool changed = false;
    for (const std::string& part : listedParts(items)) {
        const auto thing = truckThing(part);
        if (!thing) return thing.error();
        if (!named.insert(thing->item.text()).second)
            return Refusal{Code::Duplicate, "items", {{"name", thing->item.text()}}};
        if (auto present = inTruck(file, thing->item)) {
            kept.push_back(present->id);
            if (present->howMany == thing->howMany) continue;
            if (on < present->since)
                return Refusal{Code::BeforeItBegan,
                               "on",
                               {{"name", thing->item.text()}, {"since", isoText(present->since)}}};
            present->howMany = thing->howMany;
            file.change(*present);
            changed = true;
            continue;
        }
        changed = true;
        kept.push_back(file.add(TruckItem{{}, thing->item, thing->howMany, on, std::nullopt}));
    }
    if (kept.empty()) return Refusal{Code::Missing, "items", {}};
    if (!changed) return Refusal{Code::NothingToDo, "items", {{"name", items}}};
    return kept;
}

const Fields& TakeOffTruck::fields() {
    static const Fields all =
        describe(field<&TakeOffTruck::on>("on"), field<&TakeOffTruck::items>("items"));
    return all;
}

Result<TakeOffTruck::Answer> TakeOffTruck::perform(Write& file) const {
    Answer taken;
    for (const std::string& part : listedParts(items)) {
        const auto item = Name::of(part);
        auto present = item ? inTruck(file, *item) : std::nullopt;
        if (!present) return Refusal{Code::NotFound, "items", {{"name", part}}};
        if (on < present->since)
            return Refusal{
                Code::BeforeItBegan, "on", {{"name", part}, {"since", isoText(present->since)}}};
        present->until = on;
        file.change(*present);
        taken.push_back(present->id);
    }
    if (taken.empty()) return Refusal{Code::Missing, "items", {}};
    return taken;
}

}  // namespace combwright
