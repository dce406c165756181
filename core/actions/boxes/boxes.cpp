#include "core/actions/boxes/boxes.h"

#include "core/actions/boxes/box_steps.h"
#include "core/actions/boxes/counted_marks.h"
#include "core/actions/storeroom/quarantine.h"

namespace combwright {
const Fields& AddBoxes::fields() {
    static const Fields all =
        describe(field<&AddBoxes::on>("on"), field<&AddBoxes::kind>("kind"),
                 field<&AddBoxes::firstMark>("first_mark"), field<&AddBoxes::count>("count"),
                 field<&AddBoxes::contents>("contents"), field<&AddBoxes::stack>("stack"));
    return all;
}

Result<std::vector<Id<Box>>> AddBoxes::perform(Write& file) const {
    const std::int64_t many = count.value_or(Count(1)).value();
    if (many < 1 || many > 500)
        return Refusal{Code::OutOfRange, "count", {{"low", "1"}, {"high", "500"}}};
    auto read = parseContents(contents);
    if (!read) return read.error();
    const auto counted = countedMark(firstMark);
    if (many > 1 && !firstMark.empty() && !counted)
        return Refusal{Code::WrongType, "first_mark", {{"wanted", "a mark that ends in a number"}}};
    std::vector<Id<Box>> made;
    for (std::int64_t n = 0; n < many; ++n) {
        const std::string mark = firstMark.empty() || many == 1 ? firstMark : counted->further(n);
        auto box = addBoxTo(file, ListedBox{kind, mark, *read},
                            BoxSpot{BoxPlace::Storeroom, {}, {}, stack}, on);
        if (!box) {
            Refusal refusal = box.error();
            if (refusal.code == Code::Taken) refusal.field = "first_mark";
            return refusal;
        }
        quarantineCounted(file, *box, *read, on);
        made.push_back(*box);
    }
    return made;
}

const Fields& MoveBox::fields() {
    static const Fields all =
        describe(field<&MoveBox::on>("on"), field<&MoveBox::box>("box"), field<&MoveBox::to>("to"),
                 field<&MoveBox::hive>("hive"), field<&MoveBox::level>("level"),
                 field<&MoveBox::stack>("stack"), field<&MoveBox::reason>("reason"));
    return all;
}

Result<Id<Box>> MoveBox::perform(Write& file) const {
    const bool needsHive = to == BoxPlace::OnHive;
    if (needsHive && !hive) return Refusal{Code::Missing, "hive", {}};
    if (hive && !needsHive && to != BoxPlace::GivenBack)
        return Refusal{Code::Contradiction, "hive", {{"other", "to"}}};
    const auto present = file.find(box);
    if (present && on < present->since)
        return Refusal{Code::BeforeItBegan,
                       "on",
                       {{"name", present->mark}, {"since", isoText(present->since)}}};
    if (auto moved = moveBoxTo(file, box, BoxSpot{to, hive, level, stack, {}, reason}, on); !moved)
        return moved.error();
    return box;
}

}  // namespace combwright
