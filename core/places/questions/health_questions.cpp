#include "core/places/questions/health_questions.h"

#include <QCoreApplication>
#include <QLocale>
#include <QStringList>
#include <algorithm>

#include "core/model/honey/extraction.h"
#include "core/places/health/treatments.h"
#include "core/storage/journal.h"
#include "core/storage/queries/hive_days.h"
#include "core/storage/queries/names.h"
#include "core/storage/queries/runs.h"
#include "core/storage/queries/yards.h"
#include "core/words/dead_out_words.h"
#include "core/words/words.h"

namespace combwright {
namespace {

QString askHealth(const char* text) { return QCoreApplication::translate("questions", text); }

class HealthQuestions {
  public:
    HealthQuestions(const Read& file, std::int64_t step, Day today)
        : m_file(file), m_step(step), m_today(today) {}

    void about(const RowChange& row) {
        if (row.kind == ChangeKind::Removed) return;
        if (row.kind == ChangeKind::Added) {
            aboutRow<Medicine>(row, &HealthQuestions::aboutBought);
            aboutRow<Treatment>(row, &HealthQuestions::aboutTreatment);
            aboutRow<MedicineDisposal>(row, &HealthQuestions::aboutDisposal);
            aboutRow<Finding>(row, &HealthQuestions::aboutSigns);
            aboutRow<BoxMove>(row, &HealthQuestions::aboutSuper);
            aboutRow<Treatment>(row, &HealthQuestions::aboutLeftOut);
        }
        aboutRow<Treatment>(row, &HealthQuestions::aboutOut);
        aboutRow<ExtractionBox>(row, &HealthQuestions::aboutRunBox);
        aboutRow<Bucket>(row, &HealthQuestions::aboutBucketOf);
        aboutRow<Extraction>(row, &HealthQuestions::aboutLot);
    }

    std::vector<Question> list;

  private:
    template <class Record>
    void aboutRow(const RowChange& row, void (HealthQuestions::*question)(const Record&)) {
        if (row.table != Record::table) return;
        if (const auto record = m_file.find(Id<Record>{row.id})) (this->*question)(*record);
    }

    void put(Asked asked, const QString& says) { list.push_back({asked, says}); }

    QString hiveMark(Id<Hive> hive) const {
        return fromUtf8(nameOf(m_file, Hive::table, hive.number));
    }

    void aboutBought(const Medicine& bought) {
        if (bought.boughtOn && bought.expires && *bought.expires < *bought.boughtOn)
            put(Asked::MedicineExpired,
                askHealth("%1: use until %2, and bought later. Is one of the days a slip?")
                    .arg(fromUtf8(bought.name.text()), dayText(*bought.expires)));
    }

    void aboutRest(const Medicine& medicine) {
        // Of the whole record: what is written down late takes from what came after it.
        const auto left = useOf(m_file, medicine, lastOfAllDays).left();
        if (!left || *left >= 0) return;
        put(Asked::MoreMedicineThanThere,
            askHealth("%1: more is written down than was bought, %2 %3 too much. Is an amount a "
                      "slip, or was there another pack?")
                .arg(fromUtf8(medicine.name.text()), QLocale().toString(-*left, 'g', 6),
                     fromUtf8(medicine.unit)));
    }

