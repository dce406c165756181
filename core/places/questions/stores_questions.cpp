#include "core/places/questions/stores_questions.h"

#include <QCoreApplication>
#include <algorithm>

#include "core/places/pull/full_frame.h"
#include "core/places/stores/feed_shelf.h"
#include "core/places/stores/hive_scale.h"
#include "core/storage/queries/revisions.h"
#include "core/storage/queries/yards.h"
#include "core/words/figures.h"
#include "core/words/units.h"
#include "core/words/words.h"

namespace combwright {
namespace {

/// A hive over this many times its full mass is not only a good year.
constexpr double heavyHiveAllowance = 1.25;
constexpr double poundsInKilogram = 1000.0 / 453.59237;
/// One side of a hive that stands level is not so much heavier. Planning assumption, no source.
constexpr double sidesApart = 2.0;

QString askStores(const char* text) { return QCoreApplication::translate("questions", text); }

/// Wood, frames, bees and every comb full of honey.
std::optional<double> fullHiveG(const Read& file, const Hive& hive, Day on) {
    const Standing standing = standingOn(file, hive, on);
    if (standing.boxes.empty()) return std::nullopt;
    double sum = hive.tare && hive.tare->middle() ? *hive.tare->middle() : 10'000;
    for (const Box& box : standing.boxes) {
        const auto kind = file.find(box.kind);
        const auto frame = kind ? file.find(kind->takes) : std::nullopt;
        const auto empty = kind ? emptyBoxGramsOf(file, *kind, hive.yard, on) : std::nullopt;
        const auto full = frame ? fullFrameGramsOf(file, *frame, hive.yard, on) : std::nullopt;
        if (!empty || !full || !kind->framesNominal) return std::nullopt;
        sum += *empty + *full * static_cast<double>(kind->framesNominal->value());
    }
    return sum * heavyHiveAllowance;
}

void askOfWeighing(const Read& file, const HiveWeighing& weighing, const RowChange& row,
                   std::int64_t step, std::vector<Question>& list) {
    const auto hive = file.find(weighing.hive);
    if (!hive) return;
    const QString name = fromUtf8(hive->mark.text());
    const ScaleReading reading = readScale(file, *hive, weighing);
    if (row.kind == ChangeKind::Changed && !revisedBy(file, step, "weigh-hive").empty())
        list.push_back({Asked::WeighedAgain,
                        askStores("%1 was weighed on that day already; what was given now stands "
                                  "instead. The first is in the history, and undo brings it back.")
                            .arg(name)});
    if (const auto most = fullHiveG(file, *hive, weighing.on);
        most && reading.grossG && *reading.grossG > *most) {
        QString says = askStores("%1 weighs %2, more than it would with every comb full, about %3.")
                           .arg(name, massText(*reading.grossG, How::Weighed),
                                massText(*most / heavyHiveAllowance, How::ByEye));
        if (shownUnits() == Units::Metric && *reading.grossG / poundsInKilogram < *most)
            says += QLatin1Char(' ') + askStores("Pounds typed as kilograms?");
        list.push_back({Asked::HiveTooHeavy, says});
    }
    if (reading.netG && *reading.netG < 0)
        list.push_back(
            {Asked::TareWrong,
             askStores("%1 weighs %2, less than it should empty, %3. It is kept; its stores are "
                       "not known until its empty weight is put right.")
                 .arg(name, massText(*reading.grossG, How::Weighed),
                      massInWords(reading.tare.grams(), reading.tare.how))});
    const auto left = weighing.left ? weighing.left->middle() : std::nullopt;
    const auto right = weighing.right ? weighing.right->middle() : std::nullopt;
    if (left && right && std::max(*left, *right) > sidesApart * std::min(*left, *right))
        list.push_back(
            {Asked::SidesDiffer,
             askStores("%1: %2 at one side and %3 at the other. Does it stand level, or "
                       "is one a slip?")
                 .arg(name, massText(*left, How::Weighed), massText(*right, How::Weighed))});
}

void askOfFeeding(const Read& file, const Feeding& feeding, std::vector<Question>& list) {
    const auto hive = file.find(feeding.hive);
    if (!hive) return;
    const QString name = fromUtf8(hive->mark.text());
    const auto colonies = file.where<Colony>({is("hive", feeding.hive)});
    const bool lives = std::any_of(colonies.begin(), colonies.end(), [&](const Colony& each) {
        return each.since <= feeding.on && (!each.ended || feeding.on < *each.ended);
    });
    if (!lives)
        list.push_back({Asked::FedNobody,
                        askStores("%1 was fed, but no colony lived there that day. Was it another "
                                  "hive? Open feed draws robbers.")
                            .arg(name)});
    Standing standing = standingOn(file, *hive, feeding.on);
    Hive then = *hive;
    then.excluderAbove = standing.excluderAbove;
    const bool sugar = feeding.kind != FeedKind::Comb;
    if (lives && sugar && !supersOn(then, standing.boxes).empty())
        list.push_back({Asked::FedUnderSupers,
                        askStores("%1 was fed with supers on: what is fed ends up in them. Keep "
                                  "their honey for the bees.")
                            .arg(name)});
    for (const FeedShelfRow& each : feedShelf(file, feeding.on))
        if (each.leftG() < 0)
            list.push_back(
                {Asked::FeedUsedUp,
                 askStores("More %1 was given than is written down as bought. Count what "
                           "is on the shelf, or write down what was bought.")
                     .arg(word(Choices<FeedKind>::words[static_cast<std::size_t>(each.kind)]))});
}

}  // namespace

std::vector<Question> storesQuestions(const Read& file, const RowChange& row, std::int64_t step) {
    std::vector<Question> list;
    if (row.table == HiveWeighing::table)
        if (const auto weighing = file.find(Id<HiveWeighing>{row.id}))
            askOfWeighing(file, *weighing, row, step, list);
    if (row.table == Feeding::table)
        if (const auto feeding = file.find(Id<Feeding>{row.id})) askOfFeeding(file, *feeding, list);
    return list;
}

}  // namespace combwright
