#include "core/places/health/mites.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <utility>

#include "core/catalogue/colony_tables.h"
#include "core/storage/queries/constants.h"
#include "core/storage/queries/hive_days.h"
#include "core/storage/queries/holds.h"
#include "core/storage/queries/treatments.h"

namespace combwright {
namespace {

std::int64_t lowEnd(const Known<Count>& counted) { return counted.value->value(); }
std::int64_t highEnd(const Known<Count>& counted) {
    return counted.to.value_or(*counted.value).value();
}
std::int64_t middleOf(const Known<Count>& counted) {
    return static_cast<std::int64_t>(std::llround(*counted.middle()));
}

/// The exact interval is dear, and the same few counts come again in every hive and year. It
/// depends on them alone, so what was reckoned once is remembered.
std::optional<MiteRate> exactRate(std::int64_t mites, std::int64_t of) {
    constexpr std::size_t mostRemembered = 4096;
    thread_local std::map<std::pair<std::int64_t, std::int64_t>, std::optional<MiteRate>> known;
    if (const auto found = known.find({mites, of}); found != known.end()) return found->second;
    if (known.size() >= mostRemembered) known.clear();
    const auto rate = miteRate(mites, of);
    return known.emplace(std::pair(mites, of), rate ? std::optional(*rate) : std::nullopt)
        .first->second;
}

/// The rate of the middle, with the interval of the whole range. Nothing where more were found than
/// looked at: one of the two is a slip.
std::optional<MiteRate> rateOf(const Known<Count>& mites, std::int64_t of) {
    const auto middle = exactRate(middleOf(mites), of);
    const auto low = exactRate(lowEnd(mites), of);
    const auto high = exactRate(highEnd(mites), of);
    if (!low || !high) return std::nullopt;
    return MiteRate{middle->per100, low->low, high->high};
}

void judgeBoard(const Finding& finding, MiteSample& sample) {
    if (!finding.daysOnBoard) return;
    const auto perDay = fallPerDay(middleOf(*finding.mites), finding.daysOnBoard->value());
    if (!perDay) return;
    sample.perDay = *perDay;
    sample.how = finding.mites->how;
    sample.shortBoard = finding.daysOnBoard->value() < fewestBoardDays;
    std::vector<FallBand> bands;
    for (const PublishedFall& each : publishedFalls()) {
        const auto verdict = fallVerdictOf(each.verdict);
        if (!verdict || !holdsIn(each, monthOf(finding.on))) continue;
        bands.push_back({each.perDay, each.over, !each.fromMonth, *verdict});
    }
    sample.verdict = judgeFall(*perDay, bands);
    for (const PublishedFall& each : publishedFalls())
        if (sample.verdict && holdsIn(each, monthOf(finding.on)) &&
            (fallVerdictOf(each.verdict) == sample.verdict ||
             (sample.verdict == FallVerdict::NoDanger && each.fromMonth))) {
            sample.fallSource = each.source;
            break;
        }
}

/// Reads the samples of a hive, each by what its yard's rates were that day.
class SampleReader {
  public:
    SampleReader(const Read& file, Id<Hive> id)
        : SampleReader(file, [&]() -> std::optional<Id<Yard>> {
              const auto hive = file.find(id);
              return hive ? std::optional(hive->yard) : std::nullopt;
          }()) {}
    MiteSample read(const Finding& finding) const;

  private:
    SampleReader(const Read& file, std::optional<Id<Yard>> yard)
        : m_washed(file, "wash_recovery", yard), m_rolled(file, "sugar_roll_recovery", yard) {}

