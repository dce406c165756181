#include "core/trade/colony/pollination_grade.h"

#include <string>

namespace combwright {

Result<PollinationGrade> pollinationGrade(const std::vector<double>& framesOfBees, double mean,
                                          double least) {
    if (framesOfBees.empty()) return Refusal{Code::Missing, "frames", {}};
    PollinationGrade grade;
    double sum = 0;
    for (std::size_t i = 0; i < framesOfBees.size(); ++i) {
        // Written so that what is no number is refused too.
        if (!(framesOfBees[i] >= 0))
            return Refusal{Code::Negative, "frames[" + std::to_string(i) + "]", {}};
        sum += framesOfBees[i];
        if (framesOfBees[i] < least) ++grade.tooWeak;
    }
    grade.meanFrames = sum / static_cast<double>(framesOfBees.size());
    grade.passes = grade.meanFrames >= mean && grade.tooWeak == 0;
    return grade;
}

}  // namespace combwright
