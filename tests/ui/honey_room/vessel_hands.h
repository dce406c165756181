// Five buckets of one run on the Honey page of the real window, and two hands on its keys and
// forms.
#pragma once

#include "core/actions/honey/readings.h"
#include "core/storage/queries/vessels.h"
#include "tests/support/five_buckets.h"
#include "tests/ui/storeroom/form_hands.h"
#include "ui/honey_room/honey_page.h"
#include "ui/honey_room/honey_room_place.h"

namespace combwright::test {

class VesselTest : public FormTest {
  protected:
    void SetUp() override {
        ShellTest::SetUp();
        clock.set("2027-08-20");
        {
            auto season = Season::create(path("season.combwright"), clock);
            ASSERT_TRUE(season);
            playAll(*season, fiveBuckets() + more());
        }
        ASSERT_TRUE(session.open(file()));
        room = test::openPlace<HoneyRoomPlace>(*window);
        ASSERT_NE(room, nullptr);
        key(Qt::Key_H, Qt::AltModifier);
        page = qobject_cast<HoneyPage*>(room->page());
        ASSERT_NE(page, nullptr) << "Alt+H opens the page";
        ASSERT_EQ(focus(), &page->table());
    }
    /// Does something in the form that a key opens; it is looked for until it is there, and must be
    /// gone afterwards.
    static void inForm(const std::function<void(QDialog&)>& hands) {
        auto* timer = new QTimer(qApp);
        QObject::connect(timer, &QTimer::timeout, timer, [timer, hands] {
            auto* form = qobject_cast<QDialog*>(QApplication::activeModalWidget());
            if (!form || !form->isVisible()) return;
            timer->stop();
            timer->deleteLater();
            form->activateWindow();
            if (QTest::qWaitForWindowActive(form))
                hands(*form);
            else
                ADD_FAILURE() << "the form does not get the keyboard";
            if (form->isVisible()) {
                ADD_FAILURE() << "the form stays: " << reason(*form).toStdString();
                form->reject();
            }
        });
        timer->start(5);
    }
    /// Lines behind the five buckets.
    virtual std::string more() const { return {}; }

    /// By the arrows to a bucket or lot.
    void walkTo(const char* name) {
        key(Qt::Key_Home);
        for (int n = 0; n < page->table().rowCount(); ++n) {
            if (page->current() && page->current()->view.name == name) return;
            key(Qt::Key_Down);
        }
        FAIL() << name << " does not stand there";
    }
    Bucket bucket(const char* mark) const {
        return *read().first<Bucket>({is("mark", std::string(mark))});
    }
    VesselLedger ledger(const char* mark) const {
        return vesselLedger(read(), {bucket(mark).id, std::nullopt}, day("2027-08-20"));
    }
    std::string card() const { return page->cardText().toStdString(); }
    /// All that stands in the row of the one chosen.
    std::string row() const {
        std::string all;
        const WordsRow* words = page->table().currentWords();
        if (!words) return all;
        for (const WordsCell& cell : words->cells)
            all += cell.text.toStdString() + " | " + cell.note.toStdString() + " || ";
        return all;
    }
    static std::string said(const QDialog& form, const char* label) {
        const auto* words = form.findChild<QLabel*>(QLatin1String(label));
        return words && words->isVisible() ? words->text().toStdString() : std::string();
    }

    HoneyRoomPlace* room = nullptr;
    HoneyPage* page = nullptr;
};

}  // namespace combwright::test
