#include "core/places/questions/raw_wax_questions.h"

#include <QCoreApplication>
#include <QStringList>
#include <algorithm>
#include <chrono>
#include <set>

#include "core/places/honey_room/run_balance.h"
#include "core/storage/queries/names.h"
#include "core/storage/queries/runs.h"
#include "core/storage/queries/wax_holds.h"
#include "core/storage/queries/wax_ledger.h"
#include "core/words/dead_out_words.h"
#include "core/words/figures.h"
#include "core/words/words.h"

namespace combwright {
namespace {

QString askRaw(const char* text) { return QCoreApplication::translate("questions", text); }

/// Bees that do not fly clean no cappings, and what lies in the hive chills and moulds. Northern
/// months; common practice, no source.
bool beesSitTight(Day on) {
    const unsigned month = static_cast<unsigned>(std::chrono::year_month_day(on).month());
    return month >= 11 || month <= 3;
}

class RawWaxQuestions {
  public:
    RawWaxQuestions(const Read& file, Day today) : m_file(file), m_today(today) {}

    void about(const RowChange& row) {
        aboutRow<WaxBatch>(row, &RawWaxQuestions::aboutBatch);
        aboutRow<WaxStep>(row, &RawWaxQuestions::aboutStep);
        aboutRow<WaxBlock>(row, &RawWaxQuestions::aboutBlock);
        aboutRow<WaxUse>(row, &RawWaxQuestions::aboutLeaving);
        aboutRow<Hold>(row, &RawWaxQuestions::aboutHold);
    }

    std::vector<Question> list;

  private:
    template <class Record>
    void aboutRow(const RowChange& row, void (RawWaxQuestions::*question)(const Record&)) {
        if (row.table != Record::table) return;
        if (const auto record = m_file.find(Id<Record>{row.id})) (this->*question)(*record);
    }

    void put(Asked asked, const QString& says) { list.push_back({asked, says}); }

    void aboutBatch(const WaxBatch& batch) {
        if (batch.keptSince && *batch.keptSince > m_today)
            put(Asked::NotComeYet,
                askRaw("%1: kept so since %2, which has not come yet. Is the day a slip?")
                    .arg(fromUtf8(batch.name.text()), dayText(*batch.keptSince)));
        const auto sources = m_file.where<WaxSource>({is("batch", batch.id)});
        aboutCombs(batch, sources);
        aboutCrop(batch, sources);
    }

    /// Combs cut out of boxes: no more than they hold, or were counted in them.
    void aboutCombs(const WaxBatch& batch, const std::vector<WaxSource>& sources) {
        if (!batch.combs || sources.empty()) return;
        std::int64_t room = 0;
        for (const WaxSource& source : sources) {
            const auto box = m_file.find(source.box);
            const auto kind = box ? m_file.find(box->kind) : std::nullopt;
            if (!kind || !kind->framesNominal) return;
            const auto there = framesIn(m_file, *box);
            room += std::max(kind->framesNominal->value(), there ? there->value() : 0);
        }
        if (batch.combs->value() <= room) return;
        put(Asked::ManyCombs,
            askRaw(
                "%1: %2 combs, and the boxes it is of hold %3. Is the number a slip, or is a box "
                "missing?")
                .arg(fromUtf8(batch.name.text()), QString::number(batch.combs->value()),
                     QString::number(room)));
    }

    /// Cappings against the honey of their runs, where all of it is known.
    void aboutCrop(const WaxBatch& batch, const std::vector<WaxSource>& sources) {
        const auto raw = batch.raw ? batch.raw->middle() : std::nullopt;
        if (!raw || batch.source != RawWaxSource::Cappings || sources.empty()) return;
        double cropG = 0;
        bool closed = true;
        for (const WaxSource& source : sources) {
            const auto run = m_file.find(source.run);
            if (!run) return;
            double gaveG = static_cast<double>(bucketSum(m_file, run->id).mass.grams());
            const auto balance = runBalance(m_file, run->id);
            if (balance && balance->outOfBoxesG) gaveG = std::max(gaveG, *balance->outOfBoxesG);
            if (gaveG <= 0) return;
            cropG += gaveG;
            closed = closed && run->closed;
        }
        // While buckets are still to be filled nobody knows the crop; its cappings weigh less than
        // what there is already all the same.
        if (*raw <= cropG * (closed ? cappingsOverCrop : 1.0)) return;
        put(Asked::MuchCappings,
            askRaw("%1: %2 of cappings, and %3 of honey came of it. Fresh cappings are about a "
                   "tenth. Is the mass a slip, or a run missing?")
                .arg(fromUtf8(batch.name.text()), massText(*raw, How::Weighed),
                     massText(cropG, How::Weighed)));
    }

