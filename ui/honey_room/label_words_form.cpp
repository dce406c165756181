#include <QCoreApplication>
#include <algorithm>

#include "core/actions/honey/telling.h"
#include "core/catalogue/honey_tables.h"
#include "core/places/pages/goods/label_pages.h"
#include "core/storage/queries/labels.h"
#include "core/words/words.h"
#include "ui/honey_room/goods_fields.h"
#include "ui/honey_room/labels_dialog.h"
#include "ui/shell/form_reading.h"

namespace combwright {
namespace {

QString labelWord(const char* text) { return QCoreApplication::translate("label_words", text); }

/// What is sent of a line: nothing where it is as it was, "-" where it was emptied.
std::string changedLine(const QLineEdit* field, const std::string& before) {
    const std::string typed = typedWords(field);
    if (typed == before) return {};
    return typed.empty() ? "-" : typed;
}
std::string changedChoice(const QComboBox* field, const std::string& before) {
    const std::string chosen = field->currentData().toString().toStdString();
    if (chosen == before) return {};
    return chosen.empty() ? "-" : chosen;
}

void offerNames(QComboBox* box, const std::vector<std::string>& names, const QString& none,
                const std::string& now) {
    box->addItem(none, QString());
    for (const std::string& each : names) box->addItem(fromUtf8(each), fromUtf8(each));
    box->setCurrentIndex(std::max(0, box->findData(fromUtf8(now))));
}

}  // namespace

bool askForLabelWords(QWidget* parent, Session& session, Day on) {
    const LabelText text = labelTextInForce(session.read(), on).value_or(LabelText{});
    SmallForm form(parent, session, labelWord("What stands on labels from %1").arg(dayText(on)));
    form.scrollFields();
    const auto line = [&](const QString& label, const char* name, const QString& example,
                          const std::string& now) {
        auto* edit = form.line(label, name, example, 30);
        edit->setText(fromUtf8(now));
        return edit;
    };
    form.caution(labelWord("On every label, whatever else stands there: %1").arg(infantCaution()));
    auto* producer =
        line(labelWord("Your name"), "producer", labelWord("Mill Lane Honey"), text.producer);
    auto* address =
        line(labelWord("Your address"), "address", labelWord("1 Mill Lane, Hill"), text.address);
    auto* origin =
        line(labelWord("Country, and area if wished"), "origin", labelWord("Ireland"), text.origin);
    auto* months = form.line(labelWord("Best before, months"), "months", labelWord("24"));
    if (text.months) months->setText(QString::number(text.months->value()));
    auto* code = form.choice(labelWord("Lot code"), "code_rule");
    addChoices<CodeRule>(code, QString());
    code->setCurrentIndex(code->findData(static_cast<int>(text.code)));
    auto* flower = line(labelWord("Flower named on it"), "flower",
                        labelWord("Heather; may stay empty"), text.flower);
    auto* grounds = line(labelWord("Your statement why"), "flower_grounds",
                         labelWord("on the moor in August"), text.flowerGrounds);
    auto* claim = form.caution(QStringLiteral(" "));
    claim->setObjectName(QStringLiteral("claim"));
    auto* more =
        line(labelWord("A line of your own"), "more", labelWord("may stay empty"), text.more);
    auto* region = form.choice(labelWord("Reminders of"), "label_region");
    offerNames(region, labelRegions(), labelWord("no place chosen"), text.region);
    auto* limits = form.choice(labelWord("Limits you go by"), "limits_edition");
    offerNames(limits, honeyLimitProfiles(), labelWord("none chosen"), text.limits);
    form.say(labelWord("None of it is legal advice: your place's own rules decide."));
    const auto look = [&] {
        const bool claims =
            !typedWords(flower).empty() &&
            (typedWords(grounds).empty() ||
             (typedWords(flower) != text.flower && typedWords(grounds) == text.flowerGrounds));
        form.sayAgain(claim, claims
                                 ? labelWord("A flower on a label is a claim. That it tastes of it "
                                             "is not enough: state yourself why it may be named.")
                                 : QString());
    };
    for (QLineEdit* each : {flower, grounds})
        QObject::connect(each, &QLineEdit::textChanged, &form, look);
    look();
    form.keepDraft(QStringLiteral("set-labels"));
    form.beginIn(producer);
    form.onAccept([&] {
        SetLabels deed;
        deed.on = on;
        deed.producer = changedLine(producer, text.producer);
        deed.address = changedLine(address, text.address);
        deed.origin = changedLine(origin, text.origin);
        if (!readField(session, months, deed.months)) return false;
        const auto rule = chosen<CodeRule>(code);
        if (rule != text.code) deed.code = rule;
        deed.flower = changedLine(flower, text.flower);
        deed.flowerGrounds = changedLine(grounds, text.flowerGrounds);
        deed.more = changedLine(more, text.more);
        deed.region = changedChoice(region, text.region);
        deed.limits = changedChoice(limits, text.limits);
        return session.run(deed).has_value();
    });
    return form.exec() == QDialog::Accepted;
}

}  // namespace combwright
