#include "core/words/kind_words.h"

#include <QCoreApplication>
#include <algorithm>
#include <cctype>
#include <optional>
#include <string>

#include "core/words/words.h"

namespace combwright {
namespace {

/// How near words are to a name, the nearest first.
enum class Likeness { Whole, Beginning, Words };
constexpr std::size_t leastOfAWord = 3;

bool isOfAWord(char c) {
    return static_cast<unsigned char>(c) >= 0x80 || std::isalnum(static_cast<unsigned char>(c));
}

/// Its words in small letters, without what stands in brackets or behind a comma.
std::vector<std::string> wordsOfName(std::string_view name) {
    std::vector<std::string> words(1);
    bool inBrackets = false;
    for (const char c : name.substr(0, name.find(','))) {
        if (c == '(') inBrackets = true;
        if (!inBrackets && isOfAWord(c))
            words.back() += static_cast<char>(c >= 'A' && c <= 'Z' ? c - 'A' + 'a' : c);
        else if (!words.back().empty())
            words.emplace_back();
        if (c == ')') inBrackets = false;
    }
    if (words.back().empty()) words.pop_back();
    return words;
}

bool isFrameNumber(const std::string& word) {
    return std::all_of(word.begin(), word.end(), [](char c) { return c >= '0' && c <= '9'; });
}

/// Whether the word is said, whole or by its beginning.
bool isSaid(const std::string& word, const std::string& asked) {
    return word == asked ||
           (asked.size() >= leastOfAWord && !isFrameNumber(asked) && word.starts_with(asked));
}

/// How many frames hang in it and that it is a box name no kind.
bool namesNothing(const std::string& word) {
    return isFrameNumber(word) || word == "frame" || word == "frames" || word == "bars" ||
           word == "box";
}

std::optional<Likeness> likeness(const std::vector<std::string>& name,
                                 const std::vector<std::string>& asked) {
    if (name == asked) return Likeness::Whole;
    std::size_t at = 0;
    std::size_t skipped = 0;
    for (const std::string& word : asked) {
        while (at < name.size() && !isSaid(name[at], word)) {
            ++at;
            ++skipped;
        }
        if (at++ == name.size()) return std::nullopt;
    }
    return skipped == 0 ? Likeness::Beginning : Likeness::Words;
}

}  // namespace

QString kindText(const std::string& name) { return tableText(name); }

std::string nameInAList(std::string_view name) {
    return std::string(name.substr(0, name.find(',')));
}

std::vector<std::size_t> namesMeant(const std::vector<std::string>& names, std::string_view typed) {
    const std::vector<std::string> asked = wordsOfName(typed);
    std::vector<std::size_t> best;
    if (std::all_of(asked.begin(), asked.end(), namesNothing)) return best;
    Likeness found = Likeness::Words;
    for (std::size_t n = 0; n < names.size(); ++n) {
        const auto like = likeness(wordsOfName(names[n]), asked);
        if (!like || (!best.empty() && *like > found)) continue;
        if (*like < found) best.clear();
        found = *like;
        best.push_back(n);
    }
    return best;
}

QString frameKindText(const FrameKind& kind) {
    QString name = kindText(kind.name.text());
    if (const auto bracket = name.indexOf(QLatin1String(" (")); bracket > 0) name.truncate(bracket);
    const QString family = fromUtf8(kind.family).section(QLatin1String(" ("), 0, 0);
    if (!family.isEmpty() && name.startsWith(family + QLatin1Char(' '), Qt::CaseInsensitive))
        name = name.mid(family.size() + 1);
    if (name.endsWith(QLatin1String(" frame"))) name += QLatin1Char('s');
    return name;
}

QString framesText(std::int64_t many, const FrameKind& kind) {
    QString name = frameKindText(kind);
    if (many == 1 && name.endsWith(QLatin1String(" frames"))) name.chop(1);
    return QStringLiteral("%1 %2").arg(many).arg(name);
}

QString faultText(const Fault& fault) {
    return QCoreApplication::translate("faults", std::string(fault.word).c_str());
}

}  // namespace combwright
