#include "ui/honey_room/out_forms.h"

#include <QCoreApplication>

#include "core/actions/boxes/looks.h"
#include "core/actions/honey/complaints.h"
#include "core/actions/honey/going_out.h"
#include "core/places/goods/goods.h"
#include "core/places/pages/goods/goods_ahead_words.h"
#include "core/places/pages/goods/goods_pages.h"
#include "core/places/pages/trace/trace_words.h"
#include "core/words/figures.h"
#include "core/words/words.h"
#include "ui/honey_room/goods_fields.h"
#include "ui/honey_room/trace_view.h"
#include "ui/shell/form_reading.h"

namespace combwright {
namespace {

QString outWord(const char* text) { return QCoreApplication::translate("out_forms", text); }

/// In words of their own: a hive is given feed, a jar is given away.
void offerHow(QComboBox* box, const QString& broken) {
    const auto offer = [&](OutHow how, const QString& text) {
        box->addItem(text, static_cast<int>(how));
    };
    offer(OutHow::Sold, outWord("sold"));
    offer(OutHow::Given, outWord("given away"));
    offer(OutHow::Kept, outWord("kept for ourselves"));
    offer(OutHow::Broken, broken);
    offer(OutHow::CameBack, outWord("came back"));
}

std::vector<GoodsKind> kindsThere(const Read& file, Day on) {
    std::vector<GoodsKind> kinds;
    for (const GoodsShelf& each : goodsShelves(file, on))
        if (each.written) kinds.push_back(each.kind);
    return kinds;
}

/// What the complaint is kept with, and what it holds back.
enum class HoldOnComplaint { Nothing, Filling, Honey };

Result<void> keepComplaint(Season& season, const NoteComplaint& said, HoldOnComplaint hold,
                           const std::optional<Bottling>& filling) {
    if (auto done = perform(season, said, StepNote{}); !done) return done.error();
    if (hold == HoldOnComplaint::Nothing || !filling) return {};
    HoldBack deed;
    deed.on = said.on;
    deed.reason = HoldWhy::Complaint;
    if (hold == HoldOnComplaint::Filling) {
        deed.bottling = filling->id;
    } else {
        deed.bucket = filling->bucket;
        deed.lot = filling->lot;
    }
    deed.note = said.what.text();
    auto done = perform(season, deed, StepNote{});
    return done ? Result<void>{} : Result<void>(done.error());
}

QString complaintText(const Read& file, const Complaint& complaint) {
    const auto filling = file.find(complaint.bottling);
    QStringList parts{shortDayText(complaint.on), fromUtf8(complaint.what.text())};
    parts << (filling ? fromUtf8(filling->code.text()) : outWord("nobody knows which jar"));
    return parts.join(QStringLiteral(", "));
}

bool releaseFilling(SmallForm& form, Session& session, const std::vector<Hold>& own, Day on) {
    auto* which = form.choice(outWord("Which hold"), "hold");
    for (const Hold& each : own)
        which->addItem(
            outWord("%1, since %2").arg(choiceText(word(each.why)), shortDayText(each.since, on)),
            static_cast<qlonglong>(each.id.number));
    auto* grounds = form.line(outWord("On what grounds"), "grounds",
                              outWord("opened three more jars: none foams"), 36);
    auto* by = mayStayEmpty(form, outWord("By whom"), "by");
    form.beginIn(grounds);
    form.onAccept([&] {
        ReleaseHold deed;
        deed.on = on;
        const auto hold = chosenId<Hold>(which);
        if (!hold) return false;
        deed.hold = *hold;
        deed.grounds = typedWords(grounds);
        deed.liftedBy = typedWords(by);
        return session.run(deed).has_value();
    });
    return form.exec() == QDialog::Accepted;
}

}  // namespace

bool askToGoOut(QWidget* parent, Session& session, Day on) {
    const auto kinds = kindsThere(session.read(), on);
    if (kinds.empty()) {
        session.tell(outWord("Nothing was filled or counted yet, so nothing can go out."), true);
        return false;
    }
    SmallForm form(parent, session, outWord("Out of the door, %1").arg(dayText(on)));
    form.scrollFields();
    auto* how = form.choice(outWord("How"), "how");
    offerHow(how, outWord("broken"));
    auto* goods =
        form.line(outWord("What"), "goods", outWord("12 454 g, 3 skep at 6; or below"), 30);
    const KindLines lines(form, kinds, "out", outWord("how many"));
    auto* filling = form.choice(outWord("Of the filling"), "filling");
    offerFillings(filling, session.read(), on, outWord("the only one left, or not known"));
    auto* price =
        form.line(outWord("Price of one"), "price", outWord("left empty: as in the price list"));
    auto* place = form.line(outWord("Where"), "place", outWord("gate, market; may stay empty"));
    auto* buyer = form.line(outWord("To whom"), "buyer", outWord("only in trade, or if wished"));
    auto* reason =
        form.line(outWord("On what grounds"), "reason_held", outWord("only if it is held back"));
    auto* note = mayStayEmpty(form, outWord("Note"), "note");
    auto* outlook = form.say(QStringLiteral(" "));
    outlook->setObjectName(QStringLiteral("outlook"));
    auto* caution = form.caution(QStringLiteral(" "));
    caution->setObjectName(QStringLiteral("caution"));
    const auto howSaid = [&] { return chosen<OutHow>(how).value_or(OutHow::Sold); };
    const auto look = [&] {
        const Read& file = session.read();
        QStringList said;
        QStringList careful;
        const bool paid = howSaid() == OutHow::Sold || howSaid() == OutHow::CameBack;
        form.showField(price, paid);
        form.showField(buyer, howSaid() != OutHow::Kept && howSaid() != OutHow::Broken);
        if (const std::string line = lines.inLine(goods); !line.empty()) {
            const auto meant = readGoods(file, line, "goods");
            if (meant) {
                auto ahead = aheadOf(*meant);
                std::optional<Money> each;
                if (paid && readsAs(price->text(), each) && each)
                    for (GoodsAhead& kind : ahead)
                        if (!kind.each) kind.each = each;
                const OutAhead then = outAhead(file, ahead, howSaid(), on);
                said << outAheadText(then, howSaid(), currencyOf(file));
                careful << outAheadCautions(then);
            } else {
                careful << sentence(meant.error());
            }
        }
        if (const auto of = chosenId<Bottling>(filling))
            if (const auto bottling = file.find(*of))
                if (const QString know = fillingToKnowText(fillingSheet(file, *bottling, on));
                    !know.isEmpty())
                    careful << QStringLiteral("%1: %2.").arg(fromUtf8(bottling->code.text()), know);
        form.sayAgain(outlook, said.join(QLatin1Char('\n')));
        form.sayAgain(caution, careful.join(QLatin1Char('\n')));
    };
    QObject::connect(how, &QComboBox::currentIndexChanged, &form, look);
    QObject::connect(filling, &QComboBox::currentIndexChanged, &form, look);
    for (QLineEdit* each : {goods, price})
        QObject::connect(each, &QLineEdit::textChanged, &form, look);
    lines.whenTyped(&form, look);
    look();
    form.keepDraft(QStringLiteral("go-out"));
    form.beginIn(how);
    form.onAccept([&] {
        GoOut deed;
        deed.on = on;
        deed.how = howSaid();
        deed.goods = lines.inLine(goods);
        deed.bottling = chosenId<Bottling>(filling);
        if (!price->isHidden() && !readField(session, price, deed.price)) return false;
        deed.place = typedWords(place);
        if (!buyer->isHidden()) deed.buyer = typedWords(buyer);
        deed.reason = typedWords(reason);
        deed.note = typedWords(note);
        return session.run(deed).has_value();
    });
    return form.exec() == QDialog::Accepted;
}

bool askToGoInBulk(QWidget* parent, Session& session, Day on) {
    SmallForm form(parent, session, outWord("Honey in bulk, %1").arg(dayText(on)));
    form.scrollFields();
    auto* how = form.choice(outWord("How"), "how");
    offerHow(how, outWord("spilled"));
    auto* from = form.choice(outWord("Out of"), "honey");
    offerHoney(from, session.read(), on);
    auto* mass = form.line(outWord("How much, %1").arg(massUnit()), "mass", outWord("5, or 850 g"));
    auto* price = form.line(outWord("Price of all"), "price", outWord("may stay empty"));
    auto* place = form.line(outWord("Where"), "place", outWord("gate, market; may stay empty"));
    auto* buyer = form.line(outWord("To whom"), "buyer", outWord("only in trade, or if wished"));
    auto* reason =
        form.line(outWord("On what grounds"), "reason_held", outWord("only if it is held back"));
    auto* note = mayStayEmpty(form, outWord("Note"), "note");
    auto* outlook = form.say(QStringLiteral(" "));
    outlook->setObjectName(QStringLiteral("outlook"));
    auto* caution = form.caution(QStringLiteral(" "));
    caution->setObjectName(QStringLiteral("caution"));
    const auto look = [&] {
        const auto went = chosen<OutHow>(how).value_or(OutHow::Sold);
        form.showField(price, went == OutHow::Sold || went == OutHow::CameBack);
        form.showField(buyer, went != OutHow::Kept && went != OutHow::Broken);
        const auto vessel = honeyChosen(from);
        std::optional<Known<Mass>> drawn;
        if (!vessel || !readsAs(mass->text(), drawn)) return;
        const auto middle = drawn ? drawn->middle() : std::nullopt;
        const FillingAhead then = fillingAhead(session.read(), *vessel, {},
                                               middle && went != OutHow::CameBack
                                                   ? std::optional(Mass::roundedGrams(*middle))
                                                   : std::nullopt,
                                               std::nullopt, on);
        form.sayAgain(outlook, bulkAheadText(then));
        form.sayAgain(caution, went == OutHow::Broken || went == OutHow::CameBack
                                   ? QString()
                                   : fillingAheadCautions(then, on).join(QLatin1Char('\n')));
    };
    for (QComboBox* each : {how, from})
        QObject::connect(each, &QComboBox::currentIndexChanged, &form, look);
    QObject::connect(mass, &QLineEdit::textChanged, &form, look);
    look();
    form.keepDraft(QStringLiteral("go-in-bulk"));
    form.beginIn(how);
    form.onAccept([&] {
        GoOut deed;
        deed.on = on;
        deed.how = chosen<OutHow>(how);
        const auto vessel = honeyChosen(from);
        if (!vessel) {
            session.tell(outWord("No bucket or lot has honey in it."), true);
            return false;
        }
        deed.bucket = vessel->bucket;
        deed.lot = vessel->lot;
        if (!readField(session, mass, deed.mass)) return false;
        if (!price->isHidden() && !readField(session, price, deed.price)) return false;
        deed.place = typedWords(place);
        if (!buyer->isHidden()) deed.buyer = typedWords(buyer);
        deed.reason = typedWords(reason);
        deed.note = typedWords(note);
        return session.run(deed).has_value();
    });
    return form.exec() == QDialog::Accepted;
}

bool askForComplaint(QWidget* parent, Session& session, const std::optional<Id<Bottling>>& filling,
                     Day on) {
    std::optional<TraceOf> asked;
    bool kept = false;
    {
        SmallForm form(parent, session, outWord("A complaint, %1").arg(dayText(on)));
        auto* of = form.choice(outWord("The code on the jar"), "filling");
        offerFillings(of, session.read(), on, outWord("nobody knows which jar"));
        choose(of, filling);
        auto* what = form.line(outWord("What the jar did"), "what",
                               outWord("bubbles, smells sour, something in it"), 36);
        auto* who = form.line(outWord("Who said it"), "who", outWord("may stay empty"));
        auto* hold = form.choice(outWord("Hold back"), "hold");
        hold->addItem(outWord("all honey of its bucket or lot"),
                      static_cast<int>(HoldOnComplaint::Honey));
        hold->addItem(outWord("this filling"), static_cast<int>(HoldOnComplaint::Filling));
        hold->addItem(outWord("nothing"), static_cast<int>(HoldOnComplaint::Nothing));
        auto* then = form.choice(outWord("Then"), "then");
        then->addItem(outWord("show who else has it"), 1);
        then->addItem(outWord("that is all"), 0);
        auto* said = form.caution(QStringLiteral(" "));
        said->setObjectName(QStringLiteral("caution"));
        form.fitWith(of, [&] {
            const auto bottling = session.read().find(chosenId<Bottling>(of));
            form.showField(hold, bottling.has_value());
            form.showField(then, bottling.has_value());
            form.sayAgain(said,
                          bottling ? outWord("Froth under a lid is under pressure: open such a jar "
                                             "slowly. Taste nothing that smells wrong.")
                                   : outWord("Without its code nobody can say who else has that "
                                             "honey. Ask for the lid or the label."));
        });
        form.keepDraft(QStringLiteral("note-complaint"));
        form.beginIn(of);
        form.onAccept([&] {
            NoteComplaint deed;
            deed.on = on;
            deed.bottling = chosenId<Bottling>(of);
            const auto name = Name::of(typedWords(what));
            if (!name) {
                session.tell(outWord("Write in a word or two what the jar did."), true);
                what->setFocus();
                return false;
            }
            deed.what = *name;
            deed.who = typedWords(who);
            const auto holds = static_cast<HoldOnComplaint>(hold->currentData().toInt());
            const auto bottling = session.read().find(deed.bottling);
            if (!session.together(
                    [&](Season& season) { return keepComplaint(season, deed, holds, bottling); }))
                return false;
            if (bottling && then->currentData().toInt() == 1)
                asked = TraceOf{.bottling = bottling->id};
            return true;
        });
        kept = form.exec() == QDialog::Accepted;
    }
    if (asked) showTrace(parent, session, asked, on);
    return kept;
}

bool askToCloseComplaint(QWidget* parent, Session& session, Day on) {
    const auto open = session.read().where<Complaint>({isUnknown("closed")});
    if (open.empty()) {
        session.tell(outWord("No complaint is open."), true);
        return false;
    }
    SmallForm form(parent, session, outWord("A complaint closed, %1").arg(dayText(on)));
    auto* which = form.choice(outWord("Complaint"), "complaint");
    for (const Complaint& each : open)
        which->addItem(complaintText(session.read(), each), static_cast<qlonglong>(each.id.number));
    auto* became = form.line(outWord("What was found and done"), "became",
                             outWord("only froth from filling; another jar given"), 36);
    form.say(outWord("A hold stays until it is released: H on the filling."));
    form.keepDraft(QStringLiteral("close-complaint"));
    form.beginIn(became);
    form.onAccept([&] {
        CloseComplaint deed;
        deed.on = on;
        const auto complaint = chosenId<Complaint>(which);
        if (!complaint) return false;
        deed.complaint = *complaint;
        deed.became = typedWords(became);
        return session.run(deed).has_value();
    });
    return form.exec() == QDialog::Accepted;
}

bool askToHoldFilling(QWidget* parent, Session& session, Id<Bottling> filling, Day on) {
    const auto bottling = session.read().find(filling);
    if (!bottling) return false;
    const QString code = fromUtf8(bottling->code.text());
    std::vector<Hold> own;
    QStringList inherited;
    for (const Hold& each : holdsOn(session.read(), filling, on)) {
        if (each.bottling == filling)
            own.push_back(each);
        else
            inherited << outWord("%1 since %2, of what is in it")
                             .arg(choiceText(word(each.why)), shortDayText(each.since, on));
    }
    SmallForm form(parent, session,
                   own.empty() ? outWord("Hold %1 back, %2").arg(code, dayText(on))
                               : outWord("Release %1, %2").arg(code, dayText(on)));
    if (!inherited.isEmpty())
        form.caution(outWord("Held already: %1. That is released where it was put on.")
                         .arg(inherited.join(QStringLiteral("; "))));
    if (!own.empty()) return releaseFilling(form, session, own, on);
    auto* why = form.choice(outWord("Why"), "why");
    addChoices<HoldWhy>(why, QString());
    why->setCurrentIndex(why->findData(static_cast<int>(HoldWhy::Complaint)));
    auto* note = mayStayEmpty(form, outWord("Note"), "note");
    form.say(outWord("No jar of it goes out without a reason said, until it is released."));
    form.beginIn(why);
    form.onAccept([&] {
        HoldBack deed;
        deed.on = on;
        deed.reason = chosen<HoldWhy>(why).value_or(HoldWhy::Other);
        deed.bottling = filling;
        deed.note = typedWords(note);
        return session.run(deed).has_value();
    });
    return form.exec() == QDialog::Accepted;
}

}  // namespace combwright
