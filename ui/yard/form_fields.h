// Fields that several forms of the yard have: a hive to choose, what a young queen is waited for
// by, yes or no or nobody knows, a line that may stay empty. Unknown is always an answer and always
// the first.
#pragma once

#include <QComboBox>
#include <QLineEdit>
#include <optional>

#include "core/model/yard/queen.h"
#include "core/model/yard/yard.h"
#include "ui/shell/form_reading.h"
#include "ui/shell/session.h"
#include "ui/shell/small_form.h"

namespace combwright {

enum class HiveOffered { WithColony, Empty };

/// The hives that stand on a day, as they are called then, those of one yard first; but one.
void offerHives(QComboBox* box, const Read& file, HiveOffered which, Id<Yard> near, Id<Hive> but,
                Day on);
/// The hive chosen; nothing where there is none to choose, which was then told.
std::optional<Id<Hive>> hiveDemanded(Session& session, const QComboBox* box);
/// As the record has it: on the day it was asked for.
QString markOf(const Hive& hive);

/// "nothing is waited for" and what a wait begins with.
void offerSteps(QComboBox* box, bool mayBeNone = true);

/// Three answers, the first that nobody knows.
void offerYesNo(QComboBox* box, const QString& notKnown, const QString& yes, const QString& no);
std::optional<bool> yesNoOffered(const QComboBox* box);

/// A line of words nobody has to fill in.
QLineEdit* openLine(SmallForm& form, const QString& label, const char* name);
/// A field for on what grounds what is held is moved, where anything is held that day; else none.
QLineEdit* reasonLine(SmallForm& form, const Session& session, Day on);
/// Empty where there is no such field.
std::string reasonTyped(const QLineEdit* edit);

}  // namespace combwright
