#include "ui/shell/small_form.h"

#include <QApplication>
#include <QDialogButtonBox>
#include <QFormLayout>
#include <QKeyEvent>
#include <QPushButton>
#include <QScreen>
#include <QScrollArea>
#include <QScrollBar>
#include <QShowEvent>
#include <QVBoxLayout>
#include <algorithm>

#include "core/words/words.h"

namespace combwright {
namespace {

/// Of a choice; longer words are cut.
constexpr qsizetype mostLetters = 32;

}  // namespace

QString titleOfDay(const Session& session, const QString& title, Day on) {
    return on == session.clock().today() ? title : QStringLiteral("%1, %2").arg(title, dayText(on));
}

SmallForm::SmallForm(QWidget* parent, Session& session, const QString& title)
    : QDialog(parent), m_session(session), m_form(new QFormLayout), m_reason(new QLabel(this)) {
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
    m_buttons = buttons;
    buttons->button(QDialogButtonBox::Ok)->setProperty("primary", true);
    column->addWidget(buttons);
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    connect(buttons, &QDialogButtonBox::accepted, this, [this] {
        if (!m_deed()) return;
        if (m_drafts) m_drafts->kept();
        accept();
    });
    connect(&session, &Session::told, this, [this](const QString& text, bool bad) {
        m_reason->setText(text);
        m_reason->setVisible(bad);
        growToFit();
    });
    setMinimumWidth(session.look().space(420));
}

void SmallForm::enter(QWidget* field) {
    // The buttons were made first; by Tab one comes to them last.
    if (!m_fields.empty()) setTabOrder(m_fields.back(), field);
    m_fields.push_back(field);
    if (auto* edit = qobject_cast<QLineEdit*>(field))
        connect(edit, &QLineEdit::textChanged, this, &SmallForm::forgetReason);
    else if (auto* box = qobject_cast<QComboBox*>(field))
        connect(box, &QComboBox::currentIndexChanged, this, &SmallForm::forgetReason);
}

/// Why something was refused is about what was typed then.
void SmallForm::forgetReason() {
    if (!m_reason->isVisible()) return;
    m_reason->hide();
    m_session.forgetRefusal();
}

void SmallForm::fitWith(QComboBox* choice, const std::function<void()>& fit) {
    connect(choice, &QComboBox::currentIndexChanged, this, fit);
    fit();
}

void SmallForm::scrollFields() {
    auto* column = static_cast<QVBoxLayout*>(layout());
    m_scroll = new QScrollArea(this);
    m_scroll->setFrameShape(QFrame::NoFrame);
    m_scroll->setWidgetResizable(true);
    m_scroll->setFocusPolicy(Qt::NoFocus);
    m_scroll->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    auto* inside = new QWidget(m_scroll);
    column->removeItem(m_form);
    m_form->setParent(nullptr);
    inside->setLayout(m_form);
    m_form->setContentsMargins(0, 0, 0, 0);
    m_scroll->setWidget(inside);
    column->insertWidget(0, m_scroll, 1);
    // The field one comes to by Tab is in sight.
    connect(qApp, &QApplication::focusChanged, this, [this, inside](QWidget*, QWidget* now) {
        if (now && inside->isAncestorOf(now)) m_scroll->ensureWidgetVisible(now);
    });
}

void SmallForm::keepDraft(const QString& sheet) {
    m_drafts = new FormDrafts(m_session, this);
    for (QWidget* field : m_fields) {
        if (auto* edit = qobject_cast<QLineEdit*>(field))
            m_drafts->watch(edit, edit->objectName());
        else if (auto* box = qobject_cast<QComboBox*>(field))
            m_drafts->watch(box, box->objectName());
    }
    static_cast<QVBoxLayout*>(layout())->insertWidget(1, m_drafts);
    m_drafts->begin(sheet);
    connect(m_drafts, &FormDrafts::begunAfresh, this, [this] { m_fields.front()->setFocus(); });
}

void SmallForm::growToFit() {
    // What scrolls has changed without the column around it having heard of it.
    if (m_scroll) m_scroll->updateGeometry();
    layout()->activate();
    // Where the fields scroll nothing outside them may wrap, and then there is no height for a
    // width.
    int needed = layout()->hasHeightForWidth() ? layout()->totalHeightForWidth(width())
                                               : layout()->totalSizeHint().height();
    if (m_scroll) {
        QLayout* inside = m_scroll->widget()->layout();
        inside->activate();
        const int wide = m_scroll->viewport()->width();
        const int high = inside->hasHeightForWidth() ? inside->totalHeightForWidth(wide)
                                                     : inside->totalMinimumSize().height();
        needed += high - m_scroll->sizeHint().height();
        needed = std::min(std::max(needed, height()), screen()->availableSize().height() * 9 / 10);
    }
    if (needed > height()) resize(width(), needed);
}

void SmallForm::done(int result) {
    QDialog::done(result);
    // Why something was refused is about a form that is gone.
    if (result == Rejected) m_session.forgetRefusal();
}

bool SmallForm::goOn() {
    const auto at = std::find(m_fields.begin(), m_fields.end(), focusWidget());
    if (at == m_fields.end()) return false;
    const auto next = std::find_if(at + 1, m_fields.end(), [](const QWidget* field) {
        return field->isEnabled() && !field->isHidden();
    });
    QWidget* to = next == m_fields.end() ? m_buttons->button(QDialogButtonBox::Ok) : *next;
    to->setFocus(Qt::TabFocusReason);
    return true;
}

/// What is said below the fields is nowhere one comes to by Tab.
void SmallForm::scrollBy(int key) {
    QScrollBar* bar = m_scroll->verticalScrollBar();
    bar->triggerAction(key == Qt::Key_PageDown ? QScrollBar::SliderPageStepAdd
                                               : QScrollBar::SliderPageStepSub);
}

void SmallForm::keyPressEvent(QKeyEvent* event) {
    const bool enter = event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter;
    const bool plain = !(event->modifiers() & ~Qt::KeypadModifier);
    if (m_enterGoesOn && enter && plain && goOn()) return;
    const bool page = event->key() == Qt::Key_PageDown || event->key() == Qt::Key_PageUp;
    if (m_scroll && page) return scrollBy(event->key());
    QDialog::keyPressEvent(event);
}

/// A choice shows its longest words where the screen has the room.
void SmallForm::showWholeWords() {
    for (QWidget* field : m_fields) {
        auto* box = qobject_cast<QComboBox*>(field);
        if (!box) continue;
        qsizetype longest = box->minimumContentsLength();
        for (int n = 0; n < box->count(); ++n) longest = std::max(longest, box->itemText(n).size());
        box->setMinimumContentsLength(static_cast<int>(std::min<qsizetype>(longest, mostLetters)));
    }
}

void SmallForm::showEvent(QShowEvent* event) {
    if (!event->spontaneous()) {
        m_session.forgetRefusal();
        showWholeWords();
    }
    if (!event->spontaneous() && !m_fields.empty()) {
        QWidget* last = m_fields.back();
        if (m_drafts) {
            setTabOrder(last, &m_drafts->afresh());
            last = &m_drafts->afresh();
        }
        setTabOrder(last, m_buttons);
        auto begin = m_first;
        const auto empty = std::find_if(m_fields.begin(), m_fields.end(), [](QWidget* field) {
            const auto* edit = qobject_cast<QLineEdit*>(field);
            return edit && edit->isEnabled() && !edit->isHidden() && edit->text().isEmpty();
        });
        // Where a choice comes first it is what one is asked; its answer stands there already, but
        // it is the one to look at.
        if (!begin)
            begin = empty == m_fields.end() || qobject_cast<QComboBox*>(m_fields.front())
                        ? m_fields.front()
                        : *empty;
        begin->setFocus();
    }
    QDialog::showEvent(event);
    growToFit();
}

QLineEdit* SmallForm::line(const QString& label, const char* name, const QString& example,
                           int letters) {
    auto* edit = new QLineEdit(this);
    edit->setObjectName(QLatin1String(name));
    edit->setPlaceholderText(example);
    edit->setAccessibleName(label);
    if (letters > 0) edit->setMinimumWidth(letters * edit->fontMetrics().averageCharWidth());
    m_form->addRow(label, edit);
    enter(edit);
    return edit;
}

QComboBox* SmallForm::choice(const QString& label, const char* name) {
    auto* box = new QComboBox(this);
    box->setObjectName(QLatin1String(name));
    box->setAccessibleName(label);
    // A long name among its words makes no row of its own out of it.
    box->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    box->setMinimumContentsLength(12);
    m_form->addRow(label, box);
    enter(box);
    return box;
}

QLabel* SmallForm::say(const QString& text) {
    auto* words = new QLabel(text, this);
    words->setWordWrap(true);
    m_form->addRow(words);
    m_form->setRowVisible(words, !text.isEmpty());
    return words;
}

QLabel* SmallForm::caution(const QString& text) {
    QLabel* words = say(text);
    QPalette palette = words->palette();
    palette.setColor(QPalette::WindowText, m_session.look().tone(Tone::Warn));
    words->setPalette(palette);
    return words;
}

void SmallForm::sayAgain(QLabel* words, const QString& text) {
    words->setText(text);
    m_form->setRowVisible(words, !text.isEmpty());
    if (isVisible()) growToFit();
}

void SmallForm::showField(QWidget* field, bool shown) {
    m_form->setRowVisible(field, shown);
    if (isVisible()) growToFit();
}

}  // namespace combwright
