#include "core/catalogue/constants.h"

#include <algorithm>
#include <array>
#include <stdexcept>

#include "core/catalogue/colony_tables.h"
#include "core/catalogue/resource_table.h"

namespace combwright {

bool PublishedConstant::isAssumption() const { return source.starts_with("planning assumption"); }

const std::vector<PublishedConstant>& publishedConstants() {
    static const std::vector<PublishedConstant> all = [] {
        std::vector<PublishedConstant> list;
        const ResourceTable table("constants");
        for (const ResourceRow& row : table.rows()) {
            const auto value = row.number("value");
            if (!value)
                throw std::logic_error("trade table constants: no value for " + row.text("name"));
            list.push_back({row.text("name"), *value, row.text("unit"), row.number("published_sd"),
                            row.text("source")});
        }
        // The table of months is a table for its sources; each month is a rate like any other.
        for (const PublishedMonthUse& each : publishedWinterUse())
            list.push_back({winterUseName(each.month), each.use_g, "g", std::nullopt, each.source});
        return list;
    }();
    return all;
}

std::string winterUseName(unsigned month) {
    static constexpr std::array<const char*, 12> months{
        "january", "february", "march",     "april",   "may",      "june",
        "july",    "august",   "september", "october", "november", "december"};
    return std::string("winter_use_") + months.at(month - 1) + "_g";
}

const PublishedConstant* findPublishedConstant(std::string_view name) {
    const auto& all = publishedConstants();
    const auto found =
        std::find_if(all.begin(), all.end(), [&](const auto& each) { return each.name == name; });
    return found == all.end() ? nullptr : &*found;
}

}  // namespace combwright
