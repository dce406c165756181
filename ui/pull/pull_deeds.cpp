// What is done at the hives: pegs clipped, clearer boards in and out.
#include <algorithm>
#include <utility>

#include "core/actions/honey_room/clearers.h"
#include "core/actions/honey_room/pegs.h"
#include "core/places/pages/pull/pull_words.h"
#include "core/words/words.h"
#include "ui/pull/pull_place.h"

namespace combwright {

void PullPlace::askNextPeg() {
    const bool waited = std::exchange(m_pegWaits, false);
    const auto next = std::exchange(m_pegNext, std::nullopt);
    if (!waited || !next || !m_board->choose(*next)) return;
    m_chosen->askPeg();
}

std::optional<Id<Box>> PullPlace::nextToTake(Id<Box> after) const {
    bool past = false;
    for (const PullYardRow& yard : m_sheet.yards)
        for (const PullHiveRow& hive : yard.hives)
            for (const PullBoxRow& row : hive.boxes) {
                if (past && row.verdict == PullVerdict::Take) return row.box.id;
                past = past || row.box.id == after;
            }
    return std::nullopt;
}

void PullPlace::clip(std::int64_t box, std::int64_t number) {
    // Enter again before the answer is there would mean the same box.
    if (m_pegWaits) return;
    const Id<Box> clipped{box};
    const auto next = nextToTake(clipped);
    const PullBoxRow* row = m_board->current();
    const PullHiveRow* hive = m_board->currentHive();
    const QString name = row && hive ? boxPlaceName(*hive, *row) : QString();
    m_pegNext = next;
    m_pegWaits = true;
    ClipPeg clip;
    clip.on = session().clock().today();
    clip.peg = Count(number);
    clip.box = clipped;
    if (!session().run(clip)) {
        m_pegWaits = false;
        m_pegNext.reset();
        return;
    }
    session().tell(next ? tr("Peg %1 is on %2.").arg(number).arg(name)
                        : tr("Peg %1 is on %2. That was the last to take.").arg(number).arg(name));
    // A place that is not seen reads nothing until it is.
    if (!isVisible()) m_pegWaits = false;
}

void PullPlace::boardHere() {
    const PullHiveRow* hive = m_board->currentHive();
    if (!hive) return;
    const Day today = session().clock().today();
    const QString mark = fromUtf8(hive->hive.mark.text());
    const bool isIn = std::any_of(m_boards.in.begin(), m_boards.in.end(), [&](const auto& each) {
        return each.board.hive == hive->hive.id;
    });
    if (isIn) {
        TakeClearer out;
        out.on = today;
        out.hive = hive->hive.id;
        if (session().run(out)) session().tell(tr("The clearer board of %1 is out.").arg(mark));
        return;
    }
    PutClearer in;
    in.on = today;
    in.hive = hive->hive.id;
    if (session().run(in))
        session().tell(tr("A clearer board is in at %1: out by %2.")
                           .arg(mark, shortDayText(today + days(m_boards.outByDays))));
}

void PullPlace::boardsIn() {
    if (m_boards.rounds.empty() || m_boards.free() == 0) {
        session().tell(m_boards.need.empty()
                           ? tr("No hive of the kept plan needs a clearer board. B puts one in at "
                                "the chosen hive.")
                           : tr("No clearer board is free."),
                       true);
        return;
    }
    const ClearerRound round = m_boards.rounds.front();
    const Day today = session().clock().today();
    const bool done = session().together([&](Season& season) -> Result<void> {
        for (const Id<Hive> hive : round.ids) {
            PutClearer in;
            in.on = today;
            in.hive = hive;
            if (auto put = perform(season, in); !put) return put.error();
        }
        return {};
    });
    if (!done) return;
    QStringList marks;
    for (const std::string& mark : round.hives) marks << fromUtf8(mark);
    session().tell(
        tr("Clearer boards are in at %1: out by %2.")
            .arg(marks.join(QLatin1Char(' ')), shortDayText(today + days(m_boards.outByDays))));
}

void PullPlace::boardsOut() {
    if (m_boards.in.empty()) {
        session().tell(tr("No clearer board is in."), true);
        return;
    }
    const auto in = m_boards.in;
    const bool done = session().together([&](Season& season) -> Result<void> {
        for (const ClearerIn& each : in) {
            TakeClearer out;
            out.on = session().clock().today();
            out.hive = each.board.hive;
            if (auto taken = perform(season, out); !taken) return taken.error();
        }
        return {};
    });
    if (done) session().tell(tr("All clearer boards are out."));
}

}  // namespace combwright
