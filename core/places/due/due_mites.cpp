#include "core/places/due/due_mites.h"

#include <algorithm>
#include <cmath>

#include "core/places/health/mites.h"
#include "core/storage/queries/constants.h"

namespace combwright {
namespace {

constexpr int mitesAhead = 60;
constexpr int forecastWorthSaying = 365;

class DueMites {
  public:
    DueMites(const Read& file, Day today, std::vector<DueItem>& due)
        : m_file(file), m_today(today), m_due(due) {}

    void add(const HiveMites& mites) {
        if (mites.medicineIn) return;
        if (mites.board && (m_today - mites.board->finding.on).count() <= miteFindingStandsDays)
            return byBoard(mites);
        if (mites.treatedSince) return afterMedicine(mites);
        askForBees(mites);
        if (!mites.sample || !mites.line || !mites.standsBy) return;
        const auto age = (m_today - mites.sample->finding.on).count();
        if (mites.standing != HiveMites::Standing::Under && age <= miteFindingStandsDays)
            return act(mites);
        sampleAgain(mites);
    }

  private:
    DueItem item(const HiveMites& mites, DueRule rule, const char* what, Day of) const {
        DueItem item;
        item.rule = rule;
        item.yard = mites.yard.id;
        item.hive = mites.hive.id;
        item.id =
            std::string(what) + "-h" + std::to_string(mites.hive.id.number) + "-" + isoText(of);
        item.since = of;
        return item;
    }

    int constantDays(const HiveMites& mites, const char* key, double fallback) const {
        return static_cast<int>(
            std::lround(constantOr(m_file, key, mites.yard.id, m_today, fallback)));
    }

    void keep(const HiveMites& mites, DueItem item) const {
        if (item.from > m_today + days(mitesAhead)) return;
        // In the cluster nobody takes a cup of bees.
        if (phaseOn(m_file, mites.yard.id, std::max(item.from, m_today)).phase ==
            SeasonPhase::Dormant)
            return;
        item.take = {DueKit{"wash jar"}};
        m_due.push_back(std::move(item));
    }

    void act(const HiveMites& mites) const {
        DueItem over = item(mites, DueRule::Treat, "mites-over", mites.sample->finding.on);
        over.from = over.since;
        over.rate = mites.sample->rate;
        over.value = mites.standsBy->per100;
        over.about = std::string(key(mites.standsBy->phase.phase));
        m_due.push_back(std::move(over));
    }

    /// The newest sample has no bees: it says nothing until they are written down, or another is
    /// taken.
    void askForBees(const HiveMites& mites) const {
        const auto newest =
            std::find_if(mites.samples.begin(), mites.samples.end(), [](const MiteSample& each) {
                return each.finding.method == FindingMethod::Wash ||
                       each.finding.method == FindingMethod::SugarRoll;
            });
        if (newest == mites.samples.end() || !lacksItsBees(newest->finding)) return;
        DueItem bees = item(mites, DueRule::Sample, "sample-bees", newest->finding.on);
        bees.from = bees.since;
        bees.count = std::llround(*newest->finding.mites->middle());
        bees.about = "bees";
        keep(mites, std::move(bees));
    }

    /// A fall is held against its own table and never turned into mites on bees.
    void byBoard(const HiveMites& mites) const {
        const MiteSample& board = *mites.board;
        // A board that lay too short a time, or long ago, asks for a wash before anything is done.
        const bool wash = board.shortBoard || mites.boardOld;
        DueItem fall =
            item(mites, wash ? DueRule::Sample : DueRule::Treat, "board-fall", board.finding.on);
        fall.from = fall.since;
        fall.perDay = board.perDay;
        fall.about = std::string(key(*board.verdict));
        fall.source = board.fallSource;
        if (wash) return keep(mites, std::move(fall));
        fall.take = {DueKit{"wash jar"}};
        m_due.push_back(std::move(fall));
    }

    void sampleAgain(const HiveMites& mites) const {
        const Day taken = mites.sample->finding.on;
        const Day month = taken + days(constantDays(mites, "mite_sample_every_days", 30));
        const auto likely = mites.forecast ? mites.forecast->likely : std::nullopt;
        DueItem again = item(mites, likely ? DueRule::SampleAgain : DueRule::Sample,
                             likely ? "sample-again" : "sample", taken);
        again.from = likely ? std::min(month, *likely) : month;
        if (likely && *likely <= taken + days(forecastWorthSaying)) {
            again.by = likely;
            again.other = likely;
        }
        again.rate = mites.sample->rate;
        again.value = mites.line->per100;
        keep(mites, std::move(again));
    }

    void afterMedicine(const HiveMites& mites) const {
        const auto out = mites.treatedSince->out;
        if (!out || *out > m_today) return;
        // One taken since it was out has said how it worked, and counts as any other.
        if (mites.sample && mites.sample->finding.on >= *out) return;
        DueItem again = item(mites, DueRule::SampleAgain, "sample-after", *out);
        again.other = out;
        again.from = *out + days(constantDays(mites, "sample_after_out_from_days", 10));
        again.by = *out + days(constantDays(mites, "sample_after_out_to_days", 14));
        again.about = mites.medicine;
        keep(mites, std::move(again));
    }

    const Read& m_file;
    Day m_today;
    std::vector<DueItem>& m_due;
};

}  // namespace

void addDueMites(const Read& file, Day today, std::optional<Id<Yard>> yard,
                 std::vector<DueItem>& due) {
    DueMites topic(file, today, due);
    for (const HiveMites& each : mites(file, yard, today)) topic.add(each);
}

}  // namespace combwright
