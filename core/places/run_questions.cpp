#include "core/places/run_questions.h"

#include <QCoreApplication>

#include "core/model/honey/extraction.h"
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

}  // namespace

std::vector<Question> runQuestions(const Read& file, const RowChange& row) {
    if (row.table != ExtractionBox::table) return {};
    const auto entry = file.find(Id<ExtractionBox>{row.id});
    if (!entry) return {};
    std::vector<Question> asked = framesAsked(file, *entry);
    // Once: weighing it wet says nothing new of its yard.
    if (row.kind == ChangeKind::Added)
        for (Question& each : yardAsked(file, *entry)) asked.push_back(std::move(each));
    return asked;
}

}  // namespace combwright
