#include "core/places/find/find.h"

#include <QCoreApplication>
#include <QStringList>
#include <algorithm>
#include <iterator>
#include <map>

#include "core/words/day_words.h"
#include "core/words/words.h"

namespace combwright {
namespace {

/// One line beside others: what is longer is cut.
constexpr qsizetype longestContext = 160;

QString findText(const char* text) { return QCoreApplication::translate("find", text); }

QString kindTitle(FindKind kind) {
    switch (kind) {
        case FindKind::Hive:
            return findText("Yards and hives");
        case FindKind::Queen:
            return findText("Queens");
        case FindKind::Box:
            return findText("Boxes and frames");
        case FindKind::Visit:
            return findText("Visits");
        case FindKind::Health:
            return findText("Health");
        case FindKind::Honey:
            return findText("Honey");
        case FindKind::Goods:
            return findText("Jars and sales");
        case FindKind::Wax:
            return findText("Wax and candles");
        case FindKind::Storeroom:
            return findText("Storeroom");
        case FindKind::Note:
            return findText("Notes");
    }
    return {};
}

QString marksListed(const std::vector<std::string>& marks) {
    QStringList all;
    for (const std::string& mark : marks)
        if (const QString text = fromUtf8(mark).simplified(); !all.contains(text)) all << text;
    return all.join(QStringLiteral(", "));
}

/// Its choices that were asked for: without them nobody sees why it was found.
QStringList sortsAskedFor(const FoundRow& row, const std::vector<std::string>& asked) {
    QStringList all;
    for (const std::string& sort : row.sorts) {
        const auto words = findWords(sort);
        const bool meant = std::any_of(asked.begin(), asked.end(), [&](const std::string& each) {
            return std::any_of(words.begin(), words.end(),
                               [&](const std::string& of) { return of.starts_with(each); });
        });
        if (!meant) continue;
        const QString choice = choiceText(sort);
        all << (choice == fromUtf8(sort) ? word(sort) : choice);
    }
    return all;
}

FindHit hitOf(const FoundRow& row, const std::vector<std::string>& asked) {
    FindHit hit{row.kind, row.table, row.row, row.on, {}, {}, row.by == FoundRow::By::Mark};
    const QString what = word(row.table);
    const QString about = marksListed(row.about);
    QStringList context;
    hit.title = fromUtf8(row.mark).simplified();
    if (!hit.title.isEmpty()) {
        context << what << about;
    } else if (!about.isEmpty()) {
        hit.title = about;
        context << what;
    } else {
        hit.title = what;
    }
    context += sortsAskedFor(row, asked);
    if (row.on) context << dayText(*row.on);
    for (const std::string& said : row.said) context << fromUtf8(said).simplified();
    context.removeAll(QString());
    hit.context = context.join(QStringLiteral(" · "));
    if (hit.context.size() > longestContext)
        hit.context = hit.context.left(longestContext - 1) + QStringLiteral("…");
    return hit;
}

std::vector<FindGroup> groupsOf(const std::vector<FoundKind>& found,
                                const std::vector<std::string>& asked = {}) {
    std::vector<FindGroup> groups;
    for (const FoundKind& kind : found) {
        FindGroup group{kind.kind, kindTitle(kind.kind), {}, kind.more};
        for (const FoundRow& row : kind.found) group.hits.push_back(hitOf(row, asked));
        groups.push_back(std::move(group));
    }
    return groups;
}

/// The word of a record as it is shown, to the word it is kept under: "filling" is a bottling.
const std::map<std::string, std::string>& shownSorts() {
    static const std::map<std::string, std::string> all = [] {
        std::map<std::string, std::string> sorts;
        for (const FindTable& each : findTables()) {
            const auto shown = findWords(word(each.table).toStdString());
            std::string kept(each.table);
            std::replace(kept.begin(), kept.end(), '_', ' ');
            if (shown.size() == 1 && shown.front() != kept) sorts.emplace(shown.front(), kept);
        }
        return sorts;
    }();
    return all;
}

/// What was typed with the words shown put as they are kept; empty where that is the same.
std::string typedAsKept(const QString& typed) {
    std::string kept;
    bool another = false;
    for (const std::string& each : findWords(typed.toStdString())) {
        const auto sort = shownSorts().find(each);
        another = another || sort != shownSorts().end();
        kept += (kept.empty() ? "" : " ") + (sort == shownSorts().end() ? each : sort->second);
    }
    return another ? kept : std::string();
}

/// Adds what is not there yet, behind.
void addFound(std::vector<FoundKind>& to, std::vector<FoundKind> others, std::size_t most) {
    for (FoundKind& other : others) {
        const auto same = std::find_if(
            to.begin(), to.end(), [&](const FoundKind& each) { return each.kind == other.kind; });
        if (same == to.end()) {
            to.push_back(std::move(other));
            continue;
        }
        same->more = same->more || other.more;
        for (FoundRow& row : other.found) {
            const bool there =
                std::any_of(same->found.begin(), same->found.end(), [&](const FoundRow& each) {
                    return each.table == row.table && each.row == row.row;
                });
            if (there) continue;
            if (same->found.size() < most)
                same->found.push_back(std::move(row));
            else
                same->more = true;
        }
    }
    std::sort(to.begin(), to.end(),
              [](const FoundKind& a, const FoundKind& b) { return a.kind < b.kind; });
}

}  // namespace

std::vector<FindGroup> findRecords(FindCache& cache, const QString& typed, std::size_t mostOfKind) {
    std::vector<FoundKind> found = cache.ask(typed.toStdString(), mostOfKind);
    if (const std::string kept = typedAsKept(typed); !kept.empty())
        addFound(found, cache.ask(kept, mostOfKind), mostOfKind);
    std::vector<FindGroup> groups = groupsOf(found, findWords(typed.toStdString()));
    std::stable_partition(groups.begin(), groups.end(), [](const FindGroup& group) {
        return std::any_of(group.hits.begin(), group.hits.end(),
                           [](const FindHit& hit) { return hit.byMark; });
    });
    return groups;
}

namespace {

/// A language may have several forms of the word; English is understood whatever is spoken.
QStringList wordsForLast() {
    QStringList words = findText("last").split(QLatin1Char('|'));
    words << QStringLiteral("last");
    return words;
}

}  // namespace

std::optional<Day> findDay(const QString& typed, Day today) {
    QString text = typed.simplified().toLower();
    bool before = false;
    for (const QString& last : wordsForLast()) {
        if (!text.startsWith(last + QLatin1Char(' '))) continue;
        text.remove(0, last.size() + 1);
        before = true;
        break;
    }
    const bool counted =
        std::any_of(text.cbegin(), text.cend(), [](QChar c) { return c.isDigit(); });
    // Two letters are the beginning of many words.
    if (text.size() < 3 || (before && counted)) return std::nullopt;
    const auto day = dayInWords(text.toStdString(), today);
    if (!before) return day;
    if (!day) return std::nullopt;
    // "last tuesday" on a Tuesday is the one a week ago.
    return *day == today ? *day - days(7) : *day;
}

std::vector<FindGroup> findOnDay(FindCache& cache, Day day, std::size_t mostOfKind) {
    return groupsOf(cache.ofDay(day, mostOfKind));
}

}  // namespace combwright
