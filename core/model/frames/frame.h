// Frames are counts in life. Frames filled from a count are alike and without a place; a frame
// gains a place and a history only when the keeper points at it. What was typed is kept as it was
// typed.
#pragma once

#include "core/model/describe.h"
#include "core/model/frames/box.h"

namespace combwright {

enum class Comb { Bare, Foundation, PartDrawn, Drawn, DrawnFat };
template <>
struct Choices<Comb> {
    static constexpr auto words =
        std::to_array<std::string_view>({"bare", "foundation", "part drawn", "drawn", "drawn fat"});
};

enum class Retired { Melted, Burnt, Sold, Missing };
template <>
struct Choices<Retired> {
    static constexpr auto words =
        std::to_array<std::string_view>({"melted", "burnt", "sold", "missing"});
};

/// What is to become of a frame, in the order of the digits it is typed by, 1 to 8. Refitted: its
/// comb goes into the pot, its wood is sound and gets new foundation. Melted: comb and frame go.
enum class Verdict { Keep, Scrape, Repair, Refit, Freeze, Melt, Hold, Burn };
template <>
struct Choices<Verdict> {
    static constexpr auto words = std::to_array<std::string_view>(
        {"keep", "scrape", "repair", "refit", "freeze", "melt", "hold", "burn"});
};

/// The faults a frame may have, each with the letter it is flagged by.
struct Fault {
    char letter;
    std::string_view word;
};
/// In the order they are listed to the person.
std::span<const Fault> faults();
/// The letters in the order of faults(), each once; nothing where one is no fault's letter.
std::optional<std::string> tidyFaults(std::string_view letters);

/// "W, S, B …": the letters there are.
std::string faultLetters();

struct Frame {
    static constexpr std::string_view table = "frame";
    Id<Frame> id;
    Id<FrameKind> kind;
    std::optional<Id<Box>> box;     ///< none: loose on a shelf
    std::optional<Count> position;  ///< from 1 at the left; none: exchangeable
    std::optional<Comb> comb;
    std::optional<Count> drawnYear;
    std::optional<bool> wet;
    std::optional<Share> filledA, filledB, capped;
    std::string faults;  ///< letters, as tidyFaults gives them
    std::optional<Day> frozen;
    std::optional<Retired> retired;
    std::optional<Day> retiredOn;
    std::optional<Verdict> verdict;  ///< what is to become of it, until that is done
    std::optional<Day> reviewed;     ///< when it was last looked through, judged or worked on
    std::string stack;               ///< which shelf, where it is loose
    std::string mark;                ///< written on it; empty for nearly all
    std::string note;
    static const Fields& fields();
};

enum class Occasion { Added, Visit, Pull, Load, WinterReview };
template <>
struct Choices<Occasion> {
    static constexpr auto words =
        std::to_array<std::string_view>({"added", "visit", "pull", "load", "winter review"});
};

/// One class of a box's count as it was typed: "8 drawn".
struct BoxCount {
    static constexpr std::string_view table = "box_count";
    Id<BoxCount> id;
    Id<Box> box;
    Day on;
    Occasion occasion = Occasion::Added;
    std::optional<Comb> comb;
    std::string faults;
    Count frames;
    std::optional<Verdict> verdict;
    std::optional<Id<FrameKind>> frameKind;  ///< where it is not the kind the box takes
    static const Fields& fields();
};

/// What was seen of one frame, or of so many alike in a box.
struct FrameCheck {
    static constexpr std::string_view table = "frame_check";
    Id<FrameCheck> id;
    std::optional<Id<Frame>> frame;
    std::optional<Id<Box>> box;
    Day on;
    Occasion occasion = Occasion::Visit;
    std::optional<Count> howMany;
    std::string faults;
    std::optional<Verdict> verdict;
    std::string note;
    static const Fields& fields();
};

/// A frame went from one box or shelf to another. The frame keeps what it brought with it: where it
/// came out of a box that was held back, it is held back too.
struct FrameMove {
    static constexpr std::string_view table = "frame_move";
    Id<FrameMove> id;
    Id<Frame> frame;
    Day on;
    std::optional<Id<Box>> fromBox;  ///< none: it lay loose
    std::optional<Id<Box>> toBox;
    std::string fromStack, toStack;  ///< which shelf, where loose
    static const Fields& fields();
};

}  // namespace combwright
