#include "core/words/shorthand_phrases.h"

#include <algorithm>
#include <array>
#include <initializer_list>

namespace combwright {

std::string folded(std::string_view word) {
    std::string lower(word);
    for (char& c : lower)
        if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
    // "+S" and "+2S" say super where we write +1 and +2; a typographic minus is a minus.
    if (lower.starts_with("\xe2\x88\x92")) lower.replace(0, 3, "-");
    if ((lower.starts_with('+') || lower.starts_with('-')) && lower.ends_with('s')) {
        lower.pop_back();
        if (lower.size() == 1) lower += '1';
    }
    return lower;
}

std::string_view withoutComma(std::string_view word) {
    if (word.size() > 1 && (word.ends_with(',') || word.ends_with(';'))) word.remove_suffix(1);
    return word;
}

namespace {

/// Words that are said together, and the marks they stand for.
struct SaidTogether {
    std::array<std::string_view, 3> words;  ///< an empty one ends it
    std::array<const char*, 3> marks;       ///< nothing ends them
};

// Longer phrases stand before the shorter ones they begin like.
constexpr auto phrases = std::to_array<SaidTogether>({
    // Looked and saw some, nobody counted.
    {{"some", "brood"}, {"b~"}},
    {{"some", "stores"}, {"s~"}},
    {{"some", "bees"}, {"n~"}},
    {{"not", "opened"}, {"x"}},
    {{"no", "queen", "cells"}, {"qc0"}},
    {{"no", "eggs"}, {"e0"}},
    {{"queen", "not", "seen"}, {"q?"}},
    {{"no", "queen", "seen"}, {"q?"}},
    {{"queen", "seen"}, {"q"}},
    {{"qns"}, {"q?"}},
    {{"qs"}, {"q"}},
    // Brood in all stages.
    {{"bias"}, {"e", "l", "c"}},
});

/// A word before what was counted or weighed, "wash 11/300", and the mark it stands for.
struct SpelledMark {
    std::string_view word;
    const char* mark;
};
constexpr auto spelledMarks =
    std::to_array<SpelledMark>({{"wash", "w"}, {"roll", "sr"}, {"board", "bd"}});

/// "not opened" said of a part of the hive: "top super not opened", "box 2 not opened".
bool namesPart(std::string_view word) {
    constexpr auto parts = std::to_array<std::string_view>(
        {"box", "boxes", "super", "supers", "deep", "nest", "top", "bottom", "it"});
    const std::string before = folded(word);
    return std::find(parts.begin(), parts.end(), before) != parts.end() ||
           before.find_first_of("0123456789") != std::string::npos;
}

/// "dead, robbed out", "dead" alone, "dead-out": said of the colony, and so its first word. "Dead
/// bees on the floor" is a note.
Phrase deadColony(const std::vector<std::string_view>& words, std::size_t at) {
    if (at != 0) return {};
    std::string first = folded(withoutComma(words[0]));
    const bool parted = first.size() < words[0].size() || first.ends_with('.');
    if (first.ends_with('.') || first.ends_with(':')) first.pop_back();
    if (first == "dead-out" || first == "deadout") return {1, {"dead"}};
    const std::string next = words.size() > 1 ? folded(withoutComma(words[1])) : std::string();
    if ((first == "colony" || first == "hive" || first == "bees") && next == "dead")
        return {2, {"dead"}};
    if (first != "dead") return {};
    if (next == "out") return {2, {"dead"}};
    constexpr auto ofTheColony =
        std::to_array<std::string_view>({"robbed", "starved", "empty", "since", "of", "from"});
    const bool colony =
        std::find(ofTheColony.begin(), ofTheColony.end(), next) != ofTheColony.end();
    return words.size() == 1 || parted || colony ? Phrase{1, {"dead"}} : Phrase{};
}

/// "2 sealed qc", "1 open queen cell": how many, in which state, and what.
Phrase spelledCells(const std::vector<std::string_view>& words, std::size_t at) {
    if (at + 2 >= words.size()) return {};
    const std::string state = folded(words[at + 1]);
    const bool open = state == "open";
    if (!open && state != "sealed" && state != "capped") return {};
    std::size_t n = 3;
    const std::string what = folded(withoutComma(words[at + 2]));
    if (what == "queen") {
        if (at + 3 >= words.size()) return {};
        const std::string cells = folded(withoutComma(words[at + 3]));
        if (cells != "cell" && cells != "cells") return {};
        n = 4;
    } else if (what != "qc" && what != "qcs") {
        return {};
    }
    return {n, {"qc" + std::string(words[at]) + (open ? "o" : "c")}};
}

bool isOneOf(const std::string& word, std::initializer_list<std::string_view> words) {
    return std::find(words.begin(), words.end(), word) != words.end();
}

/// What is counted behind "wash", "roll" or "board" as it is said: "4 mites/300 bees",
/// "11 in 300", "20 mites in 5 days"; the figures alone, "4/300", and how many words they took.
/// Nothing behind a first figure that is no number.
Phrase spelledSample(const std::vector<std::string_view>& words, std::size_t at, const char* mark) {
    const auto plain = [&](std::size_t n) {
        return n < words.size() ? folded(withoutComma(words[n])) : std::string();
    };
    // A comma ends what belongs together.
    const auto goesOn = [&](std::size_t n) {
        return n < words.size() && !words[n].ends_with(',') && !words[n].ends_with(';');
    };
    Phrase found{1, {mark + plain(at)}};
    if (plain(at).find('/') != std::string::npos) {
        if (goesOn(at) && isOneOf(plain(at + 1), {"bees", "days"})) ++found.words;
        return found;
    }
    if (!goesOn(at)) return found;
    std::size_t next = at + 1;
    const std::string counted = plain(next);
    std::string of;
    if (counted.starts_with("mites/") || counted.starts_with("mite/")) {
        of = counted.substr(counted.find('/') + 1);
    } else {
        if (isOneOf(counted, {"mites", "mite"})) {
            found.words = 2;
            if (!goesOn(next)) return found;
            ++next;
        }
        if (!isOneOf(plain(next), {"in", "of", "/", "on"}) || !goesOn(next)) return found;
        of = plain(++next);
    }
    if (of.empty() || of.find_first_not_of("0123456789~?-") != std::string::npos) return found;
    found.marks.front() += '/' + of;
    found.words = next - at + 1;
    if (goesOn(next) && isOneOf(plain(next + 1), {"bees", "days", "day"})) ++found.words;
    return found;
}

/// "left 1" once queen cells were told of in the line; "left 1 frame" is something else.
Phrase spelledLeft(const std::vector<std::string_view>& words, std::size_t at) {
    if (at + 1 >= words.size() || folded(words[at]) != "left") return {};
    const std::string many = folded(withoutComma(words[at + 1]));
    const bool cells = std::any_of(
        words.begin(), words.begin() + static_cast<std::ptrdiff_t>(at), [](std::string_view word) {
            const std::string said = folded(withoutComma(word));
            return said.starts_with("qc") || isOneOf(said, {"cell", "cells"});
        });
    if (!cells || many.find_first_not_of("0123456789") != std::string::npos) return {};
    const bool ends = at + 2 == words.size() || words[at + 1] != withoutComma(words[at + 1]);
    if (ends) return {2, {"left" + many}};
    return isOneOf(folded(withoutComma(words[at + 2])), {"cell", "cells", "qc"})
               ? Phrase{3, {"left" + many}}
               : Phrase{};
}

}  // namespace

Phrase phraseAt(const std::vector<std::string_view>& words, std::size_t at) {
    for (const SaidTogether& phrase : phrases) {
        std::size_t n = 0;
        while (n < phrase.words.size() && !phrase.words[n].empty() && at + n < words.size() &&
               folded(withoutComma(words[at + n])) == phrase.words[n])
            ++n;
        if (n == 0 || (n < phrase.words.size() && !phrase.words[n].empty())) continue;
        if (phrase.words[1] == "opened" && at > 0 && namesPart(words[at - 1])) continue;
        Phrase found{n, {}};
        for (const char* mark : phrase.marks)
            if (mark) found.marks.emplace_back(mark);
        return found;
    }
    for (const SpelledMark& spelled : spelledMarks)
        if (at + 1 < words.size() && folded(words[at]) == spelled.word) {
            Phrase sample = spelledSample(words, at + 1, spelled.mark);
            ++sample.words;
            return sample;
        }
    if (Phrase dead = deadColony(words, at); dead.words > 0) return dead;
    const Phrase left = spelledLeft(words, at);
    return left.words > 0 ? left : spelledCells(words, at);
}

}  // namespace combwright
