// What an import does away from the window, so that the window answers meanwhile: a table read and
// planned, a plan kept. One thing at a time; asked anew, what was being looked at is given up. The
// thread opens the season for itself and never touches the window's own connection.
#pragma once

#include <QByteArray>
#include <QFutureWatcher>
#include <QObject>
#include <QThreadPool>
#include <exception>
#include <memory>
#include <optional>

#include "core/exchange/import/import_plan.h"
#include "core/support/progress.h"
#include "ui/shell/session.h"

namespace combwright {

/// A table to look at: by its bytes, or else by its path.
struct ImportTable {
    QString path;
    QByteArray bytes;
    std::optional<ImportKind> kind;               ///< else the one it speaks of itself
    ImportKind otherwise = ImportKind::Hives;     ///< where it speaks of none
    std::optional<ImportMap> map = std::nullopt;  ///< else the one of the last time
};

/// What was found of it.
struct ImportLook {
    QString path;
    QString unreadable;  ///< why the file could not be read; empty where it could
    QByteArray bytes;
    ImportKind kind = ImportKind::Hives;
    ImportMap map;
    bool isRemembered = false;
    std::shared_ptr<const ImportPlan> plan;
    std::optional<Refusal> refused;
    std::exception_ptr trouble;  ///< of the season's file
};

/// A plan to carry out. With a path for them, refused rows are saved there and stay out.
struct ImportKeeping {
    std::shared_ptr<const ImportPlan> plan;
    QString tableName;
    QString rejects;
};

class ImportWork : public QObject {
    Q_OBJECT

  public:
    ImportWork(Session& session, QObject* parent);
    /// Gives up what it does.
    ~ImportWork() override;

    void look(const ImportTable& table);
    void keep(const ImportKeeping& keeping);
    /// Gives it up: of what was being kept nothing is, and kept() tells so.
    void stop();
    bool isLooking() const { return m_isLooking; }
    bool isKeeping() const { return m_isKeeping; }
    int percent() const { return m_progress ? m_progress->percent() : 0; }

  Q_SIGNALS:
    void looked(std::shared_ptr<const combwright::ImportLook> look);
    /// Whether it was kept; if not, why not was told.
    void kept(bool isKept);

  private:
    struct Outcome {
        Result<std::int64_t> step = std::int64_t{0};
        QString unsaved;  ///< why the refused rows could not be saved
        std::exception_ptr trouble;
    };
    static std::shared_ptr<const ImportLook> lookAt(const ImportTable& table,
                                                    const SeasonSeen& seen, const Clock& clock,
                                                    Progress& progress);
    static Outcome carryOut(const ImportKeeping& keeping, const SeasonSeen& seen,
                            const Clock& clock, Progress& progress);
    void ended(const ImportKeeping& keeping);

    Session& m_session;
    QThreadPool m_pool;
    std::shared_ptr<Progress> m_progress;
    QFutureWatcher<std::shared_ptr<const ImportLook>> m_looking;
    QFutureWatcher<Outcome> m_keeping;
    ImportKeeping m_kept;
    bool m_isLooking = false;
    bool m_isKeeping = false;
};

}  // namespace combwright
