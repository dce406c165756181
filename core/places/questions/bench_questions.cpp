#include "core/places/questions/bench_questions.h"

#include <QCoreApplication>
#include <algorithm>

#include "core/places/yard/box_changes.h"
#include "core/storage/queries/names.h"
#include "core/words/figures.h"
#include "core/words/kind_words.h"
#include "core/words/words.h"

namespace combwright {
namespace {

/// Of one box. Common practice, no source: a box gives tens of grams, a neglected one a few
/// hundred.
constexpr double mostScrapingsG = 1000;
constexpr double mostPropolisG = 500;

QString askBench(const char* text) { return QCoreApplication::translate("questions", text); }

double benchGrams(const Known<Mass>& mass) { return static_cast<double>(mass.value->grams()); }

QString overtakenSays(BoxChange::What what) {
    switch (what) {
        case BoxChange::What::Reviewed:
            return askBench(
                "%1 was looked through again on %2, so this older line is kept as it was typed and "
                "its frames stay as they were found then.");
        case BoxChange::What::Counted:
            return askBench(
                "%1 was counted on %2, so this older line is kept as it was typed and its frames "
                "stay as they were counted then.");
        case BoxChange::What::FramesMoved:
            return askBench(
                "Frames went into or out of %1 on %2, so this older line is kept as it was typed "
                "and no frame is changed by it. Look it through again.");
        case BoxChange::What::FramesWorked:
            return askBench(
                "Frames of %1 were worked on or looked at on %2, so this older line is kept as it "
                "was typed and no frame is changed by it. Look it through again.");
        case BoxChange::What::Moved:
        case BoxChange::What::Looked:
            return askBench(
                "%1 was moved on %2, so this older line is kept as it was typed and its frames "
                "stay as they are. Look it through again when it is back.");
    }
    return {};
}

}  // namespace

BenchQuestions::BenchQuestions(const Read& file, const std::vector<RowChange>& step, Day today)
    : m_file(file), m_today(today) {
    for (const RowChange& row : step) {
        if (row.table == BoxCount::table) m_counted = true;
        // An empty box is counted too, though there is no class of frames to write down.
        if (row.table == BoxReview::table && row.kind == ChangeKind::Added) m_counted = true;
        if (row.table != Frame::table) continue;
        m_framesWorkedOn = true;
        if (row.kind == ChangeKind::Added) ++m_newFrames;
    }
}

std::vector<Question> BenchQuestions::about(const RowChange& row) {
    m_list.clear();
    aboutRow<Frame>(row, &BenchQuestions::aboutFrame);
    aboutRow<Equipment>(row, &BenchQuestions::aboutEquipment);
    aboutRow<FrameCheck>(row, &BenchQuestions::aboutCheck);
    if (row.table == BoxReview::table)
        if (const auto review = m_file.find(Id<BoxReview>{row.id}))
            aboutReview(*review, row.kind == ChangeKind::Changed);
    return m_list;
}

template <class Record>
void BenchQuestions::aboutRow(const RowChange& row,
                              void (BenchQuestions::*question)(const Record&)) {
    if (row.table != Record::table) return;
    if (const auto record = m_file.find(Id<Record>{row.id})) (this->*question)(*record);
}

void BenchQuestions::put(Asked asked, const QString& says) { m_list.push_back({asked, says}); }

QString BenchQuestions::nameOfBox(Id<Box> box) const {
    return fromUtf8(nameOf(m_file, Box::table, box.number));
}

void BenchQuestions::aboutReview(const BoxReview& review, bool changed) {
    const auto box = m_file.find(review.box);
    const auto kind = box ? m_file.find(box->kind) : std::nullopt;
    if (!kind || !m_counted) return;
    const QString name = nameOfBox(box->id);
    if (review.on > m_today)
        put(Asked::NotComeYet, askBench("%1 is written down as looked through on %2, which has not "
                                        "come yet. If the day is a slip, amend it.")
                                   .arg(name, dayText(review.on)));
    if (changed)
        put(Asked::ReviewedTwice,
            askBench("%1 was looked through on that day already; this line now stands instead, its "
                     "scrapings too. The first is in the history, and undo brings it back.")
                .arg(name));
    aboutScrapings(review, name);
    if (const auto since = overtaken(m_file, box->id, review.on)) {
        put(Asked::ReviewOvertaken, overtakenSays(since->what).arg(name, dayText(since->on)));
        return;
    }
    if (kind->framesNominal && review.found > *kind->framesNominal)
        put(Asked::MoreFramesThanFit, askBench("%1: %2 frames in a box made for %3: it is kept so.")
                                          .arg(name)
                                          .arg(review.found.value())
                                          .arg(kind->framesNominal->value()));
    aboutDifference(review, name);
}

void BenchQuestions::aboutScrapings(const BoxReview& review, const QString& name) {
    const auto tooMuch = [](const std::optional<Known<Mass>>& mass, double most) {
        return mass && mass->value && benchGrams(*mass) > most;
    };
    if (tooMuch(review.scrapings, mostScrapingsG))
        put(Asked::MuchScraped,
            askBench("%1: %2 of scrapings off one box is much. A slip of the pen?")
                .arg(name, massText(benchGrams(*review.scrapings), review.scrapings->how)));
    if (tooMuch(review.propolis, mostPropolisG))
        put(Asked::MuchScraped,
            askBench("%1: %2 of propolis off one box is much. A slip of the pen?")
                .arg(name, massText(benchGrams(*review.propolis), review.propolis->how)));
}

void BenchQuestions::aboutDifference(const BoxReview& review, const QString& name) {
    if (m_newFrames > 0)
        for (const Frame& frame : m_file.where<Frame>({is("box", review.box)}))
            if (frame.retired && *frame.retired != Retired::Missing) {
                put(Asked::FoundAgain,
                    askBench(
                        "%1: a frame more than were left, though one of it was written down as "
                        "%2 on %3. It counts as another frame; if that one was never %2, take "
                        "that step back.")
                        .arg(name, choiceText(word(*frame.retired)),
                             dayText(frame.retiredOn.value_or(review.on))));
                break;
            }
    if (!review.expected || review.found == *review.expected) return;
    put(Asked::FramesDiffer,
        (review.found < *review.expected
             ? askBench("%1: %2 found, %3 expected. It is kept so; what lacks is missing until it "
                        "turns up in a box.")
             : askBench("%1: %2 found, %3 expected. It is kept so; count again if that surprises "
                        "you."))
            .arg(name)
            .arg(review.found.value())
            .arg(review.expected->value()));
}

void BenchQuestions::aboutFrame(const Frame& frame) {
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
            askBench("%1 is made for %2 and holds %3 too. Bees build comb under a short frame, and "
                     "a deep one does not go in.")
                .arg(nameOfBox(box->id), kindText(takes->name.text()),
                     kindText(other->name.text())));
        return;
    }
}

