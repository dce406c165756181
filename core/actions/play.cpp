#include "core/actions/play.h"

#include <QJsonObject>
#include <algorithm>

#include "core/actions/action_line.h"
#include "core/exchange/strict_json.h"

namespace combwright {
namespace {

constexpr std::string_view undoLine = "undo";
constexpr std::string_view redoLine = "redo";

class Player {
  public:
    explicit Player(Season& season) : m_season(season) {}

    Result<Played> perform(std::string_view text) {
        auto read = strictObject(text);
        if (!read) return read.error();
        const QJsonObject object = *std::move(read);
        const std::string name = object.value(QLatin1String("do")).toString().toStdString();
        if (name == undoLine || name == redoLine) return turn(name == undoLine, object);
        const auto type = actionOfLine(object);
        if (!type) return type.error();
        return performAction(**type, object);
    }

  private:
    Result<Played> turn(bool back, const QJsonObject& object) {
        if (object.size() > 1) {
            for (const QString& key : object.keys())
                if (key != QLatin1String("do"))
                    return Refusal{Code::UnknownKey, key.toStdString(), {}};
        }
        auto done = back ? m_season.undo() : m_season.redo();
        if (!done) return done.error();
        return Played{0, done->step, {}};
    }

    Result<Played> performAction(const ActionType& type, const QJsonObject& object) {
        const auto line =
            readActionLine(m_season.read(), type, object, m_named, m_season.clock().today());
        if (!line) return line.error();
        auto done = performRow(m_season, type, line->row, line->note);
        if (!done) return done.error();
        if (line->as) m_named[*line->as] = done->made;
        Played played{0, done->step.step, std::move(done->made)};
        // A day mistyped a month ahead looks like one noted in advance; a script of next year is
        // neither. All are kept, so that a season plays the same whatever the day, and all are
        // said.
        if (line->on && *line->on > m_season.clock().today()) played.ahead = line->on;
        return played;
    }

    Season& m_season;
    NamedHere m_named;
};

bool isSkipped(std::string_view line) {
    const std::size_t first = line.find_first_not_of(" \t\r");
    return first == std::string_view::npos || line[first] == '#';
}

PlayResult playLines(Season& season, std::string_view script) {
    PlayResult result;
    Player player(season);
    std::size_t number = 0;
    while (!script.empty()) {
        const std::size_t end = std::min(script.find('\n'), script.size());
        const std::string_view line = script.substr(0, end);
        script.remove_prefix(std::min(end + 1, script.size()));
        ++number;
        if (isSkipped(line)) continue;
        auto played = player.perform(line);
        if (!played) {
            result.stopped = PlayStopped{number, played.error(), result.steps.size()};
            break;
        }
        played->line = number;
        result.steps.push_back(*std::move(played));
    }
    return result;
}

}  // namespace

const std::vector<std::string_view>& turnLines() {
    static const std::vector<std::string_view> lines{undoLine, redoLine};
    return lines;
}

PlayResult play(Season& season, std::string_view script, AllOrNothing all) {
    if (all == AllOrNothing::No) return playLines(season, script);
    PlayResult result;
    const auto together = season.together([&]() -> Result<void> {
        result = playLines(season, script);
        if (result.stopped) return result.stopped->refusal;
        return {};
    });
    if (!together) {
        if (!result.stopped) result.stopped = PlayStopped{0, together.error(), 0};
        result.stopped->kept = 0;
        result.steps.clear();
    }
    return result;
}

std::string scriptOf(const Season& season) {
    auto entries = season.history();
    std::reverse(entries.begin(), entries.end());
    std::string script;
    for (const JournalEntry& entry : entries) {
        switch (entry.kind) {
            case StepKind::Do:
                script += entry.info.line;
                break;
            case StepKind::Undo:
                script += R"({"do":"undo"})";
                break;
            case StepKind::Redo:
                script += R"({"do":"redo"})";
                break;
        }
        script += '\n';
    }
    return script;
}

}  // namespace combwright
