#include "tests/bench/ratio_table.h"

#include <algorithm>
#include <cstdio>
#include <utility>

namespace combwright::bench {
namespace {

std::string withPlaces(double value, int places) {
    char text[64];
    std::snprintf(text, sizeof text, "%.*f", places, value);
    return text;
}

/// Letters, not bytes: "×" and "≤" are several bytes and one column.
std::size_t columnsOf(const std::string& text) {
    return static_cast<std::size_t>(std::count_if(text.begin(), text.end(), [](char c) {
        return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U;
    }));
}

std::string goalText(const Goal& goal) {
    return (goal.kind == Goal::Kind::AtMost ? "≤ " : "≥ ") + withPlaces(goal.ratio, 2) + "×";
}

bool isMet(const Goal& goal, double ratio) {
    return goal.kind == Goal::Kind::AtMost ? ratio <= goal.ratio : ratio >= goal.ratio;
}

}  // namespace

void RatioTable::add(std::string what, std::string measured, std::string against, double ratio,
                     std::optional<Goal> goal) {
    m_lines.push_back({std::move(what), std::move(measured), std::move(against),
                       withPlaces(ratio, 2) + "×", goal ? goalText(*goal) : "–",
                       !goal                 ? "no goal"
                       : isMet(*goal, ratio) ? "met"
                                             : "not met"});
}

void RatioTable::addUnmeasured(std::string what, std::string why) {
    m_allMeasured = false;
    m_lines.push_back({std::move(what), "–", "–", "–", "–", "not measured: " + std::move(why)});
}

void RatioTable::note(std::string text) {
    Line line;
    line.what = "    " + std::move(text);
    line.wide = true;
    m_lines.push_back(std::move(line));
}

void RatioTable::print() const {
    std::vector<Line> lines{{"what", "measured", "held against", "ratio", "goal", ""}};
    lines.insert(lines.end(), m_lines.begin(), m_lines.end());
    const auto cells = [](const Line& line) {
        return std::vector<const std::string*>{&line.what, &line.measured, &line.against,
                                               &line.ratio, &line.goal};
    };
    std::vector<std::size_t> widths(5, 0);
    for (const Line& line : lines)
        if (!line.wide)
            for (std::size_t i = 0; i < widths.size(); ++i)
                widths[i] = std::max(widths[i], columnsOf(*cells(line)[i]));
    for (const Line& line : lines) {
        std::string text = line.what;
        if (!line.wide) {
            text.clear();
            for (std::size_t i = 0; i < widths.size(); ++i) {
                const std::string gap(widths[i] - columnsOf(*cells(line)[i]), ' ');
                // Words to the left, ratios and goals to the right.
                text += (i < 3 ? *cells(line)[i] + gap : gap + *cells(line)[i]) + "  ";
            }
            text += line.verdict;
        }
        std::printf("%s\n", text.c_str());
    }
}

RatioTable& table() {
    static RatioTable all;
    return all;
}

double median(std::vector<double> values) {
    if (values.empty()) return 0;
    std::sort(values.begin(), values.end());
    const std::size_t half = values.size() / 2;
    return values.size() % 2 ? values[half] : (values[half - 1] + values[half]) / 2;
}

double largest(const std::vector<double>& values) {
    return values.empty() ? 0 : *std::max_element(values.begin(), values.end());
}

std::string milliseconds(double ms) {
    return withPlaces(ms, ms < 1 ? 3 : ms < 10 ? 2 : ms < 100 ? 1 : 0) + " ms";
}

std::string megabytes(double kilobytes) { return withPlaces(kilobytes / 1024, 1) + " MiB"; }

}  // namespace combwright::bench
