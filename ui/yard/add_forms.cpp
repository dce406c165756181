#include "ui/yard/add_forms.h"

#include <QComboBox>
#include <QCoreApplication>
#include <QDialog>
#include <QDialogButtonBox>
#include <QFormLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>

#include "core/actions/boxes/box_list.h"
#include "core/actions/yard/yards.h"
#include "core/storage/queries/yards.h"
#include "core/words/words.h"

namespace combwright {
namespace {

QString formWord(const char* text) { return QCoreApplication::translate("add_forms", text); }

/// A form that closes only when its deed was done; what was refused stays typed, with the reason
/// below.
class SmallForm : public QDialog {
  public:
    SmallForm(QWidget* parent, Session& session, const QString& title)
        : QDialog(parent), m_form(new QFormLayout), m_reason(new QLabel(this)) {
        setWindowTitle(title);
        auto* column = new QVBoxLayout(this);
        column->addLayout(m_form);
        m_reason->setWordWrap(true);
        m_reason->setObjectName(QStringLiteral("reason"));
        m_reason->hide();
        column->addWidget(m_reason);
        auto* buttons = new QDialogButtonBox(QDialogButtonBox::Ok | QDialogButtonBox::Cancel, this);
        buttons->button(QDialogButtonBox::Ok)->setProperty("primary", true);
        column->addWidget(buttons);
        connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
        connect(buttons, &QDialogButtonBox::accepted, this, [this] {
            if (m_deed()) accept();
        });
        connect(&session, &Session::told, this, [this](const QString& text, bool bad) {
            m_reason->setText(text);
            m_reason->setVisible(bad);
        });
        setMinimumWidth(session.look().space(420));
    }
    QLineEdit* line(const QString& label, const char* name, const QString& example) {
        auto* edit = new QLineEdit(this);
        edit->setObjectName(QLatin1String(name));
        edit->setPlaceholderText(example);
        edit->setAccessibleName(label);
        m_form->addRow(label, edit);
        return edit;
    }
    QComboBox* choice(const QString& label, const char* name) {
        auto* box = new QComboBox(this);
        box->setObjectName(QLatin1String(name));
        box->setAccessibleName(label);
        m_form->addRow(label, box);
        return box;
    }
    void onAccept(std::function<bool()> deed) { m_deed = std::move(deed); }

  private:
    QFormLayout* m_form;
    QLabel* m_reason;
    std::function<bool()> m_deed;
};

}  // namespace

std::optional<Id<Yard>> askForYard(QWidget* parent, Session& session, Day on) {
    SmallForm form(parent, session, formWord("Add a yard"));
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
            const auto kind = boxKindNamed(session.read(), super->text().toStdString());
            if (!kind) {
                session.tell(formWord("No kind of box is called %1.").arg(super->text()), true);
                return false;
            }
            add.usualSuper = kind->id;
        }
        made = session.run(add);
        return made.has_value();
    });
    form.exec();
    return made;
}

std::optional<Id<Hive>> askForHive(QWidget* parent, Session& session, Id<Yard> yard, Day on) {
    SmallForm form(parent, session, formWord("Add a hive"));
    auto* mark = form.line(formWord("Mark"), "mark", formWord("ML3, as painted on it"));
    auto* boxes = form.line(formWord("Boxes from the floor up"), "boxes",
                            formWord("deep D33, x, medium M33 9"));
    auto* origin = form.choice(formWord("Colony"), "origin");
    origin->addItem(formWord("none yet"));
    for (const std::string_view each : Choices<Origin>::words) origin->addItem(fromUtf8(each));
    origin->setCurrentIndex(1);
    std::optional<Id<Hive>> made;
    form.onAccept([&] {
        const auto text = Name::of(mark->text().toStdString());
        if (!text) {
            session.tell(formWord("A hive needs a mark."), true);
            return false;
        }
        AddHive add;
        add.on = on;
        add.yard = yard;
        add.hive = *text;
        add.boxes = boxes->text().toStdString();
        if (origin->currentIndex() > 0)
            add.origin = static_cast<Origin>(origin->currentIndex() - 1);
        made = session.run(add);
        return made.has_value();
    });
    form.exec();
    return made;
}

}  // namespace combwright
