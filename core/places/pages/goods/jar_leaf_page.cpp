#include "core/places/pages/goods/jar_leaf_page.h"

#include <QCoreApplication>
#include <QLocale>
#include <algorithm>

#include "core/places/goods/label_sheet.h"
#include "core/places/pages/honey_room/room_paper.h"
#include "core/words/figures.h"
#include "core/words/words.h"

namespace combwright {
namespace {

/// More stacks than that are too small to be seen.
constexpr std::size_t mostLeafStacks = 5;

QString leafPhrase(const char* text) { return QCoreApplication::translate("jar_leaf", text); }

QString leafList(const std::vector<std::string>& all) {
    QStringList parts;
    for (const std::string& each : all) parts << fromUtf8(each);
    if (parts.size() < 2) return parts.join(QString());
    const QString last = parts.takeLast();
    return leafPhrase("%1 and %2").arg(parts.join(QStringLiteral(", ")), last);
}

QString leafCount(std::int64_t count, const char* one, const char* many) {
    return count == 1 ? leafPhrase(one) : leafPhrase(many).arg(count);
}

TextBlock leafText(const QString& title, const QStringList& lines) {
    TextBlock block;
    block.title = title;
    block.text = lines.join(QLatin1Char('\n'));
    return block;
}

QStringList whereAndWhen(const JarLeaf& leaf, const LeafTold& told) {
    QStringList lines;
    if (told.place && !leaf.yards.empty())
        lines << leafPhrase("The bees stood at %1.").arg(leafList(leaf.yards));
    if (told.place && !leaf.places.empty()) lines << leafList(leaf.places) + QLatin1Char('.');
    if (told.weeks && leaf.boxesOn)
        lines << leafPhrase("The first box of its honey was put on the bees on %1.")
                     .arg(dayText(*leaf.boxesOn));
    if (told.weeks && leaf.extractedFrom)
        lines << (leaf.extractedFrom == leaf.extractedTo
                      ? leafPhrase("The honey left the combs on %1.")
                            .arg(dayText(*leaf.extractedFrom))
                      : leafPhrase("The honey left the combs from %1 to %2.")
                            .arg(dayText(*leaf.extractedFrom), dayText(*leaf.extractedTo)));
    for (const std::string& from : leaf.boughtFrom)
        lines << (from.empty()
                      ? leafPhrase("Part of it was bought in.")
                      : leafPhrase("Part of it was bought in from %1.").arg(fromUtf8(from)));
    return lines;
}

QStringList whatTheBeesDid(const JarLeaf& leaf, const LeafTold& told) {
    QStringList lines;
    if (!told.hives || leaf.boxes == 0) return lines;
    if (leaf.hives > 0)
        lines << leafPhrase("It came from the bees of %1, out of %2.")
                     .arg(leafCount(leaf.hives, "one hive", "%1 hives"),
                          leafCount(leaf.boxes - leaf.boxesUnknown, "one box of combs",
                                    "%1 boxes of combs"));
    if (leaf.boxesUnknown > 0)
        lines << leafCount(leaf.boxesUnknown, "Of one more box nobody knows whose it was.",
                           "Of %1 more boxes nobody knows whose they were.");
    return lines;
}

QStringList whatTheKeeperDid(const JarLeaf& leaf, const LeafTold& told) {
    QStringList lines;
    if (!told.work) return lines;
    if (leaf.frames > 0)
        lines << leafCount(leaf.frames, "One comb was uncapped and spun.",
                           "%1 combs were uncapped and spun.");
    if (!leaf.strainers.empty())
        lines << leafPhrase("The honey ran through %1.").arg(leafList(leaf.strainers));
    if (leaf.blends > 0)
        lines << leafCount(leaf.buckets, "Honey of one bucket went into it.",
                           "Honey of %1 buckets was mixed.");
    if (leaf.dried) lines << leafPhrase("Water was dried off.");
    if (leaf.creamed) lines << leafPhrase("It was stirred until it set fine.");
    if (leaf.warmed && leaf.warmest)
        lines << leafPhrase("It was held at %1 at the warmest.")
                     .arg(shownTemperature(leaf.warmest->celsius()).text());
    return lines;
}

QStringList inTheJar(const JarLeaf& leaf, const LeafTold& told) {
    QStringList lines;
    lines << leafPhrase("Lot %1, filled on %2.")
                 .arg(fromUtf8(leaf.bottling.code.text()), dayText(leaf.bottling.on));
    if (leaf.bottling.bestBefore)
        lines << leafPhrase("Best before %1.").arg(dayText(*leaf.bottling.bestBefore));
    if (told.water && leaf.water)
        lines << leafPhrase("Water: %1 %.").arg(QLocale().toString(leaf.water->percent(), 'f', 1));
    if (told.colour && !leaf.colours.empty())
        lines << leafPhrase("Colour: %1.").arg(leafList(leaf.colours));
    if (told.taste && !leaf.tastes.empty())
        lines << leafPhrase("The keeper's word for its taste: %1.").arg(leafList(leaf.tastes));
    if (told.medicines)
        lines << (leaf.medicines.empty()
                      ? leafPhrase("No medicine of its hives is written down in the year before.")
                      : leafPhrase("Given to its hives in the year before: %1.")
                            .arg(leafList(leaf.medicines)));
    return lines;
}

CardsBlock drawnHives(const JarLeaf& leaf) {
    CardsBlock block;
    block.rowMm = 60;
    block.cut = false;
    Card card;
    StacksDrawn stacks;
    for (std::size_t i = 0; i < std::min(leaf.stacks.size(), mostLeafStacks); ++i) {
        std::vector<StacksDrawn::Box> boxes;
        for (const double height : leaf.stacks[i].boxHeightsMm) boxes.push_back({{}, {}, height});
        boxes.front().mark = fromUtf8(leaf.stacks[i].hive);
        stacks.stacks.push_back(std::move(boxes));
    }
    card.drawing = std::move(stacks);
    card.drawingShare = 0.6;
    card.name = {leafPhrase("Honey"), PaperSize::Poster, true};
    card.lines = {{leafPhrase("the boxes it came out of"), PaperSize::Body, false, true}};
    block.cards.push_back(std::move(card));
    return block;
}

}  // namespace

Page jarLeafPage(const Read& file, const JarLeaf& leaf, const LeafTold& told) {
    Page page = roomPaper(file, leafPhrase("The way of this honey"), {});
    if (told.hives && !leaf.stacks.empty()) page.blocks.emplace_back(drawnHives(leaf));
    const auto add = [&](const char* title, const QStringList& lines) {
        if (!lines.isEmpty()) page.blocks.emplace_back(leafText(leafPhrase(title), lines));
    };
    add("Where and when", whereAndWhen(leaf, told));
    add("What the bees did", whatTheBeesDid(leaf, told));
    add("What the keeper did", whatTheKeeperDid(leaf, told));
    add("In the jar", inTheJar(leaf, told));
    TextBlock caution;
    caution.caution = true;
    caution.text = infantCaution();
    page.blocks.emplace_back(std::move(caution));
    return page;
}

Page newestJarLeafPage(const Read& file, Day on) {
    const auto newest = newestFilling(file, on);
    const auto leaf = newest ? jarLeaf(file, *newest) : std::nullopt;
    if (leaf) return jarLeafPage(file, *leaf, {});
    Page page = roomPaper(file, leafPhrase("The way of this honey"), {});
    page.blocks.emplace_back(leafText({}, {leafPhrase("No jar was filled yet.")}));
    return page;
}

}  // namespace combwright
