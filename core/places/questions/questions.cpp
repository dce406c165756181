#include "core/places/questions/questions.h"

#include <QCoreApplication>
#include <QLocale>
#include <algorithm>
#include <array>
#include <cmath>
#include <optional>

#include "core/model/storeroom/dead_out.h"
#include "core/places/questions/bench_questions.h"
#include "core/places/questions/candle_questions.h"
#include "core/places/questions/freezer_questions.h"
#include "core/places/questions/health_questions.h"
#include "core/places/questions/held_questions.h"
#include "core/places/questions/hive_goods_questions.h"
#include "core/places/questions/honey_questions.h"
#include "core/places/questions/look_questions.h"
#include "core/places/questions/move_questions.h"
#include "core/places/questions/queen_questions.h"
#include "core/places/questions/question_order.h"
#include "core/places/questions/raw_wax_questions.h"
#include "core/places/questions/run_questions.h"
#include "core/places/questions/stores_questions.h"
#include "core/places/questions/vessel_questions.h"
#include "core/places/questions/wax_questions.h"
#include "core/places/yard/line_revisions.h"
#include "core/storage/queries/hive_days.h"
#include "core/storage/queries/holds.h"
#include "core/storage/queries/yards.h"
#include "core/words/dead_out_words.h"
#include "core/words/figures.h"
#include "core/words/words.h"

namespace combwright {
namespace {

constexpr double mostFedG = 25'000;

QString ask(const char* text) { return QCoreApplication::translate("questions", text); }

double gramsOf(const Known<Mass>& mass) { return static_cast<double>(mass.value->grams()); }

class Questions {
  public:
    Questions(const Read& file, const Change& change, Day today)
        : m_file(file), m_step(change.step), m_today(today), m_bench(file, change.rows, today) {}

    void about(const RowChange& row) {
        if (row.kind == ChangeKind::Removed) return;
        aboutRow<Yard>(row, &Questions::aboutYard);
        aboutRow<Hive>(row, &Questions::aboutHive);
        aboutRow<Visit>(row, &Questions::aboutVisit);
        aboutRow<Feeding>(row, &Questions::aboutFeeding);
        for (const Question& each : moveQuestions(m_file, row)) put(each.asked, each.says);
        aboutRow<SetOut>(row, &Questions::aboutSetOut);
        aboutRow<Colony>(row, &Questions::aboutColony);
        for (const Question& each : honeyQuestions(m_file, row, m_step, m_today))
            put(each.asked, each.says);
        for (const Question& each : runQuestions(m_file, row)) put(each.asked, each.says);
        for (const Question& each : lookQuestions(m_file, row)) put(each.asked, each.says);
        for (const Question& each : heldQuestions(m_file, row)) put(each.asked, each.says);
        for (const Question& each : freezerQuestions(m_file, row)) put(each.asked, each.says);
        for (const Question& each : storesQuestions(m_file, row, m_step))
            put(each.asked, each.says);
        for (const Question& each : lineQuestions(m_file, row, m_step)) put(each.asked, each.says);
        for (const Question& each : healthQuestions(m_file, row, m_step, m_today))
            put(each.asked, each.says);
        for (const Question& each : queenQuestions(m_file, row, m_step)) put(each.asked, each.says);
        for (const Question& each : vesselQuestions(m_file, row)) put(each.asked, each.says);
        for (const Question& each : waxQuestions(m_file, row)) put(each.asked, each.says);
        for (const Question& each : rawWaxQuestions(m_file, row, m_today))
            put(each.asked, each.says);
        for (const Question& each : candleQuestions(m_file, row)) put(each.asked, each.says);
        for (const Question& each : hiveGoodsQuestions(m_file, row)) put(each.asked, each.says);
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
