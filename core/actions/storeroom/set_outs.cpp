#include "core/actions/storeroom/set_outs.h"

#include "core/actions/storeroom/quarantine.h"
#include "core/storage/queries/names.h"

namespace combwright {
namespace {

/// "M1, M2 and 3 buckets": what stands between commas.
std::vector<std::string> namedOutside(const std::string& boxes) {
    std::vector<std::string> parts;
    std::size_t from = 0;
    while (from < boxes.size()) {
        const std::size_t end = std::min(boxes.find(',', from), boxes.size());
        if (const auto part = Name::of(std::string_view(boxes).substr(from, end - from)))
            parts.push_back(part->text());
        from = end + 1;
    }
    return parts;
}

}  // namespace

const Fields& SetOutside::fields() {
    static const Fields all =
        describe(field<&SetOutside::on>("on"), field<&SetOutside::what>("what_out"),
                 field<&SetOutside::yard>("yard"), field<&SetOutside::boxes>("boxes"),
                 field<&SetOutside::note>("note"));
    return all;
}

Result<Id<SetOut>> SetOutside::perform(Write& file) const {
    if (yard && !file.find(*yard)) return Refusal{Code::NotFound, "yard", {}};
    for (const std::string& mark : namedOutside(boxes)) {
        const auto found = findNamed(file, Box::table, NameQuery{.name = mark, .on = on});
        if (!found) continue;
        const auto box = file.find(Id<Box>{*found});
        if (auto free = demandNotApart(file, *box, on, "boxes"); !free) return free.error();
        if (auto free = demandNoFrameHeld(file, *box, "boxes"); !free) return free.error();
    }
    SetOut out;
    out.on = on;
    out.what = what;
    out.yard = yard;
    out.boxes = boxes;
    out.note = note;
    return file.add(out);
}

const Fields& TakeInSetOut::fields() {
    static const Fields all =
        describe(field<&TakeInSetOut::on>("on"), field<&TakeInSetOut::setOut>("set_out"));
    return all;
}

Result<Id<SetOut>> TakeInSetOut::perform(Write& file) const {
    std::optional<SetOut> out;
    if (setOut) {
        out = file.find(*setOut);
    } else {
        const auto lying = file.where<SetOut>({isUnknown("taken_in")});
        if (lying.size() > 1) return Refusal{Code::Missing, "set_out", {}};
        if (!lying.empty()) out = lying.front();
    }
    if (!out) return Refusal{Code::NotFound, "set_out", {}};
    if (out->takenIn) return Refusal{Code::NothingToDo, "set_out", {}};
    if (on < out->on) return Refusal{Code::BeforeItBegan, "on", {{"since", isoText(out->on)}}};
    out->takenIn = on;
    file.change(*out);
    return out->id;
}

}  // namespace combwright
