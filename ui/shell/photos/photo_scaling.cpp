#include "ui/shell/photos/photo_scaling.h"

#include <QBuffer>
#include <QCoreApplication>
#include <QImageReader>
#include <QImageWriter>
#include <QPainter>
#include <algorithm>

#include "ui/look/tokens.h"

namespace combwright {
namespace {

constexpr int longestSide = 2000;
constexpr qsizetype mostPhotoBytes = 1'000'000;

QByteArray asJpeg(const QImage& image, int quality) {
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    QImageWriter writer(&buffer, "jpeg");
    writer.setQuality(quality);
    if (!writer.write(image)) return {};
    return bytes;
}

/// JPEG knows no glass: what is seen through stands on paper.
QImage onPaper(const QImage& image) {
    if (!image.hasAlphaChannel()) return image.convertToFormat(QImage::Format_RGB32);
    QImage paper(image.size(), QImage::Format_RGB32);
    paper.fill(paperLook({}).tone(Tone::Surface));
    QPainter(&paper).drawImage(0, 0, image);
    return paper;
}

}  // namespace

std::optional<QByteArray> scaledPhoto(const QString& path, QString& trouble) {
    QImageReader reader(path);
    reader.setAutoTransform(true);
    reader.setDecideFormatFromContent(true);
    const QSize size = reader.size();
    // A large picture is made small while it is read, before it fills the memory.
    if (size.isValid() && std::max(size.width(), size.height()) > longestSide)
        reader.setScaledSize(size.scaled(longestSide, longestSide, Qt::KeepAspectRatio));
    QImage image = reader.read();
    if (image.isNull()) {
        trouble = reader.errorString();
        return std::nullopt;
    }
    image = onPaper(image);
    if (std::max(image.width(), image.height()) > longestSide)
        image =
            image.scaled(longestSide, longestSide, Qt::KeepAspectRatio, Qt::SmoothTransformation);
    image.setText(QString(), QString());
    for (int quality = 88; quality >= 40; quality -= 12)
        if (const QByteArray jpeg = asJpeg(image, quality);
            !jpeg.isEmpty() && jpeg.size() <= mostPhotoBytes)
            return jpeg;
    const QByteArray jpeg =
        asJpeg(image.scaled(image.size() / 2, Qt::KeepAspectRatio, Qt::SmoothTransformation), 60);
    if (!jpeg.isEmpty() && jpeg.size() <= mostPhotoBytes) return jpeg;
    trouble = QCoreApplication::translate("photos", "it cannot be made small enough");
    return std::nullopt;
}

}  // namespace combwright
