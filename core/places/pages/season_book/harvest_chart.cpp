#include "core/places/pages/season_book/harvest_chart.h"

#include <QCoreApplication>
#include <algorithm>
#include <cmath>

#include "core/places/pages/season_book/harvest_blocks.h"
#include "core/words/figures.h"
#include "core/words/words.h"

namespace combwright {
namespace {

QString harvestSay(const char* text) { return QCoreApplication::translate("charts", text); }

double gramsIn(Mass mass) { return static_cast<double>(mass.grams()); }

/// A decimal point in every language, no noughts behind it.
QString fileMass(double grams) {
    QString text = QString::number(inMassUnits(grams), 'f', 3);
    while (text.endsWith(QLatin1Char('0'))) text.chop(1);
    if (text.endsWith(QLatin1Char('.'))) text.chop(1);
    return text;
}

QString partName(const HarvestPart& part, HarvestBy by) {
    const QString name = fromUtf8(part.name);
    if (!part.withoutHive) return name;
    if (name.isEmpty())
        return by == HarvestBy::Yard ? harvestSay("no yard known") : harvestSay("no hive known");
    return harvestSay("%1, no hive known").arg(name);
}

QStringList harvestCells(int year, const QString& day, const QString& lot, const QString& yard,
                         double grams, How how, std::optional<double> sum) {
    return {QString::number(year),
            day,
            lot,
            yard,
            fileMass(grams),
            QString::number(std::llround(grams)),
            howWord(how),
            sum ? fileMass(*sum) : QString(),
            sum ? QString::number(std::llround(*sum)) : QString()};
}

/// The points of a part: what came each day, or how much it was by then.
std::vector<ChartBlock::Point> harvestPoints(const std::vector<HarvestCame>& came, int year,
                                             const QString& name, bool each) {
    std::vector<ChartBlock::Point> points;
    double sum = 0;
    for (const HarvestCame& one : came) {
        const double grams = gramsIn(one.mass);
        sum += grams;
        ChartBlock::Point point;
        point.on = one.on;
        point.value = inMassUnits(each ? grams : sum);
        point.figure = massText(each ? grams : sum, one.how);
        const QString where = one.yard.empty()
                                  ? fromUtf8(one.lot)
                                  : harvestSay("%1, %2").arg(fromUtf8(one.lot), fromUtf8(one.yard));
        point.says = harvestSay("%1: %2 on %3 (%4); %5 by then.")
                         .arg(name, massInWords(grams, one.how), dayText(one.on), where,
                              massText(sum, one.how));
        point.cells = harvestCells(year, fromUtf8(isoText(one.on)), fromUtf8(one.lot),
                                   fromUtf8(one.yard), grams, one.how, sum);
        point.run = one.run.number;
        points.push_back(std::move(point));
    }
    return points;
}

class HarvestChartMaker {
  public:
    HarvestChartMaker(const std::vector<HarvestLine>& years, const HarvestDrawn& drawn)
        : m_years(years), m_drawn(drawn) {}

    ChartBlock make();

  private:
    bool byPart() const { return m_drawn.by == HarvestBy::Yard || m_drawn.by == HarvestBy::Hive; }
    void addWholeYear(const HarvestLine& year, bool itself);
    void addLots(const HarvestLine& year);
    void addParts();
    void addSeries(const QString& name, const QString& end, int year,
                   const std::vector<HarvestCame>& came, std::optional<std::size_t> besideOf);
    void addUndated(const QString& name, int year, Mass undated, How how, Mass total);
    void setAxis();

