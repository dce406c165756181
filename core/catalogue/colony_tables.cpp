#include "core/catalogue/colony_tables.h"

#include <cmath>
#include <stdexcept>

#include "core/catalogue/resource_table.h"

namespace combwright {
namespace {

/// A cell that may not be blank.
double neededNumber(const ResourceRow& row, std::string_view column) {
    const auto number = row.number(column);
    if (!number) throw std::logic_error("trade table: blank " + std::string(column));
    return *number;
}

std::optional<Count> daysCell(const ResourceRow& row, std::string_view column) {
    const auto number = row.number(column);
    if (!number) return std::nullopt;
    return Count(std::llround(*number));
}

PublishedSupers supersCell(const ResourceRow& row) {
    const std::string text = row.text("supers");
    if (text == "off") return PublishedSupers::Off;
    if (text == "may stay") return PublishedSupers::MayStay;
    if (text == "label") return PublishedSupers::SeeLabel;
    throw std::logic_error("trade table waiting_days: unknown word for supers " + text);
}

PublishedThreshold thresholdRow(const ResourceRow& row) {
    return {row.text("edition"), row.text("region"), row.text("phase"),
            neededNumber(row, "per_100"), row.text("source")};
}

PublishedPhase phaseRow(const ResourceRow& row) {
    return {row.text("edition"),
            row.text("region"),
            row.text("phase"),
            static_cast<unsigned>(neededNumber(row, "from_month")),
            static_cast<unsigned>(neededNumber(row, "from_day")),
            row.text("source")};
}

PublishedWait waitRow(const ResourceRow& row) {
    return {row.text("edition"),
            row.text("region"),
            row.text("active"),
            supersCell(row),
            daysCell(row, "in_hive_from_days"),
            daysCell(row, "in_hive_to_days"),
            daysCell(row, "wait_days"),
            row.number("from_c"),
            row.number("to_c"),
            row.text("source")};
}

std::optional<unsigned> monthCell(const ResourceRow& row, std::string_view column) {
    const auto number = row.number(column);
    if (!number) return std::nullopt;
    return static_cast<unsigned>(*number);
}

PublishedFall fallRow(const ResourceRow& row) {
    const std::string reached = row.text("reached");
    if (reached != "over" && reached != "from")
        throw std::logic_error("trade table board_fall: unknown word " + reached);
    return {row.text("edition"),          row.text("region"),
            monthCell(row, "from_month"), monthCell(row, "to_month"),
            neededNumber(row, "per_day"), reached == "over",
            row.text("verdict"),          row.text("source")};
}

PublishedMonthUse monthUseRow(const ResourceRow& row) {
    return {static_cast<unsigned>(neededNumber(row, "month")), neededNumber(row, "use_g"),
            row.text("source")};
}

template <class Row>
std::vector<Row> readColonyTable(std::string_view name, Row (*read)(const ResourceRow&)) {
    std::vector<Row> all;
    const ResourceTable table(name);
    for (const ResourceRow& row : table.rows()) all.push_back(read(row));
    return all;
}

}  // namespace

const std::vector<PublishedThreshold>& publishedThresholds() {
    static const auto all = readColonyTable("mite_thresholds", &thresholdRow);
    return all;
}

const std::vector<PublishedPhase>& publishedPhases() {
    static const auto all = readColonyTable("season_phases", &phaseRow);
    return all;
}

const std::vector<PublishedWait>& publishedWaits() {
    static const auto all = readColonyTable("waiting_days", &waitRow);
    return all;
}

const std::vector<PublishedFall>& publishedFalls() {
    static const auto all = readColonyTable("board_fall", &fallRow);
    return all;
}

bool holdsIn(const PublishedFall& row, unsigned month) {
    if (!row.fromMonth || !row.toMonth) return true;
    if (*row.fromMonth <= *row.toMonth) return *row.fromMonth <= month && month <= *row.toMonth;
    return month >= *row.fromMonth || month <= *row.toMonth;
}

const std::vector<PublishedMonthUse>& publishedWinterUse() {
    static const auto all = readColonyTable("winter_use", &monthUseRow);
    return all;
}

const PublishedWait* findPublishedWait(std::string_view active, std::string_view region) {
    const PublishedWait* anywhere = nullptr;
    for (const PublishedWait& each : publishedWaits()) {
        if (each.active != active) continue;
        if (each.region == region) return &each;
        if (each.region.empty()) anywhere = &each;
    }
    return anywhere;
}

}  // namespace combwright
