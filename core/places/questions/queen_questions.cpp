#include "core/places/questions/queen_questions.h"

#include <QCoreApplication>
#include <QString>
#include <algorithm>

#include "core/model/yard/queen.h"
#include "core/places/yard/queens.h"
#include "core/storage/journal.h"
#include "core/storage/queries/hive_days.h"
#include "core/storage/queries/queens.h"
#include "core/trade/colony/queen_colour.h"
#include "core/words/words.h"

namespace combwright {
namespace {

/// An egg is one for three days (printed in 3 sources); so long after the queen went those seen may
/// still be hers.
constexpr int eggDays = 3;
/// A queen seen, or eggs of hers, so few days before another is put in: the old one is there still.
/// Common practice, no source; with the old one in the hive the new one is killed.
constexpr int seenLatelyDays = 7;

QString askQueens(const char* text) { return QCoreApplication::translate("questions", text); }

class QueenQuestions {
  public:
    QueenQuestions(const Read& file, std::int64_t step) : m_file(file), m_step(step) {}

    void about(const RowChange& row) {
        if (row.kind == ChangeKind::Removed) return;
        if (row.table == Queen::table)
            if (const auto queen = m_file.find(Id<Queen>{row.id})) aboutColour(*queen);
        if (row.table == Inspection::table)
            if (const auto look = m_file.find(Id<Inspection>{row.id})) aboutLook(*look);
        if (row.table == QueenStay::table && row.kind == ChangeKind::Added)
            if (const auto stay = m_file.find(Id<QueenStay>{row.id})) aboutStay(*stay);
    }

    std::vector<Question> list;

  private:
    void put(Asked asked, const QString& says) { list.push_back({asked, says}); }

    void aboutColour(const Queen& queen) {
        if (queen.colour.empty() || !queen.reared) return;
        const int year = static_cast<int>(queen.reared->value());
        // The keeper's own set or the usual one: which of them was in use when she was painted
        // nobody wrote down.
        const std::string own = marksQueensOf(m_file, year, lastOfAllDays);
        const QString painted = fromUtf8(queen.colour);
        for (const std::string& may : {own, std::string(queenColour(year))})
            if (may.empty() || painted.compare(fromUtf8(may), Qt::CaseInsensitive) == 0) return;
        put(Asked::ColourOfAnotherYear,
            askQueens(
                "Painted %1, and queens of %2 wear %3. Is the year or the colour a slip? It is "
                "kept as it was said.")
                .arg(painted)
                .arg(year)
                .arg(fromUtf8(own)));
    }

    /// The newest stay of a queen in a colony that was over by a day, where none heads it.
    std::optional<QueenStay> goneBefore(Id<Colony> colony, Day on) const {
        if (queenStayOn(m_file, colony, on)) return std::nullopt;
        std::optional<QueenStay> gone;
        for (QueenStay& each : m_file.where<QueenStay>({is("colony", colony)}))
            if (each.until && *each.until < on && (!gone || *each.until >= *gone->until))
                gone = std::move(each);
        return gone;
    }

    /// Whether the queen before a stay had gone on an earlier day.
    bool wentBefore(Id<Colony> colony, const QueenStay& stay) const {
        std::optional<Day> last;
        for (const QueenStay& other : m_file.where<QueenStay>({is("colony", colony)}))
            if (other.id != stay.id && other.until)
                last = std::max(last.value_or(*other.until), *other.until);
        return last && *last < stay.since;
    }

