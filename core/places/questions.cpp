#include "core/places/questions.h"

#include <QCoreApplication>
#include <QLocale>
#include <algorithm>
#include <array>
#include <cmath>
#include <optional>
#include <set>

#include "core/model/honey/extraction.h"
#include "core/model/storeroom/dead_out.h"
#include "core/model/storeroom/equipment.h"
#include "core/model/storeroom/review.h"
#include "core/places/box_changes.h"
#include "core/places/freezer_questions.h"
#include "core/places/full_frame.h"
#include "core/places/gate_minder.h"
#include "core/places/health_questions.h"
#include "core/places/held_questions.h"
#include "core/places/line_revisions.h"
#include "core/places/look_questions.h"
#include "core/places/run_balance.h"
#include "core/places/run_questions.h"
#include "core/places/stores_questions.h"
#include "core/storage/queries/constants.h"
#include "core/storage/queries/hive_days.h"
#include "core/storage/queries/holds.h"
#include "core/storage/queries/names.h"
#include "core/storage/queries/revisions.h"
#include "core/storage/queries/yards.h"
#include "core/words/dead_out_words.h"
#include "core/words/figures.h"
#include "core/words/units.h"
#include "core/words/words.h"

namespace combwright {
namespace {

constexpr std::array askedKeys{
    std::pair{Asked::NotComeYet, std::string_view("not_come_yet")},
    std::pair{Asked::MoreFramesThanFit, std::string_view("more_frames_than_fit")},
    std::pair{Asked::BroodJumped, std::string_view("brood_jumped")},
    std::pair{Asked::MoreMitesThanBees, std::string_view("more_mites_than_bees")},
    std::pair{Asked::SampleUnusual, std::string_view("sample_unusual")},
    std::pair{Asked::MuchFed, std::string_view("much_fed")},
    std::pair{Asked::BoxTooHeavy, std::string_view("box_too_heavy")},
    std::pair{Asked::HardlyEmptied, std::string_view("hardly_emptied")},
    std::pair{Asked::BucketAgain, std::string_view("bucket_again")},
    std::pair{Asked::BucketTooHeavy, std::string_view("bucket_too_heavy")},
    std::pair{Asked::WaterUnusual, std::string_view("water_unusual")},
    std::pair{Asked::MarksDisagree, std::string_view("marks_disagree")},
    std::pair{Asked::NobodyLives, std::string_view("nobody_lives")},
    std::pair{Asked::MoreOutThanIn, std::string_view("more_out_than_in")},
    std::pair{Asked::BoxFromNowhere, std::string_view("box_unknown_before")},
    std::pair{Asked::SetOutInOpen, std::string_view("set_out_in_open")},
    std::pair{Asked::HeldCombLivedIn, std::string_view("held_comb_lived_in")},
    std::pair{Asked::TraceContacts, std::string_view("trace_contacts")},
    std::pair{Asked::NameAlike, std::string_view("name_alike")},
    std::pair{Asked::FramesDiffer, std::string_view("frames_differ")},
    std::pair{Asked::ReviewOvertaken, std::string_view("review_overtaken")},
    std::pair{Asked::ReviewedTwice, std::string_view("reviewed_twice")},
    std::pair{Asked::FoundAgain, std::string_view("found_again")},
    std::pair{Asked::MuchScraped, std::string_view("much_scraped")},
    std::pair{Asked::TwoDepths, std::string_view("two_depths")},
    std::pair{Asked::FoundationUsedUp, std::string_view("foundation_used_up")},
    std::pair{Asked::NotColdEnough, std::string_view("not_cold_enough")},
    std::pair{Asked::FreezerOverfull, std::string_view("freezer_overfull")},
    std::pair{Asked::WetIntoFreezer, std::string_view("wet_into_freezer")},
    std::pair{Asked::WetsToNucleus, std::string_view("wets_to_nucleus")},
    std::pair{Asked::DeadOutStillHeld, std::string_view("dead_out_still_held")},
    std::pair{Asked::StayHeld, std::string_view("stay_held")},
    std::pair{Asked::LeftOutHeld, std::string_view("left_out_held")},
    std::pair{Asked::LotsRunTogether, std::string_view("lots_run_together")},
    std::pair{Asked::WetsElsewhere, std::string_view("wets_elsewhere")},
    std::pair{Asked::NoFrames, std::string_view("no_frames")},
    std::pair{Asked::OtherYard, std::string_view("other_yard")},
    std::pair{Asked::SuspectedHoney, std::string_view("suspected_honey")},
    std::pair{Asked::HiveTooHeavy, std::string_view("hive_too_heavy")},
    std::pair{Asked::TareWrong, std::string_view("tare_wrong")},
    std::pair{Asked::SidesDiffer, std::string_view("sides_differ")},
    std::pair{Asked::WeighedAgain, std::string_view("weighed_again")},
    std::pair{Asked::FedUnderSupers, std::string_view("fed_under_supers")},
    std::pair{Asked::FedNobody, std::string_view("fed_nobody")},
    std::pair{Asked::FeedUsedUp, std::string_view("feed_used_up")},
    std::pair{Asked::MedicineExpired, std::string_view("medicine_expired")},
    std::pair{Asked::BeforeBought, std::string_view("before_bought")},
    std::pair{Asked::AlreadyTreated, std::string_view("already_treated")},
    std::pair{Asked::MoreMedicineThanThere, std::string_view("more_medicine_than_there")},
    std::pair{Asked::SupersTreated, std::string_view("supers_treated")},
    std::pair{Asked::SuperTooEarly, std::string_view("super_too_early")},
    std::pair{Asked::SignsToReport, std::string_view("signs_to_report")},
    std::pair{Asked::TreatedHoney, std::string_view("treated_honey")},
    std::pair{Asked::LineReplaced, std::string_view("line_replaced")},
    std::pair{Asked::FoundDead, std::string_view("found_dead")},
    std::pair{Asked::BeesNotSaid, std::string_view("bees_not_said")},
};

constexpr double mostFedG = 25'000;
/// Of one box. Common practice, no source: a box gives tens of grams, a neglected one a few
/// hundred.
constexpr double mostScrapingsG = 1000;
constexpr double mostPropolisG = 500;
/// A box over this many times its full mass is not only a good year.
constexpr double heavyAllowance = 1.25;
constexpr double gramsTypedPerPound = 1000.0 / 453.59237;

QString ask(const char* text) { return QCoreApplication::translate("questions", text); }

double gramsOf(const Known<Mass>& mass) { return static_cast<double>(mass.value->grams()); }

class Questions {
  public:
    Questions(const Read& file, const Change& change, Day today)
        : m_file(file), m_step(change.step), m_today(today) {}

