#include "ui/shell/program_icon.h"

#include <QPainter>
#include <QSvgRenderer>
#include <cmath>

namespace combwright {

QPixmap programPicture(int side, double ratio) {
    // Drawn here: a desktop without Qt's icon plugin for SVG would show nothing.
    const int pixels = static_cast<int>(std::lround(side * ratio));
    QPixmap picture(pixels, pixels);
    picture.fill(Qt::transparent);
    QSvgRenderer drawing(QStringLiteral(":/combwright/combwright.svg"));
    QPainter painter(&picture);
    drawing.render(&painter, QRectF(0, 0, pixels, pixels));
    painter.end();
    picture.setDevicePixelRatio(ratio);
    return picture;
}

QIcon programIcon() {
    QIcon icon;
    for (const int side : {16, 24, 32, 48, 64, 128}) icon.addPixmap(programPicture(side, 1.0));
    return icon;
}

}  // namespace combwright
