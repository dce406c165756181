#include "ui/yard/add_forms.h"

#include <QCoreApplication>

#include "core/actions/amend/amend.h"
#include "core/actions/boxes/box_list.h"
#include "core/actions/boxes/boxes.h"
#include "core/actions/boxes/counted_marks.h"
#include "core/actions/yard/yards.h"
#include "core/storage/queries/yards.h"
#include "core/words/kind_words.h"
#include "core/words/typed_words.h"
#include "core/words/words.h"
#include "ui/shell/form_reading.h"
#include "ui/shell/small_form.h"

namespace combwright {
namespace {

QString formWord(const char* text) { return QCoreApplication::translate("add_forms", text); }

/// The kind of box a person means; what is not known is told.
std::optional<BoxKind> kindTyped(Session& session, const QString& typed) {
    auto kind = boxKindTyped(session.read(), typed.toStdString());
    if (kind) return *std::move(kind);
    session.tell(sentence(kind.error()), true);
    return std::nullopt;
}

/// A list of boxes as it is kept; what it cannot mean is told.
std::optional<std::string> listTyped(Session& session, const QString& typed) {
    auto list = boxListInEnglish(session.read(), typed.toStdString());
    if (list) return *std::move(list);
    session.tell(sentence(list.error()), true);
    return std::nullopt;
}

}  // namespace

std::optional<Id<Yard>> askForYard(QWidget* parent, Session& session, Day on) {
    SmallForm form(parent, session, formWord("Add a yard"));
    form.ofDay(on);
    auto* name = form.line(formWord("Name"), "yard_name", formWord("Mill Lane"));
    auto* place = form.line(formWord("Where it is"), "place", formWord("may stay empty"));
    auto* super = form.line(formWord("Usual super"), "usual_super",
                            formWord("medium: what +1 on the sheet puts on"));
    std::optional<Id<Yard>> made;
    form.onAccept([&] {
        const auto text = Name::of(name->text().toStdString());
        if (!text) {
            session.tell(formWord("A yard needs a name."), true);
            return false;
        }
        AddYard add{.on = on,
                    .yard = *text,
                    .walkOrder = {},
                    .place = place->text().toStdString(),
                    .registration = {},
                    .extractBy = {},
                    .winterNeed = {},
                    .usualSuper = {}};
        if (!super->text().trimmed().isEmpty()) {
            const auto kind = kindTyped(session, super->text());
            if (!kind) return false;
            add.usualSuper = kind->id;
        }
        made = session.run(add);
        return made.has_value();
    });
    form.exec();
    return made;
}

bool askForUsualSuper(QWidget* parent, Session& session, const Yard& yard, Day on) {
    SmallForm form(parent, session,
                   formWord("The usual super of %1").arg(fromUtf8(yard.name.text())));
    form.ofDay(on);
    auto* super = form.line(formWord("Usual super"), "usual_super",
                            formWord("medium: what +1 on the sheet puts on"));
    if (const auto kind = session.read().find(yard.usualSuper))
        super->setText(kindText(kind->name.text()));
    auto* why = form.line(formWord("Why"), "why", formWord("shallow ones from this year on"));
    form.say(formWord("Boxes that were put on stay what they are."));
    form.onAccept([&] {
        Yard after = yard;
        after.usualSuper.reset();
        if (!super->text().trimmed().isEmpty()) {
            const auto kind = kindTyped(session, super->text());
            if (!kind) return false;
            after.usualSuper = kind->id;
        }
        const auto change = amendment(on, yard, after);
        return !change || session.run(*change, StepNote{why->text().simplified().toStdString(), {}})
                              .has_value();
    });
    return form.exec() == QDialog::Accepted;
}

std::optional<Id<Hive>> askForHive(QWidget* parent, Session& session, Id<Yard> yard, Day on) {
    SmallForm form(parent, session, formWord("Add a hive"));
    auto* mark = form.line(formWord("Mark"), "mark",
                           formWord("ML3, as painted on it; several alike: ML3-ML8"));
    auto* boxes = form.line(formWord("Boxes from the floor up"), "boxes",
                            formWord("deep D33, x, medium M33 9"), 50);
    auto* origin = form.choice(formWord("Colony"), "origin");
    origin->addItem(formWord("none yet"));
    for (const std::string_view each : Choices<Origin>::words) origin->addItem(choiceText(each));
    origin->setCurrentIndex(1);
    auto* several = form.say(QStringLiteral(" "));
    several->setObjectName(QStringLiteral("several"));
    const auto marks = [mark] { return marksListed(typedWords(mark), "marks"); };
    const auto look = [&] {
        const auto meant = marks();
        const bool many = meant && meant->size() > 1;
        form.setWindowTitle(titleOfDay(
            session, many ? formWord("Add %1 hives").arg(meant->size()) : formWord("Add a hive"),
            on));
        form.sayAgain(several, many ? formWord("%1 hives alike, %2 to %3, set up in one step. A "
                                               "mark on a box counts up from hive to hive: D31, "
                                               "D32 …")
                                          .arg(meant->size())
                                          .arg(fromUtf8(meant->front()), fromUtf8(meant->back()))
                                    : QString());
    };
    QObject::connect(mark, &QLineEdit::textChanged, &form, look);
    look();
    std::optional<Id<Hive>> made;
    form.onAccept([&] {
        const auto meant = marks();
        if (!meant) {
            session.tell(sentence(meant.error()), true);
            return false;
        }
        const auto list = listTyped(session, boxes->text());
        if (!list) return false;
        if (meant->size() > 1) {
            AddHives add;
            add.on = on;
            add.yard = yard;
            add.marks = typedWords(mark);
            add.boxes = *list;
            if (origin->currentIndex() > 0)
                add.origin = static_cast<Origin>(origin->currentIndex() - 1);
            const auto hives = session.run(add);
            if (hives) made = hives->front();
            return hives.has_value();
        }
        const auto text = Name::of(mark->text().toStdString());
        if (!text) {
            session.tell(formWord("A hive needs a mark."), true);
            return false;
        }
        AddHive add;
        add.on = on;
        add.yard = yard;
        add.hive = *text;
        add.boxes = *list;
        if (origin->currentIndex() > 0)
            add.origin = static_cast<Origin>(origin->currentIndex() - 1);
        made = session.run(add);
        return made.has_value();
    });
    form.exec();
    return made;
}

bool askForBoxes(QWidget* parent, Session& session, Day on) {
    SmallForm form(parent, session, formWord("New boxes"));
    form.ofDay(on);
    auto* kind = form.line(formWord("Kind"), "kind", formWord("medium, deep, shallow"));
    auto* mark = form.line(formWord("First mark"), "first_mark", formWord("M60; may stay empty"));
    auto* count = form.line(formWord("How many"), "count", formWord("1"));
    auto* contents = form.line(formWord("In each"), "contents", formWord("9 drawn"));
    auto* stack = form.line(formWord("Shelf"), "stack", formWord("may stay empty"));
    form.say(formWord("They stand in the storeroom then; B puts one on a hive."));
    form.onAccept([&] {
        const auto meant = kindTyped(session, kind->text());
        if (!meant) return false;
        AddBoxes add{.on = on,
                     .kind = meant->id,
                     .firstMark = mark->text().simplified().toStdString(),
                     .count = {},
                     .contents = typedInEnglish(contents->text()).toStdString(),
                     .stack = stack->text().simplified().toStdString()};
        if (const QString many = count->text().trimmed(); !many.isEmpty()) {
            bool whole = false;
            add.count = Count(many.toLongLong(&whole));
            if (!whole) {
                session.tell(formWord("\"%1\" is no whole number of boxes.").arg(many), true);
                return false;
            }
        }
        return session.run(add).has_value();
    });
    return form.exec() == QDialog::Accepted;
}

}  // namespace combwright