    void about(const RowChange& row) {
        if (row.kind == ChangeKind::Removed) return;
        aboutRow<Yard>(row, &Questions::aboutYard);
        aboutRow<Hive>(row, &Questions::aboutHive);
        aboutRow<Visit>(row, &Questions::aboutVisit);
        aboutRow<Feeding>(row, &Questions::aboutFeeding);
        aboutRow<BoxMove>(row, &Questions::aboutMove);
        aboutRow<BoxLook>(row, &Questions::aboutLook);
        aboutRow<ExtractionBox>(row, &Questions::aboutBox);
        aboutRow<Bucket>(row, &Questions::aboutBucket);
        if (row.kind == ChangeKind::Changed) aboutRow<Bucket>(row, &Questions::aboutBucketAgain);
        aboutRow<Extraction>(row, &Questions::aboutRun);
        aboutRow<Frame>(row, &Questions::aboutFrame);
        aboutRow<Equipment>(row, &Questions::aboutEquipment);
        aboutRow<SetOut>(row, &Questions::aboutSetOut);
        aboutRow<Colony>(row, &Questions::aboutColony);
        aboutRow<FrameCheck>(row, &Questions::aboutCheck);
        for (const Question& each : runQuestions(m_file, row)) put(each.asked, each.says);
        for (const Question& each : lookQuestions(m_file, row)) put(each.asked, each.says);
        for (const Question& each : heldQuestions(m_file, row)) put(each.asked, each.says);
        for (const Question& each : freezerQuestions(m_file, row)) put(each.asked, each.says);
        for (const Question& each : storesQuestions(m_file, row, m_step))
            put(each.asked, each.says);
        for (const Question& each : lineQuestions(m_file, row, m_step)) put(each.asked, each.says);
        for (const Question& each : healthQuestions(m_file, row, m_today))
            put(each.asked, each.says);
        if (row.table != BoxReview::table) return;
        if (const auto review = m_file.find(Id<BoxReview>{row.id}))
            aboutReview(*review, row.kind == ChangeKind::Changed);
    }

