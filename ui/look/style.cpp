#include "ui/look/style.h"

#include <QApplication>
#include <QVariant>
#include <utility>
#include <vector>

#include "ui/look/look_style.h"

namespace combwright {

namespace {

// Fields get no colour of text here: Qt would derive a paler one for what stands in an empty field
// from it, too pale to read, where the palette has one of ours. "@name" in a rule stands for a
// token. Longer names come first so that none is cut short.
const char* const styleRules = R"(
QToolTip { background: @surface; color: @ink; border: 1px solid @line; padding: @4px; }
QPushButton, QToolButton {
    background: @surface; color: @ink; border: 1px solid @line; border-radius: @4px;
    padding: 0 @12px; min-height: @30px; }
QToolButton { padding: 0 @8px; }
QPushButton[small="true"] { padding: 0 @8px; min-height: @22px; }
QPushButton[large="true"] { padding: 0 @16px; min-height: @38px; }
QPushButton:hover, QToolButton:hover { border-color: @ink; }
QPushButton:pressed, QToolButton:pressed, QPushButton:checked, QToolButton:checked {
    background: @selection; border-color: @ink; }
QPushButton:disabled, QToolButton:disabled { color: @muted; border-color: @hairline; }
QPushButton:focus, QToolButton:focus { border: 2px solid @accent; padding: 0 @11px; }
QToolButton:focus, QPushButton[small="true"]:focus { padding: 0 @7px; }
QPushButton[large="true"]:focus { padding: 0 @15px; }
QPushButton[primary="true"] {
    background: @accent; color: @onaccent; border: 1px solid @accent; font-weight: bold; }
QPushButton[primary="true"]:hover, QPushButton[primary="true"]:pressed { border-color: @ink; }
QPushButton[primary="true"]:focus { border: 2px solid @ink; }
QPushButton[primary="true"]:disabled {
    background: @ground; color: @muted; border: 1px solid @hairline; }
QLineEdit, QPlainTextEdit, QTextEdit, QAbstractSpinBox, QComboBox {
    background: @surface; border: 1px solid @line; border-radius: @4px; padding: 1px @4px;
    selection-background-color: @accent; selection-color: @onaccent; }
QLineEdit, QAbstractSpinBox, QComboBox { min-height: @22px; }
QLineEdit:focus, QPlainTextEdit:focus, QTextEdit:focus, QAbstractSpinBox:focus, QComboBox:focus {
    border: 2px solid @accent; padding: 0 @3px; }
QLineEdit:read-only { background: @ground; color: @muted; }
QAbstractSpinBox::up-button, QAbstractSpinBox::down-button { width: 0; border: none; }
QComboBox::drop-down { border: none; width: @20px; }
QComboBox::down-arrow {
    width: 0; height: 0; border-left: @4px solid @surface; border-right: @4px solid @surface;
    border-top: @4px solid @ink; border-bottom: none; }
QComboBox QAbstractItemView { background: @surface; border: 1px solid @line; }
QCheckBox, QRadioButton { spacing: @8px; min-height: @24px; }
QCheckBox:focus, QRadioButton:focus { color: @accent; }
QAbstractItemView {
    background: @ground; alternate-background-color: @ground; color: @ink; border: none;
    gridline-color: @ground; selection-background-color: @selection; selection-color: @ink;
    outline: none; }
QAbstractItemView::item { border: none; padding: 0 @4px; }
QTableView::item, QTreeView::item { border-bottom: 1px solid @hairline; }
QAbstractScrollArea::corner { background: @ground; border: none; }
QAbstractItemView::item:selected { background: @selection; color: @ink; }
QAbstractItemView::item:focus { border: 2px solid @accent; }
QHeaderView { background: @ground; border: none; }
QHeaderView::section {
    background: @ground; color: @muted; border: none; border-bottom: 1px solid @ink;
    padding: @4px; }
QTableCornerButton::section { background: @ground; border: none; border-bottom: 1px solid @ink; }
QScrollArea { border: none; }
QScrollBar:vertical { background: @ground; width: @12px; margin: 0; border: none; }
QScrollBar:horizontal { background: @ground; height: @12px; margin: 0; border: none; }
QScrollBar::handle { background: @line; border-radius: @3px; margin: @3px; }
QScrollBar::handle:vertical { min-height: @24px; }
QScrollBar::handle:horizontal { min-width: @24px; }
QScrollBar::handle:hover { background: @muted; }
QScrollBar::add-line, QScrollBar::sub-line { width: 0; height: 0; border: none; }
QScrollBar::add-page, QScrollBar::sub-page { background: none; }
QMenu { background: @surface; color: @ink; border: 1px solid @line; padding: @4px; }
QMenu::item { padding: @4px @16px; border-radius: @4px; }
QMenu::item:selected { background: @selection; color: @ink; }
QMenu::item:disabled { color: @muted; }
QMenu::separator { height: 1px; background: @hairline; margin: @4px; }
QProgressBar {
    background: @surface; color: @ink; border: 1px solid @line; border-radius: @4px;
    text-align: center; min-height: @20px; }
QProgressBar::chunk { background: @selection; border-radius: @3px; }
QSplitter::handle { background: @hairline; }
QTabWidget::pane { border: none; border-top: 1px solid @hairline; }
QTabBar::tab {
    background: @ground; color: @muted; border: none; padding: @4px @12px; min-height: @20px; }
QTabBar::tab:selected { color: @ink; border-bottom: 2px solid @accent; }
QTabBar::tab:focus { color: @accent; }
QFrame[card="true"] { background: @surface; border: 1px solid @hairline; border-radius: @4px; }
QFrame[card="true"] QAbstractItemView { background: @surface; }
QFrame[card="true"] QTabBar::tab { background: @surface; }
)";

std::vector<std::pair<QString, Tone>> styleTones() {
    return {
        {"onaccent", Tone::OnAccent}, {"selection", Tone::Selection}, {"surface", Tone::Surface},
        {"hairline", Tone::Hairline}, {"accent", Tone::Accent},       {"ground", Tone::Ground},
        {"muted", Tone::Muted},       {"line", Tone::Line},           {"ink", Tone::Ink}};
}

}  // namespace

QString styleSheetFor(const Look& look) {
    QString rules = QString::fromLatin1(styleRules);
    for (const auto& [name, tone] : styleTones()) {
        rules.replace(QLatin1Char('@') + name, look.tone(tone).name());
    }
    for (const int size : {38, 30, 24, 22, 20, 16, 15, 12, 11, 8, 7, 4, 3}) {
        rules.replace(QStringLiteral("@%1px").arg(size),
                      QStringLiteral("%1px").arg(look.space(size)));
    }
    return rules;
}

Look applyLook(QApplication& application, bool dark, double factor) {
    // Kept with the program: asked of it a second time, its font would already carry the factor.
    static const char* const key = "combwright_base_font";
    if (!application.property(key).isValid()) application.setProperty(key, application.font());
    const Look look = lookFor(application.property(key).value<QFont>(), dark, factor);
    application.setStyle(new LookStyle(look));  // the program owns it
    application.setPalette(paletteFor(dark));
    application.setFont(look.font(TextSize::Body));
    application.setStyleSheet(styleSheetFor(look));
    return look;
}

}  // namespace combwright
