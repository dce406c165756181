#include "ui/today/wrapped.h"

#include <QTextLayout>
#include <algorithm>

namespace combwright {
namespace {

void layOutWrapped(QTextLayout& layout, const WrappedText& text, double width, const Look& look) {
    QList<QTextLayout::FormatRange> formats;
    QTextLayout::FormatRange all;
    all.start = 0;
    all.length = static_cast<int>(text.text.size());
    all.format.setForeground(look.tone(text.tone));
    formats << all;
    if (text.bold > 0) {
        QTextLayout::FormatRange strong;
        strong.start = 0;
        strong.length = static_cast<int>(text.bold);
        strong.format.setFont(look.font(text.size, true));
        strong.format.setForeground(look.tone(text.boldTone));
        formats << strong;
    }
    layout.setFormats(formats);
    QTextOption option;
    option.setWrapMode(QTextOption::WrapAtWordBoundaryOrAnywhere);
    layout.setTextOption(option);
    layout.beginLayout();
    double y = 0;
    for (QTextLine line = layout.createLine(); line.isValid(); line = layout.createLine()) {
        line.setLineWidth(std::max(width, 1.0));
        line.setPosition({0, y});
        y += line.height();
    }
    layout.endLayout();
}

}  // namespace

double wrappedHeight(const WrappedText& text, double width, const Look& look) {
    if (text.text.isEmpty()) return 0;
    QTextLayout layout(text.text, look.font(text.size));
    layOutWrapped(layout, text, width, look);
    return layout.boundingRect().height();
}

double paintWrapped(QPainter& painter, QPointF at, const WrappedText& text, double width,
                    const Look& look) {
    if (text.text.isEmpty()) return 0;
    QTextLayout layout(text.text, look.font(text.size));
    layOutWrapped(layout, text, width, look);
    layout.draw(&painter, at);
    return layout.boundingRect().height();
}

}  // namespace combwright
