#include "ui/wax_bench/hive_goods_forms.h"

#include <QCoreApplication>

#include "core/actions/wax/hive_goods.h"
#include "core/places/wax_bench/wax_bench.h"
#include "core/words/figures.h"
#include "core/words/words.h"
#include "ui/shell/form_reading.h"
#include "ui/shell/small_form.h"
#include "ui/wax_bench/wax_choices.h"

namespace combwright {
namespace {

QString hiveGoods(const char* text) {
    return QCoreApplication::translate("hive_goods_forms", text);
}

/// Projects that are not lidded; false where there are none, which is told.
bool addProjects(QComboBox* choice, Session& session, const WaxBench& bench) {
    for (const HiveProject& each : bench.projects)
        if (!each.lidded)
            choice->addItem(hiveGoods("%1: %2 %3")
                                .arg(fromUtf8(each.name.text()))
                                .arg(static_cast<qlonglong>(each.pieces.value()))
                                .arg(choiceText(word(each.what))),
                            static_cast<qlonglong>(each.id.number));
    if (choice->count() > 0) return true;
    session.tell(hiveGoods("No small project is under way: start one first."), true);
    return false;
}

QString combCaution() {
    return hiveGoods(
        "Honey in comb is honey: never for infants under one year. Nothing goes on a "
        "hive that is treated, and what was on while it was is not sold.");
}

}  // namespace

bool askAboutPropolis(QWidget* parent, Session& session, Day on) {
    const WaxBench bench = waxBench(session.read(), on);
    SmallForm form(parent, session, hiveGoods("Propolis"));
    form.say(hiveGoods("There is %1.")
                 .arg(shownPortion(static_cast<double>(bench.propolis.grams())).text()));
    auto* went = form.choice(hiveGoods("It was"), "went");
    addChoices<PropolisWent>(went, {});
    auto* mass = form.line(hiveGoods("Weighs"), "mass", hiveGoods("340 g"));
    auto* hive = form.choice(hiveGoods("From hive"), "hive");
    addHives(hive, session.read(), on, hiveGoods("several, or nobody said"));
    auto* frozen = form.line(hiveGoods("In the freezer since"), "frozen", hiveGoods("today"));
    auto* buyer = form.line(hiveGoods("To whom"), "buyer", hiveGoods("in trade, or if wished"));
    auto* note = form.line(hiveGoods("Note"), "note", hiveGoods("may stay empty"));
    form.caution(
        hiveGoods("Propolis makes some people ill: it is a known allergen, on the skin and "
                  "swallowed. Say so to whoever gets it; nothing is promised of it."));
    form.fitWith(went, [&] {
        const auto how = chosen<PropolisWent>(went).value_or(PropolisWent::Scraped);
        const bool in = how == PropolisWent::Scraped || how == PropolisWent::Trapped;
        form.showField(hive, in);
        form.showField(frozen, in);
        form.showField(buyer, how == PropolisWent::Sold || how == PropolisWent::Given);
    });
    form.keepDraft(QStringLiteral("wax propolis"));
    form.onAccept([&] {
        NotePropolis deed;
        deed.on = on;
        deed.went = chosen<PropolisWent>(went).value_or(PropolisWent::Scraped);
        if (!readField(session, mass, deed.mass)) return false;
        if (hive->isVisible()) deed.hive = chosenId<Hive>(hive);
        if (frozen->isVisible() && !readDayField(session, frozen, false, deed.frozen)) return false;
        if (buyer->isVisible()) deed.buyer = typedWords(buyer);
        deed.note = typedWords(note);
        return session.run(deed).has_value();
    });
    return form.exec() == QDialog::Accepted;
}

bool askToStartProject(QWidget* parent, Session& session, Day on) {
    SmallForm form(parent, session, hiveGoods("Start a small project"));
    auto* name = form.line(hiveGoods("Name"), "project", hiveGoods("comb jars 27"));
    auto* what = form.choice(hiveGoods("What"), "what");
    addChoices<ProjectWhat>(what, {});
    auto* pieces = form.line(hiveGoods("Pieces"), "pieces", hiveGoods("12"));
    auto* kind = form.choice(hiveGoods("Sold as"), "kind");
    addGoods(kind, session.read(), GoodsWhat::Comb, hiveGoods("nobody said yet"));
    auto* hive = form.choice(hiveGoods("On hive"), "hive");
    addHives(hive, session.read(), on, hiveGoods("not chosen yet"));
    auto* by = form.line(hiveGoods("Wanted by"), "by", hiveGoods("may stay empty"));
    auto* note = form.line(hiveGoods("Note"), "note", hiveGoods("may stay empty"));
    form.say(
        hiveGoods("A starter of clean wax in each, on a strong colony in a flow, a look every "
                  "week, off when built and capped."));
    form.caution(combCaution());
    form.beginIn(name);
    form.keepDraft(QStringLiteral("wax project"));
    form.onAccept([&] {
        StartProject deed;
        deed.on = on;
        if (!readWaxName(session, name, deed.project)) return false;
        deed.what = chosen<ProjectWhat>(what);
        std::optional<Count> many;
        if (!readField(session, pieces, many)) return false;
        deed.pieces = many.value_or(Count(0));
        deed.kind = chosenId<GoodsKind>(kind);
        deed.hive = chosenId<Hive>(hive);
        if (!readDayField(session, by, true, deed.wantedBy)) return false;
        deed.note = typedWords(note);
        return session.run(deed).has_value();
    });
    return form.exec() == QDialog::Accepted;
}

bool askToWorkProject(QWidget* parent, Session& session, Day on) {
    const WaxBench bench = waxBench(session.read(), on);
    SmallForm form(parent, session, hiveGoods("A step of a small project"));
    auto* project = form.choice(hiveGoods("Project"), "project");
    if (!addProjects(project, session, bench)) return false;
    auto* work = form.choice(hiveGoods("Step"), "work");
    addChoices<ProjectWork>(work, {});
    auto* hive = form.choice(hiveGoods("On hive"), "hive");
    addHives(hive, session.read(), on, hiveGoods("as chosen before"));
    auto* good = form.line(hiveGoods("Filled and sound"), "good", hiveGoods("9"));
    auto* net = form.line(hiveGoods("Comb and honey, of all"), "net", hiveGoods("3.1"));
    auto* code = form.line(hiveGoods("Code on the label"), "code", hiveGoods("may stay empty"));
    auto* reason = form.line(hiveGoods("Why although it is held"), "reason",
                             hiveGoods("only where a hive is held"));
    auto* note = form.line(hiveGoods("Note"), "note", hiveGoods("may stay empty"));
    form.caution(combCaution());
    form.fitWith(work, [&] {
        const auto step = chosen<ProjectWork>(work).value_or(ProjectWork::Starter);
        form.showField(hive, step == ProjectWork::PutOn);
        for (QLineEdit* each : {good, net, code}) form.showField(each, step == ProjectWork::Lidded);
        form.showField(reason, step == ProjectWork::PutOn || step == ProjectWork::Lidded);
    });
    form.fitWith(project, [&] {
        for (const HiveProject& each : bench.projects)
            if (chosenId<HiveProject>(project) == each.id)
                work->setCurrentIndex(each.off ? 3 : each.putOn ? 2 : each.starter ? 1 : 0);
    });
    form.onAccept([&] {
        WorkProject deed;
        deed.on = on;
        const auto of = chosenId<HiveProject>(project);
        if (!of) return false;
        deed.project = *of;
        deed.work = chosen<ProjectWork>(work).value_or(ProjectWork::Starter);
        if (hive->isVisible()) deed.hive = chosenId<Hive>(hive);
        if (good->isVisible() &&
            (!readField(session, good, deed.good) || !readField(session, net, deed.net)))
            return false;
        if (code->isVisible()) deed.code = typedWords(code);
        if (reason->isVisible()) deed.reason = typedWords(reason);
        deed.note = typedWords(note);
        return session.run(deed).has_value();
    });
    return form.exec() == QDialog::Accepted;
}

bool askToLookAtProject(QWidget* parent, Session& session, Day on) {
    const WaxBench bench = waxBench(session.read(), on);
    SmallForm form(parent, session, hiveGoods("A look at a small project"));
    auto* project = form.choice(hiveGoods("Project"), "project");
    if (!addProjects(project, session, bench)) return false;
    auto* built = form.line(hiveGoods("Fully built"), "built", hiveGoods("5"));
    auto* filled = form.line(hiveGoods("Filled and capped"), "filled", hiveGoods("2"));
    auto* note = form.line(hiveGoods("Note"), "note", hiveGoods("may stay empty"));
    form.beginIn(built);
    form.onAccept([&] {
        LookAtProject deed;
        deed.on = on;
        const auto of = chosenId<HiveProject>(project);
        if (!of) return false;
        deed.project = *of;
        if (!readField(session, built, deed.built) || !readField(session, filled, deed.filled))
            return false;
        deed.note = typedWords(note);
        return session.run(deed).has_value();
    });
    return form.exec() == QDialog::Accepted;
}

}  // namespace combwright
