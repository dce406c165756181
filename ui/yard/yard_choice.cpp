#include "ui/yard/yard_choice.h"

#include <QAbstractItemView>
#include <QStyleOptionComboBox>
#include <QStylePainter>
#include <algorithm>

namespace combwright {
namespace {

/// At the base font, px: beside it stand the day and how the yard stands.
constexpr int widestName = 240;

}  // namespace

YardChoice::YardChoice(Session& session, QWidget* parent) : QComboBox(parent), m_session(session) {
    setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    connect(&session, &Session::lookChanged, this, &YardChoice::fit);
    connect(this, &QComboBox::currentTextChanged, this, &QWidget::setToolTip);
}

int YardChoice::nameRoom(int width) const {
    QStyleOptionComboBox option;
    initStyleOption(&option);
    option.rect = QRect(0, 0, width, std::max(height(), 1));
    return style()
        ->subControlRect(QStyle::CC_ComboBox, &option, QStyle::SC_ComboBoxEditField, this)
        .width();
}

void YardChoice::fit() {
    ensurePolished();
    const QFontMetrics metrics(font());
    int widest = 0;
    for (int i = 0; i < count(); ++i)
        widest = std::max(widest, metrics.horizontalAdvance(itemText(i)));
    // What the style keeps for the arrow and around the name, however it draws them.
    const int probe = 1000;
    const int around = probe - nameRoom(probe) + m_session.look().space(8);
    const int most = m_session.look().space(widestName);
    setFixedWidth(std::max(std::min(widest, most) + around, m_session.look().space(80)));
    // The open list shows every name whole.
    view()->setMinimumWidth(widest + around);
}

void YardChoice::paintEvent(QPaintEvent*) {
    QStylePainter painter(this);
    QStyleOptionComboBox option;
    initStyleOption(&option);
    painter.drawComplexControl(QStyle::CC_ComboBox, option);
    // The style would cut the name in the middle of a letter.
    option.currentText =
        fontMetrics().elidedText(option.currentText, Qt::ElideRight, nameRoom(width()) - 2);
    painter.drawControl(QStyle::CE_ComboBoxLabel, option);
}

}  // namespace combwright
