#include "core/catalogue/honey_tables.h"

#include <algorithm>
#include <stdexcept>

#include "core/catalogue/resource_table.h"

namespace combwright {
namespace {

/// A cell of a honey table that may not be blank.
double honeyNumber(const ResourceRow& row, std::string_view column) {
    const auto number = row.number(column);
    if (!number) throw std::logic_error("honey table: blank " + std::string(column));
    return *number;
}

PublishedHoneyLimit honeyLimitRow(const ResourceRow& row) {
    return {row.text("profile"),  row.text("edition"),   row.text("region"),
            row.text("binding"),  row.text("honey"),     row.text("grade"),
            row.text("quantity"), row.number("at_most"), row.number("at_least"),
            row.text("note"),     row.text("source")};
}

PublishedNetTolerance netToleranceRow(const ResourceRow& row) {
    return {row.text("edition"),      row.text("region"),      honeyNumber(row, "from_g"),
            honeyNumber(row, "to_g"), row.number("deficit_g"), row.number("deficit_percent"),
            row.text("source")};
}

PublishedLabelWord labelWordRow(const ResourceRow& row) {
    return {row.text("edition"), row.text("region"), row.text("what"),
            row.text("when"),    row.text("says"),   row.text("source")};
}

PublishedLabelGrid labelGridRow(const ResourceRow& row) {
    const std::string shape = row.text("shape");
    if (shape != "rectangle" && shape != "circle")
        throw std::logic_error("label_grids: unknown shape " + shape);
    return {row.text("id"),
            row.text("paper"),
            shape == "circle",
            static_cast<int>(honeyNumber(row, "columns")),
            static_cast<int>(honeyNumber(row, "rows")),
            honeyNumber(row, "cell_width_mm"),
            honeyNumber(row, "cell_height_mm"),
            honeyNumber(row, "left_mm"),
            honeyNumber(row, "top_mm"),
            honeyNumber(row, "pitch_x_mm"),
            honeyNumber(row, "pitch_y_mm"),
            row.text("source")};
}

PublishedJarSize jarSizeRow(const ResourceRow& row) {
    return {row.text("id"),
            row.text("label"),
            row.text("region"),
            honeyNumber(row, "net_g"),
            honeyNumber(row, "volume_ml"),
            row.text("vessel"),
            row.text("source")};
}

template <class Row>
std::vector<Row> readHoneyTable(std::string_view name, Row (*read)(const ResourceRow&)) {
    std::vector<Row> all;
    const ResourceTable table(name);
    for (const ResourceRow& row : table.rows()) all.push_back(read(row));
    return all;
}

template <class Row>
const Row* honeyRowOfId(const std::vector<Row>& all, std::string_view id) {
    const auto found =
        std::find_if(all.begin(), all.end(), [&](const Row& each) { return each.id == id; });
    return found == all.end() ? nullptr : &*found;
}

}  // namespace

const std::vector<PublishedHoneyLimit>& publishedHoneyLimits() {
    static const auto all = readHoneyTable("honey_limits", &honeyLimitRow);
    return all;
}

const std::vector<PublishedNetTolerance>& publishedNetTolerances() {
    static const auto all = readHoneyTable("net_tolerances", &netToleranceRow);
    return all;
}

const std::vector<PublishedLabelWord>& publishedLabelWords() {
    static const auto all = readHoneyTable("label_words", &labelWordRow);
    return all;
}

const std::vector<PublishedLabelGrid>& publishedLabelGrids() {
    static const auto all = readHoneyTable("label_grids", &labelGridRow);
    return all;
}

const std::vector<PublishedJarSize>& publishedJarSizes() {
    static const auto all = readHoneyTable("jar_sizes", &jarSizeRow);
    return all;
}

std::vector<std::string> honeyLimitProfiles() {
    std::vector<std::string> names;
    for (const PublishedHoneyLimit& each : publishedHoneyLimits())
        if (std::find(names.begin(), names.end(), each.profile) == names.end())
            names.push_back(each.profile);
    return names;
}

std::vector<PublishedHoneyLimit> honeyLimitsOf(std::string_view profile) {
    std::vector<PublishedHoneyLimit> limits;
    for (const PublishedHoneyLimit& each : publishedHoneyLimits())
        if (each.profile == profile) limits.push_back(each);
    return limits;
}

std::vector<std::string> labelRegions() {
    std::vector<std::string> regions;
    for (const PublishedLabelWord& each : publishedLabelWords())
        if (!each.region.empty() &&
            std::find(regions.begin(), regions.end(), each.region) == regions.end())
            regions.push_back(each.region);
    return regions;
}

std::vector<PublishedLabelWord> labelWordsFor(std::string_view region) {
    std::vector<PublishedLabelWord> words;
    for (const PublishedLabelWord& each : publishedLabelWords())
        if (each.region.empty()) words.push_back(each);
    if (region.empty()) return words;
    for (const PublishedLabelWord& each : publishedLabelWords())
        if (each.region == region) words.push_back(each);
    return words;
}

const PublishedLabelGrid* findLabelGrid(std::string_view id) {
    return honeyRowOfId(publishedLabelGrids(), id);
}

const PublishedJarSize* findJarSize(std::string_view id) {
    return honeyRowOfId(publishedJarSizes(), id);
}

std::optional<PaperMeasures> paperSize(std::string_view paper) {
    if (paper == "A4") return PaperMeasures{210.0, 297.0};
    if (paper == "Letter") return PaperMeasures{215.9, 279.4};
    return std::nullopt;
}

}  // namespace combwright
