// At the bench: the box under the cursor, its line typed, kept and put right, and what is seen of
// one frame.
#include <QCoreApplication>
#include <QKeyEvent>
#include <algorithm>

#include "core/actions/amend/amend.h"
#include "core/actions/boxes/frame_checks.h"
#include "core/actions/storeroom/reviews.h"
#include "core/words/typed_words.h"
#include "core/words/words.h"
#include "ui/storeroom/bench_words.h"
#include "ui/storeroom/storeroom_place.h"

namespace combwright {

void StoreroomPlace::fillBench() {
    m_box.reset();
    const auto box = currentBox();
    m_board->setOnBench(box);
    // A line half typed stays with the box it was typed for.
    if (m_lineBox != box) m_bench->clearLine();
    m_lineBox = box;
    session().reading([&] {
        if (box) m_box = benchBox(session().read(), *box, session().clock().today());
    });
    // As on the board: frames one has pointed at stand first.
    if (m_box)
        std::stable_partition(m_box->frames.begin(), m_box->frames.end(),
                              [](const BenchFrame& each) { return each.pointedAt; });
    if (!m_box) {
        m_bench->show(std::nullopt);
        return;
    }
    std::optional<std::size_t> at;
    if (const BoardFrame* frame = m_board->currentFrame(); frame && m_atFrame)
        for (std::size_t i = 0; i < m_box->frames.size(); ++i)
            if (m_box->frames[i].frame.id == frame->id) at = i;
    BenchView view = benchView(*m_box, at);
    if (const BoxWeight* weight = m_weights ? m_weights->of(*box) : nullptr) {
        QStringList facts;
        if (!view.facts.isEmpty()) facts << view.facts;
        facts << weightText(*weight);
        if (const auto stack = m_weights->stackOf(*box)) facts << weightText(*stack);
        view.facts = facts.join(QStringLiteral("  ·  "));
        view.alarm = (view.alarm + QLatin1Char(' ') + liftText(*weight)).trimmed();
    }
    if (m_box->underSuspicion()) view.alarm += tr(" Alt+C lists what moved in or out of its hive.");
    const QString draft = lineDraft();
    if (!draft.isEmpty() && m_bench->line().text().isEmpty())
        view.alarm = (view.alarm + tr(" Typed and not kept: \"%1\". Enter takes it up.").arg(draft))
                         .trimmed();
    m_bench->show(view);
    arrange();
    Q_EMIT headChanged();
}

void StoreroomPlace::beginLine(const QString& text) {
    if (!m_box) return;
    m_bench->beginLine(text);
    // At large type the line may lie below the edge.
    m_whole->ensureWidgetVisible(&m_bench->line(), 0, look().space(48));
}

void StoreroomPlace::keepLine(const QString& line) {
    if (!m_box) return;
    auto review =
        reviewTyped(session().clock().today(), m_box->box.id, typedInEnglish(line).toStdString());
    if (!review) {
        session().tell(sentence(review.error()), true);
        return;
    }
    if (!session().run(*review)) return;
    dropDraft();
    m_bench->clearLine();
    goOn();
}

/// One sheet of drafts for lines, another for corrections: a line half typed for a box and the one
/// being put right are two things.
QString StoreroomPlace::draftSheet() const {
    return m_bench->correcting() ? QStringLiteral("bench corrected") : QStringLiteral("bench");
}

QString StoreroomPlace::lineDraft(const QString& sheet) const {
    if (!m_box) return {};
    const auto rows = session().drafts().of(sheet);
    const auto at = rows.find(QString::number(m_box->box.id.number));
    return at == rows.end() ? QString() : at->second;
}

void StoreroomPlace::holdDraft(const QString& line) {
    if (!m_box || line.trimmed().isEmpty()) return;
    if (m_bench->correcting() && m_box->last && line == typedLine(*m_box->last)) return;
    session().drafts().hold(draftSheet(), QString::number(m_box->box.id.number), line);
}

void StoreroomPlace::dropDraft() {
    if (m_box) session().drafts().drop(draftSheet(), QString::number(m_box->box.id.number));
}

/// The line of the last look as it was, to be put right.
void StoreroomPlace::beginCorrection() {
    if (!m_box) return;
    if (!m_box->last) {
        session().tell(tr("This box was not looked through yet: type what is in it."), true);
        return;
    }
    pointAtFrame(false);
    const QString was = typedLine(*m_box->last);
    const QString draft = lineDraft(QStringLiteral("bench corrected"));
    m_bench->beginCorrection(draft.isEmpty() ? was : draft, {},
                             tr("Correcting the look of %1. Enter, then why; Esc leaves it as it "
                                "was.")
                                 .arg(dayText(m_box->last->on)));
    arrange();
    m_whole->ensureWidgetVisible(&m_bench->why(), 0, look().space(48));
}

void StoreroomPlace::keepCorrection(const QString& line, const QString& why) {
    if (!m_box || !m_box->last) return;
    const BoxReview was = *m_box->last;
    const auto before = reviewTyped(was.on, was.box, typedLine(was).toStdString());
    auto now = reviewTyped(was.on, was.box, typedInEnglish(line).toStdString());
    if (!now || !before) {
        session().tell(sentence(now ? before.error() : now.error()), true);
        m_bench->line().setFocus();
        return;
    }
    if (toRow(*now) == toRow(*before)) {
        session().tell(tr("The line says what it said. Esc leaves it."), true);
        m_bench->line().setFocus();
        return;
    }
    if (why.isEmpty()) {
        session().tell(tr("Say why it is corrected; the old line stays in the history with it."),
                       true);
        return;
    }
    // What was not retyped stays as it is known, by eye or weighed.
    if (now->scrapings == before->scrapings) now->scrapings = was.scrapings;
    if (now->propolis == before->propolis) now->propolis = was.propolis;
    BoxReview after = was;
    after.scrapings = now->scrapings;
    after.propolis = now->propolis;
    after.scraped = now->scraped;
    after.wood = now->wood;
    after.note = now->note;
    const StepNote because{why.toStdString(), {}};
    // Where the frames were counted right only the record of the look is amended; counts are looked
    // through again for that day, which meets the frames anew.
    const bool framesStand = now->contents == before->contents &&
                             now->combYears == before->combYears && now->web == before->web &&
                             now->wantsPaint == before->wantsPaint;
    const auto amend = amendment(session().clock().today(), was, after);
    const bool kept = framesStand && amend ? session().run(*amend, because).has_value()
                                           : session().run(*now, because).has_value();
    if (!kept) return;
    dropDraft();
    m_bench->clearLine();
    m_board->setFocus();
    fillBench();
}

/// To the next box that waits for a look; where none does, to the next one.
void StoreroomPlace::goOn() {
    pointAtFrame(false);
    m_board->setFocus();
    const auto down = [this] {
        const BoardRow* before = m_board->currentRow();
        QKeyEvent key(QEvent::KeyPress, Qt::Key_Down, Qt::NoModifier);
        QCoreApplication::sendEvent(m_board, &key);
        return m_board->currentRow() != before;
    };
    const auto waits = [this] {
        const BoardRow* row = m_board->currentRow();
        return row && row->box &&
               std::any_of(row->states.begin(), row->states.end(), [](const RowState& each) {
                   return each.state == BoxState::NotLookedThrough ||
                          each.state == BoxState::ChangedSince;
               });
    };
    if (!down()) return;
    const auto next = currentBox();
    while (!waits())
        if (!down()) {
            if (next) m_board->goToBox(*next);
            return;
        }
}

}  // namespace combwright
