#include "core/places/pages/honey/bucket_labels_page.h"

#include <QCoreApplication>
#include <QLocale>
#include <QStringList>
#include <algorithm>

#include "core/places/honey/bucket_sheet.h"
#include "core/places/honey_room/load_sheet.h"
#include "core/places/pages/honey_room/room_paper.h"
#include "core/words/figures.h"
#include "core/words/words.h"

namespace combwright {
namespace {

constexpr std::size_t labelsASheet = 8;

QString labelWord(const char* text) { return QCoreApplication::translate("bucket_labels", text); }

/// In the order the figures are typed: full, water.
void addLines(Card& card, const BucketLine& line) {
    CardField full = blank(labelWord("full"), massUnit());
    CardField water = blank(labelWord("water"), QStringLiteral("%"));
    CardField not_ = tick(labelWord("do not bottle:"), 1, line.tooWet);
    if (line.bucket) full.value = onLine(line.bucket->net);
    if (line.water) water.value = QLocale().toString(line.water->percent, 'f', 1);
    not_.line = true;
    not_.strong = true;
    if (line.tooWet) not_.value = labelWord("too wet");
    card.ruled = true;
    card.rows.push_back({full, water});
    card.rows.push_back({blank(labelWord("loads")), blank(labelWord("taste"))});
    card.rows.push_back({not_});
}

Card labelOf(const BucketLine& line, const QString& lot, const QString& day) {
    Card card;
    card.name = cardText(fromUtf8(line.mark), PaperSize::Poster, true);
    card.about = {cardText(lot, PaperSize::Head, true), mutedText(day)};
    addLines(card, line);
    return card;
}

/// "Creek, lot 27-3"
QString lotText(const Read& file, const std::string& name, std::optional<Id<Yard>> yard) {
    QStringList parts;
    if (const QString of = yardName(file, yard); !of.isEmpty()) parts << of;
    parts << labelWord("lot %1").arg(fromUtf8(name));
    return parts.join(QStringLiteral(", "));
}

}  // namespace

Page bucketLabelsPage(const Read& file, std::optional<Id<Extraction>> id, Day on) {
    Page page =
        roomPaper(file, labelWord("Bucket labels"), labelWord("printed %1").arg(dayText(on)));
    CardsBlock block;
    block.title = labelWord("Number, weigh, take the water, lid on; then the next");
    block.about = labelWord("cut along the dashes; no honey for infants under 12 months");
    block.across = 2;
    block.rowMm = 50;
    const auto run = file.find(id);
    const bool closed = run && run->closed;
    std::vector<Extraction> lots;
    if (run) lots.push_back(*run);
    if (!closed)
        for (Extraction& each : openRuns(file))
            if (each.on <= on && (!run || each.id != run->id)) lots.push_back(std::move(each));
    const QString day = dayText(closed ? *run->closed : on);
    BucketNumbers numbers(file, std::nullopt, run ? run->on : on);
    for (const Extraction& lot : lots) {
        const QString of = lotText(file, lot.name.text(), lot.yard);
        // What is in them already, then those it will fill, as on screen.
        for (const BucketLine& line : bucketSheet(file, lot.id, on).lines) {
            numbers.pass(line.mark);
            block.cards.push_back(labelOf(line, of, day));
        }
    }
    // The sheet is filled up with the numbers that follow; a closed run needs no more, and of
    // several lots nobody knows whose honey they will take.
    const NextLot next =
        lots.empty() ? nextLot(file, on) : NextLot{lots.front().name.text(), lots.front().yard};
    const QString following =
        lots.size() > 1 ? labelWord("lot ____________") : lotText(file, next.name, next.yard);
    while (block.cards.empty() || (!closed && block.cards.size() % labelsASheet != 0))
        block.cards.push_back(labelOf(BucketLine{.mark = numbers.next()}, following, day));
    page.blocks.emplace_back(std::move(block));
    page.letters = {How::Weighed, How::ByEye, How::ByDifference, How::Unknown};
    page.blocks.push_back(enteredBy());
    return page;
}

}  // namespace combwright
