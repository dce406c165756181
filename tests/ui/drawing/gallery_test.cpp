#include "ui/drawing/gallery.h"

#include <gtest/gtest.h>

#include <QFontMetricsF>
#include <QPaintDevice>
#include <QPaintEngine>
#include <QPainter>
#include <vector>

#include "ui/drawing/gallery_samples.h"

namespace combwright {

namespace {

struct WrittenText {
    QString text;
    QRectF box;  ///< of the ink, without the room for accents
};

/// Writes down where text is drawn and draws nothing.
class TextEngine : public QPaintEngine {
  public:
    using QPaintEngine::drawPolygon;

    TextEngine() : QPaintEngine(AllFeatures) {}
    bool begin(QPaintDevice*) override { return true; }
    bool end() override { return true; }
    void updateState(const QPaintEngineState&) override {}
    void drawPath(const QPainterPath&) override {}
    void drawPolygon(const QPointF*, int, PolygonDrawMode) override {}
    void drawPixmap(const QRectF&, const QPixmap&, const QRectF&) override {}
    Type type() const override { return User; }
    void drawTextItem(const QPointF& at, const QTextItem& item) override {
        if (item.text().trimmed().isEmpty()) return;
        // Spaces carry no ink but would count towards the box.
        const QString words = item.text().trimmed();
        const QString before = item.text().left(item.text().indexOf(words));
        const QFontMetricsF metrics(item.font());
        const QPointF start = at + QPointF(metrics.horizontalAdvance(before), 0.0);
        const QRectF ink = metrics.tightBoundingRect(words).translated(start);
        written.push_back({item.text(), painter()->combinedTransform().mapRect(ink)});
    }
    std::vector<WrittenText> written;
};

class TextDevice : public QPaintDevice {
  public:
    explicit TextDevice(QSize size) : m_size(size) {}
    QPaintEngine* paintEngine() const override { return &m_engine; }
    const std::vector<WrittenText>& written() const { return m_engine.written; }

  protected:
    int metric(PaintDeviceMetric which) const override {
        switch (which) {
            case PdmWidth:
                return m_size.width();
            case PdmHeight:
                return m_size.height();
            case PdmDpiX:
            case PdmDpiY:
            case PdmPhysicalDpiX:
            case PdmPhysicalDpiY:
                return 96;
            case PdmDevicePixelRatio:
                return 1;
            case PdmDevicePixelRatioScaled:
                return static_cast<int>(QPaintDevice::devicePixelRatioFScale());
            default:
                return QPaintDevice::metric(which);
        }
    }

  private:
    QSize m_size;
    mutable TextEngine m_engine;
};

}  // namespace

TEST(GalleryTest, NoTextOverlapsAnotherOrLeavesTheSheet) {
    const QFont font(QStringLiteral("DejaVu Sans"), 10);
    for (const double factor : {1.0, 1.5, 2.0}) {
        const Look look = lookFor(font, false, factor);
        TextDevice device(gallerySize(look));
        {
            QPainter painter(&device);
            paintGallery(painter, look);
        }
        const auto& written = device.written();
        ASSERT_GT(written.size(), 150U);
        const QRectF sheet(QPointF(), gallerySize(look));
        for (std::size_t i = 0; i < written.size(); ++i) {
            EXPECT_TRUE(sheet.contains(written[i].box)) << written[i].text.toStdString();
            for (std::size_t k = i + 1; k < written.size(); ++k) {
                const QRectF both = written[i].box & written[k].box;
                EXPECT_FALSE(both.width() > 0.6 && both.height() > 0.6)
                    << factor << ": \"" << written[i].text.toStdString() << "\" on \""
                    << written[k].text.toStdString() << '"';
            }
        }
    }
}

TEST(GalleryTest, EveryLookPaintsTheWholeSheet) {
    const QFont font(QStringLiteral("DejaVu Sans"), 10);
    for (const Look& look : {lookFor(font, false), lookFor(font, true), paperLook(font)}) {
        const QImage image = drawingGallery(look, gallerySize(look));
        EXPECT_EQ(image.size(), gallerySize(look));
        const QRgb ground = look.tone(Tone::Ground).rgb();
        // Each of the seven blocks has ink in it.
        for (const int top : {60, 430, 590, 920, 1262, 1445}) {
            int inked = 0;
            const int from = static_cast<int>(look.px(top)),
                      to = static_cast<int>(look.px(top + 130));
            for (int y = from; y < to; ++y) {
                for (int x = 0; x < image.width(); x += 3) inked += image.pixel(x, y) != ground;
            }
            EXPECT_GT(inked, 1500) << top;
        }
    }
}

TEST(GalleryTest, EverySampleHasItsSentence) {
    for (const auto& sample : frameSamples()) EXPECT_GT(spoken(sample.view).size(), 8);
    for (const auto& sample : stackSamples()) EXPECT_GT(spoken(sample.view).size(), 8);
    for (const auto& sample : bucketSamples()) EXPECT_GT(spoken(sample.view).size(), 4);
    for (const auto& sample : rowSamples()) EXPECT_GT(spoken(sample.view).size(), 8);
    for (const auto& sample : extractorSamples()) EXPECT_GT(spoken(sample.view).size(), 8);
    EXPECT_GT(spoken(ribbonSample()).size(), 20);
    EXPECT_GT(spoken(balanceSample()).size(), 20);
}

}  // namespace combwright
