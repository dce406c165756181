#include "core/places/questions/held_questions.h"

#include <QCoreApplication>
#include <QStringList>
#include <algorithm>

#include "core/model/honey/extraction.h"
#include "core/model/storeroom/dead_out.h"
#include "core/model/storeroom/equipment.h"
#include "core/model/storeroom/review.h"
#include "core/places/health/contact_trace.h"
#include "core/places/health/dead_outs.h"
#include "core/places/storeroom/shelf_comb.h"
#include "core/places/yard/box_changes.h"
#include "core/storage/queries/holds.h"
#include "core/storage/queries/names.h"
#include "core/storage/queries/runs.h"
#include "core/storage/queries/stays.h"
#include "core/words/dead_out_words.h"
#include "core/words/words.h"

namespace combwright {
namespace {

QString askHeld(const char* text) { return QCoreApplication::translate("questions", text); }

class HeldQuestions {
  public:
    explicit HeldQuestions(const Read& file) : m_file(file) {}

    void about(const RowChange& row) {
        aboutRow<Hold>(row, &HeldQuestions::aboutHold);
        aboutRow<Hold>(row, &HeldQuestions::aboutHeldHoney);
        aboutRow<Bucket>(row, &HeldQuestions::aboutBucket);
        aboutRow<Extraction>(row, &HeldQuestions::aboutRun);
        aboutRow<ExtractionBox>(row, &HeldQuestions::aboutRunBox);
        aboutRow<DeadOut>(row, &HeldQuestions::aboutDeadOut);
        aboutRow<BoxReview>(row, &HeldQuestions::aboutStillHeld);
        aboutRow<FrameCheck>(row, &HeldQuestions::aboutCheck);
        aboutRow<FreezerLoad>(row, &HeldQuestions::aboutLeftOut);
    }

    std::vector<Question> list;

  private:
    template <class Record>
    void aboutRow(const RowChange& row, void (HeldQuestions::*question)(const Record&)) {
        if (row.table != Record::table) return;
        if (const auto record = m_file.find(Id<Record>{row.id})) (this->*question)(*record);
    }

    void put(Asked asked, const QString& says) { list.push_back({asked, says}); }

    QString nameOfBox(const Box& box) const {
        return fromUtf8(nameOf(m_file, Box::table, box.id.number));
    }

    void aboutHold(const Hold& hold) {
        if (hold.why != HoldWhy::SuspectedDisease || hold.lifted) return;
        if (hold.box) aboutHeldBox(hold);
        const auto colony = m_file.find(hold.colony);
        const auto hive = colony ? m_file.find(colony->hive) : std::nullopt;
        if (!hive) return;
        const auto trace = contactTrace(m_file, hive->id, hold.since);
        const bool open = trace && !trace->allHeld();
        put(Asked::TraceContacts,
            fromUtf8(hive->mark.text()) + QStringLiteral(": ") + quarantineCaution() +
                QLatin1Char(' ') +
                (open ? askHeld("List the contacts, and hold them back with hold-contacts.")
                      : askHeld("List the contacts.")));
    }

    /// Boxes of a run that disease is suspected on by now, or on the hive that filled them, and
    /// whose honey is out of the comb. Of holds standing on any day since the run.
    QStringList suspectedIn(Id<Extraction> run, const HeldThings& held, Day on) const {
        QStringList boxes;
        const auto went = framesOfBoxes(m_file, run);
        for (const ExtractionBox& box : m_file.where<ExtractionBox>({is("extraction", run)})) {
            const auto found = went.find(box.id.number);
            const bool spun = found != went.end() && found->second.spun > 0;
            if (!spun && !(box.wet && box.wet->value)) continue;
            const auto quarantined = box.box && held.quarantine(*box.box);
            if (quarantined || (box.hive && quarantineOn(m_file, held, *box.hive, on)))
                boxes << fromUtf8(calledInRun(m_file, box));
        }
        return boxes;
    }

