#include "core/places/questions.h"

#include <QCoreApplication>
#include <QLocale>
#include <algorithm>
#include <array>
#include <cmath>
#include <optional>

#include "core/model/storeroom/dead_out.h"
#include "core/places/bench_questions.h"
#include "core/places/freezer_questions.h"
#include "core/places/health_questions.h"
#include "core/places/held_questions.h"
#include "core/places/honey_questions.h"
#include "core/places/line_revisions.h"
#include "core/places/move_questions.h"
#include "core/places/question_order.h"
#include "core/places/questions_queens.h"
#include "core/places/run_questions.h"
#include "core/places/stores_questions.h"
#include "core/storage/queries/hive_days.h"
#include "core/storage/queries/holds.h"
#include "core/storage/queries/yards.h"
#include "core/words/dead_out_words.h"
#include "core/words/figures.h"
#include "core/words/words.h"

namespace combwright {
namespace {

constexpr double broodJumpFrames = 5.0;
constexpr int broodJumpDays = 14;
constexpr double fewestInSample = 50;
constexpr double mostInSample = 2000;
constexpr double mostFedG = 25'000;

QString ask(const char* text) { return QCoreApplication::translate("questions", text); }

QString framesFigure(double frames) { return QLocale().toString(frames, 'g', 4); }

double gramsOf(const Known<Mass>& mass) { return static_cast<double>(mass.value->grams()); }

/// The middle of a reading, where it has a number.
template <class Unit>
std::optional<double> middle(const std::optional<Known<Unit>>& reading, double smallestPerOne) {
    if (!reading || !reading->value) return std::nullopt;
    const auto low = static_cast<double>(reading->value->count());
    const auto high = reading->to ? static_cast<double>(reading->to->count()) : low;
    return (low + high) / 2.0 / smallestPerOne;
}

class Questions {
  public:
    Questions(const Read& file, const Change& change, Day today)
        : m_file(file), m_step(change.step), m_today(today), m_bench(file, change.rows, today) {}

    void about(const RowChange& row) {
        if (row.kind == ChangeKind::Removed) return;
        aboutRow<Yard>(row, &Questions::aboutYard);
        aboutRow<Hive>(row, &Questions::aboutHive);
        aboutRow<Visit>(row, &Questions::aboutVisit);
        aboutRow<Inspection>(row, &Questions::aboutInspection);
        aboutRow<Finding>(row, &Questions::aboutFinding);
        aboutRow<Feeding>(row, &Questions::aboutFeeding);
        for (const Question& each : moveQuestions(m_file, row)) put(each.asked, each.says);
        aboutRow<SetOut>(row, &Questions::aboutSetOut);
        aboutRow<Colony>(row, &Questions::aboutColony);
        for (const Question& each : honeyQuestions(m_file, row, m_step, m_today))
            put(each.asked, each.says);
        for (const Question& each : runQuestions(m_file, row)) put(each.asked, each.says);
        for (const Question& each : heldQuestions(m_file, row)) put(each.asked, each.says);
        for (const Question& each : freezerQuestions(m_file, row)) put(each.asked, each.says);
        for (const Question& each : storesQuestions(m_file, row, m_step))
            put(each.asked, each.says);
        for (const Question& each : lineQuestions(m_file, row, m_step)) put(each.asked, each.says);
        for (const Question& each : healthQuestions(m_file, row, m_step, m_today))
            put(each.asked, each.says);
        for (const Question& each : queenQuestions(m_file, row, m_step)) put(each.asked, each.says);
        for (const Question& each : m_bench.about(row)) put(each.asked, each.says);
    }

    std::vector<Question> list;

  private:
    template <class Record>
    void aboutRow(const RowChange& row, void (Questions::*question)(const Record&)) {
        if (row.table != Record::table) return;
        if (const auto record = m_file.find(Id<Record>{row.id})) (this->*question)(*record);
    }

    void put(Asked asked, const QString& says) {
        const Question question{asked, says};
        if (std::find(list.begin(), list.end(), question) == list.end()) list.push_back(question);
    }

    static bool alike(const Name& one, const Name& other) {
        return fromUtf8(one.text()).compare(fromUtf8(other.text()), Qt::CaseInsensitive) == 0;
    }

    void aboutYard(const Yard& yard) {
        for (const Yard& other : openYards(m_file))
            if (other.id != yard.id && alike(other.name, yard.name))
                put(Asked::NameAlike,
                    ask("There is a yard %1 already, and now %2. One too many?")
                        .arg(fromUtf8(other.name.text()), fromUtf8(yard.name.text())));
    }

    void aboutHive(const Hive& hive) {
        for (const Hive& other : openHives(m_file, hive.yard))
            if (other.id != hive.id && alike(other.mark, hive.mark))
                put(Asked::NameAlike,
                    ask("In the same yard stand %1 and %2. Is one of them a slip?")
                        .arg(fromUtf8(other.mark.text()), fromUtf8(hive.mark.text())));
    }

