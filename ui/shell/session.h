// What all places share: the open season, the day, how things look, and the one way to act. An
// action the core refuses, or a file that cannot be written, is told in the foot of the window;
// what was typed stays where it was typed.
#pragma once

#include <QObject>
#include <QTemporaryDir>
#include <functional>
#include <memory>
#include <optional>

#include "core/actions/action.h"
#include "core/storage/season.h"
#include "core/storage/sqlite/storage_error.h"
#include "core/words/units.h"
#include "ui/look/tokens.h"

namespace combwright {

class Session : public QObject {
    Q_OBJECT

  public:
    explicit Session(const Clock& clock, QObject* parent = nullptr);

    const Clock& clock() const { return m_clock; }
    const Look& look() const { return m_look; }
    void setLook(const Look& look);
    /// What is shown and typed from now on; what is recorded stays as it is.
    void setUnits(Units units);

    /// Opens a season file; false when it could not be opened, which was then told.
    bool open(const QString& path);
    /// Makes a season file and opens it; likewise.
    bool make(const QString& path);
    /// Opens a throw-away copy of the invented sample season; likewise.
    bool exploreSample();
    /// Where something was changed since the file was opened: makes a proven copy in the folder of
    /// copies beside it. Called when the program ends; a copy that cannot be made is told.
    void keepCopy();
    void close();
    bool hasSeason() const { return m_season != nullptr; }
    Season& season() { return *m_season; }
    const Read& read() const { return m_season->read(); }

    /// Performs an action. Nothing when it was refused or failed, which was then told.
    template <class Action>
    std::optional<typename Action::Answer> run(const Action& action, const StepNote& note = {}) {
        std::optional<typename Action::Answer> answer;
        guarded([&]() -> Result<void> {
            auto done = perform(*m_season, action, note);
            if (!done) return done.error();
            answer = *std::move(done);
            return {};
        });
        return answer;
    }
    /// Several actions, all of them or none; false where one was refused or failed, which was then
    /// told.
    bool together(const std::function<Result<void>(Season&)>& deeds) {
        return guarded([&] { return m_season->together([&] { return deeds(*m_season); }); });
    }
    void undo();
    void redo();

    /// The words beside "undo" in the foot: what would be taken back, and when it was kept.
    QString undoText() const;
    /// Says something in the foot of the window; `bad` when it needs the person's eye.
    void tell(const QString& text, bool bad = false);
    const QString& lastTold() const { return m_told; }

  Q_SIGNALS:
    void seasonChanged();  ///< another file is open, or none
    void changed(const combwright::Change& change);
    void lookChanged();
    void unitsChanged();
    void told(const QString& text, bool bad);

  private:
    bool guarded(const std::function<Result<void>()>& deed);
    void listen();
    std::int64_t newestStep() const;

    const Clock& m_clock;
    Look m_look;
    std::unique_ptr<Season> m_season;
    std::unique_ptr<QTemporaryDir> m_sampleFolder;
    std::int64_t m_stepAtOpening = 0;
    QString m_told;
};

}  // namespace combwright
