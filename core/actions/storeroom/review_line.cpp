#include "core/actions/storeroom/review_line.h"

#include <QString>
#include <algorithm>
#include <array>
#include <charconv>

#include "core/words/figures.h"
#include "core/words/room_line.h"
#include "core/words/units.h"

namespace combwright {
namespace {

constexpr std::string_view contentsKey = "contents";
constexpr std::int64_t mostTyped = 100;
/// More letters on end than that are a word nobody knows: "COLD" is not four faults.
constexpr std::size_t mostLettersOnEnd = 3;
constexpr std::size_t mostWordsOnEnd = 4;

using Texts = std::vector<std::string>;

bool isFigure(char c) { return c >= '0' && c <= '9'; }

std::string smallLetters(std::string_view text) {
    std::string small(text);
    std::transform(small.begin(), small.end(), small.begin(), [](char c) {
        return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
    });
    return small;
}

std::string capitals(std::string_view text) {
    std::string big(text);
    std::transform(big.begin(), big.end(), big.begin(), [](char c) {
        return c >= 'a' && c <= 'z' ? static_cast<char>(c - 'a' + 'A') : c;
    });
    return big;
}

std::string withoutBlanksAround(std::string_view text) {
    const std::size_t from = text.find_first_not_of(" \t");
    if (from == std::string_view::npos) return {};
    return std::string(text.substr(from, text.find_last_not_of(" \t") - from + 1));
}

Texts wordsIn(std::string_view text) {
    Texts words;
    std::string word;
    for (const char c : std::string(text) + ' ') {
        if (c != ' ' && c != '\t') {
            word += c;
        } else if (!word.empty()) {
            words.push_back(std::move(word));
            word.clear();
        }
    }
    return words;
}

std::string joined(const Texts& words, std::size_t from, std::size_t many) {
    std::string text;
    for (std::size_t i = from; i < from + many; ++i) text += (text.empty() ? "" : " ") + words[i];
    return text;
}

Refusal notRead(std::string value, std::string choices) {
    return {Code::NotAChoice,
            std::string(contentsKey),
            {{"value", std::move(value)}, {"choices", std::move(choices)}}};
}
Refusal wanted(std::string what, std::string value) {
    return {Code::WrongType,
            std::string(contentsKey),
            {{"wanted", std::move(what)}, {"value", std::move(value)}}};
}
Refusal twice(std::string what) {
    return {Code::Duplicate, std::string(contentsKey), {{"name", std::move(what)}}};
}

std::string framesWords() {
    return classWordList() + "; " + faultLetters() + "; " + verdictWords() + " or 1 to 8";
}
constexpr std::string_view remarkWords =
    "web, no web, scraped, not scraped, paint, no paint, wax 70 g, propolis 12 g, years 24x3 25x5, "
    "wood …, \"a note\"";

std::optional<std::int64_t> wholeFigure(std::string_view text) {
    if (text.empty() || text.size() > 9 || !std::all_of(text.begin(), text.end(), isFigure))
        return std::nullopt;
    std::int64_t number = 0;
    std::from_chars(text.data(), text.data() + text.size(), number);
    return number;
}

/// Faults by their letters, capitals or, few enough not to be a word, small ones.
std::optional<std::string> faultsByLetters(std::string_view text) {
    if (text.empty() || text.size() > mostLettersOnEnd) return std::nullopt;
    const bool small = std::any_of(text.begin(), text.end(), [](char c) { return c >= 'a'; });
    if (small && text.size() > 2) return std::nullopt;
    // Words made of the same letters are no faults: "1 no web" is a slip, not drone comb and mould.
    static constexpr std::array<std::string_view, 10> words{"NO", "ON", "DO", "SO", "GO",
                                                            "UP", "US", "TO", "BY", "OX"};
    if (std::find(words.begin(), words.end(), capitals(text)) != words.end()) return std::nullopt;
    return tidyFaults(capitals(text));
}

/// What was said of some frames, gathered word by word.
struct FramesSaid {
    std::optional<Comb> comb;
    std::string faults;
    std::optional<Verdict> verdict;

