#include "ui/yard/small_form.h"

#include <QDialogButtonBox>
#include <QFormLayout>
#include <QPushButton>
#include <QVBoxLayout>

namespace combwright {

SmallForm::SmallForm(QWidget* parent, Session& session, const QString& title)
    : QDialog(parent), m_form(new QFormLayout), m_reason(new QLabel(this)) {
    setWindowTitle(title);
    setObjectName(QStringLiteral("small_form"));
    auto* column = new QVBoxLayout(this);
    column->addLayout(m_form);
    m_form->setRowWrapPolicy(QFormLayout::WrapLongRows);
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

QLineEdit* SmallForm::line(const QString& label, const char* name, const QString& example) {
    auto* edit = new QLineEdit(this);
    edit->setObjectName(QLatin1String(name));
    edit->setPlaceholderText(example);
    edit->setAccessibleName(label);
    m_form->addRow(label, edit);
    return edit;
}

QComboBox* SmallForm::choice(const QString& label, const char* name) {
    auto* box = new QComboBox(this);
    box->setObjectName(QLatin1String(name));
    box->setAccessibleName(label);
    m_form->addRow(label, box);
    return box;
}

void SmallForm::say(const QString& text) {
    auto* words = new QLabel(text, this);
    words->setWordWrap(true);
    m_form->addRow(words);
}

}  // namespace combwright
