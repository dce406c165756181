#include "core/actions/storeroom/marked_boxes.h"

#include <algorithm>
#include <charconv>
#include <sstream>

#include "core/storage/queries/names.h"

namespace combwright {

std::vector<std::string> wordsOf(std::string_view part) {
    std::istringstream stream{std::string(part)};
    std::vector<std::string> words;
    for (std::string word; stream >> word;) words.push_back(word);
    return words;
}

std::string joinedWords(const std::vector<std::string>& words, std::size_t from, std::size_t to) {
    std::string joined;
    for (std::size_t at = from; at < to; ++at) joined += (at > from ? " " : "") + words[at];
    return joined;
}

std::vector<std::string> listedParts(std::string_view text) {
    std::vector<std::string> parts;
    while (true) {
        const std::size_t comma = text.find_first_of(",;");
        const auto words = wordsOf(text.substr(0, comma));
        if (!words.empty()) parts.push_back(joinedWords(words, 0, words.size()));
        if (comma == std::string_view::npos) return parts;
        text = text.substr(comma + 1);
    }
}

Result<Box> markedBox(const Read& file, const std::string& mark, Day on) {
    std::int64_t number = 0;
    if (mark.starts_with('#')) {
        const char* end = mark.data() + mark.size();
        if (std::from_chars(mark.data() + 1, end, number).ptr != end) number = 0;
    } else {
        const auto found = findNamed(file, Box::table, NameQuery{.name = mark, .on = on});
        if (!found) return Refusal{found.error().code, "boxes", found.error().values};
        number = *found;
    }
    const auto box = file.find(Id<Box>{number});
    if (!box) return Refusal{Code::NotFound, "boxes", {{"name", mark}}};
    if (!inUse(*box)) return Refusal{Code::Closed, "boxes", {{"name", mark}}};
    return *box;
}

Result<void> demandAbout(const Read& file, Id<Box> id, const std::string& field) {
    const auto box = file.find(id);
    if (box && !inUse(*box))
        return Refusal{Code::Closed, field, {{"name", nameOf(file, Box::table, id.number)}}};
    return {};
}

Result<std::vector<Id<Box>>> boxesAbout(const Read& file, std::string_view typed,
                                        const std::vector<Id<Box>>& boxes) {
    const auto parts = listedParts(typed);
    std::vector<Id<Box>> about;
    for (const Id<Box> id : boxes) {
        const auto box = file.find(id);
        if (!box || inUse(*box)) {
            about.push_back(id);
            continue;
        }
        const bool alone = std::any_of(parts.begin(), parts.end(), [&](const std::string& part) {
            return part == box->mark || part == "#" + std::to_string(id.number);
        });
        if (alone || boxes.size() == 1)
            return Refusal{Code::Closed, "boxes", {{"name", nameOf(file, Box::table, id.number)}}};
    }
    return about;
}

Result<std::vector<Box>> markedBoxes(const Read& file, std::string_view text, Day on) {
    std::vector<Box> boxes;
    for (const std::string& mark : listedParts(text)) {
        auto box = markedBox(file, mark, on);
        if (!box) return box.error();
        const bool twice = std::any_of(boxes.begin(), boxes.end(),
                                       [&](const Box& each) { return each.id == box->id; });
        if (twice) return Refusal{Code::Duplicate, "boxes", {{"name", mark}}};
        boxes.push_back(*std::move(box));
    }
    if (boxes.empty()) return Refusal{Code::Missing, "boxes", {}};
    return boxes;
}

}  // namespace combwright
