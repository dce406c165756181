#include "core/actions/import_rows.h"

#include <algorithm>
#include <cassert>
#include <optional>

#include "core/actions/action_line.h"
#include "core/actions/load_season.h"
#include "core/exchange/strict_json.h"
#include "core/storage/audit.h"
#include "core/storage/journal.h"
#include "core/storage/queries/import_steps.h"

namespace combwright {
namespace {

/// Steps about steps, and whole files, do not come in by rows.
bool mayBeImported(std::string_view action) {
    return action != ImportRows::name && action != TakeBackImport::name &&
           action != LoadSeason::name;
}

std::vector<std::string> whatIsWrong(const Read& file) {
    std::vector<std::string> said;
    for (const AuditFinding& finding : audit(file)) said.push_back(finding.about + finding.says);
    std::sort(said.begin(), said.end());
    return said;
}

/// A text as it stands between the quotes of JSON, written as jsonLine() writes it.
void appendEscaped(std::string& json, std::string_view text) {
    static constexpr std::string_view plain = "\"\\\b\f\n\r\t";
    static constexpr std::string_view escaped = "\"\\bfnrt";
    static constexpr std::string_view digits = "0123456789abcdef";
    for (const char c : text) {
        const auto at = plain.find(c);
        const auto byte = static_cast<unsigned char>(c);
        if (at != std::string_view::npos) {
            json += '\\';
            json += escaped[at];
        } else if (byte < 0x20) {
            json += "\\u00";
            json += digits[byte >> 4];
            json += digits[byte & 15];
        } else {
            json += c;
        }
    }
}

/// The play line of an import, without the texts of twice its size that lead there otherwise.
std::string importPlayLine(const ImportRows& head,
                           const std::function<void(const LineTaker&)>& lines) {
    // In place of the lines one letter, for a text that is empty is no key at all.
    ImportRows begun = head;
    begun.lines = "-";
    std::string line = playLine(*findActionType(ImportRows::name), toRow(begun), {});
    constexpr std::string_view end = R"(-"})";
    assert(line.ends_with(end));
    line.resize(line.size() - end.size());
    std::string piece;
    std::size_t size = line.size() + 2;
    lines([&](std::string_view each) {
        piece.clear();
        appendEscaped(piece, each);
        size += piece.size() + 2;
        return true;
    });
    line.reserve(size);
    lines([&](std::string_view each) {
        appendEscaped(line, each);
        line += "\\n";
        return true;
    });
    return line + "\"}";
}

/// A line done; what it made or touched.
Result<Made> performLine(Write& file, std::string_view line, std::size_t number) {
    const auto read = readImportLine(file, line);
    auto done = read ? read->type->perform(read->row, file) : Result<Made>(read.error());
    if (done) return done;
    Refusal refusal = done.error();
    refusal.values.emplace_back("import_line", std::to_string(number));
    return refusal;
}

}  // namespace

Result<ImportLine> readImportLine(const Read& file, std::string_view line) {
    auto object = strictObject(line);
    if (!object) return object.error();
    const auto type = actionOfLine(*object);
    if (!type) return type.error();
    if (!mayBeImported((*type)->name))
        return Refusal{Code::OtherAction, "lines", {{"action", std::string((*type)->name)}}};
    // The line must mean the same on every day it is played.
    const auto day = parseDay(object->value(QLatin1String("on")).toString().toStdString());
    if (!day) return Refusal{Code::Missing, "on", {}};
    auto read = readActionLine(file, **type, *object, {}, *day);
    if (!read) return read.error();
    if (auto said = demandWhy(**type, read->note); !said) return said.error();
    return ImportLine{*type, std::move(read->row)};
}

const Fields& ImportRows::fields() {
    static const Fields all =
        describe(field<&ImportRows::on>("on"), field<&ImportRows::rowsOf>("rows_of"),
                 field<&ImportRows::fileName>("file_name"), field<&ImportRows::lines>("lines"));
    return all;
}

Result<Made> ImportRows::perform(Write& file) const {
    Made made;
    std::size_t number = 0;
    std::string_view rest = lines;
    while (!rest.empty()) {
        const std::size_t end = std::min(rest.find('\n'), rest.size());
        const std::string_view line = rest.substr(0, end);
        rest.remove_prefix(std::min(end + 1, rest.size()));
        ++number;
        if (line.find_first_not_of(" \t\r") == std::string_view::npos) continue;
        auto done = performLine(file, line, number);
        if (!done) return done.error();
        made.insert(made.end(), done->begin(), done->end());
    }
    if (made.empty()) return Refusal{Code::Missing, "lines", {}};
    return made;
}

Result<std::int64_t> performEach(Season& season, const ImportRows& head,
                                 const std::function<void(const LineTaker&)>& lines,
                                 Progress& progress) {
    StepInfo info;
    info.action = ImportRows::name;
    info.line = importPlayLine(head, lines);
    const auto done = season.perform(info, [&](Write& file) -> Result<void> {
        std::optional<Refusal> refused;
        std::size_t number = 0;
        lines([&](std::string_view line) {
            if (progress.advance()) {
                if (auto made = performLine(file, line, ++number); !made) refused = made.error();
            } else {
                refused = Refusal{Code::Stopped, {}, {}};
            }
            return !refused;
        });
        if (refused) return *std::move(refused);
        if (number == 0) return Refusal{Code::Missing, "lines", {}};
        return {};
    });
    if (!done) return done.error();
    return done->step;
}

const Fields& TakeBackImport::fields() {
    static const Fields all =
        describe(field<&TakeBackImport::on>("on"), field<&TakeBackImport::step>("import_step"));
    return all;
}

Result<Made> TakeBackImport::perform(Write& file) const {
    const auto entry = Journal(file.database()).entry(step.value());
    if (!entry || !entry->stands)
        return Refusal{Code::NotFound, "import_step", {{"name", std::to_string(step.value())}}};
    if (entry->info.action != ImportRows::name)
        return Refusal{Code::OtherAction, "import_step", {{"action", "undo"}}};
    const auto before = whatIsWrong(file);
    const auto rows = takeBackStep(file.database(), entry->seq);
    if (!rows) return rows.error();
    const auto after = whatIsWrong(file);
    if (!std::includes(before.begin(), before.end(), after.begin(), after.end()))
        return Refusal{Code::MovedOn, "import_step", {{"step", std::to_string(step.value())}}};
    return Made{};
}

}  // namespace combwright
