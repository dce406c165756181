#include "ui/shell/copies/time_ways.h"

#include <QDir>
#include <QFileDialog>
#include <QFileInfo>
#include <QInputDialog>
#include <QScreen>
#include <algorithm>

#include "core/actions/copies/adopt.h"
#include "core/actions/copies/merge_copy.h"
#include "core/places/copies/copy_words.h"
#include "core/places/copies/differences.h"
#include "core/places/copies/history_steps.h"
#include "core/places/pages/copies/copy_pages.h"
#include "core/places/pages/copies/time_pages.h"
#include "core/storage/what_if.h"
#include "core/words/words.h"
#include "ui/print/print_dialog.h"
#include "ui/shell/copies/history_dialog.h"
#include "ui/shell/copies/merge_dialog.h"
#include "ui/shell/copies/two_days_dialog.h"
#include "ui/shell/copies/what_if_dialog.h"
#include "ui/shell/main_window.h"

namespace combwright {

TimeWays::TimeWays(Session& session, QWidget& window)
    : QObject(&window), m_session(session), m_window(window) {}

void TimeWays::showHistory() {
    if (!m_session.hasSeason()) return;
    std::vector<HistoryStep> steps;
    if (!m_session.reading(
            [&] { steps = historyInWords(m_session.read(), HistoryDialog::mostSteps); }))
        return;
    HistoryDialog dialog(m_session.look(), steps, m_session.readingOnly().isEmpty(), &m_window);
    dialog.exec();
    const auto at = dialog.chosenStep();
    const Day day = dialog.chosenDay().value_or(m_session.clock().today());
    switch (dialog.wish()) {
        case HistoryDialog::Wish::None:
            break;
        case HistoryDialog::Wish::AsItStood:
            if (at) showAsItStood(*at, day);
            break;
        case HistoryDialog::Wish::Differences:
            if (at) showDifferencesSince(*at, day);
            break;
        case HistoryDialog::Wish::TwoDays:
            compareDays(day);
            break;
        case HistoryDialog::Wish::Print:
            printHistory();
            break;
        case HistoryDialog::Wish::PlanWhatIf:
            planWhatIf();
            break;
        case HistoryDialog::Wish::SettleWhatIf:
            settleWhatIf();
            break;
        case HistoryDialog::Wish::TakeInCopy:
            takeInCopy();
            break;
    }
}

MainWindow* TimeWays::openBeside(std::unique_ptr<Session> session) {
    if (!session) return nullptr;
    auto* window = new MainWindow(*session);
    window->setAttribute(Qt::WA_DeleteOnClose);
    Session* held = session.release();
    // The window reads from its session to its last moment.
    connect(window, &QObject::destroyed, held, &QObject::deleteLater);
    window->resize(m_window.size());
    window->standBeside();
    // A little aside, and all of it on the screen.
    const QRect screen = m_window.screen()->availableGeometry();
    const int aside = m_session.look().space(32);
    const QPoint at = m_window.pos() + QPoint(aside, aside);
    window->move(std::clamp(at.x(), screen.left(),
                            std::max(screen.left(), screen.right() + 1 - window->width())),
                 std::clamp(at.y(), screen.top(),
                            std::max(screen.top(), screen.bottom() + 1 - window->height())));
    window->show();
    window->activateWindow();
    m_beside.push_back({window, held});
    return window;
}

MainWindow* TimeWays::showAsItStood(std::int64_t step, Day day) {
    return openBeside(m_session.asItStood(step, day));
}

void TimeWays::closeBeside() {
    for (const Beside& each : std::exchange(m_beside, {}))
        if (each.window) each.window->close();
}

Session* TimeWays::besideOf(const QString& path) const {
    for (const Beside& each : m_beside)
        if (each.window && each.session && each.session->hasSeason() &&
            QFileInfo(each.session->path()) == QFileInfo(path))
            return each.session;
    return nullptr;
}

void TimeWays::showDifferencesSince(std::int64_t step, Day day) {
    std::optional<Page> page;
    const bool done = m_session.doing([&](Season& season) -> Result<void> {
        const auto aside = asItStoodAside(season.read().database(), step, day);
        if (!aside) return aside.error();
        const Season then = Season::open(aside->path, m_session.clock(), Database::Mode::ReadOnly);
        const RowSet touched = rowsTouched(season.read(), step, newestStep(season.read()));
        page =
            differencesPage(season.read(), differencesBetween(then.read(), season.read(), touched),
                            dayText(day), tr("today"));
        return {};
    });
    if (done && page) printWithPreview(&m_window, *page, m_session.look());
}

void TimeWays::compareDays(Day from) {
    const auto between = [this](Day first, Day second) {
        std::optional<Page> page;
        m_session.doing([&](Season& season) -> Result<void> {
            const auto differences =
                differencesBetweenDays(season.read(), first, second, m_session.clock());
            if (!differences) return differences.error();
            page = differencesPage(season.read(), *differences, dayText(first), dayText(second));
            return {};
        });
        return page;
    };
    TwoDaysDialog dialog(m_session.look(), from, m_session.clock().today(), between, &m_window);
    dialog.exec();
}

void TimeWays::printHistory() {
    std::optional<Page> page;
    m_session.reading([&] {
        page = historyPage(m_session.read(),
                           historyInWords(m_session.read(), HistoryDialog::mostSteps));
    });
    if (page) printWithPreview(&m_window, *page, m_session.look());
}

void TimeWays::planWhatIf() {
    bool given = false;
    const QString name = QInputDialog::getText(
        &m_window, tr("Plan a what-if"),
        tr("A marked copy to plan in; the season stays as it is. What shall it be called?"),
        QLineEdit::Normal, {}, &given);
    if (!given) return;
    const QFileInfo file(m_session.path());
    const QString suggested =
        QDir(m_session.isSample() ? QDir::homePath() : file.absolutePath())
            .filePath(file.completeBaseName() + QStringLiteral(".what-if.combwright"));
    QString to = QFileDialog::getSaveFileName(&m_window, tr("Where shall the what-if be?"),
                                              suggested, tr("Season files (*.combwright)"), nullptr,
                                              QFileDialog::DontConfirmOverwrite);
    if (to.isEmpty()) return;
    if (!to.endsWith(QLatin1String(".combwright"))) to += QStringLiteral(".combwright");
    if (m_session.beginWhatIf(to, name)) openBeside(m_session.beside(to));
}

QString TimeWays::askCopy(const QString& title) const {
    return QFileDialog::getOpenFileName(&m_window, title,
                                        QFileInfo(m_session.path()).absolutePath(),
                                        tr("Season files (*.combwright);;All files (*)"));
}

bool TimeWays::isThisSeason(const QString& path) {
    if (QFileInfo(path) != QFileInfo(m_session.path())) return false;
    m_session.tell(tr("That is the season that is open here. Choose a copy of it."), true);
    return true;
}

void TimeWays::settleWhatIf() {
    const QString path = askCopy(tr("Which what-if?"));
    if (!path.isEmpty()) settleWhatIf(path);
}

void TimeWays::settleWhatIf(const QString& path) {
    if (isThisSeason(path)) return;
    // One that is open beside is read through its own connection.
    Session* open = besideOf(path);
    std::optional<Season> opened;
    Adopted tried;
    std::optional<Differences> differences;
    QStringList conflicts;
    QString title;
    const bool read = m_session.doing([&](Season& season) -> Result<void> {
        if (!open)
            opened.emplace(
                Season::open(path.toStdString(), m_session.clock(), Database::Mode::ReadOnly));
        const Season& whatIf = open ? open->season() : *opened;
        auto can = adoptWhatIf(season, whatIf, AdoptHow::Try);
        if (!can) return can.error();
        tried = *std::move(can);
        differences = differencesOfCopies(season.read(), whatIf.read());
        title = combwright::copyTitle(*whatIf.copyMark());
        for (const AdoptConflict& each : tried.conflicts)
            conflicts << conflictText(season.read(), each);
        return {};
    });
    if (!read || !differences) return;
    const QString done = QFileInfo(m_session.path()).fileName();
    const Page page = differencesPage(m_session.read(), *differences, done, title);
    WhatIfDialog dialog(m_session.look(), title, page, conflicts, m_session.readingOnly().isEmpty(),
                        &m_window);
    dialog.exec();
    if (dialog.wish() == WhatIfDialog::Wish::Adopt) {
        std::size_t steps = 0;
        const bool adopted = m_session.doing([&](Season& season) -> Result<void> {
            auto kept = adoptWhatIf(season, open ? open->season() : *opened, AdoptHow::Keep);
            if (!kept) return kept.error();
            steps = kept->steps.size();
            return {};
        });
        if (adopted) m_session.tell(tr("Adopted, in %1 steps; each can be taken back.").arg(steps));
    }
    if (dialog.wish() == WhatIfDialog::Wish::Drop) {
        opened.reset();
        for (const Beside& each : m_beside)
            if (open && each.session == open && each.window) {
                open->leaveNoTrace();
                open->close();
                each.window->close();
            }
        if (m_session.doing([&](Season&) { return dropWhatIf(path.toStdString()); }))
            m_session.tell(tr("The what-if is dropped; the season was not touched."));
    }
}

void TimeWays::takeInCopy() {
    const QString path = askCopy(tr("Which copy shall be taken in?"));
    if (!path.isEmpty()) takeInCopy(path);
}

void TimeWays::takeInCopy(const QString& path) {
    if (isThisSeason(path)) return;
    std::optional<CopiesToMerge> copies;
    const bool read = m_session.doing([&](Season& season) -> Result<void> {
        auto found = CopiesToMerge::of(season.read(), path.toStdString(), m_session.clock());
        if (!found) return found.error();
        copies.emplace(*std::move(found));
        return {};
    });
    if (!read) return;
    MergeDialog dialog(
        m_session.look(),
        [&](const MergeAnswers& answers) { return copies->plan(m_session.read(), answers); },
        [&](const MergePlan& plan) { return mergePage(m_session.read(), plan); }, &m_window);
    if (dialog.exec() != QDialog::Accepted) return;
    std::int64_t step = 0;
    const bool taken = m_session.doing([&](Season& season) -> Result<void> {
        const auto kept = takeIn(season, dialog.plan(), m_session.clock().today());
        if (!kept) return kept.error();
        step = *kept;
        return {};
    });
    if (taken)
        m_session.tell(tr("%1 is taken in as step %2; Ctrl+Z takes it back.")
                           .arg(QFileInfo(path).fileName())
                           .arg(step));
}

}  // namespace combwright
