#include "core/places/pages/yard/kit_list_page.h"

#include <QCoreApplication>
#include <QStringList>

#include "core/model/season_info.h"
#include "core/places/pages/stores/stores_page.h"
#include "core/places/pages/yard/queen_words.h"
#include "core/places/pages/yard/yard_sheet_page.h"
#include "core/words/figures.h"
#include "core/words/words.h"

namespace combwright {
namespace {

QString kitSay(const char* text) { return QCoreApplication::translate("kit", text); }

struct KitWord {
    std::string_view item;
    const char* one;
    const char* many;
};

// What places ask for, by its key; whatever else is asked for stands as it is.
constexpr KitWord kitWords[] = {
    {"feeder", QT_TRANSLATE_NOOP("kit", "feeder"), QT_TRANSLATE_NOOP("kit", "feeders")},
    {"wash jar", QT_TRANSLATE_NOOP("kit", "wash jar, for 300 bees"),
     QT_TRANSLATE_NOOP("kit", "washes of 300 bees with the jar")},
    {"super", QT_TRANSLATE_NOOP("kit", "super"), QT_TRANSLATE_NOOP("kit", "supers")},
    {"frame with eggs", QT_TRANSLATE_NOOP("kit", "frame with eggs, from a strong hive"),
     QT_TRANSLATE_NOOP("kit", "frames with eggs, from strong hives")},
};

QString feedLine(const KitLine& line) {
    const bool fondant = line.item == "fondant";
    const QString what = fondant ? kitSay("fondant") : kitSay("feed");
    if (!line.mass) return what;
    return kitSay("%1 with %2 of sugar")
        .arg(what, massText(static_cast<double>(line.mass->grams()), How::Weighed));
}

}  // namespace

QString kitText(const KitLine& line) {
    if (line.always)
        return line.counted ? QStringLiteral("%1 %2").arg(line.count).arg(fromUtf8(line.item))
                            : fromUtf8(line.item);
    if (line.item == "feed" || line.item == "fondant") return feedLine(line);
    for (const KitWord& each : kitWords)
        if (each.item == line.item)
            return QStringLiteral("%1 %2")
                .arg(line.count)
                .arg(kitSay(line.count == 1 ? each.one : each.many));
    return QStringLiteral("%1 %2").arg(line.count).arg(word(line.item));
}

Page kitListPage(const Read& file, const KitList& kit) {
    Page page;
    page.title = kitSay("To take to %1").arg(fromUtf8(kit.yard.name.text()));
    page.day = kitSay("for %1").arg(dayText(kit.on));
    if (const auto season = file.first<SeasonInfo>({})) {
        page.keeper = fromUtf8(season->name.text());
        page.invented = season->invented.value_or(false);
    }
    TickBlock asked;
    asked.title = kitSay("For the hives");
    asked.columns = 1;
    for (const KitLine& each : kit.lines) {
        QStringList hives;
        for (const std::string& hive : each.hives) hives << fromUtf8(hive);
        asked.lines.push_back({kitText(each), hives.join(QLatin1Char(' '))});
    }
    if (asked.lines.empty()) {
        TextBlock nothing;
        nothing.text = kitSay("No hive asks for anything.");
        page.blocks.emplace_back(nothing);
    } else {
        page.blocks.emplace_back(asked);
    }
    TickBlock always;
    always.title = kitSay("Always in the truck");
    always.columns = 2;
    for (const KitLine& each : kit.always) always.lines.push_back({kitText(each), {}});
    if (!always.lines.empty()) page.blocks.emplace_back(always);
    if (!kit.mites.empty()) {
        QStringList mites;
        for (const KitMites& each : kit.mites)
            mites << kitSay("%1: %2 on %3")
                         .arg(fromUtf8(each.hive), mitesText(each.mites),
                              dayAndMonth(each.mites.since));
        TextBlock block;
        block.title = kitSay("Decide: treat or not");
        block.text = mites.join(QStringLiteral("; "));
        page.blocks.emplace_back(block);
    }
    if (!kit.shut.empty()) {
        QStringList shut;
        for (const LeftShut& each : kit.shut)
            shut << QStringLiteral("%1 %2").arg(fromUtf8(each.hive), leaveShutText(each.until));
        TextBlock block;
        block.title = kitSay("For a young queen");
        block.text = shut.join(QStringLiteral(", "));
        page.blocks.emplace_back(block);
    }
    if (!kit.shelf.empty()) {
        TextBlock shelf;
        QStringList texts;
        for (const FeedShelfRow& each : kit.shelf) texts << feedShelfText(each);
        shelf.text = texts.join(QLatin1Char(' '));
        shelf.small = true;
        page.blocks.emplace_back(shelf);
    }
    TextBlock caution;
    caution.caution = true;
    caution.text = liftCaution();
    page.blocks.emplace_back(caution);
    page.letters = lettersOf(page);
    return page;
}

}  // namespace combwright