    Result<void> addClass(const FrameTally& seen, const std::string& word) {
        if (seen.comb && comb) return twice(word);
        if (seen.comb) comb = seen.comb;
        faults = *tidyFaults(faults + seen.faults);
        return {};
    }
    Result<void> addVerdict(Verdict said, const std::string& word) {
        if (verdict) return twice(word);
        verdict = said;
        return {};
    }
};

/// The longest run of words from there that names a class.
std::optional<std::pair<FrameTally, std::size_t>> classAt(const Texts& words, std::size_t at) {
    for (std::size_t many = std::min(mostWordsOnEnd, words.size() - at); many > 0; --many) {
        const std::string text = smallLetters(joined(words, at, many));
        if (auto seen = framesOfClass(Count(1), text)) return std::pair(*std::move(seen), many);
    }
    return std::nullopt;
}

/// Words from `at` on; stops at "of" and says where.
Result<std::size_t> addWords(FramesSaid& said, const Texts& words, std::size_t at) {
    while (at < words.size()) {
        const std::string& word = words[at];
        if (const auto seen = classAt(words, at)) {
            if (auto ok = said.addClass(seen->first, word); !ok) return ok.error();
            at += seen->second;
            continue;
        }
        if (smallLetters(word) == "of") return at;
        if (const auto verdict = verdictNamed(word)) {
            if (auto ok = said.addVerdict(*verdict, word); !ok) return ok.error();
            ++at;
            continue;
        }
        // "W6": letters and the digit of a verdict behind them.
        std::string_view letters = word;
        std::optional<Verdict> behind;
        if (letters.size() > 1 && isFigure(letters.back())) {
            behind = verdictNamed(letters.substr(letters.size() - 1));
            if (!behind) return notRead(word, framesWords());
            letters.remove_suffix(1);
        }
        const auto faults = faultsByLetters(letters);
        if (!faults) return notRead(word, framesWords());
        said.faults = *tidyFaults(said.faults + *faults);
        if (behind)
            if (auto ok = said.addVerdict(*behind, word); !ok) return ok.error();
        ++at;
    }
    return at;
}

Result<ReviewTally> parseTally(const std::string& part) {
    std::size_t end = 0;
    while (end < part.size() && isFigure(part[end])) ++end;
    const auto number = wholeFigure(std::string_view(part).substr(0, end));
    if (!number) return wanted("a number first, then what it is", part);
    if (end < part.size() && (part[end] == ',' || part[end] == '.'))
        return wanted("whole frames", part);
    if (*number > mostTyped)
        return Refusal{Code::OutOfRange, std::string(contentsKey), {{"low", "0"}, {"high", "100"}}};
    ReviewTally tally;
    tally.frames = Count(*number);
    const Texts words = wordsIn(std::string_view(part).substr(end));
    FramesSaid said;
    auto at = addWords(said, words, 0);
    if (!at) return at.error();
    if (*at < words.size()) {
        tally.frameKind = joined(words, *at + 1, words.size() - *at - 1);
        if (tally.frameKind.empty()) return wanted("a kind of frame behind \"of\"", part);
    }
    tally.comb = said.comb;
    if (words.empty() || *at == 0) tally.comb = Comb::Drawn;  // "8", as everywhere: drawn
    tally.faults = said.faults;
    tally.verdict = said.verdict;
    return tally;
}

/// Where a part of the counts ends. A comma behind a bare number and before another belongs to the
/// number, so that "6,5 drawn" is refused and not read as six and five.
Texts countParts(std::string_view text) {
    Texts parts;
    std::string part;
    for (std::size_t i = 0; i < text.size(); ++i) {
        const bool inNumber = text[i] == ',' && i + 1 < text.size() && isFigure(text[i + 1]) &&
                              wholeFigure(withoutBlanksAround(part)).has_value() &&
                              isFigure(part.empty() ? ' ' : part.back());
        if (text[i] == ',' && !inNumber) {
            parts.push_back(withoutBlanksAround(part));
            part.clear();
        } else {
            part += text[i];
        }
    }
    parts.push_back(withoutBlanksAround(part));
    std::erase(parts, std::string());
    return parts;
}

/// Remarks end at a comma or ";"; a comma between two digits is a decimal one.
Texts remarkParts(std::string_view text) {
    Texts parts;
    std::string part;
    for (std::size_t i = 0; i < text.size(); ++i) {
        const bool decimal = text[i] == ',' && i > 0 && i + 1 < text.size() &&
                             isFigure(text[i - 1]) && isFigure(text[i + 1]);
        if ((text[i] == ',' && !decimal) || text[i] == ';') {
            parts.push_back(withoutBlanksAround(part));
            part.clear();
        } else {
            part += text[i];
        }
    }
    parts.push_back(withoutBlanksAround(part));
    std::erase(parts, std::string());
    return parts;
}

/// Takes what stands in quotes out of the line, so that it may hold anything.
Result<std::pair<std::string, std::string>> noteAndRest(std::string_view text) {
    static constexpr std::array<std::string_view, 4> marks{"\"", "\u201c", "\u201d", "\u201e"};
    std::string rest;
    std::string note;
    bool inside = false;
    while (!text.empty()) {
        const auto* const mark =
            std::find_if(marks.begin(), marks.end(),
                         [&](std::string_view each) { return text.starts_with(each); });
        if (mark != marks.end()) {
            if (!inside && !note.empty()) return twice("note");
            inside = !inside;
            text.remove_prefix(mark->size());
            continue;
        }
        (inside ? note : rest) += text.front();
        text.remove_prefix(1);
    }
    if (inside) return wanted("a second quote behind the note", note);
    return std::pair(note, rest);
}

Result<Known<Mass>> parseMass(const std::string& text, BareMass bare) {
    QString figure = QString::fromStdString(text);
    const bool hasUnit =
        std::any_of(text.begin(), text.end(), [](char c) { return c >= 'A' && c != '~'; });
    const bool number = !text.empty() && (isFigure(text.front()) || text.front() == '~');
    if (number && !hasUnit) {
        if (bare == BareMass::Refused) return wanted("a mass with its unit, 70 g or 2.5 oz", text);
        figure += shownUnits() == Units::UsCustomary ? QStringLiteral(" oz") : QStringLiteral(" g");
    }
    const auto read = typedReading(figure);
    if (!read || !read->value) return wanted("a mass, 70 g or 2.5 oz", text);
    return *read;
}

class Remarks {
  public:
    Remarks(ReviewLine& line, BareMass bare) : m_line(line), m_bare(bare) {}

