#include "core/places/questions/look_questions.h"

#include <QCoreApplication>
#include <QLocale>
#include <algorithm>
#include <cmath>

#include "core/places/health/mites.h"
#include "core/storage/queries/hive_days.h"
#include "core/storage/queries/yards.h"
#include "core/words/words.h"

namespace combwright {
namespace {

constexpr double broodJumpFrames = 5.0;
constexpr int broodJumpDays = 14;
/// Two boxes of ten frames. Common practice, no source: a bigger nest is hardly ever met.
constexpr double mostBroodFrames = 20.0;
constexpr double fewestInSample = 50;
constexpr double mostInSample = 2000;

QString askOfLook(const char* text) { return QCoreApplication::translate("questions", text); }

QString lookFigure(double figure) { return QLocale().toString(figure, 'g', 4); }

std::optional<double> framesIn(const std::optional<Known<Frames>>& reading) {
    const auto tenths = reading ? reading->middle() : std::nullopt;
    return tenths ? std::optional(*tenths / 10.0) : std::nullopt;
}

std::optional<double> countedIn(const std::optional<Known<Count>>& reading) {
    return reading ? reading->middle() : std::nullopt;
}

class LookQuestions {
  public:
    explicit LookQuestions(const Read& file) : m_file(file) {}

    void about(const RowChange& row) {
        if (row.table == Inspection::table)
            if (const auto look = m_file.find(Id<Inspection>{row.id})) aboutInspection(*look);
        if (row.table == Finding::table)
            if (const auto finding = m_file.find(Id<Finding>{row.id})) aboutFinding(*finding);
    }

    std::vector<Question> list;

  private:
    void put(Asked asked, const QString& says) { list.push_back({asked, says}); }

    /// Frames the boxes that stood on a hive that day have room for, or those of its nest alone;
    /// nothing where none is written down or a kind does not say.
    std::optional<double> roomInFrames(const Hive& hive, Day on, bool nestAlone) const {
        const Standing standing = standingOn(m_file, hive, on);
        Hive then = hive;
        then.excluderAbove = standing.excluderAbove;
        const std::size_t supers = nestAlone ? supersOn(then, standing.boxes).size() : 0;
        if (standing.boxes.size() <= supers) return std::nullopt;
        double frames = 0;
        for (std::size_t i = 0; i + supers < standing.boxes.size(); ++i) {
            const auto kind = m_file.find(standing.boxes[i].kind);
            if (!kind || !kind->framesNominal) return std::nullopt;
            frames += static_cast<double>(kind->framesNominal->value());
        }
        return frames;
    }

    /// More frames than hang in the hive, or than any nest has.
    void askOfFrames(const Hive& hive, Day on, const QString& mark, double brood, double stores) {
        const double seen = brood + stores;
        const auto nest = roomInFrames(hive, on, true);
        if (nest && brood > *nest + 1)
            return put(
                Asked::MoreFramesThanFit,
                askOfLook("%1: %2 frames of brood, but its nest holds %3. Is the number a slip?")
                    .arg(mark, lookFigure(brood), lookFigure(*nest)));
        const auto room = roomInFrames(hive, on, false);
        if (room && seen > *room + 1)
            return put(
                Asked::MoreFramesThanFit,
                askOfLook(
                    "%1: %2 frames of brood and stores, but its boxes hold %3. Is a number a slip?")
                    .arg(mark, lookFigure(seen), lookFigure(*room)));
        if (!nest && brood > mostBroodFrames)
            put(Asked::MoreFramesThanFit,
                askOfLook(
                    "%1: %2 frames of brood is more than two full boxes. Is the number a slip?")
                    .arg(mark, lookFigure(brood)));
    }

    /// Whether a colony lived in the hive that day, or nobody ever wrote down one: a keeper who
    /// notes no colonies is not asked about each.
    bool livedOn(Id<Hive> hive, Day on) const {
        const auto stays = colonyStaysIn(m_file, hive);
        return stays.empty() ||
               std::any_of(stays.begin(), stays.end(), [on](const ColonyStay& stay) {
                   return stay.from <= on && (!stay.to || on <= *stay.to);
               });
    }