    void aboutLook(const Inspection& look) {
        const auto visit = m_file.find(look.visit);
        const auto hive = m_file.find(look.hive);
        const auto living = visit ? colonyLivingOn(m_file, look.hive, visit->on) : std::nullopt;
        if (!hive || !living || look.seen.looked == Looked::NotOpened) return;
        const auto gone = goneBefore(living->colony.id, visit->on);
        if (!gone) return;
        // A young one that is waited for is met with that very line.
        if (waitedFor(living->colony.id, *gone->until, visit->on)) return;
        const QString mark = fromUtf8(calledOn(m_file, look.hive, visit->on));
        const QString since = dayText(*gone->until);
        if (look.seen.queenSeen == true)
            return put(Asked::SeenAfterLost,
                       askQueens("%1: a queen was seen, and the last one is written down as gone "
                                 "since %2. A new one? Write her down; or was she not gone?")
                           .arg(mark, since));
        if (look.seen.eggs == true && visit->on > *gone->until + days(eggDays))
            put(Asked::EggsWithoutQueen,
                askQueens("%1: eggs, and the queen is written down as gone since %2; eggs stand "
                          "three days. A new queen, or workers laying? Look for one egg a cell.")
                    .arg(mark, since));
    }

    bool waitedFor(Id<Colony> colony, Day gone, Day on) const {
        const auto waits = waitsFor(m_file, colony);
        return std::any_of(waits.begin(), waits.end(), [&](const QueenWait& each) {
            return each.on <= on && each.on >= gone - days(eggDays) &&
                   (!each.over || *each.over > gone);
        });
    }

    /// A queen came to a colony that had one.
    void aboutStay(const QueenStay& stay) {
        const auto colony = m_file.find(stay.colony);
        if (!colony) return;
        const auto queens = m_file.where<QueenStay>({is("colony", stay.colony)});
        const QString mark =
            fromUtf8(calledOn(m_file, hiveOfColony(m_file, *colony, stay.since), stay.since));
        const bool two = std::any_of(queens.begin(), queens.end(), [&](const QueenStay& other) {
            return other.id != stay.id && other.queen != stay.queen && other.since <= stay.since &&
                   (!other.until || *other.until > stay.since);
        });
        if (two)
            return put(Asked::TwoQueens,
                       askQueens("%1: two queens are written down as being in it. Has one gone?")
                           .arg(mark));
        // One who began with the colony was not put in; one written down late was there all along.
        const auto queen = m_file.find(stay.queen);
        const bool brought = queen && (queen->from == QueenFrom::Bought ||
                                       queen->from == QueenFrom::OwnCell || queens.size() > 1);
        if (stay.since <= colony->since || !brought) return;
        if (const auto seen = layingLately(*colony, stay))
            put(Asked::QueenOverQueen,
                askQueens(
                    "%1: a queen was put in, and on %2 one was seen or eggs were. With the old "
                    "one in the hive the new one is killed: was she taken out?")
                    .arg(mark, dayText(*seen)));
    }

    /// The day of the newest look of the last days that saw a queen or her eggs, where nobody said
    /// how she left.
    std::optional<Day> layingLately(const Colony& colony, const QueenStay& stay) const {
        // Had the last one gone before, what was seen since is the new one, written down late.
        if (wentBefore(colony.id, stay)) return std::nullopt;
        const auto entry = Journal(m_file.database()).entry(m_step);
        if (entry && entry->info.line.find("\"left_how\"") != std::string::npos)
            return std::nullopt;
        const Id<Hive> hive = hiveOfColony(m_file, colony, stay.since);
        std::optional<Day> laying;
        lookBackAtColony(m_file, hive, stay.since, [&](const DatedInspection& each) {
            if (each.on + days(seenLatelyDays) < stay.since) return false;
            const Seen& seen = each.inspection.seen;
            if (seen.queenSeen == false || seen.eggs == false) return false;
            if (seen.queenSeen == true || seen.eggs == true) laying = each.on;
            return !laying.has_value();
        });
        return laying;
    }

    const Read& m_file;
    std::int64_t m_step;
};

}  // namespace

std::vector<Question> queenQuestions(const Read& file, const RowChange& row, std::int64_t step) {
    QueenQuestions questions(file, step);
    questions.about(row);
    return std::move(questions.list);
}

}  // namespace combwright
