#include "ui/storeroom/board_filter.h"

#include <QAction>
#include <QCheckBox>
#include <QComboBox>
#include <QLabel>
#include <QPushButton>
#include <QSignalBlocker>
#include <algorithm>

#include "core/places/pages/storeroom/board_words.h"
#include "core/words/words.h"
#include "ui/common/flow_row.h"

namespace combwright {
namespace {

constexpr int widestChoice = 128;

/// Index of what is chosen, 0 for all.
template <class List, class Chosen>
int chosenIndex(const List& list, const Chosen& is) {
    const auto found = std::find_if(list.begin(), list.end(), is);
    return found == list.end() ? 0 : static_cast<int>(found - list.begin()) + 1;
}

template <class T>
std::optional<T> chosenOf(const std::vector<T>& list, const QComboBox* combo) {
    const int at = combo->currentIndex() - 1;
    if (at < 0 || at >= static_cast<int>(list.size())) return std::nullopt;
    return list[static_cast<std::size_t>(at)];
}

}  // namespace

BoardFilterRow::BoardFilterRow(const Look& look, QWidget* parent) : QWidget(parent), m_look(look) {
    setObjectName(QStringLiteral("board_filter"));
    setAccessibleName(tr("What the board shows"));
    auto* row = new FlowRow(this, look.space(8));
    m_enter = addKey(tr("Choose what is shown"), QKeySequence(Qt::CTRL | Qt::Key_F));
    m_enterGroup = addKey(tr("Choose how rows stand together"), QKeySequence(Qt::CTRL | Qt::Key_G));
    m_clear = addKey(tr("Show all"), QKeySequence(Qt::CTRL | Qt::Key_Backspace));
    m_showKey = new QLabel(tr("Show  %1").arg(enterKey()), this);
    m_showKey->setObjectName(QStringLiteral("filter_key"));
    row->addWidget(m_showKey);
    m_kind = addChoice("filter_kind", tr("Kind of frame"));
    m_state = addChoice("filter_state", tr("State"));
    m_verdict = addChoice("filter_verdict", tr("Verdict"));
    m_year = addChoice("filter_year", tr("Year the comb was drawn"));
    m_place = addChoice("filter_place", tr("Place"));
    m_hive = addChoice("filter_hive", tr("Hive it came off"));
    const auto check = [&](const char* name, const QString& text) {
        auto* box = new QCheckBox(text, this);
        box->setObjectName(QLatin1String(name));
        layout()->addWidget(box);
        connect(box, &QCheckBox::toggled, this, &BoardFilterRow::ask);
        return box;
    };
    m_notFrozen = check("filter_not_frozen", tr("not frozen"));
    m_notReviewed = check("filter_not_reviewed", tr("not looked through"));
    m_onHives = check("filter_on_hives", tr("on hives too"));
    m_group = addChoice("filter_group", tr("Rows stand together"));
    m_shown = new QLabel(this);
    m_shown->setObjectName(QStringLiteral("filter_shown"));
    row->addWidget(m_shown);
    connect(m_enter, &QAction::triggered, this, &BoardFilterRow::enter);
    connect(m_enterGroup, &QAction::triggered, this,
            [this] { m_group->setFocus(Qt::ShortcutFocusReason); });
    connect(m_clear, &QAction::triggered, this, &BoardFilterRow::clear);
    m_group->setToolTip(QStringLiteral("%1  %2").arg(
        m_group->toolTip(), m_enterGroup->shortcut().toString(QKeySequence::NativeText)));
    m_clearButton = new QPushButton(this);
    m_clearButton->setObjectName(QStringLiteral("filter_clear"));
    connect(m_clearButton, &QPushButton::clicked, this, &BoardFilterRow::clear);
    row->addWidget(m_clearButton);
    m_clearButton->setText(
        tr("Show all  %1").arg(m_clear->shortcut().toString(QKeySequence::NativeText)));
    m_clearButton->setAccessibleName(tr("Show all frames again"));
    setLook(look);
}

QAction* BoardFilterRow::addKey(const QString& name, const QKeySequence& key) {
    auto* action = new QAction(name, this);
    action->setShortcut(key);
    addAction(action);
    return action;
}

QString BoardFilterRow::enterKey() const {
    return m_enter->shortcut().toString(QKeySequence::NativeText);
}

/// To the first choice there is; what offers none is hidden.
void BoardFilterRow::enter() {
    for (QWidget* each :
         std::initializer_list<QWidget*>{m_kind, m_state, m_verdict, m_year, m_place, m_hive})
        if (each->isVisible()) return each->setFocus(Qt::ShortcutFocusReason);
    m_notFrozen->setFocus(Qt::ShortcutFocusReason);
}

QComboBox* BoardFilterRow::addChoice(const char* name, const QString& label) {
    auto* combo = new QComboBox(this);
    combo->setObjectName(QLatin1String(name));
    combo->setAccessibleName(label);
    combo->setToolTip(label);
    combo->setAccessibleDescription(
        tr("%1 comes to these choices, Escape goes back to the board").arg(enterKey()));
    combo->setSizeAdjustPolicy(QComboBox::AdjustToContents);
    layout()->addWidget(combo);
    connect(combo, &QComboBox::currentIndexChanged, this, &BoardFilterRow::ask);
    return combo;
}

void BoardFilterRow::setLook(const Look& look) {
    m_look = look;
    for (QComboBox* combo : {m_kind, m_state, m_verdict, m_year, m_place, m_hive, m_group}) {
        combo->setMinimumHeight(look.target());
        combo->setMaximumWidth(look.space(widestChoice));
    }
    for (QCheckBox* box : {m_notFrozen, m_notReviewed, m_onHives})
        box->setMinimumHeight(look.target());
    m_clearButton->setMinimumHeight(look.target());
    m_shown->setMinimumHeight(look.target());
    m_showKey->setMinimumHeight(look.target());
    m_showKey->setFont(look.font(TextSize::Note));
}

void BoardFilterRow::fill(QComboBox* combo, const QString& all, const QStringList& choices,
                          int chosen) {
    const QSignalBlocker quiet(combo);
    combo->clear();
    if (!all.isEmpty()) combo->addItem(all);
    combo->addItems(choices);
    combo->setCurrentIndex(chosen);
    // What offers no choice is not in the way.
    combo->setVisible(all.isEmpty() || choices.size() > 1 || chosen > 0);
}

void BoardFilterRow::setBoard(const FrameBoard& board) {
    m_filling = true;
    m_filter = board.filter;
    m_kinds = board.kinds;
    m_states = board.states;
    m_verdicts = board.verdicts;
    m_years = board.years;
    m_places = board.places;
    m_hives = board.hives;
    QStringList kinds, states, verdicts, years, places, hives, groups;
    for (const FrameKind& kind : m_kinds) kinds << frameKindText(board, kind.id);
    for (const FrameState& state : m_states) {
        const QString text = frameStateText(state);
        states << (state.letter != 0 ? QLatin1Char(state.letter) + QStringLiteral(" ") + text
                                     : text);
    }
    for (const Verdict verdict : m_verdicts)
        verdicts
            << QStringLiteral("%1 %2").arg(static_cast<int>(verdict) + 1).arg(verdictWord(verdict));
    for (const std::int64_t year : m_years) years << QString::number(year);
    for (const BoardPlace& place : m_places) places << boardPlaceText(place);
    for (const CameOff& off : m_hives) hives << cameOffText(off);
    for (int group = 0; group < static_cast<int>(Choices<BoardGroup>::words.size()); ++group)
        groups << groupText(static_cast<BoardGroup>(group));
    fill(m_kind, tr("any kind"), kinds,
         chosenIndex(m_kinds, [&](const FrameKind& kind) { return m_filter.kind == kind.id; }));
    fill(m_state, tr("any state"), states,
         chosenIndex(m_states, [&](const FrameState& state) { return m_filter.state == state; }));
    fill(m_verdict, tr("any verdict"), verdicts,
         chosenIndex(m_verdicts, [&](Verdict verdict) { return m_filter.verdict == verdict; }));
    fill(m_year, tr("any year"), years,
         chosenIndex(m_years, [&](std::int64_t year) { return m_filter.year == year; }));
    fill(m_place, tr("any place"), places,
         chosenIndex(m_places, [&](const BoardPlace& place) { return m_filter.place == place; }));
    fill(m_hive, tr("off any hive"), hives,
         chosenIndex(m_hives, [&](const CameOff& off) { return m_filter.cameOff == off.hive; }));
    fill(m_group, QString(), groups, static_cast<int>(m_filter.group));
    m_notFrozen->setChecked(m_filter.notFrozen);
    m_notReviewed->setChecked(m_filter.notReviewed);
    m_onHives->setChecked(m_filter.onHives);
    m_shown->setText(shownText(board));
    m_shown->setAccessibleName(m_shown->text());
    const bool hadFocus = m_clearButton->hasFocus();
    m_clear->setEnabled(m_filter.narrows());
    m_clearButton->setVisible(m_filter.narrows());
    if (hadFocus && !m_filter.narrows()) m_group->setFocus();
    m_filling = false;
    layout()->invalidate();
    updateGeometry();
}

QString BoardFilterRow::shownLine() const { return m_shown->text(); }

void BoardFilterRow::ask() {
    if (m_filling) return;
    const auto kind = chosenOf(m_kinds, m_kind);
    const auto hive = chosenOf(m_hives, m_hive);
    m_filter.kind = kind ? std::optional(kind->id) : std::nullopt;
    m_filter.state = chosenOf(m_states, m_state);
    m_filter.verdict = chosenOf(m_verdicts, m_verdict);
    m_filter.year = chosenOf(m_years, m_year);
    m_filter.place = chosenOf(m_places, m_place);
    m_filter.cameOff = hive ? std::optional(hive->hive) : std::nullopt;
    m_filter.notFrozen = m_notFrozen->isChecked();
    m_filter.notReviewed = m_notReviewed->isChecked();
    m_filter.onHives = m_onHives->isChecked();
    m_filter.group = static_cast<BoardGroup>(std::max(0, m_group->currentIndex()));
    const BoardFilter asked = m_filter;
    Q_EMIT filterAsked(asked);
}

void BoardFilterRow::clear() {
    if (!m_filter.narrows()) return;
    BoardFilter all;
    all.group = m_filter.group;
    all.onHives = m_filter.onHives;
    m_filter = all;
    Q_EMIT filterAsked(all);
}

}  // namespace combwright
