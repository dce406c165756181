#include "ui/yard/form_fields.h"

#include <QCoreApplication>
#include <algorithm>

#include "core/storage/queries/hive_days.h"
#include "core/storage/queries/holds.h"
#include "core/storage/queries/yards.h"
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

std::optional<Id<Hive>> hiveDemanded(Session& session, const QComboBox* box) {
    const auto hive = chosenId<Hive>(box);
    if (!hive) session.tell(fieldWord("Choose a hive."), true);
    return hive;
}

QString markOf(const Hive& hive) { return fromUtf8(hive.mark.text()); }

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

QLineEdit* openLine(SmallForm& form, const QString& label, const char* name) {
    return form.line(label, name, fieldWord("may stay empty"));
}

QLineEdit* reasonLine(SmallForm& form, const Session& session, Day on) {
    if (!anythingApart(session.read(), on)) return nullptr;
    return form.line(fieldWord("On what grounds"), "reason_held",
                     fieldWord("only where something is held back"));
}

std::string reasonTyped(const QLineEdit* edit) { return edit ? typedWords(edit) : std::string(); }

}  // namespace combwright
