#include "core/places/pages/honey_room/room_paper.h"

#include <QCoreApplication>
#include <QStringList>

#include "core/model/season_info.h"
#include "core/places/honey_room/pegs.h"
#include "core/words/figures.h"
#include "core/words/words.h"

namespace combwright {
namespace {

QString paperWord(const char* text) { return QCoreApplication::translate("room_paper", text); }

}  // namespace

Page roomPaper(const Read& file, const QString& title, const QString& day) {
    Page page;
    page.title = title;
    page.day = day;
    if (const auto season = file.first<SeasonInfo>({})) {
        page.keeper = fromUtf8(season->name.text());
        page.invented = season->invented.value_or(false);
    }
    return page;
}

Block enteredBy() {
    BlanksBlock entered;
    entered.framed = true;
    entered.labels = {paperWord("entered by"), paperWord("on")};
    return entered;
}

CardText cardText(const QString& text, PaperSize size, bool strong) {
    return {text, size, strong, false};
}

CardText mutedText(const QString& text, PaperSize size) { return {text, size, false, true}; }

CardField blank(const QString& label, const QString& unit, double share) {
    CardField field;
    field.label = label;
    field.unit = unit;
    field.share = share;
    return field;
}

CardField tick(const QString& label, double share, bool ticked) {
    CardField field;
    field.label = label;
    field.share = share;
    field.line = false;
    field.tick = true;
    field.ticked = ticked;
    return field;
}

QString onLine(const std::optional<Known<Mass>>& mass) {
    const auto grams = mass ? mass->middle() : std::nullopt;
    if (!grams) return {};
    return massFigure(*grams, mass->how) + QChar::Nbsp + QLatin1Char(letter(mass->how));
}

std::vector<PeggedBox> peggedBoxes(const Read& file, Day on) {
    std::vector<PeggedBox> boxes;
    auto taken = pegsTaken(file, on);
    for (RoomBox& box : allWaiting(file, on).waiting) {
        PeggedBox row;
        const auto known = file.find(box.box);
        row.painted = known && !known->mark.empty();
        row.mark = row.painted ? fromUtf8(known->mark)
                   : known     ? paperWord("no mark")
                               : fromUtf8(box.mark);
        row.peg = box.peg;
        if (!row.peg && box.plannedFor) {
            const std::int64_t next = nextFreePeg(taken);
            // Past the last number there is none to propose.
            if (next < 1000) row.peg = next;
        }
        if (row.peg) taken.insert(*row.peg);
        row.box = std::move(box);
        boxes.push_back(std::move(row));
    }
    return boxes;
}

QString yardName(const Read& file, std::optional<Id<Yard>> yard) {
    const auto found = file.find(yard);
    return found ? fromUtf8(found->name.text()) : QString();
}

}  // namespace combwright
