// The one card of the storeroom: what next season needs and what is short, as a sum one can follow
// line by line. Or what to enter first.
#pragma once

#include <QFrame>
#include <vector>

#include "core/places/storeroom/needs.h"
#include "ui/drawing/figure.h"
#include "ui/shell/session.h"

namespace combwright {

struct NeedsLine {
    enum class Kind { Head, Part, Sum, Words } kind = Kind::Part;
    QString what;
    QString note = {};  ///< muted, behind it
    FigureText figure = {};
    Tone tone = Tone::Ink;  ///< of the figure
};

/// The lines of the card: frames of each kind as a sum, boxes and pieces that are short, what to
/// buy. Nothing is shown as short that nobody counted.
std::vector<NeedsLine> needsLines(const NextSeason& next);

/// "191 of 198 medium frames": usable of needed, of the first kind of super frame; an empty figure
/// without a plan.
struct NeedsHead {
    FigureText figure;
    QString words;
};
NeedsHead needsHead(const NextSeason& next);

class NeedsCard : public QFrame {
    Q_OBJECT

  public:
    explicit NeedsCard(Session& session, QWidget* parent = nullptr);
    void show(const NextSeason& next);
    const std::vector<NeedsLine>& lines() const { return m_lines; }

    bool hasHeightForWidth() const override { return true; }
    int heightForWidth(int width) const override;
    QSize sizeHint() const override { return {width(), heightForWidth(width())}; }
    QSize minimumSizeHint() const override;

  protected:
    void paintEvent(QPaintEvent* event) override;

  private:
    double lineHeight(const NeedsLine& line, double width) const;

    Session& m_session;
    std::vector<NeedsLine> m_lines;
};

}  // namespace combwright