    void aboutStep(const WaxStep& step) {
        if (step.work == WaxWork::BeesCleaned) aboutBees(step);
        if (step.work == WaxWork::Melted || step.work == WaxWork::MeltedAgain ||
            step.work == WaxWork::GoneTogether)
            aboutHeld(step.batch, step.on);
    }

    void aboutBees(const WaxStep& step) {
        const auto batch = m_file.find(step.batch);
        const auto hive = m_file.find(step.hive);
        if (!batch) return;
        if (!hive) put(Asked::SetOutInOpen, setOutCaution());
        if (beesSitTight(step.on))
            put(Asked::CappingsInCold,
                askRaw("%1 given to bees on %2: cappings are cleaned in warm weather only. In the "
                       "cold bees do not come to them, or chill at them. Was that meant?")
                    .arg(fromUtf8(batch->name.text()), dayText(step.on)));
        if (!hive) return;
        std::set<std::int64_t> yards;
        for (const WaxSource& source : m_file.where<WaxSource>({is("batch", batch->id)}))
            if (source.run)
                for (const ExtractionBox& box :
                     m_file.where<ExtractionBox>({is("extraction", *source.run)}))
                    if (const auto filled = m_file.find(box.hive))
                        yards.insert(filled->yard.number);
        yards.erase(hive->yard.number);
        if (!yards.empty())
            put(Asked::WetsElsewhere,
                askRaw("%1: honey of another yard than %2 stands in is in it. What one yard has, "
                       "the other gets: was that meant?")
                    .arg(fromUtf8(batch->name.text()), fromUtf8(hive->mark.text())));
    }

    void aboutBlock(const WaxBlock& block) {
        if (block.batch) aboutHeld(*block.batch, block.on);
    }

    /// Wax that goes to other people.
    void aboutLeaving(const WaxUse& use) {
        const auto block = m_file.find(use.block);
        const bool leaves =
            use.went == WaxWent::Sold || use.went == WaxWent::Given || use.went == WaxWent::Traded;
        if (leaves && block && block->batch) aboutHeld(*block->batch, use.on);
    }

    void aboutHeld(Id<WaxBatch> id, Day on) {
        const auto batch = m_file.find(id);
        const auto holds = HeldWax(m_file, on).of(id);
        if (!batch || holds.empty()) return;
        QStringList names;
        for (const WaxHold& each : holds)
            if (const QString name = fromUtf8(each.name); !names.contains(name)) names << name;
        put(Asked::HeldWax,
            askRaw("%1: wax or honey of what is held back (%2) is in it. Melting does not make it "
                   "safe: keep its wax apart and marked, clean the pot before other wax, let none "
                   "of it become foundation or go to another keeper, and ask your bee inspector.")
                .arg(fromUtf8(batch->name.text()), names.join(QStringLiteral(", "))));
    }

    /// Wax gathered before anybody suspected anything.
    void aboutHold(const Hold& hold) {
        if (!keepsApart(hold) || hold.lifted) return;
        HeldWax held(m_file, hold.since);
        for (const WaxBatch& batch : m_file.all<WaxBatch>()) {
            if (batch.on + days(suspectedAfterRunDays) < hold.since) continue;
            const auto holds = held.of(batch.id);
            if (std::any_of(holds.begin(), holds.end(),
                            [&](const WaxHold& each) { return each.hold.id == hold.id; }))
                aboutHeld(batch.id, std::max(hold.since, batch.on));
        }
    }

    const Read& m_file;
    Day m_today;
};

}  // namespace

std::vector<Question> rawWaxQuestions(const Read& file, const RowChange& row, Day today) {
    RawWaxQuestions questions(file, today);
    questions.about(row);
    return std::move(questions.list);
}

}  // namespace combwright
