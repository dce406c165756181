#include "ui/shell/help/help_picture.h"

#include <QPainter>
#include <algorithm>

namespace combwright {
namespace {

/// Of the places: 1280 to 800.
constexpr int pictureWide = 16;
constexpr int pictureHigh = 10;

}  // namespace

HelpPicture::HelpPicture(const Look& look, QWidget* parent) : QWidget(parent), m_look(look) {
    setObjectName(QStringLiteral("help_picture"));
    setFocusPolicy(Qt::StrongFocus);
    QSizePolicy policy(QSizePolicy::Expanding, QSizePolicy::Preferred);
    policy.setHeightForWidth(true);
    setSizePolicy(policy);
}

void HelpPicture::show(std::optional<QPixmap> picture, const QString& says,
                       const QString& caption) {
    m_picture = std::move(picture);
    m_scaled = {};
    m_caption = caption;
    setAccessibleName(says);
    setAccessibleDescription(caption);
    update();
}

int HelpPicture::captionHigh() const { return m_look.space(20); }

QSize HelpPicture::pictureIn(int width) const {
    // The words below it begin on the first screenful; a larger window has a larger picture.
    const QWidget* seen = parentWidget() ? parentWidget()->parentWidget() : nullptr;
    const int high = std::max(m_look.space(160), seen ? seen->height() / 2 : 0);
    const int wide = std::min(width, high * pictureWide / pictureHigh);
    return {wide, wide * pictureHigh / pictureWide};
}

int HelpPicture::heightForWidth(int width) const {
    return pictureIn(width).height() + captionHigh();
}

QSize HelpPicture::sizeHint() const {
    const int wide = m_look.space(320);
    return {wide, heightForWidth(wide)};
}

void HelpPicture::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    const QRect room(QPoint(0, 0), pictureIn(width()));
    const QRect inside = room.adjusted(1, 1, -1, -1);
    painter.fillRect(room, m_look.tone(Tone::Surface));
    painter.setPen(m_look.tone(Tone::Muted));
    if (m_picture) {
        const double ratio = devicePixelRatioF();
        const QSize wanted = inside.size() * ratio;
        if (m_scaled.size() != wanted) {
            m_scaled = m_picture->scaled(wanted, Qt::IgnoreAspectRatio, Qt::SmoothTransformation);
            m_scaled.setDevicePixelRatio(ratio);
        }
        painter.drawPixmap(inside.topLeft(), m_scaled);
    } else {
        painter.setFont(m_look.font(TextSize::Note));
        painter.drawText(inside, Qt::AlignCenter, tr("The picture is being painted."));
    }
    painter.setFont(m_look.font(TextSize::Note, false, true));
    painter.drawText(QRect(0, room.bottom() + 1, width(), captionHigh()),
                     Qt::AlignLeft | Qt::AlignVCenter, m_caption);
    painter.setPen(QPen(m_look.tone(hasFocus() ? Tone::Accent : Tone::Line), hasFocus() ? 2 : 1));
    painter.drawRect(room.adjusted(0, 0, -1, -1));
}

}  // namespace combwright
