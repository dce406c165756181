#include "ui/season_book/season_book_place.h"

#include <QFileDialog>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QShortcut>
#include <QVBoxLayout>
#include <set>

#include "core/places/pages/harvest_pages.h"
#include "core/words/figures.h"
#include "core/words/words.h"
#include "ui/common/figure_delegate.h"

namespace combwright {

SeasonBookPlace::SeasonBookPlace(Session& session, QWidget* parent)
    : Place(session, parent), m_model(session) {
    // Not by Tab: Shift+Tab from what it hands on to would come straight back.
    setFocusPolicy(Qt::ClickFocus);
    m_years = new QComboBox;
    m_years->setObjectName(QStringLiteral("year"));
    m_years->setAccessibleName(tr("Year"));
    m_sentence = new QLabel(this);
    m_sentence->setWordWrap(true);
    m_timeline = new Timeline(session, this);
    m_runs = new QLabel(this);
    m_runs->setWordWrap(true);
    m_runs->setTextFormat(Qt::RichText);
    m_runs->setAlignment(Qt::AlignTop | Qt::AlignLeft);
    m_table = new QTableView(this);
    m_table->setObjectName(QStringLiteral("yields"));
    m_table->setAccessibleName(tr("Honey by hive"));
    m_table->setModel(&m_model);
    m_table->setTabKeyNavigation(false);
    m_table->setShowGrid(false);
    m_table->setFrameShape(QFrame::NoFrame);
    m_table->setSelectionBehavior(QAbstractItemView::SelectRows);
    m_table->verticalHeader()->hide();
    m_table->horizontalHeader()->setHighlightSections(false);
    m_table->horizontalHeader()->setStretchLastSection(false);
    auto* figures = new FigureDelegate(look(), this);
    m_table->setItemDelegateForColumn(YieldModel::NowColumn, figures);
    m_table->setItemDelegateForColumn(YieldModel::BeforeColumn, figures);
    m_table->setItemDelegateForColumn(YieldModel::BarColumn,
                                      new YieldBarDelegate(m_model, session, this));

    auto* whole = new QVBoxLayout(this);
    whole->setContentsMargins(24, 12, 24, 12);
    whole->setSpacing(12);
    whole->addWidget(m_sentence);
    auto* across = new QHBoxLayout;
    across->setSpacing(24);
    auto* left = new QVBoxLayout;
    left->addWidget(m_timeline, 3);
    left->addWidget(m_runs, 2);
    across->addLayout(left, 5);
    across->addWidget(m_table, 5);
    whole->addLayout(across, 1);

    // A table takes letters for a search of its own, so these are shortcuts of the whole place.
    const auto key = [this](Qt::Key letterKey, auto deed) {
        auto* shortcut = new QShortcut(QKeySequence(letterKey), this);
        shortcut->setContext(Qt::WidgetWithChildrenShortcut);
        connect(shortcut, &QShortcut::activated, this, deed);
    };
    key(Qt::Key_T, [this] { m_timeline->toggleTable(); });
    key(Qt::Key_E, [this] { exportFiles(); });
    connect(m_years, &QComboBox::activated, this, [this](int index) {
        m_year = m_years->itemData(index).toInt();
        reload();
    });
    connect(&session, &Session::seasonChanged, this, [this] { m_year = 0; });
    connect(&session, &Session::changed, this, [this] {
        if (isVisible()) reload();
    });
    const auto sizes = [this, figures] {
        figures->setLook(look());
        m_sentence->setFont(look().font(TextSize::Head));
        m_runs->setFont(look().font(TextSize::Body));
        m_table->verticalHeader()->setDefaultSectionSize(look().space(20));
        m_table->verticalHeader()->setMinimumSectionSize(look().space(18));
        const int widths[] = {84, 76, 68, 0, 104};
        for (int column = 0; column < YieldModel::ColumnCount; ++column)
            if (widths[column]) m_table->setColumnWidth(column, look().space(widths[column]));
        m_table->horizontalHeader()->setSectionResizeMode(YieldModel::BarColumn,
                                                          QHeaderView::Stretch);
    };
    connect(&session, &Session::lookChanged, this, sizes);
    sizes();
}

void SeasonBookPlace::fillYears() {
    std::set<int> years{yearOf(session().clock().today())};
    for (const Extraction& run : session().read().all<Extraction>()) years.insert(yearOf(run.on));
    if (m_year == 0) {
        m_year = *years.rbegin();
        // The newest year that brought honey; an empty January page helps nobody in winter.
        for (const Extraction& run : session().read().all<Extraction>())
            if (yearOf(run.on) <= yearOf(session().clock().today())) m_year = yearOf(run.on);
    }
    years.insert(m_year);
    m_years->clear();
    for (auto year = years.rbegin(); year != years.rend(); ++year)
        m_years->addItem(QString::number(*year), *year);
    m_years->setCurrentIndex(m_years->findData(m_year));
}

void SeasonBookPlace::reload() {
    if (!session().hasSeason()) return;
    fillYears();
    m_season = seasonYield(session().read(), m_year);
    m_sentence->setText(m_season.runs.empty() ? seasonSentence(m_season) + QLatin1Char(' ') +
                                                    tr("Runs written down in the honey room, and "
                                                       "crops noted from paper, appear here.")
                                              : seasonSentence(m_season));
    m_timeline->show(m_season, seasonYield(session().read(), m_year - 1));
    m_runs->setText(runsText());
    m_model.show(m_season);
    for (const int column : {YieldModel::NowColumn, YieldModel::BeforeColumn})
        if (auto* figures = dynamic_cast<FigureDelegate*>(m_table->itemDelegateForColumn(column)))
            figures->measure(m_model, YieldModel::NowColumn);
    Q_EMIT headChanged();
}

QString SeasonBookPlace::runsText() const {
    if (m_season.runs.empty()) return {};
    QString html =
        QStringLiteral("<b>%1</b><table cellspacing='3' width='100%'>").arg(tr("Reckoned and got"));
    for (const RunBalance& run : m_season.runs) {
        const QString missing =
            run.unaccountedG ? tr("missing %1 kg").arg(massFigure(*run.unaccountedG, How::Weighed))
                             : tr("missing: not known");
        const QString frame =
            run.gotPerFrameG
                ? tr("%1 kg a frame").arg(QLocale().toString(*run.gotPerFrameG / 1000.0, 'f', 2))
                : QString();
        html += QStringLiteral(
                    "<tr><td>%1</td><td>%2 %3</td><td align='right'><b>%4</b> "
                    "kg<sup>%5</sup></td><td>%6</td><td>%7</td></tr>")
                    .arg(dayAndMonth(run.run.on), fromUtf8(run.run.name.text()).toHtmlEscaped(),
                         fromUtf8(run.yard).toHtmlEscaped(),
                         massFigure(static_cast<double>(run.buckets.grams()), run.bucketsHow),
                         QString(QLatin1Char(letter(run.bucketsHow))), missing,
                         frame + (run.revised ? tr(" revised") : QString()));
    }
    return html + QStringLiteral("</table>");
}

PlaceHead SeasonBookPlace::head() const {
    PlaceHead head;
    head.title = tr("Season book");
    head.under =
        tr("beside %1 · as kept on %2").arg(m_year - 1).arg(dayText(session().clock().today()));
    if (m_season.total > Mass()) {
        head.big = {massFigure(static_cast<double>(m_season.total.grams()), m_season.how), tr("kg"),
                    letter(m_season.how)};
        head.bigNote = tr("of honey in %1").arg(m_year);
        if (m_season.unknown && *m_season.unknown > Mass())
            head.bigNote +=
                tr(",\n%1 without a hive")
                    .arg(massFigure(static_cast<double>(m_season.unknown->grams()), How::Weighed));
        head.action = tr("Print harvest summary");
        head.actionKey = tr("Ctrl+P");
    }
    return head;
}

std::vector<KeyHint> SeasonBookPlace::hints() const {
    return {{tr("T"), tr("timeline as a table")}, {tr("E"), tr("export")}};
}

std::vector<PrintSheet> SeasonBookPlace::sheets() const {
    return {{QStringLiteral("harvest-summary"), tr("Harvest summary"), [this] {
                 return harvestSummaryPage(session().read(), m_season, session().clock().today());
             }}};
}

QString SeasonBookPlace::help() const {
    return tr(
        "The year in one sentence, the honey as it came in, and who gave what. A letter behind "
        "each "
        "figure says how it is known; a share found by difference is hatched, honey whose hive "
        "nobody "
        "knows keeps a line of its own. Where a run was changed after it was closed the summary "
        "says "
        "revised.\n\nT turns the timeline into a table, E exports it as picture or table, Ctrl+P "
        "prints the "
        "harvest summary. Honey is not for infants under 12 months.");
}

void SeasonBookPlace::exportFiles() {
    const QString path = QFileDialog::getSaveFileName(
        this, tr("Export the timeline"), tr("harvest-%1.png").arg(m_year),
        tr("Picture (*.png);;Drawing (*.svg);;Table (*.csv)"));
    if (path.isEmpty()) return;
    const bool written = path.endsWith(QLatin1String(".csv")) ? m_timeline->exportCsv(path)
                                                              : m_timeline->exportPicture(path);
    if (written)
        session().tell(tr("Written to %1.").arg(path));
    else
        session().tell(tr("%1 cannot be written. Choose another place.").arg(path), true);
}

}  // namespace combwright
