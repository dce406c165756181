#include "ui/shell/copies/what_if_dialog.h"

#include <QDialogButtonBox>
#include <QLabel>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QVBoxLayout>
#include <algorithm>

#include "core/places/pages/page_text.h"
#include "ui/print/print_dialog.h"

namespace combwright {

WhatIfDialog::WhatIfDialog(const Look& look, const QString& title, const Page& differences,
                           const QStringList& conflicts, bool mayWrite, QWidget* parent)
    : QDialog(parent) {
    setObjectName(QStringLiteral("what_if"));
    setWindowTitle(title);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(look.space(24), look.space(16), look.space(24), look.space(16));
    column->setSpacing(look.space(8));
    auto* head = new QLabel(
        conflicts.isEmpty()
            ? tr("All of it can be done in the season, step by step; each can be taken back.")
            : tr("It cannot be adopted as it is. What does not go:"),
        this);
    head->setObjectName(QStringLiteral("what_if_head"));
    head->setFont(look.font(TextSize::Head, true));
    head->setWordWrap(true);
    column->addWidget(head);
    if (!conflicts.isEmpty()) {
        auto* list = new QLabel(conflicts.join(QLatin1Char('\n')), this);
        list->setObjectName(QStringLiteral("what_if_conflicts"));
        list->setTextFormat(Qt::PlainText);
        list->setWordWrap(true);
        column->addWidget(list);
    }
    auto* text = new QPlainTextEdit(pageText(differences, 96), this);
    text->setObjectName(QStringLiteral("what_if_differences"));
    text->setAccessibleName(tr("What differs between the season and the what-if"));
    text->setReadOnly(true);
    text->setTabChangesFocus(true);
    text->setLineWrapMode(QPlainTextEdit::NoWrap);
    QFont even(QStringLiteral("monospace"));
    even.setStyleHint(QFont::Monospace);
    even.setPixelSize(look.font(TextSize::Note).pixelSize());
    text->setFont(even);
    column->addWidget(text, 1);
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Close, this);
    const auto add = [&](const QString& words, const QString& name, Wish wish) {
        auto* button = buttons->addButton(words, QDialogButtonBox::ActionRole);
        button->setObjectName(name);
        button->setAutoDefault(false);
        connect(button, &QPushButton::clicked, this, [this, wish] {
            m_wish = wish;
            accept();
        });
        return button;
    };
    add(tr("Adopt it"), QStringLiteral("adopt"), Wish::Adopt)
        ->setEnabled(mayWrite && conflicts.isEmpty());
    add(tr("Drop the what-if"), QStringLiteral("drop"), Wish::Drop);
    auto* print = buttons->addButton(tr("Print…"), QDialogButtonBox::ActionRole);
    print->setAutoDefault(false);
    connect(print, &QPushButton::clicked, this,
            [this, differences, look] { printWithPreview(this, differences, look); });
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    column->addWidget(buttons);
    const QSize room = parent ? parent->size() : QSize(1280, 800);
    resize(std::min(look.space(900), room.width() - look.space(32)),
           std::min(look.space(560), room.height() - look.space(32)));
    text->setFocus();
}

}  // namespace combwright
