#include "core/words/all_line.h"

#include <algorithm>

#include "core/words/shorthand.h"

namespace combwright {

bool saysAllDead(std::string_view all) {
    std::string_view said = all;
    if (readYardLine(all)) {
        // What stands behind the word that opens a line of the yard: "all dead".
        said.remove_prefix(std::min(said.find_first_not_of(" \t"), said.size()));
        said.remove_prefix(std::min(said.find_first_of(" \t"), said.size()));
    }
    return readShorthand(said).seen.looked == Looked::FoundDead;
}

Result<void> demandSaidOfAll(std::string_view all) {
    if (!saysAllDead(all)) return {};
    return Refusal{Code::OtherAction, "all", {{"action", "write-line"}, {"dead", "dead"}}};
}

}  // namespace combwright
