#include "core/places/pages/honey_room/extraction_sheet_page.h"

#include <QCoreApplication>
#include <QStringList>
#include <algorithm>

#include "core/places/pages/honey_room/room_paper.h"
#include "core/words/figures.h"
#include "core/words/words.h"

namespace combwright {
namespace {

/// Loads on a sheet; empty ones fill it up, two at least.
constexpr std::size_t loadsASheet = 3;
constexpr std::size_t emptyLoads = 2;
constexpr std::size_t slotsAcross = 3;

QString sheetWord(const char* text) {
    return QCoreApplication::translate("extraction_sheet", text);
}

QString slotLabel(const std::optional<LoadFrame>& place) {
    if (!place) return {};
    return place->emptied ? sheetWord("empty") : fromUtf8(place->box);
}

/// A line to each slot: the box and h, m or l.
void addSlots(Card& card, const std::vector<QString>& labels) {
    const std::size_t deep = (labels.size() + slotsAcross - 1) / slotsAcross;
    for (std::size_t i = 0; i < deep; ++i) {
        std::vector<CardField> row;
        for (std::size_t at = i; at < deep * slotsAcross; at += deep) {
            if (at >= labels.size()) {
                CardField none;
                none.line = false;
                row.push_back(none);
                continue;
            }
            QStringList words{QString::number(at + 1)};
            if (!labels[at].isEmpty()) words << labels[at];
            row.push_back(blank(words.join(QLatin1Char(' '))));
        }
        card.rows.push_back(std::move(row));
    }
}

void addWhatHappens(Card& card) {
    card.rows.push_back({blank(sheetWord("min"), {}, 1.12), tick(sheetWord("smooth"), 0.98),
                         tick(sheetWord("walked"), 0.98), tick(sheetWord("stopped"), 0.92)});
    card.rows.push_back({blank(sheetWord("set aside"), {}, 1), blank(sheetWord("why"), {}, 1)});
    CardField gate = tick(sheetWord("gate opened"), 1.3);
    card.rows.push_back({gate, blank(sheetWord("at"), {}, 0.9), tick(sheetWord("run empty"), 1)});
}

/// Of none of its boxes anybody said what it weighs.
bool nothingWeighed(const Read& file, const SheetLoad& load) {
    return std::none_of(load.places.begin(), load.places.end(), [&](const auto& place) {
        const auto box = place && !place->emptied ? file.find(place->entry) : std::nullopt;
        return box && box->gross && box->gross->value;
    });
}

Card loadCard(const Read& file, const LoadSheet& sheet, const SheetLoad& load) {
    Card card;
    DrumDrawn drum;
    drum.toWrite = nothingWeighed(file, load);
    std::vector<QString> labels;
    for (const auto& place : load.places) {
        const QString label = slotLabel(place);
        labels.push_back(label);
        if (place) {
            drum.places.push_back({label, place->startG, place->endG});
            drum.longestG = std::max(drum.longestG, place->startG);
        } else {
            drum.places.push_back({sheetWord("none"), {}, {}});
        }
    }
    const bool toWrite = drum.toWrite;
    card.drawing = std::move(drum);
    card.drawingShare = 0.46;
    card.name = cardText(sheetWord("Load %1").arg(load.number), PaperSize::Big, true);
    card.about.push_back(
        cardText(sheetWord("lot %1").arg(fromUtf8(load.lot)), PaperSize::Body, true));
    if (toWrite) {
        card.about.push_back(
            mutedText(sheetWord("not weighed yet: h, m or l in the circles"), PaperSize::Note));
    } else {
        const double mayBe =
            std::max(load.offset.startG + load.doubtG, load.offset.endG + load.endDoubtG);
        card.about.push_back(
            mutedText(sheetWord("off %1, may be %2; ring %3")
                          .arg(shownPortion(load.offset.largerG()).figure,
                               shownPortion(mayBe).figure, shownPortion(sheet.ringG()).text()),
                      PaperSize::Note));
    }
    addSlots(card, labels);
    addWhatHappens(card);
    return card;
}

/// A load nobody planned.
Card emptyLoad(std::size_t slotCount) {
    Card card;
    DrumDrawn drum;
    drum.places.resize(slotCount);
    drum.toWrite = true;
    card.drawing = std::move(drum);
    card.drawingShare = 0.46;
    card.name = cardText(sheetWord("Load"), PaperSize::Big, true);
    card.about.push_back(cardText(sheetWord("lot ____________"), PaperSize::Body));
    card.about.push_back(
        mutedText(sheetWord("not weighed yet: lot and boxes by hand, h, m or l in the circles"),
                  PaperSize::Note));
    addSlots(card, std::vector<QString>(slotCount));
    addWhatHappens(card);
    return card;
}

}  // namespace

Page extractionSheetPage(const Read& file, const std::vector<LoadSheet>& sheets, Day on) {
    Page page =
        roomPaper(file, sheetWord("Extraction sheet"), sheetWord("for %1").arg(dayText(on)));
    CardsBlock block;
    block.title = sheetWord("Load by load");
    block.about = sheetWord(
        "slot 1 at the mark, then as the clock goes; h heavy, m middling, l light; lid shut, hands "
        "out until it stands");
    block.rowMm = 72;
    block.cut = false;
    std::size_t slotCount = 0;
    for (const LoadSheet& sheet : sheets) {
        if (slotCount == 0) slotCount = static_cast<std::size_t>(sheet.slotCount);
        for (const SheetLoad& load : sheet.loads)
            block.cards.push_back(loadCard(file, sheet, load));
    }
    if (slotCount == 0) slotCount = static_cast<std::size_t>(LoadSheet().slotCount);
    std::size_t more = emptyLoads;
    while ((block.cards.size() + more) % loadsASheet != 0) ++more;
    for (std::size_t i = 0; i < more; ++i) block.cards.push_back(emptyLoad(slotCount));
    page.blocks.emplace_back(std::move(block));
    page.blocks.push_back(enteredBy());
    return page;
}

}  // namespace combwright