    Result<void> add(const std::string& part) {
        const Texts words = wordsIn(part);
        const std::string all = smallLetters(joined(words, 0, words.size()));
        const std::string first = smallLetters(words.front());
        if (all == "web" || all == "no web") return flag(m_line.web, all == "web", "web");
        if (all == "scraped" || all == "not scraped")
            return flag(m_line.scraped, all == "scraped", "scraped");
        if (all == "paint" || all == "no paint")
            return flag(m_line.wantsPaint, all == "paint", "paint");
        const std::string behind = joined(words, 1, words.size() - 1);
        if (first == "wax") return mass(m_line.scrapings, behind, "wax");
        if (first == "propolis") return mass(m_line.propolis, behind, "propolis");
        if (first == "wood" && !behind.empty()) {
            if (!m_line.wood.empty()) m_line.wood += ", ";
            m_line.wood += behind;
            return {};
        }
        const bool named = first == "years" || first == "year";
        if (named || looksLikeYears(words.front())) return years(named ? behind : part);
        return notRead(part, std::string(remarkWords));
    }

  private:
    static bool looksLikeYears(const std::string& word) {
        if (word.starts_with('\'') || word.starts_with("\u2019")) return true;
        return isFigure(word.front()) && (word.find_first_of("xX*") != std::string::npos ||
                                          word.find("\u00d7") != std::string::npos);
    }
    static Result<void> flag(std::optional<bool>& held, bool value, const char* name) {
        if (held) return twice(name);
        held = value;
        return {};
    }
    Result<void> mass(std::optional<Known<Mass>>& held, const std::string& text, const char* name) {
        if (held) return twice(name);
        auto read = parseMass(text, m_bare);
        if (!read) return read.error();
        held = *std::move(read);
        return {};
    }
    Result<void> years(const std::string& text) {
        if (!m_line.combYears.empty()) return twice("years");
        const auto read = parseCombYears(text);
        if (!read) return Refusal{read.error().code, std::string(contentsKey), read.error().values};
        for (const CombYear& each : *read)
            m_line.combYears += (m_line.combYears.empty() ? "" : " ") +
                                std::to_string(each.year.value()).substr(2) + "x" +
                                std::to_string(each.combs.value());
        return {};
    }