    void aboutTreatment(const Treatment& given) {
        const auto medicine = m_file.find(given.medicine);
        const auto hive = m_file.find(given.hive);
        if (!medicine || !hive) return;
        const QString name = fromUtf8(medicine->name.text());
        const QString mark = fromUtf8(hive->mark.text());
        if (given.on > m_today)
            put(Asked::NotComeYet, askHealth("%1 is written down as given on %2, which has not "
                                             "come yet. If the day is a slip, amend it.")
                                       .arg(name, dayText(given.on)));
        if (medicine->boughtOn && given.on < *medicine->boughtOn)
            put(Asked::BeforeBought,
                askHealth("%1 was bought %2, and given %3. Is one of the days a slip?")
                    .arg(name, dayText(*medicine->boughtOn), dayText(given.on)));
        if (medicine->expires && given.on > *medicine->expires)
            put(Asked::MedicineExpired,
                askHealth("%1 was to be used until %2. Your label is the law.")
                    .arg(name, dayText(*medicine->expires)));
        aboutRest(*medicine);
        if (!livedIn(m_file, hive->id, given.on).value_or(true))
            put(Asked::NobodyLives,
                askHealth("%1: no colony lives there by what is written down. Did one move in?")
                    .arg(mark));
        for (const Treatment& each : treatmentsIn(m_file, hive->id, given.on))
            if (each.id != given.id && each.medicine == given.medicine)
                put(Asked::AlreadyTreated,
                    askHealth("%1 has had %2 in since %3. Write down when that came out.")
                        .arg(mark, name, dayText(each.on)));
        aboutSupersOn(given, *medicine, mark);
    }

    void aboutSupersOn(const Treatment& given, const Medicine& medicine, const QString& mark) {
        if (medicine.supers == LabelSupers::MayStay) return;
        const auto supers = supersWhileIn(m_file, given);
        if (supers.empty()) return;
        QStringList marks;
        for (const SuperWhileIn& each : supers)
            marks << fromUtf8(nameOf(m_file, Box::table, each.box.number));
        const QString says =
            medicine.supers == LabelSupers::Off
                ? askHealth(
                      "%1: supers were on (%2), and the label says off. They are held back "
                      "wherever they go: no honey for people until you clear them. Your "
                      "label is the law.")
                : askHealth(
                      "%1: supers were on (%2), and nobody wrote down what the label says of "
                      "them. They are held back wherever they go until you clear them. Read "
                      "your label: it is the law.");
        put(Asked::SupersTreated, says.arg(mark, marks.join(QStringLiteral(", "))));
    }

    /// Who was meant by "all" stands nowhere else.
    void aboutLeftOut(const Treatment& given) {
        const auto entry = Journal(m_file.database()).entry(m_step);
        if (!entry || entry->kind != StepKind::Do || entry->info.action != "treat") return;
        const std::string_view line = entry->info.line;
        constexpr std::string_view key = "\"hives\":\"";
        const std::size_t at = line.find(key);
        const bool all = at == std::string_view::npos ||
                         line.substr(at + key.size()).starts_with("all\"") ||
                         line.substr(at + key.size()).starts_with('"');
        const auto hive = m_file.find(given.hive);
        if (!all || !hive) return;
        const auto yard = asItWas(m_file, *hive, given.on).yard;
        QStringList empty;
        for (const Hive& each : hivesOn(m_file, yard, given.on))
            if (!livedIn(m_file, each.id, given.on).value_or(true))
                empty << fromUtf8(each.mark.text());
        if (!empty.empty())
            put(Asked::LeftUntreated,
                askHealth("Left out: %1. No colony lives there that day by what is written down. "
                          "Where one does, treat it by its name.")
                    .arg(empty.join(QStringLiteral(", "))));
    }

    void aboutOut(const Treatment& treatment) {
        const auto medicine = m_file.find(treatment.medicine);
        if (!medicine || !treatment.out || !medicine->inHiveFrom) return;
        const auto in = static_cast<int>((*treatment.out - treatment.on).count());
        if (in >= medicine->inHiveFrom->value()) return;
        put(Asked::OutTooEarly,
            askHealth("%1: %2 was in for %3 of %4 days. Out too early it leaves mites alive that "
                      "bear it. Is the day a slip? Your label is the law.")
                .arg(hiveMark(treatment.hive), fromUtf8(medicine->name.text()))
                .arg(in)
                .arg(medicine->inHiveFrom->value()));
    }

    void aboutDisposal(const MedicineDisposal& disposal) {
        if (const auto medicine = m_file.find(disposal.medicine)) aboutRest(*medicine);
    }

