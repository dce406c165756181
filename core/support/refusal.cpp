#include "core/support/refusal.h"

#include <array>

namespace combwright {
namespace {

constexpr std::array codeKeys{
    std::pair{Code::Missing, std::string_view("missing")},
    std::pair{Code::UnknownKey, std::string_view("unknown_key")},
    std::pair{Code::WrongType, std::string_view("wrong_type")},
    std::pair{Code::Negative, std::string_view("negative")},
    std::pair{Code::OutOfRange, std::string_view("out_of_range")},
    std::pair{Code::Duplicate, std::string_view("duplicate")},
    std::pair{Code::NotAChoice, std::string_view("not_a_choice")},
    std::pair{Code::NotADay, std::string_view("not_a_day")},
    std::pair{Code::Contradiction, std::string_view("contradiction")},
    std::pair{Code::NotFound, std::string_view("not_found")},
    std::pair{Code::Ambiguous, std::string_view("ambiguous")},
    std::pair{Code::Taken, std::string_view("taken")},
    std::pair{Code::UnknownSize, std::string_view("unknown_size")},
    std::pair{Code::TooMany, std::string_view("too_many")},
    std::pair{Code::SecondUnknown, std::string_view("second_unknown")},
    std::pair{Code::Closed, std::string_view("closed")},
    std::pair{Code::NotClosed, std::string_view("not_closed")},
    std::pair{Code::BeforeItBegan, std::string_view("before_it_began")},
    std::pair{Code::InTheFuture, std::string_view("in_the_future")},
    std::pair{Code::NothingToDo, std::string_view("nothing_to_do")},
    std::pair{Code::OtherAction, std::string_view("other_action")},
    std::pair{Code::Fixed, std::string_view("fixed")},
    std::pair{Code::HeldBack, std::string_view("held_back")},
    std::pair{Code::NothingToUndo, std::string_view("nothing_to_undo")},
    std::pair{Code::NothingToRedo, std::string_view("nothing_to_redo")},
    std::pair{Code::MovedOn, std::string_view("moved_on")},
    std::pair{Code::NotThatStep, std::string_view("not_that_step")},
    std::pair{Code::FileMovedOn, std::string_view("file_moved_on")},
    std::pair{Code::ReadOnly, std::string_view("read_only")},
    std::pair{Code::PathTaken, std::string_view("path_taken")},
    std::pair{Code::NoSuchAction, std::string_view("no_such_action")},
    std::pair{Code::NoSuchCommand, std::string_view("no_such_command")},
    std::pair{Code::NotOfThis, std::string_view("not_of_this")},
    std::pair{Code::ToBeChosen, std::string_view("to_be_chosen")},
    std::pair{Code::WouldNotFit, std::string_view("would_not_fit")},
    std::pair{Code::Stopped, std::string_view("stopped")},
};

}  // namespace

std::string_view key(Code code) {
    for (const auto& [each, text] : codeKeys)
        if (each == code) return text;
    return "unknown";
}

const std::vector<Code>& allCodes() {
    static const std::vector<Code> codes = [] {
        std::vector<Code> all;
        for (const auto& [each, text] : codeKeys) all.push_back(each);
        return all;
    }();
    return codes;
}

std::string_view Refusal::value(std::string_view name) const {
    for (const auto& [each, text] : values)
        if (each == name) return text;
    return {};
}

}  // namespace combwright