    ReviewLine& m_line;
    BareMass m_bare;
};

void replaceAll(std::string& text, std::string_view what, std::string_view with) {
    for (std::size_t at = text.find(what); at != std::string::npos;
         at = text.find(what, at + with.size()))
        text.replace(at, what.size(), with);
}

}  // namespace

Count ReviewLine::found() const {
    Count sum;
    for (const ReviewTally& tally : tallies) sum += tally.frames;
    return sum;
}

std::optional<Verdict> verdictNamed(std::string_view text) {
    const std::string small = smallLetters(text);
    if (small == "good") return Verdict::Keep;
    for (std::size_t i = 0; i < Choices<Verdict>::words.size(); ++i)
        if (Choices<Verdict>::words[i] == small || std::to_string(i + 1) == small)
            return static_cast<Verdict>(i);
    return std::nullopt;
}

std::string verdictWords() {
    std::string words;
    for (const std::string_view each : Choices<Verdict>::words)
        words += (words.empty() ? "" : ", ") + std::string(each);
    return words;
}

Result<std::vector<CombYear>> parseCombYears(std::string_view text) {
    const auto refuse = [](std::string value) {
        return Refusal{
            Code::WrongType,
            "comb_years",
            {{"wanted", "years and how many combs, 24x3 25x5"}, {"value", std::move(value)}}};
    };
    std::string plain(text);
    for (const std::string_view times : {"\u00d7", "X", "*"}) replaceAll(plain, times, "x");
    for (const std::string_view mark : {"\u2019", "\u2018", "'"}) replaceAll(plain, mark, "");
    std::replace(plain.begin(), plain.end(), ',', ' ');
    std::vector<CombYear> years;
    for (const std::string& word : wordsIn(plain)) {
        const std::size_t times = word.find('x');
        if (times == std::string::npos) return refuse(word);
        const auto year = wholeFigure(std::string_view(word).substr(0, times));
        const auto combs = wholeFigure(std::string_view(word).substr(times + 1));
        const bool shape = year && combs && (times == 2 || times == 4) && *combs <= mostTyped;
        if (!shape || (times == 4 && (*year < 1900 || *year > 2099))) return refuse(word);
        const Count full(times == 2 ? 2000 + *year : *year);
        const auto same = [&](const CombYear& each) { return each.year == full; };
        if (std::any_of(years.begin(), years.end(), same))
            return Refusal{Code::Duplicate, "comb_years", {{"name", std::to_string(full.value())}}};
        if (*combs > 0) years.push_back({full, Count(*combs)});
    }
    if (years.empty() && !withoutBlanksAround(text).empty()) return refuse(std::string(text));
    std::sort(years.begin(), years.end(),
              [](const CombYear& a, const CombYear& b) { return a.year < b.year; });
    return years;
}

Result<ReviewLine> parseReviewLine(std::string_view text, BareMass bare) {
    auto split = noteAndRest(text);
    if (!split) return split.error();
    ReviewLine line;
    line.note = withoutBlanksAround(split->first);
    const std::string& rest = split->second;
    const std::size_t remarksFrom = std::min(rest.find(';'), rest.size());
    line.counts = withoutBlanksAround(std::string_view(rest).substr(0, remarksFrom));
    const Texts counts = countParts(line.counts);
    const bool empty = counts.size() == 1 && smallLetters(counts.front()) == "empty";
    if (empty) line.tallies.push_back({Count(), std::nullopt, {}, std::nullopt, {}});
    if (!empty)
        for (const std::string& part : counts) {
            auto tally = parseTally(part);
            if (!tally) return tally.error();
            line.tallies.push_back(*std::move(tally));
        }
    if (remarksFrom < rest.size()) {
        Remarks remarks(line, bare);
        for (const std::string& part : remarkParts(std::string_view(rest).substr(remarksFrom + 1)))
            if (auto ok = remarks.add(part); !ok) return ok.error();
    }
    return line;
}

Result<FrameSeen> parseFrameSeen(std::string_view text) {
    FrameSeen seen;
    for (const std::string& part : remarkParts(text)) {
        FramesSaid said{seen.comb, seen.faults, seen.verdict};
        auto at = addWords(said, wordsIn(part), 0);
        if (at && *at < wordsIn(part).size()) at = notRead(part, framesWords());
        if (!at) return Refusal{at.error().code, "faults", at.error().values};
        seen = {said.faults, said.verdict, said.comb};
    }
    return seen;
}

}  // namespace combwright