    void aboutSetOut(const SetOut& out) {
        if (!out.takenIn) put(Asked::SetOutInOpen, setOutCaution());
    }

    void aboutColony(const Colony& colony) {
        if (colony.ended || !anythingApart(m_file, colony.since)) return;
        const auto hive = m_file.find(colony.hive);
        const HeldThings held = heldThings(m_file, colony.since);
        for (const Box& box : boxesOn(m_file, colony.hive))
            if (hive && held.apart(box.id) && !held.colonies.contains(colony.id.number))
                put(Asked::HeldCombLivedIn,
                    ask("%1: bees live on combs that are held back. Answer the dead-out's "
                        "questions, or give them other combs.")
                        .arg(fromUtf8(hive->mark.text())));
    }

    void aboutVisit(const Visit& visit) {
        if (visit.on > m_today)
            put(Asked::NotComeYet,
                ask("The visit is dated %1, which has not come yet. If the day is a slip, take "
                    "the line back and write it for the right day.")
                    .arg(dayText(visit.on)));
    }

    /// Frames the boxes standing on a hive have room for; nothing where a kind does not say, or
    /// where boxes were moved since that day.
    std::optional<double> roomInFrames(Id<Hive> hive, Day on) const {
        double frames = 0;
        const auto boxes = boxesOn(m_file, hive);
        if (boxes.empty()) return std::nullopt;
        for (const Box& box : boxes) {
            const auto kind = m_file.find(box.kind);
            if (!kind || !kind->framesNominal || box.since > on) return std::nullopt;
            frames += static_cast<double>(kind->framesNominal->value());
        }
        return frames;
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
        const auto brood = middle(inspection.seen.brood, 10);
        const auto stores = middle(inspection.seen.stores, 10);
        const double seen = brood.value_or(0) + stores.value_or(0);
        const bool life = brood.value_or(0) > 0 || inspection.seen.eggs.value_or(false) ||
                          inspection.seen.openBrood.value_or(false) ||
                          inspection.seen.cappedBrood.value_or(false) ||
                          inspection.seen.queenSeen.value_or(false);
        if (inspection.seen.looked != Looked::Opened && life)
            put(Asked::MarksDisagree,
                ask("%1: not opened, yet brood, eggs or the queen were seen. Is one mark a slip?")
                    .arg(mark));
        const bool boxOn =
            !m_file.where<BoxMove>({is("inspection", inspection.id), is("to_hive", hive->id)})
                 .empty();
        if ((life || boxOn) && !livedOn(hive->id, visit->on))
            put(Asked::NobodyLives,
                ask("%1: no colony lives there by what is written down. Did one move in?")
                    .arg(mark));
        if (const auto room = roomInFrames(hive->id, visit->on); room && seen > *room + 1)
            put(Asked::MoreFramesThanFit,
                ask("%1: %2 frames of brood and stores, but its boxes hold %3. Is a number a slip?")
                    .arg(mark, framesFigure(seen), framesFigure(*room)));
        if (!brood) return;
        for (const DatedInspection& before : inspectionsBetween(
                 m_file, hive->id, visit->on - days(broodJumpDays), visit->on - days(1))) {
            const auto was = middle(before.inspection.seen.brood, 10);
            if (!was) continue;
            if (std::abs(*brood - *was) > broodJumpFrames)
                put(Asked::BroodJumped,
                    ask("%1: %2 frames of brood, %3 on %4. So much in so few days is rare.")
                        .arg(mark, framesFigure(*brood), framesFigure(*was),
                             dayAndMonth(before.on)));
            return;
        }
    }

    void aboutFinding(const Finding& finding) {
        const auto mites = middle(finding.mites, 1);
        const auto bees = middle(finding.bees, 1);
        if (!bees) return;
        if (mites && *mites > *bees)
            put(Asked::MoreMitesThanBees,
                ask("%1 mites in %2 bees: were the two numbers exchanged?")
                    .arg(framesFigure(*mites), framesFigure(*bees)));
        else if (*bees < fewestInSample || *bees > mostInSample)
            put(Asked::SampleUnusual, ask("A sample of %1 bees; a wash is usually of about 300.")
                                          .arg(framesFigure(*bees)));
    }

    void aboutFeeding(const Feeding& feeding) {
        if (feeding.given && feeding.given->value && gramsOf(*feeding.given) > mostFedG)
            put(Asked::MuchFed, ask("%1 fed to one hive at once is much. A slip of the pen?")
                                    .arg(massText(gramsOf(*feeding.given), How::Weighed)));
    }

    const Read& m_file;
    std::int64_t m_step;
    Day m_today;
    BenchQuestions m_bench;
};

}  // namespace

std::vector<Question> questionsAfter(const Read& file, const Change& change, Day today) {
    Questions questions(file, change, today);
    for (const RowChange& row : inWalkingOrder(file, change.rows)) questions.about(row);
    return std::move(questions.list);
}

}  // namespace combwright
