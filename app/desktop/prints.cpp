#include "app/desktop/prints.h"

#include <QTextStream>

#include "ui/print/page_painter.h"

namespace combwright::desktop {

int printSheet(MainWindow& window, const QString& name, const QString& to, const QPageSize& paper,
               Session& session) {
    QTextStream err(stderr);
    if (!session.hasSeason() && name != QLatin1String("list")) {
        err << "--print needs a season file.\n";
        return 2;
    }
    for (Place* place : window.places()) {
        if (session.hasSeason()) place->reload();
        place->settle();
        for (const PrintSheet& sheet : place->sheets()) {
            if (name == QLatin1String("list")) {
                QTextStream(stdout) << sheet.id << "  " << sheet.title << '\n';
                continue;
            }
            if (sheet.id != name) continue;
            if (to.isEmpty()) {
                err << "--print " << name << " needs --to OUT.pdf.\n";
                return 2;
            }
            const QString wrong = writePdf(sheet.page(), to, session.look().base, paper);
            if (!wrong.isEmpty()) {
                err << to << " cannot be written: " << wrong << '\n';
                return 3;
            }
            return 0;
        }
    }
    if (name == QLatin1String("list")) return 0;
    err << "There is no sheet " << name << "; --print list lists them.\n";
    return 2;
}

}  // namespace combwright::desktop
