#include "ui/yard/stores_page.h"

#include <QLocale>
#include <algorithm>

#include "core/places/pages/stores/stores_page.h"
#include "core/places/pages/yard/kit_list_page.h"
#include "core/places/pages/yard/queen_words.h"
#include "core/words/figures.h"
#include "core/words/words.h"
#include "ui/yard/stores_forms.h"

namespace combwright {
namespace {

std::vector<HiveColumn> storesColumns() {
    return {{StoresPage::tr("stores"), 1.6},
            {StoresPage::tr("use a day"), 0.9},
            {StoresPage::tr("lasts"), 1.1},
            {StoresPage::tr("for winter"), 1.7},
            {StoresPage::tr("room, opened"), 1.4}};
}

HiveCell storesCellOf(const HiveStores& row) {
    HiveCell cell;
    if (row.nowG) {
        cell.text = massText(*row.nowG, row.how);
        cell.how = letter(row.how);
    } else {
        cell.text = row.from == StoresFrom::Heft ? choiceText(word(*row.heft))
                                                 : StoresPage::tr("not known");
        if (row.from != StoresFrom::Heft) cell.tone = Tone::Muted;
    }
    const QString known = storesKnownText(row);
    if (known != cell.text) cell.note = known;
    if (row.tareWrong || row.oneSide || row.takenSince) cell.tone = Tone::Warn;
    return cell;
}

HiveCell useCell(const HiveStores& row, Day on) {
    HiveCell cell;
    if (const auto use = useADay(row, on)) {
        cell.text = *use < 0 ? StoresPage::tr("gains %1").arg(shownPortion(-*use).text())
                             : shownPortion(*use).text();
        cell.note = row.own ? StoresPage::tr("by its own scale, %1 to %2")
                                  .arg(dayAndMonth(row.own->from), dayAndMonth(row.own->to))
                            : StoresPage::tr("by the table of months");
    } else {
        cell.text = StoresPage::tr("not known");
        cell.tone = Tone::Muted;
    }
    if (row.flow) cell.note += QLatin1Char('\n') + flowText(*row.flow);
    return cell;
}

HiveCell lastsCell(const HiveStores& row) {
    HiveCell cell;
    cell.text = storesLastText(row);
    if (cell.text.isEmpty()) {
        cell.text = StoresPage::tr("not known");
        cell.tone = Tone::Muted;
    }
    if (row.lasts == false) {
        cell.tone = Tone::Warn;
        cell.strong = true;
    }
    cell.note = StoresPage::tr("first flow %1").arg(dayAndMonth(row.firstFlow));
    return cell;
}

HiveCell winterCell(const HiveStores& row) {
    HiveCell cell;
    const QString need = massText(row.needG, How::Weighed);
    if (!row.gapG) {
        cell.text = StoresPage::tr("not known: %1").arg(storesMissingText(row));
        cell.tone = Tone::Muted;
        cell.note = StoresPage::tr("needs %1").arg(need);
    } else if (*row.gapG <= 0) {
        cell.text = StoresPage::tr("enough");
        cell.note = StoresPage::tr("needs %1").arg(need);
    } else {
        cell.text = StoresPage::tr("lacks %1 of %2").arg(massText(*row.gapG, How::Weighed), need);
        if (row.give) cell.note = toGiveText(*row.give);
    }
    if (row.give && row.supers > 0)
        cell.note += QLatin1Char('\n') + StoresPage::tr("supers are on");
    return cell;
}

HiveCell roomCell(const HiveGrowth& row) {
    HiveCell cell;
    QStringList said;
    if (row.addBox) {
        said << StoresPage::tr("add a box: %1 of %2 frames")
                    .arg(QLocale().toString(row.addBox->have, 'g', 3))
                    .arg(row.addBox->frames);
        cell.strong = true;
    }
    if (row.roomFrames)
        said << StoresPage::tr("%1 frames free").arg(QLocale().toString(*row.roomFrames, 'f', 1));
    if (said.isEmpty())
        said << (row.supers == 0 ? StoresPage::tr("no super on")
                                 : StoresPage::tr("room not known"));
    cell.text = said.join(QLatin1Char('\n'));
    QStringList notes;
    if (row.supersNotSeen > 0 && row.supers > 0)
        notes << (row.supers == 1 ? StoresPage::tr("its super was not looked into")
                  : row.supersNotSeen == row.supers
                      ? StoresPage::tr("none of its %1 supers looked into").arg(row.supers)
                      : StoresPage::tr("%1 of %2 supers not looked into")
                            .arg(row.supersNotSeen)
                            .arg(row.supers));
    if (!row.daysSince)
        notes << StoresPage::tr("never opened");
    else if (*row.daysSince == 0)
        notes << StoresPage::tr("opened that day");
    else
        notes << (*row.daysSince == 1 ? StoresPage::tr("opened a day ago")
                                      : StoresPage::tr("opened %1 days ago").arg(*row.daysSince));
    if (row.shutUntil) notes << leaveShutText(*row.shutUntil);
    cell.note = notes.join(QLatin1Char('\n'));
    return cell;
}

}  // namespace

StoresPage::StoresPage(Session& session, QWidget* parent)
    : WorkPage(session, QStringLiteral("stores"), storesColumns(), parent) {
    addDeed(tr("Feed"), Qt::Key_G, [this] {
        askToFeed(this, this->session(), yard(), hivesAsked(), on());
        table().setFocus();
    });
    addDeed(tr("Weigh"), Qt::Key_W, [this] {
        weigh();
        table().setFocus();
    });
    addDeed(tr("Empty weight"), Qt::Key_E, [this] { tare(); });
    addDeed(tr("Feed bought"), Qt::Key_B, [this] {
        askToBuyFeed(this, this->session(), on());
        table().setFocus();
    });
    addDeed(tr("Feed counted"), Qt::Key_C, [this] {
        askToCountFeed(this, this->session(), on());
        table().setFocus();
    });
    addDeed(tr("Truck"), Qt::Key_T, [this] {
        askForTruck(this, this->session(), yard(), on());
        table().setFocus();
    });
    addDeed(tr("All"), Qt::Key_A, [this] { table().tickAll(); });
    addDeed(tr("Health"), Qt::Key_V, [this] { Q_EMIT pageAsked(Qt::Key_V); });
    addDeed(tr("Board"), Qt::Key_Escape, [this] { Q_EMIT pageAsked(Qt::Key_Escape); });
    table().setAccessibleName(tr("Stores of the hives"));
}

const std::vector<HiveStores>& StoresPage::rows() const {
    static const std::vector<HiveStores> none;
    return m_stores.yards.empty() ? none : m_stores.yards.front().second;
}

int StoresPage::living() const {
    return static_cast<int>(std::count_if(rows().begin(), rows().end(),
                                          [](const HiveStores& row) { return row.lives; }));
}

/// Those that are ticked; else one walks past all of them, and leaves out what was not weighed.
void StoresPage::weigh() {
    std::vector<Hive> hives;
    const auto ticked = table().ticked();
    for (const HiveStores& row : rows())
        if (ticked.empty() ? row.lives
                           : std::any_of(ticked.begin(), ticked.end(), [&](const auto* each) {
                                 return each->hive == row.hive.id;
                             }))
            hives.push_back(row.hive);
    const HiveTableRow* current = table().current();
    if (!hives.empty())
        askToWeigh(this, session(), yard(), hives, current ? current->hive : hives.front().id,
                   on());
}

void StoresPage::fill() {
    if (!session().hasSeason()) return;
    const Read& file = session().read();
    m_stores = combwright::stores(file, {yard().id}, on());
    m_growth = growth(file, yard().id, on());
    m_kit = kitList(file, yard().id, on());
    std::vector<HiveTableRow> lines;
    for (const HiveStores& row : rows()) {
        HiveTableRow line;
        line.hive = row.hive.id;
        line.mark = fromUtf8(row.hive.mark.text());
        const auto grown =
            std::find_if(m_growth.hives.begin(), m_growth.hives.end(),
                         [&](const HiveGrowth& each) { return each.hive.id == row.hive.id; });
        if (row.lives)
            line.cells = {storesCellOf(row), useCell(row, on()), lastsCell(row), winterCell(row),
                          grown == m_growth.hives.end() ? HiveCell{} : roomCell(*grown)};
        else
            line.cells = {{tr("no colony"), {}, Tone::Muted}, {}, {}, {}, {}};
        lines.push_back(std::move(line));
    }
    table().show(std::move(lines));
    setCard(tr("Feed and what to take along"), cardWords());
}

QString StoresPage::cardWords() const {
    const auto lines = [](const QStringList& each) {
        QString text;
        for (const QString& line : each)
            text += (text.isEmpty() ? QString() : QStringLiteral("<br>")) + line.toHtmlEscaped();
        return text;
    };
    QString text = cardHead(tr("Feed"));
    QStringList shelf;
    for (const FeedShelfRow& row : m_stores.shelf) shelf << feedShelfText(row);
    if (shelf.isEmpty())
        shelf << tr(
            "None is written down yet. B writes down what you buy, C what stands on the "
            "shelf.");
    if (m_stores.sugarG > 0)
        shelf << tr("What is known to lack here takes %1 of sugar.")
                     .arg(massText(m_stores.sugarG, How::Weighed));
    if (m_stores.notKnown > 0)
        shelf << (m_stores.notKnown == 1
                      ? tr("Of 1 hive nobody knows: W weighs it.")
                      : tr("Of %1 hives nobody knows: W weighs them.").arg(m_stores.notKnown));
    text += lines(shelf);
    QStringList kit;
    for (const KitLine& line : m_kit.lines) {
        QStringList hives;
        for (const std::string& hive : line.hives) hives << fromUtf8(hive);
        kit << (hives.isEmpty()
                    ? kitText(line)
                    : tr("%1: %2").arg(kitText(line), hives.join(QStringLiteral(", "))));
    }
    text += cardHead(tr("To take along"));
    text += lines(kit.isEmpty() ? QStringList{tr("Nothing the hives ask for.")} : kit);
    QStringList always;
    for (const KitLine& line : m_kit.always) always << kitText(line);
    text += cardHead(tr("Always in the truck"));
    text += always.isEmpty() ? tr("Nothing is written down yet. T does.").toHtmlEscaped()
                             : always.join(QStringLiteral(", ")).toHtmlEscaped();
    text += cardHead(tr("In earlier years"));
    QStringList past;
    for (const MonthChange& change : m_stores.past) past << monthChangeText(change);
    text += past.isEmpty() ? cardMuted(tr("Not known: no hive was weighed twice within 45 days in "
                                          "an earlier year."))
                           : lines(past);
    text += QStringLiteral("<p style='margin:8px 0 0 0'>%1</p>")
                .arg(cardWarn(tr("In the cold a cluster starves a hand's breadth from honey: look "
                                 "where the stores are, not only how much.")));
    return text;
}

void StoresPage::tare() {
    if (const auto* row = table().current())
        if (const auto hive = session().read().find(row->hive))
            askForTare(this, session(), *hive, on());
    table().setFocus();
}

}  // namespace combwright
