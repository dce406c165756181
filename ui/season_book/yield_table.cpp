#include "ui/season_book/yield_table.h"

#include <QKeyEvent>
#include <QPainter>
#include <cmath>

#include "ui/common/figure_delegate.h"
#include "ui/drawing/lettering.h"
#include "ui/drawing/strokes.h"

namespace combwright {
namespace {

/// Where bars begin and end within their column.
QRectF barRoom(const QRectF& cell, const Look& look) {
    return cell.adjusted(look.px(8), 0, -look.px(34), 0);
}

class YieldDelegate : public QStyledItemDelegate {
  public:
    YieldDelegate(const YieldModel& model, Session& session, YieldTable* table)
        : QStyledItemDelegate(table), m_model(model), m_session(session), m_table(table) {}

    void measure() {
        for (const int column : {YieldModel::NowColumn, YieldModel::BeforeColumn}) {
            std::vector<FigureText> figures;
            for (int row = 0; row < m_model.rowCount(); ++row)
                figures.push_back(m_model.index(row, column).data(figureRole).value<FigureText>());
            const FigureStyle style{.bold = column == YieldModel::NowColumn};
            (column == YieldModel::NowColumn ? m_now : m_before) =
                measureFigures(figures, style, m_session.look());
        }
    }
    double width(int column) const {
        return (column == YieldModel::NowColumn ? m_now : m_before).width();
    }

    void paint(QPainter* painter, const QStyleOptionViewItem& option,
               const QModelIndex& index) const override {
        const PainterState state(*painter);
        const Look& look = m_session.look();
        const YieldModel::Line& row = m_model.line(index.row());
        const QRectF cell(option.rect);
        painter->setRenderHint(QPainter::Antialiasing);
        if (option.state & QStyle::State_Selected)
            painter->fillRect(option.rect, look.tone(Tone::Selection));
        paintRules(*painter, cell, row, index, look);
        switch (index.column()) {
            case YieldModel::HiveColumn:
                return paintName(*painter, cell, row, option, look);
            case YieldModel::NowColumn:
                return paintNow(*painter, cell, row, index, look);
            case YieldModel::BeforeColumn:
                return paintBefore(*painter, cell, row, index, look);
            default:
                break;
        }
        if (row.strong())
            paintAverages(*painter, cell, row, look);
        else
            paintBar(*painter, barRoom(cell, look), row, look);
    }

