#include "core/places/explain/explain_marks.h"

#include <QCoreApplication>
#include <QLocale>
#include <cmath>

#include "core/places/health/mites.h"
#include "core/places/stores/hive_scale.h"
#include "core/storage/queries/hive_days.h"
#include "core/words/figures.h"
#include "core/words/words.h"

namespace combwright {
namespace {

QString markWhy(const char* text) { return QCoreApplication::translate("explain_marks", text); }

QString hiveThen(const Read& file, Id<Hive> hive, Day on) {
    return fromUtf8(calledOn(file, hive, on));
}

void explainCount(const Read& file, const Finding& finding, std::vector<Explained>& all) {
    const MiteSample sample = sampleOf(file, finding);
    if (!sample.rate) return;
    all.push_back(explainSample(hiveThen(file, finding.hive, finding.on), sample));
}

void explainLifted(const Read& file, const HiveWeighing& weighing, std::vector<Explained>& all) {
    const auto lifted = liftedOf(weighing);
    if (!lifted) return;
    const double gross = lifted->leftG + lifted->rightG;
    Explained why;
    why.what = markWhy("%1 on the scale, %2")
                   .arg(hiveThen(file, weighing.hive, weighing.on), dayText(weighing.on));
    why.answer = massInWords(gross, lifted->how);
    if (weighing.whole) {
        note(&why.working, "hive_gross_g", gross, "g", "on a platform, as a whole");
    } else {
        note(&why.working, "hive_left_g", lifted->leftG, "g");
        note(&why.working, "hive_right_g", lifted->rightG, "g");
        note(&why.working, "hive_gross_g", gross, "g", "left + right");
    }
    all.push_back(std::move(why));
}

void explainFrames(const QString& what, const char* key, const std::optional<Known<Frames>>& known,
                   const Inspection& look, std::vector<Explained>& all) {
    const auto tenths = known ? known->middle() : std::nullopt;
    if (!tenths) return;
    const double frames = *tenths / 10.0;
    Explained why;
    why.what = what;
    why.answer = markWhy("%1 frames, %2")
                     .arg(QLocale().toString(frames, 'f', frames == std::round(frames) ? 0 : 1),
                          howWord(known->how));
    note(&why.working, key, frames, "",
         look.line.empty() ? std::string() : "the line: " + look.line);
    all.push_back(std::move(why));
}

void explainLook(const Read& file, const Inspection& look, std::vector<Explained>& all) {
    const auto visit = file.find(look.visit);
    if (!visit) return;
    const QString hive = hiveThen(file, look.hive, visit->on);
    const QString day = dayText(visit->on);
    explainFrames(markWhy("Frames of brood in %1, %2").arg(hive, day), "brood_frames",
                  look.seen.brood, look, all);
    explainFrames(markWhy("Frames of stores in %1, %2").arg(hive, day), "stores_frames",
                  look.seen.stores, look, all);
}

}  // namespace

std::vector<Explained> explainMark(const Read& file, const MarkRecord& mark) {
    std::vector<Explained> all;
    if (const auto finding = file.find(mark.finding)) explainCount(file, *finding, all);
    if (const auto weighing = file.find(mark.weighing)) explainLifted(file, *weighing, all);
    if (const auto look = file.find(mark.look)) explainLook(file, *look, all);
    return all;
}

}  // namespace combwright
