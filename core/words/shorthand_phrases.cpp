#include "core/words/shorthand_phrases.h"

#include <algorithm>
#include <array>

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
    std::string_view mark;
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
        if (at + 1 < words.size() && folded(words[at]) == spelled.word)
            return {2, {std::string(spelled.mark) + folded(withoutComma(words[at + 1]))}};
    if (Phrase dead = deadColony(words, at); dead.words > 0) return dead;
    return spelledCells(words, at);
}

}  // namespace combwright
