#include "core/actions/action.h"

#include "core/exchange/described_json.h"

namespace combwright {

const ActionType* findActionType(std::string_view name) {
    for (const ActionType& type : actionTypes())
        if (type.name == name) return &type;
    return nullptr;
}

Result<void> demandWhy(const ActionType& type, const StepNote& note) {
    const bool said = note.why.find_first_not_of(" \t\r\n") != std::string::npos;
    if (type.needsWhy && !said) return Refusal{Code::Missing, "why", {}};
    return {};
}

std::string playLine(const ActionType& type, const Row& row, const StepNote& note) {
    const auto text = [](std::string_view view) {
        return QJsonValue(QString::fromUtf8(view.data(), static_cast<qsizetype>(view.size())));
    };
    std::vector<std::pair<std::string, QJsonValue>> pairs{{"do", text(type.name)}};
    const Fields& fields = type.fields();
    for (std::size_t i = 0; i < row.size(); ++i)
        if (!std::holds_alternative<std::monostate>(row[i]))
            pairs.emplace_back(fields[i].key(), toJson(fields[i], row[i]));
    if (!note.why.empty()) pairs.emplace_back("why", text(note.why));
    if (!note.sheet.empty()) pairs.emplace_back("sheet", text(note.sheet));
    return jsonLine(pairs);
}

Result<ActionDone> performRow(Season& season, const ActionType& type, const Row& row,
                              const StepNote& note) {
    if (auto said = demandWhy(type, note); !said) return said.error();
    ActionDone done;
    const StepInfo info{std::string(type.name), playLine(type, row, note), note.why, note.sheet};
    auto step = season.perform(info, [&](Write& file) -> Result<void> {
        auto made = type.perform(row, file);
        if (!made) return made.error();
        done.made = *std::move(made);
        return {};
    });
    if (!step) return step.error();
    done.step = *std::move(step);
    return done;
}

}  // namespace combwright
