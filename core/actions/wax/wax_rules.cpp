#include "core/actions/wax/wax_rules.h"

#include <algorithm>
#include <cctype>
#include <charconv>
#include <cmath>

#include "core/actions/storeroom/quarantine.h"
#include "core/storage/queries/wax_ledger.h"

namespace combwright {
namespace {

std::string trimmed(std::string_view text) {
    const auto blank = [](char c) { return c == ' ' || c == '\t'; };
    while (!text.empty() && blank(text.front())) text.remove_prefix(1);
    while (!text.empty() && blank(text.back())) text.remove_suffix(1);
    return std::string(text);
}

/// Refused with Taken where another record of the table has the name.
template <class Record>
Result<void> demandNameFree(const Read& file, const Record& record) {
    for (const Record& each : file.where<Record>({is("name", record.name)}))
        if (each.id != record.id)
            return Refusal{Code::Taken, "name", {{"name", record.name.text()}}};
    return {};
}

Result<void> notBefore(Day on, Day began) {
    if (on < began) return Refusal{Code::BeforeItBegan, "on", {{"since", isoText(began)}}};
    return {};
}

std::string gramsText(Mass mass) { return std::to_string(mass.grams()); }

}  // namespace

Refusal liesBefore(const char* field, Day day, const char* other, Day before) {
    return {Code::Contradiction,
            field,
            {{"other", other}, {"day", isoText(day)}, {"before", isoText(before)}}};
}

Result<void> demandWax(const std::optional<Known<Mass>>& mass, const std::string& field,
                       bool needed) {
    const bool said = mass && mass->value;
    if (needed && !said) return Refusal{Code::Missing, field};
    if (!said) return {};
    const Mass least = needed ? Mass::grams(1) : Mass();
    if (*mass->value < least || *mass->value > mostWax || (mass->to && *mass->to > mostWax))
        return Refusal{
            Code::OutOfRange, field, {{"low", gramsText(least)}, {"high", gramsText(mostWax)}}};
    return {};
}

Result<void> demandWaxHeat(const std::optional<Temperature>& temperature) {
    if (temperature &&
        (*temperature < Temperature::tenths(0) || *temperature > Temperature::tenths(1000)))
        return Refusal{Code::OutOfRange, "temperature_c", {{"low", "0"}, {"high", "100"}}};
    return {};
}

Result<void> demandBatch(const Read& file, const WaxBatch& batch) {
    if (auto ok = demandNameFree(file, batch); !ok) return ok.error();
    if (auto ok = demandWax(batch.raw, "raw_g"); !ok) return ok.error();
    if (batch.combs && (batch.combs->value() < 1 || batch.combs->value() > 100'000))
        return Refusal{Code::OutOfRange, "combs", {{"low", "1"}, {"high", "100000"}}};
    return {};
}

Result<void> demandWaxStep(const Read& file, const WaxStep& step) {
    const auto batch = file.find(step.batch);
    if (!batch) return Refusal{Code::NotFound, "batch"};
    if (auto ok = notBefore(step.on, batch->on); !ok) return ok.error();
    if (auto ok = demandWax(step.putIn, "put_in_g"); !ok) return ok.error();
    if (auto ok = demandWax(step.cameOut, "came_out_g"); !ok) return ok.error();
    if (auto ok = demandWaxHeat(step.temperature); !ok) return ok.error();
    const auto in = atMost(step.putIn);
    const bool said = step.cameOut && step.cameOut->value;
    // Washed wax carries water out.
    if (in && said && *step.cameOut->value > *in && step.work != WaxWork::Washed)
        return Refusal{Code::TooMany, "came_out_g", {{"most", gramsText(*in)}}};
    const bool together = step.work == WaxWork::GoneTogether;
    if (together != step.into.has_value())
        return Refusal{
            step.into ? Code::Contradiction : Code::Missing, "into_batch", {{"other", "work"}}};
    const bool drips = step.work == WaxWork::Dripped || step.work == WaxWork::Pressed ||
                       step.work == WaxWork::Melted;
    if (step.bucket && !drips) return Refusal{Code::Contradiction, "bucket", {{"other", "work"}}};
    if (step.hive && step.work != WaxWork::BeesCleaned)
        return Refusal{Code::Contradiction, "hive", {{"other", "work"}}};
    if (step.bucket) {
        // Honey keeps its parents: it belongs to a run whose cappings these are.
        const auto bucket = file.find(step.bucket);
        const auto sources = file.where<WaxSource>({is("batch", step.batch)});
        const bool own =
            bucket && std::any_of(sources.begin(), sources.end(),
                                  [&](const auto& each) { return each.run == bucket->extraction; });
        if (!own) return Refusal{Code::Contradiction, "bucket", {{"other", "batch"}}};
    }
    if (step.into) {
        if (*step.into == step.batch)
            return Refusal{Code::Contradiction, "into_batch", {{"other", "batch"}}};
        const auto other = file.find(*step.into);
        if (!other) return Refusal{Code::NotFound, "into_batch"};
        if (auto ok = notBefore(step.on, other->on); !ok) return ok.error();
        // Two batches cannot each have gone into the other.
        const BatchLedger there = batchLedger(file, *other, step.on);
        if (there.wentInto) return Refusal{Code::Closed, "into_batch"};
    }
    for (const WaxStep& each : file.where<WaxStep>({is("batch", step.batch)}))
        if (each.into && each.id != step.id && each.on <= step.on)
            return Refusal{Code::Closed, "batch", {{"since", isoText(each.on)}}};
    return {};
}

Refusal heldWax(std::string field, std::string wax, const WaxHold& held) {
    Refusal refusal = heldBack(std::move(field), held.name, held.hold);
    refusal.values.emplace_back("wax", std::move(wax));
    return refusal;
}

Result<void> demandBeesMayClean(const Read& file, const WaxStep& step) {
    if (step.work != WaxWork::BeesCleaned) return {};
    if (step.hive)
        if (auto ok = demandLivable(file, *step.hive, step.on, {}, "hive"); !ok) return ok.error();
    if (const auto holds = HeldWax(file, step.on).of(step.batch); !holds.empty()) {
        const auto batch = file.find(step.batch);
        return heldWax("batch", batch ? batch->name.text() : std::string(), holds.front());
    }
    return {};
}

Result<void> demandStepLedger(const Read& file, const std::optional<Id<WaxBatch>>& id,
                              const std::string& field) {
    const auto batch = file.find(id);
    if (!batch) return {};
    const BatchLedger ledger = batchLedger(file, *batch, *parseDay("9999-12-31"));
    const auto above = stepAboveBatch(ledger);
    if (!above) return {};
    return Refusal{Code::TooMany,
                   field.empty() ? std::string(above->cameOut ? "came_out_g" : "put_in_g") : field,
                   {{"most", gramsText(above->most)}}};
}

Result<void> demandAboutDay(Instant at, Day on, const std::string& field) {
    if (isAboutDay(at, on)) return {};
    return Refusal{
        Code::OutOfRange, field, {{"low", isoText(on - days(1))}, {"high", isoText(on + days(1))}}};
}

Result<void> demandBatchLedger(const Read& file, const std::optional<Id<WaxBatch>>& id,
                               const std::string& field) {
    const auto batch = file.find(id);
    if (!batch) return {};
    const BatchLedger ledger = batchLedger(file, *batch, *parseDay("9999-12-31"));
    if (ledger.in && ledger.clean > *ledger.in)
        return Refusal{Code::TooMany, field, {{"most", gramsText(*ledger.in)}}};
    return {};
}

Result<void> demandBlock(const Read& file, const WaxBlock& block) {
    if (auto ok = demandNameFree(file, block); !ok) return ok.error();
    if (auto ok = demandWax(block.mass, "mass_g"); !ok) return ok.error();
    if (block.mass && block.mass->value && *block.mass->value <= Mass())
        return Refusal{Code::OutOfRange, "mass_g", {{"low", "1"}}};
    if (block.fromCandles == true && (block.batch || !block.supplier.empty()))
        return Refusal{
            Code::Contradiction, "from_candles", {{"other", block.batch ? "batch" : "supplier"}}};
    if (!block.batch) return {};
    // Of the own batch or bought, not both.
    if (!block.supplier.empty())
        return Refusal{Code::Contradiction, "supplier", {{"other", "batch"}}};
    const auto batch = file.find(*block.batch);
    if (!batch) return Refusal{Code::NotFound, "batch"};
    if (auto ok = notBefore(block.on, batch->on); !ok) return ok.error();
    const BatchLedger ledger = batchLedger(file, *batch, block.on);
    if (ledger.wentInto) return Refusal{Code::Closed, "batch"};
    return {};
}

Result<void> demandBlockLedger(const Read& file, Id<WaxBlock> id, const std::string& field) {
    const auto block = file.find(id);
    if (!block) return Refusal{Code::NotFound, "block"};
    const BlockLedger ledger = blockLedger(file, *block, *parseDay("9999-12-31"));
    for (const WaxUse& use : ledger.uses)
        if (auto ok = notBefore(use.on, block->on); !ok) return ok.error();
    const auto most = atMost(block->mass);
    if (most && ledger.used > *most) {
        const WaxUse& last = ledger.uses.back();
        const Mass left = *most - (ledger.used - last.mass);
        return Refusal{Code::TooMany,
                       field,
                       {{"name", block->name.text()}, {"most", gramsText(std::max(left, Mass()))}}};
    }
    return {};
}

namespace {

Result<void> demandVolume(const Mould& mould) {
    const auto above = [](const std::optional<Length>& length) {
        return !length || *length > Length();
    };
    if (!above(mould.diameter)) return Refusal{Code::OutOfRange, "diameter_mm", {{"low", "0.1"}}};
    if (!above(mould.height)) return Refusal{Code::OutOfRange, "height_mm", {{"low", "0.1"}}};
    if (mould.oneWeighs &&
        (*mould.oneWeighs < Mass::grams(1) || *mould.oneWeighs > Mass::grams(100'000)))
        return Refusal{Code::OutOfRange, "one_weighs_g", {{"low", "1"}, {"high", "100000"}}};
    const bool sized = mould.diameter || mould.height || mould.tip;
    if (mould.volume) {
        if (mould.volume->value() <= 0 || mould.volume->value() > 100'000)
            return Refusal{Code::OutOfRange, "volume_ml", {{"low", "0"}, {"high", "100000"}}};
        if (mould.tip && mould.diameter && *mould.tip > *mould.diameter)
            return Refusal{Code::Contradiction, "tip_mm", {{"other", "diameter_mm"}}};
        if (volumeAgainstSize(mould) == VolumeAgainstSize::Impossible)
            return Refusal{Code::Contradiction, "volume_ml", {{"other", "diameter_mm"}}};
        return {};
    }
    if (mould.measured == true) return Refusal{Code::Missing, "volume_ml"};
    if (mould.oneWeighs) return {};
    if (!mould.shape || *mould.shape == MouldShape::Other) {
        // Nothing tells how much it holds: it may be written down, wax for it must then be said.
        return sized ? Result<void>(Refusal{Code::Missing, "shape"}) : Result<void>();
    }
    if (!mould.diameter) return Refusal{Code::Missing, "diameter_mm"};
    if (!mould.height) return Refusal{Code::Missing, "height_mm"};
    const bool taper = *mould.shape == MouldShape::Taper;
    if (taper && !mould.tip) return Refusal{Code::Missing, "tip_mm"};
    if (!taper && mould.tip) return Refusal{Code::Contradiction, "tip_mm", {{"other", "shape"}}};
    if (taper && *mould.tip > *mould.diameter)
        return Refusal{Code::Contradiction, "tip_mm", {{"other", "diameter_mm"}}};
    return {};
}

}  // namespace

Result<void> demandMould(const Read& file, const Mould& mould) {
    // The name of one that is gone is free from that day on.
    for (const Mould& each : file.where<Mould>({is("name", mould.name)})) {
        const bool before = each.gone && *each.gone <= mould.since;
        const bool after = mould.gone && *mould.gone <= each.since;
        if (each.id != mould.id && !before && !after)
            return Refusal{Code::Taken, "name", {{"name", mould.name.text()}}};
    }
    if (mould.cavities.value() < 1 || mould.cavities.value() > 10'000)
        return Refusal{Code::OutOfRange, "cavities", {{"low", "1"}, {"high", "10000"}}};
    if (auto ok = demandVolume(mould); !ok) return ok.error();
    if (mould.cycles && (mould.cycles->value() < 1 || mould.cycles->value() > 50))
        return Refusal{Code::OutOfRange, "cycles", {{"low", "1"}, {"high", "50"}}};
    if (mould.setHours && (mould.setHours->value() <= 0 || mould.setHours->value() > 1000))
        return Refusal{Code::OutOfRange, "set_hours", {{"low", "0"}, {"high", "1000"}}};
    if (mould.gone && *mould.gone < mould.since)
        return Refusal{Code::BeforeItBegan, "gone", {{"since", isoText(mould.since)}}};
    return demandCandle(file, mould.kind);
}

Result<Mould> mouldOn(const Read& file, Id<Mould> id, Day on) {
    const auto mould = file.find(id);
    if (!mould) return Refusal{Code::NotFound, "mould"};
    if (auto ok = notBefore(on, mould->since); !ok) return ok.error();
    if (mould->gone && *mould->gone <= on)
        return Refusal{Code::Closed, "mould", {{"since", isoText(*mould->gone)}}};
    return *mould;
}

Result<void> demandCandle(const Read& file, const std::optional<Id<GoodsKind>>& id) {
    const auto kind = file.find(id);
    if (!id) return {};
    if (!kind) return Refusal{Code::NotFound, "goods_kind"};
    if (kind->what != GoodsWhat::Candle)
        return Refusal{
            Code::NotAChoice, "goods_kind", {{"value", kind->name.text()}, {"choices", "candle"}}};
    return {};
}

const char* stepOutOfOrder(const Pour& pour) {
    Day before = pour.on;
    for (const auto& [step, field] :
         {std::pair(pour.released, "released"), std::pair(pour.trimmed, "trimmed"),
          std::pair(pour.labelled, "labelled")}) {
        if (step && *step < before) return field;
        if (step) before = *step;
    }
    return nullptr;
}

Result<void> demandPour(const Read& file, const Pour& pour, const Mould& mould,
                        const std::optional<Count>& cycles) {
    if (auto ok = demandCandle(file, pour.kind); !ok) return ok.error();
    if (cycles && (cycles->value() < 1 || cycles->value() > 50))
        return Refusal{Code::OutOfRange, "cycles", {{"low", "1"}, {"high", "50"}}};
    const std::int64_t pieces = piecesOf(pour);
    if (pieces < 1) return Refusal{Code::OutOfRange, "good", {{"low", "1"}}};
    const auto rounds = cycles ? cycles : mould.cycles;
    const std::int64_t most = mould.cavities.value() * (rounds ? rounds->value() : 1);
    if (pieces > most) return Refusal{Code::TooMany, "good", {{"most", std::to_string(most)}}};
    if (auto ok = demandWax(pour.returned, "returned_g"); !ok) return ok.error();
    if (pour.at)
        if (auto ok = demandAboutDay(*pour.at, pour.on, "poured_at"); !ok) return ok.error();
    return demandWaxHeat(pour.temperature);
}

Result<void> demandPourLedger(const Read& file, const std::optional<Id<Pour>>& id,
                              const std::string& field) {
    const auto pour = file.find(id);
    if (!pour || !pour->returned || !pour->returned->value) return {};
    const Mass drawn = waxPoured(file, pour->id);
    if (*pour->returned->value > drawn)
        return Refusal{Code::TooMany, field, {{"most", gramsText(drawn)}}};
    return {};
}

Result<void> demandBurnt(const Mould& mould, const std::optional<Known<Mass>>& burnt) {
    if (auto ok = demandWax(burnt, "burnt_g"); !ok) return ok.error();
    const auto one = neededFor(mould, 1);
    if (!one || !burnt || !burnt->value) return {};
    const auto most = static_cast<std::int64_t>(static_cast<double>(one->grams()) * waxOverMould) +
                      overMouldFreeG;
    if (burnt->value->grams() > most)
        return Refusal{Code::TooMany, "burnt_g", {{"most", std::to_string(most)}}};
    return {};
}

namespace {

/// A name and behind it perhaps a mass in g or kg.
struct BlockSaid {
    std::string name;
    std::optional<Mass> mass;
};

Result<BlockSaid> readBlockSaid(const std::string& part) {
    const auto wrong = [&] { return Refusal{Code::WrongType, "blocks", {{"value", part}}}; };
    BlockSaid said;
    const std::size_t unit = part.rfind(' ');
    const std::string last = unit == std::string::npos ? std::string() : part.substr(unit + 1);
    double factor = 0;
    std::string before = part;
    if (last == "g" || last == "kg") {
        factor = last == "kg" ? 1000 : 1;
        before = trimmed(std::string_view(part).substr(0, unit));
    } else {
        const bool kilos = part.ends_with("kg");
        const bool grams = !kilos && part.ends_with("g");
        const std::size_t letters = kilos ? 2 : 1;
        const bool digit =
            part.size() > letters &&
            std::isdigit(static_cast<unsigned char>(part[part.size() - letters - 1]));
        // A block may be called "big"; only a figure before the letter is a mass.
        if ((kilos || grams) && digit && unit != std::string::npos) {
            factor = kilos ? 1000 : 1;
            before = part.substr(0, part.size() - letters);
        }
    }
    if (factor == 0) {
        said.name = part;
        return said;
    }
    const std::size_t gap = before.rfind(' ');
    if (gap == std::string::npos) return wrong();
    const std::string figure = before.substr(gap + 1);
    double value = 0;
    const auto [end, error] = std::from_chars(figure.data(), figure.data() + figure.size(), value);
    if (error != std::errc() || end != figure.data() + figure.size() || !std::isfinite(value))
        return wrong();
    if (value * factor < 0.5 || value * factor > static_cast<double>(mostWax.grams()))
        return Refusal{Code::OutOfRange, "blocks", {{"low", "1"}, {"high", gramsText(mostWax)}}};
    said.name = trimmed(std::string_view(before).substr(0, gap));
    said.mass = Mass::roundedGrams(value * factor);
    if (said.name.empty()) return wrong();
    return said;
}

}  // namespace

Result<std::vector<WaxUse>> readWaxDrawn(const Read& file, std::string_view line, Day on,
                                         const std::optional<Mass>& needed) {
    const auto parts = waxParts(line);
    if (parts.empty()) return Refusal{Code::Missing, "blocks"};
    std::vector<WaxUse> drawn;
    Mass said;
    for (std::size_t i = 0; i < parts.size(); ++i) {
        const auto part = readBlockSaid(parts[i]);
        if (!part) return part.error();
        const auto named = Name::of(part->name);
        const auto blocks =
            named ? file.where<WaxBlock>({is("name", *named)}) : std::vector<WaxBlock>();
        if (blocks.empty()) return Refusal{Code::NotFound, "blocks", {{"name", part->name}}};
        WaxUse use;
        use.block = blocks.front().id;
        use.on = on;
        use.went = WaxWent::Poured;
        if (std::any_of(drawn.begin(), drawn.end(),
                        [&](const WaxUse& each) { return each.block == use.block; }))
            return Refusal{Code::Duplicate, "blocks", {{"name", part->name}}};
        if (part->mass) {
            use.mass = *part->mass;
        } else {
            // Only the last may be left to the reckoning, and only where there is any.
            if (i + 1 != parts.size() || !needed || *needed <= said)
                return Refusal{Code::Missing, "blocks", {{"name", part->name}}};
            use.mass = *needed - said;
            use.how = How::Assumed;
        }
        said = said + use.mass;
        drawn.push_back(use);
    }
    return drawn;
}

Result<void> demandWish(const Read& file, const CandleWish& wish) {
    if (auto ok = demandCandle(file, wish.kind); !ok) return ok.error();
    if (wish.count.value() < 1 || wish.count.value() > 1'000'000)
        return Refusal{Code::OutOfRange, "count", {{"low", "1"}, {"high", "1000000"}}};
    if (wish.by < wish.on) return liesBefore("wanted_by", wish.by, "on", wish.on);
    if (const auto shades = readShades(wish.shades); !shades) return shades.error();
    return {};
}

Result<std::array<bool, 7>> readWeekdays(std::string_view line) {
    static constexpr std::array<std::string_view, 7> names{"mon", "tue", "wed", "thu",
                                                           "fri", "sat", "sun"};
    std::array<bool, 7> meant{};
    std::string text(line);
    std::replace(text.begin(), text.end(), ' ', ',');
    const auto parts = waxParts(text);
    if (parts.empty()) meant.fill(true);
    for (std::string part : parts) {
        std::transform(part.begin(), part.end(), part.begin(),
                       [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
        const auto found = std::find(names.begin(), names.end(), part);
        if (found == names.end())
            return Refusal{Code::WrongType,
                           "weekdays",
                           {{"value", part}, {"wanted", "mon, tue, wed, thu, fri, sat, sun"}}};
        meant[static_cast<std::size_t>(found - names.begin())] = true;
    }
    return meant;
}

std::size_t weekdayOf(Day day) { return (std::chrono::weekday(day).iso_encoding() - 1) % 7; }

Result<void> demandPropolis(const Read& file, Id<PropolisMove> asked, const std::string& field) {
    std::optional<Day> worst;
    std::int64_t least = 0;
    for (const PropolisMove& move : file.all<PropolisMove>())
        if (const auto left = propolisLeft(file, move.on); left < least) {
            least = left;
            worst = move.on;
        }
    if (!worst) return {};
    Refusal refusal{Code::TooMany, field, {{"over_on", isoText(*worst)}}};
    const auto move = file.find(asked);
    const auto mass = move ? atMost(move->mass) : std::nullopt;
    const Mass most = Mass::grams(std::max<std::int64_t>((mass ? mass->grams() : 0) + least, 0));
    refusal.values.emplace_back("most", gramsText(most));
    return refusal;
}

Result<void> demandProject(const Read& file, const HiveProject& project) {
    if (auto ok = demandNameFree(file, project); !ok) return ok.error();
    if (project.pieces.value() < 1 || project.pieces.value() > 10'000)
        return Refusal{Code::OutOfRange, "pieces", {{"low", "1"}, {"high", "10000"}}};
    if (project.good && *project.good > project.pieces)
        return Refusal{Code::TooMany, "good", {{"most", std::to_string(project.pieces.value())}}};
    if (project.off && !project.putOn) return Refusal{Code::Missing, "put_on"};
    if (project.lidded && !project.off) return Refusal{Code::Missing, "taken_off"};
    if (project.wantedBy && *project.wantedBy < project.on)
        return liesBefore("wanted_by", *project.wantedBy, "on", project.on);
    if (auto ok = demandWax(project.net, "net_g"); !ok) return ok.error();
    std::optional<Day> before;
    const std::pair<const std::optional<Day>*, const char*> steps[] = {
        {&project.starter, "starter_in"},
        {&project.putOn, "put_on"},
        {&project.off, "taken_off"},
        {&project.lidded, "lidded_on"}};
    for (const auto& [step, field] : steps) {
        if (!*step) continue;
        if (before && **step < *before) return Refusal{Code::Contradiction, field};
        before = **step;
    }
    return {};
}

Result<void> demandProjectFree(const Read& file, const HiveProject& project, Day on,
                               const std::string& reason) {
    if (!project.hive) return {};
    if (auto ok = demandHiveFree(file, *project.hive, on, "hive"); !ok) return ok.error();
    return demandLivable(file, *project.hive, on, reason, "hive");
}

}  // namespace combwright