    /// Signs that are to be reported, whatever they turn out to be.
    void aboutSigns(const Finding& finding) {
        const bool grave = finding.signs.ropes.value_or(false) ||
                           finding.signs.scaleSticks.value_or(false) ||
                           finding.signs.glueSmell.value_or(false);
        if (!grave || finding.what == Pest::BroodDiseaseSuspected) return;
        put(Asked::SignsToReport,
            hiveMark(finding.hive) + QStringLiteral(": ") + quarantineCaution() + QLatin1Char(' ') +
                askHealth("Brood that ropes, scale that sticks or a smell of glue is for the "
                          "inspector to judge: write it down as brood disease suspected."));
    }

    /// A super came onto a hive that has a medicine in, or not long enough out.
    void aboutSuper(const BoxMove& move) {
        if (!move.toHive || move.fromHive == move.toHive || move.toPlace != BoxPlace::OnHive)
            return;
        if (wentWithColony(m_file, move)) return;
        const auto back = supersBackOf(m_file, *move.toHive, move.on);
        const auto hive = m_file.find(*move.toHive);
        if (!back || !hive) return;
        Standing standing = standingOn(m_file, *hive, move.on);
        Hive then = *hive;
        then.excluderAbove = standing.excluderAbove;
        const auto supers = supersOn(then, standing.boxes);
        if (std::none_of(supers.begin(), supers.end(),
                         [&](const Box& box) { return box.id == move.box; }))
            return;
        const QString mark = fromUtf8(hive->mark.text());
        const QString box = fromUtf8(nameOf(m_file, Box::table, move.box.number));
        const QString medicine = fromUtf8(back->line.medicine.name.text());
        if (isIn(back->line.treatment, move.on))
            put(Asked::SuperTooEarly,
                askHealth("%1 went onto %2, where %3 is in since %4. Take it off, or hold it back: "
                          "its honey is not for people. Your label is the law.")
                    .arg(box, mark, medicine, dayText(back->line.treatment.on)));
        else if (back->from)
            put(Asked::SuperTooEarly,
                askHealth("%1 went onto %2 before %3, the first day after %4. Take it off, or hold "
                          "it back. Your label is the law.")
                    .arg(box, mark, dayText(*back->from), medicine));
        else
            put(Asked::SuperTooEarly,
                askHealth("%1 went onto %2, where %3 came out %4, and nobody wrote down how long "
                          "to wait. Read your label: it is the law.")
                    .arg(box, mark, medicine, dayText(*back->line.treatment.out)));
    }

    void aboutHoneyIn(Id<Extraction> id) {
        const auto run = m_file.find(id);
        const auto treated = treatedInRun(m_file, id);
        if (!run || treated.empty()) return;
        QStringList boxes;
        for (const TreatedBox& each : treated) {
            QString text = fromUtf8(each.name);
            if (each.line)
                text += QStringLiteral(" (%1, %2)")
                            .arg(fromUtf8(each.line->medicine.name.text()),
                                 fromUtf8(each.line->hive.mark.text()));
            if (!boxes.contains(text)) boxes << text;
        }
        put(Asked::TreatedHoney,
            askHealth("%1: a box in it was on a hive while a medicine was in: %2. Keep its honey "
                      "apart: none of this lot is for people until you clear the box, on what "
                      "grounds. Your label is the law.")
                .arg(fromUtf8(run->name.text()), boxes.join(QStringLiteral(", "))));
    }
    void aboutRunBox(const ExtractionBox& box) { aboutHoneyIn(box.extraction); }
    void aboutBucketOf(const Bucket& bucket) { aboutHoneyIn(bucket.extraction); }
    void aboutLot(const Extraction& run) { aboutHoneyIn(run.id); }

    const Read& m_file;
    std::int64_t m_step;
    Day m_today;
};

}  // namespace

std::vector<Question> healthQuestions(const Read& file, const RowChange& row, std::int64_t step,
                                      Day today) {
    HealthQuestions questions(file, step, today);
    questions.about(row);
    return std::move(questions.list);
}

}  // namespace combwright