  private:
    void paintRules(QPainter& painter, const QRectF& cell, const YieldModel::Line& row,
                    const QModelIndex& index, const Look& look) const {
        if (row.strong() && index.row() > 0) {
            const bool all = row.row == YieldModel::Row::All;
            painter.setPen(QPen(look.tone(all ? Tone::Ink : Tone::Line), all ? 1.4 : 1.0));
            painter.drawLine(cell.topLeft() + QPointF(0, 0.5), cell.topRight() + QPointF(0, 0.5));
        }
        if (row.row == YieldModel::Row::All && index.column() == YieldModel::NowColumn) {
            painter.setPen(QPen(look.tone(Tone::Ink), 1.0));
            for (const double up : {3.5, 0.5})
                painter.drawLine(QPointF(cell.left() + look.px(8), cell.bottom() - up),
                                 QPointF(cell.right(), cell.bottom() - up));
        }
    }
    void paintName(QPainter& painter, const QRectF& cell, const YieldModel::Line& row,
                   const QStyleOptionViewItem& option, const Look& look) const {
        const bool bold = row.strong() || row.row == YieldModel::Row::NoHive;
        const QFont font = look.font(TextSize::Body, bold);
        const QRectF room = cell.adjusted(look.px(row.strong() ? 4 : 16), 0, -look.px(2), 0);
        paintTextIn(painter, room, fitted(row.named(), font, room.width()), font,
                    look.tone(Tone::Ink), Qt::AlignLeft);
        if (!(option.state & QStyle::State_Selected) || !m_table->hasFocus()) return;
        painter.fillRect(QRectF(cell.left(), cell.top() + 1, look.px(3), cell.height() - 1),
                         look.tone(Tone::Accent));
    }
    double rightOf(const QRectF& cell, const Look& look) const { return cell.right() - look.px(6); }
    void paintNow(QPainter& painter, const QRectF& cell, const YieldModel::Line& row,
                  const QModelIndex& index, const Look& look) const {
        const FigureStyle style{.bold = row.strong()};
        const double left = rightOf(cell, look) - m_now.width();
        if (!row.mass) {
            const QFont note = look.font(TextSize::Note);
            paintTextIn(painter,
                        QRectF(cell.left(), cell.top(),
                               left + m_now.whole + m_now.fraction - cell.left(), cell.height()),
                        row.nothing, note, look.tone(Tone::Muted), Qt::AlignRight);
            return;
        }
        paintFigure(painter, {left, base(cell, look)}, index.data(figureRole).value<FigureText>(),
                    m_now, style, look);
    }
    void paintBefore(QPainter& painter, const QRectF& cell, const YieldModel::Line& row,
                     const QModelIndex& index, const Look& look) const {
        if (!row.before) return;
        FigureStyle style;
        style.tone = Tone::Muted;
        paintFigure(painter, {rightOf(cell, look) - m_before.width(), base(cell, look)},
                    index.data(figureRole).value<FigureText>(), m_before, style, look);
    }
    double base(const QRectF& cell, const Look& look) const {
        return cell.center().y() + capHeight(look.font(TextSize::Body)) / 2.0;
    }
    void paintAverages(QPainter& painter, const QRectF& cell, const YieldModel::Line& row,
                       const Look& look) const {
        const QFont note = look.font(TextSize::Note);
        const QRectF room = cell.adjusted(look.px(4), 0, -look.px(2), 0);
        paintTextIn(painter, room,
                    textWidth(row.averages, note) <= room.width()
                        ? row.averages
                        : fitted(row.brief, note, room.width()),
                    note, look.tone(Tone::Ink), Qt::AlignRight);
    }
    void paintBar(QPainter& painter, const QRectF& room, const YieldModel::Line& row,
                  const Look& look) const {
        for (const ScaleMark& mark : m_model.scale().marks) {
            const double x = std::floor(room.left() + room.width() * mark.at) + 0.5;
            painter.setPen(QPen(look.tone(Tone::Hairline), 1));
            painter.drawLine(QPointF(x, room.top()), QPointF(x, room.bottom()));
        }
        const double half = std::min(look.px(5.5), room.height() / 2 - 3);
        const auto at = [&](Mass mass) {
            return room.left() +
                   room.width() * static_cast<double>(mass.grams()) / m_model.scale().topGrams;
        };
        if (row.mass && *row.mass > Mass()) {
            QPainterPath bar;
            bar.addRect(QRectF(QPointF(room.left(), room.center().y() - half),
                               QPointF(at(*row.mass), room.center().y() + half)));
            const bool filled = row.row == YieldModel::Row::Hive && !row.noted;
            const bool hatched = filled && (row.how == How::ByDifference || row.how == How::ByEye);
            painter.fillPath(
                bar, filled && !hatched ? look.paint(Paint::Honey) : look.tone(Tone::Surface));
            if (hatched) hatch(painter, bar, look.tone(Tone::Line), look.px(5), 45, look.px(1));
            const QColor edge =
                filled && !hatched ? look.paint(Paint::Edge) : look.tone(Tone::Line);
            painter.setBrush(Qt::NoBrush);
            painter.setPen(row.row == YieldModel::Row::NoHive ? dashedPen(edge, 1)
                                                              : plainPen(edge, 1));
            painter.drawPath(bar);
        }
        if (!row.before) return;
        painter.setPen(QPen(look.tone(Tone::Ink), look.px(2), Qt::SolidLine, Qt::FlatCap));
        painter.drawLine(QPointF(at(*row.before), room.center().y() - half - look.px(2)),
                         QPointF(at(*row.before), room.center().y() + half + look.px(2)));
    }

    const YieldModel& m_model;
    Session& m_session;
    YieldTable* m_table;
    FigureColumns m_now;
    FigureColumns m_before;
};

/// The heads, and the scale over the bars.
class YieldHeader : public QHeaderView {
  public:
    YieldHeader(const YieldModel& model, Session& session, QWidget* parent)
        : QHeaderView(Qt::Horizontal, parent), m_model(model), m_session(session) {
        setSectionsClickable(false);
        setHighlightSections(false);
        setFocusPolicy(Qt::NoFocus);
        setSectionResizeMode(QHeaderView::Fixed);
    }
    QSize sizeHint() const override { return {0, m_session.look().space(24)}; }

