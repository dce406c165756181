#include "core/actions/honey_room/load_line.h"

#include <algorithm>
#include <cstdlib>
#include <map>

#include "core/actions/storeroom/quarantine.h"
#include "core/places/honey_room/extractor.h"
#include "core/storage/queries/holds.h"
#include "core/storage/queries/names.h"
#include "core/storage/queries/runs.h"
#include "core/trade/extractor/balance.h"

namespace combwright {
namespace {

constexpr const char* emptyFrame = "empty";

/// The name without its quotes.
std::string unquoted(const std::string& name) {
    const bool quoted = name.size() > 2 && name.front() == '"' && name.back() == '"';
    return quoted ? name.substr(1, name.size() - 2) : name;
}

/// A box of the run by its mark or tag, or by its number in the file: "#12".
Result<ExtractionBox> boxNamedInRun(const Read& file, const Extraction& run,
                                    const std::string& mark, Day on, const char* field) {
    const bool numbered = mark.size() > 1 && mark.front() == '#' &&
                          mark.find_first_not_of("0123456789", 1) == std::string::npos;
    if (numbered) {
        const auto entry = file.find(Id<ExtractionBox>{std::atoll(mark.c_str() + 1)});
        if (entry && entry->extraction == run.id) return *entry;
        return Refusal{Code::NotFound, field, {{"name", mark}}};
    }
    auto found = findNamed(file, ExtractionBox::table,
                           NameQuery{.name = mark, .run = run.name.text(), .on = on});
    if (!found && unquoted(mark) != mark)
        found = findNamed(file, ExtractionBox::table,
                          NameQuery{.name = unquoted(mark), .run = run.name.text(), .on = on});
    if (!found) {
        auto values = found.error().values;
        if (found.error().value("name").empty()) values.emplace_back("name", mark);
        return Refusal{found.error().code, field, std::move(values)};
    }
    return *file.find(Id<ExtractionBox>{*found});
}

/// Where the part that begins there ends: at the next comma outside a name in quotes, which begins
/// the part and may hold commas.
std::size_t partEnd(const std::string& line, std::size_t from) {
    const std::size_t first = line.find_first_not_of(' ', from);
    const std::size_t close = first != std::string::npos && line[first] == '"'
                                  ? line.find('"', first + 1)
                                  : std::string::npos;
    return std::min(line.find(',', close == std::string::npos ? from : close), line.size());
}

std::vector<std::string> loadParts(const std::string& line) {
    std::vector<std::string> parts;
    if (line.empty()) return parts;
    std::size_t from = 0;
    while (from <= line.size()) {
        const std::size_t end = partEnd(line, from);
        const auto part = Name::of(std::string_view(line).substr(from, end - from));
        parts.push_back(part ? part->text() : std::string());
        from = end + 1;
    }
    return parts;
}

std::optional<FrameHeft> heftMeant(std::string_view word) {
    if (word == "h" || word == "H") return FrameHeft::Heavy;
    if (word == "m" || word == "M") return FrameHeft::Middling;
    if (word == "l" || word == "L") return FrameHeft::Light;
    return std::nullopt;
}

Result<FrameInSlot> frameMeant(const Read& file, const Extraction& run, const std::string& part,
                               std::int64_t slot, Day on) {
    FrameInSlot frame{slot, std::nullopt, std::nullopt};
    if (part == emptyFrame) return frame;
    // A box may be called "red h": the whole is tried as its name first.
    const auto whole = boxNamedInRun(file, run, part, on, "slots");
    if (whole) {
        frame.box = *whole;
        return frame;
    }
    const std::size_t blank = part.rfind(' ');
    if (blank == std::string::npos) return whole.error();
    frame.heft = heftMeant(std::string_view(part).substr(blank + 1));
    if (!frame.heft) return whole.error();
    const auto mark = Name::of(std::string_view(part).substr(0, blank));
    const auto box = boxNamedInRun(file, run, mark ? mark->text() : std::string(), on, "slots");
    if (!box) return box.error();
    frame.box = *box;
    return frame;
}

std::map<std::int64_t, std::int64_t> framesByBox(const std::vector<FramesInLoad>& boxes) {
    std::map<std::int64_t, std::int64_t> frames;
    for (const FramesInLoad& each : boxes) frames[each.box.id.number] += each.frames;
    return frames;
}

/// What keeps a load from hanging in one machine.
std::optional<Refusal> keptOut(const Extractor& machine, const Read& file,
                               const std::vector<FramesInLoad>& boxes, std::int64_t highest,
                               const char* field) {
    std::optional<std::int64_t> slots;
    std::string firstKind;
    for (const FramesInLoad& each : boxes) {
        const auto holds = machine.slotsFor(file, each.box.frameKind);
        if (!holds) continue;
        const auto kind = file.find(each.box.frameKind);
        const std::string name = kind ? kind->name.text() : std::string();
        if (slots && *slots != *holds)
            return Refusal{Code::Contradiction,
                           field,
                           {{"kind", firstKind},
                            {"slots", std::to_string(*slots)},
                            {"other_kind", name},
                            {"other_slots", std::to_string(*holds)}}};
        slots = holds;
        firstKind = name;
    }
    const std::int64_t most = slots.value_or(mostSlots);
    if (highest <= most) return std::nullopt;
    return Refusal{Code::TooMany,
                   field,
                   {{"slots_of", machine.name()},
                    {"found", std::to_string(highest)},
                    {"most", std::to_string(most)}}};
}

}  // namespace

Result<std::vector<FramesInLoad>> readLoadBoxes(const Read& file, const Extraction& run,
                                                const std::string& boxes, Day on) {
    std::vector<FramesInLoad> read;
    for (const std::string& part : loadParts(boxes)) {
        if (part.empty()) continue;
        const std::size_t blank = part.rfind(' ');
        const std::string mark = part.substr(0, blank);
        const std::int64_t many =
            blank == std::string::npos ? 0 : std::atoll(part.c_str() + blank + 1);
        if (many < 1 || many > mostSlots)
            return Refusal{Code::WrongType, "boxes", {{"wanted", "box and number of frames"}}};
        const auto entry = boxNamedInRun(file, run, mark, on, "boxes");
        if (!entry) return entry.error();
        read.push_back({*entry, many});
    }
    return read;
}

Result<std::vector<FrameInSlot>> readSlots(const Read& file, const Extraction& run,
                                           const std::string& slots, Day on) {
    std::vector<FrameInSlot> read;
    std::int64_t slot = 0;
    for (const std::string& part : loadParts(slots)) {
        ++slot;
        if (part.empty()) continue;
        const auto frame = frameMeant(file, run, part, slot, on);
        if (!frame) return frame.error();
        read.push_back(*frame);
    }
    return read;
}

std::vector<FramesInLoad> countedBoxes(const std::vector<FrameInSlot>& slots) {
    std::vector<FramesInLoad> boxes;
    for (const FrameInSlot& frame : slots) {
        if (!frame.box) continue;
        const auto same = std::find_if(boxes.begin(), boxes.end(), [&](const FramesInLoad& each) {
            return each.box.id == frame.box->id;
        });
        if (same != boxes.end())
            ++same->frames;
        else
            boxes.push_back({*frame.box, 1});
    }
    return boxes;
}

bool sameBoxes(const std::vector<FramesInLoad>& one, const std::vector<FramesInLoad>& other) {
    return framesByBox(one) == framesByBox(other);
}

Result<void> demandExtractor(const Read& file, Id<Equipment> id, Day on) {
    const auto machine = file.find(id);
    if (!machine) return Refusal{Code::NotFound, "machine", {}};
    if (machine->item != EquipmentItem::Extractor)
        return Refusal{
            Code::NotAChoice, "machine", {{"value", machine->name}, {"choices", "extractor"}}};
    if (on < machine->since)
        return Refusal{Code::BeforeItBegan,
                       "machine",
                       {{"name", machine->name}, {"since", isoText(machine->since)}}};
    return {};
}

Result<void> demandFits(const Read& file, const std::vector<FramesInLoad>& boxes,
                        const std::vector<FrameInSlot>& slots,
                        const std::optional<Id<Equipment>>& machine, Day on, const char* field) {
    std::int64_t highest = 0;
    for (const FramesInLoad& each : boxes) highest += each.frames;
    for (const FrameInSlot& each : slots) highest = std::max(highest, each.slot);
    if (highest == 0) return {};
    std::vector<Extractor> machines;
    if (machine)
        machines.push_back(extractorMeant(file, machine, on));
    else
        machines = extractors(file, on);
    std::optional<Refusal> refusal;
    for (const Extractor& each : machines) {
        auto kept = keptOut(each, file, boxes, highest, field);
        if (!kept) return {};
        if (!refusal) refusal = std::move(kept);
    }
    return *refusal;
}

Result<void> demandFramesThere(const Read& file, Id<Extraction> run,
                               const std::vector<FramesInLoad>& boxes, const char* field) {
    auto known = framesOfBoxes(file, run);
    for (const FramesInLoad& each : boxes) {
        if (!each.box.frames) continue;
        FramesOfBox& before = known[each.box.id.number];
        const std::int64_t most = before.most(each.box.frames->value());
        if (each.frames > most)
            return Refusal{Code::TooMany,
                           field,
                           {{"name", calledInRun(file, each.box)}, {"most", std::to_string(most)}}};
        before.spun += each.frames;
    }
    return {};
}

Result<void> demandMayBeSpun(const Read& file, const std::vector<FramesInLoad>& boxes, Day on,
                             const char* field) {
    if (!anythingApart(file, on)) return {};
    const HeldThings held = heldThings(file, on);
    for (const FramesInLoad& each : boxes) {
        auto hold = each.box.box ? held.apart(*each.box.box) : std::nullopt;
        if (!hold && each.box.hive) hold = quarantineOn(file, held, *each.box.hive, on);
        if (hold) return heldBack(field, calledInRun(file, each.box), *hold);
    }
    return {};
}

}  // namespace combwright
