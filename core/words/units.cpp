#include "core/words/units.h"

namespace combwright {
namespace {

Units unitsOfTheProgram = Units::Metric;

}  // namespace

Units shownUnits() { return unitsOfTheProgram; }
void setShownUnits(Units units) { unitsOfTheProgram = units; }

std::optional<Units> unitsNamed(const QString& name) {
    for (const Units units : {Units::Metric, Units::UsCustomary})
        if (name == unitsName(units)) return units;
    return std::nullopt;
}

QString unitsName(Units units) {
    return units == Units::Metric ? QStringLiteral("metric") : QStringLiteral("us");
}

}  // namespace combwright
