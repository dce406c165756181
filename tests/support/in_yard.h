// A yard in the real window, a season of the test's own, and two hands on the keyboard: what the
// journeys through a year share.
#pragma once

#include "core/places/due/due_list.h"
#include "core/places/pages/due/due_words.h"
#include "core/places/pages/page_text.h"
#include "core/storage/queries/hive_days.h"
#include "core/storage/queries/queens.h"
#include "core/storage/queries/yards.h"
#include "tests/ui/storeroom/form_hands.h"
#include "ui/today/today_place.h"
#include "ui/yard/cells_editor.h"

namespace combwright::test {

class InYard : public FormTest {
  protected:
    void SetUp() override { ShellTest::SetUp(); }

    void begin(std::string_view today, std::string_view script) {
        clock.set(today);
        {
            auto season = Season::create(path("season.combwright"), clock);
            ASSERT_TRUE(season);
            playAll(*season, script);
        }
        ASSERT_TRUE(session.open(file()));
        toYard();
    }
    void toYard() {
        comeBack();
        place = openPlace<YardPlace>(*window);
        ASSERT_NE(place, nullptr);
        place->setFocus();
    }
    /// The day comes, and one types it where the day of the visit stands.
    void dayComes(const char* day) {
        clock.set(day);
        toYard();
        toDay(day);
    }
    void toDay(const char* day) {
        auto* field = named<QLineEdit>("day");
        field->setFocus();
        field->selectAll();
        QTest::keyClicks(field, QString::fromUtf8(day));
        QTest::keyClick(field, Qt::Key_Return);
        EXPECT_EQ(place->day(), test::day(day));
        place->setFocus();
    }
    /// On the board to the hive of that mark, by the arrows.
    void toHive(const char* mark) {
        place->setFocus();
        ASSERT_EQ(focus(), &place->board());
        for (int n = 0; n < 30; ++n) key(Qt::Key_Left);
        for (int n = 0; n < 30 && place->board().currentHive()->mark != QLatin1String(mark); ++n)
            key(Qt::Key_Right);
        ASSERT_EQ(place->board().currentHive()->mark, QLatin1String(mark));
    }
    /// X or Q and a letter, then the form behind them.
    void byLetter(Qt::Key chooser, Qt::Key letter, const std::function<void(QDialog&)>& hands) {
        inDialog("letter_chooser", [letter](QDialog& open) {
            QTest::keyClick(open.focusWidget() ? open.focusWidget() : &open, letter);
        });
        inDialog("small_form", hands);
        key(chooser);
        comeBack();
        place->setFocus();
    }
    /// A key of the place that opens a form at once.
    void byKey(Qt::Key pressed, const std::function<void(QDialog&)>& hands) {
        inDialog("small_form", hands);
        key(pressed);
        comeBack();
        place->setFocus();
    }
    /// The yard sheet of the day, a line for each hive in walking order; closed again.
    void writeSheet(const std::vector<const char*>& lines) {
        place->setFocus();
        key(Qt::Key_S);
        ASSERT_TRUE(place->sheetIsOpen());
        place->sheetView().table().editRow(1);
        for (const char* text : lines) {
            ASSERT_NE(line(), nullptr);
            QTest::keyClicks(line(), QString::fromUtf8(text));
            key(Qt::Key_Return);
        }
        key(Qt::Key_Return, Qt::ControlModifier);
        QApplication::processEvents();
        EXPECT_FALSE(place->sheetIsOpen()) << session.lastTold().toStdString();
    }
    std::string label(const char* name) const {
        const auto* text = named<QLabel>(name);
        return text ? text->text().toStdString() : std::string();
    }
    /// What the open sheet says beside a hive under "To mind".
    std::string mind(const char* mark) const {
        const SheetModel& model = place->sheetView().model();
        for (int row = 0; row < model.rowCount(); ++row)
            if (model.index(row, SheetModel::HiveColumn).data().toString() == QLatin1String(mark))
                return model.index(row, SheetModel::MindColumn).data().toString().toStdString();
        return "no such hive";
    }
    /// The story card of the hive one is at, all of it.
    std::string card() const {
        std::string all;
        for (const QLabel* words : place->boardPage().card().findChildren<QLabel*>())
            if (!words->isHidden()) all += words->text().toStdString() + "\n";
        return all;
    }
    std::string wholeStory() {
        place->setFocus();
        key(Qt::Key_Return);
        const std::string told = card();
        key(Qt::Key_Escape);
        return told;
    }
    /// Everything Today lists, each trip opened.
    std::string today() {
        comeBack();
        auto* there = openPlace<TodayPlace>(*window);
        there->setFocus();
        DueView& due = there->due();
        due.setFocus();
        QTest::keyClick(&due, Qt::Key_Home);
        std::string said;
        QString before;
        for (int n = 0; n < 200; ++n) {
            QTest::keyClick(&due, Qt::Key_Right);
            const QString now = due.accessibleDescription();
            if (now == before) break;
            said += now.toStdString() + "\n";
            before = now;
            QTest::keyClick(&due, Qt::Key_Down);
        }
        return said;
    }
    std::string printed(const char* sheet) const {
        for (const PrintSheet& each : window->current()
                                          ? qobject_cast<Place*>(window->current())->sheets()
                                          : std::vector<PrintSheet>{})
            if (each.id == QLatin1String(sheet)) return pageText(each.page()).toStdString();
        return "no such sheet";
    }
    void undo() {
        comeBack();
        QTest::keyClick(window.get(), Qt::Key_Z, Qt::ControlModifier);
    }
};

}  // namespace combwright::test
