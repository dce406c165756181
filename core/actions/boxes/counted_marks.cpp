#include "core/actions/boxes/counted_marks.h"

#include <algorithm>

#include "core/actions/storeroom/marked_boxes.h"

namespace combwright {
namespace {

constexpr std::int64_t longestRowOfMarks = 500;

std::string withoutBlanks(const std::string& text) {
    const std::size_t from = text.find_first_not_of(' ');
    if (from == std::string::npos) return {};
    return text.substr(from, text.find_last_not_of(' ') - from + 1);
}

}  // namespace

std::string CountedMark::with(std::int64_t other) const {
    std::string digits = std::to_string(other);
    if (digits.size() < width) digits.insert(0, width - digits.size(), '0');
    return before + digits;
}

std::optional<CountedMark> countedMark(const std::string& mark) {
    const std::size_t digits = mark.find_last_not_of("0123456789") + 1;
    if (digits == mark.size() || mark.size() - digits > 9) return std::nullopt;
    return CountedMark{mark.substr(0, digits), std::stoll(mark.substr(digits)),
                       mark.size() - digits};
}

std::optional<std::pair<CountedMark, CountedMark>> rowOfMarks(const std::string& first,
                                                              const std::string& last) {
    const auto from = countedMark(first);
    auto to = countedMark(last);
    if (to && to->before.empty() && from) to->before = from->before;  // "M01-08"
    const bool row = from && to && from->before == to->before && from->number <= to->number &&
                     to->number - from->number < longestRowOfMarks;
    if (!row) return std::nullopt;
    return std::pair(*from, *to);
}

Result<std::vector<std::string>> marksListed(std::string_view text, const std::string& field) {
    std::vector<std::string> marks;
    for (const std::string& part : listedParts(text)) {
        std::vector<std::string> meant{part};
        const std::size_t dash = part.find('-');
        const std::string first = withoutBlanks(part.substr(0, dash));
        const std::string last =
            dash == std::string::npos ? std::string() : withoutBlanks(part.substr(dash + 1));
        if (countedMark(first) && countedMark(last)) {
            const auto row = rowOfMarks(first, last);
            if (!row)
                return Refusal{
                    Code::WrongType, field, {{"wanted", "a row of marks, H1-H8"}, {"value", part}}};
            meant.clear();
            for (std::int64_t n = row->first.number; n <= row->second.number; ++n)
                meant.push_back(row->first.with(n));
        }
        for (std::string& mark : meant) {
            if (std::find(marks.begin(), marks.end(), mark) != marks.end())
                return Refusal{Code::Duplicate, field, {{"name", mark}}};
            marks.push_back(std::move(mark));
        }
    }
    return marks;
}

}  // namespace combwright
