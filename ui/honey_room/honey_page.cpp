#include "ui/honey_room/honey_page.h"

#include <QVBoxLayout>
#include <algorithm>

#include "core/actions/honey/readings.h"
#include "core/places/explain/explain_vessels.h"
#include "core/places/pages/honey/honey_store_page.h"
#include "core/places/pages/honey/vessel_words.h"
#include "core/places/pages/trace/trace_page.h"
#include "core/words/figures.h"
#include "core/words/words.h"
#include "ui/common/hand_focus.h"
#include "ui/common/help_groups.h"
#include "ui/honey_room/blend_form.h"
#include "ui/honey_room/honey_forms.h"
#include "ui/honey_room/trace_view.h"

namespace combwright {
namespace {

// At the base font, px.
constexpr DeedDeskSizes honeyDesk{380, 620};

std::vector<WordsColumn> honeyColumns() {
    return {{HoneyPage::tr("honey"), 0.8},
            {HoneyPage::tr("water"), 1.4},
            {HoneyPage::tr("colour, taste"), 1.0},
            {HoneyPage::tr("where"), 0.8},
            {HoneyPage::tr("to bottle"), 1.8}};
}

/// Buckets and lots share one list.
std::int64_t rowKeyOf(const Vessel& vessel) {
    return vessel.bucket ? vessel.bucket->number * 2 : vessel.lot->number * 2 + 1;
}

WordsCell amountCell(const StoredHoney& honey) {
    WordsCell cell;
    const VesselLedger& ledger = honey.view.ledger;
    if (ledger.empty) {
        cell.text = HoneyPage::tr("empty");
        cell.note = HoneyPage::tr("since %1").arg(dayAndMonth(*ledger.empty));
        cell.tone = Tone::Muted;
    } else if (!ledger.left) {
        cell.text = HoneyPage::tr("not known");
        cell.tone = Tone::Muted;
    } else {
        cell.text = massText(static_cast<double>(ledger.left->grams()), ledger.leftHow);
        cell.how = letter(ledger.leftHow);
    }
    if (!ledger.empty && ledger.in && ledger.left && *ledger.in != *ledger.left)
        cell.note = HoneyPage::tr("of %1").arg(
            massText(static_cast<double>(ledger.in->grams()), ledger.inHow));
    return cell;
}

WordsCell waterCell(const StoredHoney& honey) {
    WordsCell cell;
    cell.text = waterText(honey.view.water);
    if (!honey.view.water) {
        cell.tone = Tone::Muted;
        return cell;
    }
    const WaterInUse& water = *honey.view.water;
    // Where nobody wrote down how it was read there is nothing more to say in a row.
    cell.note = water.from == WaterFrom::AtTheGate ? HoneyPage::tr("said at the gate")
                                                   : waterKnownText(water);
    if (water.has(WaterDoubt::ReadsTooDry) || water.has(WaterDoubt::WetterThanShown))
        cell.tone = Tone::Warn;
    return cell;
}

/// How it was measured and strained stands on its card.
WordsCell tastesCell(const StoredHoney& honey) {
    WordsCell cell;
    QStringList tastes;
    for (const TasteWord& taste : honey.view.tastes) tastes << fromUtf8(taste.word);
    cell.text = fromUtf8(honey.view.traits.colour.empty() ? colourName(honey.view.traits)
                                                          : honey.view.traits.colour);
    cell.note = tastes.join(QStringLiteral(", "));
    if (cell.text.isEmpty()) std::swap(cell.text, cell.note);
    return cell;
}

WordsCell whereCell(const StoredHoney& honey) {
    WordsCell cell;
    cell.text = fromUtf8(honey.view.traits.place);
    if (honey.view.lidded)
        cell.note = *honey.view.lidded ? HoneyPage::tr("lid on") : HoneyPage::tr("no lid on");
    return cell;
}

WordsCell readyCell(const StoredHoney& honey, Day on) {
    WordsCell cell;
    if (honey.view.empty()) return cell;
    QStringList lacks = lackTexts(honey, on);
    if (lacks.isEmpty()) {
        cell.text = HoneyPage::tr("ready");
        cell.tone = Tone::Good;
        cell.strong = true;
        if (honey.settling) lacks << settlingText(*honey.settling, on);
    } else {
        cell.text = HoneyPage::tr("not yet: %1").arg(lacks.takeFirst());
        const bool held = !honey.view.held.empty();
        cell.tone = held ? Tone::Bad : Tone::Warn;
        cell.strong = held;
    }
    if (honey.setAtRisk) lacks << HoneyPage::tr("at risk %1").arg(settingText(honey));
    // Of honey that was creamed that is no matter of the future.
    if (honey.setAtRisk && honey.view.creamed && cell.tone == Tone::Good) cell.tone = Tone::Warn;
    cell.note = lacks.join(QLatin1Char('\n'));
    return cell;
}

}  // namespace

HoneyPage::HoneyPage(Session& session, QWidget* parent)
    : RoomPage(session, parent),
      m_desk(new DeedDesk(session.look(), QStringLiteral("honey"), honeyDesk, this)),
      m_table(new WordsTable(session.look(), {tr("bucket or lot"), tr("how it stands")},
                             honeyColumns(), WordsTicks::None, m_desk)),
      m_picture(new VesselPicture(session, m_desk)) {
    setObjectName(QStringLiteral("honey_page"));
    auto* whole = new QVBoxLayout(this);
    whole->setContentsMargins(0, 0, 0, 0);
    whole->addWidget(m_desk);
    m_desk->setTable(m_table);
    m_desk->setDrawing(m_picture);
    addDeeds();
    m_table->setAccessibleName(tr("Honey in buckets and lots"));
    handFocusTo(*this, *m_table);
    connect(m_table, &QTableWidget::currentCellChanged, this, [this](int row, int, int before) {
        if (row == before) return;
        this->session().reading([this] { fillCard(); });
        Q_EMIT headChanged();
    });
    connect(m_table, &WordsTable::rowActivated, this, [this] { act(); });
    connect(&session, &Session::lookChanged, this, [this] {
        m_table->setLook(look());
        m_desk->setLook(look());
    });
}

std::vector<const StoredHoney*> HoneyPage::shown() const {
    std::vector<const StoredHoney*> all;
    for (const StoredHoney& each : m_store.standing) all.push_back(&each);
    if (m_emptiedToo)
        for (const StoredHoney& each : m_store.emptied) all.push_back(&each);
    return all;
}

const StoredHoney* HoneyPage::current() const {
    const WordsRow* row = m_table->currentWords();
    if (!row) return nullptr;
    for (const StoredHoney* each : shown())
        if (rowKeyOf(each->view.vessel) == row->key) return each;
    return nullptr;
}

void HoneyPage::choose(const Vessel& vessel) { m_table->chooseKey(rowKeyOf(vessel)); }

bool HoneyPage::goToRecord(std::string_view table, std::int64_t record) {
    Vessel vessel;
    if (table == Bucket::table)
        vessel.bucket = Id<Bucket>{record};
    else if (table == Lot::table)
        vessel.lot = Id<Lot>{record};
    else
        return false;
    const auto isIt = [&](const StoredHoney& each) { return each.view.vessel == vessel; };
    const bool stands = std::any_of(m_store.standing.begin(), m_store.standing.end(), isIt);
    if (!stands && std::none_of(m_store.emptied.begin(), m_store.emptied.end(), isIt)) return false;
    if (!stands && !m_emptiedToo) showEmptied();
    m_table->setFocus();
    choose(vessel);
    return true;
}

void HoneyPage::readAnew() {
    m_store = honeyStore(session().read(), session().clock().today());
    fillTable();
    fillCard();
    Q_EMIT headChanged();
}

void HoneyPage::fillTable() {
    std::vector<WordsRow> rows;
    for (const StoredHoney* each : shown())
        rows.push_back({rowKeyOf(each->view.vessel),
                        fromUtf8(each->view.name),
                        {amountCell(*each), waterCell(*each), tastesCell(*each), whereCell(*each),
                         readyCell(*each, m_store.on)}});
    m_table->showRows(std::move(rows));
}

void HoneyPage::fillCard() {
    const StoredHoney* honey = current();
    m_picture->setVisible(honey != nullptr);
    const bool standing = honey && !honey->view.empty();
    const auto waits = [&] {
        return honey && !honey->view.readings.empty() &&
               awaitsCorrection(honey->view.readings.back());
    };
    for (const int key : {Qt::Key_R, Qt::Key_D, Qt::Key_W, Qt::Key_L, Qt::Key_H, Qt::Key_U})
        m_desk->enableDeed(key, honey != nullptr);
    m_desk->enableDeed(Qt::Key_C, waits());
    m_desk->enableDeed(Qt::Key_B, !m_store.standing.empty());
    m_desk->enableDeed(Qt::Key_E, !m_store.emptied.empty());
    if (!honey) {
        m_desk->setCard(tr("The honey chosen"),
                        cardLines({tr("No honey stands in buckets or lots. A bucket filled at the "
                                      "gate (Extract) comes here by itself; N writes down honey "
                                      "that was bought in.")}));
        return;
    }
    m_picture->show(*honey, m_store.on);
    m_desk->setCard(fromUtf8(honey->view.name),
                    (standing ? cardOf(*honey) : QString()) + historyCard(*honey));
}

/// What it is now, and what must be seen to before it is bottled.
QString HoneyPage::cardOf(const StoredHoney& honey) const {
    const Look& look = this->look();
    QString text;
    const QStringList lacks = lackTexts(honey, m_store.on);
    text += cardHead(tr("Ready?"), look);
    if (lacks.isEmpty())
        text += cardToned(tr("Yes: settled, dry enough for your line, held by nothing."),
                          Tone::Good, look);
    const bool held = !honey.view.held.empty();
    for (int i = 0; i < lacks.size(); ++i)
        text +=
            (i == 0 ? QString() : QStringLiteral("<br>")) +
            cardToned(lacks[i] + QLatin1Char('.'), held && i == 0 ? Tone::Bad : Tone::Warn, look);
    if (honey.setAtRisk)
        text += QStringLiteral("<br>") +
                cardToned(tr("Sound now, at risk when it sets: %1. Bottle it liquid, dry it, or "
                             "use it first.")
                              .arg(settingText(honey)),
                          Tone::Warn, look);
    text += cardHead(tr("Water"), look);
    QStringList water{waterText(honey.view.water)};
    if (honey.view.water) water << waterKnownText(*honey.view.water).split(QStringLiteral("; "));
    if (honey.view.readings.size() > 1)
        water << tr("read %1 times").arg(honey.view.readings.size());
    text += cardLines(water);
    text += limitsCard(honey);
    if (!honey.view.held.empty())
        text +=
            cardHead(tr("Held back"), look) + cardLines(heldTexts(session().read(), honey.view));
    return text;
}

/// Limits and keeping, settling, air.
QString HoneyPage::limitsCard(const StoredHoney& honey) const {
    const Look& look = this->look();
    QString text = cardHead(
        m_store.profile.empty() ? tr("Limits") : tr("Limits of %1").arg(fromUtf8(m_store.profile)),
        look);
    QStringList limits;
    for (const LimitAnswer& each : honey.limits) limits << limitText(m_store.profile, each);
    if (m_store.profile.empty())
        limits << tr("Nobody's are picked; P picks them.");
    else if (limits.isEmpty())
        limits << (honey.view.water ? tr("None of water there.") : tr("Its water is not read."));
    limits << tr("Your own line: %1.").arg(waterPercentText(m_store.targetPercent));
    text += cardLines(limits);
    if (honey.ferment) {
        QStringList keeps{keepsText(*honey.ferment)};
        if (honey.whenSetFrom && honey.whenSetTo && !honey.setAtRisk) keeps << settingText(honey);
        if (const QString off = waterOffText(honey); !off.isEmpty()) keeps << off;
        text += cardHead(tr("Does it keep?"), look) + cardLines(keeps);
    }
    if (honey.settling)
        text +=
            cardHead(tr("Settling"), look) + cardLines({settlingText(*honey.settling, m_store.on),
                                                        settlingWhyText(*honey.settling)});
    if (honey.air) text += cardHead(tr("Air of the room"), look) + cardLines({airText(*honey.air)});
    return text;
}

/// Where it came from, what it has been through, where it went.
QString HoneyPage::historyCard(const StoredHoney& honey) const {
    const Look& look = this->look();
    const Read& file = session().read();
    QStringList from = cameFromTexts(file, honey.view);
    if (const QString treated = treatedText(honey.view.treated); !treated.isEmpty())
        from << treated;
    QString text = cardHead(tr("Came from"), look) + cardLines(from);
    QStringList told;
    if (const QString traits = traitsText(honey.view.traits); !traits.isEmpty()) told << traits;
    for (const TasteWord& taste : honey.view.tastes)
        told << (taste.of == honey.view.name
                     ? tr("taste: %1").arg(fromUtf8(taste.word))
                     : tr("taste: %1, of %2").arg(fromUtf8(taste.word), fromUtf8(taste.of)));
    if (!told.isEmpty()) text += cardHead(tr("Told of it"), look) + cardLines(told);
    QStringList work = workedTexts(honey.view);
    if (const QString heat = heatText(honey.view.heat); !heat.isEmpty()) work << heat;
    if (!work.isEmpty()) text += cardHead(tr("Done to it"), look) + cardLines(work);
    QStringList ledger = ledgerTexts(file, honey.view.ledger);
    if (honey.view.ledger.missing != Mass())
        ledger
            << (honey.view.ledger.missing > Mass()
                    ? tr("%1 missing in all when it was weighed")
                          .arg(shownPortion(static_cast<double>(honey.view.ledger.missing.grams()))
                                   .text())
                    : tr("%1 more than reckoned was found")
                          .arg(shownPortion(-static_cast<double>(honey.view.ledger.missing.grams()))
                                   .text()));
    text += cardHead(tr("In and out"), look) + cardLines(ledger);
    return text;
}

void HoneyPage::addDeeds() {
    const auto today = [this] { return session().clock().today(); };
    m_desk->addDeed(tr("Read water"), Qt::Key_R, [this, today] {
        about([&](const VesselView& view) { askToReadWater(this, session(), view, today()); });
    });
    m_desk->addDeed(tr("Corrected"), Qt::Key_C, [this] { takeCorrection(); });
    m_desk->addDeed(tr("Describe"), Qt::Key_D, [this, today] {
        about([&](const VesselView& view) { askToDescribe(this, session(), view, today()); });
    });
    m_desk->addDeed(tr("Warm, dry"), Qt::Key_W, [this, today] {
        about([&](const VesselView& view) { askToWorkHoney(this, session(), view, today()); });
    });
    m_desk->addDeed(tr("Left"), Qt::Key_L, [this, today] {
        about([&](const VesselView& view) { askToWeighLeft(this, session(), view, today()); });
    });
    m_desk->addDeed(tr("Blend"), Qt::Key_B, [this, today] {
        if (const auto made = askToBlend(this, session(), today())) choose({std::nullopt, *made});
        m_table->setFocus();
    });
    m_desk->addDeed(tr("Bought in"), Qt::Key_N, [this, today] {
        if (const auto made = askToBuyHoney(this, session(), today()))
            choose({std::nullopt, *made});
        m_table->setFocus();
    });
    m_desk->addDeed(tr("Hold back"), Qt::Key_H, [this, today] {
        about([&](const VesselView& view) { askToHoldHoney(this, session(), view, today()); });
    });
    m_desk->addDeed(tr("Lift hold"), Qt::Key_U, [this, today] {
        about([&](const VesselView& view) { askToLiftHoneyHold(this, session(), view, today()); });
    });
    m_desk->addDeed(tr("Trace"), Qt::Key_T, [this] { showTraceOf(); });
    m_desk->addDeed(tr("Limits"), Qt::Key_P, [this, today] {
        askForLimits(this, session(), today());
        m_table->setFocus();
    });
    m_desk->addDeed(tr("Emptied"), Qt::Key_E, [this] { showEmptied(); });
}

void HoneyPage::about(const std::function<void(const VesselView&)>& form) {
    if (const StoredHoney* honey = current()) {
        // The form waits; what is kept meanwhile reads the list anew.
        const VesselView view = honey->view;
        form(view);
    } else {
        session().tell(tr("No bucket or lot is chosen."), true);
    }
    m_table->setFocus();
}

void HoneyPage::takeCorrection() {
    about([this](const VesselView& view) {
        TakeCorrection deed;
        deed.on = session().clock().today();
        deed.bucket = view.vessel.bucket;
        deed.lot = view.vessel.lot;
        const auto before = view.water;
        if (!session().run(deed)) return;
        if (const StoredHoney* now = current(); before && now && now->view.water)
            session().tell(
                tr("%1: %2 instead of %3 as read.")
                    .arg(fromUtf8(view.name), waterText(now->view.water), waterText(before)));
    });
}

void HoneyPage::showTraceOf() {
    std::optional<TraceOf> of;
    if (const StoredHoney* honey = current()) {
        of = TraceOf();
        of->bucket = honey->view.vessel.bucket;
        of->lot = honey->view.vessel.lot;
    }
    showTrace(this, session(), of, session().clock().today());
    m_table->setFocus();
}

void HoneyPage::showEmptied() {
    m_emptiedToo = !m_emptiedToo;
    session().reading([this] {
        fillTable();
        fillCard();
    });
    m_table->setFocus();
}

HoneyPage::Next HoneyPage::next() const {
    const StoredHoney* honey = current();
    if (!honey || honey->view.empty()) return Next::Nothing;
    const auto lacks = honey->lacks(m_store.on);
    const auto has = [&](HoneyLacks each) {
        return std::find(lacks.begin(), lacks.end(), each) != lacks.end();
    };
    if (has(HoneyLacks::WaterNotRead)) return Next::Read;
    if (!honey->view.readings.empty() && awaitsCorrection(honey->view.readings.back()))
        return Next::TakeCorrection;
    if (has(HoneyLacks::WaterMustGo)) return Next::Blend;
    return Next::Nothing;
}

PlaceHead HoneyPage::head() const {
    PlaceHead head;
    head.title = tr("Honey");
    const auto ready =
        std::count_if(m_store.standing.begin(), m_store.standing.end(),
                      [this](const StoredHoney& each) { return each.ready(m_store.on); });
    const std::size_t all = m_store.standing.size();
    head.under = all == 0   ? tr("nothing in buckets or lots")
                 : all == 1 ? tr("1 bucket or lot · %1 ready").arg(ready)
                            : tr("%1 buckets and lots · %2 ready").arg(all).arg(ready);
    if (m_store.known > Mass()) {
        head.big = {massFigure(static_cast<double>(m_store.known.grams()), m_store.knownHow),
                    massUnit(), letter(m_store.knownHow)};
        head.bigNote = tr("in buckets\nand lots");
    }
    switch (next()) {
        case Next::Read:
            head.action = tr("Read its water");
            head.actionKey = QStringLiteral("R");
            break;
        case Next::TakeCorrection:
            head.action = tr("Take the corrected figure");
            head.actionKey = QStringLiteral("C");
            break;
        case Next::Blend:
            head.action = tr("Blend it dry enough");
            head.actionKey = QStringLiteral("B");
            break;
        case Next::Nothing:
            break;
    }
    return head;
}

std::vector<KeyHint> HoneyPage::hints() const {
    return {{QStringLiteral("R"), tr("read water")},
            {QStringLiteral("W"), tr("warm, dry, skim")},
            {QStringLiteral("B"), tr("blend")},
            {QStringLiteral("T"), tr("trace")}};
}

std::vector<PrintSheet> HoneyPage::sheets() const {
    const auto today = [this] { return session().clock().today(); };
    std::vector<PrintSheet> all{
        {QStringLiteral("honey-store"), tr("Honey in the room"), [this, today] {
             return honeyStorePage(session().read(), honeyStore(session().read(), today()));
         }}};
    if (const StoredHoney* honey = current()) {
        TraceOf of;
        of.bucket = honey->view.vessel.bucket;
        of.lot = honey->view.vessel.lot;
        all.push_back({QStringLiteral("trace"), tr("Trace of %1").arg(fromUtf8(honey->view.name)),
                       [this, of, today] {
                           const auto traced = trace(session().read(), of, today());
                           return traced ? tracePage(session().read(), *traced) : Page();
                       }});
    }
    all.push_back({QStringLiteral("blend"),
                   tr("Blend to %1").arg(waterPercentText(m_store.targetPercent)),
                   [this, today] { return usualBlendPage(session().read(), today()); }});
    return all;
}

std::vector<Explained> HoneyPage::explained() const {
    // The one that is chosen first.
    HoneyStore store = m_store;
    if (const StoredHoney* honey = current()) {
        const auto at = std::find_if(
            store.standing.begin(), store.standing.end(),
            [&](const StoredHoney& each) { return each.view.vessel == honey->view.vessel; });
        if (at != store.standing.end()) std::rotate(store.standing.begin(), at, at + 1);
    }
    return explainHoneyStore(session().read(), store);
}

QString HoneyPage::help() const {
    return helpOf(
        {{tr("Safety"),
          {{{},
            tr("A bucket of honey is heavy and slips: straight arms, close to the body; hot water "
               "and hot honey burn. Honey is nothing for children under one year.")},
           {{}, liftCaution()}}},
         {tr("One bucket or lot"),
          {{QStringLiteral("R"),
            tr("its water: what the instrument shows, how warm the sample was, when it was "
               "checked. "
               "A reading off 20 °C stays as read until you take the corrected figure")},
           {QStringLiteral("C"), tr("takes the corrected figure of its newest reading")},
           {QStringLiteral("D"), tr("colour, taste, strainer, lid, where it stands")},
           {QStringLiteral("W"),
            tr("warmed, dried, creamed, skimmed; what the warmth costs is said before it is kept")},
           {QStringLiteral("L"), tr("what is left, weighed; 0 where it is empty")},
           {QStringLiteral("H · U"),
            tr("holds it back, with all that comes of it; lifts the hold")},
           {QStringLiteral("T"),
            tr("where it came from and who has it; also of a code on a jar, a hive, a box")}}},
         {tr("All of them"),
          {{QStringLiteral("B"),
            tr("pours together: the most honey at or under a water content, or by hand")},
           {QStringLiteral("N"), tr("honey that was bought in")},
           {QStringLiteral("P"), tr("whose limits you go by, and your own line of water")},
           {QStringLiteral("E"), tr("shows those emptied within a year too")},
           {tr("Up, Down"), tr("choose one; Enter does what it lacks next")},
           {tr("Ctrl+E"), tr("how each figure came about")}}}});
}

void HoneyPage::act() {
    switch (next()) {
        case Next::Read:
            press(Qt::Key_R);
            return;
        case Next::TakeCorrection:
            press(Qt::Key_C);
            return;
        case Next::Blend:
            press(Qt::Key_B);
            return;
        case Next::Nothing:
            return;
    }
}

}  // namespace combwright