    void aboutHoneyOf(Id<Extraction> id, Day on) {
        const auto run = m_file.find(id);
        if (!run || !anythingApart(m_file, on)) return;
        const QStringList boxes = suspectedIn(id, heldThings(m_file, on), on);
        if (boxes.isEmpty()) return;
        put(Asked::SuspectedHoney,
            askHeld("%1: honey of a suspected hive is in this run (%2). Hold its buckets, cappings "
                    "and wet combs back: no honey of it goes to bees or to another keeper. Ask "
                    "your bee inspector before it is sold.")
                .arg(fromUtf8(run->name.text()), boxes.join(QStringLiteral(", "))));
    }

    /// The newest hold that still stands decides; a run of last year is not asked about anew.
    Day heldOn(Day from) const {
        for (const Hold& hold : m_file.all<Hold>())
            if (quarantines(hold) && !hold.lifted) from = std::max(from, hold.since);
        return from;
    }

    void aboutHeldHoney(const Hold& hold) {
        if (!quarantines(hold) || hold.lifted) return;
        const Day on = heldOn(hold.since);
        for (const Extraction& run : m_file.all<Extraction>())
            if (run.on + days(366) > hold.since && suspects(run, hold)) aboutHoneyOf(run.id, on);
    }

    /// Whether the hold is on a box of the run, or on the colony of one.
    bool suspects(const Extraction& run, const Hold& hold) const {
        const auto colony = m_file.find(hold.colony);
        for (const ExtractionBox& box : m_file.where<ExtractionBox>({is("extraction", run.id)}))
            if ((hold.box && box.box == hold.box) || (colony && box.hive == colony->hive))
                return true;
        return false;
    }

    void aboutBucket(const Bucket& bucket) {
        if (const auto run = m_file.find(bucket.extraction)) aboutHoneyOf(run->id, heldOn(run->on));
    }
    void aboutRun(const Extraction& run) { aboutHoneyOf(run.id, heldOn(run.on)); }
    void aboutRunBox(const ExtractionBox& box) {
        if (const auto run = m_file.find(box.extraction)) aboutHoneyOf(run->id, heldOn(run->on));
    }

    /// Where it stands on a hive that is suspected too, that is what is said.
    void aboutHeldBox(const Hold& hold) {
        const auto box = m_file.find(*hold.box);
        if (!box) return;
        if (const auto hive = hiveUnder(m_file, box->id, hold.since))
            if (const auto colony = lastColonyIn(m_file, *hive, hold.since))
                for (const Hold& each : m_file.where<Hold>({is("colony", colony->id)}))
                    if (each.why == HoldWhy::SuspectedDisease && standsOn(each, hold.since)) return;
        put(Asked::TraceContacts,
            nameOfBox(*box) + QStringLiteral(": ") + quarantineCaution() + QLatin1Char(' ') +
                askHeld("List the contacts: every hive it stood on, and what was near it."));
    }

    void aboutDeadOut(const DeadOut& said) {
        const auto card = deadOutCard(m_file, said.colony, said.on);
        if (!card || !card->unanswered()) return;
        QStringList lacks;
        for (const std::string_view field : card->stillToAnswer)
            lacks << (field == "ropy"    ? askHeld("whether dead brood ropes")
                      : field == "scale" ? askHeld("whether there is scale")
                      : field == "cause" ? askHeld("what you put it down to")
                                         : askHeld("who looked"));
        QString all = lacks.isEmpty() ? QString() : lacks.takeLast();
        if (!lacks.isEmpty()) all = lacks.join(QStringLiteral(", ")) + askHeld(", and ") + all;
        put(Asked::DeadOutStillHeld,
            all.isEmpty()
                ? askHeld("%1: still held: what was seen does not rule foulbrood out.")
                      .arg(fromUtf8(card->hive.mark.text()))
                : askHeld("%1: still held: say %2.").arg(fromUtf8(card->hive.mark.text()), all));
    }