  protected:
    void paintSection(QPainter* painter, const QRect& rect, int section) const override {
        const PainterState state(*painter);
        const Look& look = m_session.look();
        painter->fillRect(rect, look.tone(Tone::Ground));
        painter->setPen(QPen(look.tone(Tone::Ink), 1.4));
        painter->drawLine(rect.bottomLeft(), rect.bottomRight());
        const bool now = section == YieldModel::NowColumn;
        const QFont font = look.font(TextSize::Note, now);
        const QColor color = look.tone(now ? Tone::Ink : Tone::Muted);
        const QString words = model()->headerData(section, Qt::Horizontal).toString();
        const QRectF room = QRectF(rect).adjusted(look.px(4), 0, -look.px(6), 0);
        if (section != YieldModel::BarColumn) {
            paintTextIn(*painter, room, words, font, color,
                        section == YieldModel::HiveColumn ? Qt::AlignLeft : Qt::AlignRight);
            return;
        }
        const QRectF bars = barRoom(rect, look);
        for (const ScaleMark& mark : m_model.scale().marks) {
            // The figure stands over its line, the unit behind it.
            const QString figure = mark.label.section(QLatin1Char(' '), 0, 0);
            const double left =
                bars.left() + bars.width() * mark.at - textWidth(figure, font) / 2.0;
            paintTextIn(*painter, QRectF(left, rect.top(), 1, rect.height()), mark.label, font,
                        color, Qt::AlignLeft);
        }
    }

  private:
    const YieldModel& m_model;
    Session& m_session;
};

}  // namespace

YieldTable::YieldTable(Session& session, YieldModel& model, QWidget* parent)
    : QTableView(parent), m_session(session), m_model(model) {
    setObjectName(QStringLiteral("yields"));
    setAccessibleName(tr("Honey by hive"));
    setHorizontalHeader(new YieldHeader(model, session, this));
    setModel(&model);
    setItemDelegate(new YieldDelegate(model, session, this));
    setTabKeyNavigation(false);
    setShowGrid(false);
    setFrameShape(QFrame::NoFrame);
    setSelectionBehavior(QAbstractItemView::SelectRows);
    setSelectionMode(QAbstractItemView::SingleSelection);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    verticalHeader()->hide();
    horizontalHeader()->setStretchLastSection(true);
    connect(this, &QTableView::doubleClicked, this, [this] { Q_EMIT opened(); });
}

void YieldTable::setBy(YieldBy by, const QString& spoken) {
    m_wideNames = by == YieldBy::Colony || by == YieldBy::Queen;
    setAccessibleName(spoken);
}

void YieldTable::measure() {
    const Look& look = m_session.look();
    auto* delegate = static_cast<YieldDelegate*>(itemDelegate());
    delegate->measure();
    const QFont bold = look.font(TextSize::Body, true);
    double names = look.px(56);
    for (int row = 0; row < m_model.rowCount(); ++row)
        names = std::max(names, textWidth(m_model.line(row).named(), bold) + look.px(22));
    const auto figures = [&](int column) {
        const QString head = m_model.headerData(column, Qt::Horizontal, Qt::DisplayRole).toString();
        return std::max(delegate->width(column), textWidth(head, look.font(TextSize::Note, true))) +
               look.px(16);
    };
    setColumnWidth(YieldModel::HiveColumn,
                   static_cast<int>(std::min(std::ceil(names), look.px(m_wideNames ? 190 : 130))));
    for (const int column : {YieldModel::NowColumn, YieldModel::BeforeColumn})
        setColumnWidth(column, static_cast<int>(std::ceil(figures(column))));
    setColumnHidden(YieldModel::BeforeColumn, !m_model.hasBefore());
    verticalHeader()->setMinimumSectionSize(look.space(16));
    verticalHeader()->setDefaultSectionSize(look.space(20));
    for (int row = 0; row < m_model.rowCount(); ++row)
        setRowHeight(row, look.space(m_model.line(row).row == YieldModel::Row::All ? 28 : 20));
    horizontalHeader()->setMinimumHeight(look.space(24));
    horizontalHeader()->setFixedHeight(look.space(24));
    viewport()->update();
}

int YieldTable::wholeHeight() const {
    return horizontalHeader()->height() + verticalHeader()->length() + 2;
}

const YieldModel::Line* YieldTable::current() const {
    const QModelIndex index = currentIndex();
    return index.isValid() ? &m_model.line(index.row()) : nullptr;
}

void YieldTable::keyPressEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter) {
        if (currentIndex().isValid()) Q_EMIT opened();
        return;
    }
    QTableView::keyPressEvent(event);
}

void YieldTable::currentChanged(const QModelIndex& current, const QModelIndex& previous) {
    QTableView::currentChanged(current, previous);
    Q_EMIT moved();
}

void YieldTable::focusInEvent(QFocusEvent* event) {
    QTableView::focusInEvent(event);
    if (!currentIndex().isValid() && m_model.rowCount() > 0) setCurrentIndex(m_model.index(0, 0));
    viewport()->update();
}
void YieldTable::focusOutEvent(QFocusEvent* event) {
    QTableView::focusOutEvent(event);
    viewport()->update();
}

}  // namespace combwright
