#include "core/actions/boxes/box_list.h"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <functional>

#include "core/storage/queries/names.h"
#include "core/words/kind_words.h"
#include "core/words/typed_words.h"

namespace combwright {
namespace {

std::string_view trimmed(std::string_view text) {
    const std::size_t from = text.find_first_not_of(" \t");
    if (from == std::string_view::npos) return {};
    return text.substr(from, text.find_last_not_of(" \t") - from + 1);
}

bool isDigitAt(std::string_view text, std::size_t at) {
    return at < text.size() && text[at] >= '0' && text[at] <= '9';
}

/// A comma between two digits is a decimal comma, never the end of a part: "6,5 capped".
std::size_t endOfPart(std::string_view text, std::string_view separators) {
    std::size_t end = text.find_first_of(separators);
    while (end != std::string_view::npos && text[end] == ',' && end > 0 &&
           isDigitAt(text, end - 1) && isDigitAt(text, end + 1))
        end = text.find_first_of(separators, end + 1);
    return std::min(end, text.size());
}

std::vector<std::string_view> partsOf(std::string_view text, std::string_view separators) {
    std::vector<std::string_view> parts;
    while (!text.empty()) {
        const std::size_t end = endOfPart(text, separators);
        if (const auto part = trimmed(text.substr(0, end)); !part.empty()) parts.push_back(part);
        text.remove_prefix(std::min(end + 1, text.size()));
    }
    return parts;
}

std::string lowered(std::string_view text) {
    std::string lower(text);
    std::transform(lower.begin(), lower.end(), lower.begin(), [](char c) {
        return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
    });
    return lower;
}

/// Takes digits with at most one point or comma from the front; no sign, no exponent, no "nan".
std::optional<double> leadingNumber(std::string_view& text) {
    std::string digits;
    std::size_t end = 0;
    bool point = false;
    for (; end < text.size(); ++end) {
        const bool separator =
            (text[end] == '.' || text[end] == ',') && !point && end > 0 && isDigitAt(text, end + 1);
        if (!separator && !isDigitAt(text, end)) break;
        point = point || separator;
        digits += separator ? '.' : text[end];
    }
    if (digits.empty() || digits.size() > 9) return std::nullopt;
    double number = 0;
    std::from_chars(digits.data(), digits.data() + digits.size(), number);
    text = trimmed(text.substr(end));
    return number;
}

struct ClassWord {
    std::string_view word;
    std::optional<Comb> comb;
    std::string_view faults;
};

constexpr auto classWords = std::to_array<ClassWord>({
    {"drawn", Comb::Drawn, ""},
    {"fat", Comb::DrawnFat, ""},
    {"drawn fat", Comb::DrawnFat, ""},
    {"part", Comb::PartDrawn, ""},
    {"part drawn", Comb::PartDrawn, ""},
    {"foundation", Comb::Foundation, ""},
    {"bare", Comb::Bare, ""},
    {"broken", std::nullopt, "V"},
    {"moth", std::nullopt, "W"},
    {"web", std::nullopt, "W"},
    {"bent", std::nullopt, "B"},
    {"slime", std::nullopt, "S"},
    {"mice", std::nullopt, "U"},
    {"mold", std::nullopt, "O"},
    {"drone", std::nullopt, "N"},
    {"propolis", std::nullopt, "P"},
    {"old", std::nullopt, "T"},
    {"pollen", std::nullopt, "L"},
});

/// The words a frame may be described with, for who wrote another.
std::string contentsWords() { return classWordList() + ", capped, % full"; }

Result<FrameTally> tallyOf(Count frames, std::string_view word) {
    if (auto tally = framesOfClass(frames, word)) return *std::move(tally);
    return Refusal{
        Code::NotAChoice, "contents", {{"value", std::string(word)}, {"choices", contentsWords()}}};
}

/// A part of a list up to the word before `next`.
std::string_view upToWord(std::string_view part, const std::vector<std::string_view>& words,
                          std::size_t next) {
    const std::string_view last = words[next - 1];
    return part.substr(0, static_cast<std::size_t>(last.data() + last.size() - part.data()));
}

std::optional<BoxKind> kindOfTrade(const Read& file, std::string_view name) {
    // One rule for what a word of the trade means, here and where a script names a kind.
    const auto found =
        findNamed(file, BoxKind::table, NameQuery{.name = std::string(trimmed(name)), .on = Day{}});
    return found ? file.find(Id<BoxKind>{*found}) : std::nullopt;
}

/// What a kind is called there: in English as it is kept, or as it is spoken.
using NameOfKind = std::function<std::string(const BoxKind&)>;
std::string keptName(const BoxKind& kind) { return kind.name.text(); }
std::string spokenName(const BoxKind& kind) { return kindText(kind.name.text()).toStdString(); }

/// The kind some words of its name mean; of several the one that is in use here, if but one is.
Result<BoxKind> kindByItsName(const Read& file, std::string_view typed, const NameOfKind& nameOf) {
    const std::vector<BoxKind> kinds = file.all<BoxKind>();
    std::vector<std::string> names;
    names.reserve(kinds.size());
    for (const BoxKind& kind : kinds) names.push_back(nameOf(kind));
    for (std::size_t n = 0; n < kinds.size(); ++n)
        if (lowered(names[n]) == lowered(typed)) return kinds[n];
    const std::vector<std::size_t> meant = namesMeant(names, typed);
    if (meant.size() == 1) return kinds[meant.front()];
    std::vector<std::size_t> used;
    for (const std::size_t each : meant)
        if (file.first<Box>({is("kind", kinds[each].id)})) used.push_back(each);
    if (used.size() == 1) return kinds[used.front()];
    if (meant.empty())
        return Refusal{
            Code::NotFound, "kind", {{"name", std::string(typed)}, {"choices", kindWords(file)}}};
    std::string choices;
    for (const std::size_t each : meant)
        choices += (choices.empty() ? "" : "; ") + kinds[each].name.text();
    return Refusal{Code::Ambiguous,
                   "kind",
                   {{"name", std::string(typed)},
                    {"count", std::to_string(meant.size())},
                    {"choices", choices}}};
}

/// The kind named by the most words a part begins with: "10-frame medium M31" is a ten-frame
/// medium, no kind "10-frame" with the mark "medium". `next` is then the word behind it.
std::optional<BoxKind> kindOfTradeAhead(const Read& file, std::string_view part,
                                        const std::vector<std::string_view>& words,
                                        std::size_t& next) {
    for (next = words.size(); next > 0; --next)
        if (auto kind = kindOfTrade(file, upToWord(part, words, next))) return kind;
    return std::nullopt;
}

/// The same by words of its name, where no word of the trade stands there.
Result<BoxKind> kindByItsNameAhead(const Read& file, std::string_view part,
                                   const std::vector<std::string_view>& words, std::size_t& next,
                                   const NameOfKind& nameOf) {
    for (next = words.size(); next > 0; --next) {
        auto kind = kindByItsName(file, upToWord(part, words, next), nameOf);
        if (kind || kind.error().code == Code::Ambiguous) return kind;
    }
    return Refusal{Code::NotFound,
                   "boxes",
                   {{"name", std::string(words.front())}, {"choices", kindWords(file)}}};
}

/// As it stands in a list of boxes beside the kinds.
constexpr std::string_view excluderMark = "x";
bool isExcluder(std::string_view part) {
    static constexpr auto words = std::to_array<std::string_view>(
        {excluderMark, "excluder", "an excluder", "queen excluder"});
    return std::find(words.begin(), words.end(), lowered(part)) != words.end();
}

/// A refusal of a kind as one of the list, which may hold an excluder too.
Refusal ofTheList(const Refusal& refusal) {
    auto values = refusal.values;
    for (auto& [name, value] : values)
        if (name == "choices" && refusal.code == Code::NotFound)
            value += ", " + std::string(excluderMark) + " (an excluder)";
    return Refusal{refusal.code, "boxes", std::move(values)};
}

std::optional<Count> wholeNumber(double number) {
    if (number != std::floor(number)) return std::nullopt;
    return Count(static_cast<std::int64_t>(number));
}

}  // namespace

std::optional<FrameTally> framesOfClass(Count frames, std::string_view word) {
    const std::string lower = lowered(word);
    for (const ClassWord& each : classWords)
        if (each.word == lower) return FrameTally{frames, each.comb, std::string(each.faults)};
    for (const Fault& fault : faults())
        if (fault.word == lower)
            return FrameTally{frames, std::nullopt, std::string(1, fault.letter)};
    if (const auto letters = tidyFaults(word); letters && !letters->empty())
        return FrameTally{frames, std::nullopt, *letters};
    return std::nullopt;
}

std::string classWordList() {
    std::string words;
    for (const ClassWord& each : classWords)
        words += (words.empty() ? "" : ", ") + std::string(each.word);
    return words;
}

Count BoxContents::frames() const {
    Count sum;
    for (const FrameTally& tally : tallies) sum += tally.frames;
    return sum;
}

Result<BoxContents> parseContents(std::string_view text) {
    const std::vector<std::pair<std::string, std::string>> percentOrFrames{{"low", "0"},
                                                                           {"high", "100"}};
    BoxContents contents;
    std::vector<std::string_view> parts = partsOf(text, ",;");
    for (std::size_t n = 0; n < parts.size(); ++n) {
        std::string_view part = parts[n];
        const bool byEye = part.starts_with('~');
        if (byEye) part = trimmed(part.substr(1));
        const std::string_view whole = part;
        const auto number = leadingNumber(part);
        if (!number)
            return Refusal{Code::WrongType,
                           "contents",
                           {{"wanted", "number first"}, {"value", std::string(whole)}}};
        std::string word = lowered(part);
        // "8 capped 90 %": what stands behind it is a part of its own.
        constexpr std::string_view capped = "capped";
        if (word.starts_with("capped ")) {
            const std::string_view rest = trimmed(part.substr(capped.size()));
            parts.insert(parts.begin() + static_cast<std::ptrdiff_t>(n) + 1, rest);
            word = capped;
        }
        if (word == capped) {
            if (contents.capped) return Refusal{Code::Duplicate, "contents", {{"name", word}}};
            if (*number > 100) return Refusal{Code::OutOfRange, "contents", percentOrFrames};
            const Frames seen = Frames::rounded(*number);
            if (std::abs(seen.value() - *number) > 1e-6)
                return Refusal{Code::WrongType,
                               "contents",
                               {{"wanted", "tenths of a frame"}, {"value", std::string(whole)}}};
            contents.capped = Known<Frames>{seen, {}, byEye ? How::ByEye : How::Counted};
        } else if (word == "% full" || word == "%") {
            if (contents.filled) return Refusal{Code::Duplicate, "contents", {{"name", "% full"}}};
            if (*number > 100) return Refusal{Code::OutOfRange, "contents", percentOrFrames};
            contents.filled = Known<Share>{Share::rounded(*number / 100.0), {}, How::ByEye};
        } else {
            const auto frames = wholeNumber(*number);
            if (!frames)
                return Refusal{Code::WrongType,
                               "contents",
                               {{"wanted", "whole number"}, {"value", std::string(whole)}}};
            if (*frames > Count(100)) return Refusal{Code::OutOfRange, "contents", percentOrFrames};
            auto tally = tallyOf(*frames, part.empty() ? std::string_view("drawn") : part);
            if (!tally) return tally.error();
            contents.tallies.push_back(*std::move(tally));
        }
    }
    if (contents.capped && !contents.tallies.empty() &&
        contents.capped->value->count() > contents.frames().value() * 10)
        return Refusal{Code::Contradiction, "contents", {{"other", "capped"}}};
    return contents;
}

std::string kindWords(const Read& file) {
    std::vector<std::string> names;
    const auto add = [&names](const std::string& name) {
        if (std::find(names.begin(), names.end(), name) == names.end()) names.push_back(name);
    };
    std::vector<std::string> lastWords;
    for (const BoxKind& kind : file.all<BoxKind>()) {
        const std::string name = nameInAList(kind.name.text());
        const std::string last = name.substr(name.rfind(' ') + 1);
        // The word of the trade is the one several kinds bear; that it is a box says nothing.
        const bool again = std::find(lastWords.begin(), lastWords.end(), last) != lastWords.end();
        const bool size = last != "box" && last != "super" && !last.ends_with(')');
        if (again && size) add(last);
        lastWords.push_back(last);
        if (file.first<Box>({is("kind", kind.id)})) add(name);
    }
    std::string text;
    for (const std::string& name : names) text += (text.empty() ? "" : ", ") + name;
    return text;
}

Result<BoxKind> boxKindMeant(const Read& file, std::string_view typed) {
    if (auto kind = kindOfTrade(file, typed)) return *std::move(kind);
    return kindByItsName(file, trimmed(typed), &keptName);
}

std::optional<BoxKind> boxKindNamed(const Read& file, std::string_view name) {
    auto kind = boxKindMeant(file, name);
    return kind ? std::optional(*std::move(kind)) : std::nullopt;
}

Result<BoxKind> boxKindTyped(const Read& file, const std::string& typed) {
    const std::string asked = QString::fromStdString(typed).simplified().toStdString();
    auto kind = boxKindMeant(file, typedInEnglish(QString::fromStdString(asked)).toStdString());
    if (kind) return kind;
    auto spoken = kindByItsName(file, asked, &spokenName);
    return spoken || spoken.error().code == Code::Ambiguous || kind.error().code != Code::Ambiguous
               ? spoken
               : kind;
}

Result<std::string> boxListInEnglish(const Read& file, const std::string& typed) {
    std::string list;
    for (const std::string_view part : partsOf(typed, ",")) {
        const std::string english =
            typedInEnglish(QString::fromUtf8(part.data(), static_cast<qsizetype>(part.size())))
                .toStdString();
        std::string kept = english;
        std::size_t next = 0;
        const auto words = partsOf(english, " ");
        const bool read = isExcluder(english) || kindOfTradeAhead(file, english, words, next) ||
                          kindByItsNameAhead(file, english, words, next, &keptName);
        if (!read) {
            const auto own = partsOf(part, " ");
            auto kind = kindByItsNameAhead(file, part, own, next, &spokenName);
            if (!kind) return ofTheList(kind.error());
            const std::string_view behind = part.substr(upToWord(part, own, next).size());
            kept = nameInAList(kind->name.text()) +
                   typedInEnglish(
                       QString::fromUtf8(behind.data(), static_cast<qsizetype>(behind.size())))
                       .toStdString();
        }
        list += (list.empty() ? "" : ", ") + kept;
    }
    return list;
}

Result<BoxList> parseBoxList(const Read& file, std::string_view text) {
    BoxList list;
    for (const std::string_view part : partsOf(text, ",")) {
        if (isExcluder(part)) {
            list.excluderAbove = Count(static_cast<std::int64_t>(list.boxes.size()));
            continue;
        }
        const auto words = partsOf(part, " ");
        std::size_t next = 0;
        auto kind = kindOfTradeAhead(file, part, words, next);
        if (!kind) {
            auto named = kindByItsNameAhead(file, part, words, next, &keptName);
            if (!named) return ofTheList(named.error());
            kind = *std::move(named);
        }
        ListedBox listed{kind->id, {}, {}};
        // A second word that begins with a digit is the frames, anything else the mark.
        const auto isDigit = [](char c) { return c >= '0' && c <= '9'; };
        if (next < words.size() && !isDigit(words[next].front()))
            listed.mark = std::string(words[next++]);
        if (next < words.size()) {
            const auto* from = words[next].data();
            auto contents =
                parseContents({from, static_cast<std::size_t>(part.data() + part.size() - from)});
            if (!contents) return Refusal{contents.error().code, "boxes", contents.error().values};
            listed.contents = *std::move(contents);
        }
        list.boxes.push_back(std::move(listed));
    }
    return list;
}

}  // namespace combwright
