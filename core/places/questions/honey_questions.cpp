#include "core/places/questions/honey_questions.h"

#include <QCoreApplication>
#include <QLocale>
#include <algorithm>
#include <optional>

#include "core/model/frames/box.h"
#include "core/model/honey/extraction.h"
#include "core/model/storeroom/equipment.h"
#include "core/places/honey_room/gate_minder.h"
#include "core/places/honey_room/run_balance.h"
#include "core/places/pull/full_frame.h"
#include "core/storage/queries/constants.h"
#include "core/storage/queries/revisions.h"
#include "core/words/figures.h"
#include "core/words/units.h"
#include "core/words/words.h"

namespace combwright {
namespace {

/// A box over this many times its full mass is not only a good year.
constexpr double heavyAllowance = 1.25;
constexpr double gramsTypedPerPound = 1000.0 / 453.59237;

QString askHoney(const char* text) { return QCoreApplication::translate("questions", text); }

double honeyGrams(const Known<Mass>& mass) { return static_cast<double>(mass.value->grams()); }

class HoneyQuestions {
  public:
    HoneyQuestions(const Read& file, std::int64_t step, Day today)
        : m_file(file), m_step(step), m_today(today) {}

    void about(const RowChange& row) {
        aboutRow<BoxLook>(row, &HoneyQuestions::aboutLook);
        aboutRow<ExtractionBox>(row, &HoneyQuestions::aboutBox);
        aboutRow<Bucket>(row, &HoneyQuestions::aboutBucket);
        if (row.kind == ChangeKind::Changed)
            aboutRow<Bucket>(row, &HoneyQuestions::aboutBucketAgain);
        aboutRow<Extraction>(row, &HoneyQuestions::aboutRun);
    }

    std::vector<Question> list;

  private:
    template <class Record>
    void aboutRow(const RowChange& row, void (HoneyQuestions::*question)(const Record&)) {
        if (row.table != Record::table) return;
        if (const auto record = m_file.find(Id<Record>{row.id})) (this->*question)(*record);
    }

    void put(Asked asked, const QString& says) { list.push_back({asked, says}); }

    void aboutLook(const BoxLook& look) {
        const auto box = m_file.find(look.box);
        const auto kind = box ? m_file.find(box->kind) : std::nullopt;
        aboutWater(box && !box->mark.empty() ? fromUtf8(box->mark) : askHoney("The box"),
                   look.water);
        if (!kind || !kind->framesNominal || !look.frames) return;
        if (*look.frames > *kind->framesNominal)
            put(Asked::MoreFramesThanFit, askHoney("%1 frames in a box made for %2: it is kept so.")
                                              .arg(look.frames->value())
                                              .arg(kind->framesNominal->value()));
    }

    void aboutBox(const ExtractionBox& weighed) {
        const auto run = m_file.find(weighed.extraction);
        const auto box = m_file.find(weighed.box);
        const QString name = box && !box->mark.empty() ? fromUtf8(box->mark)
                             : weighed.knownAs.empty() ? askHoney("the box")
                                                       : fromUtf8(weighed.knownAs);
        const bool hasGross = weighed.gross && weighed.gross->value;
        if (run && box && hasGross) {
            if (const auto most = heaviestOf(*box, *run)) {
                const double gross = honeyGrams(*weighed.gross);
                if (gross > *most) {
                    QString says =
                        askHoney("%1 weighs %2, more than such a box full of honey, about %3.")
                            .arg(name, massText(gross, How::Weighed),
                                 massText(*most / heavyAllowance, How::ByEye));
                    if (shownUnits() == Units::Metric && gross / gramsTypedPerPound < *most)
                        says += QLatin1Char(' ') + askHoney("Pounds typed as kilograms?");
                    put(Asked::BoxTooHeavy, says);
                }
            }
        }
        if (hasGross && weighed.wet && weighed.wet->value &&
            honeyGrams(*weighed.wet) > honeyGrams(*weighed.gross) / 2)
            put(Asked::HardlyEmptied,
                askHoney("%1 weighs %2 wet and %3 full: was it spun out?")
                    .arg(name, massText(honeyGrams(*weighed.wet), How::Weighed),
                         massText(honeyGrams(*weighed.gross), How::Weighed)));
    }

