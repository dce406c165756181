#include "ui/storeroom/kind_forms.h"

#include <QCoreApplication>

#include "core/actions/storeroom/kinds.h"
#include "core/actions/storeroom/set_outs.h"
#include "core/storage/queries/yards.h"
#include "core/words/dead_out_words.h"
#include "core/words/words.h"
#include "ui/shell/form_reading.h"
#include "ui/shell/small_form.h"

namespace combwright {
namespace {

QString kindSay(const char* text) { return QCoreApplication::translate("kind_forms", text); }

/// A length field and where its value goes.
struct LengthField {
    QLineEdit* field;
    std::optional<Length>* value;
};

bool readAll(Session& session, const std::vector<LengthField>& fields) {
    for (const LengthField& each : fields)
        if (!readField(session, each.field, *each.value)) return false;
    return true;
}

std::optional<Name> readName(Session& session, const QLineEdit* field) {
    auto name = Name::of(typedWords(field));
    if (!name) session.tell(kindSay("Give the kind a name, so that it can be chosen later."), true);
    return name;
}

}  // namespace

bool askToMeasureBox(QWidget* parent, Session& session, Day on) {
    SmallForm form(parent, session, kindSay("Measure a home-made box"));
    auto* name = form.line(kindSay("What it is called"), "called", kindSay("grandfather's deep"));
    auto* frames = form.line(kindSay("Frames it is made for"), "frames", QStringLiteral("10"));
    auto* takes = form.choice(kindSay("Frame it takes"), "takes");
    addFrameKinds(takes, session.read(), kindSay("not said"));
    MeasureBoxKind measured;
    const std::vector<LengthField> lengths{
        {form.line(kindSay("Height"), "height", kindSay("244 mm, or 9.6 in in inches")),
         &measured.outerHeight},
        {form.line(kindSay("Inside, along the frames"), "inner_length", QStringLiteral("467")),
         &measured.innerLength},
        {form.line(kindSay("Inside, across the frames"), "inner_width", QStringLiteral("375")),
         &measured.innerWidth},
        {form.line(kindSay("From its top edge to the rests"), "rest_depth", QStringLiteral("16")),
         &measured.restDepth}};
    auto* space = form.choice(kindSay("Bee space"), "bee_space");
    addChoices<BeeSpace>(space, kindSay("not said"));
    form.say(kindSay("Leave out what you have not measured; it stays not known."));
    form.onAccept([&] {
        const auto called = readName(session, name);
        if (!called || !readAll(session, lengths) ||
            !readField(session, frames, measured.framesNominal))
            return false;
        measured.on = on;
        measured.called = *called;
        measured.takes = chosenId<FrameKind>(takes);
        measured.beeSpace = chosen<BeeSpace>(space);
        return session.run(measured).has_value();
    });
    return form.exec() == QDialog::Accepted;
}

bool askToMeasureFrame(QWidget* parent, Session& session, Day on) {
    SmallForm form(parent, session, kindSay("Measure a home-made frame"));
    auto* name = form.line(kindSay("What it is called"), "called", kindSay("grandfather's frame"));
    MeasureFrameKind measured;
    const std::vector<LengthField> lengths{
        {form.line(kindSay("Top bar with both lugs"), "top_bar_length", QStringLiteral("483")),
         &measured.topBarLength},
        {form.line(kindSay("Height, top bar to bottom bar"), "height", QStringLiteral("232")),
         &measured.height},
        {form.line(kindSay("Bottom bar"), "bottom_bar_length", QStringLiteral("446")),
         &measured.bottomBarLength},
        {form.line(kindSay("From comb to comb, touching"), "spacing", QStringLiteral("35")),
         &measured.spacing},
        {form.line(kindSay("Opening, width"), "comb_width", QStringLiteral("429")),
         &measured.combWidth},
        {form.line(kindSay("Opening, height"), "comb_height", QStringLiteral("203")),
         &measured.combHeight}};
    form.say(kindSay("Leave out what you have not measured; it stays not known."));
    form.onAccept([&] {
        const auto called = readName(session, name);
        if (!called || !readAll(session, lengths)) return false;
        measured.on = on;
        measured.called = *called;
        return session.run(measured).has_value();
    });
    return form.exec() == QDialog::Accepted;
}

bool askToSetOut(QWidget* parent, Session& session, const QString& boxes, Day on) {
    SmallForm form(parent, session, kindSay("Set out in the open"));
    auto* what = form.choice(kindSay("What"), "what");
    addChoices<SetOutWhat>(what, {});
    what->addItem(kindSay("take in what lies out"), -2);
    auto* yard = form.choice(kindSay("Yard"), "yard");
    yard->addItem(kindSay("not said"), 0);
    for (const Yard& each : openYards(session.read()))
        yard->addItem(fromUtf8(each.name.text()), static_cast<qlonglong>(each.id.number));
    auto* which = form.line(kindSay("Boxes"), "boxes", kindSay("M01, M02"));
    which->setText(boxes);
    auto* note = form.line(kindSay("Note"), "note", kindSay("may stay empty"));
    form.caution(setOutCaution());
    form.onAccept([&] {
        if (what->currentData().toInt() == -2) {
            TakeInSetOut in;
            in.on = on;
            return session.run(in).has_value();
        }
        SetOutside out;
        out.on = on;
        out.what = chosen<SetOutWhat>(what).value_or(SetOutWhat::Comb);
        out.yard = chosenId<Yard>(yard);
        out.boxes = typedWords(which);
        out.note = typedWords(note);
        return session.run(out).has_value();
    });
    return form.exec() == QDialog::Accepted;
}

}  // namespace combwright
