#include "tests/trust/faulty_disk.h"

#include <algorithm>
#include <cstring>
#include <fstream>
#include <new>

namespace combwright::test {
namespace {

constexpr std::size_t sectorBytes = 512;

FaultyDisk& theDisk() {
    static FaultyDisk disk;
    return disk;
}

sqlite3_vfs* systemFiles = nullptr;

/// Ours in front, the system's own behind it in the same memory.
struct ShimFile {
    sqlite3_file base;
    std::string* path;  ///< nothing for a temporary file, which is not watched
    sqlite3_file* real() { return reinterpret_cast<sqlite3_file*>(this + 1); }
};
ShimFile& shimOf(sqlite3_file* file) { return *reinterpret_cast<ShimFile*>(file); }

bool watches(const ShimFile& file) { return file.path && theDisk().isWatching(); }

int shimClose(sqlite3_file* file) {
    ShimFile& shim = shimOf(file);
    const int code = shim.real()->pMethods ? shim.real()->pMethods->xClose(shim.real()) : SQLITE_OK;
    delete shim.path;
    return code;
}

int shimRead(sqlite3_file* file, void* into, int size, sqlite3_int64 at) {
    if (const int code = theDisk().answerTo(DiskCall::Read)) return code;
    sqlite3_file* real = shimOf(file).real();
    return real->pMethods->xRead(real, into, size, at);
}

int shimWrite(sqlite3_file* file, const void* from, int size, sqlite3_int64 at) {
    ShimFile& shim = shimOf(file);
    theDisk().aboutToChange();
    if (const int code = theDisk().answerTo(DiskCall::Write)) return code;
    const int code = shim.real()->pMethods->xWrite(shim.real(), from, size, at);
    if (code == SQLITE_OK && watches(shim)) theDisk().wrote(*shim.path, at, from, size);
    return code;
}

int shimTruncate(sqlite3_file* file, sqlite3_int64 size) {
    ShimFile& shim = shimOf(file);
    theDisk().aboutToChange();
    if (const int code = theDisk().answerTo(DiskCall::Truncate)) return code;
    const int code = shim.real()->pMethods->xTruncate(shim.real(), size);
    if (code == SQLITE_OK && watches(shim)) theDisk().truncated(*shim.path, size);
    return code;
}

int shimSync(sqlite3_file* file, int flags) {
    ShimFile& shim = shimOf(file);
    theDisk().aboutToChange();
    if (const int code = theDisk().answerTo(DiskCall::Sync)) return code;
    const int code = shim.real()->pMethods->xSync(shim.real(), flags);
    if (code == SQLITE_OK && watches(shim)) theDisk().synced(*shim.path);
    return code;
}

int shimFileSize(sqlite3_file* file, sqlite3_int64* size) {
    sqlite3_file* real = shimOf(file).real();
    return real->pMethods->xFileSize(real, size);
}

int shimLock(sqlite3_file* file, int level) {
    if (const int code = theDisk().answerTo(DiskCall::Lock)) return code;
    sqlite3_file* real = shimOf(file).real();
    return real->pMethods->xLock(real, level);
}

int shimUnlock(sqlite3_file* file, int level) {
    sqlite3_file* real = shimOf(file).real();
    return real->pMethods->xUnlock(real, level);
}

int shimCheckReserved(sqlite3_file* file, int* reserved) {
    sqlite3_file* real = shimOf(file).real();
    return real->pMethods->xCheckReservedLock(real, reserved);
}

int shimControl(sqlite3_file* file, int what, void* argument) {
    sqlite3_file* real = shimOf(file).real();
    return real->pMethods->xFileControl(real, what, argument);
}

int shimSectorSize(sqlite3_file* file) {
    sqlite3_file* real = shimOf(file).real();
    return real->pMethods->xSectorSize(real);
}

int shimCharacteristics(sqlite3_file* file) {
    sqlite3_file* real = shimOf(file).real();
    return real->pMethods->xDeviceCharacteristics(real);
}

// Version 1: no shared memory, no mapping; a season uses neither.
const sqlite3_io_methods shimMethods{1,
                                     &shimClose,
                                     &shimRead,
                                     &shimWrite,
                                     &shimTruncate,
                                     &shimSync,
                                     &shimFileSize,
                                     &shimLock,
                                     &shimUnlock,
                                     &shimCheckReserved,
                                     &shimControl,
                                     &shimSectorSize,
                                     &shimCharacteristics,
                                     nullptr,
                                     nullptr,
                                     nullptr,
                                     nullptr,
                                     nullptr,
                                     nullptr};

/// Through the connection that is open: closing another on the same file would drop its locks.
std::vector<std::uint8_t> bytesOf(sqlite3_file* real) {
    sqlite3_int64 size = 0;
    if (real->pMethods->xFileSize(real, &size) != SQLITE_OK || size == 0) return {};
    std::vector<std::uint8_t> bytes(static_cast<std::size_t>(size));
    if (real->pMethods->xRead(real, bytes.data(), static_cast<int>(size), 0) != SQLITE_OK)
        return {};
    return bytes;
}

int shimOpen(sqlite3_vfs*, const char* name, sqlite3_file* file, int flags, int* flagsOut) {
    ShimFile& shim = shimOf(file);
    shim.base.pMethods = nullptr;
    shim.path = nullptr;
    if (const int code = theDisk().answerTo(DiskCall::Open)) return code;
    int wasThere = 0;
    if (name) systemFiles->xAccess(systemFiles, name, SQLITE_ACCESS_EXISTS, &wasThere);
    const int code = systemFiles->xOpen(systemFiles, name, shim.real(), flags, flagsOut);
    if (code != SQLITE_OK) return code;
    shim.base.pMethods = &shimMethods;
    if (!name) return code;
    shim.path = new std::string(name);
    if (theDisk().isWatching()) theDisk().opened(name, wasThere != 0, bytesOf(shim.real()));
    return code;
}

int shimDelete(sqlite3_vfs*, const char* name, int syncFolder) {
    theDisk().aboutToChange();
    if (const int code = theDisk().answerTo(DiskCall::Delete)) return code;
    const int code = systemFiles->xDelete(systemFiles, name, syncFolder);
    if (code == SQLITE_OK && theDisk().isWatching()) theDisk().deleted(name, syncFolder != 0);
    return code;
}

}  // namespace

FaultyDisk& FaultyDisk::install() {
    static sqlite3_vfs shim;
    if (systemFiles) return theDisk();
    systemFiles = sqlite3_vfs_find(nullptr);
    shim = *systemFiles;
    shim.zName = "faulty";
    shim.szOsFile = static_cast<int>(sizeof(ShimFile)) + systemFiles->szOsFile;
    shim.xOpen = &shimOpen;
    shim.xDelete = &shimDelete;
    sqlite3_vfs_register(&shim, 1);
    return theDisk();
}

void FaultyDisk::fail(const DiskFault& fault) {
    m_fault = fault;
    m_armed = true;
    m_met = false;
    m_calls = 0;
}

bool FaultyDisk::heal() {
    m_armed = false;
    return m_met;
}

int FaultyDisk::answerTo(DiskCall call) {
    if (!m_armed || call != m_fault.call) return SQLITE_OK;
    ++m_calls;
    const bool fails = m_fault.sticky ? m_calls >= m_fault.at : m_calls == m_fault.at;
    if (!fails) return SQLITE_OK;
    m_met = true;
    return m_fault.code;
}

void FaultyDisk::beginWatching() {
    m_files.clear();
    m_watching = true;
}

void FaultyDisk::stopWatching() {
    m_watching = false;
    m_look = nullptr;
    m_files.clear();
}

void FaultyDisk::opened(const std::string& path, bool wasThere, std::vector<std::uint8_t> bytes) {
    const auto known = m_files.find(path);
    if (known != m_files.end() && known->second.isThere) return;
    Watched& file = m_files[path];
    // A name that was taken off the disk without a sync may still be there, with what it held.
    if (known == m_files.end() || file.isSynced == false) file = {};
    file.isThere = true;
    if (!wasThere) return;
    file.synced = std::move(bytes);
    file.isSynced = true;
}

void FaultyDisk::apply(std::vector<std::uint8_t>& bytes, const Pending& change) {
    const auto at = static_cast<std::size_t>(change.at);
    if (change.truncates) {
        if (bytes.size() > at) bytes.resize(at);
        return;
    }
    if (bytes.size() < at + change.bytes.size()) bytes.resize(at + change.bytes.size());
    std::copy(change.bytes.begin(), change.bytes.end(),
              bytes.begin() + static_cast<std::ptrdiff_t>(at));
}

void FaultyDisk::wrote(const std::string& path, std::int64_t at, const void* bytes, int size) {
    const auto* first = static_cast<const std::uint8_t*>(bytes);
    // Sector by sector: each of them reaches the disk or does not.
    for (int done = 0; done < size;) {
        const auto within = static_cast<int>(
            (static_cast<std::size_t>(at) + static_cast<std::size_t>(done)) % sectorBytes);
        const int part = std::min(size - done, static_cast<int>(sectorBytes) - within);
        m_files[path].pending.push_back({at + done, {first + done, first + done + part}, false});
        done += part;
    }
}

void FaultyDisk::truncated(const std::string& path, std::int64_t size) {
    m_files[path].pending.push_back({size, {}, true});
}

void FaultyDisk::synced(const std::string& path) {
    Watched& file = m_files[path];
    for (const Pending& change : file.pending) apply(file.synced, change);
    file.pending.clear();
    file.isSynced = true;
}

void FaultyDisk::deleted(const std::string& path, bool folderSynced) {
    Watched& file = m_files[path];
    file.isThere = false;
    if (folderSynced) m_files.erase(path);
}

void FaultyDisk::layAfterPowerLoss(const std::string& folder, std::mt19937& random) const {
    for (const auto& [path, file] : m_files) {
        // A name made or taken away without a sync may be on the disk or not.
        const bool certain = file.isSynced && file.isThere;
        if (!certain && random() % 2 == 0) continue;
        std::vector<std::uint8_t> bytes = file.synced;
        for (const Pending& change : file.pending) {
            const unsigned fate = random() % 8;
            if (fate < 4) {
                apply(bytes, change);
            } else if (fate == 4 && !change.truncates) {
                Pending torn = change;
                for (std::size_t i = random() % torn.bytes.size(); i < torn.bytes.size(); ++i)
                    torn.bytes[i] = static_cast<std::uint8_t>(random());
                apply(bytes, torn);
            }
        }
        std::ofstream out(folder + path.substr(path.rfind('/')), std::ios::binary);
        out.write(reinterpret_cast<const char*>(bytes.data()),
                  static_cast<std::streamsize>(bytes.size()));
    }
}

}  // namespace combwright::test
