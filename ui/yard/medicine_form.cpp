// A medicine as it was bought: what stands on the pack and its label, and nothing the program would
// know better.
#include <QCoreApplication>

#include "core/actions/health/medicines.h"
#include "core/words/figures.h"
#include "core/words/words.h"
#include "ui/shell/form_reading.h"
#include "ui/shell/small_form.h"
#include "ui/yard/health_forms.h"

namespace combwright {
namespace {

QString packWord(const char* text) { return QCoreApplication::translate("health_forms", text); }

bool packNotRead(Session& session, QLineEdit* field, const QString& text) {
    session.tell(text.arg(field->accessibleName(), field->text().trimmed()), true);
    field->setFocus();
    field->selectAll();
    return false;
}

/// "40 strips": so much of a unit.
bool readQuantity(Session& session, QLineEdit* field, BuyMedicine& deed) {
    const QString typed = field->text().simplified();
    if (typed.isEmpty()) return true;
    const QString figure = typed.section(QLatin1Char(' '), 0, 0);
    if (!readsAs(figure, deed.quantity) || !deed.quantity)
        return packNotRead(session, field,
                           packWord("%1: \"%2\" is no amount. Write 40 strips or 500 g."));
    deed.unit = typed.section(QLatin1Char(' '), 1).toStdString();
    return true;
}

/// The two ends of "42 to 56" or "42-56"; one alone is both.
QStringList endsOf(const QString& typed) {
    QString text = typed.simplified();
    text.replace(QStringLiteral(" to "), QStringLiteral("|"));
    if (!text.contains(QLatin1Char('|')))
        if (const auto dash = text.indexOf(QLatin1Char('-'), 1); dash > 0)
            text.replace(dash, 1, QLatin1Char('|'));
    QStringList ends = text.split(QLatin1Char('|'));
    if (ends.size() == 1) ends << ends.front();
    return ends;
}

template <class Value>
bool readSpan(Session& session, QLineEdit* field, std::optional<Value>& from,
              std::optional<Value>& to) {
    if (field->text().trimmed().isEmpty()) return true;
    const QStringList ends = endsOf(field->text());
    return (ends.size() == 2 && readsAs(ends.front(), from) && readsAs(ends.back(), to)) ||
           packNotRead(session, field, packWord("%1: \"%2\" is not read. Write 42 to 56."));
}

}  // namespace

bool askToBuyMedicine(QWidget* parent, Session& session, Day on) {
    SmallForm form(parent, session, packWord("A medicine bought, %1").arg(dayText(on)));
    form.scrollFields();
    form.say(packWord("As it stands on the pack and its label. What you leave out stays unknown."));
    const QString open = packWord("may stay empty");
    auto* name = form.line(packWord("Medicine"), "medicine", packWord("as on the pack"), 30);
    auto* active = form.line(packWord("Active ingredient"), "active", packWord("formic acid"));
    auto* quantity = form.line(packWord("Bought"), "quantity", packWord("40 strips"));
    auto* batch = form.line(packWord("Batch"), "batch", open);
    auto* expires = form.line(packWord("Use until"), "expires", packWord("2028-12"));
    auto* supplier = form.line(packWord("Supplier"), "supplier", open);
    auto* supers = form.choice(packWord("Supers, by the label"), "supers");
    addChoices<LabelSupers>(supers, packWord("not written down"));
    auto* inHive = form.line(packWord("Days in the hive"), "in_hive", packWord("42 to 56"));
    auto* wait =
        form.line(packWord("Days to wait then"), "wait_days", packWord("until supers go back"));
    auto* warmth = form.line(
        packWord("Warmth of the day"), "warmth",
        packWord("%1 to %2").arg(shownTemperature(10).text(), shownTemperature(29).text()));
    auto* withdrawal =
        form.line(packWord("Withdrawal"), "withdrawal", packWord("as worded, also where nil"));
    auto* prescribed = form.line(packWord("Prescribed by"), "prescribed_by", open);
    auto* proof = form.line(packWord("Receipt"), "proof", packWord("where it is kept"));
    auto* note = form.line(packWord("Note"), "note", open);
    form.keepDraft(QStringLiteral("buy-medicine"));
    form.beginIn(name);
    form.onAccept([&] {
        BuyMedicine deed;
        deed.on = on;
        const auto called = Name::of(typedWords(name));
        if (!called) {
            session.tell(packWord("Write the medicine's name as on the pack."), true);
            name->setFocus();
            return false;
        }
        deed.medicine = *called;
        deed.active = typedWords(active);
        deed.batch = typedWords(batch);
        deed.supplier = typedWords(supplier);
        deed.supers = chosen<LabelSupers>(supers);
        deed.withdrawal = typedWords(withdrawal);
        deed.prescribedBy = typedWords(prescribed);
        deed.proof = typedWords(proof);
        deed.note = typedWords(note);
        return readQuantity(session, quantity, deed) &&
               readDayField(session, expires, true, deed.expires) &&
               readSpan(session, inHive, deed.inHiveFrom, deed.inHiveTo) &&
               readField(session, wait, deed.waitDays) &&
               readSpan(session, warmth, deed.warmFrom, deed.warmTo) &&
               session.run(deed).has_value();
    });
    return form.exec() == QDialog::Accepted;
}

}  // namespace combwright
