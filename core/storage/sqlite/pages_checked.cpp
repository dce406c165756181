#include "core/storage/sqlite/pages_checked.h"

namespace combwright {

std::string pagesChecked(const Database& database, const char* pragma) {
    std::string said;
    for (int asked = 0; asked < 2 && said != "ok"; ++asked) {
        said = "no answer";
        Statement check = database.prepare(pragma);
        bool first = true;
        for (check.run(); check.next(); first = false)
            if (first) said = check.text(0);
    }
    return said;
}

}  // namespace combwright
