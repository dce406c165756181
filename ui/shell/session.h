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
#include "core/storage/backup.h"
#include "core/storage/season.h"
#include "core/storage/sqlite/storage_error.h"
#include "core/words/units.h"
#include "ui/look/tokens.h"
#include "ui/shell/drafts.h"

namespace combwright {

/// The machine's clock on another day: a sample season is looked at when it has just happened.
class ClockOfDay : public Clock {
  public:
    ClockOfDay(const Clock& clock, Day day) : m_clock(clock), m_day(day) {}
    Day today() const override { return m_day; }
    Instant now() const override { return m_clock.now(); }
    std::int64_t steadyMs() const override { return m_clock.steadyMs(); }

  private:
    const Clock& m_clock;
    Day m_day;
};

class DemoShelf;
enum class DemoUntil;

class Session : public QObject {
    Q_OBJECT

  public:
    explicit Session(const Clock& clock, QObject* parent = nullptr);
    ~Session() override;

    /// Today; with the sample season open, the day its story has come to.
    const Clock& clock() const {
        return m_sampleClock ? static_cast<const Clock&>(*m_sampleClock) : m_clock;
    }
    /// The machine's own, for what outlives the season that is open.
    const Clock& machineClock() const { return m_clock; }
    const Look& look() const { return m_look; }
    void setLook(const Look& look);
    /// What is shown and typed from now on; what is recorded stays as it is.
    void setUnits(Units units);

    /// Opens a season file; false when it could not be opened, which was then told. What was open
    /// before stays open until the other is.
    bool open(const QString& path);
    /// Makes a season file and opens it; likewise.
    bool make(const QString& path);
    /// Opens a throw-away copy of the invented sample season; likewise.
    bool exploreSample();
    /// The same as far as the shelf has it told until then, on that day; likewise. Nothing is said.
    bool exploreSample(DemoShelf& shelf, DemoUntil until);
    /// One script more of it is told; false when that failed, which was told.
    bool tellOn(DemoShelf& shelf);
    bool isSample() const { return m_sampleFolder != nullptr; }  ///< goes when it is left
    /// Makes a new season file out of a copy, proves it and opens it; likewise. The copy stays.
    bool restore(const QString& copy, const QString& to);
    /// Saves what a damaged season still holds into a new file, and opens that. `report` says what
    /// was saved and what was not.
    bool salvage(const QString& from, const QString& to, QStringList& report);
    /// The season as it stood after a step, in a session of its own that goes with its copy;
    /// nothing when it could not be made, which was then told here.
    std::unique_ptr<Session> asItStood(std::int64_t step, Day day);
    /// Another file beside this one, likewise.
    std::unique_ptr<Session> beside(const QString& path);
    /// Makes a what-if of the season in a new file; false when it was refused, which was told.
    bool beginWhatIf(const QString& to, const QString& name);
    /// What the open file says of itself where it is no season to go on with; else empty.
    QString copyTitle() const;
    QString copySentence() const;
    /// What is made into a page from now on is of this season: its mark goes on it.
    void markPapers() const;
    /// What a copy holds; without an answer `trouble` says why it cannot be read.
    static std::optional<CopyContents> lookInto(const QString& copy, QString& trouble);
    /// Keeps what is open as a new, proven file and goes on with that; what is half typed stays.
    /// The way out where the file was moved or replaced, or may not be written.
    bool keepOursAs(const QString& path);
    /// Where something was changed since the file was opened: makes a proven copy in the folder of
    /// copies beside it. Called when the program ends; a copy that cannot be made is told.
    void keepCopy();
    void close();
    bool hasSeason() const { return m_season != nullptr; }
    Season& season() { return *m_season; }
    const Read& read() const { return m_season->read(); }
    /// Where the open season lies; empty without one.
    QString path() const;

    /// Why a file could not be opened, until another is.
    struct NotOpened {
        QString path;
        QString says;
        bool newer = false;    ///< made by a newer program
        bool damaged = false;  ///< what it still holds may be saved into a new file
    };
    const std::optional<NotOpened>& notOpened() const { return m_notOpened; }

    /// Reads anew where another program wrote, and sees whether the file is still the one that was
    /// opened. Called when the person comes back to the window.
    void lookAgain();
    /// Where the path leads, asked of the disk now.
    Season::Standing standing() const;
    /// Why nothing will be changed; empty where the season may be written.
    QString readingOnly() const;

    /// Lines still being typed.
    Drafts& drafts() { return m_drafts; }
    /// For pictures and prints: keep nothing beside the season file.
    void leaveNoTrace() { m_leavesTrace = false; }
    bool leavesTrace() const { return m_leavesTrace; }

