// What the storeroom's buttons open: the work that is ticked, frames that come and go, the freezer,
// wet boxes, dead colonies, the stock-take, the plan, what fits what.
#include <QMenu>
#include <QTimer>

#include "core/places/freezer.h"
#include "core/places/pages/wets_home_page.h"
#include "core/places/wets_home.h"
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

QPushButton* StoreroomPlace::addButton(const QString& text, const char* name,
                                       std::function<void()> deed) {
    auto* button = new QPushButton(text, m_buttons);
    button->setObjectName(QLatin1String(name));
    button->setProperty("small", true);
    m_buttons->layout()->addWidget(button);
    connect(button, &QPushButton::clicked, this, std::move(deed));
    return button;
}

void StoreroomPlace::addButtons() {
    m_buttons->setLayout(new FlowRow(m_buttons, 6));
    const auto today = [this] { return session().clock().today(); };
    const auto back = [this] { m_board->setFocus(); };
    auto* work = addButton(tr("&Work done"), "open_work", [] {});
    auto* works = new QMenu(work);
    for (const FrameWork each : {FrameWork::Repaired, FrameWork::Refitted, FrameWork::Scraped,
                                 FrameWork::Melted, FrameWork::Burnt, FrameWork::Sold})
        works->addAction(fromUtf8(word(each)), this, [this, each, today, back] {
            askToWorkFrames(this, session(), each, typedBoxes(), today());
            back();
        });
    works->addSeparator();
    works->addAction(tr("boxes mended or painted"), this, [this, today, back] {
        askToMendBoxes(this, session(), typedBoxes(), today());
        back();
    });
    openOnFirst(works);
    work->setMenu(works);
    auto* frames = addButton(tr("Fra&mes"), "open_frames", [] {});
    auto* moves = new QMenu(frames);
    moves->addAction(tr("judge many"), this, [this, today, back] {
        askToJudge(this, session(), Verdict::Keep, typedBoxes(), today());
        back();
    });
    moves->addAction(tr("add frames"), this, [this, today, back] {
        askToAddFrames(this, session(), typedBoxes(), today());
        back();
    });
    moves->addAction(tr("move frames"), this, [this, today, back] {
        askToMoveFrames(this, session(), typedBoxes(), today());
        back();
    });
    moves->addSeparator();
    moves->addAction(tr("set out in the open"), this, [this, today, back] {
        askToSetOut(this, session(), typedBoxes(), today());
        back();
    });
    moves->addAction(tr("measure a home-made box"), this, [this, today, back] {
        askToMeasureBox(this, session(), today());
        back();
    });
    moves->addAction(tr("measure a home-made frame"), this, [this, today, back] {
        askToMeasureFrame(this, session(), today());
        back();
    });
    openOnFirst(moves);
    frames->setMenu(moves);
    auto* freezer = addButton(tr("Free&zer"), "open_freezer", [] {});
    auto* rounds = new QMenu(freezer);
    rounds->addAction(tr("put a round in"), this, [this, today, back] {
        askToFreeze(this, session(), today());
        back();
    });
    rounds->addAction(tr("take a round out"), this, [this, today, back] {
        askToTakeOut(this, session(), today());
        back();
    });
    rounds->addAction(tr("opened or left warm"), this, [this, today, back] {
        askToSpoil(this, session(), typedBoxes(), today());
        back();
    });
    rounds->addAction(tr("what the freezer is like"), this, [this, today, back] {
        askToDescribeFreezer(this, session(), freezerLane(session().read(), today()).freezer,
                             today());
        back();
    });
    openOnFirst(rounds);
    freezer->setMenu(rounds);
    addButton(tr("We&ts home…"), "open_wets", [this, today, back] {
        WetsDialog dialog(session(), today(), this);
        connect(&dialog, &WetsDialog::printAsked, this, [this, today] {
            printWithPreview(
                this, wetsHomePage(session().read(), wetsHome(session().read(), today())), look());
        });
        dialog.exec();
        back();
    });
    addButton(tr("&Dead-outs…"), "open_dead_outs", [this, today, back] {
        askAboutDeadOuts(this, session(), today());
        back();
    });
    m_contacts = addButton(tr("&Contacts…"), "open_contacts", [this, today, back] {
        const BoardRow* row = m_board->currentRow();
        std::optional<Id<Hive>> hive;
        if (m_box && m_box->underSuspicion() && row && row->cameOff) hive = row->cameOff->hive;
        showContacts(this, session(), today(), hive);
        back();
    });
    m_contacts->hide();
    addButton(tr("Stoc&k-take…"), "open_stock_take", [this, today, back] {
        askToTakeStock(this, session(), today());
        back();
    });
    addButton(tr("&Plan…"), "open_plan", [this, today, back] {
        askToPlanSeason(this, session(), plannedYear(session().read(), today()), today());
        back();
    });
    addButton(tr("F&it…"), "open_fit", [this, back] {
        FitDialog dialog(session(), this);
        dialog.exec();
        back();
    });
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
