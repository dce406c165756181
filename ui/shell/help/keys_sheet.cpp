#include "ui/shell/help/keys_sheet.h"

#include <QAction>
#include <QCoreApplication>
#include <algorithm>

namespace combwright {
namespace {

QString keysWord(const char* text) { return QCoreApplication::translate("keys", text); }

/// Several keys for one thing stand on its line.
void addKeyLine(HelpGroup& group, const QString& key, const QString& what) {
    const auto same = std::find_if(group.lines.begin(), group.lines.end(),
                                   [&](const HelpLine& line) { return line.what == what; });
    if (same == group.lines.end()) {
        group.lines.push_back({key, what});
        return;
    }
    if (!same->keys.split(QStringLiteral(", ")).contains(key))
        same->keys += QStringLiteral(", ") + key;
}

}  // namespace

std::vector<HelpGroup> keysOf(const QWidget& window, const std::vector<Place*>& places) {
    std::vector<HelpGroup> groups{{keysWord("In every place"), {}}};
    for (const Place* place : places) groups.push_back({place->railWord(), {}});
    for (const QAction* action : window.findChildren<QAction*>()) {
        std::size_t at = 0;
        for (const QObject* in = action->parent(); in && at == 0; in = in->parent()) {
            const auto found = std::find(places.begin(), places.end(), in);
            if (found != places.end()) at = static_cast<std::size_t>(found - places.begin()) + 1;
        }
        for (const QKeySequence& key : action->shortcuts())
            if (!key.isEmpty())
                // The word for an icon is the name without the mark of its letter.
                addKeyLine(groups[at], key.toString(QKeySequence::NativeText), action->iconText());
    }
    for (std::size_t i = 0; i < places.size(); ++i)
        for (const KeyHint& hint : places[i]->hints())
            addKeyLine(groups[i + 1], hint.key, hint.what);
    std::erase_if(groups, [](const HelpGroup& group) { return group.lines.empty(); });
    return groups;
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
