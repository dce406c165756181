// Honey in three buckets, two kinds of jars and a candle, and the pages of the honey room that are
// about them, by keyboard. All numbers are invented; what must follow was worked out by hand.
#pragma once

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QTextDocumentFragment>

#include "core/model/honey/going_out.h"
#include "core/model/season_info.h"
#include "tests/ui/storeroom/form_hands.h"
#include "ui/honey_room/fair_page.h"
#include "ui/honey_room/honey_room_place.h"
#include "ui/honey_room/jars_page.h"

namespace combwright::test {

class GoodsInRoom : public FormTest {
  protected:
    /// The page of that kind, in front.
    template <class ShownPage>
    ShownPage* openRoom(GoTo::Page which, const std::string& more = {}) {
        playAll(session.season(),
                R"({"do":"name-season","on":"2027-04-01","season":"Hill bees"}
{"do":"open-run","on":"2027-08-08","name":"27-1","yard":"Hill"}
{"do":"fill-bucket","on":"2027-08-08","run":"27-1","mark":"B1","net_g":14100,"water_percent":17}
{"do":"fill-bucket","on":"2027-08-08","run":"27-1","mark":"B2","net_g":13900,"water_percent":19.4}
{"do":"fill-bucket","on":"2027-08-08","run":"27-1","mark":"B3","net_g":30000,"water_percent":17}
{"do":"add-goods","on":"2027-08-01","name":"454 g jar","net_g":454,"lid":"63 mm","price":8.5}
{"do":"add-goods","on":"2027-08-01","name":"227 g jar","net_g":227,"lid":"63 mm","price":5}
{"do":"add-goods","on":"2027-08-01","name":"skep candle","what":"candle","price":6}
{"do":"set-prices","on":"2027-08-01","prices":"skep 6","currency":"€"}
{"do":"set-labels","on":"2027-08-01","producer":"Ann Hill","months":24,"label_region":"EU"}
{"do":"buy-packing","on":"2027-08-01","goods_kind":"454 g jar","bought":200}
{"do":"buy-packing","on":"2027-08-01","lid":"63 mm","bought":100}
)" + more);
        auto* room = openPlace<HoneyRoomPlace>(*window);
        if (!room) return nullptr;
        GoTo where;
        where.where = DueWhere::HoneyRoom;
        where.page = which;
        room->goFor(where);
        auto* page = room->findChild<ShownPage*>();
        if (page) page->setFocus();
        return page;
    }
    /// The window has the keyboard again before the next form is waited for.
    void inForm(const std::function<void(QDialog&)>& hands) const {
        comeBack();
        FormTest::inForm(hands);
    }
    static std::string said(const QDialog& form, const char* label) {
        const auto* words = form.findChild<QLabel*>(QLatin1String(label));
        return words ? words->text().toStdString() : std::string("no such label");
    }
    static std::string plain(const QString& rich) {
        return QTextDocumentFragment::fromHtml(rich).toPlainText().toStdString();
    }
    /// Column 0 is what the row is called.
    static std::string cell(const WordsTable& table, std::size_t row, std::size_t column) {
        if (row >= table.wordsRows().size()) return "no such row";
        const WordsRow& words = table.wordsRows()[row];
        if (column == 0) return words.mark.toStdString();
        return column <= words.cells.size() ? words.cells[column - 1].text.toStdString()
                                            : "no such column";
    }
};

inline const char* const sixtyJars =
    R"({"do":"fill-jars","on":"2027-09-01","bucket":{"bucket":"B3","run":"27-1"},"jars":"60 454 g, 4 227 g","lost_honey_g":100}
)";

}  // namespace combwright::test
