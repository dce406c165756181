#include "core/exchange/strict_json.h"

#include <QJsonDocument>
#include <QString>
#include <QStringDecoder>
#include <algorithm>
#include <optional>
#include <set>
#include <string>

namespace combwright {
namespace {

/// Deeper than any line of ours; a text that goes on nesting must not fill the stack.
constexpr int mostNested = 200;

/// Walks over a text once. Each function takes its piece and says whether it was one.
class StrictJson {
  public:
    explicit StrictJson(std::string_view text) : m_left(text) {}

    bool isOneObject() {
        blanks();
        if (!m_left.starts_with('{') || !value({})) return false;
        blanks();
        return m_left.empty();
    }
    /// The path of the first key that stands twice in its object.
    const std::optional<std::string>& keyTwice() const { return m_keyTwice; }

  private:
    void blanks() {
        m_left.remove_prefix(std::min(m_left.find_first_not_of(" \t\r\n"), m_left.size()));
    }
    bool take(std::string_view expected) {
        if (!m_left.starts_with(expected)) return false;
        m_left.remove_prefix(expected.size());
        return true;
    }
    bool takeDigits() {
        const std::size_t end = std::min(m_left.find_first_not_of("0123456789"), m_left.size());
        m_left.remove_prefix(end);
        return end > 0;
    }

    bool number() {
        (void)take("-");
        if (!take("0") && !takeDigits()) return false;
        if (take(".") && !takeDigits()) return false;
        if (!take("e") && !take("E")) return true;
        if (!take("+")) (void)take("-");
        return takeDigits();
    }

    /// A text with its quotes, as it stands there.
    std::optional<std::string_view> text() {
        const std::string_view whole = m_left;
        if (!take("\"")) return std::nullopt;
        while (!m_left.empty() && !m_left.starts_with('"')) {
            if (static_cast<unsigned char>(m_left.front()) < 0x20) return std::nullopt;
            if (!take("\\"))
                m_left.remove_prefix(1);
            else if (!escaped())
                return std::nullopt;
        }
        if (!take("\"")) return std::nullopt;
        return whole.substr(0, whole.size() - m_left.size());
    }
    /// What stands behind a backslash.
    bool escaped() {
        if (take("u")) {
            const std::size_t digits =
                std::min(m_left.find_first_not_of("0123456789abcdefABCDEF"), m_left.size());
            m_left.remove_prefix(std::min<std::size_t>(digits, 4));
            return digits >= 4;
        }
        if (m_left.empty() ||
            std::string_view("\"\\/bfnrt").find(m_left.front()) == std::string_view::npos)
            return false;
        m_left.remove_prefix(1);
        return true;
    }

    bool value(const std::string& path) {
        if (m_left.starts_with('"')) return text().has_value();
        if (m_left.starts_with('{')) return object(path);
        if (m_left.starts_with('[')) return list(path);
        return take("true") || take("false") || take("null") || number();
    }

    bool object(const std::string& path) {
        if (!take("{") || ++m_nested > mostNested) return false;
        std::set<QString> keys;
        blanks();
        if (!m_left.starts_with('}')) {
            do {
                blanks();
                const auto quoted = text();
                if (!quoted) return false;
                const QString key = meant(*quoted);
                const std::string at = (path.empty() ? "" : path + ".") + key.toStdString();
                // "a" and its escape "\u0061" are one key.
                if (!keys.insert(key).second && !m_keyTwice) m_keyTwice = at;
                blanks();
                if (!take(":")) return false;
                blanks();
                if (!value(at)) return false;
                blanks();
            } while (take(","));
        }
        --m_nested;
        return take("}");
    }

    bool list(const std::string& path) {
        if (!take("[") || ++m_nested > mostNested) return false;
        blanks();
        if (!m_left.starts_with(']')) {
            int at = 0;
            do {
                blanks();
                if (!value(path + "[" + std::to_string(at++) + "]")) return false;
                blanks();
            } while (take(","));
        }
        --m_nested;
        return take("]");
    }

    static QString meant(std::string_view quoted) {
        const QByteArray list =
            "[" + QByteArray(quoted.data(), static_cast<qsizetype>(quoted.size())) + "]";
        return QJsonDocument::fromJson(list)[0].toString();
    }

    std::string_view m_left;
    int m_nested = 0;
    std::optional<std::string> m_keyTwice;
};

bool isUtf8(std::string_view text) {
    QStringDecoder decoder(QStringDecoder::Utf8, QStringDecoder::Flag::Stateless);
    const QString decoded =
        decoder(QByteArrayView(text.data(), static_cast<qsizetype>(text.size())));
    return decoded.isNull() || !decoder.hasError();
}

Refusal notWhatItShouldBe(const char* wanted) {
    return {Code::WrongType, {}, {{"wanted", wanted}}};
}

}  // namespace

Result<QJsonObject> strictObject(std::string_view text) {
    if (!isUtf8(text)) return notWhatItShouldBe("text in UTF-8");
    // Some editors begin a file with the mark of its byte order.
    if (text.starts_with("\xef\xbb\xbf")) text.remove_prefix(3);
    StrictJson strict(text);
    if (!strict.isOneObject()) return notWhatItShouldBe("one JSON object");
    if (strict.keyTwice()) return Refusal{Code::Duplicate, *strict.keyTwice(), {}};
    const QJsonDocument document =
        QJsonDocument::fromJson(QByteArray(text.data(), static_cast<qsizetype>(text.size())));
    // A number no double can hold is none of ours either.
    if (!document.isObject()) return notWhatItShouldBe("one JSON object");
    return document.object();
}

}  // namespace combwright
