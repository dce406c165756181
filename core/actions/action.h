// An action is a described struct with perform(): the only hand-written step and the only one that
// decides anything. The struct's members are its fields in `play`, in `actions`, in the window's
// form and in the journal. One line in all.cpp makes an action known everywhere.
//
//     struct AddYard {
//         static constexpr std::string_view name = "add-yard";
//         using Answer = Id<Yard>;
//         Day on; Name yard; …
//         static const Fields& fields();
//         Result<Answer> perform(Write& file) const;
//     };
#pragma once

#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "core/model/describe.h"
#include "core/storage/season.h"

namespace combwright {

/// What an action made or touched, by table: {"hive", 12}.
using Made = std::vector<std::pair<std::string_view, std::int64_t>>;

template <class Record>
Made madeOf(const Id<Record>& id) {
    return {{Record::table, id.number}};
}
template <class Record>
Made madeOf(const std::vector<Id<Record>>& ids) {
    Made made;
    for (const Id<Record>& id : ids) made.emplace_back(Record::table, id.number);
    return made;
}

inline Made madeOf(const Made& made) { return made; }

/// An action without its type, for what handles them all alike.
struct ActionType {
    std::string_view name;
    const Fields& (*fields)();
    Result<Made> (*perform)(const Row& row, Write& file);
    bool needsWhy = false;  ///< not done without the note saying why
};

/// Every action, in the order they are listed to the person.
const std::vector<ActionType>& actionTypes();
const ActionType* findActionType(std::string_view name);

/// What may be said with any action: why it was done, which sheet it was typed on.
struct StepNote {
    std::string why = {};
    std::string sheet = {};
};

/// Refused with Missing where the action needs a why and the note gives none.
Result<void> demandWhy(const ActionType& type, const StepNote& note);

/// The play line of an action: {"do":"add-yard","on":"2027-04-01","yard":"Hill"}.
std::string playLine(const ActionType& type, const Row& row, const StepNote& note);

struct ActionDone {
    Made made;
    StepDone step;
};
/// Performs an action given by its row. Refusals and StorageError as Season::perform.
Result<ActionDone> performRow(Season& season, const ActionType& type, const Row& row,
                              const StepNote& note = {});

/// Performs an action and hands out its own answer.
template <class Action>
Result<typename Action::Answer> perform(Season& season, const Action& action,
                                        const StepNote& note = {}) {
    const ActionType* type = findActionType(Action::name);
    if (auto said = demandWhy(*type, note); !said) return said.error();
    Result<typename Action::Answer> answer = Refusal{Code::NoSuchAction, {}, {}};
    const StepInfo info{std::string(Action::name), playLine(*type, toRow(action), note), note.why,
                        note.sheet};
    auto done = season.perform(info, [&](Write& file) -> Result<void> {
        answer = action.perform(file);
        if (!answer) return answer.error();
        return {};
    });
    if (!done) return done.error();
    return answer;
}

}  // namespace combwright