void BenchQuestions::aboutEquipment(const Equipment& equipment) {
    if (equipment.item != EquipmentItem::Foundation || equipment.onHand > Count() ||
        !m_framesWorkedOn)
        return;
    const auto kind = m_file.find(equipment.frameKind);
    put(Asked::FoundationUsedUp,
        askBench("No foundation for %1 is left of what was counted. Were there more sheets? Count "
                 "them again.")
            .arg(kind ? kindText(kind->name.text()) : askBench("these frames")));
}

/// A look at the bench that is written down late; what was done since stays.
void BenchQuestions::aboutCheck(const FrameCheck& check) {
    if (check.occasion != Occasion::WinterReview || !check.box) return;
    std::optional<Day> since;
    for (const Frame& frame : m_file.where<Frame>({is("box", *check.box), isUnknown("retired")}))
        if ((!check.frame || frame.id == *check.frame) && frame.reviewed &&
            *frame.reviewed > check.on)
            since = std::max(since.value_or(*frame.reviewed), *frame.reviewed);
    if (!since) return;
    put(Asked::ReviewOvertaken,
        askBench(
            "Frames of %1 were worked on or looked at on %2, after this look. It is kept as it "
            "was written down, and what was found and done since stays.")
            .arg(nameOfBox(*check.box), dayText(*since)));
}

}  // namespace combwright
