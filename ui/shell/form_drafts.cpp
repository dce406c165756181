#include "ui/shell/form_drafts.h"

#include <QHBoxLayout>
#include <algorithm>

namespace combwright {

FormDrafts::FormDrafts(Session& session, QWidget* parent)
    : QWidget(parent),
      m_session(session),
      m_says(new QLabel(tr("What was typed here before and not kept is back."), this)),
      m_afresh(new QPushButton(tr("&Begin afresh"), this)) {
    setObjectName(QStringLiteral("form_drafts"));
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(session.look().space(8));
    m_says->setObjectName(QStringLiteral("draft_is_back"));
    m_says->setWordWrap(true);
    row->addWidget(m_says, 1);
    m_afresh->setObjectName(QStringLiteral("begin_afresh"));
    m_afresh->setAutoDefault(false);
    row->addWidget(m_afresh);
    connect(m_afresh, &QPushButton::clicked, this, &FormDrafts::beginAfresh);
    hide();
}

void FormDrafts::watch(QLineEdit* field, const QString& row) {
    add({row,
         {},
         [field] { return field->text(); },
         [field](const QString& text) { field->setText(text); }});
    connect(field, &QLineEdit::textChanged, this, [this, at = m_fields.size() - 1] { typed(at); });
}

void FormDrafts::watch(QComboBox* field, const QString& row) {
    add({row,
         {},
         [field] { return field->currentText(); },
         [field](const QString& text) {
             if (const int at = field->findText(text); at >= 0) field->setCurrentIndex(at);
         }});
    connect(field, &QComboBox::currentIndexChanged, this,
            [this, at = m_fields.size() - 1] { typed(at); });
}

void FormDrafts::add(Watched watched) {
    // A field that comes while the form is open is not kept yet, and may have been typed in before.
    watched.kept = watched.read();
    m_fields.push_back(std::move(watched));
    if (!m_begun) return;
    const Watched& made = m_fields.back();
    if (const QString was = m_drafts.offered(made.row); !was.isEmpty()) made.write(was);
}

bool FormDrafts::begin(const QString& sheet) {
    m_begun = false;
    m_drafts.show(m_session.drafts(), sheet);
    bool back = false;
    for (Watched& each : m_fields) {
        each.kept = each.read();
        const QString was = m_drafts.offered(each.row);
        if (was.isEmpty()) continue;
        each.write(was);
        back = back || each.read() != each.kept;
    }
    m_begun = true;
    setVisible(back);
    return back;
}

void FormDrafts::typed(std::size_t at) {
    if (!m_begun) return;
    const Watched& field = m_fields[at];
    const QString text = field.read();
    // Emptied or set back by hand, the field says what it says; nothing older is offered again.
    if (text.isEmpty() || text == field.kept)
        m_drafts.drop(field.row);
    else
        m_drafts.typed(field.row, text, field.kept);
}

bool FormDrafts::differs() const {
    return std::any_of(m_fields.begin(), m_fields.end(),
                       [](const Watched& each) { return each.read() != each.kept; });
}

void FormDrafts::kept() {
    for (Watched& each : m_fields) {
        each.kept = each.read();
        m_drafts.drop(each.row);
    }
    hide();
}

void FormDrafts::beginAfresh() {
    m_begun = false;
    for (const Watched& each : m_fields) {
        m_drafts.drop(each.row);
        each.write(each.kept);
    }
    m_begun = true;
    hide();
    Q_EMIT begunAfresh();
}

}  // namespace combwright
