#include "ui/honey_room/day_log_form.h"

#include <QApplication>
#include <QCoreApplication>
#include <QKeyEvent>
#include <QLocale>
#include <QShortcut>
#include <array>
#include <utility>

#include "core/actions/honey_room/room_days.h"
#include "core/actions/honey_room/run_rules.h"
#include "core/places/honey_room/room_boxes.h"
#include "core/words/clock_words.h"
#include "core/words/day_words.h"
#include "core/words/figures.h"
#include "core/words/words.h"
#include "ui/shell/session.h"
#include "ui/shell/small_form.h"

namespace combwright {
namespace {

QString dayForm(const char* text) { return QCoreApplication::translate("day_log_form", text); }

/// Yes, no, or nobody said.
struct SaidField {
    QComboBox* box = nullptr;
    std::optional<bool> said() const {
        return box->currentIndex() == 0 ? std::nullopt : std::optional(box->currentIndex() == 1);
    }
    void show(const std::optional<bool>& value) const {
        box->setCurrentIndex(!value ? 0 : *value ? 1 : 2);
    }
};

class DayLogForm : public SmallForm {
  public:
    DayLogForm(QWidget* parent, Session& session, Day on)
        : SmallForm(parent, session, dayForm("Log of the day")), m_session(session) {
        setObjectName(QStringLiteral("day_log"));
        say(dayForm(
            "As on the sheet, in its order. What is left empty is not known. By the number "
            "pad: + and − go from line to line, 1 is yes, 2 no, 0 unknown; Enter keeps it."));
        m_day = line(word("on"), "day", dayForm("today, yesterday, 8 aug"));
        m_day->setText(fromUtf8(isoText(on)));
        m_who = line(word("who"), "who", dayForm("Ann, Ben"));
        m_hands = line(word("hands"), "hands", QStringLiteral("2"));
        m_begun = line(word("begun"), "begun", QStringLiteral("9:15"));
        const QString degrees = shownTemperature(0).unit;
        m_room = line(dayForm("Room, %1").arg(degrees), "room", shownTemperature(27).figure);
        m_damp = line(dayForm("Damp, %"), "damp", QStringLiteral("54"));
        m_cleaned = said("room_cleaned");
        m_washed = said("hands_washed");
        m_dry = said("machine_dry");
        m_knife = said("knife_checked");
        m_machine = said("machine_washed");
        m_ended = line(word("ended"), "ended", QStringLiteral("14:40"));
        m_note = line(word("note"), "note", {});
        connect(m_day, &QLineEdit::editingFinished, this, [this] { showKnown(); });
        for (QWidget* field : findChildren<QWidget*>()) field->installEventFilter(this);
        beginIn(m_who);
        onAccept([this] { return keep(); });
        showKnown();
    }

  protected:
    /// The number pad alone fills it in: gloves find no Tab.
    bool eventFilter(QObject* watched, QEvent* event) override {
        if (event->type() != QEvent::KeyPress) return SmallForm::eventFilter(watched, event);
        const auto& key = static_cast<const QKeyEvent&>(*event);
        const bool onPad = key.modifiers() & Qt::KeypadModifier;
        if (onPad && (key.key() == Qt::Key_Plus || key.key() == Qt::Key_Minus))
            return focusNextPrevChild(key.key() == Qt::Key_Plus);
        auto* choice = qobject_cast<QComboBox*>(watched);
        if (choice && key.key() >= Qt::Key_0 && key.key() <= Qt::Key_2) {
            choice->setCurrentIndex(key.key() - Qt::Key_0);
            return true;
        }
        return SmallForm::eventFilter(watched, event);
    }

  private:
    SaidField said(const char* key) {
        SaidField field{choice(word(key), key)};
        field.box->addItems({dayForm("unknown"), dayForm("yes"), dayForm("no")});
        return field;
    }
    std::optional<Day> day() const {
        return dayInWords(m_day->text().trimmed().toStdString(), m_session.clock().today());
    }

    /// What is known of the day asked for; of what was typed for another day nothing is lost.
    void showKnown() {
        const auto on = day();
        if (!on || on == m_shown) return;
        m_shown = on;
        RoomDay log;
        RoomAir air;
        m_session.reading([&] {
            air = roomAir(m_session.read(), *on);
            if (auto known = m_session.read().first<RoomDay>({is("on_day", *on)}))
                log = *std::move(known);
        });
        const auto text = [](QLineEdit* edit, const QString& known) {
            if (!edit->isModified()) edit->setText(known);
        };
        text(m_who, fromUtf8(log.who));
        text(m_hands, log.hands ? QString::number(log.hands->value()) : QString());
        text(m_begun, log.begun ? clockText(*log.begun) : QString());
        text(m_room, air.warm ? shownTemperature(air.warm->celsius()).figure : QString());
        text(m_damp, air.damp ? QLocale().toString(air.damp->value() * 100, 'g', 4) : QString());
        text(m_ended, log.ended ? clockText(*log.ended) : QString());
        text(m_note, fromUtf8(log.note));
        for (const auto& [field, known] : {std::pair{m_cleaned, log.roomCleaned},
                                           {m_washed, log.handsWashed},
                                           {m_dry, log.machineDry},
                                           {m_knife, log.knifeChecked},
                                           {m_machine, log.machineWashed}})
            if (known || !field.said()) field.show(known);
    }

