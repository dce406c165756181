#include "ui/season_book/year_charts.h"

#include <QHBoxLayout>
#include <QVBoxLayout>
#include <array>

#include "core/places/pages/season_book/through_year_charts.h"

namespace combwright {

namespace {

constexpr std::array allYearCharts{YearCharts::What::Mites, YearCharts::What::Weights,
                                   YearCharts::What::Brood, YearCharts::What::Stores};

}  // namespace

YearCharts::YearCharts(Session& session, QWidget* parent) : QWidget(parent), m_session(session) {
    setObjectName(QStringLiteral("year_charts"));
    m_title = new QLabel(tr("Through the year"), this);
    m_choice = new QComboBox(this);
    m_choice->setObjectName(QStringLiteral("year_chart"));
    m_choice->setAccessibleName(tr("What is drawn through the year"));
    m_choice->setSizeAdjustPolicy(QComboBox::AdjustToContents);
    m_choice->addItems({tr("Mites"), tr("Weights"), tr("Brood"), tr("Stores")});
    m_about = new QLabel(this);
    m_about->setWordWrap(true);
    m_pane = new ChartPane(session, this);
    m_note = new QLabel(this);
    m_note->setObjectName(QStringLiteral("year_chart_note"));
    m_note->setWordWrap(true);
    m_head = new QHBoxLayout;
    m_head->addWidget(m_title);
    m_head->addWidget(m_choice);
    m_head->addWidget(m_about, 1);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->addLayout(m_head);
    column->addWidget(m_pane, 1);
    column->addWidget(m_note);
    connect(m_choice, &QComboBox::activated, this, [this](int index) {
        m_own = true;
        choose(allYearCharts[static_cast<std::size_t>(index)]);
    });
    connect(m_pane, &ChartPane::opened, this, [this](ChartMark mark) {
        if (const std::int64_t hive = m_pane->pointAt(mark).hive; hive != 0)
            Q_EMIT hiveOpened(Id<Hive>{hive});
    });
    connect(&session, &Session::lookChanged, this, &YearCharts::sizes);
    sizes();
}

ChartBlock YearCharts::chartOf(What what) const {
    const Read& file = m_session.read();
    switch (what) {
        case What::Weights:
            return weightsChart(weightsThroughYear(file, m_year));
        case What::Brood:
            return broodChart(combsThroughYear(file, m_year));
        case What::Stores:
            return storesChart(combsThroughYear(file, m_year));
        case What::Mites:
            break;
    }
    return mitesChart(mitesThroughYear(file, m_year, m_session.clock().today()));
}

void YearCharts::choose(What what) {
    m_what = what;
    m_session.reading([this] { fill(chartOf(m_what)); });
}

void YearCharts::show(int year) {
    m_year = year;
    if (m_own) return fill(chartOf(m_what));
    // Where nobody chose, what there is something to see of comes first.
    m_what = What::Mites;
    const ChartBlock first = chartOf(m_what);
    if (!isEmpty(first)) return fill(first);
    for (const What what : allYearCharts) {
        const ChartBlock chart = chartOf(what);
        if (isEmpty(chart)) continue;
        m_what = what;
        return fill(chart);
    }
    fill(first);
}

void YearCharts::fill(const ChartBlock& chart) {
    m_choice->setCurrentIndex(static_cast<int>(m_what));
    m_pane->show(chart);
    m_pane->setVisible(!isEmpty(chart));
    m_about->setText(chart.about);
    const std::size_t more =
        chart.series.size() > mostSeries ? chart.series.size() - mostSeries : 0;
    QStringList notes;
    if (isEmpty(chart)) notes << chart.empty;
    if (more == 1) notes << tr("One more is in the table (T), or by Down.");
    if (more > 1) notes << tr("%1 more are in the table (T), or by Down.").arg(more);
    if (!isEmpty(chart) && !chart.note.isEmpty()) notes << chart.note;
    m_note->setText(notes.join(QLatin1Char(' ')));
    m_note->setVisible(!notes.isEmpty());
}

MarkRecord YearCharts::currentRecord() const {
    MarkRecord record;
    const auto mark = m_pane->currentMark();
    if (!mark) return record;
    const ChartBlock::Point& point = m_pane->pointAt(*mark);
    if (point.finding != 0) record.finding = Id<Finding>{point.finding};
    if (point.weighing != 0) record.weighing = Id<HiveWeighing>{point.weighing};
    if (point.look != 0) record.look = Id<Inspection>{point.look};
    return record;
}

QString YearCharts::fileNamePattern() const {
    switch (m_what) {
        case What::Weights:
            return tr("weights-%1");
        case What::Brood:
            return tr("brood-%1");
        case What::Stores:
            return tr("stores-%1");
        case What::Mites:
            break;
    }
    return tr("mites-%1");
}

void YearCharts::sizes() {
    const Look& look = m_session.look();
    m_title->setFont(look.font(TextSize::Body, true));
    for (QLabel* label : {m_about, m_note}) {
        label->setFont(look.font(TextSize::Note));
        QPalette muted = label->palette();
        muted.setColor(QPalette::WindowText, look.tone(Tone::Muted));
        label->setPalette(muted);
    }
    layout()->setSpacing(look.space(4));
    m_head->setSpacing(look.space(8));
}

}  // namespace combwright
