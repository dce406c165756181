#include "ui/season_book/season_book_place.h"

#include <QApplication>
#include <QFileDialog>
#include <QKeyEvent>
#include <QScrollBar>
#include <QShortcut>
#include <algorithm>
#include <set>

#include "core/places/explain/explain_marks.h"
#include "core/places/explain/explain_season.h"
#include "core/places/pages/chart_words.h"
#include "core/places/pages/health/health_pages.h"
#include "core/places/pages/season_book/harvest_summary_page.h"
#include "core/places/pages/season_book/season_strip_page.h"
#include "core/words/figures.h"
#include "core/words/words.h"
#include "ui/print/keep_bytes.h"
#include "ui/print/page_painter.h"
#include "ui/print/print_dialog.h"
#include "ui/season_book/goods_sheets.h"

namespace combwright {
namespace {

/// Narrower than this, at the text's own size, the table goes below the timeline.
constexpr int wideBook = 1000;
constexpr int mostNotes = 5;

QComboBox* yearBox(const char* name, const QString& accessible, QWidget* parent) {
    auto* box = new QComboBox(parent);
    box->setObjectName(QLatin1String(name));
    box->setAccessibleName(accessible);
    box->setSizeAdjustPolicy(QComboBox::AdjustToContents);
    return box;
}

/// The text with its stretches that stand out in bold.
QString richText(const TextBlock& block) {
    QString rich;
    qsizetype from = 0;
    for (const QString& stretch : block.strong) {
        const qsizetype at = block.text.indexOf(stretch, from);
        if (at < 0) continue;
        rich += block.text.mid(from, at - from).toHtmlEscaped() + QStringLiteral("<b>") +
                stretch.toHtmlEscaped() + QStringLiteral("</b>");
        from = at + stretch.size();
    }
    return rich + block.text.mid(from).toHtmlEscaped();
}

}  // namespace

SeasonBookPlace::SeasonBookPlace(Session& session, QWidget* parent, Use use)
    : Place(session, parent), m_use(use), m_model(session) {
    // Not by Tab: Shift+Tab from what it hands on to would come straight back.
    setFocusPolicy(Qt::ClickFocus);
    m_controls = new QWidget;
    m_years = yearBox("year", tr("Year"), m_controls);
    m_besideWord = new QLabel(tr("beside"), m_controls);
    m_besides = yearBox("beside", tr("Year beside it"), m_controls);
    auto* chooser = new QHBoxLayout(m_controls);
    chooser->setContentsMargins(0, 0, 0, 0);
    chooser->addWidget(m_years);
    chooser->addWidget(m_besideWord);
    chooser->addWidget(m_besides);

    m_scroll = new QScrollArea(this);
    m_scroll->setWidgetResizable(true);
    m_scroll->setFrameShape(QFrame::NoFrame);
    m_scroll->setFocusPolicy(Qt::NoFocus);
    m_scroll->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    auto* page = new QWidget(m_scroll);
    m_scroll->setWidget(page);
    m_sentence = new QLabel(page);
    m_sentence->setWordWrap(true);
    m_sentence->setTextFormat(Qt::RichText);
    m_first = new QLabel(page);
    m_first->setObjectName(QStringLiteral("what_first"));
    m_first->setWordWrap(true);
    m_blocks = new QWidget(page);
    m_leftStack = new QStackedWidget(m_blocks);
    auto* left = new QWidget(m_leftStack);
    m_timeline = new Timeline(session, left);
    m_yearCharts = new YearCharts(session, left);
    m_reckonedView = new ReckonedView(session, left);
    auto* down = new QVBoxLayout(left);
    down->setContentsMargins(0, 0, 0, 0);
    const auto instead = [left](const QString& name) {
        auto* label = new QLabel(left);
        label->setObjectName(name);
        label->setWordWrap(true);
        return label;
    };
    m_noTimeline = instead(QStringLiteral("no_timeline"));
    m_noReckoned = instead(QStringLiteral("no_reckoned"));
    down->addWidget(m_noTimeline);
    down->addWidget(m_timeline, 3);
    down->addWidget(m_yearCharts, 3);
    down->addWidget(m_reckonedView);
    down->addWidget(m_noReckoned);
    down->addStretch(1);
    m_recordsView = new RecordsView(session, m_leftStack);
    m_leftStack->addWidget(left);
    m_leftStack->addWidget(m_recordsView);
    auto* right = new QWidget(m_blocks);
    m_table = new YieldTable(session, m_model, right);
    m_notes = new QLabel(right);
    m_notes->setObjectName(QStringLiteral("yield_notes"));
    m_notes->setWordWrap(true);
    auto* under = new QVBoxLayout(right);
    under->setContentsMargins(0, 0, 0, 0);
    m_byRow = new QWidget(right);
    under->addWidget(m_byRow);
    under->addWidget(m_table, 1000);
    under->addWidget(m_notes);
    under->addStretch(1);
    m_across = new QBoxLayout(QBoxLayout::LeftToRight, m_blocks);
    m_across->setContentsMargins(0, 0, 0, 0);
    m_across->addWidget(m_leftStack, 11);
    m_across->addWidget(right, 10);
    auto* whole = new QVBoxLayout(page);
    whole->addWidget(m_sentence);
    whole->addWidget(m_first);
    whole->addWidget(m_blocks, 1000);
    buildPages();
    for (AccountPage* each : m_accounts) whole->addWidget(each);
    whole->addStretch(1);
    auto* outer = new QVBoxLayout(this);
    outer->setContentsMargins(0, 0, 0, 0);
    outer->addWidget(m_scroll);

    addKeys();
    connect(m_timeline, &Timeline::runOpened, this,
            [this](Id<Extraction> run) { openRecords({.run = run}, m_timeline); });
    connect(m_yearCharts, &YearCharts::hiveOpened, this, [this](Id<Hive> hive) {
        if (const auto found = this->session().read().find(hive))
            Q_EMIT goAsked({.yard = found->yard, .hive = hive, .page = GoTo::Page::Story});
    });
    connect(m_table, &YieldTable::opened, this, [this] {
        if (const auto* line = m_table->current()) openRecords(line->of, m_table);
    });
    connect(m_table, &YieldTable::moved, this, [this] {
        const auto* line = m_table->current();
        if (line && recordsShown() && m_table->hasFocus())
            m_recordsView->show(recordsBehind(this->session().read(), m_season, line->of));
        // In one column the page scrolls, not the table.
        if (m_wide || !m_table->hasFocus()) return;
        const QRect row = m_table->visualRect(m_table->currentIndex());
        const QPoint at = m_table->viewport()->mapTo(m_scroll->widget(), row.center());
        m_scroll->ensureVisible(at.x(), at.y(), 0, look().space(40));
    });
    connect(m_years, &QComboBox::activated, this, [this](int index) {
        m_year = m_years->itemData(index).toInt();
        m_beside = 0;
        reload();
    });
    connect(m_besides, &QComboBox::activated, this, [this](int index) {
        m_beside = m_besides->itemData(index).toInt();
        reload();
    });
    connect(&session, &Session::seasonChanged, this, [this] {
        m_year = 0;
        m_beside = 0;
        closeRecords();
    });
    connect(&session, &Session::changed, this, [this] {
        if (isVisible()) reload();
    });
    connect(&session, &Session::lookChanged, this, [this] {
        arrange();
        m_table->measure();
    });
    connect(qApp, &QApplication::focusChanged, this, [this](QWidget*, QWidget* now) {
        if (now && m_scroll->widget()->isAncestorOf(now) && now != m_table)
            m_scroll->ensureWidgetVisible(now, 0, look().space(12));
    });
    m_recordsView->table().installEventFilter(this);
    arrange();
}

void SeasonBookPlace::addKeys() {
    // A table takes letters for a search of its own, so these are shortcuts of the whole place.
    const auto key = [this](int press, const QString& what, auto deed) {
        auto* shortcut = new QShortcut(QKeySequence(press), this);
        shortcut->setWhatsThis(what);
        shortcut->setContext(Qt::WidgetWithChildrenShortcut);
        connect(shortcut, &QShortcut::activated, this, deed);
    };
    key(Qt::Key_T, tr("table"), [this] {
        if (m_page != BookPage::Harvest) return;
        closeRecords();
        if (m_yearCharts->hasFocusInside())
            m_yearCharts->toggleTable();
        else
            m_timeline->toggleTable();
    });
    key(Qt::Key_E, tr("export"), [this] { askWhereTo(); });
    key(Qt::Key_P, tr("print block"), [this] { printBlock(); });
    key(Qt::Key_Escape, tr("back"), [this] { leave(); });
    key(Qt::Key_B, tr("by …"), [this] { turnBy(+1); });
    key(Qt::Key_W, tr("year beside"), [this] { openBeside(); });
    for (int n = 0; n < 9; ++n)
        key(Qt::Key_1 + n, tr("takes what own runs say"), [this, n] {
            if (m_page == BookPage::Harvest) m_reckonedView->take(static_cast<std::size_t>(n));
        });
}

void SeasonBookPlace::fillYears() {
    const Day today = session().clock().today();
    const std::vector<int> known = seasonYears(session().read(), today);
    if (m_year == 0) m_year = newestHarvest(session().read(), today);
    std::set<int> years(known.begin(), known.end());
    years.insert(m_year);
    const auto fill = [](QComboBox& box, const std::set<int>& from, int current) {
        box.clear();
        for (auto year = from.rbegin(); year != from.rend(); ++year)
            box.addItem(QString::number(*year), *year);
        box.setCurrentIndex(box.findData(current));
    };
    fill(*m_years, years, m_year);
    years.erase(m_year);
    years.insert(m_year - 1);
    if (m_beside == 0 || !years.contains(m_beside)) m_beside = m_year - 1;
    fill(*m_besides, years, m_beside);
}

bool SeasonBookPlace::anyHoney() const {
    return m_season.total > Mass() || !m_season.runs.empty() || m_season.before;
}

void SeasonBookPlace::readAnew() {
    if (!session().hasSeason()) return;
    fillYears();
    m_season = seasonYield(session().read(), m_year, m_beside);
    m_before = {seasonYield(session().read(), m_beside)};
    m_colonies = coloniesOfYear(session().read(), m_year, session().clock().today());
    m_sentence->setText(richText(seasonSentence(m_season, &m_colonies)));
    m_first->setText(
        tr("Weigh boxes and buckets in the honey room (Ctrl+4): what each hive gave appears here "
           "as soon as there is a run. A crop noted from paper appears here too, marked as "
           "noted.") +
        (m_season.unclosed.empty()
             ? QString()
             : QLatin1Char(' ') + yieldNotes(m_season).join(QLatin1Char(' '))));
    const bool steps = !m_season.runs.empty() || !m_before.front().runs.empty();
    showTimeline(m_season.total > Mass() && steps);
    m_timeline->show(m_season, m_before);
    m_yearCharts->show(m_year);
    const ReckonedAndGot reckoned =
        reckonedAndGot(session().read(), m_season, session().clock().today());
    m_reckonedView->show(reckoned);
    m_reckonedView->setVisible(!reckoned.lines.empty());
    m_noReckoned->setVisible(reckoned.lines.empty());
    showYields();
    if (recordsShown()) {
        const RecordsOf& of = m_recordsView->records().of;
        m_recordsView->show(
            recordsBehind(session().read(), of.run ? seasonOfRun(*of.run) : m_season, of));
    }
    showNotes();
    showPage();
    arrange();
    Q_EMIT headChanged();
}

void SeasonBookPlace::showNotes() {
    QStringList notes;
    if (m_season.before) notes << tr("Stroke across a bar: %1.").arg(m_beside);
    bool hatched = false;
    bool dashed = m_season.nowhere.has_value();
    for (const YardYield& yard : m_season.yards) {
        dashed = dashed || yard.unknown;
        for (const HiveYield& hive : yard.hives)
            hatched = hatched || (hive.mass && !hive.noted &&
                                  (hive.how == How::ByDifference || hive.how == How::ByEye));
    }
    if (hatched) notes << tr("Hatched: by difference or by eye.");
    if (dashed) notes << tr("Dashed: hive not known.");
    QStringList lines;
    if (!notes.isEmpty()) lines << notes.join(QLatin1Char(' '));
    QStringList below = m_by == YieldBy::Hive ? QStringList() : yieldsByNotes(m_yieldsBy);
    below << yieldNotes(m_season);
    const auto more = below.size() - mostNotes;
    if (more > 0) {
        below = below.mid(0, mostNotes);
        below << tr("%1 more notes stand in the printed summary.").arg(more);
    }
    m_notes->setText((lines + below).join(QLatin1Char('\n')));
}

void SeasonBookPlace::arrange() {
    const Look& look = this->look();
    m_wide = width() >= look.space(wideBook);
    m_across->setDirection(m_wide ? QBoxLayout::LeftToRight : QBoxLayout::TopToBottom);
    m_across->setSpacing(look.space(m_wide ? 28 : 16));
    m_leftStack->layout()->setSpacing(look.space(8));
    for (int i = 0; i < m_leftStack->count(); ++i)
        if (QLayout* inner = m_leftStack->widget(i)->layout()) inner->setSpacing(look.space(8));
    auto* page = m_scroll->widget()->layout();
    page->setContentsMargins(look.space(24), look.space(12), look.space(24), look.space(8));
    page->setSpacing(look.space(12));
    m_controls->layout()->setSpacing(look.space(6));
    m_sentence->setFont(look.font(TextSize::Head));
    m_first->setFont(look.font(TextSize::Body));
    for (QLabel* label : {m_notes, m_noTimeline, m_noReckoned})
        label->setFont(look.font(TextSize::Note));
    m_besideWord->setFont(look.font(TextSize::Note));
    m_byWord->setFont(look.font(TextSize::Note));
    m_byRow->layout()->setSpacing(look.space(6));
    for (AccountPage* each : m_accounts) each->arrange(m_wide);
    m_table->setVerticalScrollBarPolicy(m_wide ? Qt::ScrollBarAsNeeded : Qt::ScrollBarAlwaysOff);
    m_table->setMaximumHeight(m_table->wholeHeight());
    m_timeline->setMaximumHeight(look.space(280));
    m_yearCharts->setMaximumHeight(look.space(280));
    m_table->setMinimumHeight(m_wide ? std::min(look.space(200), m_table->wholeHeight())
                                     : m_table->wholeHeight());
}

void SeasonBookPlace::resizeEvent(QResizeEvent* event) {
    Place::resizeEvent(event);
    arrange();
}

void SeasonBookPlace::focusInEvent(QFocusEvent*) {
    if (const AccountPage* shown = accountShown(); shown && shown->current())
        shown->current()->lines().setFocus();
    else if (!accountShown() && anyHoney())
        m_table->setFocus();
    else
        m_years->setFocus();
}

bool SeasonBookPlace::eventFilter(QObject* watched, QEvent* event) {
    // Enter on a run among the records opens that run.
    if (watched == &m_recordsView->table() && event->type() == QEvent::KeyPress) {
        const auto press = static_cast<QKeyEvent*>(event)->key();
        if (press == Qt::Key_Return || press == Qt::Key_Enter) {
            int row = m_recordsView->table().currentRow();
            for (const RunRecord& run : m_recordsView->records().runs) {
                const int rows = static_cast<int>(run.boxes.size()) + 1;
                if (row >= 0 && row < rows) {
                    const Id<Extraction> opened = run.run;
                    m_recordsView->show(recordsBehind(session().read(), m_season, {.run = opened}));
                    break;
                }
                row -= rows;
            }
            return true;
        }
    }
    return Place::eventFilter(watched, event);
}

void SeasonBookPlace::openRecords(const RecordsOf& of, QWidget* from) {
    m_recordsView->show(
        recordsBehind(session().read(), of.run ? seasonOfRun(*of.run) : m_season, of));
    m_cameFrom = from;
    m_leftStack->setCurrentWidget(m_recordsView);
    m_recordsView->setFocus();
    m_scroll->ensureWidgetVisible(m_recordsView, 0, 0);
    Q_EMIT headChanged();
}

/// A run of the year itself, or of one drawn beside it.
const SeasonYield& SeasonBookPlace::seasonOfRun(Id<Extraction> run) const {
    for (const SeasonYield& season : m_timeline->besides())
        for (const RunBalance& each : season.runs)
            if (each.run.id == run) return season;
    return m_season;
}

void SeasonBookPlace::closeRecords() {
    if (!recordsShown()) return;
    m_leftStack->setCurrentIndex(0);
    if (m_cameFrom == m_timeline)
        m_timeline->focusBack();
    else
        m_table->setFocus();
    Q_EMIT headChanged();
}

SeasonBookPlace::BookBlock SeasonBookPlace::currentBlock() const {
    if (accountShown()) return BookBlock::Account;
    if (m_recordsView->isAncestorOf(QApplication::focusWidget())) return BookBlock::Records;
    if (m_timeline->hasFocusInside()) return BookBlock::Timeline;
    if (m_yearCharts->hasFocusInside()) return BookBlock::Year;
    if (m_reckonedView->currentLine()) return BookBlock::Reckoned;
    return BookBlock::Yields;
}

Page SeasonBookPlace::blockPage() const {
    const Day today = session().clock().today();
    const Read& file = session().read();
    switch (currentBlock()) {
        case BookBlock::Timeline:
            return m_timeline->page(today);
        case BookBlock::Year:
            return chartPage(file, m_yearCharts->chartBlock(), today);
        case BookBlock::Reckoned:
            return reckonedPage(file, m_reckonedView->reckoned(), today);
        case BookBlock::Records:
            return recordsPage(file, m_recordsView->records(), today);
        case BookBlock::Account:
            return accountShown()->blockPage();
        case BookBlock::Yields:
            break;
    }
    return m_by == YieldBy::Hive ? yieldPage(file, m_season, today)
                                 : yieldsByPage(file, m_yieldsBy, m_season, today);
}

HarvestTable SeasonBookPlace::blockTable() const {
    switch (currentBlock()) {
        case BookBlock::Timeline:
            return m_timeline->rows();
        case BookBlock::Year:
            return chartTable(m_yearCharts->chartBlock());
        case BookBlock::Reckoned:
            return reckonedTable(m_reckonedView->reckoned());
        case BookBlock::Records:
            return recordsTable(m_recordsView->records());
        case BookBlock::Account:
            return accountShown()->blockTable();
        case BookBlock::Yields:
            break;
    }
    return m_by == YieldBy::Hive ? yieldTable(m_season) : yieldsByTable(m_yieldsBy);
}

PlaceHead SeasonBookPlace::head() const {
    PlaceHead head;
    head.title = tr("Season book");
    head.under = tr("as kept on %1").arg(dayText(session().clock().today()));
    if (m_season.total == Mass()) return head;
    head.big = {massFigure(static_cast<double>(m_season.total.grams()), m_season.how), massUnit(),
                letter(m_season.how)};
    head.bigNote = m_season.noted == m_season.total
                       ? tr("of honey in %1,\nnoted from paper").arg(m_year)
                       : tr("of honey in %1").arg(m_year);
    if (m_season.unknown)
        head.bigNote +=
            tr(",\n%1 without a hive")
                .arg(massFigure(static_cast<double>(m_season.unknown->grams()), How::Weighed));
    head.action = tr("Print harvest summary");
    head.actionKey = printKeyText();
    return head;
}

std::vector<KeyHint> SeasonBookPlace::hints() const {
    const AccountPage* account = accountShown();
    if (!account && !canLeave())
        return {{QKeySequence(Qt::CTRL | Qt::Key_PageDown).toString(QKeySequence::NativeText),
                 tr("next page")}};
    if (account ? account->recordsShown() : recordsShown())
        return {{tr("Esc"), tr("back")}, {tr("P"), tr("print these")}, {tr("E"), tr("export")}};
    std::vector<KeyHint> hints{{tr("P"), tr("print block")}, {tr("E"), tr("export")}};
    if (!account) hints.push_back({tr("T"), tr("table")});
    if (!account) hints.push_back({tr("B"), tr("by …")});
    hints.push_back({tr("↵"), tr("records")});
    if (m_use == Use::Whole)
        hints.push_back({tr("W"), tr("year beside")});
    else
        hints.push_back({tr("Esc"), tr("close")});
    return hints;
}

std::vector<PrintSheet> SeasonBookPlace::sheets() const {
    std::vector<PrintSheet> sheets{
        {QStringLiteral("harvest-summary"), tr("Harvest summary"),
         [this] {
             return harvestSummaryPage(session().read(), m_season, session().clock().today(),
                                       m_before);
         }},
        {QStringLiteral("season-strip"), tr("Season strip for the wall"),
         [this] {
             const Day today = session().clock().today();
             return seasonStripPage(session().read(), seasonStrip(session().read(), m_year, today),
                                    today);
         }},
        {QStringLiteral("medicine-record"), tr("Medicine record"),
         [this] { return medicineRecordPage(session().read(), session().clock().today()); }},
        {QStringLiteral("inspector-list"), tr("Inspector's list"),
         [this] { return inspectorPage(session().read(), session().clock().today()); }},
        {QStringLiteral("mites"), tr("Mites"),
         [this] {
             const Day today = session().clock().today();
             return mitesPage(session().read(), mites(session().read(), {}, today), today);
         }},
        {QStringLiteral("treatments"), tr("Medicines and treatments"),
         [this] { return treatmentsPage(session().read(), {}, session().clock().today()); }}};
    for (PrintSheet& each : goodsSheets(session(), m_year)) sheets.push_back(std::move(each));
    return sheets;
}

std::vector<Explained> SeasonBookPlace::explained() const {
    if (!session().hasSeason()) return {};
    const Read& file = session().read();
    const ReckonedAndGot& reckoned = m_reckonedView->reckoned();
    std::vector<Explained> figures;
    switch (currentBlock()) {
        case BookBlock::Records:
            figures = explainRow(file, m_season, m_recordsView->records().of);
            break;
        case BookBlock::Account:
            figures = accountShown()->explained();
            break;
        case BookBlock::Reckoned:
            figures = explainGot(reckoned.lines[*m_reckonedView->currentLine()], reckoned);
            break;
        case BookBlock::Timeline:
            if (const auto run = m_timeline->currentRun())
                figures = explainRow(file, seasonOfRun(*run), {.run = *run});
            break;
        case BookBlock::Year:
            figures = explainMark(file, m_yearCharts->currentRecord());
            break;
        case BookBlock::Yields:
            if (const auto* line = m_table->current())
                figures = explainRow(file, m_season, line->of);
            break;
    }
    std::set<QString> first;
    for (const Explained& figure : figures) first.insert(figure.what);
    for (Explained& figure : explainSeason(file, m_season, reckoned))
        if (!first.contains(figure.what)) figures.push_back(std::move(figure));
    return figures;
}

void SeasonBookPlace::printBlock() {
    if (canLeave()) printWithPreview(this, blockPage(), look());
}

void SeasonBookPlace::askWhereTo() {
    if (!canLeave()) return;
    QString name;
    switch (currentBlock()) {
        case BookBlock::Timeline:
            name = tr("harvest-timeline-%1");
            break;
        case BookBlock::Year:
            name = m_yearCharts->fileNamePattern();
            break;
        case BookBlock::Reckoned:
            name = tr("reckoned-and-got-%1");
            break;
        case BookBlock::Records:
            name = tr("records-%1");
            break;
        case BookBlock::Account:
            name = accountShown()->blockName();
            break;
        case BookBlock::Yields:
            name = yieldsName();
            break;
    }
    if (name.contains(QLatin1String("%1"))) name = name.arg(m_year);
    QString chosen;
    const QString path = QFileDialog::getSaveFileName(
        this, tr("Export this block"), name + QStringLiteral(".png"),
        tr("Picture (*.png);;Drawing (*.svg);;Table (*.csv)"), &chosen);
    if (path.isEmpty()) return;
    const bool ended = path.contains(QLatin1Char('.'));
    exportTo(ended ? path
                   : path + (chosen.contains(QLatin1String("csv"))   ? QStringLiteral(".csv")
                             : chosen.contains(QLatin1String("svg")) ? QStringLiteral(".svg")
                                                                     : QStringLiteral(".png")));
}

bool SeasonBookPlace::exportTo(const QString& path) {
    QString wrong;
    if (path.endsWith(QLatin1String(".csv"), Qt::CaseInsensitive)) {
        wrong = keepBytes(path, csvText(blockTable()).toUtf8());
    } else {
        wrong = writePicture(blockPage(), path, look());
    }
    if (wrong.isEmpty())
        session().tell(tr("Written to %1.").arg(path));
    else
        session().tell(tr("%1 cannot be written: %2. Choose another place.").arg(path, wrong),
                       true);
    return wrong.isEmpty();
}

}  // namespace combwright
