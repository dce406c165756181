#include "app/desktop/prints.h"

#include <QStringList>
#include <QTextStream>
#include <functional>

#include "ui/print/page_painter.h"
#include "ui/shell/help/keys_sheet.h"
#include "ui/shell/season_binder.h"

namespace combwright::desktop {
namespace {

/// Sheets a place only offers when there is something to print: listed all the same.
struct SheetNeeding {
    const char* id;
    const char* title;
    const char* needs;
};
constexpr SheetNeeding sheetsNeeding[] = {{"yard-sheet", "Yard sheet", "a yard"},
                                          {"kit-list", "What to take along", "a yard"},
                                          {"feeding-sheet", "Feeding sheet", "a yard"},
                                          {"run-balance", "Balance of the run", "a run"}};

}  // namespace

int printSheet(MainWindow& window, const QString& name, const QString& to, const QPageSize& paper,
               double zoom, Session& session) {
    QTextStream err(stderr);
    if (!session.hasSeason() && name != QLatin1String("list")) {
        err << "--print needs a season file.\n";
        return 2;
    }
    QStringList listed;
    const auto write = [&](const std::function<Page()>& made) {
        if (to.isEmpty()) {
            err << "--print " << name << " needs --to OUT.pdf.\n";
            return 2;
        }
        Page page;
        if (!session.reading([&] { page = made(); })) {
            err << session.unreadable() << '\n';
            return 3;
        }
        const QString wrong = writePdf(page, to, session.look().base, paper, zoom);
        if (wrong.isEmpty()) return 0;
        err << to << " cannot be written: " << wrong << '\n';
        return 3;
    };
    for (Place* place : window.places()) {
        if (session.hasSeason()) place->reload();
        place->settle();
        // A sheet of half a file is worse than none.
        if (!session.unreadable().isEmpty()) {
            err << session.unreadable() << '\n';
            return 3;
        }
        for (const PrintSheet& sheet : place->sheets()) {
            if (name == QLatin1String("list")) {
                QTextStream(stdout) << sheet.id << "  " << sheet.title << '\n';
                listed << sheet.id;
                continue;
            }
            if (sheet.id != name) continue;
            return write(sheet.page);
        }
    }
    if (name == QLatin1String("binder"))
        return write([&] { return seasonBinder(session, window.places()); });
    if (name == QLatin1String("keys"))
        return write([&] { return keysPage(keysOf(window, window.places())); });
    for (const auto& [id, title, needs] : sheetsNeeding) {
        if (name == QLatin1String("list") && !listed.contains(QLatin1String(id)))
            QTextStream(stdout) << id << "  " << title << " (needs " << needs << ")\n";
        if (name != QLatin1String(id)) continue;
        err << name << " needs " << needs << ", and the season has none.\n";
        return 2;
    }
    if (name == QLatin1String("list")) {
        QTextStream(stdout) << "binder  Season binder: the sheets of the year in one file\n"
                            << "keys  Every key of the window and its places\n";
        return 0;
    }
    err << "There is no sheet " << name << "; --print list lists them.\n";
    return 2;
}

}  // namespace combwright::desktop
