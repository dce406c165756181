#include "core/places/pages/health/dead_out_pages.h"

#include <QCoreApplication>
#include <QLocale>
#include <QStringList>

#include "core/words/dead_out_words.h"
#include "core/words/words.h"

namespace combwright {
namespace {

QString deadSay(const char* text) { return QCoreApplication::translate("dead_out_pages", text); }

Page deadOutSheet(const Read& file, const QString& title, const QString& day) {
    Page page;
    page.title = title;
    page.day = day;
    if (const auto season = file.first<SeasonInfo>({})) {
        page.keeper = fromUtf8(season->name.text());
        page.invented = season->invented.value_or(false);
    }
    return page;
}

QString ticked(const QString& text, bool yes) {
    // The box and its words stay on one line.
    QString words = (yes ? QStringLiteral("\u2612 ") : QStringLiteral("\u2610 ")) + text;
    return words.replace(QLatin1Char(' '), QChar::Nbsp);
}

/// The question and its answers to tick, those given ticked.
TableRow questionRow(const char* field, const QStringList& ticks) {
    TableRow row;
    Cell question;
    question.text = deadOutQuestion(field);
    question.strong = true;
    Cell answers;
    answers.text = ticks.join(QStringLiteral("    "));
    row.cells = {question, answers};
    return row;
}

TableRow yesNo(const char* field, const std::optional<bool>& answer) {
    return questionRow(
        field, {ticked(deadSay("yes"), answer == true), ticked(deadSay("no"), answer == false)});
}

template <class Choice>
TableRow oneOf(const char* field, const std::optional<Choice>& answer) {
    QStringList ticks;
    for (std::size_t i = 0; i < Choices<Choice>::words.size(); ++i)
        ticks << ticked(choiceText(Choices<Choice>::words[i]),
                        answer && static_cast<std::size_t>(*answer) == i);
    return questionRow(field, ticks);
}

QString counted(std::int64_t count, const char* one, const char* many) {
    return QStringLiteral("%1 %2").arg(count).arg(deadSay(count == 1 ? one : many));
}

QString deadCombText(FrameUse use) {
    switch (use) {
        case FrameUse::Drawn:
            return deadSay("drawn");
        case FrameUse::Foundation:
            return deadSay("foundation");
        case FrameUse::Bare:
            return deadSay("bare");
        case FrameUse::Repairable:
            return deadSay("to be mended");
        case FrameUse::Held:
            return deadSay("held by what was seen");
        case FrameUse::Lost:
            return deadSay("to be melted or burnt");
        case FrameUse::Unknown:
            return deadSay("not said");
    }
    return {};
}

TextBlock said(const QString& title, const QString& text, bool caution = false) {
    TextBlock block;
    block.title = title;
    block.text = text;
    block.caution = caution;
    return block;
}

QString boxCalled(const Read& file, const std::optional<Id<Box>>& id) {
    const auto box = file.find(id);
    if (!box) return {};
    return box->mark.empty() ? QStringLiteral("#%1").arg(box->id.number) : fromUtf8(box->mark);
}

QString hiveCalled(const Read& file, const std::optional<Id<Hive>>& id) {
    const auto hive = file.find(id);
    return hive ? fromUtf8(hive->mark.text()) : QString();
}

}  // namespace

QString heldText(const DeadOutCard& card) {
    if (!card.hold) return deadSay("nothing is held");
    QStringList parts;
    parts << counted(static_cast<std::int64_t>(card.boxes.size()), "box", "boxes");
    QStringList classes;
    for (const auto& [use, count] : card.frames)
        classes << QStringLiteral("%1 %2").arg(count).arg(deadCombText(use));
    QString frames = counted(card.heldFrames(), "frame", "frames");
    if (!classes.isEmpty())
        frames += QStringLiteral(" (%1)").arg(classes.join(QStringLiteral(", ")));
    parts << frames;
    // Nobody counted what is in them: that is not none.
    const std::int64_t uncounted = card.uncountedBoxes();
    if (uncounted > 0) {
        if (card.heldFrames() == 0) parts.removeLast();
        parts << (uncounted == static_cast<std::int64_t>(card.boxes.size())
                      ? deadSay("their frames not counted")
                      : deadSay("the frames of %1 of them not counted").arg(uncounted));
    }
    if (card.looseFrames > 0)
        parts << deadSay("%1 of them in other boxes by now").arg(card.looseFrames);
    if (card.floors > 0) parts << counted(card.floors, "floor", "floors");
    if (card.lids > 0) parts << counted(card.lids, "lid", "lids");
    return parts.join(QStringLiteral(", "));
}

QString holdStateText(const DeadOutCard& card) {
    if (card.hold)
        return deadSay("held: %1, since %2")
            .arg(choiceText(word(card.hold->why)), dayText(card.hold->since));
    const Hold* last = nullptr;
    for (const Hold& hold : card.history)
        if (hold.lifted && (!last || *hold.lifted >= *last->lifted)) last = &hold;
    if (!last) return deadSay("was never held");
    QString text = deadSay("free since %1").arg(dayText(*last->lifted));
    if (!last->liftedBy.empty()) text += deadSay(", by %1").arg(fromUtf8(last->liftedBy));
    if (!last->grounds.empty()) text += QStringLiteral(": ") + fromUtf8(last->grounds);
    return text;
}

QString looksLikeList(const DeadOutCard& card) {
    if (card.reading.causes.empty()) return deadSay("cannot be told from what was answered");
    QStringList causes;
    for (const LooksLike cause : card.reading.causes) causes << looksLikeText(key(cause));
    return causes.join(QStringLiteral("; "));
}

Page deadOutPage(const Read& file, const DeadOutCard& card, Day on) {
    Page page =
        deadOutSheet(file,
                     deadSay("Dead-out: %1, %2")
                         .arg(fromUtf8(card.hive.mark.text()), fromUtf8(card.yard.name.text())),
                     dayText(card.given.empty() ? on : card.answers.on));
    const bool suspected = card.hold && card.hold->why == HoldWhy::SuspectedDisease;
    if (suspected) page.blocks.push_back(said({}, quarantineCaution(), true));
    QString ended = deadSay("The colony ended %1").arg(dayText(*card.colony.ended));
    if (card.colony.ending) ended += QStringLiteral(", ") + choiceText(word(*card.colony.ending));
    QString state = holdStateText(card);
    state.front() = state.front().toUpper();
    ended += QStringLiteral(". ") + state + QLatin1Char('.');
    if (card.hold) ended += QLatin1Char('\n') + deadSay("Held with it: ") + heldText(card) + '.';
    page.blocks.push_back(said({}, ended));

    const DeadOut& answers = card.answers;
    TableBlock table;
    table.title = deadSay("Tick what you see; leave blank what you did not look for");
    table.columns = {{deadSay("question"), 1.1, false}, {deadSay("answer"), 1.9, false}};
    // More room for the pencil while nothing is answered.
    table.rowMm = card.given.empty() ? 14 : 10;
    table.rows = {oneOf("cluster", answers.cluster),
                  oneOf("stores_near", answers.stores),
                  oneOf("brood_seen", answers.brood),
                  yesNo("frass", answers.frass),
                  yesNo("wet", answers.wet),
                  yesNo("queen", answers.queen),
                  yesNo("droppings", answers.droppings),
                  yesNo("mouse", answers.mouse),
                  yesNo("ropy", answers.ropy),
                  yesNo("scale", answers.scale),
                  yesNo("sample_kept", answers.sampleKept)};
    page.blocks.push_back(table);

    if (!card.given.empty()) {
        QStringList lines;
        QString looks = looksLikeList(card);
        looks.front() = looks.front().toUpper();
        lines << looks + QLatin1Char('.');
        lines << deadSay("Combs: %1.").arg(combUseText(key(card.reading.combs)));
        lines << deadSay("Keep: %1.").arg(sampleText(key(card.reading.sample)));
        if (!answers.cause.empty())
            lines << deadSay("You put it down to: %1").arg(fromUtf8(answers.cause));
        if (!answers.by.empty()) lines << deadSay("Looked at by %1.").arg(fromUtf8(answers.by));
        if (!answers.note.empty()) lines << fromUtf8(answers.note);
        if (card.everSuspected && !suspected)
            lines << deadSay("Disease was suspected once; that stays in its history.");
        page.blocks.push_back(said(deadSay("What it looks like"), lines.join(QLatin1Char('\n'))));
        TickBlock today;
        today.title = deadSay("To do today");
        today.columns = 1;
        for (const DoToday deed : card.reading.today)
            today.lines.push_back({doTodayText(key(deed)), {}});
        page.blocks.push_back(today);
    }
    TextBlock note = said({}, noDiagnosis());
    note.small = true;
    page.blocks.push_back(note);
    BlanksBlock entry;
    entry.labels = {deadSay("cause, as you put it"), deadSay("looked at by"), deadSay("on"),
                    deadSay("enter by")};
    entry.framed = true;
    page.blocks.push_back(entry);
    return page;
}

QString contactText(const Read& file, const Contact& contact) {
    const QString box = boxCalled(file, contact.box);
    const QString hive = hiveCalled(file, contact.hive);
    switch (contact.what) {
        case Contact::What::Box: {
            QString text = deadSay("box %1").arg(box);
            if (!hive.isEmpty()) text += deadSay(", to hive %1").arg(hive);
            return text;
        }
        case Contact::What::Frame:
            if (box.isEmpty()) return deadSay("a frame, loose on a shelf");
            return (contact.in ? deadSay("a frame, out of box %1")
                               : deadSay("a frame, into box %1"))
                .arg(box);
        case Contact::What::Colony:
            if (contact.frame) return deadSay("the colony of %1, by a frame").arg(hive);
            if (!box.isEmpty()) return deadSay("the colony of %1, by box %2").arg(hive, box);
            return deadSay("the colony of %1, split, united or moved in").arg(hive);
        case Contact::What::Honey: {
            const auto run = file.find(contact.run);
            return deadSay("honey of box %1, in run %2")
                .arg(box, run ? fromUtf8(run->name.text()) : QString());
        }
    }
    return {};
}

QString contactTraceText(const ContactTrace& trace) {
    QStringList lines;
    lines << (trace.suspicion ? deadSay("Disease is suspected since %1.").arg(dayText(trace.found))
                              : deadSay("No disease is suspected; these would be its contacts."));
    lines
        << (trace.cleanLook
                ? deadSay("Last looked through and found sound: %1.").arg(dayText(*trace.cleanLook))
                : deadSay("No look with sound brood is written down."));
    lines << deadSay("Everything since %1 counts, and never less than a brood cycle of %2 days.")
                 .arg(dayText(trace.from))
                 .arg(broodCycleDays);
    return lines.join(QLatin1Char('\n'));
}

QString contactsNotWritten() {
    return deadSay(
        "Tools, gloves, feeders and shared stacks are not written down here: "
        "think of them too.");
}

Page contactTracePage(const Read& file, const ContactTrace& trace) {
    Page page =
        deadOutSheet(file, deadSay("Contacts of hive %1").arg(fromUtf8(trace.hive.mark.text())),
                     dayText(trace.until));
    page.blocks.push_back(said({}, quarantineCaution(), true));
    page.blocks.push_back(said({}, contactTraceText(trace)));
    TableBlock table;
    table.title = deadSay("What moved");
    table.columns = {{deadSay("day"), 0.8, false},
                     {deadSay("way"), 0.4, false},
                     {deadSay("what"), 2.4, false},
                     {deadSay("now"), 1.0, false},
                     {deadSay("held"), 0.6, false}};
    for (const Contact& contact : trace.contacts) {
        TableRow row;
        row.cells.resize(5);
        row.cells[0].text = shortDayText(contact.on);
        row.cells[1].text = contact.in ? deadSay("in") : deadSay("out");
        row.cells[2].text = contactText(file, contact);
        if (contact.place) row.cells[3].text = choiceText(word(*contact.place));
        row.cells[4].text = contact.held ? deadSay("held") : deadSay("not held");
        row.cells[4].strong = !contact.held;
        table.rows.push_back(std::move(row));
    }
    if (table.rows.empty())
        page.blocks.push_back(said({}, deadSay("Nothing is written down as moved in or out.")));
    else
        page.blocks.push_back(table);
    page.blocks.push_back(said({}, contactsNotWritten()));
    BlanksBlock entry;
    entry.labels = {deadSay("inspector"), deadSay("told on"), deadSay("came on")};
    entry.framed = true;
    page.blocks.push_back(entry);
    TableBlock answer;
    answer.columns = {{deadSay("what the inspector said"), 1, false}};
    answer.rowMm = 34;
    answer.rows.emplace_back().cells.emplace_back().look = Cell::Look::Blank;
    page.blocks.push_back(answer);
    return page;
}

}  // namespace combwright
