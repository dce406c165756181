// Every record there is, for what walks over all of them: the journal's list of tables, exports,
// audits and the one test that holds descriptions and file together.
#pragma once

#include "core/model/describe.h"

namespace combwright {

struct RecordType {
    std::string_view table;
    const Fields& (*fields)();
    /// Whether a row can be read as such a record, each value and all together.
    bool (*fits)(const Row& row) = nullptr;
};

/// In an order in which every reference points to an earlier table or to its own.
const std::vector<RecordType>& recordTypes();
const RecordType* findRecordType(std::string_view table);

}  // namespace combwright
