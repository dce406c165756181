#include "core/places/copies/merge_groups.h"

#include <algorithm>
#include <map>

namespace combwright {
namespace {

struct TogetherFields {
    std::string_view table;
    std::vector<std::string_view> fields;
    std::vector<std::string_view> counted;
};

const std::vector<TogetherFields>& togetherFields() {
    static const std::vector<TogetherFields> all{
        {"box", {"place", "hive", "stack"}, {"level"}},
        {"frame", {"box", "stack"}, {"position"}},
        {"hive", {"yard"}, {"stand_order"}},
        {"colony", {"ended", "ending", "united_into"}, {}},
        {"queen_stay", {"until", "left"}, {}},
        {"frame", {"retired", "retired_on"}, {}},
    };
    return all;
}

const std::vector<MovesOf>& allMoves() {
    static const std::vector<MovesOf> all{{"box", "place", "box_move"},
                                          {"hive", "yard", "hive_move"},
                                          {"colony", "hive", "colony_move"},
                                          {"frame", "box", "frame_move"}};
    return all;
}

std::size_t fieldPlace(const Fields& fields, std::string_view name) {
    for (std::size_t i = 0; i < fields.size(); ++i)
        if (fields[i].name == name && fields[i].part == ReadingPart::Whole) return i;
    return fields.size();
}

bool holdsNothing(const Value& value) {
    const auto* text = std::get_if<std::string>(&value);
    return std::holds_alternative<std::monostate>(value) || (text && text->empty());
}

}  // namespace

const MovesOf* movesOf(std::string_view thing) {
    for (const MovesOf& each : allMoves())
        if (each.thing == thing) return &each;
    return nullptr;
}

const MovesOf* thingMovedBy(std::string_view moves) {
    for (const MovesOf& each : allMoves())
        if (each.moves == moves) return &each;
    return nullptr;
}

std::vector<MergeGroup> mergeGroups(const RecordType& type) {
    const Fields& fields = type.fields();
    std::vector<MergeGroup> groups;
    std::vector<bool> taken(fields.size(), false);
    for (const TogetherFields& each : togetherFields()) {
        if (each.table != type.table) continue;
        MergeGroup group;
        for (const std::string_view name : each.fields)
            if (const std::size_t i = fieldPlace(fields, name); i < fields.size())
                group.fields.push_back(i);
        for (const std::string_view name : each.counted)
            if (const std::size_t i = fieldPlace(fields, name); i < fields.size())
                group.counted.push_back(i);
        for (const auto* list : {&group.fields, &group.counted})
            for (const std::size_t i : *list) taken[i] = true;
        if (!group.fields.empty()) groups.push_back(std::move(group));
    }
    for (std::size_t i = 0; i < fields.size(); ++i) {
        if (taken[i] || fields[i].kind == Kind::Id) continue;
        MergeGroup group{{i}};
        taken[i] = true;
        if (fields[i].part == ReadingPart::Value)
            for (const std::size_t part : {i + 1, i + 2}) {
                group.fields.push_back(part);
                taken[part] = true;
            }
        groups.push_back(std::move(group));
    }
    return groups;
}

std::optional<std::vector<Value>> sameKey(const RecordType& type, const Row& row) {
    const Fields& fields = type.fields();
    std::vector<Value> named;
    std::vector<Value> of;
    std::vector<Value> days;
    for (std::size_t i = 1; i < fields.size(); ++i) {
        const FieldInfo& field = fields[i];
        const bool name = field.kind == Kind::Text && !field.optional;
        if ((name || field.name == "mark") && !holdsNothing(row[i])) named.push_back(row[i]);
        if (field.optional) continue;
        if (field.kind == Kind::Reference) of.push_back(row[i]);
        if (field.kind == Kind::Day) days.push_back(row[i]);
    }
    const auto behind = [](std::vector<Value> first, const std::vector<Value>& second) {
        first.insert(first.end(), second.begin(), second.end());
        return first;
    };
    if (!named.empty()) return behind(std::move(named), of);
    if (days.empty() || of.empty()) return std::nullopt;
    return behind(std::move(of), days);
}

std::string rowContent(const RecordType& type, const Row& row) {
    std::string content;
    const Fields& fields = type.fields();
    for (std::size_t i = 0; i < fields.size() && i < row.size(); ++i) {
        if (fields[i].kind == Kind::Id || fields[i].kind == Kind::Reference) continue;
        if (const auto* text = std::get_if<std::string>(&row[i]))
            content += '"' + *text;
        else if (const auto* number = std::get_if<std::int64_t>(&row[i]))
            content += '#' + std::to_string(*number);
        content += '\x1f';
    }
    return content;
}

}  // namespace combwright
