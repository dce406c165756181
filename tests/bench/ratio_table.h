// What the benchmarks found, each figure held against its goal as a ratio: a time alone says
// little, for the next machine is twice as fast. What could not be measured stands there too, and
// the whole run then ends with an error; a missed goal does not, it is only said.
#pragma once

#include <optional>
#include <string>
#include <vector>

namespace combwright::bench {

/// Nothing: there is no goal, the figure is only told.
struct Goal {
    enum class Kind { AtMost, AtLeast } kind = Kind::AtMost;
    double ratio = 1.0;
};
inline Goal atMost(double ratio) { return {Goal::Kind::AtMost, ratio}; }
inline Goal atLeast(double ratio) { return {Goal::Kind::AtLeast, ratio}; }

class RatioTable {
  public:
    /// One line: what, how much, what it is held against, and the ratio of the two.
    void add(std::string what, std::string measured, std::string against, double ratio,
             std::optional<Goal> goal);
    void addUnmeasured(std::string what, std::string why);
    /// What belongs to the figures above but is held against nothing.
    void note(std::string text);

    bool allMeasured() const { return m_allMeasured; }
    bool empty() const { return m_lines.empty(); }
    void print() const;

  private:
    struct Line {
        std::string what, measured, against, ratio, goal, verdict;
        bool wide = false;  ///< `what` runs over all columns
    };
    std::vector<Line> m_lines;
    bool m_allMeasured = true;
};

/// The table of this run.
RatioTable& table();

double median(std::vector<double> values);
double largest(const std::vector<double>& values);
/// "18.3 ms", with as many places as tell something.
std::string milliseconds(double ms);
std::string megabytes(double kilobytes);

}  // namespace combwright::bench
