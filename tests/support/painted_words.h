// The texts a widget paints, whoever paints them: labels, delegates, drawings. It is rendered on a
// device that keeps what is written on it and shows nothing.
#pragma once

#include <QPaintDevice>
#include <QPaintEngine>
#include <QStringList>
#include <QWidget>

namespace combwright::test {

class WordsEngine : public QPaintEngine {
  public:
    explicit WordsEngine(QStringList& words) : QPaintEngine(AllFeatures), m_words(words) {}
    bool begin(QPaintDevice*) override { return true; }
    bool end() override { return true; }
    void updateState(const QPaintEngineState&) override {}
    void drawPixmap(const QRectF&, const QPixmap&, const QRectF&) override {}
    void drawPath(const QPainterPath&) override {}
    void drawPolygon(const QPointF*, int, PolygonDrawMode) override {}
    void drawPolygon(const QPoint*, int, PolygonDrawMode) override {}
    void drawTextItem(const QPointF&, const QTextItem& item) override { m_words << item.text(); }
    Type type() const override { return User; }

  private:
    QStringList& m_words;
};

class WordsDevice : public QPaintDevice {
  public:
    explicit WordsDevice(QSize size) : m_size(size), m_engine(m_words) {}
    QPaintEngine* paintEngine() const override { return &m_engine; }
    const QStringList& words() const { return m_words; }

  protected:
    int metric(PaintDeviceMetric asked) const override {
        switch (asked) {
            case PdmWidth:
                return m_size.width();
            case PdmHeight:
                return m_size.height();
            case PdmDpiX:
            case PdmDpiY:
            case PdmPhysicalDpiX:
            case PdmPhysicalDpiY:
                return 96;
            case PdmDepth:
                return 32;
            case PdmDevicePixelRatio:
                return 1;
            case PdmDevicePixelRatioScaled:
                return static_cast<int>(devicePixelRatioFScale());
            default:
                return 0;
        }
    }

  private:
    QSize m_size;
    QStringList m_words;
    mutable WordsEngine m_engine;
};

/// Every run of text in the widget and what stands in it.
inline QStringList paintedWords(QWidget& widget) {
    WordsDevice device(widget.size());
    widget.render(&device);
    return device.words();
}

}  // namespace combwright::test
