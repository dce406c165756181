// What refusals say. Each sentence tells what was wrong and what to do; that nothing
// was changed is said by whoever shows it, for it holds for all of them.
#include <QCoreApplication>

#include <algorithm>
#include <array>
#include <cstdlib>

#include "core/words/figures.h"
#include "core/words/held_refusals.h"
#include "core/words/typed_words.h"
#include "core/words/words.h"

namespace combwright {
namespace {

QString say(const char* text) { return QCoreApplication::translate("refusals", text); }

/// What a person calls the field; its key where that has no word, or where it says which of many.
QString fieldWord(std::string_view key) {
    if (hasWord(key)) return word(key);
    // A place in a file or a merge, "hive_weighing/15=15", is said as it is.
    if (key.find('/') != std::string_view::npos) return fromUtf8(key);
    const std::size_t last = key.rfind('_');
    if (last != std::string_view::npos && hasWord(key.substr(0, last)))
        return word(key.substr(0, last));
    return fromUtf8(key);
}

/// Why a box is not given to a hive to clean.
const char* barText(std::string_view bar) {
    if (bar == "no colony")
        return QT_TRANSLATE_NOOP("refusals",
                                 "{box} does not go to {hive}: no colony lives there. Open boxes "
                                 "on an empty hive bring robbers. Choose another hive.");
    if (bar == "hive held")
        return QT_TRANSLATE_NOOP(
            "refusals",
            "{box} does not go to {hive}: that hive is held back, and nothing "
            "of another hive goes there. Choose another, or release it first.");
    if (bar == "box held")
        return QT_TRANSLATE_NOOP("refusals",
                                 "{box} does not go to {hive}: it is held back, or the hive it "
                                 "came off is. It may go back there and nowhere else.");
    return QT_TRANSLATE_NOOP("refusals",
                             "{box} goes to no hive: disease is not ruled out where it came from. "
                             "Leave it closed until the inspector has looked.");
}

const char* refusalText(const Refusal& refusal) {
    const auto has = [&](const char* name) { return !refusal.value(name).empty(); };
    switch (refusal.code) {
        case Code::Missing:
            if (refusal.field == "usual_super")
                return QT_TRANSLATE_NOOP(
                    "refusals",
                    "Nobody said yet which kind of super this yard has. Put its first one on by "
                    "its "
                    "name (in Yard: B, then medium M1); from then on +1 puts on the same.");
            if (refusal.field == "run" && has("day"))
                return QT_TRANSLATE_NOOP(
                    "refusals",
                    "How warm and damp the room is, is kept with what is extracted in it, and on "
                    "{day} no run was there. Open one first (open 27-2 Hill), or leave both empty. "
                    "Nothing was kept yet.");
            if (refusal.field == "boxes" && has("hive"))
                return QT_TRANSLATE_NOOP(
                    "refusals",
                    "{hive} has no box the frames could hang in. Carry one over with them, or put "
                    "one on first (in Yard: B).");
            if (refusal.field == "new_boxes")
                return QT_TRANSLATE_NOOP(
                    "refusals",
                    "The frames need a box to hang in. Write the new stand's own boxes: deep, or "
                    "nuc N7; or carry a box over.");
            if (refusal.field == "freezer")
                return QT_TRANSLATE_NOOP(
                    "refusals",
                    "No freezer is written down yet. Enter it with the equipment, with its litres "
                    "or with how many frames it holds; then put the round in.");
            if (refusal.field == "why_fewer")
                return QT_TRANSLATE_NOOP("refusals",
                                         "There were {before} of it ({name}), now there are {now}. "
                                         "Say why there are fewer.");
            if (has("mould"))
                return QT_TRANSLATE_NOOP("refusals",
                                         "Nobody knows how much “{mould}” holds. Weigh a cavity "
                                         "full of water and write its volume or its size down, or "
                                         "say behind each block what it gave: L1 180 g.");
            if (refusal.field == "taken_off" || refusal.field == "put_on")
                return QT_TRANSLATE_NOOP("refusals",
                                         "%1: that step comes before and is not written down yet. "
                                         "Write it first, with its day.");
            if (has("bucket"))
                return QT_TRANSLATE_NOOP("refusals",
                                         "Nobody said how much honey is in bucket {bucket}. Weigh "
                                         "it, or say it by eye.");
            if (has("lot"))
                return QT_TRANSLATE_NOOP("refusals",
                                         "No bucket of {lot} holds honey yet. Fill one, then close "
                                         "the run.");
            if (has("form"))
                return QT_TRANSLATE_NOOP("refusals",
                                         "{name}: say which hive it goes to. Write box and hive, "
                                         "for instance {form}.");
            if (has("ask"))
                return QT_TRANSLATE_NOOP("refusals",
                                         "The table can be read in two ways ({ask}). Look at it "
                                         "with --dry-run, answer in a map, and import again.");
            return QT_TRANSLATE_NOOP("refusals", "%1 is missing. Give it.");
        case Code::UnknownKey:
            return QT_TRANSLATE_NOOP(
                "refusals", "%1 is not known here. Leave it out, or look for a slip of the pen.");
        case Code::WrongType:
            if (has("meant"))
                return QT_TRANSLATE_NOOP("refusals",
                                         "%1: does {value} mean {meant}? Write the number with a "
                                         "point and without quotes.");
            if (has("decimals") && refusal.value("decimals") != "0")
                return refusal.value("decimals") == "1"
                           ? QT_TRANSLATE_NOOP("refusals",
                                               "%1 is kept to one decimal. Round it, and give it "
                                               "again.")
                           : QT_TRANSLATE_NOOP("refusals",
                                               "%1 is kept to {decimals} decimals. Round it, and "
                                               "give it again.");
            return !has("wanted") ? QT_TRANSLATE_NOOP("refusals", "%1 is not what it should be.")
                   : has("value")
                       ? QT_TRANSLATE_NOOP("refusals", "%1: {value} will not do; wanted: {wanted}.")
                       : QT_TRANSLATE_NOOP("refusals", "%1 will not do; wanted: {wanted}.");
        case Code::Negative:
            return QT_TRANSLATE_NOOP("refusals", "%1 cannot be below zero.");
        case Code::OutOfRange:
            return has("low") && has("high") && refusal.value("high") != "inf"
                       ? QT_TRANSLATE_NOOP("refusals",
                                           "%1 is outside what can be: {low} to {high}.")
                   : has("low") && refusal.value("low") != "0"
                       ? QT_TRANSLATE_NOOP("refusals", "%1 must be at least {low}.")
                   : has("low")  ? QT_TRANSLATE_NOOP("refusals", "%1 must be more than {low}.")
                   : has("high") ? QT_TRANSLATE_NOOP("refusals", "%1 can be {high} at most.")
                                 : QT_TRANSLATE_NOOP("refusals", "%1 is outside what can be.");
        case Code::Duplicate:
            return has("name") ? QT_TRANSLATE_NOOP("refusals", "%1 is given twice: {name}.")
                               : QT_TRANSLATE_NOOP("refusals", "%1 is given twice.");
        case Code::NotAChoice:
            return has("choices")
                       ? QT_TRANSLATE_NOOP("refusals",
                                           "%1: {value} is none of the words for it. It may be: "
                                           "{choices}.")
                       : QT_TRANSLATE_NOOP("refusals", "%1: {value} is none of the words for it.");
        case Code::NotADay:
            return QT_TRANSLATE_NOOP(
                "refusals", "%1: {value} is no day of the calendar. Write year-month-day.");
        case Code::Contradiction:
            if (has("held"))
                return QT_TRANSLATE_NOOP(
                    "refusals",
                    "{held}: held comb does not share the freezer with other comb. Put it in by "
                    "itself, or not at all: cold does not cure foulbrood.");
            if (has("filled"))
                return QT_TRANSLATE_NOOP("refusals",
                                         "{filled} came off {by}. Leave the hive out, or look "
                                         "which box it is.");
            if (has("bar")) return barText(refusal.value("bar"));
            if (has("other_kind"))
                return QT_TRANSLATE_NOOP("refusals",
                                         "{kind} ({slots} in the machine) and {other_kind} "
                                         "({other_slots}) do not hang in "
                                         "it together. Spin them in loads of their own.");
            if (has("one"))
                return QT_TRANSLATE_NOOP(
                    "refusals",
                    "The line says {one} and {two}; only one can hold. Strike the other.");
            if (has("before"))
                return QT_TRANSLATE_NOOP("refusals",
                                         "%1 ({day}) lies before {other} ({before}). Look at both "
                                         "days.");
            return QT_TRANSLATE_NOOP("refusals", "%1 and {other} cannot both hold. Put one right.");
        case Code::NotFound:
            if (refusal.field == "what_if")
                return QT_TRANSLATE_NOOP("refusals",
                                         "{name} is no what-if. Choose a file that was made as "
                                         "one.");
            if (refusal.value("lacks") == "colony")
                return QT_TRANSLATE_NOOP(
                    "refusals",
                    "%1: no colony lives in {name}. Choose the hive where one does, or write down "
                    "that one came.");
            if (refusal.value("lacks") == "suspicion")
                return QT_TRANSLATE_NOOP("refusals",
                                         "%1: no disease is suspected in {name}, so it has no "
                                         "contacts to hold. Hold it back first.");
            if (refusal.value("lacks") == "peg")
                return QT_TRANSLATE_NOOP(
                    "refusals",
                    "No box carries peg {name} on that day. Clip it to its box first, also where "
                    "nobody knows the box; or look for a slip of the pen.");
            if (refusal.value("lacks") == "medicine")
                return has("name")
                           ? QT_TRANSLATE_NOOP("refusals",
                                               "%1: no medicine is in {name} by what is written "
                                               "down. Look at the hive and the medicine.")
                           : QT_TRANSLATE_NOOP("refusals",
                                               "%1: no medicine is in any hive by what is written "
                                               "down.");
            if (refusal.value("lacks") == "board")
                return QT_TRANSLATE_NOOP(
                    "refusals", "No clearer board is in {name} on that day. Look at the hive.");
            if (refusal.value("lacks") == "candles")
                return has("choices") ? QT_TRANSLATE_NOOP("refusals",
                                                          "No candles are wanted by {name}. They "
                                                          "are by: {choices}.")
                                      : QT_TRANSLATE_NOOP("refusals",
                                                          "No candles are wanted by {name}, nor by "
                                                          "any later day.");
            if (!has("name"))
                return QT_TRANSLATE_NOOP(
                    "refusals", "%1: there is none on that day. Look at the name and the day.");
            return has("choices")
                       ? QT_TRANSLATE_NOOP("refusals",
                                           "%1: nothing is called {name}. It may be: {choices}.")
                       : QT_TRANSLATE_NOOP("refusals",
                                           "%1: there is no {name} on that day. Look at the name "
                                           "and the day.");
        case Code::Ambiguous:
            if (!has("name"))
                return QT_TRANSLATE_NOOP("refusals", "%1: there are {count}. Say which.");
            if (has("choices"))
                return QT_TRANSLATE_NOOP("refusals",
                                         "%1: {name} may be any of {count}. Say which: {choices}.");
            return QT_TRANSLATE_NOOP(
                "refusals",
                "%1: there are {count} called {name}. Say which, for instance with its yard.");
        case Code::Taken:
            if (has("pegged"))
                return QT_TRANSLATE_NOOP("refusals",
                                         "Peg {name} is on {pegged} since {since}. On one day a "
                                         "number is one box: take another peg, or take that one "
                                         "off; it is free the day after.");
            if (has("pegged_of"))
                return QT_TRANSLATE_NOOP("refusals",
                                         "Peg {name} is on a box of {pegged_of} since {since}. On "
                                         "one day a number is one box: take another peg, or take "
                                         "that one off; it is free the day after.");
            if (has("pegged_unknown"))
                return QT_TRANSLATE_NOOP("refusals",
                                         "Peg {name} is on a box nobody knows since {since}. On "
                                         "one day a number is one box: take another peg, or take "
                                         "that one off; it is free the day after.");
            if (has("carries"))
                return QT_TRANSLATE_NOOP("refusals",
                                         "{name} carries peg {carries} that day. Use that number, "
                                         "or take it off first.");
            if (has("in_run"))
                return QT_TRANSLATE_NOOP("refusals",
                                         "{name} is in run {in_run} and not spun out there. Take "
                                         "it out of that one first.");
            if (has("written"))
                return QT_TRANSLATE_NOOP("refusals",
                                         "Something else is written down of that hive and day "
                                         "already. An import writes over nothing: put the record "
                                         "right by hand, or leave the row out.");
            if (has("board"))
                return QT_TRANSLATE_NOOP("refusals",
                                         "{name} has had a clearer board in since {since}. Take it "
                                         "out first.");
            return QT_TRANSLATE_NOOP(
                "refusals",
                "%1: {name} is in use. Choose another mark, or close the old one first.");
        case Code::UnknownSize:
            if (has("which"))
                return QT_TRANSLATE_NOOP(
                    "refusals",
                    "%1: nobody has recorded which frame {name} takes. Measure "
                    "the kind of box with its frame, then add it again.");
            return QT_TRANSLATE_NOOP(
                "refusals",
                "%1: nobody has recorded the measures of {name}. Measure it, then ask again.");
        case Code::TooMany:
            if (has("shelf_of"))
                return QT_TRANSLATE_NOOP(
                    "refusals",
                    "{shelf_of}: not so many are there by what is written down, on {day}; at most "
                    "{most}. Look at the number and the day; if there are more on the shelf, count "
                    "them first.");
            if (has("honey_in"))
                return QT_TRANSLATE_NOOP(
                    "refusals",
                    "There is not so much honey in {honey_in}: at most {most_g}. Where more is in "
                    "it than was written down, put that right first: weigh what is left, or amend "
                    "what came in.");
            if (has("never_out"))
                return QT_TRANSLATE_NOOP("refusals",
                                         "{never_out}: more came back than ever went out; at most "
                                         "{most}. Look at the number and the day.");
            if (has("packed_of"))
                return QT_TRANSLATE_NOOP(
                    "refusals",
                    "{packed_of}: {most} were packed, and what came home, broke and was given adds "
                    "up to {found}. Look at the numbers; if more were packed, write that down "
                    "first.");
            if (has("slots_of"))
                return QT_TRANSLATE_NOOP(
                    "refusals",
                    "{found} frames do not hang in the {slots_of}: it has {most} slots. Put what "
                    "is "
                    "over into the next load; if the machine has more, write that down with the "
                    "equipment.");
            if (has("frames_of"))
                return QT_TRANSLATE_NOOP(
                    "refusals",
                    "{frames_of}: there are not so many frames; at most {most} can go in.");
            if (has("off_of"))
                return QT_TRANSLATE_NOOP("refusals",
                                         "{off_of} has not so many boxes of that kind to take off: "
                                         "{most}. Nothing of the line was kept.");
            if (has("room_g"))
                return QT_TRANSLATE_NOOP(
                    "refusals",
                    "{in_g} do not go into that tank: with the headroom kept it takes {room_g}. "
                    "Take less, or a larger tank.");
            if (has("poured_g"))
                return QT_TRANSLATE_NOOP(
                    "refusals",
                    "More was weighed in the blend than went in: {poured_g} by its parts. Look at "
                    "the scale, or put a part right.");
            if (has("went_g"))
                return QT_TRANSLATE_NOOP("refusals",
                                         "{block} cannot have weighed less than what went out of "
                                         "it, {went_g}. Look at the mass, or put right what it "
                                         "gave.");
            if (has("over_on"))
                return QT_TRANSLATE_NOOP("refusals",
                                         "%1: on {over_on} more would have gone out than there "
                                         "was; at most {most}. Look at the mass and the day.");
            if (!has("most"))
                return QT_TRANSLATE_NOOP("refusals", "%1: more than there are or fit.");
            return QT_TRANSLATE_NOOP("refusals", "%1: more than there are or fit; at most {most}.");
        case Code::SecondUnknown:
            return QT_TRANSLATE_NOOP("refusals",
                                     "{mark}: a second weight is missing. One can be found by "
                                     "difference, two cannot; weigh it, or say how many frames it "
                                     "holds and how full they were.");
        case Code::Closed:
            if (!has("name"))
                return has("since")
                           ? QT_TRANSLATE_NOOP("refusals",
                                               "%1: that ended on {since}. Take an earlier day, or "
                                               "another one.")
                           : QT_TRANSLATE_NOOP("refusals",
                                               "%1: that has ended already. Take another one.");
            return QT_TRANSLATE_NOOP(
                "refusals", "%1: {name} is closed. Take an earlier day, or open a new one.");
        case Code::NotClosed:
            if (has("aside"))
                return QT_TRANSLATE_NOOP(
                    "refusals",
                    "{name}: frames still lie set aside ({aside} of them). Say what became of "
                    "them, "
                    "spun again, given back, put away, melted or fed back; then close the run.");
            if (has("loaded"))
                return QT_TRANSLATE_NOOP("refusals",
                                         "Something was done in this season already. A whole "
                                         "season is read into a new file only.");
            return QT_TRANSLATE_NOOP("refusals", "%1: {name} is not empty. Move its boxes first.");
        case Code::BeforeItBegan:
            if (!has("since"))
                return QT_TRANSLATE_NOOP("refusals",
                                         "%1: it has not begun yet. Write its beginning down "
                                         "first, or look at the day.");
            return QT_TRANSLATE_NOOP("refusals", "%1 is before it existed, {since}.");
        case Code::InTheFuture:
            return QT_TRANSLATE_NOOP("refusals", "%1 has not come yet.");
        case Code::NothingToDo:
            return has("since")
                       ? QT_TRANSLATE_NOOP("refusals", "%1: it is so already, since {since}.")
                       : QT_TRANSLATE_NOOP("refusals", "%1: it is so already.");
        case Code::OtherAction:
            if (has("dead"))
                return QT_TRANSLATE_NOOP(
                    "refusals",
                    "The line for all says that hives are dead, which is said of each hive by "
                    "itself: a death holds its combs back. Leave it out here and write {dead} in "
                    "the line of the hive that is.");
            return QT_TRANSLATE_NOOP("refusals", "%1: for that there is {action}. Use it.");
        case Code::Fixed:
            return QT_TRANSLATE_NOOP(
                "refusals",
                "%1 stays as it was recorded. Record anew what it should have been about.");
        case Code::HeldBack:
            return heldBackText(refusal);
        case Code::NothingToUndo:
            return QT_TRANSLATE_NOOP("refusals", "There is nothing to take back.");
        case Code::NothingToRedo:
            return QT_TRANSLATE_NOOP("refusals", "There is nothing to do again.");
        case Code::MovedOn:
            if (has("moved"))
                return QT_TRANSLATE_NOOP(
                    "refusals",
                    "Box {box} was moved on {moved}, by what is written down, so it cannot have "
                    "been moved on this earlier day too. Take that move back first, or name "
                    "another box. Nothing was kept.");
            return QT_TRANSLATE_NOOP("refusals",
                                     "Later changes stand on this one. Take those back first.");
        case Code::NotThatStep:
            return QT_TRANSLATE_NOOP(
                "refusals", "The newest step is {would}, not {step}. Look at the history again.");
        case Code::FileMovedOn:
            return QT_TRANSLATE_NOOP(
                "refusals", "Another program wrote to this file. Look at it again, then repeat.");
        case Code::ReadOnly:
            return QT_TRANSLATE_NOOP(
                "refusals",
                "This file is open for reading only. Save a copy somewhere and open that.");
        case Code::PathTaken:
            return QT_TRANSLATE_NOOP(
                "refusals", "There is a file of that name already: {path}. Choose another name.");
        case Code::NoSuchAction:
            return QT_TRANSLATE_NOOP("refusals",
                                     "There is no action {name}. The list is under: actions.");
        case Code::NoSuchCommand:
            if (has("name") && has("choices"))
                return QT_TRANSLATE_NOOP("refusals", "There is no {name}. There are: {choices}.");
            return has("name") ? QT_TRANSLATE_NOOP("refusals", "There is no {name}.")
                               : QT_TRANSLATE_NOOP("refusals", "There is nothing of that name.");
        case Code::NotOfThis:
            return QT_TRANSLATE_NOOP("refusals",
                                     "{path} is no copy of this season, or of one that was taken "
                                     "back since. Choose a copy of this season.");
        case Code::ToBeChosen:
            return QT_TRANSLATE_NOOP("refusals",
                                     "Both copies say something of the same, in {count} cases: "
                                     "choose in each what holds.");
        case Code::WouldNotFit:
            return QT_TRANSLATE_NOOP("refusals",
                                     "Put together, the records would not agree: {says}. Put that "
                                     "right in one of the copies first.");
        case Code::Stopped:
            return QT_TRANSLATE_NOOP("refusals", "Stopped, as was asked.");
    }
    return "";
}

bool isDigits(std::string_view text) {
    return !text.empty() && text.find_first_not_of("0123456789") == std::string_view::npos;
}

/// A range of kilograms given in the file's grams: on the scales nobody reads those.
bool isWholeGrams(const Refusal& refusal) {
    const std::string_view high = refusal.value("high");
    return refusal.field.ends_with("_g") && high.size() > 3 && isDigits(high) &&
           isDigits(refusal.value("low"));
}

QString typedWithUnit(const std::string& grams) {
    return ShownFigure{massTold(Mass::grams(std::atoll(grams.c_str()))), massUnit()}.text();
}

/// A value in the unit it is typed in; nothing where it stands as it was given.
std::optional<QString> inItsUnit(const Refusal& refusal, const std::string& name,
                                 const std::string& value) {
    static constexpr std::array<std::string_view, 5> masses{"most_g", "room_g", "in_g", "poured_g",
                                                            "went_g"};
    if (std::find(masses.begin(), masses.end(), name) != masses.end()) return typedWithUnit(value);
    const bool ofMass = refusal.field.ends_with("_g");
    // Wax of blocks is told behind their names, in grams too.
    if (refusal.code == Code::TooMany && name == "most" && isDigits(value) &&
        (ofMass || refusal.field == "blocks"))
        return massToTheGram(Mass::grams(std::atoll(value.c_str())));
    if (refusal.code != Code::OutOfRange) return std::nullopt;
    if (isWholeGrams(refusal)) {
        if (name == "low") return massTold(Mass::grams(std::atoll(value.c_str())));
        if (name == "high") return typedWithUnit(value);
    } else if (name == "low" && value != "0" && refusal.value("high").empty()) {
        if (ofMass && isDigits(value)) return shownPortion(std::atof(value.c_str())).text();
        if (refusal.field.ends_with("_mm")) return shownLength(std::atof(value.c_str())).text();
    }
    return std::nullopt;
}

/// Whether it is of a line whose words may be typed in the language spoken: boxes, frames,
/// verdicts.
bool isOfTypedWords(const Refusal& refusal) {
    static constexpr std::array<std::string_view, 5> lines{"boxes", "contents", "kind", "new_boxes",
                                                           "frames"};
    const bool ofWords = refusal.code == Code::NotAChoice || refusal.code == Code::NotFound ||
                         refusal.code == Code::Ambiguous;
    return ofWords && !refusal.value("choices").empty() &&
           std::find(lines.begin(), lines.end(), refusal.field) != lines.end();
}

QString shownValue(const Refusal& refusal, const std::string& name, const std::string& value) {
    if (name == "other") return fieldWord(value);
    if (name == "wanted") return QCoreApplication::translate("wanted", value.c_str());
    if (name == "reason" || name == "why") return choiceText(value);
    if (refusal.field == "shades" && name == "choices") return shadesAsSpoken(fromUtf8(value));
    if (isOfTypedWords(refusal) && (name == "choices" || name == "value" || name == "name"))
        return typedAsSpoken(fromUtf8(value));
    return inItsUnit(refusal, name, value).value_or(fromUtf8(value));
}

}  // namespace

QString sentence(const Refusal& refusal) {
    QString text = say(refusalText(refusal));
    const bool beginsWithName = text.startsWith(QLatin1String("{name}"));
    if (text.contains(QLatin1String("%1")))
        text = text.arg(refusal.field.empty()
                            ? QCoreApplication::translate("refusals", "What was given")
                            : fieldWord(refusal.field));
    for (const auto& [name, value] : refusal.values) {
        if (value.empty()) continue;
        const QString shown = shownValue(refusal, name, value);
        text.replace(QLatin1Char('{') + fromUtf8(name) + QLatin1Char('}'), shown);
    }
    // A value nobody gave leaves no brackets behind.
    static const QString unfilled = QStringLiteral("…");
    for (const char* name : {"wanted", "low", "high", "name", "value", "choices", "other", "count",
                             "most", "since", "action", "would", "step", "path", "reason"})
        text.replace(QStringLiteral("{%1}").arg(QLatin1String(name)), unfilled);
    // A name stays as it is written.
    if (!beginsWithName) text.front() = text.front().toUpper();
    return text;
}

}  // namespace combwright
