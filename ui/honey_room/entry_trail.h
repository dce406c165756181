// What was entered in the room since it was opened, entry by entry, so that one key takes the last
// one back, whole: a bucket with its water, a load of two lots. What was entered before that is
// taken back step by step, and what was kept elsewhere is not taken back from here at all.
#pragma once

#include <QString>
#include <functional>
#include <vector>

#include "ui/shell/session.h"

namespace combwright {

class EntryTrail {
  public:
    explicit EntryTrail(Session& session) : m_session(session) {}

    /// Does a deed and keeps what it did as one entry. False where the deed says so.
    bool during(const QString& name, const std::function<bool()>& deed);
    /// The same, but what it does belongs to the entry before where that has this name.
    bool alsoDuring(const QString& name, const std::function<bool()>& deed);
    /// Within a deed: what it is called, as it was read back.
    void call(const QString& said) { m_said = said; }
    /// Takes back the last entry; what was taken back, empty where nothing was.
    QString takeBack();
    /// Of the last entry; empty where none stands.
    QString lastName() const { return m_entries.empty() ? QString() : m_entries.back().name; }
    void forget() { m_entries.clear(); }

  private:
    struct Entry {
        QString name;
        QString said;
        std::vector<std::int64_t> steps;  ///< of the journal, oldest first
    };
    std::int64_t newest() const;
    std::vector<std::int64_t> stepsSince(std::int64_t step) const;

    Session& m_session;
    std::vector<Entry> m_entries;
    QString m_said;  ///< of the deed being done
};

}  // namespace combwright