    ConstantOverDays m_washed, m_rolled;
};

MiteSample SampleReader::read(const Finding& finding) const {
    MiteSample sample;
    sample.finding = finding;
    if (!finding.mites || !finding.mites->value) return sample;
    const bool onBees =
        finding.method == FindingMethod::Wash || finding.method == FindingMethod::SugarRoll;
    if (finding.method == FindingMethod::Board) judgeBoard(finding, sample);
    if (finding.method == FindingMethod::DroneBrood && finding.cells && finding.cells->value) {
        sample.cellShare = rateOf(*finding.mites, middleOf(*finding.cells));
        sample.how = weaker(finding.mites->how, finding.cells->how);
    }
    if (!onBees) return sample;
    sample.how = finding.mites->how;
    if (lacksItsBees(finding)) return sample;
    sample.bees = middleOf(*finding.bees);
    sample.how = weaker(finding.mites->how, finding.bees->how);
    sample.rate = rateOf(*finding.mites, sample.bees);
    const ConstantOverDays& recovery =
        finding.method == FindingMethod::SugarRoll ? m_rolled : m_washed;
    sample.recovery = recovery.onOr(finding.on, 1);
    if (sample.rate && sample.recovery < 1)
        if (const auto corrected = correctedForRecovery(*sample.rate, sample.recovery))
            sample.corrected = *corrected;
    return sample;
}

/// Findings of the colony that lives there, on whatever stand it was: those of one that lived there
/// before say nothing.
std::vector<MiteSample> samplesOf(const Read& file, const Hive& hive, Day on) {
    if (foundDeadOn(file, hive.id, on)) return {};
    std::vector<MiteSample> samples;
    std::map<std::int64_t, SampleReader> readers;
    for (const Finding& each : ofColonyIn<Finding>(file, hive.id, std::nullopt, on))
        if (each.what == Pest::Varroa)
            samples.push_back(
                readers.try_emplace(each.hive.number, file, each.hive).first->second.read(each));
    // Of one day the one written down last comes first.
    std::reverse(samples.begin(), samples.end());
    std::stable_sort(samples.begin(), samples.end(), [](const MiteSample& a, const MiteSample& b) {
        return a.finding.on > b.finding.on;
    });
    return samples;
}

HiveMites::Standing standingOf(const MiteRate& rate, double line) {
    // What the division is off by is no mite.
    constexpr double crumb = 1e-9;
    if (rate.per100 > line + crumb) return HiveMites::Standing::Over;
    if (rate.per100 < line - crumb) return HiveMites::Standing::Under;
    return HiveMites::Standing::At;
}

bool treatedFrom(const Read& file, Id<Hive> hive, Day from, Day on) {
    const auto all = treatmentsTouching(file, hive, from, on);
    return std::any_of(all.begin(), all.end(), [&](const Treatment& each) {
        return each.on >= from || !each.out || *each.out > from;
    });
}

/// What boards say that no wash says: a fall that asks for treatment stands beside the line.
void readBoards(const Read& file, HiveMites& mites, Day on, double oldAfterDays) {
    for (const FindingMethod method : {FindingMethod::Board, FindingMethod::DroneBrood}) {
        const auto newest = std::find_if(
            mites.samples.begin(), mites.samples.end(),
            [method](const MiteSample& each) { return each.finding.method == method; });
        if (newest == mites.samples.end()) continue;
        mites.alsoSeen.push_back(*newest);
        if (method != FindingMethod::Board || !newest->verdict) continue;
        const bool grave =
            newest->verdict == FallVerdict::Treat || newest->verdict == FallVerdict::ActNow;
        const bool told = mites.sample && mites.sample->finding.on >= newest->finding.on;
        if (!grave || told || treatedFrom(file, mites.hive.id, newest->finding.on, on)) continue;
        mites.board = *newest;
        mites.boardOld = static_cast<double>((on - newest->finding.on).count()) > oldAfterDays;
    }
}

/// Of the colony that lives there, or that died there last: what it had its combs have.
std::vector<Finding> otherFindings(const Read& file, Id<Hive> hive, Day from, Day on) {
    if (!colonyLivingOn(file, hive, on))
        if (const auto dead = lastColonyIn(file, hive, on))
            return file.where<Finding>({is("hive", hive),
                                        isFrom("on_day", std::max(dead->since, from)),
                                        isUpTo("on_day", on)});
    return ofColonyIn<Finding>(file, hive, from, on);
}

/// Beetles, moths and what else was met in the hive; suspected disease has a list of its own.
std::vector<Finding> otherPestsOf(const Read& file, const Hive& hive, Day on) {
    std::vector<Finding> newest;
    for (Finding& each : otherFindings(file, hive.id, on - days(365), on)) {
        if (each.what == Pest::Varroa) continue;
        const auto same = std::find_if(newest.begin(), newest.end(), [&](const Finding& other) {
            return other.what == each.what;
        });
        if (same == newest.end())
            newest.push_back(std::move(each));
        else if (each.on >= same->on)
            *same = std::move(each);
    }
    std::stable_sort(newest.begin(), newest.end(),
                     [](const Finding& a, const Finding& b) { return a.on > b.on; });
    return newest;
}

HiveMites hiveMites(const Read& file, const Hive& hive, const Yard& yard, Day on) {
    HiveMites mites;
    mites.hive = hive;
    mites.yard = yard;
    mites.samples = samplesOf(file, hive, on);
    mites.line = miteLineOn(file, yard.id, on);
    mites.doublingDays = constantOr(file, "mite_doubling_days", yard.id, on, mites.doublingDays);
    const auto newest = std::find_if(mites.samples.begin(), mites.samples.end(),
                                     [](const MiteSample& each) { return each.rate.has_value(); });
    if (newest != mites.samples.end()) mites.sample = *newest;
    for (const Treatment& each : treatmentsGiven(file, hive.id, on - days(365), on)) {
        const bool since = !mites.sample || each.on >= mites.sample->finding.on || !each.out ||
                           *each.out > mites.sample->finding.on;
        if (since) mites.treatedSince = each;
    }
    if (mites.treatedSince) {
        mites.medicineIn = isIn(*mites.treatedSince, on);
        if (const auto medicine = file.find(mites.treatedSince->medicine))
            mites.medicine = medicine->name.text();
    }
    const double every = constantOr(file, "mite_sample_every_days", yard.id, on, 30);
    readBoards(file, mites, on, 2 * every);
    mites.otherPests = otherPestsOf(file, hive, on);
    if (!mites.sample) return mites;
    mites.old = static_cast<double>((on - mites.sample->finding.on).count()) > 2 * every;
    // What it was then is held against the line of then.
    mites.standsBy = mites.old ? miteLineOn(file, yard.id, mites.sample->finding.on) : mites.line;
    if (!mites.standsBy) return mites;
    const double line = mites.standsBy->per100;
    mites.standing = standingOf(*mites.sample->rate, line);
    mites.undecided = mites.sample->rate->low < line && mites.sample->rate->high >= line;
    if (mites.treatedSince || mites.old || !mites.line) return mites;
    if (const auto span = miteForecastSpan(*mites.sample->rate, mites.line->per100,
                                           mites.doublingDays, mites.sample->finding.on))
        mites.forecast = *span;
    return mites;
}

}  // namespace

bool lacksItsBees(const Finding& finding) {
    const bool onBees =
        finding.method == FindingMethod::Wash || finding.method == FindingMethod::SugarRoll;
    return onBees && finding.mites && finding.mites->value &&
           !(finding.bees && finding.bees->value);
}

MiteSample sampleOf(const Read& file, const Finding& finding) {
    return SampleReader(file, finding.hive).read(finding);
}

std::optional<HiveMites> mitesOf(const Read& file, Id<Hive> id, Day on) {
    const auto hive = file.find(id);
    if (!hive) return std::nullopt;
    const Hive then = asItWas(file, *hive, on);
    const auto yard = file.find(then.yard);
    if (!yard) return std::nullopt;
    return hiveMites(file, then, *yard, on);
}

std::vector<HiveMites> mites(const Read& file, std::optional<Id<Yard>> only, Day on) {
    const OneState still(file);
    std::vector<HiveMites> all;
    for (const Yard& yard : yardsOn(file, on)) {
        if (only && yard.id != *only) continue;
        for (const Hive& hive : hivesOn(file, yard.id, on))
            all.push_back(hiveMites(file, hive, yard, on));
    }
    return all;
}

std::string_view key(HiveMites::Standing standing) {
    switch (standing) {
        case HiveMites::Standing::NoSample:
            return "no_sample";
        case HiveMites::Standing::Under:
            return "under";
        case HiveMites::Standing::At:
            return "at";
        case HiveMites::Standing::Over:
            return "over";
    }
    return {};
}

}  // namespace combwright
