#include "ui/shell/copies/two_days_dialog.h"

#include <QDialogButtonBox>
#include <QHBoxLayout>
#include <QVBoxLayout>
#include <algorithm>

#include "core/places/pages/page_text.h"
#include "core/words/day_words.h"
#include "core/words/words.h"
#include "ui/print/print_dialog.h"

namespace combwright {
namespace {

constexpr int lettersOfLine = 96;

}  // namespace

TwoDaysDialog::TwoDaysDialog(const Look& look, Day from, Day today, Between between,
                             QWidget* parent)
    : QDialog(parent), m_look(look), m_today(today), m_between(std::move(between)) {
    setObjectName(QStringLiteral("two_days"));
    setWindowTitle(tr("Compare two days"));
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(look.space(24), look.space(16), look.space(24), look.space(16));
    column->setSpacing(look.space(8));
    auto* head =
        new QLabel(tr("What differs between the end of one day and the end of another"), this);
    head->setFont(look.font(TextSize::Head, true));
    head->setWordWrap(true);
    column->addWidget(head);
    auto* days = new QHBoxLayout;
    days->setSpacing(look.space(8));
    const auto addDay = [&](const QString& words, const QString& name, Day day) {
        auto* label = new QLabel(words, this);
        auto* field = new QLineEdit(dayText(day), this);
        field->setObjectName(name);
        label->setBuddy(field);
        label->setMinimumWidth(label->sizeHint().width() + look.space(4));
        days->addWidget(label);
        days->addWidget(field, 1);
        connect(field, &QLineEdit::returnPressed, this, &TwoDaysDialog::compare);
        return field;
    };
    m_from = addDay(tr("&From"), QStringLiteral("days_from"), from);
    m_to = addDay(tr("&To"), QStringLiteral("days_to"), today);
    auto* compares = new QPushButton(tr("Compare"), this);
    compares->setObjectName(QStringLiteral("days_compare"));
    compares->setAutoDefault(false);
    connect(compares, &QPushButton::clicked, this, &TwoDaysDialog::compare);
    days->addWidget(compares);
    column->addLayout(days);
    m_says = new QLabel(this);
    m_says->setObjectName(QStringLiteral("days_says"));
    m_says->setWordWrap(true);
    m_says->setTextFormat(Qt::PlainText);
    column->addWidget(m_says);
    m_text = new QPlainTextEdit(this);
    m_text->setObjectName(QStringLiteral("days_differences"));
    m_text->setAccessibleName(tr("What differs between the two days"));
    m_text->setReadOnly(true);
    m_text->setTabChangesFocus(true);
    m_text->setLineWrapMode(QPlainTextEdit::NoWrap);
    QFont even(QStringLiteral("monospace"));
    even.setStyleHint(QFont::Monospace);
    even.setPixelSize(look.font(TextSize::Note).pixelSize());
    m_text->setFont(even);
    column->addWidget(m_text, 1);
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Close, this);
    buttons->button(QDialogButtonBox::Close)->setAutoDefault(false);
    m_print = buttons->addButton(tr("Print…"), QDialogButtonBox::ActionRole);
    m_print->setObjectName(QStringLiteral("days_print"));
    m_print->setAutoDefault(false);
    connect(m_print, &QPushButton::clicked, this, &TwoDaysDialog::print);
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    column->addWidget(buttons);
    const QSize room = parent ? parent->size() : QSize(1280, 800);
    resize(std::min(look.space(900), room.width() - look.space(32)),
           std::min(look.space(560), room.height() - look.space(32)));
    compare();
    m_from->setFocus();
    m_from->selectAll();
}

void TwoDaysDialog::compare() {
    m_page.reset();
    m_text->clear();
    m_print->setEnabled(false);
    std::optional<Day> read[2];
    QLineEdit* fields[] = {m_from, m_to};
    for (std::size_t i = 0; i < 2; ++i) {
        read[i] = dayInWords(fields[i]->text().toStdString(), m_today);
        if (read[i]) continue;
        m_says->setText(noDayText(fields[i]->text()));
        fields[i]->setFocus();
        fields[i]->selectAll();
        return;
    }
    const auto [from, to] = std::minmax(*read[0], *read[1]);
    m_from->setText(dayText(from));
    m_to->setText(dayText(to));
    m_page = m_between(from, to);
    m_says->setText(m_page
                        ? tr("From the end of %1 to the end of %2:").arg(dayText(from), dayText(to))
                        : tr("That could not be found out; why stands in the foot of the "
                             "window."));
    if (!m_page) return;
    m_text->setPlainText(pageText(*m_page, lettersOfLine));
    m_print->setEnabled(true);
}

void TwoDaysDialog::print() {
    if (m_page) printWithPreview(this, *m_page, m_look);
}

}  // namespace combwright
