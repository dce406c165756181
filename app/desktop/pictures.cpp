#include "app/desktop/pictures.h"

#include <QDir>
#include <QLineEdit>
#include <QPainter>
#include <QRegularExpression>
#include <QTextStream>

#include "ui/honey_room/honey_room_place.h"
#include "ui/look/style.h"
#include "ui/season_book/season_book_place.h"
#include "ui/shell/find/find_box.h"
#include "ui/shell/find/finder.h"
#include "ui/yard/yard_place.h"

namespace combwright::desktop {
namespace {

bool grab(MainWindow& window, const QString& path) {
    // Each round lets one more of the nested layouts settle.
    for (int n = 0; n < 6; ++n) QApplication::processEvents();
    const bool written = window.grab().save(path);
    QTextStream(written ? stdout : stderr) << (written ? "" : "could not write ") << path << '\n';
    return written;
}

/// The box that finds anything lies over the window as one of its own: both in one picture.
bool grabFinding(MainWindow& window, const QString& typed, const QString& path) {
    Finder& finder = window.finder();
    finder.open();
    finder.keeper().settle();
    FindBox* box = finder.box();
    if (!box) return false;
    if (auto* field = box->findChild<QLineEdit*>()) field->setText(typed);
    QApplication::processEvents();
    QPixmap both = window.grab();
    QPainter(&both).drawPixmap(window.mapFromGlobal(box->pos()), box->grab());
    box->close();
    return both.save(path);
}

QString fileName(const Place& place) {
    // The same in every language: scripts look for it. "combwright::HoneyRoomPlace" is honey-room.
    QString name = QString::fromLatin1(place.metaObject()->className());
    name = name.mid(name.lastIndexOf(QLatin1Char(':')) + 1).chopped(5);
    static const QRegularExpression within(QStringLiteral("(?<=[a-z])(?=[A-Z])"));
    return name.replace(within, QStringLiteral("-")).toLower();
}

}  // namespace

int writePictures(QApplication& application, MainWindow& window, Session& session,
                  const QString& folder) {
    const QDir directory(folder);
    if (!directory.mkpath(QStringLiteral("."))) {
        QTextStream(stderr) << "The folder " << folder << " cannot be made.\n";
        return 3;
    }
    struct Variant {
        const char* suffix;
        bool dark;
        double factor;
    };
    constexpr Variant variants[] = {{"", false, 1.0}, {"-dark", true, 1.0}, {"-200", false, 2.0}};
    bool all = true;
    window.show();
    for (const Variant& variant : variants) {
        session.setLook(applyLook(application, variant.dark, variant.factor));
        window.resize(1280, 800);
        for (int i = 0; i < static_cast<int>(window.places().size()); ++i) {
            Place& place = *window.places()[static_cast<std::size_t>(i)];
            window.goTo(i);
            place.settle();
            const QString name = fileName(place) + QLatin1String(variant.suffix);
            all = grab(window, directory.filePath(name + QStringLiteral(".png"))) && all;
            if (auto* yard = qobject_cast<YardPlace*>(&place)) {
                yard->openSheet();
                all = grab(window, directory.filePath(QStringLiteral("yard-sheet%1.png")
                                                          .arg(QLatin1String(variant.suffix)))) &&
                      all;
                yard->closeSheet();
                for (const auto& [key, page] :
                     {std::pair{Qt::Key_V, "health"}, std::pair{Qt::Key_F, "stores"}}) {
                    yard->openPage(key);
                    all =
                        grab(window, directory.filePath(QStringLiteral("yard-%1%2.png")
                                                            .arg(QLatin1String(page),
                                                                 QLatin1String(variant.suffix)))) &&
                        all;
                }
                yard->openPage(Qt::Key_Escape);
                for (const auto& [typed, named] :
                     {std::pair{"", "find-empty"}, std::pair{"h1", "find"},
                      std::pair{"9 jun", "find-day"}})
                    all =
                        grabFinding(window, QLatin1String(typed),
                                    directory.filePath(QStringLiteral("%1%2.png")
                                                           .arg(QLatin1String(named),
                                                                QLatin1String(variant.suffix)))) &&
                        all;
            }
            if (auto* book = qobject_cast<SeasonBookPlace*>(&place)) {
                for (const auto& [page, word] :
                     {std::pair{SeasonBookPlace::BookPage::Colonies, "colonies"},
                      std::pair{SeasonBookPlace::BookPage::Goods, "goods"},
                      std::pair{SeasonBookPlace::BookPage::Years, "years"}}) {
                    book->openPage(page);
                    all =
                        grab(window, directory.filePath(QStringLiteral("season-book-%1%2.png")
                                                            .arg(QLatin1String(word),
                                                                 QLatin1String(variant.suffix)))) &&
                        all;
                }
                book->openPage(SeasonBookPlace::BookPage::Harvest);
            }
            if (auto* room = qobject_cast<HoneyRoomPlace*>(&place)) {
                for (const auto& [opens, word] : room->pages()) {
                    if (opens == GoTo::Page::Board) continue;
                    room->openPage(opens);
                    all =
                        grab(window, directory.filePath(QStringLiteral("honey-room-%1%2.png")
                                                            .arg(word.toLower(),
                                                                 QLatin1String(variant.suffix)))) &&
                        all;
                }
                room->openPage(GoTo::Page::Board);
            }
        }
    }
    // What the window shows before there is a season.
    Session none(session.clock());
    none.leaveNoTrace();
    MainWindow start(none);
    start.show();
    for (const Variant& variant : variants) {
        none.setLook(applyLook(application, variant.dark, variant.factor));
        start.resize(1280, 800);
        all = grab(start, directory.filePath(
                              QStringLiteral("start%1.png").arg(QLatin1String(variant.suffix)))) &&
              all;
    }
    return all ? 0 : 3;
}

}  // namespace combwright::desktop
