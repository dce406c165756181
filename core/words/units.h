// The units a person reads and types in. What is recorded is whole grams, tenths of a millimetre
// and tenths of a degree whatever is shown; units belong to the person and not to the season file,
// so they are set once for the program, as its language is.
#pragma once

#include <QString>
#include <optional>

namespace combwright {

enum class Units { Metric, UsCustomary };

/// The units shown and typed; metric until set. Read and set in the window's own thread, or before
/// there is any other.
Units shownUnits();
void setShownUnits(Units units);

/// "metric" and "us", as typed behind --units; nothing for any other word.
std::optional<Units> unitsNamed(const QString& name);
QString unitsName(Units units);

/// Sets units for as long as it lives; for prints and tests.
class UnitsWhile {
  public:
    explicit UnitsWhile(Units units) : m_before(shownUnits()) { setShownUnits(units); }
    ~UnitsWhile() { setShownUnits(m_before); }
    UnitsWhile(const UnitsWhile&) = delete;
    UnitsWhile& operator=(const UnitsWhile&) = delete;

  private:
    Units m_before;
};

}  // namespace combwright
