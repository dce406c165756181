// The tables word() looks in: a label for everything that has a key, those of actions in one and
// those of records, their fields and their choices in the other. Labels begin small, for they stand
// inside sentences and tables; each goes through the translator with the context "words".
#pragma once

#include <span>

namespace combwright {

struct Label {
    const char* key;
    const char* label;
};

/// What was done, as history says it. core/words/action_labels.cpp
std::span<const Label> actionLabels();
/// Records, fields, choices and the marks of the sheet. core/words/field_labels.cpp
std::span<const Label> fieldLabels();
/// Those of the second half of the alphabet. core/words/field_labels_n_to_z.cpp
std::span<const Label> fieldLabelsFromN();

}  // namespace combwright
