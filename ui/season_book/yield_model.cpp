#include "ui/season_book/yield_model.h"

#include "core/words/figures.h"
#include "core/words/words.h"
#include "ui/common/figure_delegate.h"

namespace combwright {
namespace {

FigureText yieldFigure(const std::optional<Mass>& mass, How how) {
    if (!mass) return {};
    return {massFigure(static_cast<double>(mass->grams()), how), {}, letter(how)};
}

std::optional<Mass> anyMass(Mass mass) {
    return mass > Mass() ? std::optional(mass) : std::nullopt;
}

}  // namespace

YieldModel::YieldModel(Session& session, QObject* parent)
    : QAbstractTableModel(parent), m_session(session) {}

void YieldModel::begin(int year, int before) {
    beginResetModel();
    m_lines.clear();
    m_year = year;
    m_before = before;
}

void YieldModel::addAll(Mass total, How how, const std::optional<Mass>& before, How beforeHow,
                        const QString& averages, const QString& brief) {
    m_hasBefore = before.has_value();
    m_anyWeighed = before && beforeHow == How::Weighed;
    if (m_lines.empty()) return;
    Line all;
    all.row = Row::All;
    all.name = tr("All");
    all.mass = anyMass(total);
    all.how = how;
    all.nothing = tr("none");
    all.before = before;
    all.beforeHow = beforeHow;
    all.averages = averages;
    all.brief = brief;
    m_lines.push_back(std::move(all));
}

void YieldModel::show(const SeasonYield& season, bool hives) {
    begin(season.year, season.beforeYear);
    m_head = hives ? tr("Hive") : tr("Yard");
    m_scale = barScale(season);
    if (!hives) m_scale.marks.clear();
    const FootnoteMarks marks = footnoteMarks(season);
    const auto withoutHive = [&](const QString& name, const QString& mark, Mass mass, How how,
                                 const RecordsOf& of) {
        Line row;
        row.mark = mark;
        row.row = Row::NoHive;
        row.name = name;
        row.mass = mass;
        row.how = how;
        row.words = tr("hive not known");
        row.of = of;
        m_lines.push_back(std::move(row));
    };
    for (const YardYield& yard : season.yards) {
        if (yard.hives.empty() && yard.total == Mass() && !yard.before) continue;
        Line head;
        head.row = Row::Yard;
        head.name = fromUtf8(yard.yard.name.text());
        head.mass = anyMass(yard.total);
        head.how = yard.how;
        head.noted = yard.noted;
        head.nothing = tr("none");
        head.before = yard.before;
        head.beforeHow = yard.beforeHow;
        head.averages = averagesText(yard.total, yard.how, yard.averagedOver(), yard.standing);
        head.brief = averagesText(yard.total, yard.how, yard.averagedOver(), yard.standing, true);
        head.of = {.yard = yard.yard.id};
        m_lines.push_back(std::move(head));
        if (!hives) continue;
        for (const HiveYield& hive : yard.hives) {
            Line row;
            row.name = fromUtf8(hive.mark);
            row.mark = marks.of(marks.ofHive, hive.hive.number);
            row.mass = hive.mass;
            row.how = hive.how;
            row.noted = hive.noted;
            row.nothing = yard.noted ? QStringLiteral("?") : tr("none");
            row.before = hive.before;
            row.beforeHow = hive.beforeHow;
            row.beforeNoted = hive.beforeNoted;
            row.words = howKnownText(hive, yard.noted);
            row.of = {.hive = hive.hive};
            m_lines.push_back(std::move(row));
        }
        if (yard.unknown)
            withoutHive(tr("no tag"), marks.of(marks.ofYard, yard.yard.id.number), *yard.unknown,
                        yard.how, {.yard = yard.yard.id, .withoutHive = true});
    }
    if (season.nowhere)
        withoutHive(tr("no yard"), {}, *season.nowhere, season.how, {.withoutHive = true});
    const auto averages = [&](bool brief) {
        return averagesText(season.total, season.how, season.averagedOver(), season.standing,
                            brief);
    };
    addAll(season.total, season.how, season.before, season.beforeHow, averages(false),
           averages(true));
    endResetModel();
}

void YieldModel::show(const YieldsBy& yields) {
    begin(yields.year, yields.beforeYear);
    m_head = yields.by == YieldBy::Queen ? tr("Queen") : tr("Colony");
    m_scale = barScale(yields);
    for (const YieldOf& line : yields.lines) {
        Line row;
        row.name = yieldOfRow(line);
        row.mass = line.mass;
        row.how = line.how;
        row.noted = line.noted;
        row.nothing = tr("none");
        row.before = line.before;
        row.beforeHow = line.beforeHow;
        row.beforeNoted = line.beforeNoted;
        row.words = tr("%1; %2").arg(yieldOfPlace(line), yieldOfKnown(line));
        row.of = {.colony = line.colony, .queen = line.queen};
        m_lines.push_back(std::move(row));
    }
    const auto without = [this](const QString& name, const std::optional<Mass>& mass, How how,
                                const RecordsOf& of) {
        if (!mass) return;
        Line row;
        row.row = Row::NoHive;
        row.name = name;
        row.mass = mass;
        row.how = how;
        row.words = name;
        row.of = of;
        m_lines.push_back(std::move(row));
    };
    without(
        yields.by == YieldBy::Queen ? tr("queen not written down") : tr("colony not written down"),
        yields.nobody, yields.nobodyHow, {.nobody = yields.by});
    without(tr("hive not known"), yields.noHive, yields.noHiveHow,
            {.withoutHive = true, .anyYard = true});
    addAll(yields.total, yields.how, yields.before, yields.beforeHow, yieldsByAverages(yields),
           yieldsByAverages(yields, true));
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
    if (role == figureRole) {
        if (index.column() == NowColumn) return QVariant::fromValue(yieldFigure(row.mass, row.how));
        if (index.column() != BeforeColumn) return {};
        // Its head says weighed; a letter only where it is not.
        FigureText beside = yieldFigure(row.before, row.beforeHow);
        if (row.beforeHow == How::Weighed) beside.how = 0;
        return QVariant::fromValue(beside);
    }
    if (role == Qt::AccessibleTextRole && index.column() == BarColumn)
        return row.averages.isEmpty() ? row.words : row.averages;
    if (role == Qt::ToolTipRole) {
        const QString& tip = row.strong() ? row.averages : row.words;
        return QStringLiteral("%1: %2").arg(row.name, tip);
    }
    if (role != Qt::DisplayRole) return {};
    switch (index.column()) {
        case HiveColumn:
            return row.named();
        case NowColumn:
            return row.mass ? massFigure(static_cast<double>(row.mass->grams()), row.how)
                            : row.nothing;
        case BeforeColumn:
            return row.before ? massFigure(static_cast<double>(row.before->grams()), row.beforeHow)
                              : QString();
        case BarColumn:
            return row.averages;
        default:
            return {};
    }
}

QVariant YieldModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation != Qt::Horizontal || role != Qt::DisplayRole) return {};
    switch (section) {
        case HiveColumn:
            return m_head;
        case NowColumn:
            return tr("%1, %2").arg(m_year).arg(massUnit());
        case BeforeColumn:
            return m_anyWeighed ? tr("%1 w").arg(m_before) : QString::number(m_before);
        default:
            return QString();
    }
}

}  // namespace combwright
