#include "ui/shell/import/import_work.h"

#include <QFile>
#include <QtConcurrentRun>
#include <utility>

#include "core/words/words.h"
#include "ui/print/keep_bytes.h"
#include "ui/shell/import/import_memory.h"

namespace combwright {

ImportWork::ImportWork(Session& session, QObject* parent) : QObject(parent), m_session(session) {
    m_pool.setMaxThreadCount(1);
    connect(&m_looking, &QFutureWatcherBase::finished, this, [this] {
        m_isLooking = false;
        Q_EMIT looked(m_looking.result());
    });
    connect(&m_keeping, &QFutureWatcherBase::finished, this, [this] { ended(m_kept); });
}

ImportWork::~ImportWork() {
    stop();
    m_pool.waitForDone();
    if (m_isKeeping) m_session.awaitOurs(false);
}

void ImportWork::stop() {
    if (m_progress) m_progress->stop();
}

void ImportWork::look(const ImportTable& table) {
    stop();
    const auto seen = m_session.seen();
    if (!seen) return;
    m_progress = std::make_shared<Progress>();
    m_isLooking = true;
    m_looking.setFuture(QtConcurrent::run(
        &m_pool, [table, seen = *seen, clock = &m_session.clock(), progress = m_progress] {
            return lookAt(table, seen, *clock, *progress);
        }));
}

std::shared_ptr<const ImportLook> ImportWork::lookAt(const ImportTable& table,
                                                     const SeasonSeen& seen, const Clock& clock,
                                                     Progress& progress) {
    auto look = std::make_shared<ImportLook>();
    look->path = table.path;
    look->bytes = table.bytes;
    if (look->bytes.isEmpty()) {
        QFile file(table.path);
        if (!file.open(QIODevice::ReadOnly)) {
            look->unreadable = file.errorString();
            return look;
        }
        look->bytes = file.readAll();
    }
    look->kind = table.kind ? *table.kind : kindOfTable(look->bytes).value_or(table.otherwise);
    if (table.map) {
        look->map = *table.map;
    } else if (const auto before =
                   rememberedImport(look->kind, columnsOfTable(look->kind, look->bytes))) {
        look->map = *before;
        look->isRemembered = true;
    }
    try {
        const Season season = Season::openBeside(seen, clock, Database::Mode::ReadOnly);
        auto plan = planImport(season, look->kind, look->bytes, look->map, &progress);
        if (plan)
            look->plan = std::make_shared<const ImportPlan>(*std::move(plan));
        else
            look->refused = plan.error();
    } catch (const StorageError&) {
        look->trouble = std::current_exception();
    }
    return look;
}

void ImportWork::keep(const ImportKeeping& keeping) {
    const auto seen = m_session.seen();
    if (!seen) return;
    m_kept = keeping;
    m_isKeeping = true;
    m_session.awaitOurs(true);
    m_progress = std::make_shared<Progress>();
    m_keeping.setFuture(QtConcurrent::run(
        &m_pool, [keeping, seen = *seen, clock = &m_session.clock(), progress = m_progress] {
            return carryOut(keeping, seen, *clock, *progress);
        }));
}

ImportWork::Outcome ImportWork::carryOut(const ImportKeeping& keeping, const SeasonSeen& seen,
                                         const Clock& clock, Progress& progress) {
    Outcome outcome;
    const bool some = !keeping.rejects.isEmpty();
    if (some) {
        const std::string text = rejectedRows(
            *keeping.plan, [](const PlannedRow& row) { return sentence(*row.why).toStdString(); });
        outcome.unsaved = keepBytes(keeping.rejects, QByteArray::fromStdString(text));
        if (!outcome.unsaved.isEmpty()) return outcome;
    }
    try {
        Season season = Season::openBeside(seen, clock, Database::Mode::ReadWrite);
        outcome.step = keepImport(season, *keeping.plan, keeping.tableName.toStdString(),
                                  some ? RefusedRows::StayOut : RefusedRows::HoldUpAll, &progress);
    } catch (const StorageError&) {
        outcome.trouble = std::current_exception();
    }
    return outcome;
}

void ImportWork::ended(const ImportKeeping& keeping) {
    const Outcome outcome = m_keeping.result();
    m_isKeeping = false;
    m_session.awaitOurs(false);
    if (!outcome.unsaved.isEmpty()) {
        m_session.tell(
            tr("%1 cannot be written: %2. Nothing was kept.").arg(keeping.rejects, outcome.unsaved),
            true);
        Q_EMIT kept(false);
        return;
    }
    Q_EMIT kept(m_session.keptByOurs([&outcome] {
        if (outcome.trouble) std::rethrow_exception(outcome.trouble);
        return outcome.step;
    }));
}

}  // namespace combwright
