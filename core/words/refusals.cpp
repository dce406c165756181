// What refusals and troubles say. Each sentence tells what was wrong and what to do; that nothing
// was changed is said by whoever shows it, for it holds for all of them.
#include <QCoreApplication>

#include <cstdlib>

#include "core/words/figures.h"
#include "core/words/words.h"

namespace combwright {
namespace {

QString say(const char* text) { return QCoreApplication::translate("refusals", text); }

/// What a person calls the field; its key where that has no word, or where it says which of many.
QString fieldWord(std::string_view key) {
    if (hasWord(key)) return word(key);
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

/// Of frames that are held, or a box for the frames in it.
const char* heldText(const Refusal& refusal) {
    const auto has = [&](const char* name) { return !refusal.value(name).empty(); };
    if (has("disease"))
        return QT_TRANSLATE_NOOP(
            "refusals",
            "{name} is held back ({reason}). Suspected disease is never overruled: call your bee "
            "inspector and move nothing until the hold is released.");
    if (has("verdict"))
        return QT_TRANSLATE_NOOP(
            "refusals",
            "{name}: what waits there is held back ({reason}). Judge its frames anew first, with a "
            "note that gives the reason; it stays written on them. Suspected disease is never "
            "overruled.");
    if (has("frames"))
        return QT_TRANSLATE_NOOP(
            "refusals",
            "{name}: frames in it are held back ({reason}; {frames} of them). Take them out, or "
            "release them with a note that gives the reason. Moving the box as it is needs a "
            "reason too; it stays written on it.");
    return QT_TRANSLATE_NOOP(
        "refusals",
        "{name} is held back ({reason}). A note with the reason is needed; it stays written on the "
        "frame. Suspected disease is never overruled.");
}

/// Of honey in a bucket, lot or jar.
const char* heldHoneyText(const Refusal& refusal) {
    const std::string_view why = refusal.value("why");
    if (why == "suspected disease" || why == "contact" || why == "dead-out unexplained")
        return QT_TRANSLATE_NOOP(
            "refusals",
            "{honey} is held since {since} ({why}). Ask your bee inspector before any of it is "
            "mixed, filled or given away. Where the inspector has said that it may go, give that "
            "as "
            "the reason; it stays written down.");
    return QT_TRANSLATE_NOOP(
        "refusals",
        "{honey} is held since {since} ({why}). Release it first, or give a reason; it stays "
        "written down with what is made of it.");
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
                   : has("low") ? QT_TRANSLATE_NOOP("refusals", "%1 must be more than {low}.")
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
            return QT_TRANSLATE_NOOP("refusals", "%1 and {other} cannot both hold. Put one right.");
        case Code::NotFound:
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
            return has("choices")
                       ? QT_TRANSLATE_NOOP("refusals",
                                           "%1: nothing is called {name}. It may be: {choices}.")
                       : QT_TRANSLATE_NOOP("refusals",
                                           "%1: there is no {name} on that day. Look at the name "
                                           "and the day.");
        case Code::Ambiguous:
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
            return QT_TRANSLATE_NOOP("refusals", "%1: more than there are or fit; at most {most}.");
        case Code::SecondUnknown:
            return QT_TRANSLATE_NOOP("refusals",
                                     "{mark}: a second weight is missing. One can be found by "
                                     "difference, two cannot; weigh it, or say how many frames it "
                                     "holds and how full they were.");
        case Code::Closed:
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
            return QT_TRANSLATE_NOOP("refusals", "%1 is before it existed, {since}.");
        case Code::InTheFuture:
            return QT_TRANSLATE_NOOP("refusals", "%1 has not come yet.");
        case Code::NothingToDo:
            return QT_TRANSLATE_NOOP("refusals", "%1: it is so already.");
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
            if (has("reason")) return heldText(refusal);
            if (has("left"))
                return QT_TRANSLATE_NOOP(
                    "refusals",
                    "Only boxes that are held back are left in the storeroom ({left}; {name} is "
                    "held since {since}: {why}). None of them is taken unasked. Put it on by its "
                    "mark if it is meant (in Yard: B), or leave it out of the line. Nothing of the "
                    "line was kept.");
            if (has("honey")) return heldHoneyText(refusal);
            if (has("candle"))
                return QT_TRANSLATE_NOOP(
                    "refusals",
                    "{candle}: nobody has burnt one in the holder “{mould}” to test, or the last "
                    "test did not go well. The holder stays with the candle, and one that burns is "
                    "a fire. Burn one first, on stone and watched, and write it down; nothing was "
                    "kept.");
            return refusal.value("why") == "dead-out unexplained"
                       ? QT_TRANSLATE_NOOP("refusals",
                                           "%1: {name} is held since {since}: its colony died and "
                                           "nobody has said "
                                           "yet of what. Answer the dead-out's questions first, or "
                                           "give a reason; "
                                           "it stays written on the box.")
                       : QT_TRANSLATE_NOOP(
                             "refusals",
                             "%1: {name} is held since {since} ({why}). Call your bee inspector "
                             "and "
                             "move nothing. Where the inspector has said that it may go, give that "
                             "as the reason.");
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
            return has("name") ? QT_TRANSLATE_NOOP("refusals", "There is no {name}.")
                               : QT_TRANSLATE_NOOP("refusals", "There is nothing of that name.");
    }
    return "";
}

const char* troubleText(Trouble trouble) {
    switch (trouble) {
        case Trouble::NotThere:
            return QT_TRANSLATE_NOOP("refusals",
                                     "There is no file %1. Nothing was made. Look at the path, or "
                                     "make a new season there.");
        case Trouble::NotOurs:
            return QT_TRANSLATE_NOOP("refusals", "%1 is not a season file. It was left as it is.");
        case Trouble::Newer:
            return QT_TRANSLATE_NOOP("refusals",
                                     "%1 was made by a newer Combwright (file version %2). It was "
                                     "left as it is. Open it with that version.");
        case Trouble::Damaged:
            return QT_TRANSLATE_NOOP(
                "refusals",
                "%1 is damaged (%2). It was left as it is. Open a copy from your backups.");
        case Trouble::Locked:
            return QT_TRANSLATE_NOOP("refusals",
                                     "Another program is writing to %1. Nothing was changed. Try "
                                     "again when it has finished.");
        case Trouble::Full:
            return QT_TRANSLATE_NOOP("refusals",
                                     "There is no room left on the disk of %1. The last change was "
                                     "not kept, all before it is. Make room, then repeat it.");
        case Trouble::NotWritable:
            return QT_TRANSLATE_NOOP("refusals",
                                     "%1 cannot be written (%2). Nothing was changed. Look at the "
                                     "rights of file and folder.");
        case Trouble::Moved:
            return QT_TRANSLATE_NOOP(
                "refusals",
                "%1 was replaced or moved while it was open. Nothing was written to the new one. "
                "Save what is open here as a new file.");
        case Trouble::OldUnwritable:
            return QT_TRANSLATE_NOOP("refusals",
                                     "%1 is of an older version and cannot be written here. Copy "
                                     "it to a place that can, and open that.");
        case Trouble::Failed:
            return QT_TRANSLATE_NOOP(
                "refusals",
                "%1 could not be read or written (%2). What was being done is not kept, all before "
                "it is. Try again; where that does not help, open one of the copies.");
    }
    return "";
}

const char* readOnlyText(ReadOnlyWhy why) {
    switch (why) {
        case ReadOnlyWhy::Asked:
            return QT_TRANSLATE_NOOP("refusals", "This file was opened for reading only.");
        case ReadOnlyWhy::NotWritable:
            return QT_TRANSLATE_NOOP(
                "refusals",
                "This file or its folder may not be written. To go on writing, "
                "keep it as a new file in a folder of yours.");
        case ReadOnlyWhy::NewerButReadable:
            return QT_TRANSLATE_NOOP("refusals",
                                     "This file was made by a newer Combwright. To write in it, "
                                     "open it with that version.");
        case ReadOnlyWhy::ForeignSchema:
            return QT_TRANSLATE_NOOP("refusals",
                                     "Another program put orders of its own into this file (a "
                                     "trigger or a view). They are not carried out here. Open a "
                                     "copy from before, or ask whoever put them there.");
    }
    return "";
}

}  // namespace

namespace {

/// A range of kilograms given in the file's grams: on the scales nobody reads those.
bool isWholeGrams(const Refusal& refusal) {
    const std::string_view high = refusal.value("high");
    return refusal.field.ends_with("_g") && high.size() > 3 &&
           high.find_first_not_of("0123456789") == std::string_view::npos &&
           refusal.value("low").find_first_not_of("0123456789") == std::string_view::npos;
}

}  // namespace

QString sentence(const Refusal& refusal) {
    QString text = say(refusalText(refusal));
    if (text.contains(QLatin1String("%1")))
        text = text.arg(refusal.field.empty()
                            ? QCoreApplication::translate("refusals", "What was given")
                            : fieldWord(refusal.field));
    const bool masses = refusal.code == Code::OutOfRange && isWholeGrams(refusal);
    for (const auto& [name, value] : refusal.values) {
        QString shown = name == "other" ? fieldWord(value) : fromUtf8(value);
        if (name == "most_g")
            shown =
                ShownFigure{massTyped(Mass::grams(std::atoll(value.c_str()))), massUnit()}.text();
        if (masses && name == "low") shown = massTyped(Mass::grams(std::atoll(value.c_str())));
        if (masses && name == "high")
            shown =
                ShownFigure{massTyped(Mass::grams(std::atoll(value.c_str()))), massUnit()}.text();
        if (name == "most_g" || name == "room_g" || name == "in_g" || name == "poured_g")
            shown =
                ShownFigure{massTyped(Mass::grams(std::atoll(value.c_str()))), massUnit()}.text();
        text.replace(QLatin1Char('{') + fromUtf8(name) + QLatin1Char('}'), shown);
    }
    // A value nobody gave leaves no brackets behind.
    static const QString unfilled = QStringLiteral("…");
    for (const char* name : {"wanted", "low", "high", "name", "value", "choices", "other", "count",
                             "most", "since", "action", "would", "step", "path", "reason"})
        text.replace(QStringLiteral("{%1}").arg(QLatin1String(name)), unfilled);
    text.front() = text.front().toUpper();
    return text;
}

namespace {

/// Why, in words for a person: SQLite's own and its statement are for a report. Of ours what stands
/// before the point in the middle is meant to be read.
QString whyText(const StorageError& error) {
    if (error.sqliteCode == 0)
        return fromUtf8(std::string_view(error.detail).substr(0, error.detail.find(" · ")));
    // Two of SQLite's result codes; their numbers are part of its documented interface.
    constexpr int outOfMemory = 7;
    constexpr int ioError = 10;
    switch (error.trouble) {
        case Trouble::Damaged:
            return say(QT_TRANSLATE_NOOP("refusals", "its pages do not fit together"));
        case Trouble::NotWritable:
            return say(
                QT_TRANSLATE_NOOP("refusals", "it, or the folder it lies in, cannot be opened"));
        default:
            break;
    }
    switch (error.sqliteCode & 0xff) {
        case outOfMemory:
            return say(QT_TRANSLATE_NOOP("refusals", "the machine ran out of memory"));
        case ioError:
            return say(QT_TRANSLATE_NOOP("refusals", "the disk or its connection failed"));
        default:
            return say(QT_TRANSLATE_NOOP("refusals", "the file did not take it"));
    }
}

}  // namespace

QString sentence(const StorageError& error) {
    QString text = say(troubleText(error.trouble));
    if (error.trouble == Trouble::Newer)
        return text.arg(fromUtf8(error.path), fromUtf8(error.detail));
    if (text.contains(QLatin1String("%2"))) return text.arg(fromUtf8(error.path), whyText(error));
    return text.arg(fromUtf8(error.path));
}

QString sentence(ReadOnlyWhy why) { return say(readOnlyText(why)); }

}  // namespace combwright
