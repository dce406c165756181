#include "ui/honey_room/honey_forms.h"

#include <QCoreApplication>
#include <algorithm>
#include <cmath>

#include "core/actions/boxes/looks.h"
#include "core/actions/honey/lots.h"
#include "core/actions/honey/readings.h"
#include "core/actions/honey/steps.h"
#include "core/actions/honey/telling.h"
#include "core/catalogue/honey_tables.h"
#include "core/model/storeroom/equipment.h"
#include "core/places/honey/blend_plan.h"
#include "core/places/honey/honey_store.h"
#include "core/places/pages/honey/honey_store_page.h"
#include "core/places/pages/honey/vessel_words.h"
#include "core/words/figures.h"
#include "core/words/words.h"
#include "ui/shell/form_reading.h"
#include "ui/shell/small_form.h"

namespace combwright {
namespace {

enum class Scale { Water, Refraction, Brix };

QString honeyFormWord(const char* text) { return QCoreApplication::translate("honey_forms", text); }

QString formTitle(const QString& what, const VesselView& view) {
    return honeyFormWord("%1: %2").arg(what, fromUtf8(view.name));
}

QString draftOf(const char* form, const VesselView& view) {
    const auto of = view.vessel.bucket ? view.vessel.bucket->number : view.vessel.lot->number;
    return QStringLiteral("%1 %2%3")
        .arg(QLatin1String(form), view.vessel.bucket ? QStringLiteral("b") : QStringLiteral("l"))
        .arg(of);
}

QLineEdit* dayLine(SmallForm& form) {
    return form.line(honeyFormWord("Day"), "day", honeyFormWord("today; or 14 aug"));
}

/// Left empty it is the day the room is at.
bool readDayOr(Session& session, QLineEdit* field, Day otherwise, Day& day) {
    std::optional<Day> typed;
    if (!readDayField(session, field, false, typed)) return false;
    day = typed.value_or(otherwise);
    return true;
}

void offerAnswer(QComboBox* box, const QString& notSaid, const QString& yes, const QString& no) {
    box->addItem(notSaid, -1);
    box->addItem(yes, 1);
    box->addItem(no, 0);
}

std::optional<bool> answered(const QComboBox* box) {
    const int data = box->currentData().toInt();
    return data < 0 ? std::nullopt : std::optional(data == 1);
}

QComboBox* lidChoice(SmallForm& form, const std::optional<bool>& lidded = {}) {
    auto* lid = form.choice(honeyFormWord("Lid"), "lidded");
    offerAnswer(lid, honeyFormWord("not said"), honeyFormWord("on"), honeyFormWord("off"));
    if (lidded) lid->setCurrentIndex(lid->findData(*lidded ? 1 : 0));
    return lid;
}

/// The fields of what one sees and tastes, filled with what was told before.
struct TraitFields {
    QLineEdit* colour = nullptr;
    QLineEdit* pfund = nullptr;
    QLineEdit* taste = nullptr;
    QLineEdit* strainer = nullptr;
    QLineEdit* place = nullptr;

    TraitFields(SmallForm& form, const HoneyTraits& told) {
        colour = form.line(honeyFormWord("Colour"), "colour", honeyFormWord("light amber"));
        pfund = form.line(honeyFormWord("Pfund scale, mm"), "pfund", honeyFormWord("48"));
        taste = form.line(honeyFormWord("Taste, in a word of yours"), "taste",
                          honeyFormWord("flowery; no claim of what it is from"), 30);
        strainer =
            form.line(honeyFormWord("Strained through"), "strainer", honeyFormWord("double sieve"));
        place = form.line(honeyFormWord("Stands in"), "place", honeyFormWord("cellar, shelf 2"));
        colour->setText(fromUtf8(told.colour));
        if (told.pfund) pfund->setText(QLocale().toString(told.pfund->mm(), 'g', 4));
        taste->setText(fromUtf8(told.taste));
        strainer->setText(fromUtf8(told.strainer));
        place->setText(fromUtf8(told.place));
    }
    bool read(Session& session, HoneyTraits& traits) const {
        traits.colour = typedWords(colour);
        traits.taste = typedWords(taste);
        traits.strainer = typedWords(strainer);
        traits.place = typedWords(place);
        // The scale is in millimetres whatever one weighs in.
        std::optional<Number> mm;
        if (!readField(session, pfund, mm)) return false;
        if (mm) traits.pfund = Length::roundedMm(mm->value());
        return true;
    }
};

/// The newest reading of any bucket or lot: whose instrument lies at hand.
std::optional<WaterReading> newestReading(const Read& file) {
    std::optional<WaterReading> newest;
    for (WaterReading& each : file.all<WaterReading>())
        if (!newest || each.on >= newest->on) newest = std::move(each);
    return newest;
}

struct ReadFields {
    QComboBox* scale;
    QLineEdit* figure;
    QLineEdit* warmth;
    QComboBox* compensates;
    QLineEdit* instrument;
    QLineEdit* calibrated;

