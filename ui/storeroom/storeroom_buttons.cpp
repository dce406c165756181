// What the storeroom's buttons open: the work that is ticked, frames that come and go, the freezer,
// wet boxes, dead colonies, the stock-take, the plan, what fits what.
#include <QMenu>
#include <QTimer>
#include <utility>

#include "core/places/pages/pull/wets_home_page.h"
#include "core/places/pull/wets_home.h"
#include "core/places/storeroom/freezer.h"
#include "core/words/words.h"
#include "ui/common/flow_row.h"
#include "ui/print/print_dialog.h"
#include "ui/storeroom/contacts_dialog.h"
#include "ui/storeroom/dead_out_form.h"
#include "ui/storeroom/fit_dialog.h"
#include "ui/storeroom/frame_forms.h"
#include "ui/storeroom/freezer_forms.h"
#include "ui/storeroom/kind_forms.h"
#include "ui/storeroom/plan_form.h"
#include "ui/storeroom/stock_take_form.h"
#include "ui/storeroom/storeroom_place.h"
#include "ui/storeroom/wets_dialog.h"

namespace combwright {
namespace {

/// Opened by its key a menu stands on its first line, and Enter does it.
void openOnFirst(QMenu* menu) {
    QObject::connect(menu, &QMenu::aboutToShow, menu, [menu] {
        QTimer::singleShot(0, menu,
                           [menu] { menu->setActiveAction(menu->actions().constFirst()); });
    });
}

}  // namespace

QPushButton* StoreroomPlace::addButton(const QString& text, const char* name) {
    auto* button = new QPushButton(text, m_buttons);
    button->setObjectName(QLatin1String(name));
    button->setProperty("small", true);
    m_buttons->layout()->addWidget(button);
    return button;
}

QPushButton* StoreroomPlace::addButton(const QString& text, const char* name, Deed deed) {
    auto* button = addButton(text, name);
    connect(button, &QPushButton::clicked, this, [this, deed = std::move(deed)] { doIt(deed); });
    return button;
}

void StoreroomPlace::addMenu(const QString& text, const char* name,
                             const std::vector<MenuLine>& lines) {
    auto* button = addButton(text, name);
    auto* menu = new QMenu(button);
    for (const auto& [words, deed] : lines)
        if (deed)
            menu->addAction(words, this, [this, deed = deed] { doIt(deed); });
        else
            menu->addSeparator();
    openOnFirst(menu);
    button->setMenu(menu);
}

void StoreroomPlace::doIt(const Deed& deed) {
    deed(session().clock().today());
    m_board->setFocus();
}

void StoreroomPlace::addButtons() {
    m_buttons->setLayout(new FlowRow(m_buttons, 6));
    addMenus();
    addButton(tr("We&ts home…"), "open_wets", [this](Day today) {
        WetsDialog dialog(session(), today, this);
        connect(&dialog, &WetsDialog::printAsked, this, [this, today] {
            printWithPreview(
                this, wetsHomePage(session().read(), wetsHome(session().read(), today)), look());
        });
        dialog.exec();
    });
    addButton(tr("&Dead-outs…"), "open_dead_outs",
              [this](Day today) { askAboutDeadOuts(this, session(), today); });
    m_contacts = addButton(tr("&Contacts…"), "open_contacts", [this](Day today) {
        const BoardRow* row = m_board->currentRow();
        std::optional<Id<Hive>> hive;
        if (m_box && m_box->underSuspicion() && row && row->cameOff) hive = row->cameOff->hive;
        showContacts(this, session(), today, hive);
    });
    m_contacts->hide();
    addButton(tr("Stoc&k-take…"), "open_stock_take",
              [this](Day today) { askToTakeStock(this, session(), today); });
    addButton(tr("&Plan…"), "open_plan", [this](Day today) {
        askToPlanSeason(this, session(), plannedYear(session().read(), today), today);
    });
    addButton(tr("F&it…"), "open_fit", [this](Day) { FitDialog(session(), this).exec(); });
}

/// Deeds that go together behind one button, for there are more than fit in a row.
void StoreroomPlace::addMenus() {
    const MenuLine line{};  // between groups
    std::vector<MenuLine> work;
    for (const FrameWork each : {FrameWork::Repaired, FrameWork::Refitted, FrameWork::Scraped,
                                 FrameWork::Melted, FrameWork::Burnt, FrameWork::Sold})
        work.emplace_back(choiceText(word(each)), [this, each](Day today) {
            askToWorkFrames(this, session(), each, typedBoxes(), today);
        });
    work.push_back(line);
    work.emplace_back(tr("boxes mended or painted"),
                      [this](Day today) { askToMendBoxes(this, session(), typedBoxes(), today); });
    addMenu(tr("&Work done"), "open_work", work);
    addMenu(
        tr("Fra&mes"), "open_frames",
        {{tr("judge many"),
          [this](Day today) { askToJudge(this, session(), Verdict::Keep, typedBoxes(), today); }},
         {tr("add frames"),
          [this](Day today) { askToAddFrames(this, session(), typedBoxes(), today); }},
         {tr("move frames"),
          [this](Day today) { askToMoveFrames(this, session(), typedBoxes(), today); }},
         line,
         {tr("set out in the open"),
          [this](Day today) { askToSetOut(this, session(), typedBoxes(), today); }},
         {tr("measure a home-made box"),
          [this](Day today) { askToMeasureBox(this, session(), today); }},
         {tr("measure a home-made frame"),
          [this](Day today) { askToMeasureFrame(this, session(), today); }}});
    addMenu(tr("Free&zer"), "open_freezer",
            {{tr("put a round in"), [this](Day today) { askToFreeze(this, session(), today); }},
             {tr("take a round out"), [this](Day today) { askToTakeOut(this, session(), today); }},
             {tr("opened or left warm"),
              [this](Day today) { askToSpoil(this, session(), typedBoxes(), today); }},
             {tr("what the freezer is like"), [this](Day today) {
                  askToDescribeFreezer(this, session(),
                                       freezerLane(session().read(), today).freezer, today);
              }}});
}

QString StoreroomPlace::typedBoxes() const {
    return m_board->selectedCount() > 0 || currentBox() ? chosenMarks() : QString();
}

QString StoreroomPlace::chosenMarks() const {
    QStringList marks;
    for (const Id<Box> box : m_board->chosenBoxes()) {
        const auto found = session().read().find(box);
        marks << (found && !found->mark.empty() ? fromUtf8(found->mark)
                                                : QStringLiteral("#%1").arg(box.number));
    }
    return marks.join(QStringLiteral(", "));
}

}  // namespace combwright
