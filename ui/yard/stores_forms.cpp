#include "ui/yard/stores_forms.h"

#include <QCoreApplication>

#include "core/actions/yard/feeds.h"
#include "core/actions/yard/hive_list.h"
#include "core/actions/yard/truck.h"
#include "core/actions/yard/weighings.h"
#include "core/places/pages/stores/stores_page.h"
#include "core/places/pages/yard/kit_list_page.h"
#include "core/places/yard/kit_list.h"
#include "core/words/figures.h"
#include "core/words/room_line.h"
#include "core/words/units.h"
#include "core/words/words.h"
#include "ui/shell/form_reading.h"
#include "ui/shell/small_form.h"

namespace combwright {
namespace {

QString feedWord(const char* text) { return QCoreApplication::translate("stores_forms", text); }

/// Figures are in what is shown; the line itself knows kilograms unless it is told otherwise.
QString withUnit(const QString& part) {
    const QString text = part.simplified();
    const bool said = text.endsWith(QLatin1String("kg")) || text.endsWith(QLatin1String("lb"));
    return said || text.isEmpty() || shownUnits() == Units::Metric ? text
                                                                   : text + QStringLiteral(" lb");
}

/// What was typed beside a hive: complete, it goes with the others in one line; "20+" and "+21" are
/// one side, the other comes later.
struct TypedWeight {
    QString inLine;
    std::optional<WeighHive> oneSide;
};

bool readWeight(Session& session, QLineEdit* field, const Hive& hive, Day on, TypedWeight& weight) {
    const QString typed = field->text().simplified();
    if (typed.isEmpty()) return true;
    const bool left = typed.endsWith(QLatin1Char('+'));
    if (!left && !typed.startsWith(QLatin1Char('+'))) {
        weight.inLine = withUnit(fromUtf8(hive.mark.text()) + QLatin1Char(' ') + typed);
        return true;
    }
    const auto mass = typedReading(left ? typed.chopped(1) : typed.mid(1));
    if (!mass) {
        session.tell(feedWord("%1: \"%2\" is no weighing. Write 20+21, or 20+ for one side.")
                         .arg(field->accessibleName(), typed),
                     true);
        field->setFocus();
        return false;
    }
    WeighHive deed;
    deed.on = on;
    deed.hive = hive.id;
    (left ? deed.left : deed.right) = mass;
    weight.oneSide = deed;
    return true;
}

bool weighAll(Session& session, const Yard& yard, Day on, const QStringList& lines,
              const std::vector<WeighHive>& sides) {
    if (lines.isEmpty() && sides.empty()) {
        session.tell(feedWord("Nothing was typed, so nothing was kept. What did the scale say?"),
                     true);
        return false;
    }
    return session.together([&](Season& season) -> Result<void> {
        if (!lines.isEmpty()) {
            WeighHive deed;
            deed.on = on;
            deed.yard = yard.id;
            deed.readings = lines.join(QStringLiteral(", ")).toStdString();
            if (auto done = perform(season, deed, StepNote{}); !done) return done.error();
        }
        for (const WeighHive& side : sides)
            if (auto done = perform(season, side, StepNote{}); !done) return done.error();
        return {};
    });
}

QString liftWords() {
    return feedWord("A full hive is not lifted by hand: one side at a time with the scale.") +
           QLatin1Char(' ') + liftCaution();
}

template <class Deed>
bool askForFeedStock(QWidget* parent, Session& session, const QString& title, Day on,
                     const QString& sheet, std::optional<Known<Mass>> Deed::*amount,
                     std::string Deed::*supplier) {
    SmallForm form(parent, session, title);
    QStringList shelf;
    for (const FeedShelfRow& each : feedShelf(session.read(), on)) shelf << feedShelfText(each);
    form.say(shelf.isEmpty() ? feedWord("No feed is written down yet.")
                             : shelf.join(QLatin1Char('\n')));
    auto* kind = form.choice(feedWord("Kind"), "kind");
    addChoices<FeedKind>(kind, QString());
    // Sugar for syrup is bought and stands on the shelf dry.
    kind->setCurrentIndex(kind->findData(static_cast<int>(FeedKind::Dry)));
    auto* sugar = form.line(feedWord("Sugar in it, %1").arg(massUnit()), "sugar",
                            feedWord("25; or packs and their size"));
    auto* packs = form.line(feedWord("Packs"), "packs", feedWord("10"));
    auto* pack =
        form.line(feedWord("Sugar in a pack, %1").arg(massUnit()), "pack", feedWord("2.5"));
    QLineEdit* from = supplier
                          ? form.line(feedWord("Supplier"), "supplier", feedWord("may stay empty"))
                          : nullptr;
    auto* note = form.line(feedWord("Note"), "note", feedWord("may stay empty"));
    form.keepDraft(sheet);
    form.onAccept([&] {
        Deed deed;
        deed.on = on;
        deed.kind = chosen<FeedKind>(kind);
        if (!readField(session, sugar, deed.*amount) || !readField(session, packs, deed.packs) ||
            !readField(session, pack, deed.pack))
            return false;
        if (from) deed.*supplier = typedWords(from);
        deed.note = typedWords(note);
        return session.run(deed).has_value();
    });
    return form.exec() == QDialog::Accepted;
}

}  // namespace

bool askToWeigh(QWidget* parent, Session& session, const Yard& yard, const std::vector<Hive>& hives,
                Id<Hive> first, Day on) {
    SmallForm form(
        parent, session,
        hives.size() == 1
            ? feedWord("%1 weighed, %2").arg(fromUtf8(hives.front().mark.text()), dayText(on))
            : feedWord("%1 hives of %2 weighed, %3")
                  .arg(hives.size())
                  .arg(fromUtf8(yard.name.text()), dayText(on)));
    form.scrollFields();
    form.say(feedWord("Both sides with a plus between, or the whole, in %1; one side alone as 20+ "
                      "or +21. \"without 17.5\" behind it is all that is no stores. Enter goes to "
                      "the next hive; one left empty was not weighed.")
                 .arg(massUnit()));
    std::vector<QLineEdit*> fields;
    for (const Hive& hive : hives) {
        fields.push_back(
            form.line(fromUtf8(hive.mark.text()),
                      QStringLiteral("weighed_%1").arg(hive.id.number).toLatin1().constData(),
                      feedWord("20+21, or 41")));
        if (hive.id == first) form.beginIn(fields.back());
    }
    form.goOnByEnter();
    form.caution(liftWords());
    form.keepDraft(QStringLiteral("weigh %1 %2").arg(yard.id.number).arg(dayText(on)));
    form.onAccept([&] {
        QStringList lines;
        std::vector<WeighHive> sides;
        for (std::size_t n = 0; n < fields.size(); ++n) {
            TypedWeight weight;
            if (!readWeight(session, fields[n], hives[n], on, weight)) return false;
            if (!weight.inLine.isEmpty()) lines << weight.inLine;
            if (weight.oneSide) sides.push_back(*weight.oneSide);
        }
        return weighAll(session, yard, on, lines, sides);
    });
    return form.exec() == QDialog::Accepted;
}

bool askForTare(QWidget* parent, Session& session, const Hive& hive, Day on) {
    SmallForm form(parent, session, feedWord("Empty weight of %1").arg(fromUtf8(hive.mark.text())));
    form.ofDay(on);
    form.say(
        feedWord("Floor, lid and the boxes of the nest, without frames and supers. Left "
                 "empty it is reckoned from the kinds of its boxes."));
    auto* tare = form.line(feedWord("Empty weight, %1").arg(massUnit()), "tare", feedWord("14.5"));
    if (hive.tare && hive.tare->value) tare->setText(massTyped(*hive.tare->value));
    form.beginIn(tare);
    form.keepDraft(QStringLiteral("tare %1 %2").arg(hive.id.number).arg(dayText(on)));
    form.onAccept([&] {
        SetTare deed;
        deed.on = on;
        deed.hive = hive.id;
        return readField(session, tare, deed.tare) && session.run(deed).has_value();
    });
    return form.exec() == QDialog::Accepted;
}

bool askToFeed(QWidget* parent, Session& session, const Yard& yard, const HivesAsked& hives,
               Day on) {
    SmallForm form(parent, session, feedWord("Feed"));
    const HivesField which(form, session, {feedWord("Feed"), feedWord("Feed")}, hives, yard, on);
    auto* kind = form.choice(feedWord("As"), "kind");
    addChoices<FeedKind>(kind, feedWord("not said"));
    auto* sugar = form.line(feedWord("Sugar a hive, %1").arg(massUnit()), "given",
                            feedWord("the sugar in it, not the water"));
    auto* packs = form.line(feedWord("Or packs a hive"), "packs", feedWord("2"));
    auto* note = form.line(feedWord("Note"), "note", feedWord("may stay empty"));
    auto* outlook = form.say(QStringLiteral(" "));
    outlook->setObjectName(QStringLiteral("outlook"));
    auto* caution = form.caution(QStringLiteral(" "));
    caution->setObjectName(QStringLiteral("caution"));
    // The list of the action is empty for all.
    const auto named = [&which] { return which.saysAll() ? std::string() : which.typed(); };
    const auto look = [&] {
        QStringList said;
        QStringList careful;
        const auto meant = hivesListed(session.read(), named(), yard.id, on);
        std::optional<Known<Mass>> each;
        std::optional<Count> many;
        readsAs(sugar->text(), each);
        readsAs(packs->text(), many);
        which.entitle(meant);
        if (which.typed().empty()) {
            careful << HivesField::noneNamed();
        } else if (!meant) {
            careful << sentence(meant.error());
        } else {
            const FeedOutlook comes =
                feedOutlook(session.read(), *meant, chosen<FeedKind>(kind), each, many, on);
            const QString hivesWord =
                meant->size() == 1 ? feedWord("1 hive") : feedWord("%1 hives").arg(meant->size());
            said << (comes.takesG ? feedWord("%1 take %2 of sugar.")
                                        .arg(hivesWord, massText(*comes.takesG, How::Weighed))
                                  : hivesWord + QLatin1Char('.'));
            if (comes.shelf) said << feedShelfText(*comes.shelf);
            if (comes.leftAfterG)
                said << (*comes.leftAfterG < 0
                             ? feedWord("That is %1 more than is written down: count the shelf.")
                                   .arg(massText(-*comes.leftAfterG, How::Weighed))
                             : feedWord("Then %1 are left.")
                                   .arg(massKnown(*comes.leftAfterG, comes.shelf->how())));
            if (!comes.supersOn.empty()) {
                QStringList marks;
                for (const std::string& mark : comes.supersOn) marks << fromUtf8(mark);
                careful << feedWord("Supers are on %1: what is fed ends up in them.")
                               .arg(marks.join(QStringLiteral(", ")));
            }
        }
        careful << feedWord(
            "In the evening, nothing spilled, entrances small: open feed draws "
            "robbers. No brown or raw sugar.");
        form.sayAgain(outlook, said.join(QLatin1Char(' ')));
        form.sayAgain(caution, careful.join(QLatin1Char(' ')));
    };
    QObject::connect(kind, &QComboBox::currentIndexChanged, &form, look);
    for (QLineEdit* each : {which.line(), sugar, packs})
        QObject::connect(each, &QLineEdit::textChanged, &form, look);
    look();
    form.keepDraft(QStringLiteral("feed %1 %2").arg(yard.id.number).arg(dayText(on)));
    which.keepTicks();
    form.beginIn(which.line());
    form.onAccept([&] {
        FeedHives deed;
        deed.on = on;
        deed.yard = yard.id;
        if (!which.demand()) return false;
        deed.hives = named();
        deed.kind = chosen<FeedKind>(kind);
        if (!readField(session, sugar, deed.given) || !readField(session, packs, deed.packs))
            return false;
        deed.note = typedWords(note);
        return session.run(deed).has_value();
    });
    return form.exec() == QDialog::Accepted;
}

bool askToBuyFeed(QWidget* parent, Session& session, Day on) {
    return askForFeedStock<BuyFeed>(parent, session, feedWord("Feed bought, %1").arg(dayText(on)),
                                    on, QStringLiteral("buy-feed"), &BuyFeed::bought,
                                    &BuyFeed::supplier);
}

bool askToCountFeed(QWidget* parent, Session& session, Day on) {
    return askForFeedStock<CountFeed>(
        parent, session, feedWord("Feed counted at the end of %1").arg(dayText(on)), on,
        QStringLiteral("count-feed"), &CountFeed::counted, nullptr);
}

bool askForTruck(QWidget* parent, Session& session, const Yard& yard, Day on) {
    SmallForm form(parent, session, feedWord("Always in the truck"));
    QStringList there;
    for (const KitLine& each : kitList(session.read(), yard.id, on).always) there << kitText(each);
    form.say(there.isEmpty() ? feedWord("Nothing is written down yet.")
                             : there.join(QStringLiteral(", ")));
    auto* in =
        form.line(feedWord("Put in"), "put_in", feedWord("smoker, 2 hive tool, matches"), 34);
    auto* out = form.line(feedWord("Take off the list"), "take_off", feedWord("may stay empty"));
    form.beginIn(in);
    form.keepDraft(QStringLiteral("truck"));
    form.onAccept([&] {
        if (typedWords(in).empty() && typedWords(out).empty()) {
            session.tell(feedWord("Nothing was typed, so nothing was kept."), true);
            return false;
        }
        return session.together([&](Season& season) -> Result<void> {
            if (!typedWords(in).empty()) {
                PutInTruck deed;
                deed.on = on;
                deed.items = typedWords(in);
                if (auto done = perform(season, deed, StepNote{}); !done) return done.error();
            }
            if (typedWords(out).empty()) return {};
            TakeOffTruck deed;
            deed.on = on;
            deed.items = typedWords(out);
            if (auto done = perform(season, deed, StepNote{}); !done) return done.error();
            return {};
        });
    });
    return form.exec() == QDialog::Accepted;
}

}  // namespace combwright
