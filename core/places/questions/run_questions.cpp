#include "core/places/questions/run_questions.h"

#include <QCoreApplication>

#include "core/model/honey/extraction.h"
#include "core/places/honey_room/gate_minder.h"
#include "core/storage/queries/names.h"
#include "core/storage/queries/runs.h"
#include "core/words/words.h"

namespace combwright {
namespace {

QString askRun(const char* text) { return QCoreApplication::translate("questions", text); }

std::vector<Question> framesAsked(const Read& file, const ExtractionBox& entry) {
    if (!entry.frames) return {};
    const QString name = fromUtf8(calledInRun(file, entry));
    const std::int64_t frames = entry.frames->value();
    if (frames == 0)
        return {{Asked::NoFrames,
                 askRun("%1 with no frame at all: then nothing of it is spun. A slip of the pen?")
                     .arg(name)}};
    const auto box = file.find(entry.box);
    const auto kind = box ? file.find(box->kind) : std::nullopt;
    if (!kind || !kind->framesNominal || *entry.frames <= *kind->framesNominal) return {};
    return {{Asked::MoreFramesThanFit, askRun("%1: %2 frames in a box made for %3: it is kept so.")
                                           .arg(name)
                                           .arg(frames)
                                           .arg(kind->framesNominal->value())}};
}

std::vector<Question> yardAsked(const Read& file, const ExtractionBox& entry) {
    const auto run = file.find(entry.extraction);
    const auto hive = file.find(entry.hive);
    if (!run || !run->yard || !hive || hive->yard == *run->yard) return {};
    return {{Asked::OtherYard,
             askRun("%1 is of %2 (%3), and %4 is the lot of %5. Kept so, the lot is of both yards.")
                 .arg(fromUtf8(calledInRun(file, entry)), fromUtf8(hive->mark.text()),
                      fromUtf8(nameOf(file, Yard::table, hive->yard.number)),
                      fromUtf8(run->name.text()),
                      fromUtf8(nameOf(file, Yard::table, run->yard->number)))}};
}

/// Two lots that met in the drum are one lot from then on, whatever the labels say.
std::vector<Question> loadAsked(const Read& file, const RowChange& row) {
    if (row.kind != ChangeKind::Added) return {};
    const auto load = file.find(Id<SpinLoad>{row.id});
    const auto before = load ? lotInDrumBefore(file, *load) : std::nullopt;
    const auto other = file.find(before);
    const auto run = load ? file.find(load->extraction) : std::nullopt;
    if (!other || !run) return {};
    return {
        {Asked::LotsRunTogether,
         askRun(
             "%1 was spun behind %2, and nobody said that drum, gate and strainer were run empty "
             "between. If they were, say so at the gate of %2; else both are one lot from here.")
             .arg(fromUtf8(run->name.text()), fromUtf8(other->name.text()))}};
}

}  // namespace

std::vector<Question> runQuestions(const Read& file, const RowChange& row) {
    if (row.table == SpinLoad::table) return loadAsked(file, row);
    if (row.table != ExtractionBox::table) return {};
    const auto entry = file.find(Id<ExtractionBox>{row.id});
    if (!entry) return {};
    std::vector<Question> asked = framesAsked(file, *entry);
    // Once: weighing it wet says nothing new of its yard.
    if (row.kind == ChangeKind::Added)
        for (Question& each : yardAsked(file, *entry)) asked.push_back(std::move(each));
    return asked;
}

std::optional<Question> lotChangeQuestion(const Read& file, Id<Extraction> next, Day on,
                                          const std::optional<Id<Equipment>>& machine) {
    const auto other = file.find(lotInDrumFor(file, next, on, machine));
    const auto run = file.find(next);
    if (!other || !run) return std::nullopt;
    return Question{
        Asked::LotsRunTogether,
        askRun("The drum still holds honey of %1: run drum, gate and strainer empty before a load "
               "of %2 is begun, and say so at the gate. Else both are one lot from then on.")
            .arg(fromUtf8(other->name.text()), fromUtf8(run->name.text()))};
}

}  // namespace combwright
