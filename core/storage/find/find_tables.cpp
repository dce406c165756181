#include "core/storage/find/find_tables.h"

#include <QByteArray>
#include <QCryptographicHash>
#include <algorithm>
#include <array>
#include <cassert>

#include "core/model/records.h"

namespace combwright {
namespace {

using OfKind = FindKind;

/// What else the cache is laid out by; raised by hand when find_cache.cpp lays it out anew.
constexpr std::string_view cacheLayout = "1";

constexpr auto foundByWords = std::to_array<FindTable>({
    {"yard", OfKind::Hive, "name", "since", {}},
    {"hive", OfKind::Hive, "mark", "since", {}},
    {"colony", OfKind::Hive, {}, "since", {}},
    {"hive_move", OfKind::Hive, {}, "on_day", {}},
    {"colony_move", OfKind::Hive, {}, "on_day", {}},
    {"clearer_board", OfKind::Hive, {}, "on_day", {}},
    {"queen", OfKind::Queen, "number", {}, {}},
    {"queen_wait", OfKind::Queen, {}, "on_day", {}},
    {"box", OfKind::Box, "mark", "since", {}, true},
    {"frame", OfKind::Box, "mark", {}, {}, true},
    {"box_look", OfKind::Box, {}, "on_day", {}, true},
    {"box_review", OfKind::Box, {}, "on_day", {}, true},
    {"frame_check", OfKind::Box, {}, "on_day", {}, true},
    {"visit", OfKind::Visit, {}, "on_day", {}},
    {"inspection", OfKind::Visit, {}, {}, "visit"},
    {"feeding", OfKind::Visit, {}, "on_day", {}},
    {"hive_weighing", OfKind::Visit, {}, "on_day", {}},
    {"finding", OfKind::Health, {}, "on_day", {}},
    {"medicine", OfKind::Health, "name", "bought_on", {}},
    {"treatment", OfKind::Health, {}, "on_day", {}},
    {"medicine_disposal", OfKind::Health, {}, "on_day", {}},
    {"hold", OfKind::Health, {}, "since", {}},
    {"dead_out", OfKind::Health, {}, "on_day", {}},
    {"extraction", OfKind::Honey, "name", "on_day", {}},
    {"bucket", OfKind::Honey, "mark", {}, "extraction"},
    {"lot", OfKind::Honey, "name", "on_day", {}},
    {"water_reading", OfKind::Honey, {}, "on_day", {}},
    {"honey_step", OfKind::Honey, {}, "on_day", {}},
    {"honey_left", OfKind::Honey, {}, "on_day", {}},
    {"set_aside", OfKind::Honey, {}, "on_day", {}},
    {"room_day", OfKind::Honey, {}, "on_day", {}},
    {"pull_plan", OfKind::Honey, {}, "for_day", {}},
    {"crop_note", OfKind::Honey, {}, "on_day", {}},
    {"goods_kind", OfKind::Goods, "name", {}, {}},
    {"bottling", OfKind::Goods, "code", "on_day", {}},
    {"complaint", OfKind::Goods, {}, "on_day", {}},
    {"going_out", OfKind::Goods, {}, "on_day", {}},
    {"fair", OfKind::Goods, "name", "on_day", {}},
    {"packing_stock", OfKind::Goods, {}, "on_day", {}},
    {"goods_count", OfKind::Goods, {}, "on_day", {}, true},
    {"raw_wax", OfKind::Wax, {}, "on_day", {}},
    {"wax_batch", OfKind::Wax, "name", "on_day", {}},
    {"wax_step", OfKind::Wax, {}, "on_day", {}},
    {"wax_block", OfKind::Wax, "name", "on_day", {}},
    {"wax_use", OfKind::Wax, {}, "on_day", {}},
    {"heat_session", OfKind::Wax, {}, "on_day", {}, true},
    {"mould", OfKind::Wax, "name", "since", {}},
    {"burn_test", OfKind::Wax, {}, "on_day", {}},
    {"pour", OfKind::Wax, {}, "on_day", {}},
    {"candle_wish", OfKind::Wax, {}, "wanted_by", {}},
    {"free_evening", OfKind::Wax, {}, "on_day", {}, true},
    {"wick_stock", OfKind::Wax, {}, "on_day", {}},
    {"propolis_move", OfKind::Wax, {}, "on_day", {}},
    {"hive_project", OfKind::Wax, "name", "on_day", {}},
    {"project_look", OfKind::Wax, {}, "on_day", {}, true},
    {"equipment", OfKind::Storeroom, "name", "since", {}},
    {"equipment_count", OfKind::Storeroom, {}, "on_day", {}, true},
    {"freezer_round", OfKind::Storeroom, {}, "in_day", {}},
    {"set_out", OfKind::Storeroom, {}, "on_day", {}},
    {"season_plan", OfKind::Storeroom, {}, "on_day", {}},
    {"feed_stock", OfKind::Storeroom, {}, "on_day", {}},
    {"task", OfKind::Note, "text", "since", {}},
    {"quiet", OfKind::Note, {}, "since", {}},
    {"truck_item", OfKind::Note, "item", "since", {}},
});

std::string columnOf(const Fields& fields, std::string_view name) {
    const FieldInfo* info = fields.find(name);
    assert(info && "a table names fields of its record");
    return '"' + info->column() + '"';
}

const Fields& fieldsOf(std::string_view table) {
    const RecordType* type = findRecordType(table);
    assert(type && "only records are found");
    return type->fields();
}

/// "wax batch" of wax_batch, for the words of its sort.
std::string spokenTable(std::string_view table) {
    std::string spoken(table);
    std::replace(spoken.begin(), spoken.end(), '_', ' ');
    return spoken;
}

const FindTable* foundTable(std::string_view table) {
    const int number = findTableNumber(table);
    return number < 0 ? nullptr : &findTables()[static_cast<std::size_t>(number)];
}

/// Whether what refers to such a row is found by it, or dated by it.
bool isFace(const FindTable& of) { return !of.mark.empty() || of.table == "visit"; }

/// The text of a sum of SQL texts; '' where there are none.
std::string joinedSql(const std::vector<std::string>& parts) {
    std::string all;
    for (const std::string& each : parts) all += (all.empty() ? "" : " || ") + each;
    return all.empty() ? "''" : all;
}

}  // namespace

const std::vector<FindTable>& findTables() {
    static const std::vector<FindTable> all(foundByWords.begin(), foundByWords.end());
    return all;
}

int findTableNumber(std::string_view table) {
    const auto& all = findTables();
    for (std::size_t i = 0; i < all.size(); ++i)
        if (all[i].table == table) return static_cast<int>(i);
    return -1;
}

std::string findQuestion(const FindTable& of, std::string_view how) {
    const Fields& fields = fieldsOf(of.table);
    const std::string mark =
        of.mark.empty() ? "''" : "coalesce(t." + columnOf(fields, of.mark) + ", '')";
    std::string day = of.day.empty() ? "NULL" : "t." + columnOf(fields, of.day);
    std::vector<std::string> said;
    std::vector<std::string> about;
    std::vector<std::string> sort{"'" + spokenTable(of.table) + "'"};
    std::string joins;
    int joined = 0;
    for (const FieldInfo& info : fields) {
        const std::string column = "t.\"" + info.column() + '"';
        if (info.kind == Kind::Text && info.name != of.mark)
            said.push_back("coalesce(char(10) || " + column + ", '')");
        if (info.kind == Kind::Choice && info.part != ReadingPart::How)
            sort.push_back("coalesce(char(10) || " + column + ", '')");
        const FindTable* other = info.kind == Kind::Reference ? foundTable(info.refersTo) : nullptr;
        if (!other || !isFace(*other)) continue;
        const std::string as = "r" + std::to_string(joined++);
        joins += " LEFT JOIN \"" + std::string(other->table) + "\" AS " + as + " ON " + as +
                 ".id = " + column;
        const Fields& others = fieldsOf(other->table);
        if (!other->mark.empty())
            about.push_back("coalesce(char(10) || nullif(" + as + '.' +
                            columnOf(others, other->mark) + ", ''), '')");
        if (info.name == of.dayOf) day = as + '.' + columnOf(others, other->day);
    }
    const auto lines = [](const std::vector<std::string>& parts) {
        return "ltrim(" + joinedSql(parts) + ", char(10))";
    };
    return "SELECT t.id, " + mark + ", " + lines(said) + ", " + lines(about) + ", " +
           joinedSql(sort) + ", " + day + " FROM \"" + std::string(of.table) + "\" AS t" + joins +
           std::string(how);
}

const std::vector<FindReference>& findReferences(int table) {
    static const std::vector<std::vector<FindReference>> all = [] {
        std::vector<std::vector<FindReference>> to(findTables().size());
        for (std::size_t from = 0; from < findTables().size(); ++from)
            for (const FieldInfo& info : fieldsOf(findTables()[from].table)) {
                if (info.kind != Kind::Reference) continue;
                const int number = findTableNumber(info.refersTo);
                if (number < 0) continue;
                const auto other = static_cast<std::size_t>(number);
                if (isFace(findTables()[other]))
                    to[other].push_back({static_cast<int>(from), info.column()});
            }
        return to;
    }();
    return all[static_cast<std::size_t>(table)];
}

const std::string& findFormat() {
    static const std::string digest = [] {
        std::string all(cacheLayout);
        for (const FindTable& each : findTables())
            all += '\n' + std::to_string(static_cast<int>(each.kind)) +
                   std::to_string(each.onlyWhenSaid) + findQuestion(each, {});
        return QCryptographicHash::hash(QByteArray::fromStdString(all), QCryptographicHash::Sha256)
            .toHex()
            .left(32)
            .toStdString();
    }();
    return digest;
}

}  // namespace combwright
