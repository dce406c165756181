#include "ui/shell/help/keys_sheet.h"

#include <QAction>
#include <QCoreApplication>
#include <QMenu>
#include <QShortcut>
#include <algorithm>

namespace combwright {
namespace {

QString keysWord(const char* text) { return QCoreApplication::translate("keys", text); }

struct LiveKey {
    QStringList keys;
    QString what;
    const QObject* in;
};

/// Whether it works in this window, and not in a form or a window of its own that belongs to it.
bool isOfWindow(const QObject* in, const QWidget& window) {
    const QWidget* widget = nullptr;
    for (; in && !widget; in = in->parent()) widget = qobject_cast<const QWidget*>(in);
    if (const auto* menu = qobject_cast<const QMenu*>(widget)) widget = menu->parentWidget();
    return widget && widget->window() == &window;
}

std::vector<LiveKey> liveKeys(const QWidget& window) {
    std::vector<LiveKey> all;
    const auto add = [&](const QObject& of, const QList<QKeySequence>& keys, const QString& what) {
        if (!isOfWindow(of.parent(), window)) return;
        LiveKey live{{}, what, of.parent()};
        for (const QKeySequence& key : keys)
            if (!key.isEmpty()) live.keys << key.toString(QKeySequence::NativeText);
        if (!live.keys.isEmpty()) all.push_back(std::move(live));
    };
    // The word for an icon is the name without the mark of its letter.
    const auto addAction = [&](const QAction* action) {
        add(*action, action->shortcuts(), action->iconText());
    };
    // The window's own first.
    for (const QAction* action :
         window.findChildren<QAction*>(QString(), Qt::FindDirectChildrenOnly))
        addAction(action);
    for (const QAction* action : window.findChildren<QAction*>())
        if (action->parent() != &window) addAction(action);
    for (const QShortcut* shortcut : window.findChildren<QShortcut*>())
        add(*shortcut, shortcut->keys(), shortcut->whatsThis());
    return all;
}

constexpr QLatin1String keyBetween(", ");

bool hasKey(const HelpGroup& group, const QString& key) {
    return std::any_of(group.lines.begin(), group.lines.end(), [&](const HelpLine& line) {
        return line.keys.split(keyBetween).contains(key);
    });
}

/// Several keys for one thing stand on its line. A key has one line: the first that tells of it.
void addKeyLine(HelpGroup& group, const QString& key, const QString& what) {
    if (hasKey(group, key)) return;
    const auto same = std::find_if(group.lines.begin(), group.lines.end(),
                                   [&](const HelpLine& line) { return line.what == what; });
    if (same == group.lines.end())
        group.lines.push_back({key, what});
    else
        same->keys += keyBetween + key;
}

}  // namespace

std::vector<HelpGroup> keysOf(const QWidget& window, const std::vector<Place*>& places) {
    std::vector<HelpGroup> groups{{keysWord("In every place"), {}}};
    for (const Place* place : places) groups.push_back({place->railWord(), {}});
    const std::vector<LiveKey> live = liveKeys(window);
    const auto groupOf = [&](const QObject* in) {
        for (; in; in = in->parent()) {
            const auto found = std::find(places.begin(), places.end(), in);
            if (found != places.end()) return static_cast<std::size_t>(found - places.begin()) + 1;
        }
        return std::size_t{0};
    };
    const auto addLive = [&](bool ofWindow) {
        for (const LiveKey& each : live) {
            const std::size_t at = groupOf(each.in);
            if ((at == 0) != ofWindow) continue;
            for (const QString& key : each.keys)
                if (at == 0 || !hasKey(groups.front(), key)) addKeyLine(groups[at], key, each.what);
        }
    };
    addLive(true);
    // What a key does where one is now says more than what it does in general.
    for (std::size_t i = 0; i < places.size(); ++i)
        for (const KeyHint& hint : places[i]->hints())
            if (!hasKey(groups.front(), hint.key)) addKeyLine(groups[i + 1], hint.key, hint.what);
    addLive(false);
    std::erase_if(groups, [](const HelpGroup& group) { return group.lines.empty(); });
    return groups;
}

HelpGroup keysEverywhere(const QWidget& window) {
    HelpGroup group{keysWord("In every place"), {}};
    for (const QAction* action : window.actions())
        if (!action->whatsThis().isEmpty())
            group.lines.push_back(
                {action->shortcut().toString(QKeySequence::NativeText), action->whatsThis()});
    return group;
}

Page keysPage(const std::vector<HelpGroup>& groups) {
    Page page;
    page.title = keysWord("Keys");
    for (const HelpGroup& group : groups) {
        TableBlock table;
        table.title = group.head;
        table.columns = {{keysWord("key"), 1, false}, {keysWord("what it does"), 3, false}};
        table.rowMm = 5;
        for (const HelpLine& line : group.lines) {
            Cell key;
            key.text = line.keys;
            key.strong = true;
            Cell what;
            what.text = line.what;
            TableRow row;
            row.cells = {std::move(key), std::move(what)};
            table.rows.push_back(std::move(row));
        }
        page.blocks.emplace_back(std::move(table));
    }
    TextBlock about;
    about.small = true;
    about.text = keysWord(
        "The keys of a place follow what one is at there; F1 tells more of each, and Ctrl+E says "
        "how a figure came about.");
    page.blocks.emplace_back(std::move(about));
    return page;
}

}  // namespace combwright
