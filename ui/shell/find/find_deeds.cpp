#include "ui/shell/find/find_deeds.h"

#include <QAbstractButton>
#include <QAction>
#include <QDialog>
#include <QMenu>
#include <QPushButton>
#include <QRegularExpression>
#include <QTextBlock>
#include <QTextDocument>
#include <QTimer>
#include <algorithm>
#include <iterator>

#include "core/storage/find/find_cache.h"
#include "ui/honey_room/honey_room_place.h"
#include "ui/yard/yard_place.h"

namespace combwright {
namespace {

/// A button's words without its mnemonic, and the key that stands behind them: "Fill  F".
struct ButtonWords {
    QString title;
    QString key;
};
ButtonWords wordsOf(QString text) {
    static const QRegularExpression mnemonic(QStringLiteral("&(?=[^& ])"));
    text.remove(mnemonic);
    static const QRegularExpression withKey(QStringLiteral("^(.*?)\\s{2,}(\\S{1,12})$"));
    const auto match = withKey.match(text.trimmed());
    if (match.hasMatch()) return {match.captured(1).simplified(), match.captured(2)};
    return {text.simplified(), {}};
}

bool beginsWith(const std::vector<std::string>& words, const std::string& beginning) {
    return std::any_of(words.begin(), words.end(),
                       [&](const std::string& word) { return word.starts_with(beginning); });
}

/// What of a help text stands under which head.
struct HelpPart {
    QString head;
    QString text;
};
std::vector<HelpPart> helpParts(const QString& help) {
    QTextDocument document;
    if (Qt::mightBeRichText(help))
        document.setHtml(help);
    else
        document.setPlainText(help);
    std::vector<HelpPart> parts;
    QString head;
    for (QTextBlock block = document.begin(); block.isValid(); block = block.next()) {
        const QString text = block.text().simplified();
        if (text.isEmpty()) continue;
        if (block.blockFormat().headingLevel() > 0)
            head = text;
        else
            parts.push_back({head, text});
    }
    return parts;
}

std::vector<PlacePage> pagesOf(const Place& place) {
    if (const auto* yard = qobject_cast<const YardPlace*>(&place)) return yard->pagesToGo();
    if (const auto* room = qobject_cast<const HoneyRoomPlace*>(&place)) return room->pagesToGo();
    return {};
}

/// To the place, and the page of it on which the widget stands.
void openPageOf(MainWindow& window, int index, const QWidget* widget) {
    const Place& place = *window.places()[static_cast<std::size_t>(index)];
    for (const PlacePage& page : pagesOf(place))
        if (page.shows && page.shows->isAncestorOf(widget)) return window.goFor(page.where);
    window.goTo(index);
}

/// Goes to the button. What only opens a form is pressed, anything else waits for another Enter
/// there: what was found is seen before it is done.
void goToButton(MainWindow& window, Session& session, int index, QAbstractButton& button,
                const QString& title) {
    openPageOf(window, index, &button);
    const QString place = window.places()[static_cast<std::size_t>(index)]->railWord();
    if (!button.isVisibleTo(&window) || !button.isEnabled())
        return session.tell(MainWindow::tr("%1: not now; it is done in %2.").arg(title, place));
    if (button.text().endsWith(QStringLiteral("…"))) return button.click();
    button.setFocus(Qt::TabFocusReason);
    session.tell(MainWindow::tr("%1: Enter does it.").arg(title));
}

QString firstSentence(const QString& text) {
    static const QRegularExpression end(QStringLiteral("[.:;] "));
    const qsizetype at = text.indexOf(end);
    return at < 0 ? text : text.left(at);
}

}  // namespace

FindDeeds::FindDeeds(MainWindow& window, Session& session)
    : m_window(&window), m_session(&session) {
    gatherPlaces();
    gatherWindow();
    for (int i = 0; i < static_cast<int>(window.places().size()); ++i) {
        gatherPlace(i);
        gatherHelp(i);
    }
}

void FindDeeds::add(Offers& to, FindLine line, const QString& other) const {
    if (line.title.isEmpty()) return;
    const bool there = std::any_of(to.begin(), to.end(), [&](const Offer& each) {
        return each.line.title == line.title && each.line.context == line.context;
    });
    if (there) return;
    auto titleWords = findWords(line.title.toStdString());
    auto otherWords = findWords((other.isEmpty() ? line.context : other).toStdString(), 400);
    to.push_back({std::move(line), std::move(titleWords), std::move(otherWords)});
}

FindLine FindDeeds::place(int index) const {
    const Place& place = *m_window->places()[static_cast<std::size_t>(index)];
    MainWindow* window = m_window;
    return {place.railWord(), MainWindow::tr("a place of the window"),
            MainWindow::tr("Ctrl+%1").arg(index + 1), [window, index] { window->goTo(index); }};
}

void FindDeeds::gatherPlaces() {
    MainWindow* window = m_window;
    for (int i = 0; i < static_cast<int>(window->places().size()); ++i) {
        add(m_places, place(i));
        const Place& each = *window->places()[static_cast<std::size_t>(i)];
        for (const PlacePage& page : pagesOf(each))
            add(m_places, {page.word,
                           MainWindow::tr("a page of %1").arg(each.railWord()),
                           {},
                           [window, where = page.where] { window->goFor(where); }});
    }
}

void FindDeeds::gatherWindow() {
    for (QAction* action : m_window->actions()) {
        const bool isPlace =
            std::any_of(m_window->places().begin(), m_window->places().end(),
                        [&](const Place* place) { return place->railWord() == action->text(); });
        if (isPlace || !action->isEnabled()) continue;
        add(m_deeds,
            {wordsOf(action->text()).title, MainWindow::tr("anywhere"),
             action->shortcut().toString(QKeySequence::NativeText), [held = QPointer(action)] {
                 if (held) held->trigger();
             }});
    }
}

void FindDeeds::gatherPlace(int index) {
    // Held by the lines, which may outlive this.
    MainWindow* window = m_window;
    Session* session = m_session;
    const Place& place = *window->places()[static_cast<std::size_t>(index)];
    const QString where = place.railWord();
    for (QAction* action : place.findChildren<QAction*>()) {
        // What opens a menu is no deed, nor what a field brings along.
        const ButtonWords words = wordsOf(action->text());
        if (action->isSeparator() || action->menu() || words.title.isEmpty()) continue;
        const QString key =
            words.key.isEmpty() ? action->shortcut().toString(QKeySequence::NativeText) : words.key;
        add(m_deeds, {words.title, where, key, [window, index, held = QPointer(action)] {
                          if (!held) return;
                          auto* of = qobject_cast<QWidget*>(held->parent());
                          if (auto* menu = qobject_cast<QMenu*>(of)) of = menu->parentWidget();
                          if (of)
                              openPageOf(*window, index, of);
                          else
                              window->goTo(index);
                          held->trigger();
                      }});
    }
    for (auto* button : place.findChildren<QPushButton*>()) {
        if (button->menu() || button->window() != window) continue;
        const ButtonWords words = wordsOf(button->text());
        add(m_deeds, {words.title, where, words.key,
                      [window, session, index, held = QPointer(button), title = words.title] {
                          if (held) goToButton(*window, *session, index, *held, title);
                      }});
    }
    for (const KeyHint& hint : place.hints()) {
        const QString said = MainWindow::tr("%1: %2").arg(hint.key, hint.what);
        add(m_deeds, {hint.what, where, hint.key, [window, session, index, said] {
                          window->goTo(index);
                          session->tell(said);
                      }});
    }
}

void FindDeeds::gatherHelp(int index) {
    MainWindow* window = m_window;
    const Place& place = *window->places()[static_cast<std::size_t>(index)];
    const auto open = [window, index] {
        window->goTo(index);
        for (QAction* action : window->actions())
            if (action->shortcut() == QKeySequence(Qt::Key_F1)) return action->trigger();
    };
    for (const HelpPart& part : helpParts(place.help())) {
        const QString title = part.head.isEmpty() ? firstSentence(part.text) : part.head;
        // A head stands over several parts: the one that is meant follows it.
        const QString context = part.head.isEmpty()
                                    ? place.railWord()
                                    : MainWindow::tr("%1 · %2").arg(place.railWord(), part.text);
        add(m_help, {title, context, QStringLiteral("F1"), open}, part.text);
    }
}

FindLines FindDeeds::matching(const Offers& offers, const std::vector<std::string>& words,
                              std::size_t most) {
    FindLines first;
    FindLines second;
    for (const Offer& each : offers) {
        const auto in = [&](const std::string& word) { return beginsWith(each.titleWords, word); };
        if (std::all_of(words.begin(), words.end(), in))
            first.push_back(each.line);
        else if (std::all_of(words.begin(), words.end(), [&](const std::string& word) {
                     return in(word) || beginsWith(each.otherWords, word);
                 }))
            second.push_back(each.line);
    }
    std::move(second.begin(), second.end(), std::back_inserter(first));
    if (first.size() > most) first.resize(most);
    return first;
}

FindLines FindDeeds::places(const std::vector<std::string>& words, std::size_t most) const {
    return matching(m_places, words, most);
}
FindLines FindDeeds::deeds(const std::vector<std::string>& words, std::size_t most) const {
    return matching(m_deeds, words, most);
}
FindLines FindDeeds::help(const std::vector<std::string>& words, std::size_t most) const {
    return matching(m_help, words, most);
}

}  // namespace combwright
