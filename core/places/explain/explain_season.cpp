#include "core/places/explain/explain_season.h"

#include <QCoreApplication>
#include <QLocale>
#include <cmath>

#include "core/trade/learning/learn_rate.h"
#include "core/words/figures.h"
#include "core/words/words.h"

namespace combwright {
namespace {

QString bookWord(const char* text) { return QCoreApplication::translate("explained", text); }

double bookGrams(Mass mass) { return static_cast<double>(mass.grams()); }

std::string boxWeights(const RunRecord& run) {
    QStringList parts;
    for (const RunBoxLine& box : run.boxes) {
        const auto full = box.box.gross ? box.box.gross->middle() : std::nullopt;
        const auto wet = box.box.wet ? box.box.wet->middle() : std::nullopt;
        if (run.byEye || box.byDifference || !full || !wet)
            parts << QStringLiteral("%1 %2").arg(fromUtf8(box.mark),
                                                 massFigure(box.offG.value_or(0), How::Weighed));
        else
            parts << QStringLiteral("%1 %2 − %3")
                         .arg(fromUtf8(box.mark), massTold(Mass::roundedGrams(*full)),
                              massTold(Mass::roundedGrams(*wet)));
    }
    return parts.join(QStringLiteral(", ")).toStdString();
}

std::string runName(const RunRecord& run) {
    return QStringLiteral("%1, %2").arg(fromUtf8(run.name), dayText(run.on)).toStdString();
}

/// Adds up what runs and paper say; the last step is the sum, in grams.
void noteRecords(Working* working, const YieldRecords& records) {
    double sum = 0;
    for (const RunRecord& run : records.runs) {
        const auto share = bookGrams(run.share);
        sum += share;
        if (run.share == run.buckets) {
            note(working, "in_buckets", share, "g", runName(run));
            continue;
        }
        note(working, run.byEye ? "reckoned_in_boxes" : "off_own_boxes", run.offG, "g",
             boxWeights(run));
        note(working, run.byEye ? "reckoned_in_boxes" : "off_boxes", run.allOffG.value_or(0), "g",
             runName(run));
        note(working, "in_buckets", bookGrams(run.buckets), "g", runName(run));
        note(working, "share_of_run", share, "g",
             "buckets · these boxes / all boxes, whole grams by largest remainder");
    }
    for (const PaperRecord& paper : records.paper) {
        if (!paper.counted) continue;
        note(working, "noted_from_paper", bookGrams(paper.mass), "g", paper.of,
             "the keeper's note");
        sum += bookGrams(paper.mass);
    }
    note(working, "honey_sum", sum, "g", "sum of the shares");
}

Explained average(const QString& what, Mass total, How how, int hives) {
    Explained each;
    each.what = what;
    const double grams = gramsPerHive(bookGrams(total), hives, &each.working);
    each.answer = massKnown(grams, how);
    return each;
}

void addAverages(std::vector<Explained>& all, const QString& of, Mass total, How how, int producing,
                 int standing) {
    if (total == Mass()) return;
    if (producing > 0)
        all.push_back(
            average(bookWord("%1: honey per producing hive").arg(of), total, how, producing));
    if (standing > 0)
        all.push_back(average(bookWord("%1: honey per hive standing on 1 May").arg(of), total, how,
                              standing));
}

void addChange(std::vector<Explained>& all, const QString& of, const std::optional<Mass>& now,
               const std::optional<Mass>& before, How how, const SeasonYield& season) {
    const auto change = changeGrams(now, before);
    if (!change) return;
    Explained figure;
    figure.what = bookWord("%1: change from %2").arg(of).arg(season.beforeYear);
    note(&figure.working, "honey", bookGrams(*now), "g", std::to_string(season.year));
    note(&figure.working, "honey_before", bookGrams(*before), "g",
         std::to_string(season.beforeYear));
    note(&figure.working, "change", *change, "g", "the one less the other");
    figure.answer = (*change < 0 ? QStringLiteral("− ") : QStringLiteral("+ ")) +
                    massText(std::abs(*change), how);
    all.push_back(std::move(figure));
}

Explained honeyOf(const YieldRecords& records, const QString& of, Mass mass, How how) {
    Explained honey;
    honey.what = bookWord("%1: honey in %2").arg(of).arg(records.year);
    honey.answer = massKnown(bookGrams(mass), how);
    noteRecords(&honey.working, records);
    return honey;
}

std::vector<Explained> explainYear(const SeasonYield& season) {
    std::vector<Explained> all;
    if (season.total == Mass()) return all;
    const QString of = bookWord("All");
    Explained total;
    total.what = bookWord("%1: honey in %2").arg(of).arg(season.year);
    total.answer = massKnown(bookGrams(season.total), season.how);
    double sum = 0;
    for (const YardYield& yard : season.yards) {
        if (yard.total == Mass()) continue;
        note(&total.working, "yard_honey", bookGrams(yard.total), "g", yard.yard.name.text());
        sum += bookGrams(yard.total);
    }
    if (season.nowhere) {
        note(&total.working, "without_hive", bookGrams(*season.nowhere), "g");
        sum += bookGrams(*season.nowhere);
    }
    if (sum == 0) {
        sum = bookGrams(season.total);
        note(&total.working, "noted_from_paper", sum, "g", {}, "the keeper's note");
    }
    note(&total.working, "honey_sum", sum, "g", "sum");
    all.push_back(std::move(total));
    addChange(all, of, season.total, season.before, weaker(season.how, season.beforeHow), season);
    addAverages(all, of, season.total, season.how, season.averagedOver(), season.standing);
    return all;
}

std::vector<Explained> explainYard(const Read& file, const SeasonYield& season,
                                   const YardYield& yard) {
    std::vector<Explained> all;
    if (yard.total == Mass()) return all;
    const QString of = fromUtf8(yard.yard.name.text());
    all.push_back(
        honeyOf(recordsBehind(file, season, {.yard = yard.yard.id}), of, yard.total, yard.how));
    addChange(all, of, yard.total, yard.before, weaker(yard.how, yard.beforeHow), season);
    addAverages(all, of, yard.total, yard.how, yard.averagedOver(), yard.standing);
    return all;
}

std::vector<Explained> explainWithout(const Read& file, const SeasonYield& season,
                                      const RecordsOf& of, Mass mass, How how) {
    const YieldRecords records = recordsBehind(file, season, of);
    const QString name =
        records.name.empty() ? bookWord("no tag") : fromUtf8(records.name) + bookWord(", no tag");
    return {honeyOf(records, name, mass, how)};
}

std::vector<Explained> explainHive(const Read& file, const SeasonYield& season,
                                   const HiveYield& hive) {
    std::vector<Explained> all;
    if (!hive.mass) return all;
    const QString of = fromUtf8(hive.mark);
    all.push_back(
        honeyOf(recordsBehind(file, season, {.hive = hive.hive}), of, *hive.mass, hive.how));
    addChange(all, of, hive.mass, hive.before, weaker(hive.how, hive.beforeHow), season);
    return all;
}

/// Of a colony or a queen; of those nobody wrote down.
std::vector<Explained> explainTaking(const Read& file, const SeasonYield& season,
                                     const RecordsOf& of) {
    const YieldRecords records = recordsBehind(file, season, of);
    Mass sum;
    How how = How::Weighed;
    for (const RunRecord& run : records.runs) {
        sum += run.share;
        how = weaker(how, run.how);
    }
    for (const PaperRecord& paper : records.paper)
        if (paper.counted) {
            sum += paper.mass;
            how = weaker(how, paper.how);
        }
    if (sum == Mass()) return {};
    const QString name = of.anyYard  ? bookWord("Hive not known")
                         : of.colony ? bookWord("Colony of %1").arg(fromUtf8(records.name))
                         : of.queen  ? bookWord("Queen %1").arg(fromUtf8(records.name))
                         : of.nobody == YieldBy::Colony ? bookWord("Colony not written down")
                                                        : bookWord("Queen not written down");
    return {honeyOf(records, name, sum, how)};
}

std::vector<Explained> explainRun(const Read& file, const SeasonYield& season,
                                  const RunBalance& balance) {
    std::vector<Explained> all;
    const QString of = bookWord("Run %1").arg(fromUtf8(balance.run.name.text()));
    Explained buckets;
    buckets.what = bookWord("%1: in the buckets").arg(of);
    buckets.answer = massKnown(bookGrams(balance.buckets), balance.bucketsHow);
    double sum = 0;
    for (const Bucket& bucket : file.where<Bucket>({is("extraction", balance.run.id)})) {
        const auto net = bucket.net ? bucket.net->middle() : std::nullopt;
        if (!net) continue;
        note(&buckets.working, "in_bucket", *net, "g",
             bucket.mark.text() + ", " + howWord(bucket.net->how).toStdString());
        sum += *net;
    }
    note(&buckets.working, "in_buckets", sum, "g", "sum");
    all.push_back(std::move(buckets));
    const YieldRecords records = recordsBehind(file, season, {.run = balance.run.id});
    if (balance.outOfBoxesG && !records.runs.empty()) {
        Explained out;
        out.what = bookWord("%1: out of the boxes").arg(of);
        out.answer = massKnown(*balance.outOfBoxesG,
                               balance.unaccountedG ? How::Weighed : How::ByDifference);
        note(&out.working, "off_boxes", records.runs.front().offG, "g",
             boxWeights(records.runs.front()));
        all.push_back(std::move(out));
    }
    if (!balance.unaccountedG) return all;
    Explained missing;
    missing.what = bookWord("%1: missing").arg(of);
    missing.answer = massKnown(*balance.unaccountedG, balance.missingHow());
    note(&missing.working, "off_boxes", balance.outOfBoxesG.value_or(0), "g");
    note(&missing.working, "in_buckets", bookGrams(balance.buckets), "g");
    if (balance.cappings) note(&missing.working, "wet_cappings", bookGrams(*balance.cappings), "g");
    const auto scrapings = balance.run.scrapings ? balance.run.scrapings->middle() : std::nullopt;
    if (scrapings) note(&missing.working, "scrapings", *scrapings, "g");
    note(&missing.working, "unaccounted", *balance.unaccountedG, "g",
         "off the boxes − buckets − cappings − scrapings");
    all.push_back(std::move(missing));
    return all;
}

void append(std::vector<Explained>& all, std::vector<Explained> more) {
    for (Explained& each : more) all.push_back(std::move(each));
}

/// The steps up to the named one: a figure's working ends with the figure.
Working upTo(const Working& working, std::string_view what) {
    Working part;
    for (const Working::Step& step : working.steps) {
        part.steps.push_back(step);
        if (step.what == what) break;
    }
    return part;
}

QString gotAnswer(const GotLine& line, double value) {
    const QLocale locale;
    switch (line.what) {
        case GotWhat::Frame:
            return ShownFigure{massRateFigure(value), massUnit()}.text();
        case GotWhat::Load:
            return ShownFigure{locale.toString(value, 'f', 1), QStringLiteral("min")}.text();
        case GotWhat::Cappings:
            return ShownFigure{locale.toString(value * 100.0, 'f', 1), QStringLiteral("%")}.text();
        case GotWhat::Uncapping:
            return ShownFigure{locale.toString(value, 'f', 2), QStringLiteral("min")}.text();
        case GotWhat::Fill:
            return ShownFigure{locale.toString(value * 100.0, 'f', 0), QStringLiteral("%")}.text();
    }
    return {};
}

QString gotThingLabel(const GotLine& line) {
    switch (line.what) {
        case GotWhat::Frame:
            return bookWord("Honey a %1").arg(fromUtf8(line.kind));
        case GotWhat::Load:
            return bookWord("Time a load");
        case GotWhat::Cappings:
            return bookWord("Cappings of the honey");
        case GotWhat::Uncapping:
            return bookWord("Time a frame at the knife");
        case GotWhat::Fill:
            return bookWord("Fill judged by eye");
    }
    return {};
}

QString gotLabel(const GotLine& line) {
    const QString thing = gotThingLabel(line);
    return line.yard ? QStringLiteral("%1, %2").arg(thing, fromUtf8(line.yardName)) : thing;
}

Explained gotFigureOf(const QString& what, const GotLine& line, double value, Working working) {
    return {what, gotAnswer(line, value), std::move(working)};
}

std::string rateOf(const GotLine& line) {
    return line.own ? bookWord("your own: %1").arg(fromUtf8(line.rateSource)).toStdString()
                    : line.rateSource;
}

std::string ruleOf(const Learned& learned) {
    switch (learned.by) {
        case LearnedBy::WithPublished:
            return bookWord("the published figure and own runs, each by how surely it is known")
                .toStdString();
        case LearnedBy::AsTheyCame:
            return bookWord(
                       "own runs alone: the published figure is for full frames, and how "
                       "full these were nobody noted")
                .toStdString();
        case LearnedBy::OwnAlone:
            return bookWord(
                       "own runs alone: how far the general figure may be off was never "
                       "published")
                .toStdString();
    }
    return {};
}

/// How the rule comes to the new value: the runs so far, beside the published figure where that
/// says how far it may be off.
Working learning(const GotLine& line) {
    Working working;
    const Learned& learned = *line.learned;
    switch (line.what) {
        case GotWhat::Frame:
            if (learned.by != LearnedBy::WithPublished) {
                frameRate(learned.tallies, &working);
                break;
            }
            static_cast<void>(learnRate(*learned.published, *learned.publishedDoubt, learned.seen,
                                        *learned.doubtOfOne, &working));
            for (Working::Step& step : working.steps) {
                if (step.what != "runs_seen") step.unit = "g";
                if (step.what == "published") step.source = learned.publishedSource;
            }
            break;
        case GotWhat::Load:
            minutesPerLoad(learned.sum.over, std::llround(learned.sum.under), &working);
            break;
        case GotWhat::Uncapping:
            minutesPerFrame(learned.sum.over, std::llround(learned.sum.under), &working);
            break;
        case GotWhat::Cappings:
            cappingsShare(learned.sum.over, learned.sum.under, &working);
            break;
        case GotWhat::Fill:
            break;
    }
    return working;
}

std::vector<Explained> explainFill(const GotLine& line, const QString& name) {
    Working judged;
    note(&judged, "boxes_judged", static_cast<double>(line.counted), "");
    note(&judged, "judged_filled", line.reckoned * 100.0, "%", "mean over the boxes");
    Working weighed = judged;
    const double off = line.reckoned - line.got;
    note(&weighed, "eye_off", off * 100.0, "%",
         "mean of judged − off the box / (frames · full frame)");
    if (line.boxSpread) note(&weighed, "eye_spread", *line.boxSpread * 100.0, "%");
    note(&weighed, "weighed_filled", line.got * 100.0, "%", "judged − off");
    return {gotFigureOf(bookWord("%1: judged").arg(name), line, line.reckoned, std::move(judged)),
            gotFigureOf(bookWord("%1: weighed").arg(name), line, line.got, std::move(weighed))};
}

}  // namespace

std::vector<Explained> explainGot(const GotLine& line, const ReckonedAndGot& reckoned) {
    const QString name = gotLabel(line);
    if (line.what == GotWhat::Fill) return explainFill(line, name);
    const QString offered = bookWord("%1: offered from %2 on").arg(name, dayText(reckoned.from));
    const bool share = line.what == GotWhat::Cappings;
    const double times = share ? 100.0 : 1.0;
    Working kept = learning(line);
    Working working;
    Working rate;
    if (line.what == GotWhat::Frame) {
        frameRate(line.tallies, &working);
        for (Working::Step& step : working.steps)
            if (step.what == "full_frame_g") step.source = rateOf(line);
        rate = upTo(working, "reckoned_per_frame");
        working = upTo(working, "got_per_frame");
        note(&kept, "value_offered", line.offered, "g", "to ten grams", ruleOf(*line.learned));
    } else {
        const std::string unit = share ? "%" : "min";
        if (line.what == GotWhat::Load)
            minutesPerLoad(line.over, line.counted, &working);
        else if (line.what == GotWhat::Uncapping)
            minutesPerFrame(line.over, line.counted, &working);
        else
            cappingsShare(line.over, line.under, &working);
        note(&rate, "rate_in_force", line.rate * times, unit, {}, rateOf(line));
        note(&kept, "value_offered", line.offered * times, unit,
             line.what == GotWhat::Uncapping ? "to two decimals" : "to one decimal",
             ruleOf(*line.learned));
    }
    return {gotFigureOf(bookWord("%1: reckoned").arg(name), line, line.reckoned, std::move(rate)),
            gotFigureOf(bookWord("%1: got").arg(name), line, line.got, std::move(working)),
            gotFigureOf(offered, line, line.offered, std::move(kept))};
}

std::vector<Explained> explainRow(const Read& file, const SeasonYield& season,
                                  const RecordsOf& of) {
    if (of.run) {
        for (const RunBalance& run : season.runs)
            if (run.run.id == *of.run) return explainRun(file, season, run);
        return {};
    }
    if (of.colony || of.queen || of.nobody || of.anyYard) return explainTaking(file, season, of);
    for (const YardYield& yard : season.yards) {
        if (of.yard == yard.yard.id) {
            if (!of.withoutHive) return explainYard(file, season, yard);
            return yard.unknown ? explainWithout(file, season, of, *yard.unknown, yard.how)
                                : std::vector<Explained>{};
        }
        for (const HiveYield& hive : yard.hives)
            if (of.hive == hive.hive) return explainHive(file, season, hive);
    }
    if (of.withoutHive)
        return season.nowhere ? explainWithout(file, season, of, *season.nowhere, season.how)
                              : std::vector<Explained>{};
    return explainYear(season);
}

std::vector<Explained> explainSeason(const Read& file, const SeasonYield& season,
                                     const ReckonedAndGot& reckoned) {
    std::vector<Explained> all = explainYear(season);
    for (const YardYield& yard : season.yards) {
        append(all, explainYard(file, season, yard));
        for (const HiveYield& hive : yard.hives) append(all, explainHive(file, season, hive));
        if (yard.unknown)
            append(all, explainRow(file, season, {.yard = yard.yard.id, .withoutHive = true}));
    }
    if (season.nowhere) append(all, explainRow(file, season, {.withoutHive = true}));
    for (const RunBalance& run : season.runs) append(all, explainRun(file, season, run));
    for (const GotLine& line : reckoned.lines) append(all, explainGot(line, reckoned));
    return all;
}

}  // namespace combwright