    /// What a box may weigh at most, full of honey and a good deal over.
    std::optional<double> heaviestOf(const Box& box, const Extraction& run) const {
        const auto kind = m_file.find(box.kind);
        if (!kind || !kind->takes || !kind->framesNominal) return std::nullopt;
        const auto frame = m_file.find(*kind->takes);
        const auto empty = emptyBoxGramsOf(m_file, *kind, run.yard, run.on);
        const auto full = frame ? fullFrameGramsOf(m_file, *frame, run.yard, run.on) : std::nullopt;
        if (!empty || !full) return std::nullopt;
        return (*empty + *full * static_cast<double>(kind->framesNominal->value())) *
               heavyAllowance;
    }

    void aboutBucket(const Bucket& bucket) {
        const QString mark = fromUtf8(bucket.mark.text());
        const auto kind = m_file.find(bucket.kind);
        const double holds = kind && kind->capacity ? static_cast<double>(kind->capacity->grams())
                                                    : bucketHoldsG(m_file, m_today);
        if (bucket.net && bucket.net->value && honeyGrams(*bucket.net) > holds)
            put(Asked::BucketTooHeavy,
                askHoney(
                    "Bucket %1 with %2: your buckets hold %3 at most. Was the bucket itself on "
                    "the scale, or is it several?")
                    .arg(mark, massText(honeyGrams(*bucket.net), How::Weighed),
                         massText(holds, How::Weighed)));
        aboutWater(askHoney("Bucket %1").arg(mark), bucket.water);
    }

    /// A mark used twice in a run, or a second weighing: what stood there before is said. Who
    /// amends knows it, and a guess by eye is there to be replaced.
    void aboutBucketAgain(const Bucket& bucket) {
        if (!bucket.net || !bucket.net->value) return;
        std::optional<Mass> was;
        auto wasHow = std::optional(bucket.net->how);
        for (const Revised& each : revisedBy(m_file, m_step, "fill-bucket")) {
            if (each.table != Bucket::table || each.id != bucket.id.number) continue;
            if (each.field->key() == "net_g") was = Codec<Mass>::unpack(each.was);
            if (each.field->key() == "net_how") wasHow = Codec<How>::unpack(each.was);
        }
        if (!was || wasHow != How::Weighed) return;
        put(Asked::BucketAgain,
            askHoney(
                "Bucket %1 had %2 before; now %3. If that is another bucket, give it another mark: "
                "take this back first.")
                .arg(fromUtf8(bucket.mark.text()),
                     massText(static_cast<double>(was->grams()), How::Weighed),
                     massText(honeyGrams(*bucket.net), How::Weighed)));
    }

    void aboutWater(const QString& of, const std::optional<WaterContent>& content) {
        if (!content) return;
        const double water = content->percent();
        if (water < 13.0 || water > 21.0)
            put(Asked::WaterUnusual,
                askHoney(
                    "%1 with %2 % water: honey has 13 to 21. Read the scale again; was it the Brix "
                    "one?")
                    .arg(of, QLocale().toString(water, 'f', 1)));
    }

    void aboutRun(const Extraction& run) {
        if (!run.closed) return;
        const auto balance = runBalance(m_file, run.id);
        if (!balance || !balance->outOfBoxesG || *balance->outOfBoxesG <= 0) return;
        const bool byDifference =
            std::any_of(balance->boxes.begin(), balance->boxes.end(),
                        [](const RunBoxLine& box) { return box.byDifference; });
        if (byDifference) return;
        const double out =
            static_cast<double>(balance->buckets.grams()) +
            (balance->cappings ? static_cast<double>(balance->cappings->grams()) : 0.0);
        const double share = constantOr(m_file, "unaccounted_share", {}, m_today, 0.02);
        if (out > *balance->outOfBoxesG * (1.0 + share))
            put(Asked::MoreOutThanIn,
                askHoney(
                    "%1: %2 in buckets and cappings, but only %3 left the boxes. Is a box missing, "
                    "or a weight a slip?")
                    .arg(fromUtf8(run.name.text()), massText(out, How::Weighed),
                         massText(*balance->outOfBoxesG, How::Weighed)));
    }

    const Read& m_file;
    std::int64_t m_step;
    Day m_today;
};

}  // namespace

std::vector<Question> honeyQuestions(const Read& file, const RowChange& row, std::int64_t step,
                                     Day today) {
    HoneyQuestions questions(file, step, today);
    questions.about(row);
    return std::move(questions.list);
}

}  // namespace combwright
