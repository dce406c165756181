#include "ui/yard/colony_forms.h"

#include <QCoreApplication>

#include "core/actions/boxes/box_list.h"
#include "core/actions/yard/colonies.h"
#include "core/actions/yard/splits.h"
#include "core/actions/yard/yards.h"
#include "core/storage/queries/hive_days.h"
#include "core/storage/queries/names.h"
#include "core/storage/queries/yards.h"
#include "core/words/words.h"
#include "ui/yard/form_fields.h"
#include "ui/yard/hive_forms.h"
#include "ui/yard/letter_chooser.h"

namespace combwright {
namespace {

QString colonyWord(const char* text) { return QCoreApplication::translate("colony_forms", text); }

/// Where bees are put: an empty hive that stands there, or a mark nobody bears yet.
struct StandTyped {
    std::optional<Id<Hive>> hive;
    Id<Yard> yard;
    std::string mark;
};

/// "ML13" in the yard of the hive one is at, "C4, Creek" in another. Nothing where the yard is not
/// known.
std::optional<StandTyped> standTyped(const Read& file, const QString& typed, Id<Yard> near,
                                     Day on) {
    const auto comma = typed.indexOf(QLatin1Char(','));
    StandTyped stand;
    stand.yard = near;
    stand.mark = typed.left(comma).simplified().toStdString();
    if (comma >= 0) {
        const NameQuery query{.name = typed.mid(comma + 1).simplified().toStdString(), .on = on};
        const auto yard = findNamed(file, Yard::table, query);
        if (!yard) return std::nullopt;
        stand.yard = Id<Yard>{*yard};
    }
    for (const Hive& hive : hivesOn(file, stand.yard, on))
        if (fromUtf8(hive.mark.text()).compare(fromUtf8(stand.mark), Qt::CaseInsensitive) == 0)
            stand.hive = hive.id;
    return stand;
}

/// The field for it, and the boxes of a stand that is new.
class StandField {
  public:
    StandField(SmallForm& form, Session& session, const QString& label, Id<Yard> near, Day on)
        : m_form(form), m_session(session), m_near(near), m_on(on) {
        m_stand = form.line(label, "stand", colonyWord("an empty hive: ML7; or a new mark: ML13"));
        m_boxes = form.line(colonyWord("Its own boxes"), "new_boxes",
                            colonyWord("nuc N7; deep D40; may stay empty"));
        QObject::connect(m_stand, &QLineEdit::textChanged, &form, [this] { fit(); });
        fit();
    }
    QLineEdit* line() const { return m_stand; }
    /// As they are kept; nothing where what was typed names no boxes, which was told.
    std::optional<std::string> boxes() const {
        if (!isNew()) return std::string();
        auto list = boxListInEnglish(m_session.read(), typedWords(m_boxes));
        if (list) return *std::move(list);
        m_session.tell(sentence(Refusal{list.error().code, "new_boxes", list.error().values}),
                       true);
        return std::nullopt;
    }
    /// What is meant; nothing where that was told.
    std::optional<StandTyped> stand() const {
        if (m_stand->text().trimmed().isEmpty()) {
            m_session.tell(
                colonyWord("Which stand? Write the mark of an empty hive, or a new one."), true);
            return std::nullopt;
        }
        auto stand = standTyped(m_session.read(), m_stand->text(), m_near, m_on);
        if (!stand)
            m_session.tell(colonyWord("No yard is called \"%1\".")
                               .arg(m_stand->text().section(QLatin1Char(','), 1).trimmed()),
                           true);
        return stand;
    }

  private:
    bool isNew() const {
        if (m_stand->text().trimmed().isEmpty()) return false;
        const auto stand = standTyped(m_session.read(), m_stand->text(), m_near, m_on);
        return stand && !stand->hive;
    }
    void fit() const { m_form.showField(m_boxes, isNew()); }

