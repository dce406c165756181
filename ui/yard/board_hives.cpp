#include "ui/yard/board_hives.h"

#include <QCoreApplication>
#include <QLocale>
#include <algorithm>

#include "core/places/pages/yard_sheet_page.h"
#include "core/words/words.h"

namespace combwright {
namespace {

QString boardWord(const char* text) { return QCoreApplication::translate("yard_board", text); }

/// The newest look at a box, if anybody ever looked into it.
std::optional<BoxLook> newestLook(const Read& file, const Box& box) {
    auto looks = file.where<BoxLook>({is("box", box.id)});
    if (looks.empty()) return std::nullopt;
    return *std::max_element(looks.begin(), looks.end(),
                             [](const BoxLook& a, const BoxLook& b) { return a.on < b.on; });
}

/// What was seen of the nest stands in chalk on its lowest box.
QStringList nestWords(const Seen& seen) {
    QStringList words;
    if (seen.brood) words << boardWord("%1 brood").arg(framesText(*seen.brood));
    if (seen.stores) words << boardWord("%1 stores").arg(framesText(*seen.stores));
    if (words.isEmpty() && seen.eggs)
        words << (*seen.eggs ? boardWord("eggs") : boardWord("no eggs"));
    if (words.isEmpty()) words << boardWord("not counted");
    return words;
}

QString lookWords(const BoxLook& look, const Count& nominal) {
    const std::int64_t frames = look.frames ? look.frames->value() : nominal.value();
    if (look.cappedFrames && look.cappedFrames->value)
        return boardWord("%1 of %2 capped").arg(framesText(*look.cappedFrames)).arg(frames);
    if (look.filled && look.filled->value)
        return boardWord("%1 % full").arg(look.filled->value->value() * 100, 0, 'f', 0);
    return boardWord("%1 frames").arg(frames);
}

BoxView superView(const Read& file, const Box& box, const BoxKind& kind, Day on) {
    BoxView view;
    view.mark = fromUtf8(box.mark);
    view.heightMm = kind.outerHeight ? kind.outerHeight->mm() : view.heightMm;
    const auto moves = file.where<BoxMove>({is("box", box.id)});
    const auto look = newestLook(file, box);
    if (look) {
        view.words = {lookWords(*look, kind.framesNominal.value_or(Count(10)))};
        view.corner = dayAndMonth(look->on);
        if (look->filled && look->filled->value) view.filled = look->filled->value->value();
        return view;
    }
    view.lookedInto = false;
    // Put on today it is empty, and everybody knows.
    if (!moves.empty() && moves.back().on == on) {
        view.lookedInto = true;
        view.corner = boardWord("today");
    }
    return view;
}

BoxView nestView(const Box& box, const BoxKind& kind) {
    BoxView view;
    view.mark = fromUtf8(box.mark);
    view.heightMm = kind.outerHeight ? kind.outerHeight->mm() : view.heightMm;
    view.brood = true;
    return view;
}

}  // namespace

std::vector<HiveOnBoard> hivesOnBoard(const Read& file, const YardSheet& sheet) {
    std::vector<HiveOnBoard> hives;
    for (const YardSheetRow& row : sheet.rows) {
        HiveOnBoard hive;
        hive.id = row.hive.id;
        hive.mark = fromUtf8(row.hive.mark.text());
        hive.stack.name = hive.mark;
        const bool openedToday = row.today && row.today->seen.looked == Looked::Opened;
        const bool shutToday = row.today && !openedToday;
        const Seen* seen =
            openedToday ? &row.today->seen : (row.last ? &row.last->inspection.seen : nullptr);
        const std::size_t nest = row.boxes.size() - static_cast<std::size_t>(row.supersNow);
        for (std::size_t i = 0; i < row.boxes.size(); ++i) {
            const auto kind = file.find(row.boxes[i].kind);
            if (!kind) continue;
            BoxView view = i < nest ? nestView(row.boxes[i], *kind)
                                    : superView(file, row.boxes[i], *kind, sheet.on);
            if (i == 0 && seen) view.words = nestWords(*seen);
            if (i == 0 && !seen) view.lookedInto = false;
            view.faded = shutToday;
            view.excluderBelow = row.hive.excluderAbove && i == nest && i > 0;
            if (kind->outerWidth) hive.stack.widthMm = kind->outerWidth->mm();
            hive.stack.boxes.insert(hive.stack.boxes.begin(), view);
        }
        if (row.line.supersOn)
            hive.words << (row.line.supersOn->value() == 1
                               ? boardWord("1 super on")
                               : boardWord("%1 supers on").arg(row.line.supersOn->value()));
        for (const Mind& mind : row.minds) {
            QString text = mindText(mind, sheet.on);
            if (mind.kind == MindKind::QueenWait)
                text = boardWord("shut until %1").arg(dayAndMonth(mind.queen->lookFrom));
            if (mind.kind == MindKind::MitesOver)
                text = boardWord("mites %1 %").arg(QLocale().toString(*mind.mitesPer100, 'f', 2));
            if (mind.kind == MindKind::NotOpened) {
                hive.words << boardWord("not opened");
                text = boardWord("last seen %1").arg(dayAndMonth(mind.since));
            }
            hive.words << text;
            hive.lastTone = mind.kind == MindKind::MitesOver ? Tone::Bad
                            : mind.kind == MindKind::QueenWait || mind.kind == MindKind::Light ||
                                    mind.kind == MindKind::NoEggs
                                ? Tone::Warn
                                : Tone::Muted;
        }
        while (hive.words.size() > 2) hive.words.removeFirst();
        hives.push_back(std::move(hive));
    }
    return hives;
}

}  // namespace combwright
