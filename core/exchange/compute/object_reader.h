// Reads one JSON object strictly: every key must be asked for, every value must be of the type and
// in the range asked for. The first thing wrong is kept as the refusal, with the path of its key
// ("frames[2].start_g"); the getters then hand out stand-ins, so that a computation reads all its
// keys in a row and asks once, at the end, whether the object was good:
//
//     ObjectReader in(object);
//     const double water = in.number("water_percent", {13, 21});
//     const auto yeast = in.optionalNumber("yeast_per_g", {0});
//     if (auto good = in.finish(); !good) return good.error();
#pragma once

#include <QJsonArray>
#include <QJsonObject>
#include <limits>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/support/result.h"
#include "core/units/day.h"

namespace combwright {

/// A range of numbers; both ends belong to it. The default is any finite number.
struct Range {
    double low = -std::numeric_limits<double>::infinity();
    double high = std::numeric_limits<double>::infinity();
};

class ObjectReader {
  public:
    explicit ObjectReader(const QJsonObject& object);

    bool has(std::string_view key) const;  ///< given and not null

    double number(std::string_view key, Range range = {});
    std::optional<double> optionalNumber(std::string_view key, Range range = {});
    /// A mass in grams: 0 or more, a fraction allowed.
    double mass(std::string_view key) { return number(key, {0}); }
    std::optional<double> optionalMass(std::string_view key) { return optionalNumber(key, {0}); }
    /// A share of a whole, 0 to 1.
    double share(std::string_view key) { return number(key, {0, 1}); }
    std::optional<double> optionalShare(std::string_view key) {
        return optionalNumber(key, {0, 1});
    }
    /// A whole number.
    std::int64_t count(std::string_view key, Range range = {0});
    std::optional<std::int64_t> optionalCount(std::string_view key, Range range = {0});
    std::string text(std::string_view key);
    std::optional<std::string> optionalText(std::string_view key);
    /// One of the words given.
    std::string choice(std::string_view key, const std::vector<std::string>& choices);
    bool flag(std::string_view key);
    std::optional<bool> optionalFlag(std::string_view key);
    Day day(std::string_view key);
    std::optional<Day> optionalDay(std::string_view key);
    /// A list of objects; each is read like the whole.
    std::vector<ObjectReader> objects(std::string_view key);
    /// A list of finite numbers.
    std::vector<double> numbers(std::string_view key);
    std::optional<ObjectReader> optionalObject(std::string_view key);
    ObjectReader object(std::string_view key);
    /// An object whose keys are free, each holding a number in the range, in the order of the keys.
    std::vector<std::pair<std::string, double>> numbersByName(std::string_view key,
                                                              Range range = {});
    /// The value as it is, for keys that take more than one type; counts as asked for.
    QJsonValue raw(std::string_view key);

    /// Refuses on behalf of a rule the reader does not know; the first refusal is the one kept.
    void refuse(Code code, std::string_view key,
                std::vector<std::pair<std::string, std::string>> values = {});
    /// The path of a key from the root: "frames[2].start_g".
    std::string path(std::string_view key) const;

    /// Ask once, on the root, after all keys were read: the first refusal, or a key nobody read.
    Result<void> finish();

  private:
    struct Shared;
    struct Node;
    ObjectReader(std::shared_ptr<Shared> shared, const QJsonObject& object, std::string path);
    std::optional<QJsonValue> take(std::string_view key, bool required);

    std::shared_ptr<Shared> m_shared;
    std::shared_ptr<Node> m_node;
};

}  // namespace combwright