    SmallForm& m_form;
    Session& m_session;
    Id<Yard> m_near;
    Day m_on;
    QLineEdit* m_stand;
    QLineEdit* m_boxes;
};

bool livesThere(const Session& session, const Hive& hive, Day on) {
    return colonyLivingOn(session.read(), hive.id, on).has_value();
}

/// What is waited for is asked only where somebody knows where the queen is.
void showWhereKnown(SmallForm& form, QComboBox* queen, QComboBox* step) {
    const auto fit = [&form, queen, step] {
        form.showField(step, yesNoOffered(queen).has_value());
    };
    form.fitWith(queen, fit);
}

}  // namespace

bool askToSplit(QWidget* parent, Session& session, const Hive& hive, Day on) {
    SmallForm form(parent, session, colonyWord("Split %1").arg(markOf(hive)));
    form.ofDay(on);
    const StandField onto(form, session, colonyWord("The part goes onto"), hive.yard, on);
    auto* boxes = form.line(colonyWord("Boxes carried over"), "boxes",
                            colonyWord("D31; or deep, second, top; may stay empty"));
    auto* frames =
        form.line(colonyWord("Frames carried over"), "frames", colonyWord("4; may stay empty"));
    auto* brood =
        form.line(colonyWord("Of them with brood"), "with_brood", colonyWord("3; may stay empty"));
    const auto fitBrood = [&form, frames, brood] {
        form.showField(brood, !frames->text().trimmed().isEmpty());
    };
    QObject::connect(frames, &QLineEdit::textChanged, &form, fitBrood);
    fitBrood();
    auto* queen = form.choice(colonyWord("The queen"), "queen");
    offerYesNo(queen, colonyWord("nobody knows where she is"), colonyWord("goes along"),
               colonyWord("stays in %1").arg(markOf(hive)));
    auto* step = form.choice(colonyWord("The other part waits by"), "step");
    offerSteps(step);
    showWhereKnown(form, queen, step);
    auto* reason = reasonLine(form, session, on);
    form.onAccept([&] {
        const auto stand = onto.stand();
        if (!stand) return false;
        SplitColony split;
        split.on = on;
        split.hive = hive.id;
        split.onto = stand->hive;
        if (!stand->hive) {
            split.yard = stand->yard;
            split.mark = stand->mark;
        }
        const auto own = onto.boxes();
        if (!own) return false;
        split.newBoxes = *own;
        split.boxes = typedWords(boxes);
        if (!readField(session, frames, split.frames)) return false;
        if (split.frames && !readField(session, brood, split.withBrood)) return false;
        split.queenGoes = yesNoOffered(queen);
        if (split.queenGoes) split.step = chosen<QueenStep>(step);
        split.reason = reasonTyped(reason);
        return session.run(split).has_value();
    });
    return form.exec() == QDialog::Accepted;
}

bool askToUnite(QWidget* parent, Session& session, const Hive& hive, Day on) {
    SmallForm form(parent, session, colonyWord("Unite %1 with another").arg(markOf(hive)));
    form.ofDay(on);
    auto* into = form.choice(colonyWord("Its bees go to"), "into");
    offerHives(into, session.read(), HiveOffered::WithColony, hive.yard, hive.id, on);
    auto* queen = form.choice(colonyWord("The queen kept"), "queen");
    queen->addItem(colonyWord("nobody knows"), static_cast<int>(QueenKept::NotKnown));
    queen->addItem(colonyWord("that of the hive they go to"), static_cast<int>(QueenKept::Host));
    queen->addItem(colonyWord("that of %1").arg(markOf(hive)), static_cast<int>(QueenKept::Other));
    auto* boxes = form.choice(colonyWord("The boxes of %1").arg(markOf(hive)), "boxes_to");
    boxes->addItem(colonyWord("stay where they are"), -1);
    boxes->addItem(colonyWord("go on top of the other hive"), static_cast<int>(BoxPlace::OnHive));
    boxes->addItem(colonyWord("go to the storeroom"), static_cast<int>(BoxPlace::Storeroom));
    auto* shelf = openLine(form, colonyWord("Shelf"), "stack");
    const auto fit = [&] {
        form.showField(shelf,
                       boxes->currentData().toInt() == static_cast<int>(BoxPlace::Storeroom));
    };
    form.fitWith(boxes, fit);
    auto* reason = reasonLine(form, session, on);
    form.say(colonyWord("The colony of %1 ends here; its bees live on in the other hive.")
                 .arg(markOf(hive)));
    form.onAccept([&] {
        const auto host = hiveDemanded(session, into);
        if (!host) return false;
        UniteColonies unite;
        unite.on = on;
        unite.hive = hive.id;
        unite.into = *host;
        unite.queenKept = static_cast<QueenKept>(queen->currentData().toInt());
        if (const int to = boxes->currentData().toInt(); to >= 0)
            unite.boxesTo = static_cast<BoxPlace>(to);
        if (unite.boxesTo == BoxPlace::Storeroom) unite.stack = typedWords(shelf);
        unite.reason = reasonTyped(reason);
        return session.run(unite).has_value();
    });
    return form.exec() == QDialog::Accepted;
}

bool askToHiveSwarm(QWidget* parent, Session& session, const Hive& hive, Day on) {
    const bool lives = livesThere(session, hive, on);
    SmallForm form(parent, session, colonyWord("A swarm was hived"));
    form.ofDay(on);
    const StandField onto(form, session, colonyWord("It lives on"), hive.yard, on);
    if (!lives) onto.line()->setText(markOf(hive));
    auto* from = form.choice(colonyWord("It came from"), "from_hive");
    from->addItem(colonyWord("elsewhere, or nobody knows"), 0);
    offerHives(from, session.read(), HiveOffered::WithColony, hive.yard, {}, on);
    if (lives) from->setCurrentIndex(from->findData(static_cast<qlonglong>(hive.id.number)));
    auto* queen = form.choice(colonyWord("The old queen of that hive"), "queen");
    offerYesNo(queen, colonyWord("nobody knows"), colonyWord("came with it"),
               colonyWord("did not: an afterswarm"));
    auto* step = form.choice(colonyWord("The hive it left waits by"), "step");
    offerSteps(step);
    const auto fit = [&] {
        form.showField(queen, chosenId<Hive>(from).has_value());
        form.showField(step, chosenId<Hive>(from).has_value());
    };
    form.fitWith(from, fit);
    auto* reason = reasonLine(form, session, on);
    form.onAccept([&] {
        const auto stand = onto.stand();
        if (!stand) return false;
        HiveSwarm swarm;
        swarm.on = on;
        swarm.hive = stand->hive;
        if (!stand->hive) {
            swarm.yard = stand->yard;
            swarm.mark = stand->mark;
        }
        const auto own = onto.boxes();
        if (!own) return false;
        swarm.newBoxes = *own;
        swarm.from = chosenId<Hive>(from);
        if (swarm.from) {
            swarm.queenGoes = yesNoOffered(queen);
            swarm.step = chosen<QueenStep>(step);
        }
        swarm.reason = reasonTyped(reason);
        return session.run(swarm).has_value();
    });
    return form.exec() == QDialog::Accepted;
}

bool askSwarmed(QWidget* parent, Session& session, const Hive& hive, Day on) {
    SmallForm form(parent, session, colonyWord("%1 swarmed").arg(markOf(hive)));
    form.ofDay(on);
    form.say(colonyWord("The swarm was not caught. Where it was: X, then H, a swarm was hived."));
    auto* queen = form.choice(colonyWord("The old queen"), "queen");
    queen->addItem(colonyWord("went with it"), 1);
    queen->addItem(colonyWord("did not: an afterswarm"), 0);
    auto* step = form.choice(colonyWord("It waits by"), "step");
    offerSteps(step, false);
    form.onAccept([&] {
        Swarmed swarmed;
        swarmed.on = on;
        swarmed.hive = hive.id;
        swarmed.queenGoes = yesNoOffered(queen);
        swarmed.step = chosen<QueenStep>(step);
        return session.run(swarmed).has_value();
    });
    return form.exec() == QDialog::Accepted;
}

bool askToMoveColony(QWidget* parent, Session& session, const Hive& hive, Day on) {
    SmallForm form(parent, session, colonyWord("The colony of %1 moves").arg(markOf(hive)));
    form.ofDay(on);
    auto* to = form.choice(colonyWord("To the empty stand"), "to_hive");
    offerHives(to, session.read(), HiveOffered::Empty, hive.yard, hive.id, on);
    auto* boxes = form.line(colonyWord("Boxes it takes along"), "boxes",
                            colonyWord("all; D31, M31; none where it stays empty"));
    auto* combs = form.choice(colonyWord("Its combs"), "combs");
    combs->addItem(colonyWord("go along into the box that stands there"), 1);
    combs->addItem(colonyWord("stay where they are"), 0);
    const auto fit = [&] {
        const auto stand = chosenId<Hive>(to);
        const bool bare = stand && boxesOn(session.read(), *stand).empty();
        boxes->setText(bare ? QStringLiteral("all") : QString());
    };
    // Bees that take their boxes along keep their combs in them.
    const auto fitCombs = [&] {
        form.showField(combs, to->count() > 0 && boxes->text().trimmed().isEmpty());
    };
    QObject::connect(boxes, &QLineEdit::textChanged, &form, fitCombs);
    form.fitWith(to, fit);
    fitCombs();
    auto* reason = reasonLine(form, session, on);
    if (to->count() == 0)
        form.say(colonyWord("No hive stands empty that day. H at the board adds one."));
    form.onAccept([&] {
        const auto stand = hiveDemanded(session, to);
        if (!stand) return false;
        MoveColony move;
        move.on = on;
        move.hive = hive.id;
        move.to = *stand;
        move.boxes = typedWords(boxes);
        if (move.boxes.empty()) move.combs = combs->currentData().toInt() == 1;
        move.reason = reasonTyped(reason);
        return session.run(move).has_value();
    });
    return form.exec() == QDialog::Accepted;
}

bool askToStartColony(QWidget* parent, Session& session, const Hive& hive, Day on) {
    SmallForm form(parent, session, colonyWord("A colony begins in %1").arg(markOf(hive)));
    form.ofDay(on);
    auto* origin = form.choice(colonyWord("It is"), "origin");
    const auto offer = [&](Origin each, const QString& text) {
        origin->addItem(text, static_cast<int>(each));
    };
    offer(Origin::NotKnown, colonyWord("where from is not known"));
    offer(Origin::Nucleus, colonyWord("a nucleus"));
    offer(Origin::Package, colonyWord("a package"));
    offer(Origin::Split, colonyWord("a split"));
    offer(Origin::Swarm, colonyWord("a swarm"));
    offer(Origin::Overwintered, colonyWord("overwintered"));
    auto* mother = form.choice(colonyWord("From"), "mother");
    mother->addItem(colonyWord("elsewhere, or nobody knows"), 0);
    offerHives(mother, session.read(), HiveOffered::WithColony, hive.yard, hive.id, on);
    const auto mayHaveMother = [origin] {
        const auto now = static_cast<Origin>(origin->currentData().toInt());
        return now == Origin::Split || now == Origin::Swarm;
    };
    const auto fit = [&] { form.showField(mother, mayHaveMother()); };
    form.fitWith(origin, fit);
    auto* note = openLine(form, colonyWord("Note"), "note");
    auto* reason = reasonLine(form, session, on);
    form.onAccept([&] {
        StartColony start;
        start.on = on;
        start.hive = hive.id;
        start.origin = static_cast<Origin>(origin->currentData().toInt());
        if (mayHaveMother()) start.mother = chosenId<Hive>(mother);
        start.note = typedWords(note);
        start.reason = reasonTyped(reason);
        return session.run(start).has_value();
    });
    return form.exec() == QDialog::Accepted;
}

bool askToEndColony(QWidget* parent, Session& session, const Hive& hive, Day on) {
    SmallForm form(parent, session, colonyWord("The colony of %1 ended").arg(markOf(hive)));
    form.ofDay(on);
    auto* ending = form.choice(colonyWord("How"), "ending");
    ending->addItem(colonyWord("not known"), -1);
    for (const std::string_view each : Choices<Ending>::words)
        ending->addItem(fromUtf8(each), ending->count() - 1);
    auto* into = form.choice(colonyWord("With the hive"), "into");
    into->addItem(colonyWord("not known"), 0);
    offerHives(into, session.read(), HiveOffered::WithColony, hive.yard, hive.id, on);
    auto* note = openLine(form, colonyWord("What you found"), "note");
    auto* words = form.caution({});
    const auto fit = [&] {
        const int how = ending->currentData().toInt();
        const bool united = how == static_cast<int>(Ending::United);
        const bool alive = united || how == static_cast<int>(Ending::Sold);
        form.showField(into, united);
        form.sayAgain(words, alive ? QString()
                                   : colonyWord("Its combs are held back until it is explained: "
                                                "what killed it may be in them."));
    };
    form.fitWith(ending, fit);
    form.say(colonyWord("Stand and boxes stay as they are."));
    form.onAccept([&] {
        EndColony end;
        end.on = on;
        end.hive = hive.id;
        if (const int how = ending->currentData().toInt(); how >= 0)
            end.ending = static_cast<Ending>(how);
        if (end.ending == Ending::United) end.into = chosenId<Hive>(into);
        end.note = typedWords(note);
        return session.run(end).has_value();
    });
    return form.exec() == QDialog::Accepted;
}

bool askToRelabel(QWidget* parent, Session& session, const Hive& hive, Day on) {
    SmallForm form(parent, session, colonyWord("%1 is painted over").arg(markOf(hive)));
    form.ofDay(on);
    auto* mark = form.line(colonyWord("The new mark"), "mark", colonyWord("ML3, as painted on it"));
    form.say(colonyWord("The old mark may be used again; on the days before it still leads here."));
    form.onAccept([&] {
        const auto text = Name::of(mark->text().toStdString());
        if (!text) {
            session.tell(colonyWord("A hive needs a mark."), true);
            return false;
        }
        return session.run(RelabelHive{.on = on, .hive = hive.id, .mark = *text}).has_value();
    });
    return form.exec() == QDialog::Accepted;
}

bool askForChange(QWidget* parent, Session& session, const Hive& hive, Day on) {
    const bool lives = livesThere(session, hive, on);
    const QString nobody = lives ? QString() : colonyWord("nobody lives there");
    const QString somebody = lives ? colonyWord("a colony lives there") : QString();
    const auto letter = askByLetter(
        parent, session,
        colonyWord("%1: what happened?").arg(titleOfDay(session, markOf(hive), on)),
        {{QLatin1Char('S'), colonyWord("split: a part goes onto another stand"), nobody},
         {QLatin1Char('U'), colonyWord("united with another colony"), nobody},
         {QLatin1Char('H'), colonyWord("a swarm was hived")},
         {QLatin1Char('W'), colonyWord("swarmed, and the swarm is gone"), nobody},
         {QLatin1Char('M'), colonyWord("the colony moves onto another stand"), nobody},
         {QLatin1Char('Y'), colonyWord("the hive goes to another yard or place in the walk")},
         {QLatin1Char('P'), colonyWord("its mark is painted over")},
         {QLatin1Char('B'), colonyWord("a colony begins here"), somebody},
         {QLatin1Char('E'), colonyWord("the colony ended; stand and boxes stay"), nobody},
         {QLatin1Char('C'), colonyWord("the stand is closed")}});
    if (!letter) return false;
    switch (letter->toLatin1()) {
        case 'S':
            return askToSplit(parent, session, hive, on);
        case 'U':
            return askToUnite(parent, session, hive, on);
        case 'H':
            return askToHiveSwarm(parent, session, hive, on);
        case 'W':
            return askSwarmed(parent, session, hive, on);
        case 'M':
            return askToMoveColony(parent, session, hive, on);
        case 'Y':
            return askToMoveHive(parent, session, hive, on);
        case 'P':
            return askToRelabel(parent, session, hive, on);
        case 'B':
            return askToStartColony(parent, session, hive, on);
        case 'E':
            return askToEndColony(parent, session, hive, on);
        case 'C':
            return askToCloseHive(parent, session, hive, on);
        default:
            return false;
    }
}

}  // namespace combwright
