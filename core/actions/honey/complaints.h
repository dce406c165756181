// Somebody says something of honey that went out: which jar, what is said, what was found. The
// first question after it is who else has that honey, so the filling is asked for.
#pragma once

#include "core/actions/action.h"
#include "core/model/honey/bottling.h"

namespace combwright {

/// Refused with BeforeItBegan before the filling.
struct NoteComplaint {
    static constexpr std::string_view name = "note-complaint";
    using Answer = Id<Complaint>;
    Day on;
    std::optional<Id<Bottling>> bottling;  ///< none: nobody knows which jar
    Name what;
    std::string who;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

/// What was found and done. Refused with Missing where that is not said, OtherAction where it is
/// closed, BeforeItBegan before it was made.
struct CloseComplaint {
    static constexpr std::string_view name = "close-complaint";
    using Answer = Id<Complaint>;
    Day on;
    Id<Complaint> complaint;
    std::string became;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

/// What may stand in a complaint, whoever writes it. Refused with BeforeItBegan, Missing or
/// Contradiction.
Result<void> demandComplaint(const Read& file, const Complaint& complaint);

}  // namespace combwright
