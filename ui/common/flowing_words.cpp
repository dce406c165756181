#include "ui/common/flowing_words.h"

#include <QTextLayout>
#include <algorithm>
#include <cmath>

namespace combwright {
namespace {

// As on drawings (ui/drawing/lettering.cpp): of its figure's size, and how far above the line.
constexpr double flowingRaisedSize = 0.76;
constexpr double flowingRaisedBy = 0.36;
// A thin space that no line breaks at.
const QChar narrowNoBreak(0x202F);

QFont flowingFont(const FlowingRun& run, const Look& look) {
    QFont font = look.font(run.size, run.bold || run.raised);
    if (run.raised)
        font.setPixelSize(
            std::max(7, static_cast<int>(std::lround(font.pixelSize() * flowingRaisedSize))));
    return font;
}

QString flowingText(const FlowingRun& run) {
    QString text = run.raised ? narrowNoBreak + run.text : run.text;
    return text.replace(QLatin1Char('\n'), QChar(QChar::LineSeparator));
}

/// The words laid out; raised letters keep their room and are painted by hand.
class Flow {
  public:
    Flow(const FlowingWords& words, double width, const Look& look) {
        QString whole;
        QList<QTextLayout::FormatRange> formats;
        for (const FlowingRun& run : words) {
            const QString text = flowingText(run);
            QTextCharFormat format;
            format.setFont(flowingFont(run, look));
            format.setForeground(run.raised ? QColor(Qt::transparent) : look.tone(run.tone));
            formats.append({static_cast<int>(whole.size()), static_cast<int>(text.size()), format});
            whole += text;
        }
        m_layout.setText(whole);
        m_layout.setFont(look.font(TextSize::Body));
        m_layout.setFormats(formats);
        QTextOption option;
        option.setWrapMode(QTextOption::WrapAtWordBoundaryOrAnywhere);
        m_layout.setTextOption(option);
        m_layout.setCacheEnabled(true);
        m_layout.beginLayout();
        for (QTextLine line = m_layout.createLine(); line.isValid(); line = m_layout.createLine()) {
            line.setLineWidth(std::max(width, 1.0));
            line.setPosition({0, m_height});
            m_height += line.height();
        }
        m_layout.endLayout();
    }
    double height() const { return m_height; }
    void paint(QPainter& painter, QPointF at, const FlowingWords& words, const Look& look) const {
        m_layout.draw(&painter, at);
        int from = 0;
        for (const FlowingRun& run : words) {
            const QString text = flowingText(run);
            if (run.raised) paintRaised(painter, at, run, from, look);
            from += static_cast<int>(text.size());
        }
    }

  private:
    void paintRaised(QPainter& painter, QPointF at, const FlowingRun& run, int from,
                     const Look& look) const {
        const QTextLine line = m_layout.lineForTextPosition(from);
        if (!line.isValid()) return;
        const double lift = look.font(run.size).pixelSize() * flowingRaisedBy;
        painter.setFont(flowingFont(run, look));
        painter.setPen(look.tone(run.tone));
        painter.drawText(at + QPointF(line.cursorToX(from), line.y() + line.ascent() - lift),
                         narrowNoBreak + run.text);
    }

    QTextLayout m_layout;
    double m_height = 0;
};

}  // namespace

void addHow(FlowingWords& words, char how, TextSize size) {
    if (how == 0) return;
    words.push_back({QString(QLatin1Char(how)), size, Tone::Muted, true, true});
}

double flowingHeight(const FlowingWords& words, double width, const Look& look) {
    return words.empty() ? 0 : Flow(words, width, look).height();
}

void paintFlowing(QPainter& painter, const QRectF& room, const FlowingWords& words,
                  const Look& look) {
    if (words.empty()) return;
    painter.save();
    Flow(words, room.width(), look).paint(painter, room.topLeft(), words, look);
    painter.restore();
}

}  // namespace combwright
