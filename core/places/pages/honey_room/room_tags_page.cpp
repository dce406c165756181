#include "core/places/pages/honey_room/room_tags_page.h"

#include <QCoreApplication>
#include <QStringList>

#include "core/places/pages/honey_room/room_paper.h"
#include "core/words/figures.h"
#include "core/words/words.h"

namespace combwright {
namespace {

constexpr int unknownTags = 2;

QString tagWord(const char* text) { return QCoreApplication::translate("room_tags", text); }

CardField valued(CardField field, const QString& value) {
    field.value = value;
    return field;
}

/// In the order the figures are typed: full, wet, water.
void addWeights(Card& card, const QString& full, const QString& wet) {
    card.rows.push_back({valued(blank(tagWord("full"), massUnit()), full)});
    card.rows.push_back({valued(blank(tagWord("wet"), massUnit()), wet)});
    card.rows.push_back({blank(tagWord("water"), QStringLiteral("%"))});
}

Card tagOf(const Read& file, const PeggedBox& row) {
    Card card;
    card.drawing = PegDrawn{row.peg ? QString::number(*row.peg) : QString()};
    QStringList from;
    if (!row.box.hive.empty()) from << fromUtf8(row.box.hive);
    if (const QString yard = yardName(file, row.box.yard); !yard.isEmpty()) from << yard;
    card.about.push_back(cardText(row.mark, PaperSize::Big, true));
    card.about.push_back(
        cardText(from.isEmpty() ? tagWord("hive not known") : from.join(QStringLiteral(", ")),
                 PaperSize::Head));
    const auto day = row.box.off ? row.box.off : row.box.plannedFor;
    card.about.push_back(mutedText(day ? dayText(*day) : tagWord("day not known")));
    addWeights(card, onLine(row.box.gross), onLine(row.box.wet));
    return card;
}

/// For a box whose tag was lost, or that nobody expected.
Card unknownTag() {
    Card card;
    card.drawing = PegDrawn{};
    card.about.push_back(cardText(tagWord("unknown box"), PaperSize::Head, true));
    card.about.push_back(mutedText(tagWord("what is known of it:"), PaperSize::Note));
    card.rows.push_back({blank(tagWord("yard"))});
    addWeights(card, {}, {});
    return card;
}

}  // namespace

Page roomTagsPage(const Read& file, Day on) {
    Page page = roomPaper(file, tagWord("Box tags"), tagWord("printed %1").arg(dayText(on)));
    CardsBlock tags;
    tags.title = tagWord("Cut out, one to a box");
    tags.about =
        tagWord("under its peg from the hive until it is weighed wet; type peg, full, then wet");
    tags.across = 3;
    tags.rowMm = 50;
    for (const PeggedBox& row : peggedBoxes(file, on)) tags.cards.push_back(tagOf(file, row));
    for (int i = 0; i < unknownTags; ++i) tags.cards.push_back(unknownTag());
    page.blocks.emplace_back(std::move(tags));
    page.letters = {How::Weighed, How::ByEye, How::ByDifference, How::Unknown};
    page.blocks.push_back(enteredBy());
    return page;
}

}  // namespace combwright
