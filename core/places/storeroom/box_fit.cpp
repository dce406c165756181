#include "core/places/storeroom/box_fit.h"
#include "core/model/frames/frame.h"

#include <QCoreApplication>
#include <QStringList>
#include <algorithm>
#include <map>

#include "core/storage/queries/names.h"
#include "core/words/figures.h"

namespace combwright {
namespace {

QString fitWord(const char* text) { return QCoreApplication::translate("fit", text); }

std::optional<double> millimetres(const std::optional<Length>& length) {
    return length ? std::optional(length->mm()) : std::nullopt;
}

BoxMeasures boxMeasures(const BoxKind& kind) {
    BoxMeasures box;
    box.system = kind.family;
    box.height = millimetres(kind.outerHeight);
    box.innerLength = millimetres(kind.innerLength);
    box.innerWidth = millimetres(kind.innerWidth);
    box.restDepth = millimetres(kind.restDepth);
    if (kind.beeSpace == BeeSpace::Top) box.beeSpace = BeeSpaceAt::Top;
    if (kind.beeSpace == BeeSpace::Bottom) box.beeSpace = BeeSpaceAt::Bottom;
    return box;
}

FrameMeasures frameMeasures(const FrameKind& kind) {
    return {millimetres(kind.height), millimetres(kind.topBarLength),
            millimetres(kind.bottomBarLength), millimetres(kind.spacing)};
}

FitRow fitRow(const BoxKind& box, const FrameKind& frame, const std::optional<BoxKind>& below,
              std::optional<std::int64_t> frames) {
    FitRow row;
    row.frame = frame;
    row.madeFor = box.takes == frame.id;
    std::optional<BoxMeasures> under;
    if (below && below->id != box.id) under = boxMeasures(*below);
    auto fit = fitFrame(boxMeasures(box), frameMeasures(frame), under, frames);
    if (fit)
        row.fit = *fit;
    else
        row.unknown = fit.error().field;
    if (frame.spacing) row.faces = gapBetweenFaces(frame.spacing->mm(), FaceLimits{}.broodCombMm);
    return row;
}

}  // namespace

FitTable fitTable(const Read& file, const BoxKind& box, const std::optional<BoxKind>& below,
                  std::optional<std::int64_t> frames) {
    FitTable table{.box = box, .below = below, .frames = 0, .rows = {}};
    if (!frames && box.framesNominal) frames = box.framesNominal->value();
    table.frames = frames.value_or(0);
    for (const FrameKind& frame : file.all<FrameKind>())
        table.rows.push_back(fitRow(box, frame, below, frames));
    const auto rank = [](const FitRow& row) {
        return row.madeFor ? 0 : row.hangs() ? 1 : row.fit ? 2 : 3;
    };
    std::stable_sort(table.rows.begin(), table.rows.end(), [&](const FitRow& a, const FitRow& b) {
        if (rank(a) != rank(b)) return rank(a) < rank(b);
        return a.hangs() && b.hangs() && a.fit->gapMm.value_or(0) < b.fit->gapMm.value_or(0);
    });
    return table;
}

std::vector<MixedBox> mixedBoxes(const Read& file) {
    std::map<std::int64_t, BoxKind> kinds;
    for (BoxKind& kind : file.all<BoxKind>()) kinds.emplace(kind.id.number, kind);
    std::map<std::int64_t, Box> boxes;
    for (Box& box : file.all<Box>())
        if (inUse(box)) boxes.emplace(box.id.number, box);
    std::map<std::pair<std::int64_t, std::int64_t>, std::int64_t> strangers;
    for (const Frame& frame : file.where<Frame>({isUnknown("retired")})) {
        if (!frame.box) continue;
        const auto box = boxes.find(frame.box->number);
        if (box == boxes.end()) continue;
        const BoxKind& kind = kinds.at(box->second.kind.number);
        if (kind.takes && *kind.takes != frame.kind)
            ++strangers[{frame.box->number, frame.kind.number}];
    }
    std::vector<MixedBox> mixed;
    for (const auto& [which, count] : strangers) {
        const Box& box = boxes.at(which.first);
        const auto frame = file.find(Id<FrameKind>{which.second});
        mixed.push_back({box.id, nameOf(file, Box::table, box.id.number),
                         fitRow(kinds.at(box.kind.number), *frame, {}, {}), count});
    }
    return mixed;
}

QString gapWords(GapVerdict verdict) {
    switch (verdict) {
        case GapVerdict::Propolis:
            return fitWord("too narrow: bees glue it up");
        case GapVerdict::Passage:
            return fitWord("a way: bees leave it open");
        case GapVerdict::WideButUsual:
            return fitWord("wide, but usual: mostly left open");
        case GapVerdict::BurrComb:
            return fitWord("too wide: bees build comb in it");
        case GapVerdict::DoesNotFit:
            return fitWord("does not fit");
    }
    return {};
}

QString faceWords(FaceVerdict verdict) {
    switch (verdict) {
        case FaceVerdict::TooTight:
            return fitWord("too tight for bees back to back");
        case FaceVerdict::BackToBack:
            return fitWord("bees work back to back: right for brood");
        case FaceVerdict::Fattened:
            return fitWord("honey comb is drawn fat, brood comb not");
        case FaceVerdict::CombBetween:
            return fitWord("room for a comb between: they build it");
    }
    return {};
}

QString misfitWords(Misfit misfit) {
    switch (misfit) {
        case Misfit::TooTall:
            return fitWord("too tall for the box");
        case Misfit::BottomBarTooLong:
            return fitWord("longer than the box is inside");
        case Misfit::TopBarTooShort:
            return fitWord("its lugs do not reach the rests");
    }
    return {};
}

QString fitNote() {
    const BeeSpaceLimits limits;
    const auto length = [](double mm) {
        const ShownFigure shown = shownLength(mm);
        return shown.figure + QChar(QChar::Nbsp) + shown.unit;
    };
    return fitWord(
               "Under %1 bees glue up, to %2 they leave a way, above they build; makers' boxes "
               "leave up to %3 and are mostly left alone. Under the lowest box the room over the "
               "floor may be larger.")
        .arg(length(limits.from), length(limits.to), length(limits.usualTo));
}

QString fitText(const FitRow& row) {
    if (!row.fit)
        return row.unknown == "frame" ? fitWord("not known: the frame was never measured")
                                      : fitWord("not known: the box was never measured");
    const FrameFit& fit = *row.fit;
    if (fit.misfit) return misfitWords(*fit.misfit);
    const auto mm = [](double gap) {
        const ShownFigure shown = shownLength(gap);
        return shown.figure + QChar(QChar::Nbsp) + shown.unit;
    };
    QStringList parts;
    if (fit.gapMm) parts << fitWord("%1 below: %2").arg(mm(*fit.gapMm), gapWords(fit.verdict));
    if (fit.endGapMm && fit.endVerdict)
        parts << fitWord("%1 at each end: %2").arg(mm(*fit.endGapMm), gapWords(*fit.endVerdict));
    if (fit.sideGapMm && fit.sideVerdict)
        parts << fitWord("%1 at each wall: %2").arg(mm(*fit.sideGapMm), gapWords(*fit.sideVerdict));
    if (row.faces)
        parts << fitWord("%1 between brood combs: %2")
                     .arg(mm(row.faces->gapMm), faceWords(row.faces->verdict));
    return parts.join(QStringLiteral("; "));
}

}  // namespace combwright
