#include "ui/yard/queen_forms.h"

#include <QCoreApplication>

#include "core/actions/yard/queens.h"
#include "core/places/pages/yard/queen_words.h"
#include "core/places/yard/queens.h"
#include "core/places/yard/yard_story.h"
#include "core/storage/queries/hive_days.h"
#include "core/words/words.h"
#include "ui/drawing/queen_dot.h"
#include "ui/yard/form_fields.h"
#include "ui/yard/letter_chooser.h"

namespace combwright {
namespace {

QString queenWord(const char* text) { return QCoreApplication::translate("queen_forms", text); }

/// Under the fields: which colour a year's queens are marked with, by its word.
void sayColourOfYear(SmallForm& form, const Session& session, QLineEdit* year, Day on) {
    auto* words = form.say({});
    words->setTextFormat(Qt::RichText);
    words->setObjectName(QStringLiteral("colour_of_year"));
    const auto fit = [&form, &session, year, words, on] {
        bool whole = false;
        const int typed = year->text().trimmed().toInt(&whole);
        if (!whole || typed < 1000 || typed > 9999) return form.sayAgain(words, {});
        const QString colour = fromUtf8(marksQueensOf(session.read(), typed, on));
        form.sayAgain(words, queenDotHtml(colour, TextSize::Body, session.look()) +
                                 queenWord("Queens of %1 are marked %2.")
                                     .arg(typed)
                                     .arg(choiceText(colour.toStdString()).toHtmlEscaped()));
    };
    QObject::connect(year, &QLineEdit::textChanged, &form, fit);
    fit();
}

struct MarkFields {
    QComboBox* marked;
    QLineEdit* colour;
    QLineEdit* number;
    QComboBox* clipped;
};

MarkFields addMarkFields(SmallForm& form) {
    MarkFields fields{};
    fields.marked = form.choice(queenWord("Marked"), "marked");
    offerYesNo(fields.marked, queenWord("nobody said"), queenWord("marked"),
               queenWord("not marked"));
    fields.colour =
        form.line(queenWord("Colour"), "colour", queenWord("empty: the colour of her year"));
    fields.number = openLine(form, queenWord("Number on her"), "number");
    fields.clipped = form.choice(queenWord("Wing"), "clipped");
    offerYesNo(fields.clipped, queenWord("nobody said"), queenWord("clipped"),
               queenWord("not clipped"));
    return fields;
}

/// How one left, as far as it is not an action of its own.
void offerLeft(QComboBox* box, std::initializer_list<QueenLeft> ways) {
    for (const QueenLeft each : ways) box->addItem(queenLeftText(each), static_cast<int>(each));
}
QueenLeft leftOffered(const QComboBox* box) {
    return static_cast<QueenLeft>(box->currentData().toInt());
}

/// Whom she may be the daughter of: every queen who heads a colony that day.
void offerMothers(QComboBox* box, const Read& file, Day on) {
    box->addItem(queenWord("not known"), 0);
    for (const HeadedColony& each : queensOn(file, on, std::nullopt).colonies)
        if (each.queen)
            box->addItem(
                queenWord("queen %1, in %2").arg(queenShortText(*each.queen), markOf(each.hive)),
                static_cast<qlonglong>(each.queen->id.number));
}

}  // namespace

bool askToPutQueen(QWidget* parent, Session& session, const Hive& hive, Day on) {
    SmallForm form(parent, session, queenWord("A queen for %1").arg(markOf(hive)));
    form.ofDay(on);
    auto* year = form.line(queenWord("Year"), "reared", QString::number(yearOf(on)));
    auto* from = form.choice(queenWord("She came from"), "origin");
    from->addItem(queenWord("not known"), static_cast<int>(QueenFrom::NotKnown));
    for (const QueenFrom each : {QueenFrom::OwnCell, QueenFrom::SwarmCell, QueenFrom::Supersedure,
                                 QueenFrom::Emergency, QueenFrom::Bought, QueenFrom::WithColony})
        from->addItem(choiceText(word(each)), static_cast<int>(each));
    const MarkFields mark = addMarkFields(form);
    auto* mother = form.choice(queenWord("Daughter of"), "mother");
    offerMothers(mother, session.read(), on);
    auto* left = form.choice(queenWord("The one before"), "left_how");
    offerLeft(left, {QueenLeft::Replaced, QueenLeft::Superseded, QueenLeft::Lost,
                     QueenLeft::Swarmed, QueenLeft::NotKnown});
    form.showField(left, hiveHead(session.read(), hive.id, on).queen.has_value());
    sayColourOfYear(form, session, year, on);
    form.onAccept([&] {
        PutQueen put;
        put.on = on;
        put.hive = hive.id;
        if (!readField(session, year, put.reared)) return false;
        put.from = static_cast<QueenFrom>(from->currentData().toInt());
        if (const qlonglong number = mother->currentData().toLongLong(); number > 0)
            put.mother = Id<Queen>{number};
        put.marked = yesNoOffered(mark.marked);
        put.colour = typedWords(mark.colour);
        put.number = typedWords(mark.number);
        put.clipped = yesNoOffered(mark.clipped);
        put.left = leftOffered(left);
        return session.run(put).has_value();
    });
    return form.exec() == QDialog::Accepted;
}

bool askToMarkQueen(QWidget* parent, Session& session, const Hive& hive, Day on) {
    SmallForm form(parent, session, queenWord("The queen of %1").arg(markOf(hive)));
    form.ofDay(on);
    const HiveHead head = hiveHead(session.read(), hive.id, on);
    auto* who = form.say(
        head.queen ? queenHeadText(*head.queen, head.colour).toHtmlEscaped() + QLatin1Char('.')
                   : queenWord("Nobody wrote her down yet; what you write here begins her page."));
    who->setTextFormat(Qt::RichText);
    if (head.queen && head.queen->marked == true)
        who->setText(queenDotHtml(fromUtf8(head.colour), TextSize::Body, session.look()) +
                     who->text());
    const MarkFields mark = addMarkFields(form);
    auto* year = form.line(queenWord("Year"), "reared", queenWord("where it was not known"));
    form.say(queenWord("What stays empty stays as it is."));
    sayColourOfYear(form, session, year, on);
    form.beginIn(mark.marked);
    form.onAccept([&] {
        MarkQueen change;
        change.on = on;
        change.hive = hive.id;
        change.marked = yesNoOffered(mark.marked);
        change.colour = typedWords(mark.colour);
        change.number = typedWords(mark.number);
        change.clipped = yesNoOffered(mark.clipped);
        return readField(session, year, change.reared) && session.run(change).has_value();
    });
    return form.exec() == QDialog::Accepted;
}

bool askToLoseQueen(QWidget* parent, Session& session, const Hive& hive, Day on) {
    SmallForm form(parent, session, queenWord("The queen of %1 is gone").arg(markOf(hive)));
    form.ofDay(on);
    auto* left = form.choice(queenWord("She"), "left_how");
    offerLeft(left,
              {QueenLeft::Lost, QueenLeft::Superseded, QueenLeft::Replaced, QueenLeft::NotKnown});
    auto* step = form.choice(queenWord("The colony waits by"), "step");
    offerSteps(step);
    auto* note = openLine(form, queenWord("Note"), "note");
    form.onAccept([&] {
        LoseQueen lose;
        lose.on = on;
        lose.hive = hive.id;
        lose.left = leftOffered(left);
        lose.step = chosen<QueenStep>(step);
        lose.note = typedWords(note);
        return session.run(lose).has_value();
    });
    return form.exec() == QDialog::Accepted;
}

bool askToMoveQueen(QWidget* parent, Session& session, const Hive& hive, Day on) {
    SmallForm form(parent, session,
                   queenWord("The queen of %1 goes to another hive").arg(markOf(hive)));
    form.ofDay(on);
    auto* to = form.choice(queenWord("To the hive"), "to_hive");
    offerHives(to, session.read(), HiveOffered::WithColony, hive.yard, hive.id, on);
    auto* left = form.choice(queenWord("The queen there"), "left_how");
    offerLeft(left,
              {QueenLeft::Replaced, QueenLeft::Lost, QueenLeft::Superseded, QueenLeft::NotKnown});
    auto* step = form.choice(queenWord("%1 waits by").arg(markOf(hive)), "step");
    offerSteps(step);
    form.onAccept([&] {
        const auto stand = hiveDemanded(session, to);
        if (!stand) return false;
        MoveQueen move;
        move.on = on;
        move.hive = hive.id;
        move.to = *stand;
        move.left = leftOffered(left);
        move.step = chosen<QueenStep>(step);
        return session.run(move).has_value();
    });
    return form.exec() == QDialog::Accepted;
}

bool askToWaitForQueen(QWidget* parent, Session& session, const Hive& hive, Day on) {
    SmallForm form(parent, session, queenWord("%1 waits for a young queen").arg(markOf(hive)));
    form.ofDay(on);
    auto* step = form.choice(queenWord("By"), "step");
    offerSteps(step, false);
    auto* notSeen = form.line(queenWord("Not there yet on"), "not_seen_on",
                              queenWord("2 jun, where you looked in vain"));
    auto* note = openLine(form, queenWord("Note"), "note");
    form.say(
        queenWord("Leave it shut while she comes out, flies and mates; the card says to "
                  "which day. Eggs you see end the wait by themselves."));
    form.onAccept([&] {
        WaitForQueen wait;
        wait.on = on;
        wait.hive = hive.id;
        wait.step = chosen<QueenStep>(step).value_or(QueenStep::CellSealed);
        if (!readDayField(session, notSeen, false, wait.notSeenOn)) return false;
        wait.note = typedWords(note);
        return session.run(wait).has_value();
    });
    return form.exec() == QDialog::Accepted;
}

bool askToEndQueenWait(QWidget* parent, Session& session, const Hive& hive, Day on) {
    SmallForm form(parent, session, queenWord("%1 no longer waits").arg(markOf(hive)));
    form.ofDay(on);
    if (const auto waiting = waitingFor(session.read(), hive, on))
        form.say(waitingText(*waiting, on));
    auto* note = openLine(form, queenWord("What came of it"), "note");
    form.onAccept([&] {
        return session.run(EndQueenWait{.on = on, .hive = hive.id, .note = typedWords(note)})
            .has_value();
    });
    return form.exec() == QDialog::Accepted;
}

bool askForQueenColour(QWidget* parent, Session& session, Day on) {
    SmallForm form(parent, session, queenWord("Your own colour of a year"));
    form.ofDay(on);
    auto* digit = form.line(queenWord("Years that end in"), "digit", queenWord("7"));
    auto* colour = form.line(queenWord("Colour"), "colour", queenWord("white, or your own"));
    form.say(
        queenWord("From this day on. A queen already marked keeps what she wears only where "
                  "her colour was written down."));
    form.onAccept([&] {
        std::optional<Count> typed;
        if (!readField(session, digit, typed)) return false;
        const auto name = Name::of(colour->text().toStdString());
        if (!typed || !name) {
            session.tell(queenWord("Write the last digit of the year, and a colour."), true);
            return false;
        }
        return session.run(SetQueenColour{.on = on, .digit = *typed, .colour = *name}).has_value();
    });
    return form.exec() == QDialog::Accepted;
}

bool askForQueen(QWidget* parent, Session& session, const Hive& hive, Day on) {
    const Read& file = session.read();
    const bool lives = colonyLivingOn(file, hive.id, on).has_value();
    const QString nobody = lives ? QString() : queenWord("nobody lives there");
    const QString noWait = !nobody.isEmpty()            ? nobody
                           : waitingFor(file, hive, on) ? QString()
                                                        : queenWord("nothing is waited for");
    const auto letter = askByLetter(
        parent, session, titleOfDay(session, queenWord("The queen of %1").arg(markOf(hive)), on),
        {{QLatin1Char('P'), queenWord("put in, or a young one met"), nobody},
         {QLatin1Char('M'), queenWord("marked, numbered, clipped, her year"), nobody},
         {QLatin1Char('L'), queenWord("lost or gone"), nobody},
         {QLatin1Char('T'), queenWord("taken to another hive"), nobody},
         {QLatin1Char('W'), queenWord("wait for a young one: cell, larva, queen gone"), nobody},
         {QLatin1Char('O'), queenWord("the wait is over"), noWait},
         {QLatin1Char('K'), queenWord("your own colour of a year")}});
    if (!letter) return false;
    switch (letter->toLatin1()) {
        case 'P':
            return askToPutQueen(parent, session, hive, on);
        case 'M':
            return askToMarkQueen(parent, session, hive, on);
        case 'L':
            return askToLoseQueen(parent, session, hive, on);
        case 'T':
            return askToMoveQueen(parent, session, hive, on);
        case 'W':
            return askToWaitForQueen(parent, session, hive, on);
        case 'O':
            return askToEndQueenWait(parent, session, hive, on);
        case 'K':
            return askForQueenColour(parent, session, on);
        default:
            return false;
    }
}

}  // namespace combwright
