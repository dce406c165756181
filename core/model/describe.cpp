#include "core/model/describe.h"

namespace combwright {
namespace {

constexpr std::array spellings{
    KindSpelling{Kind::Id, "id", "", "", 0, false},
    KindSpelling{Kind::Reference, "reference", "_id", "", 0, false},
    KindSpelling{Kind::Text, "text", "", "", 0, true},
    KindSpelling{Kind::Choice, "choice", "", "", 0, true},
    KindSpelling{Kind::Flag, "flag", "", "", 0, false},
    KindSpelling{Kind::Count, "count", "", "", 0, false},
    KindSpelling{Kind::Number, "number", "_millionths", "", 6, false},
    KindSpelling{Kind::Frames, "frames", "_tenths", "_frames", 1, false},
    KindSpelling{Kind::Mass, "mass", "_g", "_g", 0, false},
    KindSpelling{Kind::Length, "length", "_tenth_mm", "_mm", 1, false},
    KindSpelling{Kind::Share, "share", "_bp", "_share", 4, false},
    KindSpelling{Kind::Percent, "percent", "_bp", "_percent", 2, false},
    KindSpelling{Kind::Temperature, "temperature", "_tenth_c", "_c", 1, false},
    KindSpelling{Kind::Minutes, "minutes", "_min", "_min", 0, false},
    KindSpelling{Kind::Money, "money", "_hundredths", "", 2, false},
    KindSpelling{Kind::Day, "day", "", "", 0, true},
    KindSpelling{Kind::Instant, "instant", "", "", 0, true},
    KindSpelling{Kind::Changes, "fields to change", "", "", 0, true},
};

std::string spelt(const FieldInfo& info, std::string_view suffix) {
    switch (info.part) {
        case ReadingPart::How:
            return info.name + "_how";
        case ReadingPart::To:
            return info.name + "_to" + std::string(suffix);
        default:
            return info.name + std::string(suffix);
    }
}

}  // namespace

const KindSpelling& spelling(Kind kind) { return spellings[static_cast<std::size_t>(kind)]; }

std::string FieldInfo::column() const { return spelt(*this, spelling(kind).columnSuffix); }
std::string FieldInfo::key() const { return spelt(*this, spelling(kind).keySuffix); }

const FieldInfo* Fields::find(std::string_view name) const {
    for (const FieldInfo& info : list)
        if (info.name == name &&
            (info.part == ReadingPart::Whole || info.part == ReadingPart::Value))
            return &info;
    return nullptr;
}

const FieldInfo* Fields::findKey(std::string_view key) const {
    for (const FieldInfo& info : list)
        if (info.key() == key) return &info;
    return nullptr;
}

std::optional<Name> Name::of(std::string_view text) {
    const auto blank = [](char c) { return c == ' ' || c == '\t' || c == '\n' || c == '\r'; };
    while (!text.empty() && blank(text.front())) text.remove_prefix(1);
    while (!text.empty() && blank(text.back())) text.remove_suffix(1);
    if (text.empty() || text.size() > 200) return std::nullopt;
    for (const char c : text)
        if (static_cast<unsigned char>(c) < 0x20 || c == 0x7f) return std::nullopt;
    Name name;
    name.m_text = std::string(text);
    return name;
}

std::optional<std::string> Codec<std::string>::unpack(const Value& value) {
    const auto* text = std::get_if<std::string>(&value);
    // A NUL would end the text early in every C interface behind us.
    if (!text || text->find('\0') != std::string::npos) return std::nullopt;
    return *text;
}

std::optional<Name> Codec<Name>::unpack(const Value& value) {
    const auto* text = std::get_if<std::string>(&value);
    return text ? Name::of(*text) : std::nullopt;
}

std::optional<bool> Codec<bool>::unpack(const Value& value) {
    const auto* number = std::get_if<std::int64_t>(&value);
    if (!number || (*number != 0 && *number != 1)) return std::nullopt;
    return *number == 1;
}

std::optional<Day> Codec<Day>::unpack(const Value& value) {
    const auto* text = std::get_if<std::string>(&value);
    return text ? parseDay(*text) : std::nullopt;
}

std::optional<Instant> Codec<Instant>::unpack(const Value& value) {
    const auto* text = std::get_if<std::string>(&value);
    return text ? parseInstant(*text) : std::nullopt;
}

}  // namespace combwright
