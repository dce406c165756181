#include "ui/honey_room/fair_page.h"

#include <QLocale>
#include <algorithm>

#include "core/places/explain/explain_goods.h"
#include "core/places/goods/goods.h"
#include "core/places/pages/goods/fair_pages.h"
#include "core/places/pages/goods/goods_ahead_words.h"
#include "core/places/pages/goods/goods_pages.h"
#include "core/words/money_words.h"
#include "core/words/words.h"
#include "ui/common/help_groups.h"
#include "ui/honey_room/fair_forms.h"
#include "ui/print/print_dialog.h"

namespace combwright {
namespace {

QString fairCountText(const std::optional<Count>& count) {
    return count ? QString::number(count->value()) : QString();
}

QString someText(std::int64_t many) { return many == 0 ? QString() : QString::number(many); }

QString lastTimeText(const FairRow& row) {
    if (!row.packedBefore) return {};
    return row.soldBefore
               ? FairPage::tr("%1 packed, %2 sold").arg(*row.packedBefore).arg(*row.soldBefore)
               : FairPage::tr("%1 packed").arg(*row.packedBefore);
}

WordsCell strongCell(const QString& text) {
    WordsCell cell{text};
    cell.strong = true;
    return cell;
}

std::vector<WordsCell> totalsRow(const OutTotals& out, const std::string& currency) {
    WordsCell takings;
    if (out.sold + out.cameBack > 0) takings.text = moneyText(out.takings, currency);
    if (out.unpriced > 0) takings.note = FairPage::tr("%1 without a price").arg(out.unpriced);
    return {{someText(out.sold)},   {someText(out.given)},    {someText(out.kept)},
            {someText(out.broken)}, {someText(out.cameBack)}, takings};
}

}  // namespace

FairPage::FairPage(Session& session, QWidget* parent)
    : DeskPage(session, QStringLiteral("fair"), parent) {
    m_fairs = addTable(QStringLiteral("fair_list"), tr("Fairs, the newest first"),
                       {tr("fair"), tr("how it went")},
                       {{tr("day"), 1.1},
                        {tr("packed"), 0.6, true},
                        {tr("sold"), 0.6, true},
                        {tr("takings"), 1, true},
                        {tr("cash less takings"), 1.2, true}});
    m_box = addTable(QStringLiteral("fair_box"), tr("The box of the chosen fair"),
                     {tr("kind"), tr("what became of it")},
                     {{tr("packed"), 0.7, true},
                      {tr("home"), 0.6, true},
                      {tr("broken"), 0.6, true},
                      {tr("given"), 0.6, true},
                      {tr("sold"), 0.6, true},
                      {tr("price"), 0.9, true},
                      {tr("takings"), 1, true},
                      {tr("last time"), 1.4}});
    m_year = addTable(QStringLiteral("fair_year"), tr("A year out of the door"),
                      {tr("what"), tr("out of the door")},
                      {{tr("sold"), 0.6, true},
                       {tr("given"), 0.6, true},
                       {tr("kept"), 0.6, true},
                       {tr("broken"), 0.7, true},
                       {tr("came back"), 0.8, true},
                       {tr("takings"), 1.2, true}});
    layOut();
    desk().addDeed(tr("Pack"), Qt::Key_P, [this] { pack(); });
    desk().addDeed(tr("What came home"), Qt::Key_C, [this] { countHome(); });
    desk().addDeed(tr("Packing list"), Qt::Key_L,
                   [this] { printSheetNamed(QStringLiteral("packing-list")); });
    desk().addDeed(tr("Price cards"), Qt::Key_K,
                   [this] { printSheetNamed(QStringLiteral("fair-cards")); });
    desk().addDeed(tr("Year on paper"), Qt::Key_S,
                   [this] { printSheetNamed(QStringLiteral("sales")); });
    desk().addDeed(tr("Other year"), Qt::Key_Y, [this] { otherYear(); });
    whenRowChosen(m_fairs, this, [this] { showFair(); });
    connect(m_fairs, &WordsTable::rowActivated, this, &FairPage::act);
    connect(m_box, &WordsTable::rowActivated, this, &FairPage::act);
}

std::optional<Id<Fair>> FairPage::chosen() const {
    const WordsRow* row = m_fairs->currentWords();
    return row ? std::optional(Id<Fair>{row->key}) : std::nullopt;
}

void FairPage::readAnew() {
    if (!session().hasSeason()) return;
    const Read& file = session().read();
    m_all.clear();
    for (const Fair& fair : fairs(file)) m_all.push_back(fairSheet(file, fair));
    m_sales = sales(file, m_shownYear > 0 ? m_shownYear : yearOf(today()), today());
    // In January one looks at the year that was.
    const auto years = salesYears(file, today());
    if (m_shownYear == 0 && !m_sales.all.any() && years.size() > 1)
        m_sales = sales(file, years[1], today());
    fillFairs();
    fillYear();
    showFair();
}

void FairPage::fillFairs() {
    const bool first = m_fairs->wordsRows().empty();
    std::vector<WordsRow> rows;
    for (const FairSheet& each : m_all) {
        const bool over = each.fair.closed.has_value();
        WordsCell difference;
        if (each.difference)
            difference.text = moneyText(*each.difference, each.currency);
        else if (over)
            difference.text = tr("not known");
        rows.push_back({each.fair.id.number,
                        fromUtf8(each.fair.name.text()),
                        {{shortDayText(each.fair.on, today())},
                         {QString::number(each.packed)},
                         over ? strongCell(QString::number(each.sold))
                              : WordsCell{tr("not counted"), {}, Tone::Muted},
                         {over ? moneyText(each.takings, each.currency) : QString()},
                         difference},
                        fromUtf8(each.fair.place)});
    }
    m_fairs->showRows(std::move(rows));
    const auto open = fairToShow(session().read());
    if (m_meant)
        m_fairs->chooseKey(m_meant->number);
    else if (first && open)
        m_fairs->chooseKey(open->id.number);
    m_meant.reset();
    tables().setHead(m_fairs,
                     m_all.empty() ? tr("Nothing was packed for a fair yet. P packs.") : QString());
}

void FairPage::showFair() {
    m_sheet.reset();
    const auto id = chosen();
    for (const FairSheet& each : m_all)
        if (each.fair.id == id) m_sheet = each;
    fillBox();
    fillCard();
    Q_EMIT headChanged();
}

void FairPage::fillBox() {
    std::vector<WordsRow> rows;
    if (m_sheet)
        for (const FairRow& each : m_sheet->rows) {
            QStringList about;
            if (!each.code.empty()) about << fromUtf8(each.code);
            if (each.ranOut) about << tr("ran out");
            rows.push_back(
                {each.line.id.number,
                 fromUtf8(each.kind.name.text()),
                 {{QString::number(each.line.packed.value())},
                  {fairCountText(each.line.home)},
                  {fairCountText(each.line.broken)},
                  {fairCountText(each.line.given)},
                  each.sold ? strongCell(QString::number(*each.sold)) : WordsCell{},
                  {each.line.each ? moneyText(*each.line.each, m_sheet->currency) : QString()},
                  {each.takings ? moneyText(*each.takings, m_sheet->currency) : QString()},
                  {lastTimeText(each)}},
                 about.join(QStringLiteral(", "))});
        }
    m_box->showRows(std::move(rows));
    tables().setHead(
        m_box, m_sheet ? (m_sheet->fair.closed ? tr("%1: what was sold") : tr("%1: in the box"))
                             .arg(fromUtf8(m_sheet->fair.name.text()))
                       : QString());
}

void FairPage::fillYear() {
    std::vector<WordsRow> rows;
    std::int64_t id = 0;
    const auto add = [&](const QString& name, const OutTotals& out) {
        rows.push_back({++id, name, totalsRow(out, m_sales.currency)});
    };
    for (const KindTotals& each : m_sales.kinds) {
        add(fromUtf8(each.kind.name.text()), each.out);
        if (each.ranOut)
            rows.back().note =
                tr("none on the shelf since %1").arg(shortDayText(*each.ranOut, today()));
    }
    for (const PlaceTotals& each : m_sales.places)
        add(each.place.empty() ? tr("place not said") : tr("at %1").arg(fromUtf8(each.place)),
            each.out);
    for (const MonthTotals& each : m_sales.months)
        add(tr("in %1").arg(QLocale().standaloneMonthName(static_cast<int>(each.month))), each.out);
    if (m_sales.all.any()) add(tr("all of %1").arg(m_sales.year), m_sales.all);
    const bool none = rows.empty();
    m_year->showRows(std::move(rows));
    tables().setHead(m_year,
                     none ? tr("Nothing went out in %1 by what is written down.").arg(m_sales.year)
                          : tr("Out of the door %1: by kind, place and month").arg(m_sales.year));
}

void FairPage::fillCard() {
    QString text;
    if (m_sheet) {
        text += headOf(fromUtf8(m_sheet->fair.name.text()));
        QStringList when{dayText(m_sheet->fair.on)};
        if (!m_sheet->fair.place.empty()) when << fromUtf8(m_sheet->fair.place);
        text += said(when.join(QStringLiteral(", ")));
        text += said(fairSoldText(*m_sheet) + QLatin1Char('.'));
        text += said(fairCashText(*m_sheet));
        if (!m_sheet->fair.closed && m_sheet->fair.change)
            text += said(tr("%1 of change in the cash box.")
                             .arg(moneyText(*m_sheet->fair.change, m_sheet->currency)));
        if (!m_sheet->fair.closed)
            text += muted(tr("C at night: only what came home is typed, the rest was sold."));
        text += muted(fromUtf8(m_sheet->fair.note));
    } else {
        text += headOf(tr("A fair"));
        text += muted(
            tr("P packs: what stands on the shelf, jars and candles, each on its line. The packing "
               "list and price cards are printed from it; at night only what came home is typed."));
    }
    text += headOf(tr("For next time: what ran out"));
    for (const Wish& each : m_sales.wishes)
        text +=
            said(tr("%1: all %2 sold at %3, %4. Perhaps more were wanted.")
                     .arg(fromUtf8(each.kind.name.text()))
                     .arg(each.sold)
                     .arg(fromUtf8(each.fair.name.text()), shortDayText(each.fair.on, today())));
    if (m_sales.wishes.empty()) text += muted(tr("Nothing ran out in %1.").arg(m_sales.year));
    text += said(infantCaution(), Tone::Warn);
    desk().setCard(m_sheet ? tr("The chosen fair") : tr("A fair"), text);
}

void FairPage::pack() {
    const auto open =
        m_sheet && !m_sheet->fair.closed ? std::optional(m_sheet->fair.id) : std::nullopt;
    if (const auto packed = askToPackFair(this, session(), open, today())) {
        m_meant = packed;
        readAnew();
    }
}

void FairPage::countHome() {
    if (!m_sheet) return session().tell(tr("Nothing was packed for a fair yet. P packs."), true);
    m_meant = m_sheet->fair.id;
    askForFairHome(this, session(), m_sheet->fair.id, today());
    m_meant.reset();
}

void FairPage::otherYear() {
    const auto years = salesYears(session().read(), today());
    const int now = m_sales.year;
    const auto at = std::find(years.begin(), years.end(), now);
    m_shownYear = at == years.end() || at + 1 == years.end() ? years.front() : *(at + 1);
    readAnew();
}

void FairPage::printSheetNamed(const QString& id) {
    for (const PrintSheet& each : sheets()) {
        if (each.id != id) continue;
        Page page;
        if (session().reading([&] { page = each.page(); })) printWithPreview(this, page, look());
        return;
    }
    session().tell(tr("Nothing is packed for a fair yet. P packs."), true);
}

PlaceHead FairPage::head() const {
    PlaceHead head;
    head.title = tr("Fair");
    if (!m_sheet) {
        head.action = tr("Pack for a fair");
        head.actionKey = QStringLiteral("P");
        return head;
    }
    QStringList under{fromUtf8(m_sheet->fair.name.text()), dayText(m_sheet->fair.on)};
    if (!m_sheet->fair.place.empty()) under << fromUtf8(m_sheet->fair.place);
    const bool over = m_sheet->fair.closed.has_value();
    under << (over ? tr("over and counted") : tr("packed"));
    head.under = under.join(QStringLiteral(" · "));
    head.big = {QString::number(over ? m_sheet->sold : m_sheet->packed), {}, 0};
    head.bigNote =
        over ? tr("sold of %1\nthat were packed").arg(m_sheet->packed) : tr("packed\nin the box");
    head.action = over ? tr("Pack for a fair") : tr("What came home");
    head.actionKey = over ? QStringLiteral("P") : QStringLiteral("C");
    return head;
}

std::vector<KeyHint> FairPage::hints() const {
    return {{QStringLiteral("P"), tr("pack")},
            {QStringLiteral("C"), tr("what came home")},
            {QStringLiteral("L"), tr("packing list")},
            {QStringLiteral("K"), tr("price cards")},
            {QStringLiteral("Y"), tr("other year")}};
}

std::vector<PrintSheet> FairPage::sheets() const {
    const auto year = m_sales.year > 0 ? m_sales.year : yearOf(today());
    std::vector<PrintSheet> sheets;
    if (m_sheet) {
        const Id<Fair> id = m_sheet->fair.id;
        const auto shown = [this, id] {
            const auto fair = session().read().find(id);
            return fairSheet(session().read(), fair.value_or(Fair{}));
        };
        sheets = {{QStringLiteral("packing-list"), tr("Packing list of the fair"),
                   [this, shown] { return fairPage(session().read(), shown()); }},
                  {QStringLiteral("fair-cards"), tr("Price cards of the fair"),
                   [this, shown] { return fairCardsPage(session().read(), shown()); }}};
    }
    sheets.push_back({QStringLiteral("sales"), tr("Out of the door"), [this, year] {
                          return salesPage(session().read(),
                                           sales(session().read(), year, today()));
                      }});
    return sheets;
}

std::vector<Explained> FairPage::explained() const {
    return m_sheet ? explainFair(session().read(), m_sheet->fair) : std::vector<Explained>{};
}

void FairPage::act() { press(m_sheet && !m_sheet->fair.closed ? Qt::Key_C : Qt::Key_P); }

QString FairPage::help() const {
    return helpOf(
        {{tr("A fair"),
          {{QStringLiteral("P"), tr("packs: a line a kind, with what stands on the shelf, what was "
                                    "packed and sold last time and what ran out")},
           {QStringLiteral("C"), tr("at night: only what came home, \"9, 2 broken, 1 given\"; the "
                                    "rest was sold, and the cash is held against it")},
           {QStringLiteral("L, K"), tr("packing list and price cards on paper")},
           {QStringLiteral("↵"), tr("does what comes next: packs, or counts what came home")}}},
         {tr("The year"),
          {{{},
            tr("What was sold, given, kept and broken by kind, place and month, fairs and the "
               "gate together. No bookkeeping beyond that.")},
           {QStringLiteral("Y, S"), tr("another year; the year on paper")}}}});
}

}  // namespace combwright
