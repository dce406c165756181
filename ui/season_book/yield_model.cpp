#include "ui/season_book/yield_model.h"

#include <QPainter>
#include <algorithm>

#include "core/words/figures.h"
#include "core/words/words.h"
#include "ui/common/figure_delegate.h"

namespace combwright {
namespace {

FigureText yieldFigure(const std::optional<Mass>& mass, How how) {
    if (!mass) return {};
    return {massFigure(static_cast<double>(mass->grams()), how), {}, letter(how)};
}

}  // namespace

YieldModel::YieldModel(Session& session, QObject* parent)
    : QAbstractTableModel(parent), m_session(session) {}

void YieldModel::show(const SeasonYield& season) {
    beginResetModel();
    m_lines.clear();
    m_year = season.year;
    m_scale = 1000;
    const auto average = [](Mass total, How how, int hives) {
        return massFigure(static_cast<double>(total.grams()) / hives, how);
    };
    for (const YardYield& yard : season.yards) {
        if (yard.hives.empty() && yard.total == Mass()) continue;
        Line head{fromUtf8(yard.yard.name.text()),
                  true,
                  yard.total > Mass() ? std::optional(yard.total) : std::nullopt,
                  yard.how,
                  yard.before,
                  {},
                  false,
                  {}};
        if (yard.producing)
            head.averages =
                tr("%1 a producing hive").arg(average(yard.total, yard.how, yard.producing));
        if (yard.producing && yard.standing)
            head.averages += tr(", %1 on 1 May").arg(average(yard.total, yard.how, yard.standing));
        m_lines.push_back(head);
        for (const HiveYield& hive : yard.hives) {
            Line row{fromUtf8(hive.mark), false, hive.mass, hive.how, hive.before, {}, false, {}};
            row.howWords = !hive.mass ? tr("nothing taken") : howWord(hive.how);
            if (hive.revised) row.howWords += tr(", revised");
            for (const auto& mass : {hive.mass, hive.before})
                if (mass) m_scale = std::max(m_scale, static_cast<double>(mass->grams()));
            m_lines.push_back(row);
        }
        if (yard.unknown && *yard.unknown > Mass()) {
            m_scale = std::max(m_scale, static_cast<double>(yard.unknown->grams()));
            m_lines.push_back(
                {tr("no tag"), false, yard.unknown, yard.how, {}, {}, true, tr("hive not known")});
        }
    }
    if (!m_lines.empty())
        m_lines.push_back(
            {tr("All"), true, season.total, season.how, season.before, {}, false, {}});
    endResetModel();
}

int YieldModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(m_lines.size());
}
int YieldModel::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(ColumnCount);
}

QVariant YieldModel::data(const QModelIndex& index, int role) const {
    if (!index.isValid()) return {};
    const Line& row = line(index.row());
    const Look& look = m_session.look();
    switch (role) {
        case figureRole:
            if (index.column() == NowColumn)
                return QVariant::fromValue(yieldFigure(row.mass, row.how));
            if (index.column() == BeforeColumn)
                return QVariant::fromValue(yieldFigure(row.before, How::Weighed));
            return {};
        case Qt::DisplayRole:
            switch (index.column()) {
                case HiveColumn:
                    return row.yard ? row.name : QStringLiteral("    ") + row.name;
                case NowColumn:
                    return row.mass ? massFigure(static_cast<double>(row.mass->grams()), row.how)
                                    : tr("none");
                case BeforeColumn:
                    return row.before
                               ? massFigure(static_cast<double>(row.before->grams()), How::Weighed)
                               : QString();
                case BarColumn:
                    return row.averages;
                case HowColumn:
                    return row.howWords;
                default:
                    return {};
            }
        case Qt::FontRole:
            return look.font(TextSize::Body, row.yard || row.noHive);
        case Qt::ForegroundRole:
            return look.tone(index.column() == BeforeColumn || index.column() == HowColumn
                                 ? Tone::Muted
                                 : Tone::Ink);
        case Qt::TextAlignmentRole: {
            const bool right = index.column() == NowColumn || index.column() == BeforeColumn;
            return QVariant::fromValue(
                Qt::Alignment(Qt::AlignVCenter | (right ? Qt::AlignRight : Qt::AlignLeft)));
        }
        default:
            return {};
    }
}

QVariant YieldModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation != Qt::Horizontal) return {};
    if (role == Qt::TextAlignmentRole) {
        const bool right = section == NowColumn || section == BeforeColumn;
        return QVariant::fromValue(
            Qt::Alignment(Qt::AlignBottom | (right ? Qt::AlignRight : Qt::AlignLeft)));
    }
    if (role != Qt::DisplayRole) return {};
    switch (section) {
        case HiveColumn:
            return tr("Hive");
        case NowColumn:
            return tr("%1, kg").arg(m_year);
        case BeforeColumn:
            return QString::number(m_year - 1);
        case BarColumn:
            return tr("0 to %1 kg; a stroke: the year before").arg(massFigure(m_scale, How::ByEye));
        case HowColumn:
            return tr("how it is known");
        default:
            return {};
    }
}

void YieldBarDelegate::paint(QPainter* painter, const QStyleOptionViewItem& option,
                             const QModelIndex& index) const {
    const YieldModel::Line& row = m_model.line(index.row());
    if (row.yard) return QStyledItemDelegate::paint(painter, option, index);
    const Look& look = m_session.look();
    painter->save();
    painter->setPen(look.tone(Tone::Hairline));
    painter->drawLine(option.rect.bottomLeft(), option.rect.bottomRight());
    if (option.state & QStyle::State_Selected)
        painter->fillRect(option.rect, look.tone(Tone::Selection));
    const QRectF room = QRectF(option.rect).adjusted(4, 0, -look.space(12), 0);
    const double middle = room.center().y();
    const double half = look.px(5);
    if (row.mass) {
        const QRectF bar(
            room.x(), middle - half,
            room.width() * static_cast<double>(row.mass->grams()) / m_model.scaleGrams(), 2 * half);
        QPen pen(row.noHive ? look.tone(Tone::Line) : look.paint(Paint::Edge), 1);
        if (row.noHive) pen.setStyle(Qt::DashLine);
        painter->setPen(pen);
        const bool hatched = row.how == How::ByDifference || row.how == How::ByEye;
        painter->setBrush(row.noHive ? QBrush(Qt::NoBrush)
                          : hatched  ? QBrush(look.paint(Paint::Honey), Qt::BDiagPattern)
                                     : QBrush(look.paint(Paint::Honey)));
        painter->drawRect(bar);
    }
    if (row.before) {
        const double x = room.x() + room.width() * static_cast<double>(row.before->grams()) /
                                        m_model.scaleGrams();
        painter->setPen(QPen(look.tone(Tone::Ink), 2));
        painter->drawLine(QPointF(x, middle - half - 2), QPointF(x, middle + half + 2));
    }
    painter->restore();
}

}  // namespace combwright
