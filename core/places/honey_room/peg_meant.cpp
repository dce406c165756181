#include "core/places/honey_room/peg_meant.h"

#include <QCoreApplication>
#include <algorithm>

#include "core/places/pull/full_frame.h"
#include "core/storage/queries/pegs.h"
#include "core/storage/queries/runs.h"
#include "core/words/words.h"

namespace combwright {
namespace {

bool isLoose(const ExtractionBox& entry) {
    return !entry.box && !entry.hive && !pegOfTag(entry.knownAs);
}

PadBox padBoxOf(const Read& file, const ExtractionBox& entry) {
    PadBox box;
    box.mark = fromUtf8(calledInRun(file, entry));
    if (entry.gross) box.gross = entry.gross->value;
    if (entry.wet) box.wet = entry.wet->value;
    box.spun = framesSpun(file, entry.extraction)[entry.id.number] > 0;
    box.unspun = unspunOf(file, entry);
    return box;
}

/// Of a box of that kind without honey.
std::optional<Mass> emptyMass(const Read& file, const Box& box, Day on) {
    const auto kind = file.find(box.kind);
    const auto grams = kind ? emptyBoxGramsOf(file, *kind, std::nullopt, on) : std::nullopt;
    return grams ? std::optional(Mass::roundedGrams(*grams)) : std::nullopt;
}

/// The newest entry of the box on the peg since it was clipped.
std::optional<ExtractionBox> entryOfPeg(const Read& file, const Peg& peg) {
    std::optional<ExtractionBox> found;
    for (const Extraction& run : file.all<Extraction>()) {
        if (run.on < peg.on && run.closed) continue;
        for (ExtractionBox& entry : file.where<ExtractionBox>({is("extraction", run.id)})) {
            const bool same = peg.box ? entry.box == peg.box
                                      : !entry.box && entry.knownAs == pegTag(file, peg, run.on);
            if (same) found = std::move(entry);
        }
    }
    return found;
}

}  // namespace

std::int64_t unspunOf(const Read& file, const ExtractionBox& entry) {
    if (!entry.frames) return 0;
    if (!file.first<SpinLoad>({is("extraction", entry.extraction)})) {
        // Where no loads are kept it is asked about the first wet box and then no more.
        const auto boxes = file.where<ExtractionBox>({is("extraction", entry.extraction)});
        if (std::any_of(boxes.begin(), boxes.end(),
                        [](const ExtractionBox& other) { return other.wet && other.wet->value; }))
            return 0;
    }
    auto went = framesOfBoxes(file, entry.extraction);
    return went[entry.id.number].left(entry.frames->value());
}

std::optional<PegMeant> pegMeant(const Read& file, int number, Day on) {
    const auto peg = number > 0 ? pegOn(file, Count(number), on) : std::nullopt;
    if (!peg) return std::nullopt;
    PegMeant meant;
    auto hive = peg->hive;
    if (!hive && peg->box) hive = hiveThatFilled(file, *peg->box, on);
    if (const auto of = file.find(hive)) meant.yard = of->yard;
    if (const auto entry = entryOfPeg(file, *peg)) {
        meant.box = padBoxOf(file, *entry);
        meant.entry = entry->id;
        meant.run = entry->extraction;
    } else {
        const auto box = file.find(peg->box);
        meant.box.mark =
            box && !box->mark.empty() ? fromUtf8(box->mark) : fromUtf8(pegTag(file, *peg, peg->on));
        if (meant.yard) meant.run = openRunOf(file, *meant.yard);
    }
    meant.box.peg = number;
    const auto box = file.find(peg->box);
    meant.box.known = box && !box->mark.empty();
    if (box) meant.box.empty = emptyMass(file, *box, on);
    return meant;
}

std::optional<PadBox> looseBox(const Read& file, Id<Extraction> run) {
    std::optional<PadBox> found;
    for (const ExtractionBox& entry : file.where<ExtractionBox>({is("extraction", run)})) {
        if (!isLoose(entry) || !entry.gross || !entry.gross->value) continue;
        if (entry.wet && entry.wet->value) continue;
        const PadBox box = padBoxOf(file, entry);
        if (!found || (box.spun && !found->spun)) found = box;
    }
    return found;
}

QString nextLooseName(const Read& file, std::optional<Id<Extraction>> run) {
    const QString name = QCoreApplication::translate("peg_meant", "no peg");
    if (!run) return name;
    const auto entries = file.where<ExtractionBox>({is("extraction", *run)});
    for (int n = 1;; ++n) {
        const QString each = n == 1 ? name : QStringLiteral("%1 %2").arg(name).arg(n);
        const bool taken =
            std::any_of(entries.begin(), entries.end(), [&](const ExtractionBox& entry) {
                return !entry.box && fromUtf8(entry.knownAs) == each;
            });
        if (!taken) return each;
    }
}

bool pegsInUse(const Read& file) { return file.first<Peg>({}).has_value(); }

std::optional<Id<Extraction>> openRunOf(const Read& file, Id<Yard> yard) {
    std::optional<Id<Extraction>> found;
    for (const Extraction& run : file.where<Extraction>({isUnknown("closed")}))
        if (run.yard == yard) found = run.id;
    return found;
}

}  // namespace combwright
