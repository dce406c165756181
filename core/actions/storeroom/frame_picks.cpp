#include "core/actions/storeroom/frame_picks.h"

#include <algorithm>
#include <set>

#include "core/actions/boxes/counted_marks.h"
#include "core/storage/queries/names.h"

namespace combwright {
namespace {

std::string bareText(std::string_view text) {
    const std::size_t from = text.find_first_not_of(" \t");
    if (from == std::string_view::npos) return {};
    return std::string(text.substr(from, text.find_last_not_of(" \t") - from + 1));
}

Result<Id<Box>> boxByName(const Read& file, const std::string& name) {
    if (name.starts_with('#') && name.size() > 1 && name.size() < 10 &&
        name.find_first_not_of("0123456789", 1) == std::string::npos) {
        const Id<Box> id{std::stoll(name.substr(1))};
        if (file.find(id)) return id;
        return Refusal{Code::NotFound, "boxes", {{"name", name}}};
    }
    const auto found = findNamed(file, Box::table, NameQuery{.name = name, .on = Day{}});
    if (!found) return Refusal{found.error().code, "boxes", found.error().values};
    return Id<Box>{*found};
}

/// A part with a dash is a mark that has one, or a row of marks. Marks that are nobody's are passed
/// over in a row, but not its first and last.
Result<std::vector<Id<Box>>> boxesOfPart(const Read& file, const std::string& part) {
    const auto whole = boxByName(file, part);
    const std::size_t dash = part.find('-');
    if (whole || dash == std::string::npos) {
        if (!whole) return whole.error();
        return std::vector<Id<Box>>{*whole};
    }
    const std::string firstName = bareText(std::string_view(part).substr(0, dash));
    const std::string lastName = bareText(std::string_view(part).substr(dash + 1));
    const auto row = rowOfMarks(firstName, lastName);
    if (!row)
        return Refusal{
            Code::WrongType, "boxes", {{"wanted", "a row of marks, M01-M08"}, {"value", part}}};
    std::vector<Id<Box>> boxes;
    const auto& [from, to] = *row;
    for (std::int64_t n = from.number; n <= to.number; ++n) {
        const auto box = boxByName(file, from.with(n));
        if (box)
            boxes.push_back(*box);
        else if (n == from.number || n == to.number || box.error().code != Code::NotFound)
            return box.error();
    }
    return boxes;
}

}  // namespace

Result<NamedBoxes> boxesNamed(const Read& file, std::string_view text) {
    NamedBoxes named;
    std::set<std::int64_t> seen;
    const auto add = [&](Id<Box> box) {
        if (seen.insert(box.number).second) named.boxes.push_back(box);
    };
    const std::string whole = bareText(text);
    if (whole == "all" || whole.empty()) {
        named.loose = true;
        for (const Box& box : file.all<Box>())
            if (inUse(box)) add(box.id);
        return named;
    }
    named.byName = true;
    std::string part;
    for (const char c : whole + ',') {
        if (c != ',') {
            part += c;
            continue;
        }
        const std::string name = bareText(part);
        part.clear();
        if (name.empty()) continue;
        if (name == "loose") {
            named.loose = true;
            continue;
        }
        const auto boxes = boxesOfPart(file, name);
        if (!boxes) return boxes.error();
        for (const Id<Box> box : *boxes) add(box);
    }
    return named;
}

std::vector<Frame> framesWanted(const Read& file, const FramesWanted& wanted) {
    std::vector<Frame> all;
    const auto fits = [&](const Frame& frame) {
        if (wanted.kind && frame.kind != *wanted.kind) return false;
        if (wanted.comb && frame.comb != wanted.comb) return false;
        for (const char letter : wanted.seen)
            if (frame.faults.find(letter) == std::string::npos) return false;
        if (wanted.stack && !frame.box && frame.stack != *wanted.stack) return false;
        return !wanted.also || wanted.also(frame);
    };
    const auto add = [&](std::vector<Frame> frames) {
        std::erase_if(frames, [&](const Frame& frame) { return !fits(frame); });
        std::stable_partition(frames.begin(), frames.end(),
                              [](const Frame& frame) { return !frame.position; });
        all.insert(all.end(), frames.begin(), frames.end());
    };
    if (wanted.in.loose && !wanted.in.byName) {
        // All of them: one question to the file instead of one a box.
        std::set<std::int64_t> boxes;
        for (const Id<Box> box : wanted.in.boxes) boxes.insert(box.number);
        auto frames = file.where<Frame>({isUnknown("retired")});
        std::erase_if(frames, [&](const Frame& frame) {
            return frame.box && !boxes.contains(frame.box->number);
        });
        std::stable_sort(frames.begin(), frames.end(), [](const Frame& a, const Frame& b) {
            return a.box.value_or(Id<Box>{INT64_MAX}) < b.box.value_or(Id<Box>{INT64_MAX});
        });
        add(std::move(frames));
        return all;
    }
    for (const Id<Box> box : wanted.in.boxes)
        add(file.where<Frame>({is("box", box), isUnknown("retired")}));
    if (wanted.in.loose) add(file.where<Frame>({isUnknown("box"), isUnknown("retired")}));
    return all;
}

bool diseaseHeld(const HeldThings& held, const Frame& frame) {
    if (frame.faults.find('Q') != std::string::npos) return true;
    const auto holds = held.of(frame);
    return std::any_of(holds.begin(), holds.end(), [](const Hold& hold) {
        return hold.why == HoldWhy::SuspectedDisease || hold.why == HoldWhy::Contact;
    });
}

bool isHeld(const HeldThings& held, const Frame& frame) {
    return frame.verdict == Verdict::Hold || held.holds(frame);
}

Refusal heldBack(const Read& file, const HeldThings& held, const Frame& frame,
                 const std::string& field) {
    const auto holds = held.of(frame);
    std::string why =
        holds.empty() ? std::string(heldByVerdict(frame)) : std::string(word(holds.front().why));
    if (holds.empty() && frame.faults.find('Q') != std::string::npos)
        why = word(HoldWhy::SuspectedDisease);
    Refusal refusal{
        Code::HeldBack,
        field,
        {{"name", frame.box ? nameOf(file, Box::table, frame.box->number) : "a loose frame"},
         {"reason", why}}};
    if (diseaseHeld(held, frame)) refusal.values.emplace_back("disease", "yes");
    return refusal;
}

Result<std::vector<Frame>> firstOf(std::vector<Frame> frames, std::optional<Count> howMany) {
    if (howMany && *howMany < Count(1))
        return Refusal{Code::OutOfRange, "how_many", {{"low", "1"}, {"high", "…"}}};
    if (frames.empty()) return Refusal{Code::NothingToDo, howMany ? "how_many" : "boxes", {}};
    if (!howMany) return frames;
    const auto many = static_cast<std::size_t>(howMany->value());
    if (many > frames.size())
        return Refusal{Code::TooMany, "how_many", {{"most", std::to_string(frames.size())}}};
    frames.erase(frames.begin() + static_cast<std::ptrdiff_t>(many), frames.end());
    return frames;
}

bool liftsHold(const Frame& frame, std::optional<Verdict> verdict) {
    return frame.verdict == Verdict::Hold && verdict != Verdict::Hold;
}

bool mayLift(const Frame& frame, std::optional<Verdict> verdict, const std::string& why) {
    const bool foulbrood = frame.faults.find('Q') != std::string::npos;
    return !why.empty() && (!foulbrood || verdict == Verdict::Burn);
}

void addNote(Frame& frame, const std::string& why) {
    if (why.empty() || frame.note.find(why) != std::string::npos) return;
    frame.note += (frame.note.empty() ? "" : "; ") + why;
}

}  // namespace combwright