    const std::vector<HarvestLine>& m_years;
    HarvestDrawn m_drawn;
    ChartBlock m_chart;
    Mass m_undated;  ///< of the year itself
};

void HarvestChartMaker::addSeries(const QString& name, const QString& end, int year,
                                  const std::vector<HarvestCame>& came,
                                  std::optional<std::size_t> besideOf) {
    ChartBlock::Series series;
    series.name = name;
    series.end = end;
    series.besideOf = besideOf;
    series.points = harvestPoints(came, year, name, m_drawn.each);
    m_chart.series.push_back(std::move(series));
}

void HarvestChartMaker::addUndated(const QString& name, int year, Mass undated, How how,
                                   Mass total) {
    if (undated == Mass()) return;
    if (year == m_years.front().year) m_undated += undated;
    m_chart.more.push_back(QStringList{name} + harvestCells(year, QString(), QString(), QString(),
                                                            gramsIn(undated), how, gramsIn(total)));
}

/// All that came in a year as one line; lots give their names where they are asked for.
void HarvestChartMaker::addWholeYear(const HarvestLine& year, bool itself) {
    std::vector<HarvestCame> came;
    for (const HarvestPart& part : year.parts) {
        came.insert(came.end(), part.came.begin(), part.came.end());
        addUndated(QString::number(year.year), year.year, part.undated, part.how, year.total);
    }
    std::stable_sort(came.begin(), came.end(),
                     [](const HarvestCame& a, const HarvestCame& b) { return a.on < b.on; });
    if (came.empty()) return;
    addSeries(QString::number(year.year),
              harvestSay("%1: %2").arg(QString::number(year.year),
                                       massText(gramsIn(year.total), year.how)),
              year.year, came, itself ? std::nullopt : std::optional<std::size_t>(0));
}

/// Each lot by itself, where nothing is added up.
void HarvestChartMaker::addLots(const HarvestLine& year) {
    for (const HarvestPart& part : year.parts) {
        const QString name = partName(part, m_drawn.by);
        if (!part.came.empty())
            addSeries(name, harvestSay("%1 %2").arg(name, massText(gramsIn(part.total), part.how)),
                      year.year, part.came, std::nullopt);
        addUndated(name.isEmpty() ? QString::number(year.year) : name, year.year, part.undated,
                   part.how, part.total);
    }
}

void HarvestChartMaker::addParts() {
    const HarvestLine& itself = m_years.front();
    std::vector<const HarvestPart*> parts;
    for (const HarvestPart& part : itself.parts) parts.push_back(&part);
    std::stable_sort(parts.begin(), parts.end(), [](const HarvestPart* a, const HarvestPart* b) {
        return a->total > b->total;
    });
    std::erase_if(parts, [&](const HarvestPart* part) {
        const QString name = partName(*part, m_drawn.by);
        addUndated(name, itself.year, part->undated, part->how, part->total);
        if (part->came.empty()) return true;
        addSeries(name, harvestSay("%1 %2").arg(name, massText(gramsIn(part->total), part->how)),
                  itself.year, part->came, std::nullopt);
        return false;
    });
    for (auto year = m_years.begin() + 1; year != m_years.end(); ++year)
        for (std::size_t i = 0; i < parts.size(); ++i) {
            const HarvestPart* same = year->partLike(*parts[i]);
            if (!same) continue;
            const QString name =
                harvestSay("%1 %2").arg(partName(*same, m_drawn.by), QString::number(year->year));
            addUndated(name, year->year, same->undated, same->how, same->total);
            if (same->came.empty()) continue;
            addSeries(name,
                      harvestSay("%1: %2").arg(QString::number(year->year),
                                               massText(gramsIn(same->total), same->how)),
                      year->year, same->came, i);
        }
}

void HarvestChartMaker::setAxis() {
    double most = 0;
    for (const ChartBlock::Series& series : m_chart.series)
        for (const ChartBlock::Point& point : series.points) most = std::max(most, point.value);
    m_chart.top = std::max(most * 1.08, 1.0);
    m_chart.marks = scaleMarks(m_chart.top, 5);
    m_chart.axis = (m_drawn.each ? harvestSay("%1 in buckets, each day's")
                                 : harvestSay("%1 in buckets, added up"))
                       .arg(massUnit());
    const QString unit = massUnit();
    m_chart.columns = {{harvestSay("line"), false, false},
                       {harvestSay("year"), false, false},
                       {harvestSay("day"), false, false},
                       {harvestSay("lot"), false, false},
                       {harvestSay("yard"), false, false},
                       {harvestSay("honey (%1)").arg(unit), true, false},
                       {harvestSay("honey (g)"), true, true},
                       {harvestSay("how known"), false, false},
                       {harvestSay("added up (%1)").arg(unit), true, false},
                       {harvestSay("added up (g)"), true, true}};
}

ChartBlock HarvestChartMaker::make() {
    m_chart.title = harvestSay("Harvest timeline");
    m_chart.join = m_drawn.each ? ChartBlock::Join::Stems : ChartBlock::Join::Steps;
    m_chart.empty = harvestSay("No honey came in on a day that is known.");
    if (m_years.empty()) return std::move(m_chart);
    m_chart.year = m_years.front().year;
    if (byPart()) {
        addParts();
    } else if (m_drawn.by == HarvestBy::Lot && m_drawn.each) {
        addLots(m_years.front());
    } else {
        bool itself = true;
        for (const HarvestLine& year : m_years) {
            addWholeYear(year, itself);
            itself = false;
        }
    }
    if (m_undated > Mass())
        m_chart.note = harvestSay(
                           "%1 of %2 are on no day that is known, from paper or not shared out: "
                           "not drawn.")
                           .arg(massText(gramsIn(m_undated), How::Weighed),
                                massText(gramsIn(m_years.front().total), m_years.front().how));
    setAxis();
    return std::move(m_chart);
}

}  // namespace

ChartBlock harvestChart(const std::vector<HarvestLine>& years, const HarvestDrawn& drawn) {
    return HarvestChartMaker(years, drawn).make();
}

}  // namespace combwright
