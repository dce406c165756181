#include "core/places/pages/honey_room/day_log_page.h"

#include <QCoreApplication>
#include <QLocale>

#include "core/model/honey/room.h"
#include "core/places/honey_room/room_boxes.h"
#include "core/places/pages/honey_room/room_paper.h"
#include "core/words/clock_words.h"
#include "core/words/figures.h"
#include "core/words/words.h"

namespace combwright {
namespace {

QString logWord(const char* text) { return QCoreApplication::translate("day_log", text); }

CardField logged(CardField field, const QString& value) {
    field.value = value;
    return field;
}

CardField logTick(const QString& label, const std::optional<bool>& said, double share = 1) {
    CardField field = tick(label, share, said.value_or(false));
    if (said && !*said) field.label += logWord(": no");
    return field;
}

/// The fields in the order of the form they are typed into.
Card logCard(const QString& name, const RoomDay& log, const RoomAir& air) {
    Card card;
    card.name = cardText(name, PaperSize::Big, true);
    card.ruled = true;
    card.rows = {
        {logged(blank(logWord("who"), {}, 2), fromUtf8(log.who)),
         logged(blank(logWord("hands at the knife"), {}, 1.6),
                log.hands ? QString::number(log.hands->value()) : QString()),
         logged(blank(logWord("began"), {}, 1), log.begun ? clockText(*log.begun) : QString())},
        {logged(blank(logWord("room"), shownTemperature(0).unit),
                air.warm ? shownTemperature(air.warm->celsius()).figure : QString()),
         logged(blank(logWord("damp"), QStringLiteral("%")),
                air.damp ? QLocale().toString(air.damp->value() * 100, 'g', 4) : QString())},
        {logTick(logWord("room cleaned"), log.roomCleaned),
         logTick(logWord("hands washed"), log.handsWashed),
         logTick(logWord("machine dry before"), log.machineDry),
         logTick(logWord("knife checked"), log.knifeChecked)},
        {logTick(logWord("machine washed cold, left dry"), log.machineWashed, 2.2),
         logged(blank(logWord("ended"), {}, 1), log.ended ? clockText(*log.ended) : QString())},
        {logged(blank(logWord("note")), fromUtf8(log.note))},
        {blank({})},
    };
    return card;
}

}  // namespace

QString liftSafety() {
    return logWord("over %1: two people, or frame by frame").arg(liftLimitText());
}

QStringList roomSafety() {
    return {logWord("knife away from fingers, and off when it is laid down"),
            logWord("lid shut, hair and sleeves back, hands out until it stands"),
            logWord("sockets dry, floor not slippery"),
            logWord("children behind the table"),
            liftSafety(),
            logWord("no honey for infants under 12 months")};
}

Page dayLogPage(const Read& file, Day on) {
    Page page =
        roomPaper(file, logWord("Log of the honey room"), logWord("for %1").arg(dayText(on)));
    TextBlock caution;
    caution.caution = true;
    caution.text = roomSafety().join(QStringLiteral("\u00a0· "));
    caution.text[0] = caution.text[0].toUpper();
    page.blocks.emplace_back(caution);
    CardsBlock block;
    block.title = logWord("Written down as it is done");
    block.about = logWord("a line left empty says nothing; typed back with Ctrl+L");
    block.rowMm = 95;
    block.cut = false;
    block.cards.push_back(logCard(dayText(on),
                                  file.first<RoomDay>({is("on_day", on)}).value_or(RoomDay()),
                                  roomAir(file, on)));
    Card another = logCard({}, RoomDay(), {});
    another.ruled = false;
    another.rows.insert(another.rows.begin(), {blank(logWord("day"))});
    block.cards.push_back(std::move(another));
    page.blocks.emplace_back(std::move(block));
    page.blocks.push_back(enteredBy());
    return page;
}

}  // namespace combwright
