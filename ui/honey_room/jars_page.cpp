#include "ui/honey_room/jars_page.h"

#include <algorithm>

#include "core/places/explain/explain_goods.h"
#include "core/places/pages/goods/goods_pages.h"
#include "core/places/pages/goods/jar_leaf_page.h"
#include "core/places/pages/goods/label_pages.h"
#include "core/places/pages/trace/trace_page.h"
#include "core/places/pages/trace/trace_words.h"
#include "core/words/figures.h"
#include "core/words/money_words.h"
#include "core/words/words.h"
#include "ui/common/help_groups.h"
#include "ui/honey_room/goods_forms.h"
#include "ui/honey_room/jar_forms.h"
#include "ui/honey_room/labels_dialog.h"
#include "ui/honey_room/leaf_dialog.h"
#include "ui/honey_room/out_forms.h"
#include "ui/honey_room/trace_view.h"

namespace combwright {
namespace {

/// So many lines of where jars went stand on the card; the trace has all.
constexpr int mostWentLines = 12;

QString kindText(const GoodsKind& kind) { return fromUtf8(kind.name.text()); }

/// What one holds, where its name does not say so.
QString portionNote(const GoodsKind& kind) {
    if (!kind.net) return {};
    const QString net = shownPortion(static_cast<double>(kind.net->grams())).text();
    return kindText(kind).contains(net) ? QString() : net;
}

QString jarsLine(const FilledJars& jars) {
    return QStringLiteral("%1 × %2").arg(jars.line.count.value()).arg(kindText(jars.kind));
}

/// Empty jars and lids of a kind, and whether they fall short.
WordsCell packingCell(const GoodsKind& kind, const std::vector<PackingShelf>& packing) {
    WordsCell cell;
    QStringList said;
    bool lacks = false;
    for (const PackingShelf& each : packing) {
        const bool jars = each.kind && each.kind->id == kind.id;
        const bool lids = !each.kind && !kind.lid.empty() && each.lid == kind.lid;
        if (!jars && !lids) continue;
        lacks = lacks || each.left <= 0;
        said << (each.left < 0 ? JarsPage::tr("%1 too few %2")
                                     .arg(-each.left)
                                     .arg(jars ? JarsPage::tr("jars") : JarsPage::tr("lids"))
                               : JarsPage::tr("%1 %2").arg(each.left).arg(
                                     jars ? JarsPage::tr("jars") : JarsPage::tr("lids")));
    }
    cell.text = said.join(QStringLiteral(", "));
    if (lacks) {
        cell.tone = Tone::Warn;
        cell.strong = true;
    }
    return cell;
}

}  // namespace

JarsPage::JarsPage(Session& session, QWidget* parent)
    : DeskPage(session, QStringLiteral("jars"), parent) {
    m_shelf = addTable(QStringLiteral("jars_shelf"), tr("Goods on the shelf"),
                       {tr("on the shelf"), tr("how it stands")},
                       {{tr("there"), 0.6, true},
                        {tr("price"), 0.8, true},
                        {tr("empty jars, lids"), 1.3},
                        {tr("what became of them"), 2.6}});
    m_fillings = addTable(QStringLiteral("jars_fillings"), tr("Fillings, the newest first"),
                          {tr("lot code"), tr("how it stands")},
                          {{tr("filled"), 0.9},
                           {tr("out of"), 1.4},
                           {tr("jars"), 1.4},
                           {tr("left"), 0.6, true},
                           {tr("to know"), 1.9}});
    layOut();
    addDeeds();
    whenRowChosen(m_fillings, this, [this] { this->session().reading([this] { fillCard(); }); });
    connect(m_fillings, &WordsTable::rowActivated, this, [this] { press(Qt::Key_T); });
    connect(m_shelf, &WordsTable::rowActivated, this, [this] { press(Qt::Key_P); });
}

void JarsPage::addDeeds() {
    desk().addDeed(tr("Fill"), Qt::Key_F,
                   [this] { askToFillJars(this, session(), std::nullopt, today()); });
    desk().addDeed(tr("Out"), Qt::Key_O, [this] { askToGoOut(this, session(), today()); });
    desk().addDeed(tr("In bulk"), Qt::Key_U, [this] { askToGoInBulk(this, session(), today()); });
    desk().addDeed(tr("Count"), Qt::Key_C, [this] { askToCountShelf(this, session(), today()); });
    desk().addDeed(tr("Weigh"), Qt::Key_W,
                   [this] { askToWeighJars(this, session(), filling(), today()); });
    desk().addDeed(tr("New kind"), Qt::Key_N, [this] { askToAddGoods(this, session(), today()); });
    desk().addDeed(tr("Prices"), Qt::Key_P, [this] { askForPrices(this, session(), today()); });
    desk().addDeed(tr("Bought"), Qt::Key_B, [this] { askToBuyPacking(this, session(), today()); });
    desk().addDeed(tr("Labels"), Qt::Key_L, [this] {
        withFilling([this](Id<Bottling> of) { showLabels(this, session(), of, today()); });
    });
    desk().addDeed(tr("Leaf"), Qt::Key_J, [this] {
        withFilling([this](Id<Bottling> of) { showLeaf(this, session(), of); });
    });
    desk().addDeed(tr("Trace"), Qt::Key_T, [this] {
        withFilling([this](Id<Bottling> of) {
            showTrace(this, session(), TraceOf{.bottling = of}, today());
        });
    });
    desk().addDeed(tr("Complaint"), Qt::Key_K,
                   [this] { askForComplaint(this, session(), filling(), today()); });
    desk().addDeed(tr("Close"), Qt::Key_X,
                   [this] { askToCloseComplaint(this, session(), today()); });
    desk().addDeed(tr("Hold"), Qt::Key_H, [this] {
        withFilling([this](Id<Bottling> of) { askToHoldFilling(this, session(), of, today()); });
    });
}

std::optional<Id<Bottling>> JarsPage::filling() const {
    if (const FillingSheet* sheet = chosenSheet()) return sheet->bottling.id;
    return std::nullopt;
}

void JarsPage::withFilling(const std::function<void(Id<Bottling>)>& deed) {
    if (const auto of = filling()) deed(*of);
}

bool JarsPage::goToRecord(std::string_view table, std::int64_t record) {
    WordsTable* in = table == Bottling::table    ? m_fillings
                     : table == GoodsKind::table ? m_shelf
                                                 : nullptr;
    if (!in) return false;
    const auto& rows = in->wordsRows();
    if (std::none_of(rows.begin(), rows.end(),
                     [record](const WordsRow& row) { return row.key == record; }))
        return false;
    in->setFocus();
    in->chooseKey(record);
    return true;
}

const FillingSheet* JarsPage::chosenSheet() const {
    const WordsRow* row = m_fillings->currentWords();
    const auto found = std::find_if(
        m_stock.fillings.begin(), m_stock.fillings.end(),
        [&](const FillingSheet& each) { return row && each.bottling.id.number == row->key; });
    return found == m_stock.fillings.end() ? nullptr : &*found;
}

void JarsPage::readAnew() {
    if (!session().hasSeason()) return;
    m_stock = goodsStock(session().read(), today());
    m_open = session().read().where<Complaint>({isUnknown("closed"), isUpTo("on_day", today())});
    fillShelf();
    fillFillings();
    fillCard();
    Q_EMIT headChanged();
}

std::vector<WordsCell> JarsPage::shelfCells(const GoodsShelf& shelf) const {
    WordsCell there{shelf.written ? QString::number(shelf.left) : QStringLiteral("?")};
    there.strong = true;
    if (shelf.atFair > 0) there.note = tr("%1 at a fair").arg(shelf.atFair);
    if (shelf.written && shelf.left == 0) there.tone = Tone::Warn;
    return {there,
            {shelf.kind.price ? moneyText(*shelf.kind.price, m_stock.currency) : QString()},
            packingCell(shelf.kind, m_stock.packing),
            {goodsStoryText(shelf)}};
}

void JarsPage::fillShelf() {
    std::vector<WordsRow> rows;
    for (const GoodsShelf& each : m_stock.shelves)
        rows.push_back(
            {each.kind.id.number, kindText(each.kind), shelfCells(each), portionNote(each.kind)});
    m_shelf->showRows(std::move(rows));
    tables().setHead(m_shelf,
                     m_stock.shelves.empty()
                         ? tr("No kind of jar or candle is written down yet. N writes one down.")
                         : QString());
}

std::vector<WordsCell> JarsPage::fillingCells(const FillingSheet& sheet) const {
    QStringList jars;
    QStringList left;
    QStringList know;
    bool tooLight = false;
    for (const FilledJars& each : sheet.jars) {
        jars << jarsLine(each);
        left << fillingLeftText(each.left);
        tooLight = tooLight || each.meanHolds == false || each.lightestShort == true;
        if (each.meanHolds == false) know << tr("%1: mean too light").arg(kindText(each.kind));
        if (each.lightestShort == true) know << tr("%1: one too light").arg(kindText(each.kind));
    }
    WordsCell about;
    if (const QString text = fillingToKnowText(sheet); !text.isEmpty()) know.prepend(text);
    about.text = know.join(QStringLiteral("; "));
    const bool open = std::any_of(sheet.complaints.begin(), sheet.complaints.end(),
                                  [](const Complaint& each) { return !each.closed; });
    if (!sheet.holds.empty() || sheet.treated.any() || open || tooLight) about.tone = Tone::Warn;
    about.strong = !sheet.holds.empty();
    WordsCell stands{left.join(QLatin1Char('\n'))};
    stands.strong = true;
    return {{shortDayText(sheet.bottling.on, m_stock.on)},
            {fromUtf8(sheet.from)},
            {jars.join(QLatin1Char('\n'))},
            stands,
            about};
}

void JarsPage::fillFillings() {
    std::vector<WordsRow> rows;
    for (const FillingSheet& each : m_stock.fillings)
        rows.push_back(
            {each.bottling.id.number, fromUtf8(each.bottling.code.text()), fillingCells(each),
             each.bottling.bestBefore ? tr("best before %1").arg(dayText(*each.bottling.bestBefore))
                                      : QString()});
    m_fillings->showRows(std::move(rows));
    tables().setHead(m_fillings, m_stock.fillings.empty()
                                     ? tr("No jar was filled yet. F fills some.")
                                     : tr("Fillings, the newest first"));
}

void JarsPage::fillCard() {
    const FillingSheet* sheet = chosenSheet();
    desk().setCard(sheet ? tr("The chosen filling") : tr("Jars"),
                   (sheet ? cardOf(*sheet) : emptyCard()) + lostComplaints());
    for (const int key : {Qt::Key_W, Qt::Key_L, Qt::Key_J, Qt::Key_T, Qt::Key_H})
        desk().enableDeed(key, sheet != nullptr);
}

QString JarsPage::emptyCard() const {
    return headOf(tr("Jars")) +
           muted(tr("Write down the kinds you fill and sell with N, the empty jars and lids "
                    "that came with B; then F fills jars out of a bucket or a lot and shows "
                    "first what it takes.")) +
           warn(infantCaution());
}

QString JarsPage::cardOf(const FillingSheet& sheet) const {
    const Bottling& bottling = sheet.bottling;
    QString text = headOf(fromUtf8(bottling.code.text()));
    for (const Hold& each : sheet.holds)
        text += warn((each.bottling == bottling.id ? tr("Held since %1: %2.")
                                                   : tr("Held since %1: %2, by what is in it."))
                         .arg(shortDayText(each.since, m_stock.on), choiceText(word(each.why))));
    text += warn(treatedShareText(sheet.treated));
    text += said(tr("Filled %1 out of %2: %3.")
                     .arg(dayText(bottling.on), fromUtf8(sheet.from), fillingDrawnText(sheet)));
    const auto left = vesselLedger(session().read(), sheet.vessel, m_stock.on);
    text += said(
        left.empty  ? tr("Nothing is left in %1 today.").arg(fromUtf8(sheet.from))
        : left.left ? tr("%1 are in %2 today.").arg(massToTheGram(*left.left), fromUtf8(sheet.from))
                    : tr("How much is left in %1 nobody knows.").arg(fromUtf8(sheet.from)));
    text += said(bottling.bestBefore ? tr("Best before %1.").arg(dayText(*bottling.bestBefore))
                                     : tr("No best-before day is written down."));
    for (const FilledJars& jars : sheet.jars) {
        text += said(tr("%1: %2 left.").arg(jarsLine(jars), fillingLeftText(jars.left)));
        const QString judged = netJudgedText(jars);
        const bool bad = jars.meanHolds == false || jars.lightestShort == true;
        text += judged.isEmpty() ? muted(tr("None was weighed. W writes down a sample."))
                : bad            ? warn(judged + QLatin1Char('.'))
                                 : muted(judged + QLatin1Char('.'));
    }
    if (!bottling.note.empty()) text += muted(fromUtf8(bottling.note));
    for (const Complaint& each : sheet.complaints) {
        text += headOf(tr("Complaint, %1").arg(shortDayText(each.on, m_stock.on)));
        QString what = fromUtf8(each.what.text());
        if (!each.who.empty()) what += QStringLiteral(", ") + fromUtf8(each.who);
        text += each.closed ? said(what + QLatin1Char('.')) : warn(what + tr(". Open."));
        if (each.closed)
            text += muted(tr("Closed %1: %2")
                              .arg(shortDayText(*each.closed, m_stock.on), fromUtf8(each.became)));
    }
    return text + wentOf(sheet);
}

QString JarsPage::lostComplaints() const {
    QString text;
    for (const Complaint& each : m_open) {
        if (each.bottling) continue;
        if (text.isEmpty()) text = headOf(tr("Complaints of no known jar"));
        text += warn(QStringLiteral("%1: %2").arg(shortDayText(each.on, m_stock.on),
                                                  fromUtf8(each.what.text())));
    }
    return text;
}

QString JarsPage::wentOf(const FillingSheet& sheet) const {
    QString text = headOf(tr("Where they went"));
    const auto forward = traceForward(session().read(), {{sheet.vessel, 1.0, sheet.drawn.how}},
                                      session().clock().today());
    int shown = 0;
    int more = 0;
    for (const TracedFilling& each : forward.fillings) {
        if (each.bottling.id != sheet.bottling.id) continue;
        for (const TracedOut& out : each.out) {
            if (shown >= mostWentLines) {
                ++more;
                continue;
            }
            ++shown;
            text += said(
                QStringLiteral("%1  %2").arg(shortDayText(out.on, m_stock.on), tracedOutText(out)));
        }
    }
    if (shown == 0) text += muted(tr("None of them is known to have gone out."));
    if (more > 0) text += muted(tr("And %1 more: T shows all.").arg(more));
    return text;
}

PlaceHead JarsPage::head() const {
    PlaceHead head;
    head.title = tr("Jars");
    if (!session().hasSeason()) return head;
    QStringList under{dayText(m_stock.on)};
    const auto held = std::count_if(m_stock.fillings.begin(), m_stock.fillings.end(),
                                    [](const FillingSheet& each) { return !each.holds.empty(); });
    if (held > 0)
        under << (held == 1 ? tr("1 filling held back") : tr("%1 fillings held back").arg(held));
    if (!m_open.empty())
        under << (m_open.size() == 1 ? tr("1 complaint open")
                                     : tr("%1 complaints open").arg(m_open.size()));
    head.under = under.join(QStringLiteral(" · "));
    if (m_stock.honeyInJars > Mass{}) {
        head.big = {massFigure(static_cast<double>(m_stock.honeyInJars.grams()), How::Weighed),
                    massUnit(), 0};
        head.bigNote = tr("honey in jars\non the shelf");
    }
    head.action = tr("Fill jars");
    head.actionKey = QStringLiteral("F");
    return head;
}

std::vector<KeyHint> JarsPage::hints() const {
    return {{QStringLiteral("F"), tr("fill")},
            {QStringLiteral("O"), tr("out of the door")},
            {QStringLiteral("L"), tr("labels")},
            {QStringLiteral("K"), tr("complaint")},
            {QStringLiteral("T"), tr("trace")}};
}

std::vector<PrintSheet> JarsPage::sheets() const {
    const auto on = [this] { return today(); };
    std::vector<PrintSheet> sheets{
        {QStringLiteral("jars"), tr("Jars and goods"),
         [this, on] {
             return goodsStockPage(session().read(), goodsStock(session().read(), on()));
         }},
        {QStringLiteral("price-list"), tr("Price list"),
         [this, on] {
             return priceListPage(session().read(), goodsStock(session().read(), on()));
         }},
        {QStringLiteral("price-cards"), tr("Price cards"), [this, on] {
             return priceCardsPage(session().read(), goodsStock(session().read(), on()));
         }}};
    return sheets;
}

std::vector<Explained> JarsPage::explained() const { return explainNet(session().read(), m_stock); }

void JarsPage::act() { press(Qt::Key_F); }

QString JarsPage::help() const {
    return helpOf(
        {{tr("Jars"),
          {{{},
            tr("Above what stands on the shelf by kind, below the fillings with their lot "
               "codes; Tab goes from one to the other, the card tells of the chosen filling.")},
           {QStringLiteral("F"),
            tr("fills jars out of a bucket or a lot: 29x454 g, 3x227 g. What it "
               "takes, what stays and what is on the jars stands below first")},
           {QStringLiteral("W"), tr("weighs a sample of the chosen filling against its label")},
           {QStringLiteral("C"), tr("counts what stands there; only what is typed is counted")},
           {QStringLiteral("N, P, B"), tr("a new kind, prices, empty jars and lids bought")},
           {QStringLiteral("O"), tr("out of the door: sold, given away, kept, broken, come back")},
           {QStringLiteral("U"), tr("honey in bulk out of a bucket or lot, by its mass")}}},
         {tr("The chosen filling"),
          {{QStringLiteral("L"), tr("labels on bought sheets, with what must not be forgotten")},
           {QStringLiteral("J"), tr("a leaf to hang on a jar, told from what you wrote")},
           {QStringLiteral("K, X"), tr("a complaint, and what became of it")},
           {QStringLiteral("H"), tr("holds it back, or releases it on grounds you give")},
           {QStringLiteral("T, ↵"), tr("what is in it and who else has it")}}},
         {tr("Safety"),
          {{{}, infantCaution()},
           {{}, tr("Nothing here is legal advice: your place's own rules decide.")}}}});
}

}  // namespace combwright
