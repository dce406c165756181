#include "ui/yard/health_forms.h"

#include <QCoreApplication>
#include <set>

#include "core/actions/health/meant_hives.h"
#include "core/actions/health/medicines.h"
#include "core/actions/health/treatments.h"
#include "core/places/health/health_board.h"
#include "core/places/pages/health/health_words.h"
#include "core/words/figures.h"
#include "core/words/words.h"
#include "ui/shell/form_reading.h"
#include "ui/shell/small_form.h"

namespace combwright {
namespace {

QString healWord(const char* text) { return QCoreApplication::translate("health_forms", text); }

QString marksText(const std::vector<std::string>& marks) {
    QStringList all;
    for (const std::string& mark : marks) all << fromUtf8(mark);
    return all.join(QStringLiteral(", "));
}

QString supersOnText(const TreatOutlook& outlook, const Medicine& medicine) {
    if (outlook.supersOn.empty()) return {};
    const QString marks = marksText(outlook.supersOn);
    if (medicine.supers == LabelSupers::MayStay)
        return healWord("Supers are on %1; by the label they may stay.").arg(marks);
    return (medicine.supers == LabelSupers::Off
                ? healWord("Supers are on %1, and the label says off: take them off first. Any "
                           "that stays is held back, no honey of it for people.")
                : healWord("Supers are on %1, and what the label says of that is not written "
                           "down: read it first. Until then they are held back."))
        .arg(marks);
}

QString amountsText(const TreatOutlook& outlook, const MedicineStock& stock, std::size_t hives) {
    const QString many = hives == 1 ? healWord("1 hive") : healWord("%1 hives").arg(hives);
    if (!outlook.takes) return healWord("%1; %2.").arg(many, leftText(stock));
    const QString takes = amountText(*outlook.takes, stock.medicine);
    if (!outlook.leftAfter) return healWord("%1 take %2; %3.").arg(many, takes, leftText(stock));
    if (*outlook.leftAfter < 0)
        return healWord(
                   "%1 take %2, and only %3 are written down as left: it is kept all the "
                   "same, and asked about.")
            .arg(many, takes, amountText(*outlook.left, stock.medicine));
    return healWord("%1 take %2 of %3: %4 left.")
        .arg(many, takes, amountText(*outlook.left, stock.medicine),
             amountText(*outlook.leftAfter, stock.medicine));
}

QString labelAsWritten(const Medicine& medicine) {
    QStringList said{labelSupersText(medicine.supers)};
    if (const QString span = spanText(medicine.inHiveFrom, medicine.inHiveTo); !span.isEmpty())
        said << healWord("%1 in the hive").arg(span);
    if (medicine.waitDays)
        said << healWord("then %1 without supers")
                    .arg(spanText(medicine.waitDays, medicine.waitDays));
    if (const QString warmth = warmthText(medicine); !warmth.isEmpty())
        said << healWord("day of %1").arg(warmth);
    if (!medicine.withdrawal.empty())
        said << healWord("withdrawal: %1").arg(fromUtf8(medicine.withdrawal));
    return healWord("Label, as you wrote it down: %1.").arg(said.join(QStringLiteral("; ")));
}

void addMedicines(QComboBox* choice, const std::vector<MedicineStock>& stocks) {
    for (const MedicineStock& each : stocks)
        choice->addItem(
            QStringLiteral("%1: %2").arg(fromUtf8(each.medicine.name.text()), leftText(each)),
            static_cast<qlonglong>(each.medicine.id.number));
}

const MedicineStock& stockChosen(const std::vector<MedicineStock>& stocks,
                                 const QComboBox* choice) {
    return stocks[static_cast<std::size_t>(std::max(choice->currentIndex(), 0))];
}

}  // namespace

bool askToTreat(QWidget* parent, Session& session, const Yard& yard, const HivesAsked& hives,
                Day on) {
    auto stocks = medicinesOn(session.read(), on);
    if (stocks.empty()) {
        session.tell(healWord("No medicine is written down yet: first the one you bought."));
        if (!askToBuyMedicine(parent, session, on)) return false;
        stocks = medicinesOn(session.read(), on);
        if (stocks.empty()) return false;
    }
    SmallForm form(parent, session, healWord("Treat"));
    form.scrollFields();
    auto* medicine = form.choice(healWord("Medicine"), "medicine");
    addMedicines(medicine, stocks);
    const HivesField which(form, session, {healWord("Treat"), healWord("Treat")}, hives, yard, on);
    auto* amount = form.line(healWord("Amount a hive"), "amount", QString());
    auto* stays = form.choice(healWord("It"), "stays");
    stays->addItem(healWord("stays in the hive"), 0);
    stays->addItem(healWord("is given in one go"), 1);
    auto* warmth =
        form.line(healWord("Warmth of the day"), "warmth", healWord("only held against the label"));
    auto* by = form.line(healWord("By whom"), "by", healWord("may stay empty"));
    auto* note = form.line(healWord("Note"), "note", healWord("may stay empty"));
    auto* outlook = form.say(QStringLiteral(" "));
    outlook->setObjectName(QStringLiteral("outlook"));
    auto* caution = form.caution(QStringLiteral(" "));
    caution->setObjectName(QStringLiteral("caution"));
    const auto look = [&] {
        const MedicineStock& stock = stockChosen(stocks, medicine);
        const Medicine& chosen = stock.medicine;
        amount->setPlaceholderText(
            chosen.unit.empty()
                ? healWord("left empty it is not known")
                : healWord("%1; left empty it is not known").arg(fromUtf8(chosen.unit)));
        QStringList said;
        QStringList careful;
        if (stock.expired)
            careful << healWord("It was to be used until %1.").arg(dayText(*chosen.expires));
        const auto meant = meantHives(session.read(), yard.id, which.typed(), on);
        which.entitle(meant);
        if (which.typed().empty()) {
            careful << HivesField::noneNamed();
        } else if (!meant) {
            careful << sentence(meant.error());
        } else {
            std::optional<Number> each;
            readsAs(amount->text(), each);
            const TreatOutlook comes = treatOutlook(session.read(), chosen, *meant, each, on);
            said << amountsText(comes, stock, meant->size());
            if (const QString supers = supersOnText(comes, chosen); !supers.isEmpty())
                (chosen.supers == LabelSupers::MayStay ? said : careful) << supers;
            if (!comes.hasItIn.empty())
                careful << healWord("%1 still have it in.").arg(marksText(comes.hasItIn));
        }
        said << labelAsWritten(chosen);
        if (const QString published = publishedText(stock); !published.isEmpty())
            said << published + QLatin1Char('.');
        if (const auto degrees = typedTemperature(warmth->text()))
            if (const auto suit = suits(chosen, degrees->celsius()))
                (*suit == InWindow::Suits ? said : careful)
                    << healWord("That day is %1.").arg(windowText(*suit));
        careful << labelIsLaw()
                << healWord("Wear what it asks for: some burn eyes, skin and lungs.");
        form.sayAgain(outlook, said.join(QLatin1Char('\n')));
        form.sayAgain(caution, careful.join(QLatin1Char(' ')));
    };
    QObject::connect(medicine, &QComboBox::currentIndexChanged, &form, look);
    for (QLineEdit* each : {which.line(), amount, warmth})
        QObject::connect(each, &QLineEdit::textChanged, &form, look);
    look();
    form.keepDraft(QStringLiteral("treat %1 %2").arg(yard.id.number).arg(dayText(on)));
    which.keepTicks();
    form.beginIn(medicine);
    form.onAccept([&] {
        Treat deed;
        deed.on = on;
        deed.medicine = stockChosen(stocks, medicine).medicine.id;
        deed.yard = yard.id;
        if (!which.demand()) return false;
        deed.hives = which.typed();
        if (!readField(session, amount, deed.amount)) return false;
        if (stays->currentData().toInt() == 1) deed.out = on;
        deed.by = typedWords(by);
        deed.note = typedWords(note);
        return session.run(deed).has_value();
    });
    return form.exec() == QDialog::Accepted;
}

bool askToTakeOutMedicine(QWidget* parent, Session& session, const Yard& yard,
                          const HivesAsked& hives, Day on) {
    const auto running = runningTreatments(session.read(), yard.id, on);
    if (running.empty()) {
        session.tell(healWord("No medicine is in a hive of this yard on %1.").arg(dayText(on)),
                     true);
        return false;
    }
    SmallForm form(parent, session, healWord("Take a medicine out"));
    form.scrollFields();
    auto* medicine = form.choice(healWord("Medicine"), "medicine");
    medicine->addItem(healWord("all that are in"), 0);
    std::set<std::int64_t> named;
    for (const TreatmentLine& each : running)
        if (named.insert(each.medicine.id.number).second)
            medicine->addItem(fromUtf8(each.medicine.name.text()),
                              static_cast<qlonglong>(each.medicine.id.number));
    const HivesField which(form, session,
                           {healWord("Take a medicine out"), healWord("Take a medicine out of")},
                           hives, yard, on);
    auto* outlook = form.say(QStringLiteral(" "));
    outlook->setObjectName(QStringLiteral("outlook"));
    const auto look = [&] {
        const auto meant = meantHives(session.read(), yard.id, which.typed(), on);
        which.entitle(meant);
        if (which.typed().empty()) return form.sayAgain(outlook, HivesField::noneNamed());
        if (!meant) return form.sayAgain(outlook, sentence(meant.error()));
        std::set<std::int64_t> taken;
        for (const Hive& hive : *meant) taken.insert(hive.id.number);
        const auto only = chosenId<Medicine>(medicine);
        QStringList said;
        for (const TreatmentLine& each : running)
            if (taken.contains(each.hive.id.number) && (!only || *only == each.medicine.id))
                said << healWord("%1: %2 since %3, %4")
                            .arg(fromUtf8(each.hive.mark.text()),
                                 fromUtf8(each.medicine.name.text()),
                                 shortDayText(each.treatment.on), comesOutText(each, on));
        form.sayAgain(outlook, said.isEmpty() ? healWord("None of these has it in.")
                                              : said.join(QLatin1Char('\n')));
    };
    QObject::connect(medicine, &QComboBox::currentIndexChanged, &form, look);
    QObject::connect(which.line(), &QLineEdit::textChanged, &form, look);
    look();
    form.caution(
        healWord("From now the days to wait for supers count. Used strips are waste as "
                 "the label says."));
    form.keepDraft(QStringLiteral("take-out %1 %2").arg(yard.id.number).arg(dayText(on)));
    which.keepTicks();
    form.onAccept([&] {
        TakeOutMedicine deed;
        deed.on = on;
        deed.medicine = chosenId<Medicine>(medicine);
        deed.yard = yard.id;
        if (!which.demand()) return false;
        deed.hives = which.typed();
        return session.run(deed).has_value();
    });
    return form.exec() == QDialog::Accepted;
}

bool askToDisposeMedicine(QWidget* parent, Session& session, Day on) {
    const auto stocks = medicinesOn(session.read(), on);
    if (stocks.empty()) {
        session.tell(healWord("No medicine is written down."), true);
        return false;
    }
    SmallForm form(parent, session, healWord("Dispose of a medicine, %1").arg(dayText(on)));
    auto* medicine = form.choice(healWord("Medicine"), "medicine");
    addMedicines(medicine, stocks);
    auto* amount = form.line(healWord("How much"), "amount", healWord("in the pack's own unit"));
    auto* how = form.line(healWord("Where it went"), "how", healWord("returned to the pharmacy"));
    auto* note = form.line(healWord("Note"), "note", healWord("may stay empty"));
    form.caution(
        healWord("It is kept for the medicine record. Not into the household waste or "
                 "the drain unless the label says so."));
    form.keepDraft(QStringLiteral("dispose-medicine %1").arg(dayText(on)));
    form.onAccept([&] {
        DisposeMedicine deed;
        deed.on = on;
        deed.medicine = stockChosen(stocks, medicine).medicine.id;
        if (!readField(session, amount, deed.amount)) return false;
        const auto where = Name::of(typedWords(how));
        if (!where) {
            session.tell(healWord("Write where it went, in a word or two."), true);
            how->setFocus();
            return false;
        }
        deed.how = *where;
        deed.note = typedWords(note);
        return session.run(deed).has_value();
    });
    return form.exec() == QDialog::Accepted;
}

}  // namespace combwright
