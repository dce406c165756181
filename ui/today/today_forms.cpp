#include "ui/today/today_forms.h"

#include <QCoreApplication>

#include "core/actions/yard/tasks.h"
#include "core/places/pages/due/due_words.h"
#include "core/storage/queries/names.h"
#include "core/storage/queries/yards.h"
#include "core/words/day_words.h"
#include "core/words/words.h"
#include "ui/shell/small_form.h"

namespace combwright {
namespace {

QString todayWord(const char* text) { return QCoreApplication::translate("today_forms", text); }

/// A day to come: what was said without a year and has been this year is next year's. False where
/// something was typed that is no day, which was then told.
bool dayToCome(Session& session, const QString& typed, std::optional<Day>& day) {
    day.reset();
    if (typed.trimmed().isEmpty()) return true;
    const Day today = session.clock().today();
    if (typed.trimmed().startsWith(QLatin1Char('+'))) {
        bool number = false;
        const int ahead = QStringView(typed).trimmed().mid(1).toInt(&number);
        if (number && ahead < 4000) day = today + days(ahead);
    } else {
        day = dayInWords(typed.trimmed().toStdString(), today);
        const bool saysYear = parseDay(typed.trimmed().toStdString()).has_value();
        if (day && *day < today && !saysYear) {
            // A weekday is the next one.
            day = today - *day < days(7)
                      ? *day + days(7)
                      : makeDay(yearOf(*day) + 1, monthOf(*day), dayOfMonth(*day));
        }
    }
    if (day) return true;
    session.tell(todayWord("%1 is no day. Write sat, 14 aug, +10 for in ten days, or 2027-08-14.")
                     .arg(typed),
                 true);
    return false;
}

}  // namespace

bool askForTask(QWidget* parent, Session& session, std::optional<Id<Yard>> yard) {
    SmallForm form(parent, session, todayWord("Note something to do"));
    auto* text = form.line(todayWord("What"), "text", todayWord("order foundation"), 36);
    auto* where = form.choice(todayWord("Where"), "where");
    where->addItem(todayWord("nowhere in particular"), QVariant());
    std::vector<Yard> yards;
    session.reading([&] { yards = openYards(session.read()); });
    for (const Yard& each : yards) {
        where->addItem(fromUtf8(each.name.text()), static_cast<qlonglong>(each.id.number));
        if (yard == each.id) where->setCurrentIndex(where->count() - 1);
    }
    auto* hive = form.line(todayWord("Hive"), "hive", todayWord("ML3; may stay empty"));
    auto* due = form.line(todayWord("By when"), "due", todayWord("sat, 14 aug; may stay empty"));
    auto* who = form.line(todayWord("Who"), "who", todayWord("may stay empty"));
    form.beginIn(text);
    form.onAccept([&] {
        NoteTask note;
        note.on = session.clock().today();
        const auto said = Name::of(text->text().simplified().toStdString());
        if (!said) {
            session.tell(todayWord("Say what is to be done."), true);
            return false;
        }
        note.text = *said;
        if (where->currentData().isValid()) note.yard = Id<Yard>{where->currentData().toLongLong()};
        if (!hive->text().trimmed().isEmpty()) {
            NameQuery query{.name = hive->text().trimmed().toStdString(), .on = note.on};
            if (note.yard) query.yard = where->currentText().toStdString();
            std::optional<Result<std::int64_t>> found;
            if (!session.reading([&] { found = findNamed(session.read(), Hive::table, query); }))
                return false;
            if (!*found) {
                session.tell(sentence(found->error()), true);
                return false;
            }
            note.hive = Id<Hive>{**found};
        }
        if (!dayToCome(session, due->text(), note.due)) return false;
        note.who = who->text().simplified().toStdString();
        return session.run(note).has_value();
    });
    return form.exec() == QDialog::Accepted;
}

bool askForQuiet(QWidget* parent, Session& session, const std::vector<DueItem>& items,
                 const QString& hive, const QString& yard) {
    SmallForm form(parent, session, todayWord("Do not hear of it"));
    std::vector<DueItem> rules;
    for (const DueItem& item : items)
        if (std::none_of(rules.begin(), rules.end(),
                         [&](const DueItem& each) { return each.rule == item.rule; }))
            rules.push_back(item);
    if (rules.empty()) return false;
    auto* rule = form.choice(todayWord("What"), "rule");
    for (const DueItem& item : rules) rule->addItem(ruleText(item.rule));
    auto* where = form.choice(todayWord("Where"), "where");
    const auto fillWhere = [&](int index) {
        const DueItem& item = rules[static_cast<std::size_t>(std::max(index, 0))];
        where->clear();
        if (item.hive && !hive.isEmpty()) where->addItem(hive, true);
        if (item.yard && !yard.isEmpty()) where->addItem(todayWord("all of %1").arg(yard), false);
    };
    fillWhere(0);
    QObject::connect(rule, &QComboBox::currentIndexChanged, &form, fillWhere);
    auto* reason = form.line(todayWord("Why"), "reason", todayWord("sold in autumn anyway"), 36);
    auto* until =
        form.line(todayWord("Until"), "until", todayWord("14 aug, +30; empty: until you end it"));
    form.say(todayWord(
        "It stays listed below as quieted, with the reason; Enter there hears it again."));
    form.beginIn(reason);
    form.onAccept([&] {
        const DueItem& item = rules[static_cast<std::size_t>(std::max(rule->currentIndex(), 0))];
        const auto why = Name::of(reason->text().simplified().toStdString());
        if (!why) {
            session.tell(todayWord("Say why; in a year you will want to know."), true);
            return false;
        }
        if (where->count() == 0) {
            session.tell(todayWord("This is of no hive and no yard; it goes away when it is done."),
                         true);
            return false;
        }
        QuietRule quiet;
        quiet.on = session.clock().today();
        quiet.rule = item.rule;
        if (where->currentData().toBool())
            quiet.hive = item.hive;
        else
            quiet.yard = item.yard;
        quiet.reason = *why;
        if (!dayToCome(session, until->text(), quiet.until)) return false;
        return session.run(quiet).has_value();
    });
    return form.exec() == QDialog::Accepted;
}

}  // namespace combwright
