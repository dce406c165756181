#include "ui/yard/form_fields.h"

#include <QCoreApplication>
#include <algorithm>

#include "core/storage/queries/hive_days.h"
#include "core/storage/queries/holds.h"
#include "core/storage/queries/yards.h"
#include "core/words/day_words.h"
#include "core/words/words.h"

namespace combwright {
namespace {

QString fieldWord(const char* text) { return QCoreApplication::translate("form_fields", text); }

}  // namespace

void offerHives(QComboBox* box, const Read& file, HiveOffered which, Id<Yard> near, Id<Hive> but,
                Day on) {
    auto yards = openYards(file);
    std::stable_partition(yards.begin(), yards.end(),
                          [&](const Yard& yard) { return yard.id == near; });
    for (const Yard& yard : yards)
        for (const Hive& hive : hivesOn(file, yard.id, on)) {
            if (hive.id == but || hive.closed) continue;
            const bool lives = colonyLivingOn(file, hive.id, on).has_value();
            if (lives != (which == HiveOffered::WithColony)) continue;
            const QString mark = fromUtf8(hive.mark.text());
            box->addItem(yard.id == near
                             ? mark
                             : QStringLiteral("%1, %2").arg(mark, fromUtf8(yard.name.text())),
                         static_cast<qlonglong>(hive.id.number));
        }
}

std::optional<Id<Hive>> hiveOffered(const QComboBox* box) {
    const qlonglong number = box ? box->currentData().toLongLong() : 0;
    if (number <= 0) return std::nullopt;
    return Id<Hive>{number};
}

void offerSteps(QComboBox* box, bool mayBeNone) {
    if (mayBeNone) box->addItem(fieldWord("nothing is waited for"), -1);
    const auto offer = [&](QueenStep step, const QString& text) {
        box->addItem(text, static_cast<int>(step));
    };
    offer(QueenStep::CellSealed, fieldWord("a capped queen cell"));
    offer(QueenStep::CellOpen, fieldWord("an open queen cell"));
    offer(QueenStep::QueenLost, fieldWord("its own eggs, the queen gone"));
    offer(QueenStep::LarvaMoved, fieldWord("a larva moved into a cell"));
}

std::optional<QueenStep> stepOffered(const QComboBox* box) {
    const int step = box->currentData().toInt();
    if (step < 0) return std::nullopt;
    return static_cast<QueenStep>(step);
}

void offerYesNo(QComboBox* box, const QString& notKnown, const QString& yes, const QString& no) {
    box->addItem(notKnown, -1);
    box->addItem(yes, 1);
    box->addItem(no, 0);
}

std::optional<bool> yesNoOffered(const QComboBox* box) {
    const int answer = box->currentData().toInt();
    if (answer < 0) return std::nullopt;
    return answer == 1;
}

bool numberTyped(Session& session, const QLineEdit* edit, std::optional<Count>& number) {
    const QString typed = edit->text().trimmed();
    number.reset();
    if (typed.isEmpty()) return true;
    bool whole = false;
    const qlonglong value = typed.toLongLong(&whole);
    if (!whole || value < 0) {
        session.tell(
            fieldWord("\"%1\" is no whole number. Write one, or leave it empty.").arg(typed), true);
        return false;
    }
    number = Count(value);
    return true;
}

bool dayTyped(Session& session, const QLineEdit* edit, std::optional<Day>& day) {
    const QString typed = edit->text().trimmed();
    day.reset();
    if (typed.isEmpty()) return true;
    day = dayInWords(typed.toStdString(), session.clock().today());
    if (day) return true;
    session.tell(noDayText(typed), true);
    return false;
}

QLineEdit* reasonLine(SmallForm& form, const Session& session, Day on) {
    if (!anythingApart(session.read(), on)) return nullptr;
    return form.line(fieldWord("On what grounds"), "reason_held",
                     fieldWord("only where something is held back"));
}

std::string reasonTyped(const QLineEdit* edit) {
    return edit ? edit->text().simplified().toStdString() : std::string();
}

}  // namespace combwright
