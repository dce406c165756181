// Words that go on in the next line where the width ends, their beginning bold: large type and
// long names cut nothing off.
#pragma once

#include <QPainter>
#include <QPointF>
#include <QString>

#include "ui/look/tokens.h"

namespace combwright {

struct WrappedText {
    QString text;
    qsizetype bold = 0;  ///< so many letters at the beginning
    TextSize size = TextSize::Body;
    Tone tone = Tone::Ink;
    Tone boldTone = Tone::Ink;
};

/// What the words need at that width, px.
double wrappedHeight(const WrappedText& text, double width, const Look& look);
/// Paints them, their upper left corner there; returns their height.
double paintWrapped(QPainter& painter, QPointF at, const WrappedText& text, double width,
                    const Look& look);

}  // namespace combwright
