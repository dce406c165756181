// The lines and days the keeper goes by: his own before any table, and with each whose it is.
#include <QCoreApplication>
#include <algorithm>

#include "core/actions/health/tables.h"
#include "core/catalogue/colony_tables.h"
#include "core/places/health/mite_lines.h"
#include "core/places/pages/health/health_words.h"
#include "core/words/words.h"
#include "ui/shell/form_reading.h"
#include "ui/shell/small_form.h"
#include "ui/yard/health_forms.h"

namespace combwright {
namespace {

QString lineWord(const char* text) { return QCoreApplication::translate("health_forms", text); }

QComboBox* whereChoice(SmallForm& form, const Yard& yard) {
    auto* where = form.choice(lineWord("For"), "where");
    where->addItem(lineWord("all yards"), 0);
    where->addItem(fromUtf8(yard.name.text()), static_cast<qlonglong>(yard.id.number));
    return where;
}

QComboBox* tableChoice(SmallForm& form, const QString& label, const char* name,
                       const std::string& now, const QStringList& all) {
    auto* choice = form.choice(label, name);
    for (const QString& each : all)
        if (choice->findText(each) < 0) choice->addItem(each);
    if (const int at = choice->findText(fromUtf8(now)); at >= 0) choice->setCurrentIndex(at);
    return choice;
}

}  // namespace

bool askForMiteLine(QWidget* parent, Session& session, const Yard& yard, Day on) {
    SmallForm form(parent, session, lineWord("Your own line for mites, from %1").arg(dayText(on)));
    const auto now = miteLineOn(session.read(), yard.id, on);
    form.say(lineWord("In force now: %1.").arg(miteLineText(now, true)));
    auto* phase = form.choice(lineWord("Phase of the year"), "phase");
    addChoices<SeasonPhase>(phase, QString());
    const auto inForce = phaseOn(session.read(), yard.id, on).phase;
    phase->setCurrentIndex(phase->findData(static_cast<int>(inForce)));
    auto* line = form.line(lineWord("Act at, in 100 bees"), "per_100", lineWord("2"));
    auto* where = whereChoice(form, yard);
    auto* source =
        form.line(lineWord("Where you have it from"), "source", lineWord("may stay empty"));
    form.beginIn(phase);
    form.keepDraft(QStringLiteral("mite-line %1 %2").arg(yard.id.number).arg(dayText(on)));
    form.onAccept([&] {
        SetMiteLine deed;
        deed.on = on;
        deed.phase = chosen<SeasonPhase>(phase).value_or(SeasonPhase::Peak);
        std::optional<Number> per100;
        if (!readField(session, line, per100)) return false;
        if (!per100) {
            session.tell(lineWord("Write at how many mites in 100 bees you act."), true);
            line->setFocus();
            return false;
        }
        deed.per100 = *per100;
        deed.yard = chosenId<Yard>(where);
        deed.source = typedWords(source);
        return session.run(deed).has_value();
    });
    return form.exec() == QDialog::Accepted;
}

bool askForPhaseDay(QWidget* parent, Session& session, const Yard& yard, Day on) {
    SmallForm form(parent, session, lineWord("The day a phase begins, from %1").arg(dayText(on)));
    const PhaseInForce now = phaseOn(session.read(), yard.id, on);
    form.say((now.own
                  ? lineWord("Now: %1 phase, by your own day.").arg(phaseText(now.phase))
                  : lineWord("Now: %1 phase, by the table (%2, %3).")
                        .arg(phaseText(now.phase), tableText(now.edition), tableText(now.region))));
    auto* phase = form.choice(lineWord("Phase of the year"), "phase");
    addChoices<SeasonPhase>(phase, QString());
    auto* day = form.line(lineWord("Begins each year on"), "day", lineWord("15 aug"));
    auto* where = whereChoice(form, yard);
    auto* source =
        form.line(lineWord("Where you have it from"), "source", lineWord("may stay empty"));
    form.beginIn(phase);
    form.keepDraft(QStringLiteral("phase-day %1 %2").arg(yard.id.number).arg(dayText(on)));
    form.onAccept([&] {
        SetPhaseDay deed;
        deed.on = on;
        deed.phase = chosen<SeasonPhase>(phase).value_or(SeasonPhase::Peak);
        std::optional<Day> begins;
        if (!readDayField(session, day, false, begins)) return false;
        if (!begins) {
            session.tell(lineWord("Write the day it begins on: 15 aug."), true);
            day->setFocus();
            return false;
        }
        deed.month = Count(monthOf(*begins));
        deed.dayOfMonth = Count(dayOfMonth(*begins));
        deed.yard = chosenId<Yard>(where);
        deed.source = typedWords(source);
        return session.run(deed).has_value();
    });
    return form.exec() == QDialog::Accepted;
}

bool askForTables(QWidget* parent, Session& session, Day on) {
    SmallForm form(parent, session, lineWord("Which tables count, from %1").arg(dayText(on)));
    const TableChoice now = tablesOn(session.read(), on);
    QStringList editions;
    QStringList phases;
    QStringList waits;
    for (const PublishedThreshold& each : publishedThresholds()) editions << fromUtf8(each.edition);
    for (const PublishedPhase& each : publishedPhases()) phases << fromUtf8(each.region);
    for (const PublishedWait& each : publishedWaits())
        if (!each.region.empty()) waits << fromUtf8(each.region);
    auto* lines = tableChoice(form, lineWord("Lines for mites"), "lines", now.lines, editions);
    auto* region = tableChoice(form, lineWord("Their region"), "lines_region", {}, {});
    auto* phase =
        tableChoice(form, lineWord("Phases, region"), "phases_region", now.phasesRegion, phases);
    auto* medicines = tableChoice(form, lineWord("Medicines, region"), "medicines_region",
                                  now.medicinesRegion, waits);
    const auto regions = [&] {
        region->clear();
        for (const PublishedThreshold& each : publishedThresholds())
            if (fromUtf8(each.edition) == lines->currentText() &&
                region->findText(fromUtf8(each.region)) < 0)
                region->addItem(fromUtf8(each.region));
        if (const int at = region->findText(fromUtf8(now.linesRegion)); at >= 0)
            region->setCurrentIndex(at);
    };
    form.fitWith(lines, regions);
    form.caution(labelIsLaw() + QLatin1Char(' ') +
                 lineWord("Your own line or day always comes before a table."));
    form.keepDraft(QStringLiteral("tables %1").arg(dayText(on)));
    form.onAccept([&] {
        ChooseTables deed;
        deed.on = on;
        deed.lines = lines->currentText().toStdString();
        deed.linesRegion = region->currentText().toStdString();
        deed.phasesRegion = phase->currentText().toStdString();
        deed.medicinesRegion = medicines->currentText().toStdString();
        return session.run(deed).has_value();
    });
    return form.exec() == QDialog::Accepted;
}

}  // namespace combwright
