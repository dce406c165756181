#include "core/actions/honey/goods_line.h"

#include <algorithm>
#include <charconv>
#include <cmath>

#include "core/trade/honey/net_tolerance.h"

namespace combwright {
namespace {

constexpr std::int64_t mostGoods = 1'000'000;
constexpr double mostPrice = 1e6;
constexpr double heaviestJarG = 100'000;

bool goodsDigit(char c) { return c >= '0' && c <= '9'; }

std::string trimmedPart(std::string_view part) {
    const std::size_t from = part.find_first_not_of(" \t");
    if (from == std::string_view::npos) return {};
    return std::string(part.substr(from, part.find_last_not_of(" \t") - from + 1));
}

std::string lowerWords(std::string_view text) {
    std::string lower(text);
    for (char& c : lower)
        if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
    return lower;
}

/// A number without a sign, with point or comma; none that could be read in two ways: "456,455".
std::optional<double> goodsNumber(std::string word) {
    const std::size_t comma = word.find(',');
    if (comma != std::string::npos && word.size() - comma == 4) return std::nullopt;
    std::replace(word.begin(), word.end(), ',', '.');
    if (word.empty() || word.size() > 12 || !goodsDigit(word.front())) return std::nullopt;
    double number = 0;
    const auto read =
        std::from_chars(word.data(), word.data() + word.size(), number, std::chars_format::fixed);
    if (read.ec != std::errc() || read.ptr != word.data() + word.size()) return std::nullopt;
    return number;
}

std::optional<Money> moneyOf(const std::string& word) {
    const auto number = goodsNumber(word);
    if (!number || *number > mostPrice) return std::nullopt;
    const double hundredths = *number * 100.0;
    if (std::abs(hundredths - std::round(hundredths)) > 1e-6) return std::nullopt;
    return Money::hundredths(std::llround(hundredths));
}

/// "454 g", "16 oz", "1 lb", "1.5 kg" in whole grams.
std::optional<Mass> massMeant(std::string_view words) {
    const std::size_t unitAt = words.find_first_not_of("0123456789.,");
    if (unitAt == 0 || unitAt == std::string_view::npos) return std::nullopt;
    const auto number = goodsNumber(std::string(words.substr(0, unitAt)));
    const std::string unit = lowerWords(trimmedPart(words.substr(unitAt)));
    const double grams = unit == "g"    ? 1.0
                         : unit == "kg" ? 1000.0
                         : unit == "oz" ? gramsPerOunce
                         : unit == "lb" ? gramsPerPound
                                        : 0.0;
    if (!number || grams == 0.0 || *number * grams > heaviestJarG) return std::nullopt;
    return Mass::roundedGrams(*number * grams);
}

/// Whether the words stand in the name as words of their own.
bool hasWords(const std::string& name, const std::string& words) {
    for (std::size_t at = name.find(words); at != std::string::npos;
         at = name.find(words, at + 1)) {
        const std::size_t end = at + words.size();
        if ((at == 0 || name[at - 1] == ' ') && (end == name.size() || name[end] == ' '))
            return true;
    }
    return false;
}

template <class Fits>
std::vector<GoodsKind> kindsThat(const std::vector<GoodsKind>& kinds, Fits fits) {
    std::vector<GoodsKind> found;
    std::copy_if(kinds.begin(), kinds.end(), std::back_inserter(found), fits);
    return found;
}

/// The kinds that go by some words, the nearest way of calling them first.
std::vector<GoodsKind> kindsCalled(const std::vector<GoodsKind>& kinds, const std::string& words) {
    auto found = kindsThat(kinds, [&](const GoodsKind& kind) { return kind.name.text() == words; });
    const std::string lower = lowerWords(words);
    const auto named = [](const GoodsKind& kind) { return lowerWords(kind.name.text()); };
    if (found.empty())
        found = kindsThat(kinds, [&](const GoodsKind& kind) { return named(kind) == lower; });
    if (found.empty())
        found = kindsThat(kinds, [&](const GoodsKind& kind) {
            return named(kind).starts_with(lower) && hasWords(named(kind), lower);
        });
    if (found.empty())
        found =
            kindsThat(kinds, [&](const GoodsKind& kind) { return hasWords(named(kind), lower); });
    if (found.empty())
        if (const auto mass = massMeant(words))
            found = kindsThat(kinds, [&](const GoodsKind& kind) { return kind.net == mass; });
    return found;
}

std::string kindNames(const std::vector<GoodsKind>& kinds) {
    std::string names;
    for (const GoodsKind& kind : kinds) names += (names.empty() ? "" : ", ") + kind.name.text();
    return names;
}

/// A number at the head of a part and what stands behind it; an x between them is for the eye.
struct Counted {
    std::int64_t count = 0;
    std::string rest;
};
Result<Counted> countedPart(const std::string& part, const char* field, std::int64_t least) {
    const std::size_t end = std::min(part.find_first_not_of("0123456789"), part.size());
    if (end == 0 || end > 9)
        return Refusal{
            Code::WrongType, field, {{"wanted", "how many and of what"}, {"value", part}}};
    Counted counted{std::stoll(part.substr(0, end)), {}};
    if (counted.count < least || counted.count > mostGoods)
        return Refusal{Code::OutOfRange,
                       field,
                       {{"low", std::to_string(least)}, {"high", std::to_string(mostGoods)}}};
    std::string_view rest = std::string_view(part).substr(end);
    while (rest.starts_with(' ')) rest.remove_prefix(1);
    if (rest.starts_with("×"))
        rest.remove_prefix(std::string_view("×").size());
    else if (rest.size() > 1 && (rest[0] == 'x' || rest[0] == 'X') &&
             (rest[1] == ' ' || rest[1] == '"' || rest[1] == '#' || goodsDigit(rest[1])))
        rest.remove_prefix(1);
    counted.rest = trimmedPart(rest);
    return counted;
}

Result<Id<Bottling>> fillingMeant(const Read& file, const std::string& code, const char* field) {
    if (const auto found = file.first<Bottling>({is("code", code)})) return found->id;
    return Refusal{Code::NotFound, field, {{"name", code}}};
}

/// Takes " at 8.50" and " of L27-4-2" off the end of what a kind is called.
Result<void> readBehind(const Read& file, std::string& words, GoodsMeant& meant,
                        const char* field) {
    for (int again = 0; again < 2; ++again) {
        const std::size_t at = words.rfind(" at ");
        const std::size_t of = words.rfind(" of ");
        if (at != std::string::npos && (of == std::string::npos || at > of)) {
            const auto price = moneyOf(words.substr(at + 4));
            if (!price)
                return Refusal{Code::WrongType,
                               field,
                               {{"wanted", "a price"}, {"value", words.substr(at + 4)}}};
            meant.each = price;
            words.resize(at);
        } else if (of != std::string::npos) {
            const auto filling = fillingMeant(file, words.substr(of + 4), field);
            if (!filling) return filling.error();
            meant.bottling = *filling;
            words.resize(of);
        }
    }
    return {};
}

Result<GoodsMeant> goodsOf(const Read& file, const Counted& counted, const char* field) {
    GoodsMeant meant;
    meant.count = counted.count;
    std::string words = counted.rest;
    // A kind may be called "jar of comb": the whole is tried as a name first.
    if (const auto whole = goodsKindMeant(file, words, field)) {
        meant.kind = *whole;
        return meant;
    }
    if (auto read = readBehind(file, words, meant, field); !read) return read.error();
    const auto kind = goodsKindMeant(file, trimmedPart(words), field);
    if (!kind) return kind.error();
    meant.kind = *kind;
    return meant;
}

}  // namespace

std::vector<std::string> goodsParts(std::string_view line, std::string_view parters,
                                    Decimals decimals) {
    std::vector<std::string> parts;
    bool quoted = false;
    std::size_t from = 0;
    for (std::size_t at = 0; at <= line.size(); ++at) {
        if (at < line.size() && line[at] == '"') quoted = !quoted;
        const bool parter =
            at == line.size() || (!quoted && parters.find(line[at]) != std::string_view::npos);
        const bool number = decimals == Decimals::Anywhere ||
                            (decimals == Decimals::InPrices &&
                             line.substr(from, at - from).find(" at ") != std::string_view::npos);
        const bool decimal = number && at > 0 && at + 1 < line.size() && line[at] == ',' &&
                             goodsDigit(line[at - 1]) && goodsDigit(line[at + 1]);
        if (!parter || decimal) continue;
        parts.push_back(trimmedPart(line.substr(from, at - from)));
        from = at + 1;
    }
    return parts;
}

Result<GoodsKind> goodsKindMeant(const Read& file, std::string_view given, const char* field) {
    std::string words = trimmedPart(given);
    if (words.size() > 2 && words.front() == '"' && words.back() == '"')
        words = words.substr(1, words.size() - 2);
    const auto kinds = file.all<GoodsKind>();
    if (words.size() > 1 && words.size() < 18 && words[0] == '#' &&
        words.find_first_not_of("0123456789", 1) == std::string::npos) {
        if (const auto kind = file.find(Id<GoodsKind>{std::stoll(words.substr(1))})) return *kind;
        return Refusal{Code::NotFound, field, {{"name", words}, {"choices", kindNames(kinds)}}};
    }
    auto found = words.empty() ? std::vector<GoodsKind>{} : kindsCalled(kinds, words);
    // "12 skeps" is what one says.
    if (found.empty() && words.size() > 1 && words.ends_with('s'))
        found = kindsCalled(kinds, words.substr(0, words.size() - 1));
    if (found.size() == 1) return found.front();
    if (found.empty()) {
        Refusal refusal{Code::NotFound, field, {{"name", words}}};
        if (!kinds.empty()) refusal.values.emplace_back("choices", kindNames(kinds));
        return refusal;
    }
    return Refusal{
        Code::Ambiguous, field, {{"name", words}, {"count", std::to_string(found.size())}}};
}

Result<std::vector<GoodsMeant>> readGoods(const Read& file, std::string_view line,
                                          const char* field) {
    std::vector<GoodsMeant> read;
    for (const std::string& part : goodsParts(line, ",;", Decimals::InPrices)) {
        if (part.empty()) continue;
        const auto counted = countedPart(part, field, 1);
        if (!counted) return counted.error();
        const auto meant = goodsOf(file, *counted, field);
        if (!meant) return meant.error();
        read.push_back(*meant);
    }
    if (read.empty()) return Refusal{Code::Missing, field, {}};
    return read;
}

Result<std::vector<PriceMeant>> readPrices(const Read& file, std::string_view line,
                                           const char* field) {
    std::vector<PriceMeant> read;
    for (const std::string& part : goodsParts(line)) {
        if (part.empty()) continue;
        const std::size_t blank = part.rfind(' ');
        const auto price =
            blank == std::string::npos ? std::nullopt : moneyOf(part.substr(blank + 1));
        if (!price)
            return Refusal{
                Code::WrongType, field, {{"wanted", "kind and price of one"}, {"value", part}}};
        const auto kind = goodsKindMeant(file, std::string_view(part).substr(0, blank), field);
        if (!kind) return kind.error();
        read.push_back({*kind, *price});
    }
    if (read.empty()) return Refusal{Code::Missing, field, {}};
    return read;
}

Result<std::vector<HomeMeant>> readHome(const Read& file, std::string_view line,
                                        const char* field) {
    std::vector<HomeMeant> read;
    for (const std::string& group : goodsParts(line, ";", Decimals::None)) {
        bool fresh = true;
        for (const std::string& part : goodsParts(group, ",", Decimals::None)) {
            if (part.empty()) continue;
            const auto counted = countedPart(part, field, 0);
            if (!counted) return counted.error();
            const bool broke = counted->rest == "broken";
            const bool gift = counted->rest == "given";
            if (broke || gift) {
                if (read.empty() || fresh)
                    return Refusal{Code::WrongType,
                                   field,
                                   {{"wanted", "what came home first"}, {"value", part}}};
                auto& slot = broke ? read.back().broken : read.back().given;
                if (slot) return Refusal{Code::Duplicate, field, {{"name", part}}};
                slot = counted->count;
                continue;
            }
            HomeMeant home;
            home.home = counted->count;
            if (!counted->rest.empty()) {
                const auto meant = goodsOf(file, *counted, field);
                if (!meant) return meant.error();
                home.kind = meant->kind;
                home.bottling = meant->bottling;
            }
            read.push_back(std::move(home));
            fresh = false;
        }
    }
    return read;
}

Result<std::vector<double>> readGrams(std::string_view line, const char* field) {
    std::vector<double> grams;
    for (const std::string& part : goodsParts(line)) {
        if (part.empty()) continue;
        std::size_t from = 0;
        while (from < part.size()) {
            const std::size_t end = std::min(part.find(' ', from), part.size());
            const auto number = goodsNumber(part.substr(from, end - from));
            if (!number)
                return Refusal{Code::WrongType, field, {{"wanted", "grams"}, {"value", part}}};
            if (*number <= 0 || *number > heaviestJarG)
                return Refusal{Code::OutOfRange, field, {{"low", "0"}}};
            grams.push_back(*number);
            from = std::min(part.find_first_not_of(' ', end), part.size());
        }
    }
    return grams;
}

}  // namespace combwright
