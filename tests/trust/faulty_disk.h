// A disk that fails on demand and that forgets what was not synced when the power goes: it stands
// between SQLite and the system's files. Every call may be made to fail once or from then on; and
// at any moment it can lay out what might be found on the disk had the power gone just then: what
// was synced for certain, of the rest any part, sector by sector, in any order, some of it torn.
#pragma once

#include <sqlite3.h>

#include <cstdint>
#include <functional>
#include <map>
#include <random>
#include <string>
#include <vector>

namespace combwright::test {

enum class DiskCall { Open, Read, Write, Truncate, Sync, Delete, Lock };
inline constexpr DiskCall allDiskCalls[] = {DiskCall::Open,     DiskCall::Read, DiskCall::Write,
                                            DiskCall::Truncate, DiskCall::Sync, DiskCall::Delete,
                                            DiskCall::Lock};

/// The `at`th call of its kind from now on, counted from 1, answers `code`; with `sticky` all after
/// it too.
struct DiskFault {
    DiskCall call = DiskCall::Write;
    int at = 1;
    bool sticky = false;
    int code = SQLITE_IOERR;
};

class FaultyDisk {
  public:
    /// Stands before SQLite's own files from now on, for the whole program.
    static FaultyDisk& install();

    void fail(const DiskFault& fault);
    /// Faults stop. Whether one was met.
    bool heal();
    /// What `fail` said last holds again, counted anew.
    void again() { fail(m_fault); }

    /// Called before every call that changes something on the disk.
    void beforeEachChange(std::function<void()> look) { m_look = std::move(look); }
    /// What is known of files is forgotten, and watching begins with the next that is opened.
    void beginWatching();
    void stopWatching();
    /// Writes what the disk may hold if the power goes now into a folder, each file under its name.
    void layAfterPowerLoss(const std::string& folder, std::mt19937& random) const;

    // What the shim asks; a test does not.
    int answerTo(DiskCall call);
    void opened(const std::string& path, bool wasThere, std::vector<std::uint8_t> bytes);
    void wrote(const std::string& path, std::int64_t at, const void* bytes, int size);
    void truncated(const std::string& path, std::int64_t size);
    void synced(const std::string& path);
    void deleted(const std::string& path, bool folderSynced);
    bool isWatching() const { return m_watching; }
    void aboutToChange() const {
        if (m_look) m_look();
    }

  private:
    struct Pending {
        std::int64_t at = 0;
        std::vector<std::uint8_t> bytes;
        bool truncates = false;  ///< to `at`
    };
    struct Watched {
        std::vector<std::uint8_t> synced;
        std::vector<Pending> pending;
        bool isSynced = false;  ///< its name is on the disk for certain
        bool isThere = true;
    };
    static void apply(std::vector<std::uint8_t>& bytes, const Pending& change);

    DiskFault m_fault;
    bool m_armed = false;
    bool m_met = false;
    int m_calls = 0;
    bool m_watching = false;
    std::map<std::string, Watched> m_files;
    std::function<void()> m_look;
};

}  // namespace combwright::test