    void stayHeld(const Box& box, const std::vector<Frame>& frames) {
        const bool foulbrood = std::any_of(frames.begin(), frames.end(), [](const Frame& frame) {
            return frame.faults.find('Q') != std::string::npos;
        });
        const QString says = frames.size() == 1
                                 ? askHeld("1 frame of %1 stays held (%2). ").arg(nameOfBox(box))
                                 : askHeld("%1 frames of %2 stay held (%3). ")
                                       .arg(static_cast<int>(frames.size()))
                                       .arg(nameOfBox(box));
        put(Asked::StayHeld, says.arg(fromUtf8(heldByVerdict(frames.front()))) +
                                 (foulbrood ? askHeld("Suspected disease is never overruled.")
                                            : askHeld("Release them with a reason: a note.")));
    }

    /// Frames held by their verdict that the line would have released.
    void aboutStillHeld(const BoxReview& review) {
        const auto box = m_file.find(review.box);
        if (!box) return;
        auto held = heldByVerdict(m_file, box->id);
        std::erase_if(held, [&](const Frame& frame) { return frame.reviewed != review.on; });
        std::size_t said = 0;
        for (const BoxCount& count : m_file.where<BoxCount>(
                 {is("box", box->id), is("on_day", review.on),
                  is("occasion", Occasion::WinterReview), is("verdict", Verdict::Hold)}))
            said += static_cast<std::size_t>(count.frames.value());
        if (held.size() <= said || overtaken(m_file, box->id, review.on)) return;
        held.resize(held.size() - said);
        stayHeld(*box, held);
    }

    void aboutCheck(const FrameCheck& check) {
        const auto box = m_file.find(check.box);
        if (!box || check.occasion != Occasion::WinterReview || !check.verdict ||
            check.verdict == Verdict::Hold)
            return;
        std::vector<Frame> stay;
        std::int64_t free = 0;
        for (const Frame& frame : m_file.where<Frame>({is("box", box->id), isUnknown("retired")})) {
            const bool meant = check.frame ? frame.id == *check.frame
                                           : !frame.position && (check.faults.empty() ||
                                                                 frame.faults == check.faults);
            if (!meant) continue;
            if (frame.verdict == Verdict::Hold && frame.reviewed == check.on)
                stay.push_back(frame);
            else
                ++free;
        }
        // Of so many the free ones are taken first.
        const auto most =
            check.howMany ? std::max<std::int64_t>(check.howMany->value() - free, 0) : 1;
        if (static_cast<std::int64_t>(stay.size()) > most)
            stay.resize(static_cast<std::size_t>(most));
        if (!stay.empty()) stayHeld(*box, stay);
    }

    /// All comb of a box went into the freezer but what is held.
    void aboutLeftOut(const FreezerLoad& load) {
        const auto round = m_file.find(load.round);
        if (!round || round->out || load.stale || !load.box || !load.faults.empty()) return;
        const ShelfBox box = shelfBox(m_file, *load.box, round->in);
        bool heldInside = false;
        for (const ShelfFrame& each : box.frames)
            if (each.load == load.id && each.held) heldInside = true;
        const auto rest = framesMeant(box.frames, std::nullopt, {});
        const bool allIn = std::all_of(rest.begin(), rest.end(),
                                       [&](std::size_t at) { return box.frames[at].held; });
        const auto held =
            std::count_if(box.frames.begin(), box.frames.end(),
                          [](const ShelfFrame& each) { return each.held && !each.load; });
        if (heldInside || !allIn || held == 0) return;
        put(Asked::LeftOutHeld,
            (held == 1 ? askHeld("%1: %2 frame was left out because it is held.")
                       : askHeld("%1: %2 frames were left out because they are held."))
                .arg(fromUtf8(box.name))
                .arg(static_cast<int>(held)));
    }

    const Read& m_file;
};

}  // namespace

std::vector<Question> heldQuestions(const Read& file, const RowChange& row) {
    HeldQuestions questions(file);
    questions.about(row);
    return std::move(questions.list);
}

}  // namespace combwright
