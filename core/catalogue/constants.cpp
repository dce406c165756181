#include "core/catalogue/constants.h"

#include <algorithm>
#include <stdexcept>

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
        return list;
    }();
    return all;
}

const PublishedConstant* findPublishedConstant(std::string_view name) {
    const auto& all = publishedConstants();
    const auto found =
        std::find_if(all.begin(), all.end(), [&](const auto& each) { return each.name == name; });
    return found == all.end() ? nullptr : &*found;
}

}  // namespace combwright
