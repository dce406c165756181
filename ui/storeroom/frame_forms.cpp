#include "ui/storeroom/frame_forms.h"

#include <QCoreApplication>

#include "core/actions/storeroom/frame_moves.h"
#include "core/places/storeroom/frame_board.h"
#include "core/places/storeroom/winter_todo.h"
#include "core/words/figures.h"
#include "core/words/kind_words.h"
#include "core/words/words.h"
#include "ui/shell/form_reading.h"
#include "ui/shell/small_form.h"

namespace combwright {
namespace {

/// So many boxes are named before "and more" stands for the rest.
constexpr std::size_t namedParts = 6;

QString frameSay(const char* text) { return QCoreApplication::translate("frame_forms", text); }

QString manyFrames(std::size_t many) {
    return many == 1 ? frameSay("1 frame") : frameSay("%1 frames").arg(many);
}

std::optional<Verdict> verdictOf(FrameWork work) {
    switch (work) {
        case FrameWork::Repaired:
            return Verdict::Repair;
        case FrameWork::Refitted:
            return Verdict::Refit;
        case FrameWork::Scraped:
            return Verdict::Scrape;
        case FrameWork::Burnt:
            return Verdict::Burn;
        case FrameWork::Melted:
        case FrameWork::Sold:
            return std::nullopt;
    }
    return std::nullopt;
}

QString partsText(const std::vector<TodoPart>& parts) {
    QStringList said;
    for (const TodoPart& part : parts) {
        if (said.size() == static_cast<qsizetype>(namedParts)) {
            said << frameSay("and more");
            break;
        }
        said << QStringLiteral("%1 %2")
                    .arg(part.name.empty() ? frameSay("loose") : fromUtf8(part.name))
                    .arg(part.frames);
    }
    return said.join(QStringLiteral(", "));
}

QString workWord(FrameWork work) {
    switch (work) {
        case FrameWork::Repaired:
            return frameSay("To repair");
        case FrameWork::Refitted:
            return frameSay("To refit");
        case FrameWork::Scraped:
            return frameSay("To scrape");
        case FrameWork::Melted:
            return frameSay("Combs for the pot");
        case FrameWork::Burnt:
            return frameSay("To burn");
        case FrameWork::Sold:
            break;
    }
    return {};
}

QString workCaution(FrameWork work) {
    switch (work) {
        case FrameWork::Melted:
            return frameSay(
                "Melt over water or by steam, outdoors, never on a bare flame; keep it under about "
                "88 °C and never leave it alone. Lid and fire blanket at hand; no water on burning "
                "wax. No wax of suspected disease into the pot.");
        case FrameWork::Burnt:
            return frameSay(
                "Burn outdoors in a pit when no bees fly, away from hives and buildings; wax "
                "flares up. Nothing may drip where bees can reach it: bury what is left.");
        case FrameWork::Scraped:
            return frameSay("Scrape away from the hand that holds; cold propolis splinters.");
        case FrameWork::Repaired:
        case FrameWork::Refitted:
            return frameSay("Old nails and a wire under tension spring: cover the eyes.");
        case FrameWork::Sold:
            return frameSay(
                "Comb carries disease. Sell only of colonies that were looked into and clean.");
    }
    return {};
}

/// "12 frames repaired."
QString doneText(FrameWork work, std::size_t many) {
    return QStringLiteral("%1 %2.").arg(manyFrames(many), choiceText(word(work)));
}

QComboBox* combChoice(SmallForm& form, const QString& label, const QString& none) {
    auto* comb = form.choice(label, "comb");
    addChoices<Comb>(comb, none);
    return comb;
}

/// What the frame carries when the work is done, the likely answer first.
void askCombAfter(QComboBox* comb, FrameWork work, Comb likely) {
    const QSignalBlocker quiet(comb);
    comb->clear();
    const auto add = [comb](Comb what, const QString& words) {
        comb->addItem(words, static_cast<int>(what));
    };
    if (work == FrameWork::Refitted) {
        add(Comb::Foundation, frameSay("new foundation"));
        add(Comb::Bare, frameSay("bare wood for now"));
        add(Comb::Drawn, frameSay("drawn comb, put in"));
        return;
    }
    if (likely == Comb::Foundation) add(Comb::Foundation, frameSay("foundation, as before"));
    add(Comb::Bare, frameSay("bare wood: its comb is out"));
    if (likely != Comb::Foundation) add(Comb::Foundation, frameSay("foundation"));
    add(Comb::Drawn, frameSay("drawn comb: it stayed whole"));
}

QLineEdit* boxesLine(SmallForm& form, const QString& boxes) {
    auto* line = form.line(frameSay("Boxes"), "boxes", frameSay("M01-M08, M12, loose; empty: all"));
    line->setText(boxes);
    return line;
}

}  // namespace

QString waitingText(const Read& file, FrameWork work, Day on) {
    QStringList kinds;
    if (work == FrameWork::Melted) {
        for (const MeltCount& each : frameBoard(file, on).melt)
            kinds << QStringLiteral("%1 %2").arg(each.combs).arg(fromUtf8(each.name));
    } else if (const auto verdict = verdictOf(work)) {
        for (const TodoFrames& each : winterTodo(file, on).frames)
            if (each.verdict == *verdict)
                kinds << QStringLiteral("%1 %2 (%3)")
                             .arg(each.frames)
                             .arg(kindText(each.kind.name.text()), partsText(each.parts));
    } else {
        return frameSay("Say how many, or of which boxes. What is to be held is not sold.");
    }
    if (kinds.isEmpty()) return frameSay("%1: none waits.").arg(workWord(work));
    return frameSay("%1: %2.").arg(workWord(work), kinds.join(QStringLiteral("; ")));
}

bool askToWorkFrames(QWidget* parent, Session& session, FrameWork work, const QString& boxes,
                     Day on) {
    SmallForm form(parent, session, frameSay("Work done on frames"));
    auto* done = form.choice(frameSay("Done"), "work");
    addChoices<FrameWork>(done, {});
    done->setCurrentIndex(static_cast<int>(work));
    auto* waits = form.say(QStringLiteral(" "));
    waits->setObjectName(QStringLiteral("waits"));
    auto* in = boxesLine(form, boxes);
    auto* kind = form.choice(frameSay("Kind of frame"), "frame_kind");
    addFrameKinds(kind, session.read(), frameSay("any"), false);
    auto* many = form.line(frameSay("How many"), "how_many", frameSay("empty: all that wait"));
    auto* comb = form.choice(frameSay("Carries afterwards"), "comb");
    auto* clean = form.line(frameSay("Clean wax, %1").arg(massUnit()), "clean",
                            frameSay("weighed; empty: reckoned"));
    auto* note =
        form.line(frameSay("Note"), "note", frameSay("what is held back needs its reason here"));
    auto* mind = form.caution(QStringLiteral(" "));
    mind->setObjectName(QStringLiteral("caution"));
    const auto chosenWork = [done] { return chosen<FrameWork>(done).value_or(FrameWork::Sold); };
    const auto fit = [&] {
        const FrameWork now = chosenWork();
        form.sayAgain(waits, waitingText(session.read(), now, on));
        form.sayAgain(mind, workCaution(now));
        askCombAfter(comb, now, likelyAfterRepair(session.read()));
        form.showField(comb, now == FrameWork::Repaired || now == FrameWork::Refitted);
        form.showField(clean, now == FrameWork::Melted);
    };
    form.fitWith(done, fit);
    form.onAccept([&] {
        WorkFrames deed{.on = on,
                        .work = chosenWork(),
                        .box = {},
                        .boxes = typedWords(in),
                        .frameKind = chosenId<FrameKind>(kind),
                        .howMany = {},
                        .comb = {},
                        .clean = {},
                        .note = typedWords(note)};
        if (!readField(session, many, deed.howMany)) return false;
        if (deed.work == FrameWork::Repaired || deed.work == FrameWork::Refitted)
            deed.comb = chosen<Comb>(comb);
        // Said as nothing: what the comb was goes with it, its year and what it held.
        if (deed.comb == Comb::Bare && deed.work == FrameWork::Repaired) deed.comb.reset();
        if (deed.work == FrameWork::Melted) {
            std::optional<Mass> weighed;
            if (!readField(session, clean, weighed)) return false;
            if (weighed) deed.clean = Known<Mass>{*weighed, {}, How::Weighed};
        }
        const auto frames = session.run(deed);
        if (frames) session.tell(doneText(deed.work, frames->size()));
        return frames.has_value();
    });
    return form.exec() == QDialog::Accepted;
}

bool askToJudge(QWidget* parent, Session& session, Verdict verdict, const QString& boxes, Day on) {
    SmallForm form(parent, session, frameSay("What becomes of frames"));
    auto* to = form.choice(frameSay("Verdict"), "verdict");
    // By its digit, as at the bench.
    for (std::size_t n = 0; n < Choices<Verdict>::words.size(); ++n)
        to->addItem(QStringLiteral("%1 %2").arg(n + 1).arg(choiceText(Choices<Verdict>::words[n])),
                    static_cast<int>(n));
    to->setCurrentIndex(static_cast<int>(verdict));
    auto* in = boxesLine(form, boxes);
    auto* kind = form.choice(frameSay("Kind of frame"), "frame_kind");
    addFrameKinds(kind, session.read(), frameSay("any"), false);
    auto* seen = form.line(frameSay("Only with"), "seen", frameSay("W, or web; empty: any"));
    auto* from = form.choice(frameSay("Only those now to"), "from_verdict");
    addChoices<Verdict>(from, frameSay("any"));
    auto* many = form.line(frameSay("How many"), "how_many", frameSay("empty: all"));
    auto* note =
        form.line(frameSay("Note"), "note", frameSay("what is held back needs its reason here"));
    form.say(
        frameSay("A hold stays whatever the verdict. A comb with suspected foulbrood is held or "
                 "burnt, nothing else."));
    form.onAccept([&] {
        JudgeFrames deed{.on = on,
                         .boxes = typedWords(in),
                         .frameKind = chosenId<FrameKind>(kind),
                         .seen = typedWords(seen),
                         .from = chosen<Verdict>(from),
                         .howMany = {},
                         .verdict = chosen<Verdict>(to).value_or(Verdict::Keep),
                         .note = typedWords(note)};
        if (!readField(session, many, deed.howMany)) return false;
        const auto frames = session.run(deed);
        if (frames)
            session.tell(frameSay("%1: %2 from now on.")
                             .arg(manyFrames(frames->size()), choiceText(word(deed.verdict))));
        return frames.has_value();
    });
    return form.exec() == QDialog::Accepted;
}

bool askToAddFrames(QWidget* parent, Session& session, const QString& box, Day on) {
    SmallForm form(parent, session, frameSay("Add frames"));
    auto* kind = form.choice(frameSay("Kind of frame"), "frame_kind");
    addFrameKinds(kind, session.read(), {});
    auto* many = form.line(frameSay("How many"), "count", frameSay("10"));
    auto* comb = combChoice(form, frameSay("With"), frameSay("nobody looked"));
    auto* year = form.line(frameSay("Drawn in"), "drawn_year", frameSay("2027; may stay empty"));
    auto* into = form.line(frameSay("Into the box"), "box", frameSay("M01; empty: loose"));
    into->setText(box);
    auto* shelf = form.line(frameSay("Shelf, where loose"), "stack", frameSay("may stay empty"));
    auto* note = form.line(frameSay("Note"), "note", frameSay("bought, found; may stay empty"));
    const auto fit = [&] { shelf->setEnabled(into->text().trimmed().isEmpty()); };
    QObject::connect(into, &QLineEdit::textChanged, &form, fit);
    fit();
    form.onAccept([&] {
        AddFrames deed;
        deed.on = on;
        if (const auto of = chosenId<FrameKind>(kind)) deed.frameKind = *of;
        std::optional<Count> count;
        if (!readField(session, many, count) || !readField(session, year, deed.drawnYear) ||
            !readField(session, into, deed.box))
            return false;
        if (!count) {
            session.tell(frameSay("Write how many frames there are."), true);
            many->setFocus();
            return false;
        }
        deed.count = *count;
        deed.comb = chosen<Comb>(comb);
        if (!deed.box) deed.stack = typedWords(shelf);
        deed.note = typedWords(note);
        const auto frames = session.run(deed);
        if (frames) session.tell(frameSay("%1 added.").arg(manyFrames(frames->size())));
        return frames.has_value();
    });
    return form.exec() == QDialog::Accepted;
}

bool askToMoveFrames(QWidget* parent, Session& session, const QString& from, Day on) {
    SmallForm form(parent, session, frameSay("Move frames"));
    auto* many = form.line(frameSay("How many"), "how_many", frameSay("4"));
    auto* kind = form.choice(frameSay("Kind of frame"), "frame_kind");
    addFrameKinds(kind, session.read(), frameSay("any"), false);
    auto* comb = combChoice(form, frameSay("With"), frameSay("any comb"));
    auto* seen = form.line(frameSay("Only with"), "seen", frameSay("W, or web; empty: any"));
    auto* fromBox = form.line(frameSay("Out of the box"), "from_box", frameSay("empty: loose"));
    fromBox->setText(from);
    auto* fromShelf = form.line(frameSay("Off the shelf"), "from_stack",
                                frameSay("of loose ones; empty: any shelf"));
    auto* toBox = form.line(frameSay("Into the box"), "to_box", frameSay("M02"));
    auto* toShelf = form.line(frameSay("Or loose onto the shelf"), "to_stack", frameSay("shelf 2"));
    auto* note =
        form.line(frameSay("Note"), "note", frameSay("out of a held box it needs a reason"));
    form.say(
        frameSay("A hold goes along with its frames. Where disease is suspected nothing leaves."));
    const auto fit = [&] {
        fromShelf->setEnabled(fromBox->text().trimmed().isEmpty());
        toShelf->setEnabled(toBox->text().trimmed().isEmpty());
    };
    QObject::connect(fromBox, &QLineEdit::textChanged, &form, fit);
    QObject::connect(toBox, &QLineEdit::textChanged, &form, fit);
    fit();
    form.beginIn(many);
    form.onAccept([&] {
        MoveFrames deed;
        deed.on = on;
        std::optional<Count> count;
        if (!readField(session, many, count) || !readField(session, fromBox, deed.fromBox) ||
            !readField(session, toBox, deed.toBox))
            return false;
        if (!count) {
            session.tell(frameSay("Write how many frames are moved."), true);
            many->setFocus();
            return false;
        }
        deed.howMany = *count;
        deed.frameKind = chosenId<FrameKind>(kind);
        deed.comb = chosen<Comb>(comb);
        deed.seen = typedWords(seen);
        if (!deed.fromBox) deed.fromStack = typedWords(fromShelf);
        if (!deed.toBox) deed.toStack = typedWords(toShelf);
        deed.note = typedWords(note);
        const auto frames = session.run(deed);
        if (frames) session.tell(frameSay("%1 moved.").arg(manyFrames(frames->size())));
        return frames.has_value();
    });
    return form.exec() == QDialog::Accepted;
}

bool askToMendBoxes(QWidget* parent, Session& session, const QString& boxes, Day on) {
    SmallForm form(parent, session, frameSay("Boxes mended"));
    auto* in = form.line(frameSay("Boxes"), "boxes", frameSay("M01-M08, M12"));
    in->setText(boxes);
    auto* condition = form.choice(frameSay("The wood"), "condition");
    for (const BoxCondition each :
         {BoxCondition::Sound, BoxCondition::ToScrape, BoxCondition::NeedsRepair})
        condition->addItem(choiceText(word(each)), static_cast<int>(each));
    condition->addItem(frameSay("as it is"), -1);
    auto* paint = form.choice(frameSay("The paint"), "wants_paint");
    paint->addItem(frameSay("as it is"), -1);
    paint->addItem(frameSay("painted, wants none"), 0);
    paint->addItem(frameSay("wants paint"), 1);
    form.say(frameSay("Paint the outside only. Scorch the inside outdoors, away from wax."));
    form.beginIn(in);
    form.onAccept([&] {
        MendBoxes deed{.on = on,
                       .boxes = typedWords(in),
                       .condition = chosen<BoxCondition>(condition),
                       .wantsPaint = {}};
        if (const int said = paint->currentData().toInt(); said >= 0) deed.wantsPaint = said == 1;
        if (!deed.condition && !deed.wantsPaint) {
            session.tell(frameSay("Say what became of the wood or of the paint."), true);
            condition->setFocus();
            return false;
        }
        const auto mended = session.run(deed);
        if (mended)
            session.tell(mended->size() == 1
                             ? frameSay("1 box is so from now on.")
                             : frameSay("%1 boxes are so from now on.").arg(mended->size()));
        return mended.has_value();
    });
    return form.exec() == QDialog::Accepted;
}

}  // namespace combwright