    void putInto(WaterReading& reading, const std::optional<Number>& shown,
                 const std::optional<Temperature>& temperature) const {
        reading.temperature = temperature;
        reading.compensates = answered(compensates);
        if (!shown) return;
        switch (static_cast<Scale>(scale->currentIndex())) {
            case Scale::Water:
                reading.water = WaterContent::roundedPercent(shown->value());
                break;
            case Scale::Refraction:
                reading.index = shown;
                break;
            case Scale::Brix:
                reading.brix = shown;
                break;
        }
    }
};

ReadFields readFields(SmallForm& form, Session& session) {
    ReadFields fields{};
    fields.scale = form.choice(honeyFormWord("Scale"), "scale");
    fields.scale->addItems({honeyFormWord("water, %"), honeyFormWord("refractive index"),
                            honeyFormWord("sugar, Brix")});
    fields.figure = form.line(honeyFormWord("It shows"), "figure", honeyFormWord("17.4"));
    fields.warmth =
        form.line(honeyFormWord("Warmth of the sample, %1").arg(shownTemperature(0).unit),
                  "temperature", honeyFormWord("of the honey on the glass"));
    fields.compensates =
        form.choice(honeyFormWord("The instrument corrects for warmth"), "compensates");
    offerAnswer(fields.compensates, honeyFormWord("not said"), honeyFormWord("by itself"),
                honeyFormWord("no"));
    fields.instrument =
        form.line(honeyFormWord("Instrument"), "instrument", honeyFormWord("refractometer"));
    fields.calibrated = form.line(honeyFormWord("Checked on"), "calibrated",
                                  honeyFormWord("2 may; when somebody did"), 26);
    if (const auto before = newestReading(session.read())) {
        fields.instrument->setText(fromUtf8(before->instrument));
        if (before->calibrated) fields.calibrated->setText(fromUtf8(isoText(*before->calibrated)));
        if (before->compensates)
            fields.compensates->setCurrentIndex(
                fields.compensates->findData(*before->compensates ? 1 : 0));
    }
    return fields;
}

}  // namespace

std::optional<Name> lotNameTyped(Session& session, QLineEdit* field) {
    const auto name = Name::of(typedWords(field));
    if (!name) {
        session.tell(honeyFormWord("Give the lot a name: it is what a trace and its jars call it."),
                     true);
        field->setFocus();
    }
    return name;
}

bool askToReadWater(QWidget* parent, Session& session, const VesselView& view, Day on) {
    SmallForm form(parent, session, formTitle(honeyFormWord("Water"), view));
    const ReadFields fields = readFields(form, session);
    auto* keep = form.choice(honeyFormWord("Keep"), "keep");
    keep->addItem(honeyFormWord("as it was read"), 0);
    keep->addItem(honeyFormWord("with the corrected figure"), 1);
    auto* day = dayLine(form);
    auto* note = form.line(honeyFormWord("Note"), "note", honeyFormWord("may stay empty"));
    auto* says = form.caution(QStringLiteral(" "));
    says->setObjectName(QStringLiteral("says"));
    const auto look = [&] {
        std::optional<Number> shown;
        std::optional<Temperature> warmth;
        readsAs(fields.figure->text(), shown);
        readsAs(fields.warmth->text(), warmth);
        WaterReading reading;
        fields.putInto(reading, shown, warmth);
        const auto outlook =
            shown ? readingSays(reading) : Result<ReadingSays>(Refusal{Code::Missing, {}, {}});
        QString text;
        if (outlook && outlook->awaits)
            text = readingSaysText(*outlook);
        else if (outlook && !warmth && !reading.compensates.value_or(false))
            text = honeyFormWord(
                "Without the warmth of the sample nobody can say how far it is "
                "off: about 0.1 points for each degree away from 20 °C.");
        const bool offered = outlook && outlook->correctedPercent.has_value();
        if (!offered) keep->setCurrentIndex(0);
        form.showField(keep, offered);
        form.sayAgain(says, text);
    };
    for (QLineEdit* each : {fields.figure, fields.warmth})
        QObject::connect(each, &QLineEdit::textChanged, &form, look);
    for (QComboBox* each : {fields.scale, fields.compensates})
        QObject::connect(each, &QComboBox::currentIndexChanged, &form, look);
    look();
    form.beginIn(fields.figure);
    form.keepDraft(draftOf("read-water", view));
    look();
    form.onAccept([&] {
        std::optional<Number> shown;
        ReadWater deed;
        if (!readField(session, fields.figure, shown) ||
            !readField(session, fields.warmth, deed.temperature) ||
            !readDayField(session, fields.calibrated, false, deed.calibrated) ||
            !readDayOr(session, day, on, deed.on))
            return false;
        WaterReading reading;
        fields.putInto(reading, shown, deed.temperature);
        deed.bucket = view.vessel.bucket;
        deed.lot = view.vessel.lot;
        deed.water = reading.water;
        deed.index = reading.index;
        deed.brix = reading.brix;
        deed.compensates = reading.compensates;
        deed.instrument = typedWords(fields.instrument);
        deed.note = typedWords(note);
        if (keep->currentIndex() == 0) return session.run(deed).has_value();
        return session.together([&](Season& season) -> Result<void> {
            if (auto done = perform(season, deed, StepNote{}); !done) return done.error();
            TakeCorrection take;
            take.on = deed.on;
            take.bucket = deed.bucket;
            take.lot = deed.lot;
            if (auto done = perform(season, take, StepNote{}); !done) return done.error();
            return {};
        });
    });
    return form.exec() == QDialog::Accepted;
}

bool askToDescribe(QWidget* parent, Session& session, const VesselView& view, Day on) {
    SmallForm form(parent, session, formTitle(honeyFormWord("What is told of it"), view));
    const TraitFields traits(form, view.traits);
    auto* lid = lidChoice(form, view.lidded);
    QComboBox* kind = nullptr;
    QLineEdit* tank = nullptr;
    if (view.bucket) {
        kind = form.choice(honeyFormWord("Kind of bucket"), "kind");
        kind->addItem(honeyFormWord("not said"), 0);
        for (const Equipment& each : session.read().all<Equipment>()) {
            if (each.item != EquipmentItem::Bucket) continue;
            QString name = each.name.empty() ? honeyFormWord("bucket") : fromUtf8(each.name);
            if (each.capacity)
                name = honeyFormWord("%1, holds %2")
                           .arg(name, massText(static_cast<double>(each.capacity->grams()),
                                               How::Weighed));
            kind->addItem(name, static_cast<qlonglong>(each.id.number));
        }
        choose(kind, view.bucket->kind);
        form.showField(kind, kind->count() > 1);
    } else {
        tank = form.line(honeyFormWord("Its tank holds, %1").arg(massUnit()), "tank_holds",
                         honeyFormWord("to the brim"));
        if (view.lot && view.lot->tankHolds) tank->setText(massTyped(*view.lot->tankHolds));
    }
    form.say(honeyFormWord("A taste is yours; it never becomes the name of a flower on a label."));
    form.beginIn(traits.colour);
    form.keepDraft(draftOf("describe-honey", view));
    form.onAccept([&] {
        DescribeHoney deed;
        deed.on = on;
        deed.bucket = view.vessel.bucket;
        deed.lot = view.vessel.lot;
        if (!traits.read(session, deed.traits)) return false;
        deed.lidded = answered(lid);
        if (kind) deed.kind = chosenId<Equipment>(kind);
        if (tank && !readField(session, tank, deed.tankHolds)) return false;
        return session.run(deed).has_value();
    });
    return form.exec() == QDialog::Accepted;
}

bool askToWorkHoney(QWidget* parent, Session& session, const VesselView& view, Day on) {
    SmallForm form(parent, session, formTitle(honeyFormWord("Work"), view));
    auto* work = form.choice(honeyFormWord("What is done"), "work");
    addChoices<HoneyWork>(work, QString());
    auto* warmth = form.line(honeyFormWord("Warmth of the honey, %1").arg(shownTemperature(0).unit),
                             "temperature", honeyFormWord("the warmest it is held at"));
    auto* hours = form.line(honeyFormWord("How long, hours"), "hours", honeyFormWord("8"));
    auto* after = form.line(honeyFormWord("Weighed after, %1").arg(massUnit()), "after",
                            honeyFormWord("may stay empty"));
    auto* day = dayLine(form);
    auto* note = form.line(honeyFormWord("Note"), "note", honeyFormWord("may stay empty"));
    auto* verdict = form.say(QStringLiteral(" "));
    verdict->setObjectName(QStringLiteral("verdict"));
    auto* caution =
        form.caution(honeyFormWord("Hot water and hot honey burn. A bucket is heavy and slips: ") +
                     liftCaution());
    caution->setObjectName(QStringLiteral("caution"));
    const auto minutesTyped = [&]() -> std::optional<Minutes> {
        std::optional<Number> typed;
        readsAs(hours->text(), typed);
        if (!typed) return std::nullopt;
        return Minutes(std::llround(typed->value() * 60.0));
    };
    const auto look = [&] {
        const auto chosenWork = chosen<HoneyWork>(work).value_or(HoneyWork::Warmed);
        const bool skims = chosenWork == HoneyWork::Skimmed;
        form.showField(warmth, !skims);
        form.showField(hours, !skims);
        HoneyStep planned;
        planned.work = chosenWork;
        planned.on = on;
        if (!skims) {
            readsAs(warmth->text(), planned.temperature);
            planned.minutes = minutesTyped();
        }
        QStringList said;
        session.reading([&] {
            said = heatOutlookTexts(heatOutlook(session.read(), view.vessel, on, planned));
        });
        if (!skims && (!planned.temperature || !planned.minutes))
            said.prepend(
                honeyFormWord("What it costs is said when it is known how warm and how "
                              "long."));
        form.sayAgain(verdict, said.join(QLatin1Char('\n')));
    };
    QObject::connect(work, &QComboBox::currentIndexChanged, &form, look);
    for (QLineEdit* each : {warmth, hours})
        QObject::connect(each, &QLineEdit::textChanged, &form, look);
    form.keepDraft(draftOf("work-honey", view));
    look();
    form.onAccept([&] {
        WorkHoney deed;
        deed.bucket = view.vessel.bucket;
        deed.lot = view.vessel.lot;
        deed.work = chosen<HoneyWork>(work).value_or(HoneyWork::Warmed);
        std::optional<Number> typed;
        if (deed.work != HoneyWork::Skimmed) {
            if (!readField(session, warmth, deed.temperature) || !readField(session, hours, typed))
                return false;
            deed.minutes = minutesTyped();
        }
        if (!readField(session, after, deed.after) || !readDayOr(session, day, on, deed.on))
            return false;
        deed.note = typedWords(note);
        return session.run(deed).has_value();
    });
    return form.exec() == QDialog::Accepted;
}

bool askToWeighLeft(QWidget* parent, Session& session, const VesselView& view, Day on) {
    SmallForm form(parent, session, formTitle(honeyFormWord("What is left"), view));
    const VesselLedger& ledger = view.ledger;
    form.say(ledger.left
                 ? honeyFormWord("By what was written down there are %1 in it.")
                       .arg(massKnown(static_cast<double>(ledger.left->grams()), ledger.leftHow))
                 : honeyFormWord("Nobody wrote down how much is in it."));
    auto* left = form.line(honeyFormWord("Left, %1").arg(massUnit()), "left",
                           honeyFormWord("4.2; ~4 by eye; 0 where it is empty"), 28);
    auto* day = dayLine(form);
    auto* note = form.line(honeyFormWord("Note"), "note", honeyFormWord("may stay empty"));
    form.beginIn(left);
    form.keepDraft(draftOf("weigh-left", view));
    form.onAccept([&] {
        WeighLeft deed;
        deed.bucket = view.vessel.bucket;
        deed.lot = view.vessel.lot;
        if (!readField(session, left, deed.left) || !readDayOr(session, day, on, deed.on))
            return false;
        deed.note = typedWords(note);
        return session.run(deed).has_value();
    });
    return form.exec() == QDialog::Accepted;
}

std::optional<Id<Lot>> askToBuyHoney(QWidget* parent, Session& session, Day on) {
    SmallForm form(parent, session, honeyFormWord("Honey bought in"));
    form.scrollFields();
    auto* name = form.line(honeyFormWord("Name of the lot"), "lot", honeyFormWord("Heath 27"));
    auto* net = form.line(honeyFormWord("Honey, %1").arg(massUnit()), "net", honeyFormWord("25"));
    auto* supplier = form.line(honeyFormWord("From whom"), "supplier",
                               honeyFormWord("it is needed when somebody asks"), 26);
    auto* tank = form.line(honeyFormWord("Its tank or bucket holds, %1").arg(massUnit()),
                           "tank_holds", honeyFormWord("may stay empty"));
    auto* lid = lidChoice(form);
    const TraitFields traits(form, {});
    auto* day = dayLine(form);
    auto* note = form.line(honeyFormWord("Note"), "note", honeyFormWord("may stay empty"));
    form.say(
        honeyFormWord("Its hives, and what was given to them, nobody here knows; every trace "
                      "of it will say so."));
    form.keepDraft(QStringLiteral("buy-honey"));
    std::optional<Id<Lot>> made;
    form.onAccept([&] {
        BuyHoney deed;
        const auto called = lotNameTyped(session, name);
        if (!called) return false;
        deed.lot = *called;
        if (!readField(session, net, deed.net) || !readField(session, tank, deed.tankHolds) ||
            !traits.read(session, deed.traits) || !readDayOr(session, day, on, deed.on))
            return false;
        deed.supplier = typedWords(supplier);
        deed.lidded = answered(lid);
        deed.note = typedWords(note);
        made = session.run(deed);
        return made.has_value();
    });
    form.exec();
    return made;
}

bool askToHoldHoney(QWidget* parent, Session& session, const VesselView& view, Day on) {
    SmallForm form(parent, session, honeyFormWord("Hold %1 back").arg(fromUtf8(view.name)));
    auto* why = form.choice(honeyFormWord("Why"), "reason");
    addChoices<HoldWhy>(why, QString());
    auto* note = form.line(honeyFormWord("Note"), "note", honeyFormWord("may stay empty"));
    form.say(
        honeyFormWord("What was poured on out of it, and every jar filled from it, is held "
                      "with it until the hold is lifted."));
    form.onAccept([&] {
        HoldBack deed;
        deed.on = on;
        deed.reason = chosen<HoldWhy>(why).value_or(HoldWhy::Other);
        deed.bucket = view.vessel.bucket;
        deed.lot = view.vessel.lot;
        deed.note = typedWords(note);
        return session.run(deed).has_value();
    });
    return form.exec() == QDialog::Accepted;
}

bool askToLiftHoneyHold(QWidget* parent, Session& session, const VesselView& view, Day on) {
    std::vector<Hold> own;
    for (const Hold& each : view.held)
        if (isOwn(each, view.vessel)) own.push_back(each);
    if (own.empty()) {
        session.tell(view.held.empty()
                         ? honeyFormWord("%1 is not held back.").arg(fromUtf8(view.name))
                         : honeyFormWord("%1 has its hold from what it came from; it is lifted "
                                         "there: %2")
                               .arg(fromUtf8(view.name),
                                    heldTexts(session.read(), view).join(QStringLiteral("; "))),
                     true);
        return false;
    }
    SmallForm form(parent, session, honeyFormWord("Lift the hold on %1").arg(fromUtf8(view.name)));
    auto* which = form.choice(honeyFormWord("Which"), "hold");
    for (const Hold& each : own)
        which->addItem(
            honeyFormWord("%1, since %2").arg(choiceText(word(each.why)), dayText(each.since)),
            static_cast<qlonglong>(each.id.number));
    auto* grounds = form.line(honeyFormWord("On what grounds"), "grounds",
                              honeyFormWord("measured again, nothing found"), 26);
    auto* by = form.line(honeyFormWord("By whom"), "lifted_by", honeyFormWord("may stay empty"));
    form.beginIn(grounds);
    form.onAccept([&] {
        // A hold that goes without a word helps nobody later.
        if (typedWords(grounds).empty()) {
            session.tell(honeyFormWord("Write on what grounds, in a word or two."), true);
            return false;
        }
        ReleaseHold deed;
        deed.on = on;
        deed.hold = chosenId<Hold>(which).value_or(own.front().id);
        deed.grounds = typedWords(grounds);
        deed.liftedBy = typedWords(by);
        return session.run(deed).has_value();
    });
    return form.exec() == QDialog::Accepted;
}

bool askForLimits(QWidget* parent, Session& session, Day on) {
    SmallForm form(parent, session, honeyFormWord("Limits you go by"));
    auto* profile = form.choice(honeyFormWord("Limits of"), "limits");
    profile->addItem(honeyFormWord("nobody's"), QString());
    for (const std::string& each : honeyLimitProfiles())
        profile->addItem(fromUtf8(each), fromUtf8(each));
    const QString before = fromUtf8(limitsPicked(session.read(), on));
    profile->setCurrentIndex(std::max(0, profile->findData(before)));
    const double line = waterLine(session.read(), on);
    auto* own =
        form.line(honeyFormWord("Your own line of water, %"), "own_line", honeyFormWord("18"));
    const QString lineBefore = QLocale().toString(line, 'g', 4);
    own->setText(lineBefore);
    auto* says = form.say(QStringLiteral(" "));
    says->setObjectName(QStringLiteral("says"));
    form.say(
        honeyFormWord("Published tables, and no legal advice: the code of your place "
                      "decides."));
    const auto look = [&] {
        QStringList lines;
        const std::string picked = profile->currentData().toString().toStdString();
        for (const PublishedHoneyLimit& each : honeyLimitsOf(picked)) {
            if (each.quantity != "water_percent" || !each.atMost) continue;
            lines << honeyFormWord("%1 honey%2: at most %3 of water; %4")
                         .arg(fromUtf8(each.honey),
                              each.grade.empty()
                                  ? QString()
                                  : honeyFormWord(", grade %1").arg(fromUtf8(each.grade)),
                              waterPercentText(*each.atMost), fromUtf8(each.source));
        }
        form.sayAgain(says, lines.join(QLatin1Char('\n')));
    };
    QObject::connect(profile, &QComboBox::currentIndexChanged, &form, look);
    look();
    form.beginIn(profile);
    form.onAccept([&] {
        std::optional<Number> typed;
        if (!readField(session, own, typed)) return false;
        const QString picked = profile->currentData().toString();
        const bool ofLine = typed && own->text().trimmed() != lineBefore;
        return session.together([&](Season& season) -> Result<void> {
            if (picked != before) {
                SetLabels deed;
                deed.on = on;
                deed.limits = picked.isEmpty() ? std::string("-") : picked.toStdString();
                if (auto done = perform(season, deed, StepNote{}); !done) return done.error();
            }
            if (!ofLine) return {};
            SetConstant deed;
            deed.on = on;
            deed.constant = *Name::of("max_water_percent");
            deed.value = *typed;
            deed.source = "own line";
            if (auto done = perform(season, deed, StepNote{}); !done) return done.error();
            return {};
        });
    });
    return form.exec() == QDialog::Accepted;
}

}  // namespace combwright