    bool refuse(QLineEdit* edit, const QString& why) {
        edit->setFocus();
        edit->selectAll();
        m_session.tell(why, true);
        return false;
    }
    /// A time left empty is none; one nobody can read is told.
    bool readClock(QLineEdit* edit, Day on, std::optional<Instant>& moment) {
        const QString text = edit->text().trimmed();
        if (text.isEmpty()) return true;
        moment = typedClock(text, on);
        return moment || refuse(edit, dayForm("%1 is no time of day: type it as 9:15. Nothing was "
                                              "kept yet.")
                                          .arg(text));
    }

    /// How warm and damp it is, where that was typed: what stood there already is not new.
    bool readAir(LogRoomDay& log) {
        const QString warm = m_room->text().trimmed();
        if (m_room->isModified() && !warm.isEmpty()) {
            log.room = typedTemperature(warm);
            if (!log.room || log.room->celsius() < coldestRoomC ||
                log.room->celsius() > warmestRoomC)
                return refuse(m_room, dayForm("%1 is no warmth of a room: type it as %2. Nothing "
                                              "was kept yet.")
                                          .arg(warm, shownTemperature(27).text()));
        }
        QString damp = m_damp->text().trimmed();
        if (!m_damp->isModified() || damp.isEmpty()) return true;
        if (damp.endsWith(QLatin1Char('%'))) damp = damp.chopped(1).trimmed();
        const auto percent = typedNumber(damp);
        // No room is drier than a tenth; "0.54" is a slip for 54.
        if (!percent || *percent < 10 || *percent > 100)
            return refuse(m_damp, dayForm("%1 is no damp of a room: type it in per cent, 54. "
                                          "Nothing was kept yet.")
                                      .arg(damp));
        log.damp = Share::rounded(*percent / 100);
        return true;
    }

    bool keep() {
        LogRoomDay log;
        const auto on = day();
        if (!on)
            return refuse(m_day, dayForm("%1 is no day: type it as 2027-08-08, or yesterday. "
                                         "Nothing was kept yet.")
                                     .arg(m_day->text()));
        log.on = *on;
        log.who = m_who->text().trimmed().toStdString();
        if (const QString hands = m_hands->text().trimmed(); !hands.isEmpty()) {
            bool number = false;
            const int many = hands.toInt(&number);
            if (!number)
                return refuse(m_hands, dayForm("%1 is no number of hands: type 2. Nothing was kept "
                                               "yet.")
                                           .arg(hands));
            log.hands = Count(many);
        }
        if (!readClock(m_begun, *on, log.begun) || !readClock(m_ended, *on, log.ended))
            return false;
        if (!readAir(log)) return false;
        log.roomCleaned = m_cleaned.said();
        log.handsWashed = m_washed.said();
        log.machineDry = m_dry.said();
        log.knifeChecked = m_knife.said();
        log.machineWashed = m_machine.said();
        log.note = m_note->text().trimmed().toStdString();
        return m_session.run(log).has_value();
    }

    Session& m_session;
    std::optional<Day> m_shown;
    QLineEdit* m_day;
    QLineEdit* m_who;
    QLineEdit* m_hands;
    QLineEdit* m_begun;
    QLineEdit* m_room;
    QLineEdit* m_damp;
    SaidField m_cleaned, m_washed, m_dry, m_knife, m_machine;
    QLineEdit* m_ended;
    QLineEdit* m_note;
};

}  // namespace

bool askForDayLog(QWidget* parent, Session& session, Day on) {
    // One form at a time.
    if (!session.hasSeason() || QApplication::activeModalWidget()) return false;
    DayLogForm form(parent, session, on);
    return form.exec() == QDialog::Accepted;
}

void openDayLog(QWidget* parent, Session& session) {
    if (askForDayLog(parent, session, session.clock().today()))
        session.tell(dayForm("The log of the day is kept."));
}

void addDayLogKey(QWidget* place, Session& session) {
    auto* key = new QShortcut(QKeySequence(Qt::CTRL | Qt::Key_L), place);
    key->setObjectName(QStringLiteral("day_log_key"));
    key->setContext(Qt::WidgetWithChildrenShortcut);
    key->setWhatsThis(dayForm("log of the day"));
    QObject::connect(key, &QShortcut::activated, place,
                     [place, &session] { openDayLog(place, session); });
}

}  // namespace combwright
