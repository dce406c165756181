#include "core/places/honey/blend_line.h"

#include <QRegularExpression>
#include <QString>
#include <algorithm>
#include <cctype>

#include "core/storage/queries/constants.h"
#include "core/words/figures.h"
#include "core/words/words.h"

namespace combwright {
namespace {

bool digitAt(const std::string& line, std::size_t at) {
    return at < line.size() && std::isdigit(static_cast<unsigned char>(line[at])) != 0;
}

/// Parts between commas; a comma in quotes or between two digits parts nothing.
std::vector<std::string> partsOfLine(const std::string& line) {
    std::vector<std::string> parts(1);
    bool quoted = false;
    for (std::size_t at = 0; at < line.size(); ++at) {
        if (line[at] == '"') quoted = !quoted;
        const bool decimal = at > 0 && digitAt(line, at - 1) && digitAt(line, at + 1);
        if (line[at] == ',' && !quoted && !decimal)
            parts.emplace_back();
        else
            parts.back() += line[at];
    }
    return parts;
}

bool notEmptyOn(const Read& file, const Bucket& bucket, Day on) {
    const VesselLedger ledger = vesselLedger(file, {bucket.id, std::nullopt}, on);
    return ledger.since <= on && !ledger.empty;
}

Refusal partRefused(Code code, const std::string& name) {
    return Refusal{code, "parts", {{"name", name}}};
}

std::string withoutQuotes(const QString& name) {
    const bool quoted =
        name.size() > 2 && name.front() == QLatin1Char('"') && name.back() == QLatin1Char('"');
    return (quoted ? name.mid(1, name.size() - 2) : name).toStdString();
}

}  // namespace

Result<Vessel> vesselNamed(const Read& file, const std::string& name, Day on,
                           const std::string& field) {
    if (const auto lot = file.first<Lot>({is("name", name)})) return Vessel{std::nullopt, lot->id};
    std::vector<Bucket> found = file.where<Bucket>({is("mark", name)});
    for (std::size_t of = name.find(" of "); found.empty() && of != std::string::npos;
         of = name.find(" of ", of + 1))
        if (const auto run = file.first<Extraction>({is("name", name.substr(of + 4))}))
            found = file.where<Bucket>({is("extraction", run->id), is("mark", name.substr(0, of))});
    if (found.size() > 1)
        std::erase_if(found, [&](const Bucket& each) { return !notEmptyOn(file, each, on); });
    if (found.size() == 1) return Vessel{found.front().id, std::nullopt};
    return Refusal{found.empty() ? Code::NotFound : Code::Ambiguous, field, {{"name", name}}};
}

Result<std::vector<PartMeant>> readBlendLine(const Read& file, const std::string& line, Day on) {
    static const QRegularExpression shape(QStringLiteral(
        "^(.*?\\S)\\s+(all|[0-9][0-9.,]*\\s*(?:kg|g|lb|oz)(?:\\s+[0-9][0-9.,]*\\s*oz)?)$"));
    std::vector<PartMeant> parts;
    for (const std::string& text : partsOfLine(line)) {
        const QString part = fromUtf8(text).trimmed();
        if (part.isEmpty()) continue;
        const auto match = shape.match(part);
        if (!match.hasMatch())
            return Refusal{Code::WrongType,
                           "parts",
                           {{"value", part.toStdString()}, {"wanted", "B1 all, B3 6.2 kg"}}};
        const std::string name = withoutQuotes(match.captured(1));
        const auto from = vesselNamed(file, name, on, "parts");
        if (!from) return from.error();
        PartMeant meant{*from, std::nullopt};
        if (match.captured(2) != QLatin1String("all")) {
            meant.mass = typedMass(match.captured(2));
            if (!meant.mass)
                return Refusal{Code::WrongType,
                               "parts",
                               {{"value", part.toStdString()}, {"wanted", "B3 6.2 kg, B3 6234 g"}}};
            if (*meant.mass <= Mass()) return Refusal{Code::OutOfRange, "parts", {{"low", "0"}}};
        }
        if (std::any_of(parts.begin(), parts.end(),
                        [&](const PartMeant& each) { return each.from == meant.from; }))
            return partRefused(Code::Duplicate, name);
        parts.push_back(meant);
    }
    if (parts.empty()) return Refusal{Code::Missing, "parts", {}};
    return parts;
}

Mass roomInTank(const Read& file, Mass holds, Day on) {
    const double headroom = constantOr(file, "tank_headroom_share", {}, on, 0.05);
    return Mass::roundedGrams(static_cast<double>(holds.grams()) * (1.0 - headroom));
}

std::string blendLine(const Read& file, const std::vector<PartMeant>& parts) {
    std::string line;
    for (const PartMeant& each : parts) {
        if (!line.empty()) line += ", ";
        const std::string name = nameOf(file, each.from);
        line += name.find(',') == std::string::npos ? name : '"' + name + '"';
        line += each.mass ? " " + std::to_string(each.mass->grams()) + " g" : " all";
    }
    return line;
}

}  // namespace combwright
