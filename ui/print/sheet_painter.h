// Paints the blocks of a page one under the other: on sheets, beginning a new one where this one is
// full, or on one picture as high as it comes to be. All in units of 1/96 inch, so that sizes mean
// the same on screen and paper.
#pragma once

#include <QPainter>
#include <functional>
#include <optional>
#include <vector>

#include "core/places/pages/page.h"
#include "ui/look/tokens.h"

namespace combwright {

constexpr double unitsPerInch = 96.0;
constexpr double unitsPerMm = unitsPerInch / 25.4;

/// What is painted on: sheets of one size, or one picture as high as it comes to be.
struct PaintGround {
    QPainter& painter;
    double width = 0;
    std::optional<double> height;     ///< of a sheet; none for a picture
    std::function<void()> nextSheet;  ///< likewise
};

class SheetPainter {
  public:
    SheetPainter(const PaintGround& ground, const Page& page, const Look& look, int sheets,
                 int before = 0);
    /// All blocks of the page; returns how many sheets they took. `sheets` is what each says of how
    /// many there are; `before` those bound before it.
    int paint();
    /// After painting a picture: how high it is.
    double height() const { return m_y + 34; }

  private:
    QColor ink() const { return m_look.tone(Tone::Ink); }
    double footTop() const { return m_ground.height ? *m_ground.height - 30 : m_y + 4; }
    void font(TextSize size, bool bold = false, bool italic = false);
    double textWidth(const QString& text) const;
    double lineHeight() const { return m_painter.fontMetrics().height(); }
    void line(double x, double y, double x2, double weight, Tone tone = Tone::Ink);
    void text(const QRectF& box, int flags, const QString& words, Tone tone = Tone::Ink);

    void beginSheet();
    void paintFoot();
    const BlanksBlock* closingBlanks() const;
    void paintClosing(const BlanksBlock& block);
    bool need(double height);
    void title(const QString& words, double under = 36);

    void paintBlock(const TextBlock& block);
    void paintStrong(const TextBlock& block);
    void paintBlock(const StepsBlock& block);
    void paintBlock(const ChartBlock& block);
    void paintBlock(const TickBlock& block);
    void paintBlock(const BlanksBlock& block);
    void paintBlock(const CardsBlock& block);
    void paintBlock(const LabelsBlock& block);
    void scissors(const QPointF& at);
    void cardsTitle(const CardsBlock& block);

    // ui/print/sheet_tables.cpp
    void paintBlock(const TableBlock& narrow);
    std::vector<double> columnEdges(const TableBlock& table);
    void paintHead(const TableBlock& table, const std::vector<double>& edges);
    void paintScale(const std::vector<ScaleMark>& scale, const QRectF& box);
    static QRectF sheetBars(const QRectF& box);
    QRectF cellBox(const TableBlock& table, const TableRow& row, std::size_t at,
                   const std::vector<double>& edges, double height) const;
    double rowHeight(const TableBlock& table, const TableRow& row,
                     const std::vector<double>& edges);
    void paintRow(const TableBlock& table, const TableRow& row, const std::vector<double>& edges,
                  double height);
    void paintRule(Rule rule);

    const PaintGround& m_ground;
    QPainter& m_painter;
    const Page& m_page;
    const Look& m_look;
    int m_sheets;
    int m_before;
    int m_sheet = 0;
    double m_width = 0;
    double m_y = 0;
};

}  // namespace combwright
