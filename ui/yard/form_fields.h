// Fields that several forms of the yard have: a hive to choose, what a young queen is waited for
// by, yes or no or nobody knows, a number, a day. Unknown is always an answer and always the first.
#pragma once

#include <QComboBox>
#include <QLineEdit>
#include <optional>

#include "core/model/yard/queen.h"
#include "core/model/yard/yard.h"
#include "ui/shell/session.h"
#include "ui/shell/small_form.h"

namespace combwright {

enum class HiveOffered { WithColony, Empty };

/// The hives that stand on a day, as they are called then, those of one yard first; but one.
void offerHives(QComboBox* box, const Read& file, HiveOffered which, Id<Yard> near, Id<Hive> but,
                Day on);
/// The hive chosen; nothing where another answer was.
std::optional<Id<Hive>> hiveOffered(const QComboBox* box);

/// "nothing is waited for" and what a wait begins with.
void offerSteps(QComboBox* box, bool mayBeNone = true);
std::optional<QueenStep> stepOffered(const QComboBox* box);

/// Three answers, the first that nobody knows.
void offerYesNo(QComboBox* box, const QString& notKnown, const QString& yes, const QString& no);
std::optional<bool> yesNoOffered(const QComboBox* box);

/// False where what is typed is no whole number, which was then told; empty is none.
bool numberTyped(Session& session, const QLineEdit* edit, std::optional<Count>& number);
/// False where what is typed is no day, which was then told; empty is none.
bool dayTyped(Session& session, const QLineEdit* edit, std::optional<Day>& day);

/// A field for on what grounds what is held is moved, where anything is held that day; else none.
QLineEdit* reasonLine(SmallForm& form, const Session& session, Day on);
std::string reasonTyped(const QLineEdit* edit);

}  // namespace combwright
