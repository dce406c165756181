#include "core/places/questions/wax_questions.h"

#include <QCoreApplication>
#include <QLocale>

#include "core/places/wax_bench/mould_wax.h"
#include "core/places/wax_bench/wax_bench.h"
#include "core/storage/queries/constants.h"
#include "core/trade/wax/wax_heat.h"
#include "core/words/figures.h"
#include "core/words/words.h"

namespace combwright {
namespace {

QString askWax(const char* text) { return QCoreApplication::translate("questions", text); }

QString percentAsked(double share) {
    return QLocale().toString(share * 100.0, 'f', 0) + QStringLiteral(" %");
}

class WaxQuestions {
  public:
    explicit WaxQuestions(const Read& file) : m_file(file) {}

    void about(const RowChange& row) {
        aboutRow<Pour>(row, &WaxQuestions::aboutPour);
        aboutRow<WaxUse>(row, &WaxQuestions::aboutUse);
        aboutRow<WaxBlock>(row, &WaxQuestions::aboutBlock);
        aboutRow<WaxStep>(row, &WaxQuestions::aboutWaxStep);
        aboutRow<HeatSession>(row, &WaxQuestions::aboutHeat);
    }

    std::vector<Question> list;

  private:
    template <class Record>
    void aboutRow(const RowChange& row, void (WaxQuestions::*question)(const Record&)) {
        if (row.table != Record::table) return;
        if (const auto record = m_file.find(Id<Record>{row.id})) (this->*question)(*record);
    }

    void aboutWarmth(const std::optional<Temperature>& temperature, Day on) {
        if (!temperature) return;
        const double alarm = constantOr(m_file, "wax_alarm_c", {}, on, waxAlarmC);
        if (temperature->celsius() <= alarm) return;
        list.push_back({Asked::WaxTooHot,
                        askWax("Wax at %1: above %2 it discolours. Read the thermometer again, and "
                               "take the heat down.")
                            .arg(shownTemperature(temperature->celsius()).text(),
                                 shownTemperature(alarm).text())});
    }

    void aboutPour(const Pour& pour) { aboutWarmth(pour.temperature, pour.on); }
    void aboutWaxStep(const WaxStep& step) { aboutWarmth(step.temperature, step.on); }
    void aboutHeat(const HeatSession& heat) { aboutWarmth(heat.temperature, heat.on); }

    /// Asked once, of the last block that gave to the pour.
    void aboutUse(const WaxUse& use) {
        const auto pour = m_file.find(use.pour);
        const auto mould = pour ? m_file.find(pour->mould) : std::nullopt;
        if (!mould) return;
        Mass drawn;
        for (const WaxUse& each : m_file.where<WaxUse>({is("pour", pour->id)})) {
            if (each.id.number > use.id.number) return;
            drawn = drawn + each.mass;
        }
        const auto needed = neededFor(*mould, piecesOf(*pour));
        if (!needed) return;
        const auto tookG = static_cast<double>(drawn.grams());
        const auto needG = static_cast<double>(needed->grams());
        const auto pieces = static_cast<double>(piecesOf(*pour));
        if (tookG > needG * waxOverMould && tookG - needG > 10)
            list.push_back(
                {Asked::MuchWaxInCandle,
                 askWax("%1: %2 of wax for each candle, and one holds %3. Is a mass a slip, or did "
                        "more come out?")
                     .arg(fromUtf8(mould->name.text()), shownPortion(tookG / pieces).text(),
                          shownPortion(needG / pieces).text())});
        if (tookG < needG / waxOverMould)
            list.push_back(
                {Asked::LittleWaxInCandle,
                 askWax("%1: only %2 of wax for each candle, and one holds %3. Is a block missing, "
                        "or a mass a slip?")
                     .arg(fromUtf8(mould->name.text()), shownPortion(tookG / pieces).text(),
                          shownPortion(needG / pieces).text())});
    }

    void aboutBlock(const WaxBlock& block) {
        const auto batch = m_file.find(block.batch);
        if (!batch) return;
        const BatchLedger ledger = batchLedger(m_file, *batch, block.on);
        const auto out = outOfPot(ledger);
        if (out && static_cast<double>(ledger.clean.grams()) >
                       static_cast<double>(out->grams()) * stepOverBatch) {
            list.push_back(
                {Asked::YieldUnusual,
                 askWax("%1: %2 in blocks, and %3 came out of the pot. Is a mass a slip, "
                        "or was there more in it than was written down?")
                     .arg(fromUtf8(batch->name.text()), massToTheGram(ledger.clean),
                          massToTheGram(*out))});
            return;
        }
        // As it was weighed last: what dripped or was washed meanwhile gives more of its mass.
        const auto stages = stagesOf(ledger);
        if (stages.empty() || stages.back().mass <= Mass() || !ledger.allWeighed) return;
        const auto published = publishedWaxYield(stages.back().material);
        if (!published || ledger.again > Mass()) return;
        const double share = static_cast<double>(ledger.clean.grams()) /
                             static_cast<double>(stages.back().mass.grams());
        // Several blocks may come of a batch: only too much is odd before the last is cast.
        if (share <= published->high * yieldFarAbove &&
            (share >= published->low * yieldFarBelow || ledger.blocks.size() > 1))
            return;
        list.push_back(
            {Asked::YieldUnusual,
             askWax("%1 gave %2 clean wax; such wax gives %3 to %4. Is more to come, is a mass a "
                    "slip, or was it drained or washed otherwise than was written down?")
                 .arg(fromUtf8(batch->name.text()), percentAsked(share),
                      percentAsked(published->low), percentAsked(published->high))});
    }

    const Read& m_file;
};

}  // namespace

std::vector<Question> waxQuestions(const Read& file, const RowChange& row) {
    WaxQuestions questions(file);
    questions.about(row);
    return std::move(questions.list);
}

}  // namespace combwright
