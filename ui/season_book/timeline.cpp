#include "ui/season_book/timeline.h"

#include <QAreaSeries>
#include <QCategoryAxis>
#include <QFile>
#include <QHeaderView>
#include <QLineSeries>
#include <QLocale>
#include <QPainter>
#include <QSvgGenerator>
#include <QTextStream>
#include <QVBoxLayout>
#include <QValueAxis>
#include <algorithm>

#include "core/words/figures.h"
#include "core/words/words.h"

namespace combwright {
namespace {

qint64 milliseconds(Day day) { return qint64(day.time_since_epoch().count()) * 86'400'000; }

/// Steps of the sum over the year, as seen from `year`: another year's days are laid over this
/// one's.
std::vector<QPointF> stepsOf(const SeasonYield& season, int year, double& sum) {
    std::vector<QPointF> points;
    sum = 0;
    points.emplace_back(static_cast<double>(milliseconds(*makeDay(year, 4, 1))), 0.0);
    for (const RunBalance& run : season.runs) {
        const auto day = makeDay(year, monthOf(run.run.on), std::min(dayOfMonth(run.run.on), 28U));
        const auto x = static_cast<double>(milliseconds(day.value_or(run.run.on)));
        points.emplace_back(x, sum);
        sum += run.buckets.kilograms();
        points.emplace_back(x, sum);
    }
    points.emplace_back(static_cast<double>(milliseconds(*makeDay(year, 10, 31))), sum);
    return points;
}

}  // namespace

Timeline::Timeline(Session& session, QWidget* parent) : QWidget(parent), m_session(session) {
    m_view = new QChartView(new QChart, this);
    m_view->setRenderHint(QPainter::Antialiasing);
    m_view->setFocusPolicy(Qt::NoFocus);
    m_view->viewport()->setFocusPolicy(Qt::NoFocus);
    m_view->setAccessibleName(tr("Harvest timeline; press T for the same as a table"));
    m_table = new QTableWidget(this);
    m_table->setObjectName(QStringLiteral("timeline_table"));
    m_table->setAccessibleName(tr("Harvest timeline as a table"));
    m_table->setTabKeyNavigation(false);
    m_table->setEditTriggers(QAbstractItemView::NoEditTriggers);
    m_table->verticalHeader()->hide();
    m_table->horizontalHeader()->setHighlightSections(false);
    m_table->hide();
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->addWidget(m_view, 1);
    column->addWidget(m_table, 1);
    connect(&session, &Session::lookChanged, this, [this] { drawChart(); });
}

void Timeline::show(const SeasonYield& season, const SeasonYield& before) {
    m_season = season;
    m_before = before;
    drawChart();
    fillTable();
}

void Timeline::toggleTable() {
    const bool table = !tableShown();
    m_table->setVisible(table);
    m_view->setVisible(!table);
}

void Timeline::drawChart() {
    const Look& look = m_session.look();
    QChart* chart = m_view->chart();
    chart->removeAllSeries();
    for (QAbstractAxis* axis : chart->axes()) {
        chart->removeAxis(axis);
        delete axis;
    }
    chart->legend()->hide();
    chart->setBackgroundBrush(look.tone(Tone::Ground));
    chart->setBackgroundRoundness(0);
    chart->setMargins(QMargins(0, 0, 0, 0));
    chart->setAnimationOptions(QChart::NoAnimation);
    if (m_season.year == 0) return;

    double total = 0;
    double totalBefore = 0;
    auto* now = new QLineSeries(chart);
    auto* floor = new QLineSeries(chart);
    for (const QPointF& point : stepsOf(m_season, m_season.year, total)) {
        now->append(point);
        floor->append(point.x(), 0);
    }
    auto* area = new QAreaSeries(now, floor);
    area->setParent(chart);
    QColor fill = look.paint(Paint::Capping);
    fill.setAlpha(look.dark ? 60 : 160);
    area->setBrush(fill);
    area->setPen(QPen(look.paint(Paint::Honey), 2));
    chart->addSeries(area);
    std::vector<QAbstractSeries*> drawn{area};
    if (!m_before.runs.empty()) {
        auto* before = new QLineSeries(chart);
        for (const QPointF& point : stepsOf(m_before, m_season.year, totalBefore))
            before->append(point);
        before->setPen(QPen(look.tone(Tone::Muted), 1.5, Qt::DashLine));
        chart->addSeries(before);
        drawn.push_back(before);
    }
    // Months are as long as they are, so their starts are marked, not equal parts of the year.
    auto* months = new QCategoryAxis(chart);
    months->setLabelsPosition(QCategoryAxis::AxisLabelsPositionOnValue);
    for (unsigned month = 4; month <= 10; ++month)
        months->append(QLocale().monthName(static_cast<int>(month), QLocale::ShortFormat),
                       static_cast<double>(milliseconds(*makeDay(m_season.year, month, 1))));
    months->setRange(static_cast<double>(milliseconds(*makeDay(m_season.year, 4, 1))),
                     static_cast<double>(milliseconds(*makeDay(m_season.year, 10, 31))));
    auto* mass = new QValueAxis(chart);
    mass->setRange(0, std::max({total, totalBefore, 10.0}) * 1.1);
    mass->applyNiceNumbers();
    mass->setLabelFormat(QStringLiteral("%.0f"));
    mass->setTitleText(tr("kg in buckets, added up"));
    for (QAbstractAxis* axis : std::initializer_list<QAbstractAxis*>{months, mass}) {
        axis->setLabelsFont(look.font(TextSize::Note));
        axis->setLabelsColor(look.tone(Tone::Muted));
        axis->setTitleFont(look.font(TextSize::Note));
        axis->setTitleBrush(look.tone(Tone::Muted));
        axis->setGridLineColor(look.tone(Tone::Hairline));
        axis->setLinePenColor(look.tone(Tone::Line));
    }
    chart->addAxis(months, Qt::AlignBottom);
    chart->addAxis(mass, Qt::AlignLeft);
    for (QAbstractSeries* series : drawn) {
        series->attachAxis(months);
        series->attachAxis(mass);
    }
    chart->setTitleFont(look.font(TextSize::Note, true));
    chart->setTitleBrush(look.tone(Tone::Ink));
    QString title = tr("%1: %2 kg").arg(m_season.year).arg(massFigure(total * 1000, How::Weighed));
    if (totalBefore > 0)
        title += tr("; dashed %1: %2 kg")
                     .arg(m_before.year)
                     .arg(massFigure(totalBefore * 1000, How::Weighed));
    chart->setTitle(title);
}

void Timeline::fillTable() {
    m_table->clear();
    m_table->setColumnCount(5);
    m_table->setHorizontalHeaderLabels(
        {tr("Day"), tr("Lot"), tr("Yard"), tr("kg"), tr("added up, kg")});
    m_table->setRowCount(static_cast<int>(m_season.runs.size()));
    Mass sum;
    int row = 0;
    for (const RunBalance& run : m_season.runs) {
        sum += run.buckets;
        const QStringList texts{
            dayText(run.run.on), fromUtf8(run.run.name.text()), fromUtf8(run.yard),
            massFigure(static_cast<double>(run.buckets.grams()), run.bucketsHow),
            massFigure(static_cast<double>(sum.grams()), How::Weighed)};
        for (int column = 0; column < texts.size(); ++column)
            m_table->setItem(row, column, new QTableWidgetItem(texts[column]));
        ++row;
    }
    m_table->resizeColumnsToContents();
}

bool Timeline::exportPicture(const QString& path) const {
    if (path.endsWith(QLatin1String(".svg"))) {
        QSvgGenerator svg;
        svg.setFileName(path);
        svg.setSize(m_view->size());
        svg.setViewBox(m_view->rect());
        svg.setTitle(tr("Harvest timeline %1").arg(m_season.year));
        QPainter painter;
        if (!painter.begin(&svg)) return false;
        m_view->render(&painter);
        return painter.end();
    }
    QPixmap picture(m_view->size() * 2);
    picture.setDevicePixelRatio(2);
    picture.fill(m_session.look().tone(Tone::Ground));
    QPainter painter(&picture);
    m_view->render(&painter);
    painter.end();
    return picture.save(path);
}

bool Timeline::exportCsv(const QString& path) const {
    QFile file(path);
    if (!file.open(QIODevice::WriteOnly)) return false;
    QTextStream out(&file);
    out << "day,lot,yard,honey_g,added_up_g\r\n";
    Mass sum;
    const auto quoted = [](const std::string& text) {
        return QLatin1Char('"') + fromUtf8(text).replace(QLatin1Char('"'), QLatin1String("\"\"")) +
               QLatin1Char('"');
    };
    for (const RunBalance& run : m_season.runs) {
        sum += run.buckets;
        out << fromUtf8(isoText(run.run.on)) << ',' << quoted(run.run.name.text()) << ','
            << quoted(run.yard) << ',' << run.buckets.grams() << ',' << sum.grams() << "\r\n";
    }
    return out.status() == QTextStream::Ok;
}

}  // namespace combwright
