// A finding: how it was looked for, what was counted, which field signs were met. Signs are ticked
// as seen, not there or not looked for; no form ever names what they mean.
#include <QCoreApplication>

#include "core/actions/health/findings.h"
#include "core/places/health/mites.h"
#include "core/places/pages/health/health_words.h"
#include "core/storage/queries/yards.h"
#include "core/words/words.h"
#include "ui/shell/form_reading.h"
#include "ui/shell/small_form.h"
#include "ui/yard/health_forms.h"

namespace combwright {
namespace {

QString findWord(const char* text) { return QCoreApplication::translate("health_forms", text); }

bool asksSigns(Pest what) {
    return what != Pest::Varroa && what != Pest::SmallHiveBeetle && what != Pest::WaxMoth;
}

}  // namespace

bool askForFinding(QWidget* parent, Session& session, const Hive& hive, Day on) {
    SmallForm form(parent, session,
                   findWord("Found in %1, %2").arg(fromUtf8(hive.mark.text()), dayText(on)));
    form.scrollFields();
    auto* what = form.choice(findWord("What"), "what");
    addChoices<Pest>(what, QString());
    auto* method = form.choice(findWord("How it was looked for"), "method");
    addChoices<FindingMethod>(method, QString());
    auto* mites = form.line(findWord("Mites"), "mites", findWord("6, ~6 by eye, 0 for none"));
    auto* bees = form.line(findWord("Bees in the sample"), "bees",
                           findWord("300; left empty the usual cup is assumed"));
    auto* board = form.line(findWord("Days the board lay"), "days_on_board", findWord("3"));
    auto* cells = form.line(findWord("Drone cells opened"), "cells", findWord("100"));
    auto* level = form.choice(findWord("How many, by eye"), "level");
    addChoices<Level>(level, findWord("not said"));
    auto* box = form.choice(findWord("In the box"), "box");
    box->addItem(findWord("none in particular"), 0);
    for (const Box& each : boxesOn(session.read(), hive.id))
        if (!each.mark.empty())
            box->addItem(fromUtf8(each.mark), static_cast<qlonglong>(each.id.number));
    std::vector<std::pair<const FieldInfo*, QComboBox*>> signs;
    for (const FieldInfo& field : FieldSigns::fields()) {
        auto* sign = form.choice(word(field.name), field.name.c_str());
        sign->addItem(findWord("not looked for"), -1);
        sign->addItem(findWord("seen"), 1);
        sign->addItem(findWord("looked for, not there"), 0);
        signs.emplace_back(&field, sign);
    }
    auto* note = form.line(findWord("Note"), "note", findWord("may stay empty"));
    auto* outlook = form.say(QStringLiteral(" "));
    outlook->setObjectName(QStringLiteral("outlook"));
    auto* duty = form.caution(QStringLiteral(" "));
    duty->setObjectName(QStringLiteral("duty"));

    const auto pest = [what] { return static_cast<Pest>(what->currentData().toInt()); };
    const auto way = [method] { return static_cast<FindingMethod>(method->currentData().toInt()); };
    const auto meant = [&] {
        RecordFinding deed;
        deed.on = on;
        deed.hive = hive.id;
        deed.what = pest();
        deed.method = way();
        deed.box = chosenId<Box>(box);
        deed.level = chosen<Level>(level);
        // A sign that is not asked for here was not looked for.
        if (asksSigns(pest()))
            for (const auto& [field, sign] : signs)
                if (const int said = sign->currentData().toInt(); said >= 0)
                    field->setIn(&deed.signs, Value{static_cast<std::int64_t>(said)});
        deed.note = typedWords(note);
        return deed;
    };
    const auto look = [&] {
        const bool varroa = pest() == Pest::Varroa;
        const bool sample = way() == FindingMethod::Wash || way() == FindingMethod::SugarRoll;
        form.showField(mites, varroa);
        form.showField(bees, varroa && sample);
        form.showField(board, varroa && way() == FindingMethod::Board);
        form.showField(cells, varroa && way() == FindingMethod::DroneBrood);
        form.showField(level, !varroa || way() == FindingMethod::Seen);
        for (const auto& [field, sign] : signs) form.showField(sign, asksSigns(pest()));
        Finding finding;
        finding.hive = hive.id;
        finding.on = on;
        finding.what = pest();
        finding.method = way();
        readsAs(mites->text(), finding.mites);
        if (sample) readsAs(bees->text(), finding.bees);
        if (way() == FindingMethod::Board) readsAs(board->text(), finding.daysOnBoard);
        if (way() == FindingMethod::DroneBrood) readsAs(cells->text(), finding.cells);
        QStringList said;
        if (varroa && finding.mites) {
            const MiteSample read = sampleOf(session.read(), finding);
            said << miteSampleText(read);
            if (const QString corrected = correctedText(read); !corrected.isEmpty())
                said << corrected;
        }
        form.sayAgain(outlook, said.join(QLatin1Char('\n')));
        form.sayAgain(duty, pest() == Pest::BroodDiseaseSuspected
                                ? reportingDuty() + QLatin1Char(' ') +
                                      findWord("The colony is held from this day, and its boxes.")
                            : asksSigns(pest()) ? findWord("Signs are no diagnosis.")
                                                : QString());
    };
    for (QComboBox* each : {what, method})
        QObject::connect(each, &QComboBox::currentIndexChanged, &form, look);
    for (QLineEdit* each : {mites, bees, board, cells})
        QObject::connect(each, &QLineEdit::textChanged, &form, look);
    form.keepDraft(QStringLiteral("finding %1 %2").arg(hive.id.number).arg(dayText(on)));
    look();
    form.beginIn(what);
    form.onAccept([&] {
        RecordFinding deed = meant();
        if (!mites->isHidden() && !readField(session, mites, deed.mites)) return false;
        if (!bees->isHidden() && !readField(session, bees, deed.bees)) return false;
        if (!board->isHidden() && !readField(session, board, deed.daysOnBoard)) return false;
        if (!cells->isHidden() && !readField(session, cells, deed.cells)) return false;
        if (level->isHidden()) deed.level.reset();
        return session.run(deed).has_value();
    });
    return form.exec() == QDialog::Accepted;
}

}  // namespace combwright
