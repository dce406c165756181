#include "core/words/shorthand.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <utility>

#include "core/words/shorthand_phrases.h"

namespace combwright {
namespace {

std::vector<std::string_view> wordsOf(std::string_view line) {
    std::vector<std::string_view> words;
    std::size_t at = 0;
    while (at < line.size()) {
        const std::size_t from = line.find_first_not_of(" \t", at);
        if (from == std::string_view::npos) break;
        const std::size_t end = std::min(line.find_first_of(" \t", from), line.size());
        words.push_back(line.substr(from, end - from));
        at = end;
    }
    return words;
}

/// A plain number with point or comma, at most four decimals: "7", "6.5", "2,5". No sign, no
/// exponent.
std::optional<double> plainNumber(std::string_view text) {
    if (text.empty() || text.size() > 8) return std::nullopt;
    std::string dotted(text);
    int points = 0;
    for (char& c : dotted) {
        if (c == ',') c = '.';
        if (c == '.')
            ++points;
        else if (c < '0' || c > '9')
            return std::nullopt;
    }
    if (points > 1 || dotted.front() == '.' || dotted.back() == '.') return std::nullopt;
    double number = 0;
    std::from_chars(dotted.data(), dotted.data() + dotted.size(), number);
    return number;
}

/// Whether a typed number must come out even in the unit that is kept; pounds never do in grams.
enum class Fit { Exact, Nearest };

/// The unit's amount for a typed number, where the unit can hold it.
template <class Unit>
std::optional<Unit> amount(std::string_view text, double smallestPerTyped, Fit fit = Fit::Exact) {
    const auto number = plainNumber(text);
    if (!number) return std::nullopt;
    const double scaled = *number * smallestPerTyped;
    if (fit == Fit::Exact && std::abs(scaled - std::round(scaled)) > 1e-6) return std::nullopt;
    return Codec<Unit>::unpack(Value{static_cast<std::int64_t>(std::llround(scaled))});
}

/// "7", "~6", "5-7", "?": a whole answer or half of one.
template <class Unit>
std::optional<Known<Unit>> reading(std::string_view text, double smallestPerTyped, How plain,
                                   Fit fit = Fit::Exact) {
    using Reading = Known<Unit>;
    if (text == "?") return Reading{std::nullopt, std::nullopt, How::Unknown};
    if (text == "~") return Reading{std::nullopt, std::nullopt, How::ByEye};  // some
    if (text.starts_with('~')) {
        const auto value = amount<Unit>(text.substr(1), smallestPerTyped, fit);
        if (!value) return std::nullopt;
        return Reading{*value, std::nullopt, How::ByEye};
    }
    if (const std::size_t dash = text.find('-'); dash != std::string_view::npos) {
        const auto low = amount<Unit>(text.substr(0, dash), smallestPerTyped, fit);
        const auto high = amount<Unit>(text.substr(dash + 1), smallestPerTyped, fit);
        if (!low || !high || *high < *low) return std::nullopt;
        return Reading{*low, *high, How::ByEye};
    }
    const auto value = amount<Unit>(text, smallestPerTyped, fit);
    if (!value) return std::nullopt;
    return Reading{*value, std::nullopt, plain};
}

template <class Unit>
std::string readingText(const Known<Unit>& known, double smallestPerTyped) {
    if (!known.value) return known.how == How::ByEye ? "~" : "?";
    const auto plain = [&](const Unit& unit) {
        const double number = static_cast<double>(unit.count()) / smallestPerTyped;
        std::string text = std::to_string(number);
        text.erase(text.find_last_not_of('0') + 1);
        if (text.back() == '.') text.pop_back();
        return text;
    };
    if (known.to) return plain(*known.value) + "-" + plain(*known.to);
    return (known.how == How::ByEye ? "~" : "") + plain(*known.value);
}

using TakeRest = bool (*)(SheetLine& line, std::string_view rest);

/// A mark that is a whole word.
struct WholeMark {
    std::string_view typed;
    void (*take)(SheetLine& line);
};

/// A mark followed by something; `take` says whether the rest could be read.
struct LeadingMark {
    std::string_view typed;
    TakeRest take;
};

void sayLooked(SheetLine& line, Looked looked) {
    line.seen.looked = looked;
    line.lookSaid = true;
}

constexpr auto wholeMarks = std::to_array<WholeMark>({
    {"e", [](SheetLine& line) { line.seen.eggs = true; }},
    {"e0", [](SheetLine& line) { line.seen.eggs = false; }},
    {"l", [](SheetLine& line) { line.seen.openBrood = true; }},
    {"l0", [](SheetLine& line) { line.seen.openBrood = false; }},
    {"c", [](SheetLine& line) { line.seen.cappedBrood = true; }},
    {"c0", [](SheetLine& line) { line.seen.cappedBrood = false; }},
    {"q", [](SheetLine& line) { line.seen.queenSeen = true; }},
    {"q?", [](SheetLine& line) { line.seen.queenSeen = false; }},
    // Who writes e0, l0 and c0 writes this too.
    {"q0", [](SheetLine& line) { line.seen.queenSeen = false; }},
    {"x", [](SheetLine& line) { sayLooked(line, Looked::NotOpened); }},
    {"lid", [](SheetLine& line) { sayLooked(line, Looked::LidOnly); }},
    {"o", [](SheetLine& line) { sayLooked(line, Looked::Opened); }},
    {"dead", [](SheetLine& line) { sayLooked(line, Looked::FoundDead); }},
    {"light", [](SheetLine& line) { line.seen.heft = Heft::Light; }},
    {"heavy", [](SheetLine& line) { line.seen.heft = Heft::Heavy; }},
    {"!", [](SheetLine& line) { line.seen.comeBack = true; }},
    {"shb", [](SheetLine& line) { line.beetles = Level::Seen; }},
    {"wm", [](SheetLine& line) { line.moths = Level::Seen; }},
    {"cb", [](SheetLine& line) { line.chalk = Level::Seen; }},
    // As it is said on the way home: "all supered".
    {"supered", [](SheetLine& line) { line.supersOn = Count(1); }},
});

bool takeQueenCells(SheetLine& line, std::string_view rest) {
    std::optional<CellState> state;
    if (rest.ends_with('c')) state = CellState::Capped;
    if (rest.ends_with('o')) state = CellState::Open;
    if (state) rest.remove_suffix(1);
    const auto cells = reading<Count>(rest, 1, How::Counted);
    if (!cells) return false;
    line.seen.queenCells = cells;
    line.seen.cellState = state;
    return true;
}

bool takeWash(SheetLine& line, std::string_view rest) {
    const std::size_t slash = rest.find('/');
    const auto mites = reading<Count>(rest.substr(0, slash), 1, How::Counted);
    if (!mites) return false;
    std::optional<Known<Count>> bees;
    if (slash != std::string_view::npos) {
        // Nobody counts three hundred bees: they are measured by the cup.
        bees = reading<Count>(rest.substr(slash + 1), 1, How::ByEye);
        if (!bees) return false;
    }
    line.mites = mites;
    line.bees = bees;
    return true;
}

bool takeRoll(SheetLine& line, std::string_view rest) {
    if (!takeWash(line, rest)) return false;
    line.sampledBy = FindingMethod::SugarRoll;
    return true;
}

/// "20/5": mites on a board that lay five days.
bool takeBoard(SheetLine& line, std::string_view rest) {
    const std::size_t slash = rest.find('/');
    const auto mites = reading<Count>(rest.substr(0, slash), 1, How::Counted);
    if (!mites) return false;
    std::optional<Count> days;
    if (slash != std::string_view::npos) {
        days = amount<Count>(rest.substr(slash + 1), 1);
        if (!days || days->value() < 1 || days->value() > 60) return false;
    }
    line.boardMites = mites;
    line.boardDays = days;
    return true;
}

/// "6/100": drone cells with mites in them, of a hundred opened.
bool takeDrones(SheetLine& line, std::string_view rest) {
    const std::size_t slash = rest.find('/');
    if (slash == std::string_view::npos) return false;
    const auto mites = reading<Count>(rest.substr(0, slash), 1, How::Counted);
    const auto cells = reading<Count>(rest.substr(slash + 1), 1, How::Counted);
    if (!mites || !cells) return false;
    line.droneMites = mites;
    line.droneCells = cells;
    return true;
}

/// Kilograms come out even in grams; pounds and ounces never do.
struct TypedMassUnit {
    std::string_view typed;
    double grams;
    Fit fit;
};
// Longer ones stand before those they end like: "kg" before "g".
constexpr auto typedMassUnits = std::to_array<TypedMassUnit>({{"kg", 1000.0, Fit::Exact},
                                                              {"lbs", 453.59237, Fit::Nearest},
                                                              {"lb", 453.59237, Fit::Nearest},
                                                              {"oz", 28.349523125, Fit::Nearest},
                                                              {"g", 1.0, Fit::Exact}});
constexpr TypedMassUnit typedKilograms = typedMassUnits[0];
constexpr TypedMassUnit typedPounds = typedMassUnits[2];

/// The unit a typed mass ends with, taken off it; else the one meant without. What stands behind
/// the number is what the person reads on the scale, whatever the mark begins with.
TypedMassUnit unitBehind(std::string_view& typed, const TypedMassUnit& meant) {
    for (const TypedMassUnit& unit : typedMassUnits)
        if (typed.size() > unit.typed.size() && typed.ends_with(unit.typed)) {
            typed.remove_suffix(unit.typed.size());
            return unit;
        }
    return meant;
}

bool isTypedMassUnit(std::string_view word) {
    return std::any_of(typedMassUnits.begin(), typedMassUnits.end(),
                       [&](const TypedMassUnit& unit) { return unit.typed == word; });
}

/// "20+21" lifted at each side, "41" as a whole; a unit behind the last number is that of both.
bool takeWeight(SheetLine& line, std::string_view rest, const TypedMassUnit& meant) {
    const TypedMassUnit unit = unitBehind(rest, meant);
    const std::size_t plus = rest.find('+');
    std::string_view left = rest.substr(0, plus);
    const TypedMassUnit leftUnit = plus == std::string_view::npos ? unit : unitBehind(left, unit);
    const auto first = reading<Mass>(left, leftUnit.grams, How::Weighed, leftUnit.fit);
    if (!first || !first->value) return false;
    if (plus == std::string_view::npos) {
        line.whole = first;
        line.left.reset();
        line.right.reset();
        return true;
    }
    const auto second = reading<Mass>(rest.substr(plus + 1), unit.grams, How::Weighed, unit.fit);
    if (!second || !second->value) return false;
    line.left = first;
    line.right = second;
    line.whole.reset();
    return true;
}

/// Nothing behind the mark: seen, how many is not said; 0 to 3: none, few, some, many.
bool takeLevel(std::optional<Level>& level, std::string_view rest) {
    constexpr Level steps[] = {Level::None, Level::Few, Level::Some, Level::Many};
    if (rest.size() != 1 || rest.front() < '0' || rest.front() > '3') return false;
    level = steps[rest.front() - '0'];
    return true;
}

bool takeFed(SheetLine& line, std::string_view rest, std::optional<FeedKind> as) {
    // Kilograms whatever units are shown: a line means the same on every machine.
    const TypedMassUnit unit = unitBehind(rest, typedKilograms);
    const auto fed = reading<Mass>(rest, unit.grams, How::Weighed, unit.fit);
    if (!fed) return false;
    line.fed = fed;
    line.fedAs = as;
    return true;
}

bool takeBoxes(std::optional<Count>& supers, std::optional<Count>& deeps, std::string_view rest) {
    const bool deep = rest.ends_with('d');
    if (deep) rest.remove_suffix(1);
    const auto boxes = amount<Count>(rest, 1);
    if (!boxes || boxes->value() < 1 || boxes->value() > 20) return false;
    (deep ? deeps : supers) = boxes;
    return true;
}

// Longer marks stand before the shorter ones they begin like.
constexpr auto leadingMarks = std::to_array<LeadingMark>({
    {"sr", &takeRoll},
    {"bd", &takeBoard},
    {"dr", &takeDrones},
    {"kg",
     [](SheetLine& line, std::string_view rest) { return takeWeight(line, rest, typedKilograms); }},
    {"lb", [](SheetLine& line, std::string_view rest) { return takeWeight(line, rest, typedPounds); }},
    {"shb",
     [](SheetLine& line, std::string_view rest) { return takeLevel(line.beetles, rest); }},
    {"wm", [](SheetLine& line, std::string_view rest) { return takeLevel(line.moths, rest); }},
    {"cb", [](SheetLine& line, std::string_view rest) { return takeLevel(line.chalk, rest); }},
    {"qc", &takeQueenCells},
    {"left",
     [](SheetLine& line, std::string_view rest) {
         const auto cells = reading<Count>(rest, 1, How::Counted);
         if (cells) line.seen.cellsLeft = cells;
         return cells.has_value();
     }},
    {"b",
     [](SheetLine& line, std::string_view rest) {
         const auto frames = reading<Frames>(rest, 10, How::Counted);
         if (frames) line.seen.brood = frames;
         return frames.has_value();
     }},
    {"s",
     [](SheetLine& line, std::string_view rest) {
         const auto frames = reading<Frames>(rest, 10, How::Counted);
         if (frames) line.seen.stores = frames;
         return frames.has_value();
     }},
    {"n",
     [](SheetLine& line, std::string_view rest) {
         const auto frames = reading<Frames>(rest, 10, How::Counted);
         if (frames) line.seen.seams = frames;
         return frames.has_value();
     }},
    {"w", &takeWash},
    {"fo", [](SheetLine& line,
              std::string_view rest) { return takeFed(line, rest, FeedKind::Fondant); }},
    {"fd",
     [](SheetLine& line, std::string_view rest) { return takeFed(line, rest, FeedKind::Dry); }},
    {"f",
     [](SheetLine& line, std::string_view rest) { return takeFed(line, rest, std::nullopt); }},
    {"t",
     [](SheetLine& line, std::string_view rest) {
         const auto temper = amount<Count>(rest, 1);
         const bool fits = temper && temper->value() >= 1 && temper->value() <= 5;
         if (fits) line.seen.temper = temper;
         return fits;
     }},
    {"+", [](SheetLine& line,
             std::string_view rest) { return takeBoxes(line.supersOn, line.deepsOn, rest); }},
    {"-", [](SheetLine& line,
             std::string_view rest) { return takeBoxes(line.supersOff, line.deepsOff, rest); }},
});

bool takeMark(SheetLine& line, std::string_view word) {
    for (const WholeMark& mark : wholeMarks)
        if (mark.typed == word) {
            mark.take(line);
            return true;
        }
    for (const LeadingMark& mark : leadingMarks)
        if (word.size() > mark.typed.size() && word.starts_with(mark.typed) &&
            mark.take(line, word.substr(mark.typed.size())))
            return true;
    return false;
}

/// Takes a word that is a mark where it stands: "lid" opens the line of a hive whose lid alone was
/// lifted; later it is a word ("new lid"). "dead" is a mark by what stands around it.
bool takeWord(SheetLine& line, std::string_view word, bool first) {
    const std::string mark = folded(withoutComma(word));
    return (first || mark != "lid") && mark != "dead" && takeMark(line, mark);
}

/// "kg45 lb": a unit that stands apart belongs to the mass before it.
bool takeMass(SheetLine& line, const std::vector<std::string_view>& words, std::size_t at) {
    if (at + 1 >= words.size() || withoutComma(words[at]) != words[at]) return false;
    const std::string unit = folded(withoutComma(words[at + 1]));
    const std::string mark = folded(words[at]);
    const bool ends = !mark.empty() && mark.back() >= '0' && mark.back() <= '9';
    return ends && isTypedMassUnit(unit) && takeMark(line, mark + unit);
}

/// Takes the mark, or the words that stand for one, at a place of the line; how many words it took.
std::size_t takeAt(SheetLine& line, const std::vector<std::string_view>& words, std::size_t at) {
    if (takeMass(line, words, at)) return 2;
    if (takeWord(line, words[at], at == 0)) return 1;
    const Phrase phrase = phraseAt(words, at);
    // "wash it": begins like a phrase, and is none.
    for (const std::string& mark : phrase.marks)
        if (!takeMark(line, mark)) return 0;
    return phrase.words;
}

void takeLine(SheetLine& line, std::string_view text) {
    std::string note;
    const auto words = wordsOf(text);
    std::size_t at = 0;
    while (at < words.size()) {
        if (const std::size_t taken = takeAt(line, words, at)) {
            at += taken;
            continue;
        }
        note += (note.empty() ? "" : " ") + std::string(words[at++]);
    }
    // "rain, not opened": the comma parted the note from a mark.
    note = std::string(withoutComma(note));
    if (!note.empty()) line.seen.note += (line.seen.note.empty() ? "" : " ") + note;
}

/// Whether two marks say two different things of one.
bool contradict(const SheetLine& a, const SheetLine& b) {
    const auto differ = [](const auto& one, const auto& two) { return one && two && one != two; };
    const Seen& x = a.seen;
    const Seen& y = b.seen;
    const bool cells = x.queenCells && y.queenCells &&
                       (x.queenCells != y.queenCells || x.cellState != y.cellState);
    const bool bees = a.mites && b.mites && (a.bees != b.bees || a.sampledBy != b.sampledBy);
    const bool board = a.boardMites && b.boardMites &&
                       (a.boardMites != b.boardMites || a.boardDays != b.boardDays);
    const bool drones = a.droneMites && b.droneMites &&
                        (a.droneMites != b.droneMites || a.droneCells != b.droneCells);
    const bool weights = (a.whole || a.left) && (b.whole || b.left) &&
                         (a.whole != b.whole || a.left != b.left || a.right != b.right);
    const bool pests =
        differ(a.beetles, b.beetles) || differ(a.moths, b.moths) || differ(a.chalk, b.chalk);
    const bool opened = a.lookSaid && b.lookSaid && x.looked != y.looked;
    return cells || bees || board || drones || weights || pests || opened ||
           differ(x.eggs, y.eggs) || differ(x.openBrood, y.openBrood) ||
           differ(x.cappedBrood, y.cappedBrood) || differ(x.queenSeen, y.queenSeen) ||
           differ(x.brood, y.brood) || differ(x.stores, y.stores) || differ(x.seams, y.seams) ||
           differ(x.cellsLeft, y.cellsLeft) || differ(x.temper, y.temper) ||
           differ(x.heft, y.heft) || differ(a.supersOn, b.supersOn) ||
           differ(a.supersOff, b.supersOff) || differ(a.deepsOn, b.deepsOn) ||
           differ(a.deepsOff, b.deepsOff) || differ(a.mites, b.mites) || differ(a.fed, b.fed) ||
           (a.fed && b.fed && a.fedAs != b.fedAs);
}

}  // namespace

std::optional<TwoMarks> contradictionIn(std::string_view text) {
    std::vector<std::pair<std::string_view, SheetLine>> marks;
    const auto words = wordsOf(text);
    std::size_t at = 0;
    while (at < words.size()) {
        SheetLine alone;
        const std::size_t taken = takeAt(alone, words, at);
        if (taken == 0) {
            ++at;
            continue;
        }
        // As it was typed, from its first word to its last.
        const std::string_view last = words[at + taken - 1];
        const std::string_view word(
            words[at].data(),
            static_cast<std::size_t>(last.data() + last.size() - words[at].data()));
        at += taken;
        for (const auto& [earlier, said] : marks)
            if (contradict(said, alone))
                return TwoMarks{std::string(withoutComma(earlier)),
                                std::string(withoutComma(word))};
        marks.emplace_back(word, std::move(alone));
    }
    return std::nullopt;
}

Looked plainlyLooked(const SheetLine& line) {
    const Seen& seen = line.seen;
    const bool inside = seen.eggs || seen.openBrood || seen.cappedBrood || seen.queenSeen ||
                        seen.brood || seen.stores || seen.seams || seen.queenCells ||
                        seen.cellsLeft || line.mites || line.droneMites || line.moths ||
                        line.chalk || line.deepsOff;
    if (inside) return Looked::Opened;
    const bool onTop =
        line.supersOn || line.supersOff || line.deepsOn || line.fed || line.beetles || seen.temper;
    if (onTop) return Looked::LidOnly;
    const bool outside = line.boardMites || line.whole || line.left || seen.heft;
    return outside ? Looked::NotOpened : Looked::Opened;
}

SheetLine readShorthand(std::string_view text) { return readShorthand({}, text); }

SheetLine readShorthand(std::string_view all, std::string_view own) {
    SheetLine ownLine;
    takeLine(ownLine, own);
    if (ownLine.lookSaid && ownLine.seen.looked != Looked::Opened) return ownLine;
    SheetLine line;
    takeLine(line, all);
    takeLine(line, own);
    if (!line.lookSaid) line.seen.looked = plainlyLooked(line);
    return line;
}

std::optional<YardLine> readYardLine(std::string_view text) {
    const auto words = wordsOf(text);
    if (words.empty()) return std::nullopt;
    const std::string opens = folded(withoutComma(words.front()));
    if (opens != "all" && opens != "x" && opens != "lid") return std::nullopt;
    YardLine yard;
    sayLooked(yard.each, opens == "lid" ? Looked::LidOnly : Looked::NotOpened);
    const auto note = [&yard](std::string_view word) {
        yard.note += (yard.note.empty() ? "" : " ") + std::string(word);
    };
    for (std::size_t i = 1; i < words.size(); ++i) {
        // "3 light" is said of three, nobody knows which; it must not become a mark of all.
        const bool some = plainNumber(words[i]) && i + 1 < words.size();
        if (some) {
            note(words[i]);
            note(words[++i]);
        } else if (!takeWord(yard.each, words[i], false)) {
            note(words[i]);
        }
    }
    return yard;
}

std::string writeShorthand(const SheetLine& line) {
    const Seen& seen = line.seen;
    const bool saysLooked = line.lookSaid || seen.looked != plainlyLooked(line);
    std::string text;
    const auto add = [&text](const std::string& word) {
        if (!word.empty()) text += (text.empty() ? "" : " ") + word;
    };
    const auto yesNo = [&](const std::optional<bool>& flag, const char* yes, const char* no) {
        if (flag) add(*flag ? yes : no);
    };
    if (saysLooked)
        add(seen.looked == Looked::NotOpened   ? "x"
            : seen.looked == Looked::LidOnly   ? "lid"
            : seen.looked == Looked::FoundDead ? "dead,"
                                               : "o");
    yesNo(seen.eggs, "e", "e0");
    yesNo(seen.openBrood, "l", "l0");
    yesNo(seen.cappedBrood, "c", "c0");
    yesNo(seen.queenSeen, "q", "q?");
    if (seen.brood) add("b" + readingText(*seen.brood, 10));
    if (seen.stores) add("s" + readingText(*seen.stores, 10));
    if (seen.seams) add("n" + readingText(*seen.seams, 10));
    if (seen.queenCells)
        add("qc" + readingText(*seen.queenCells, 1) +
            (!seen.cellState                      ? ""
             : *seen.cellState == CellState::Open ? "o"
                                                  : "c"));
    if (seen.cellsLeft) add("left" + readingText(*seen.cellsLeft, 1));
    const auto boxes = [&](const char* sign, const std::optional<Count>& n, const char* kind) {
        if (n) add(sign + std::to_string(n->value()) + kind);
    };
    boxes("+", line.supersOn, "");
    boxes("-", line.supersOff, "");
    boxes("+", line.deepsOn, "d");
    boxes("-", line.deepsOff, "d");
    if (line.mites)
        add((line.sampledBy == FindingMethod::SugarRoll ? "sr" : "w") +
            readingText(*line.mites, 1) +
            (line.bees
                 ? "/" + readingText(Known<Count>{line.bees->value, line.bees->to,
                                                  line.bees->value ? How::Counted : How::Unknown},
                                     1)
                 : std::string()));
    if (line.boardMites)
        add("bd" + readingText(*line.boardMites, 1) +
            (line.boardDays ? "/" + std::to_string(line.boardDays->value()) : std::string()));
    if (line.droneMites && line.droneCells)
        add("dr" + readingText(*line.droneMites, 1) + "/" + readingText(*line.droneCells, 1));
    if (line.fed)
        add((line.fedAs == FeedKind::Fondant ? "fo"
             : line.fedAs == FeedKind::Dry   ? "fd"
                                             : "f") +
            readingText(*line.fed, 1000));
    if (line.whole) add("kg" + readingText(*line.whole, 1000));
    if (line.left && line.right)
        add("kg" + readingText(*line.left, 1000) + "+" + readingText(*line.right, 1000));
    const auto pest = [&](const char* mark, const std::optional<Level>& level) {
        if (level)
            add(mark +
                (*level == Level::Seen ? std::string() : std::to_string(static_cast<int>(*level))));
    };
    pest("shb", line.beetles);
    pest("wm", line.moths);
    pest("cb", line.chalk);
    if (seen.temper) add("t" + std::to_string(seen.temper->value()));
    if (seen.heft == Heft::Light) add("light");
    if (seen.heft == Heft::Heavy) add("heavy");
    if (seen.comeBack.value_or(false)) add("!");
    add(seen.note);
    if (text == "dead,") text.pop_back();
    return text;
}

std::vector<ShorthandMark> shorthandMarks(Units shown) {
    const bool pounds = shown == Units::UsCustomary;
    return {
        {"e e0", "mark_eggs"},
        {"l c", "mark_brood_stages"},
        {"b7 s3", "mark_frames"},
        {"n8", "mark_seams"},
        {"q q?", "mark_queen"},
        {"qc0 qc2c qc3o", "mark_cells"},
        {"left1", "mark_left"},
        {"+1 -1 +1d", "mark_boxes"},
        {"w4/300 sr4/300", "mark_wash"},
        {"bd20/5", "mark_board"},
        {"dr6/100", "mark_drones"},
        {pounds ? "f5lb fo2lb fd2lb" : "f2.5 fo1 fd1", pounds ? "mark_fed_lb" : "mark_fed"},
        {pounds ? "lb45+46" : "kg20+21", pounds ? "mark_weight_lb" : "mark_weight"},
        {"shb2 wm cb0", "mark_pests"},
        {"t3", "mark_temper"},
        {"light heavy", "mark_heft"},
        {"x", "mark_not_opened"},
        {"lid", "mark_lid"},
        {"o", "mark_opened"},
        {"dead", "mark_dead"},
        {"!", "mark_come_back"},
    };
}

}  // namespace combwright
