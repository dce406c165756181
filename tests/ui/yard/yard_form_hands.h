// A small yard in June in the real window, and two hands on the keyboard of its forms.
#pragma once

#include "core/storage/queries/hive_days.h"
#include "core/storage/queries/queens.h"
#include "core/storage/queries/yards.h"
#include "tests/ui/storeroom/form_hands.h"

namespace combwright::test {

class YardFormTest : public FormTest {
  protected:
    void SetUp() override {
        ShellTest::SetUp();
        clock.set("2027-06-09");
        {
            auto season = Season::create(path("season.combwright"), clock);
            ASSERT_TRUE(season);
            playAll(*season, hillLines);
            playAll(
                *season,
                R"({"do":"add-hive","on":"2027-04-10","yard":"Hill","mark":"H3","boxes":"deep D3"}
{"do":"add-hive","on":"2027-04-10","yard":"Hill","mark":"H4"}
{"do":"add-yard","on":"2027-04-01","yard_name":"Creek"}
{"do":"add-hive","on":"2027-04-10","yard":"Creek","mark":"C1","boxes":"deep D9","origin":"nucleus"})");
        }
        ASSERT_TRUE(session.open(file()));
        place = test::openPlace<YardPlace>(*window);
    }

    static void letterIn(QDialog& chooser, Qt::Key letter) {
        QTest::keyClick(chooser.focusWidget() ? chooser.focusWidget() : &chooser, letter);
    }

    std::optional<Colony> colony(const char* mark) const { return colonyIn(read(), hive(mark).id); }
    std::optional<Queen> queenOf(const char* mark) const {
        const auto living = colony(mark);
        const auto stay = living ? queenStayIn(read(), living->id) : std::nullopt;
        return stay ? read().find(stay->queen) : std::nullopt;
    }
    /// The newest wait written down for a hive.
    std::optional<QueenWait> wait(const char* mark) const {
        const auto waits = read().where<QueenWait>({is("hive", hive(mark).id)});
        return waits.empty() ? std::nullopt : std::optional(waits.back());
    }
    bool shows(QDialog& form, const char* name) const {
        const auto* field = form.findChild<QWidget*>(QLatin1String(name));
        return field && field->isVisible();
    }

    const Day on = day("2027-06-09");
};

}  // namespace combwright::test
