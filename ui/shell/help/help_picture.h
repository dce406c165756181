// The picture above a page of the help: as wide as it fits without taking more than half of what is
// seen of the page, its caption below.
#pragma once

#include <QPixmap>
#include <QWidget>
#include <optional>

#include "ui/look/tokens.h"

namespace combwright {

class HelpPicture : public QWidget {
    Q_OBJECT

  public:
    HelpPicture(const Look& look, QWidget* parent);
    /// Without one yet there is room for it. `says` is for who does not see it.
    void show(std::optional<QPixmap> picture, const QString& says, const QString& caption);
    bool hasPicture() const { return m_picture.has_value(); }
    const std::optional<QPixmap>& picture() const { return m_picture; }
    bool hasHeightForWidth() const override { return true; }
    int heightForWidth(int width) const override;
    QSize sizeHint() const override;

  protected:
    void paintEvent(QPaintEvent*) override;

  private:
    QSize pictureIn(int width) const;
    int captionHigh() const;

    Look m_look;
    std::optional<QPixmap> m_picture;
    QPixmap m_scaled;  ///< as it was painted last
    QString m_caption;
};

}  // namespace combwright
