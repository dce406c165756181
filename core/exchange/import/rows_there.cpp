#include "core/exchange/import/rows_there.h"

#include <algorithm>

#include "core/actions/boxes/boxes.h"
#include "core/actions/honey/going_out.h"
#include "core/actions/honey/goods_line.h"
#include "core/actions/pull/plan.h"
#include "core/actions/yard/sheet.h"
#include "core/actions/yard/weighings.h"
#include "core/actions/yard/yards.h"
#include "core/exchange/import/import_kinds.h"
#include "core/model/honey/pull.h"
#include "core/storage/queries/hive_days.h"
#include "core/storage/queries/import_steps.h"
#include "core/storage/queries/yards.h"

namespace combwright {
namespace {

template <class T>
std::string idText(const std::optional<Id<T>>& id) {
    return id ? std::to_string(id->number) : std::string("-");
}
std::string massText(const std::optional<Known<Mass>>& mass) {
    const auto middle = mass ? mass->middle() : std::nullopt;
    return middle ? std::to_string(*middle) : std::string("-");
}

/// What two rows that tell the same are alike in.
std::string alikeIn(const CropNote& crop) {
    return "crop|" + std::to_string(crop.year.value()) + '|' + idText(crop.hive) + '|' +
           idText(crop.yard) + '|' + massText(crop.mass) + '|' + crop.note;
}
std::string alikeIn(const GoingOut& out) {
    return "out|" + isoText(out.on) + '|' + std::string(word(out.how)) + '|' + idText(out.kind) +
           '|' + (out.count ? std::to_string(out.count->value()) : "-") + '|' +
           (out.each ? std::to_string(out.each->count()) : "-") + '|' + out.buyer + '|' +
           out.place + '|' + out.note;
}
std::string alikeIn(const Box& box) {
    return "box|" + std::to_string(box.kind.number) + '|' + isoText(box.since);
}

/// Of what came in with imports, what is no longer as it came in: how it came, and how often.
template <class Record>
std::map<std::string, int> changedSince(const Read& file, std::string_view rowsOf) {
    std::map<std::string, int> changed;
    for (const auto& [id, row] : rowsImported(file, rowsOf, Record::table, Record::fields())) {
        const auto came = fromRow<Record>(row);
        if (!came) continue;
        const auto now = file.find(Id<Record>{id});
        const std::string alike = alikeIn(*came);
        if (!now || alikeIn(*now) != alike) ++changed[alike];
    }
    return changed;
}

RowThere thereHive(const Read& file, const AddHive& add) {
    for (const Hive& hive : hivesEver(file, add.yard))
        if (hive.mark == add.hive && (!hive.closed || hive.since == add.on)) return RowThere::Same;
    return RowThere::No;
}

RowThere thereBox(const Read& file, const AddBoxes& add) {
    for (const Box& box : file.where<Box>({is("mark", add.firstMark)}))
        if (box.kind == add.kind && (inUse(box) || box.since == add.on)) return RowThere::Same;
    return RowThere::No;
}

RowThere thereWeighing(const Read& file, const WeighHive& weigh) {
    if (!weigh.hive) return RowThere::No;
    const auto there = file.first<HiveWeighing>({is("hive", *weigh.hive), is("on_day", weigh.on)});
    if (!there) return RowThere::No;
    const bool same = there->left == weigh.left && there->right == weigh.right &&
                      there->whole == weigh.whole &&
                      (!weigh.without || there->without == weigh.without);
    return same ? RowThere::Same : RowThere::Other;
}

std::optional<Inspection> lookOn(const Read& file, Id<Hive> hive, Day on) {
    for (const Visit& visit : file.where<Visit>({is("on_day", on)}))
        if (auto there = inspectionOf(file, visit.id, hive)) return there;
    return std::nullopt;
}

RowThere thereLine(const Read& file, const WriteLine& line) {
    const auto there = lookOn(file, line.hive, line.on);
    if (!there) return RowThere::No;
    return there->line == line.line ? RowThere::Same : RowThere::Other;
}

RowThere thereLook(const Read& file, const LookInto& look) {
    const auto there = lookOn(file, look.hive, look.on);
    if (!there) return RowThere::No;
    return there->seen == look.seen.seen ? RowThere::Same : RowThere::Other;
}

}  // namespace

RowsThere::RowsThere(const Read& file) {
    for (const CropNote& each : file.all<CropNote>()) ++m_alike[alikeIn(each)];
    for (const GoingOut& each : file.all<GoingOut>())
        if (each.kind) ++m_alike[alikeIn(each)];
    for (const Box& each : file.all<Box>())
        if (each.mark.empty()) ++m_alike[alikeIn(each)];
}

template <class Record>
RowThere RowsThere::counted(const Read& file, const Record& record, std::string_view rowsOf) {
    const auto taken = [alike = alikeIn(record)](std::map<std::string, int>& among) {
        const auto found = among.find(alike);
        if (found == among.end() || found->second == 0) return false;
        --found->second;
        return true;
    };
    if (taken(m_alike)) return RowThere::Same;
    // A table is of one kind.
    if (!m_changed) m_changed = changedSince<Record>(file, rowsOf);
    return taken(*m_changed) ? RowThere::ChangedSince : RowThere::No;
}

RowThere RowsThere::ask(const Read& file, const ImportLine& line) {
    if (line.type->name == AddHive::name) return thereHive(file, *fromRow<AddHive>(line.row));
    if (line.type->name == WeighHive::name)
        return thereWeighing(file, *fromRow<WeighHive>(line.row));
    if (line.type->name == WriteLine::name) return thereLine(file, *fromRow<WriteLine>(line.row));
    if (line.type->name == LookInto::name) return thereLook(file, *fromRow<LookInto>(line.row));
    if (line.type->name == AddBoxes::name) {
        const auto add = *fromRow<AddBoxes>(line.row);
        if (!add.firstMark.empty()) return thereBox(file, add);
        Box box;
        box.kind = add.kind;
        box.since = add.on;
        return counted(file, box, word(ImportKind::Boxes));
    }
    if (line.type->name == NoteCrop::name) {
        const auto note = *fromRow<NoteCrop>(line.row);
        const CropNote crop{{},        note.year.value_or(Count(yearOf(note.on))),
                            note.on,   note.hive,
                            note.yard, note.mass,
                            note.note};
        return counted(file, crop, word(ImportKind::CropNotes));
    }
    if (line.type->name == GoOut::name) {
        const auto sale = *fromRow<GoOut>(line.row);
        const auto goods = readGoods(file, sale.goods, "goods");
        if (!goods || goods->size() != 1) return RowThere::No;
        GoingOut out;
        out.on = sale.on;
        out.how = sale.how.value_or(OutHow::Sold);
        out.kind = goods->front().kind.id;
        out.count = Count(goods->front().count);
        out.each = sale.price;
        if (!out.each && out.how == OutHow::Sold) out.each = goods->front().kind.price;
        out.buyer = sale.buyer;
        out.place = sale.place;
        out.note = sale.note;
        return counted(file, out, word(ImportKind::Sales));
    }
    return RowThere::No;
}

}  // namespace combwright