    void aboutInspection(const Inspection& inspection) {
        const auto visit = m_file.find(inspection.visit);
        const auto hive = m_file.find(inspection.hive);
        if (!visit || !hive) return;
        const QString mark = fromUtf8(hive->mark.text());
        const auto brood = framesIn(inspection.seen.brood);
        const auto stores = framesIn(inspection.seen.stores);
        const bool dead = inspection.seen.looked == Looked::FoundDead;
        const bool life = brood.value_or(0) > 0 || inspection.seen.eggs.value_or(false) ||
                          inspection.seen.openBrood.value_or(false) ||
                          inspection.seen.cappedBrood.value_or(false) ||
                          inspection.seen.queenSeen.value_or(false);
        if (inspection.seen.looked != Looked::Opened && life)
            put(Asked::MarksDisagree,
                (dead ? askOfLook(
                            "%1: found dead, yet brood, eggs or the queen were seen. Is one mark a "
                            "slip?")
                      : askOfLook(
                            "%1: not opened, yet brood, eggs or the queen were seen. Is one mark a "
                            "slip?"))
                    .arg(mark));
        if (dead && foundDeadOn(m_file, hive->id, visit->on))
            put(Asked::FoundDead,
                askOfLook(
                    "%1: found dead, but its colony still stands as living. Write down its end in "
                    "Yard: choose its hive on the board, X, then E. Its combs are then held until "
                    "you say what it died of.")
                    .arg(mark));
        const bool boxOn =
            !m_file.where<BoxMove>({is("inspection", inspection.id), is("to_hive", hive->id)})
                 .empty();
        if ((life || boxOn) && !livedOn(hive->id, visit->on))
            put(Asked::NobodyLives,
                askOfLook("%1: no colony lives there by what is written down. Did one move in?")
                    .arg(mark));
        askOfFrames(*hive, visit->on, mark, brood.value_or(0), stores.value_or(0));
        if (!brood) return;
        for (const DatedInspection& before : inspectionsBetween(
                 m_file, hive->id, visit->on - days(broodJumpDays), visit->on - days(1))) {
            const auto was = framesIn(before.inspection.seen.brood);
            if (!was) continue;
            if (std::abs(*brood - *was) > broodJumpFrames)
                put(Asked::BroodJumped,
                    askOfLook("%1: %2 frames of brood, %3 on %4. So much in so few days is rare.")
                        .arg(mark, lookFigure(*brood), lookFigure(*was), dayAndMonth(before.on)));
            return;
        }
    }

    void aboutFinding(const Finding& finding) {
        const auto mites = countedIn(finding.mites);
        const auto bees = countedIn(finding.bees);
        if (lacksItsBees(finding)) {
            const auto hive = m_file.find(finding.hive);
            put(Asked::BeesNotSaid,
                askOfLook(
                    "%1: %2 mites, in how many bees? Without them there is no rate: write w%2/300 "
                    "where a level half cup of about 300 was taken.")
                    .arg(hive ? fromUtf8(hive->mark.text()) : QString(), lookFigure(*mites)));
        }
        if (!bees) return;
        if (mites && *mites > *bees)
            put(Asked::MoreMitesThanBees,
                askOfLook("%1 mites in %2 bees: were the two numbers exchanged?")
                    .arg(lookFigure(*mites), lookFigure(*bees)));
        else if (*bees < fewestInSample || *bees > mostInSample)
            put(Asked::SampleUnusual,
                askOfLook("A sample of %1 bees; a wash is usually of about 300.")
                    .arg(lookFigure(*bees)));
    }

    const Read& m_file;
};

}  // namespace

std::vector<Question> lookQuestions(const Read& file, const RowChange& row) {
    LookQuestions questions(file);
    questions.about(row);
    return std::move(questions.list);
}

}  // namespace combwright