    /// What the rows of a step say together.
    void lookOver(const std::vector<RowChange>& rows) {
        for (const RowChange& row : rows) {
            if (row.table == BoxCount::table) m_counted = true;
            // An empty box is counted too, though there is no class of frames to write down.
            if (row.table == BoxReview::table && row.kind == ChangeKind::Added) m_counted = true;
            if (row.table != Frame::table) continue;
            m_framesWorkedOn = true;
            if (row.kind == ChangeKind::Added) ++m_newFrames;
        }
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

    /// A look at the bench that is written down late; what was done since stays.
    void aboutCheck(const FrameCheck& check) {
        if (check.occasion != Occasion::WinterReview || !check.box) return;
        std::optional<Day> since;
        for (const Frame& frame :
             m_file.where<Frame>({is("box", *check.box), isUnknown("retired")}))
            if ((!check.frame || frame.id == *check.frame) && frame.reviewed &&
                *frame.reviewed > check.on)
                since = std::max(since.value_or(*frame.reviewed), *frame.reviewed);
        if (!since) return;
        put(Asked::ReviewOvertaken,
            ask("Frames of %1 were worked on or looked at on %2, after this look. It is kept as it "
                "was written down, and what was found and done since stays.")
                .arg(fromUtf8(nameOf(m_file, Box::table, check.box->number)), dayText(*since)));
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

    void aboutMove(const BoxMove& move) {
        // Only a line of the sheet brings a box into the world without being told of it.
        if (!move.inspection || move.fromPlace) return;
        const auto hive = m_file.find(move.toHive);
        if (!hive) return;
        const auto supers = supersOn(*hive, boxesOn(m_file, hive->id));
        const bool super = std::any_of(supers.begin(), supers.end(),
                                       [&](const Box& box) { return box.id == move.box; });
        put(Asked::BoxFromNowhere,
            (super ? ask("%1: no super was left in the storeroom; it is written down as one "
                         "without a mark.")
                   : ask("%1: no such box was left in the storeroom; it is written down as one "
                         "without a mark."))
                .arg(fromUtf8(hive->mark.text())));
    }

    void aboutLook(const BoxLook& look) {
        const auto box = m_file.find(look.box);
        const auto kind = box ? m_file.find(box->kind) : std::nullopt;
        aboutWater(box && !box->mark.empty() ? fromUtf8(box->mark) : ask("The box"), look.water);
        if (!kind || !kind->framesNominal || !look.frames) return;
        if (*look.frames > *kind->framesNominal)
            put(Asked::MoreFramesThanFit, ask("%1 frames in a box made for %2: it is kept so.")
                                              .arg(look.frames->value())
                                              .arg(kind->framesNominal->value()));
    }

    void aboutBox(const ExtractionBox& weighed) {
        const auto run = m_file.find(weighed.extraction);
        const auto box = m_file.find(weighed.box);
        const QString name = box && !box->mark.empty() ? fromUtf8(box->mark)
                             : weighed.knownAs.empty() ? ask("the box")
                                                       : fromUtf8(weighed.knownAs);
        const bool hasGross = weighed.gross && weighed.gross->value;
        if (run && box && hasGross) {
            if (const auto most = heaviestOf(*box, *run)) {
                const double gross = gramsOf(*weighed.gross);
                if (gross > *most) {
                    QString says =
                        ask("%1 weighs %2, more than such a box full of honey, about %3.")
                            .arg(name, massText(gross, How::Weighed),
                                 massText(*most / heavyAllowance, How::ByEye));
                    if (shownUnits() == Units::Metric && gross / gramsTypedPerPound < *most)
                        says += QLatin1Char(' ') + ask("Pounds typed as kilograms?");
                    put(Asked::BoxTooHeavy, says);
                }
            }
        }
        if (hasGross && weighed.wet && weighed.wet->value &&
            gramsOf(*weighed.wet) > gramsOf(*weighed.gross) / 2)
            put(Asked::HardlyEmptied, ask("%1 weighs %2 wet and %3 full: was it spun out?")
                                          .arg(name, massText(gramsOf(*weighed.wet), How::Weighed),
                                               massText(gramsOf(*weighed.gross), How::Weighed)));
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
        const double holds = bucketHoldsG(m_file, m_today);
        if (bucket.net && bucket.net->value && gramsOf(*bucket.net) > holds)
            put(Asked::BucketTooHeavy,
                ask("Bucket %1 with %2: your buckets hold %3 at most. Was the bucket itself on "
                    "the scale, or is it several?")
                    .arg(mark, massText(gramsOf(*bucket.net), How::Weighed),
                         massText(holds, How::Weighed)));
        aboutWater(ask("Bucket %1").arg(mark), bucket.water);
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
            ask("Bucket %1 had %2 before; now %3. If that is another bucket, give it another mark: "
                "take this back first.")
                .arg(fromUtf8(bucket.mark.text()),
                     massText(static_cast<double>(was->grams()), How::Weighed),
                     massText(gramsOf(*bucket.net), How::Weighed)));
    }

    void aboutWater(const QString& of, const std::optional<WaterContent>& content) {
        if (!content) return;
        const double water = content->percent();
        if (water < 13.0 || water > 21.0)
            put(Asked::WaterUnusual,
                ask("%1 with %2 % water: honey has 13 to 21. Read the scale again; was it the Brix "
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
                ask("%1: %2 in buckets and cappings, but only %3 left the boxes. Is a box missing, "
                    "or a weight a slip?")
                    .arg(fromUtf8(run.name.text()), massText(out, How::Weighed),
                         massText(*balance->outOfBoxesG, How::Weighed)));
    }

    QString nameOfBox(const Box& box) const {
        return fromUtf8(nameOf(m_file, Box::table, box.id.number));
    }

    void aboutReview(const BoxReview& review, bool changed) {
        const auto box = m_file.find(review.box);
        const auto kind = box ? m_file.find(box->kind) : std::nullopt;
        if (!kind || !m_counted) return;
        const QString name = nameOfBox(*box);
        if (review.on > m_today)
            put(Asked::NotComeYet, ask("%1 is written down as looked through on %2, which has not "
                                       "come yet. If the day is a slip, amend it.")
                                       .arg(name, dayText(review.on)));
        if (changed)
            put(Asked::ReviewedTwice,
                ask("%1 was looked through on that day already; this line now stands instead, its "
                    "scrapings too. The first is in the history, and undo brings it back.")
                    .arg(name));
        const auto tooMuch = [](const std::optional<Known<Mass>>& mass, double most) {
            return mass && mass->value && gramsOf(*mass) > most;
        };
        if (tooMuch(review.scrapings, mostScrapingsG))
            put(Asked::MuchScraped,
                ask("%1: %2 of scrapings off one box is much. A slip of the pen?")
                    .arg(name, massText(gramsOf(*review.scrapings), review.scrapings->how)));
        if (tooMuch(review.propolis, mostPropolisG))
            put(Asked::MuchScraped,
                ask("%1: %2 of propolis off one box is much. A slip of the pen?")
                    .arg(name, massText(gramsOf(*review.propolis), review.propolis->how)));
        if (const auto since = overtaken(m_file, box->id, review.on)) {
            const QString says =
                since->what == BoxChange::What::Reviewed
                    ? ask("%1 was looked through again on %2, so this older line is kept as it was "
                          "typed and its frames stay as they were found then.")
                : since->what == BoxChange::What::Counted
                    ? ask("%1 was counted on %2, so this older line is kept as it was typed and "
                          "its frames stay as they were counted then.")
                : since->what == BoxChange::What::FramesMoved
                    ? ask("Frames went into or out of %1 on %2, so this older line is kept as it "
                          "was "
                          "typed and no frame is changed by it. Look it through again.")
                : since->what == BoxChange::What::FramesWorked
                    ? ask("Frames of %1 were worked on or looked at on %2, so this older line is "
                          "kept "
                          "as it was typed and no frame is changed by it. Look it through again.")
                    : ask("%1 was moved on %2, so this older line is kept as it was typed and its "
                          "frames stay as they are. Look it through again when it is back.");
            put(Asked::ReviewOvertaken, says.arg(name, dayText(since->on)));
            return;
        }
        if (kind->framesNominal && review.found > *kind->framesNominal)
            put(Asked::MoreFramesThanFit, ask("%1: %2 frames in a box made for %3: it is kept so.")
                                              .arg(name)
                                              .arg(review.found.value())
                                              .arg(kind->framesNominal->value()));
        aboutDifference(review, name);
    }

    void aboutDifference(const BoxReview& review, const QString& name) {
        if (m_newFrames > 0)
            for (const Frame& frame : m_file.where<Frame>({is("box", review.box)}))
                if (frame.retired && *frame.retired != Retired::Missing) {
                    put(Asked::FoundAgain,
                        ask("%1: a frame more than were left, though one of it was written down as "
                            "%2 on %3. It counts as another frame; if that one was never %2, take "
                            "that step back.")
                            .arg(name, fromUtf8(word(*frame.retired)),
                                 dayText(frame.retiredOn.value_or(review.on))));
                    break;
                }
        if (!review.expected || review.found == *review.expected) return;
        put(Asked::FramesDiffer,
            (review.found < *review.expected
                 ? ask("%1: %2 found, %3 expected. It is kept so; what lacks is missing until it "
                       "turns up in a box.")
                 : ask("%1: %2 found, %3 expected. It is kept so; count again if that surprises "
                       "you."))
                .arg(name)
                .arg(review.found.value())
                .arg(review.expected->value()));
    }

    void aboutFrame(const Frame& frame) {
        if (!frame.box || frame.retired || !m_boxesAsked.insert(frame.box->number).second) return;
        const auto box = m_file.find(*frame.box);
        const auto kind = box ? m_file.find(box->kind) : std::nullopt;
        const auto takes = kind ? m_file.find(kind->takes) : std::nullopt;
        if (!takes) return;
        for (const Frame& each : m_file.where<Frame>({is("box", box->id), isUnknown("retired")})) {
            if (each.kind == takes->id) continue;
            const auto other = m_file.find(each.kind);
            if (!other || other->height == takes->height) continue;
            put(Asked::TwoDepths,
                ask("%1 is made for %2 and holds %3 too. Bees build comb under a short frame, and "
                    "a deep one does not go in.")
                    .arg(nameOfBox(*box), fromUtf8(takes->name.text()),
                         fromUtf8(other->name.text())));
            return;
        }
    }

    void aboutEquipment(const Equipment& equipment) {
        if (equipment.item != EquipmentItem::Foundation || equipment.onHand > Count() ||
            !m_framesWorkedOn)
            return;
        const auto kind = m_file.find(equipment.frameKind);
        put(Asked::FoundationUsedUp,
            ask("No foundation for %1 is left of what was counted. Were there more sheets? Count "
                "them again.")
                .arg(kind ? fromUtf8(kind->name.text()) : ask("these frames")));
    }

    const Read& m_file;
    std::int64_t m_step;
    Day m_today;
    bool m_counted = false;  ///< the step counted a box
    bool m_framesWorkedOn = false;
    int m_newFrames = 0;                  ///< frames nobody knew of before
    std::set<std::int64_t> m_boxesAsked;  ///< whose frames were looked at
};

}  // namespace

std::string_view key(Asked asked) {
    for (const auto& [each, text] : askedKeys)
        if (each == asked) return text;
    return "unknown";
}

std::vector<Question> questionsAfter(const Read& file, const Change& change, Day today) {
    Questions questions(file, change, today);
    questions.lookOver(change.rows);
    for (const RowChange& row : change.rows) questions.about(row);
    return std::move(questions.list);
}

}  // namespace combwright
