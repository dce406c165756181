// The hives a deed on many of them is meant for, made visible: they stand in a line of the form
// and, counted, in its title. All of a yard are meant only where all were ticked or "all" was
// typed; a line left empty names nobody.
#pragma once

#include <QLineEdit>
#include <vector>

#include "core/model/yard/yard.h"
#include "core/support/result.h"
#include "ui/shell/small_form.h"

namespace combwright {

/// What a form is opened for: the marks ticked, "all" where all are, else the hive one is at.
struct HivesAsked {
    QString marks;
    bool ticked = false;
};

/// What the title of such a form begins with.
struct HivesDeed {
    QString alone;    ///< "Take a medicine out"
    QString ofHives;  ///< "Take a medicine out of": a hive follows
};

class HivesField {
  public:
    HivesField(SmallForm& form, Session& session, HivesDeed deed, HivesAsked asked,
               const Yard& yard, Day on);

    QLineEdit* line() const { return m_line; }
    std::string typed() const;
    bool saysAll() const;
    /// Whether any hive is named; where none is that is told and the cursor goes there.
    bool demand() const;
    /// That none is named, in words.
    static QString noneNamed();
    /// Which hives and how many, into the title.
    void entitle(const Result<std::vector<Hive>>& meant) const;
    /// What was ticked just now is newer than what was typed here before and came back.
    void keepTicks() const;

  private:
    SmallForm& m_form;
    Session& m_session;
    HivesDeed m_deed;
    HivesAsked m_asked;
    QString m_yard;
    Day m_on;
    QLineEdit* m_line;
};

}  // namespace combwright