    /// Performs an action. Nothing when it was refused or failed, which was then told.
    template <class Action>
    std::optional<typename Action::Answer> run(const Action& action, const StepNote& note = {}) {
        std::optional<typename Action::Answer> answer;
        if (!m_season) return answer;
        acting([&]() -> Result<void> {
            auto done = perform(*m_season, action, note);
            if (!done) return done.error();
            answer = *std::move(done);
            return {};
        });
        return answer;
    }
    /// Several actions of one deed, all of them or none; false when that was refused or failed,
    /// which was then told.
    bool together(const std::function<Result<void>(Season&)>& deeds) {
        return acting([&] { return m_season->together([&] { return deeds(*m_season); }); });
    }
    /// A deed of the shell's own; what is refused or fails is told, and false answered.
    bool doing(const std::function<Result<void>(Season&)>& deed) {
        return m_season && acting([&] { return deed(*m_season); });
    }
    /// What a thread of ours needs to open the season for itself; nothing where that cannot be,
    /// which was then told.
    std::optional<SeasonSeen> seen();
    /// While such a thread writes, nobody looks whether another program did: it would wait for us.
    void awaitOurs(bool waits) { m_awaitsOurs = waits; }
    /// Takes over what such a thread kept: `outcome` gives the step, 0 for none, or what came in
    /// its way, which is told. Whether it was kept.
    bool keptByOurs(const std::function<Result<std::int64_t>()>& outcome);
    /// Reads for a view. A file that cannot be read is told, here and in the notice under the head,
    /// and false is answered; while a season is being opened the error goes on to who opens it.
    bool reading(const std::function<void()>& view);
    /// Why the file could not be read when a view last tried; empty where it could.
    const QString& unreadable() const { return m_unreadable; }
    /// Takes back the step the foot names; where another program wrote since, it only says so.
    void undo();
    void redo();

    /// The words beside "undo" in the foot: what would be taken back, and when it was kept.
    QString undoText() const;
    /// What would be done again; empty where nothing was taken back.
    QString redoText() const;
    /// Says something in the foot of the window; `bad` when it needs the person's eye.
    void tell(const QString& text, bool bad = false);
    const QString& lastTold() const { return m_told; }
    /// What was refused is closed or given up, so that nothing is told of it any more.
    void forgetRefusal();
    /// What looked odd about the last thing kept; empty when nothing did.
    const QString& lastAsked() const { return m_asked; }

  Q_SIGNALS:
    void seasonChanged();   ///< another file is open, or none: what was shown of the last goes
    void seasonReady();     ///< after seasonChanged, when everybody has let go of the last
    void pathChanged();     ///< the same season goes on in another file, or in its own again
    void openingFailed();   ///< see notOpened()
    void readingChanged();  ///< see unreadable()
    void movedAway();       ///< the file was moved or replaced: nothing more is written to it
    void changed(const combwright::Change& change);
    void lookChanged();
    void unitsChanged();
    void told(const QString& text, bool bad);

  private:
    bool guarded(const std::function<Result<void>()>& deed);
    /// The same for what a person does: once it is done, what was refused before is told no more.
    bool acting(const std::function<Result<void>()>& deed);
    bool opening(const QString& path, const std::function<Result<void>()>& deed);
    void adopt(Season season, std::unique_ptr<QTemporaryDir> sampleFolder = nullptr,
               std::optional<Day> day = std::nullopt);
    void listen();
    void seeNext();
    bool stepIsAnother(const std::optional<JournalEntry>& shown,
                       const std::optional<JournalEntry>& now);
    std::int64_t newestStep() const;

    const Clock& m_clock;
    Look m_look;
    Drafts m_drafts;
    std::unique_ptr<Season> m_season;
    std::unique_ptr<QTemporaryDir> m_sampleFolder;
    std::optional<ClockOfDay> m_sampleClock;
    std::int64_t m_stepAtOpening = 0;
    void askBack(const Change& change);

    std::optional<JournalEntry> m_undo;  ///< as the foot shows it
    std::optional<JournalEntry> m_redo;
    std::optional<NotOpened> m_notOpened;
    std::optional<Trouble> m_trouble;  ///< what the world did to the last deed
    QString m_unreadable;
    bool m_isOpening = false;  ///< the views fill themselves from a file that may yet be damaged
    bool m_leavesTrace = true;
    bool m_movedWasSaid = false;
    bool m_awaitsOurs = false;
    bool m_followsOurs = false;
    QString m_told;
    bool m_toldBad = false;
    int m_tellings = 0;
    QString m_asked;
    bool m_askPending = false;  ///< asked, and not yet shown beside what was told
};

}  // namespace combwright
