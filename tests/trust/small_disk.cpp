#include "tests/trust/small_disk.h"

#include <fcntl.h>
#include <sched.h>
#include <sys/mount.h>
#include <sys/statvfs.h>
#include <unistd.h>

#include <QFile>
#include <cerrno>
#include <cstring>

namespace combwright::test {
namespace {

constexpr long page = 4096;
constexpr unsigned long lockedFlag = MS_RDONLY;

bool tell(const char* path, const std::string& text) {
    const int file = ::open(path, O_WRONLY | O_CLOEXEC);
    if (file < 0) return false;
    const bool told = ::write(file, text.data(), text.size()) == static_cast<ssize_t>(text.size());
    ::close(file);
    return told;
}

std::string takeOwnMounts() {
    const auto failed = [](const char* what) {
        return std::string(what) + ": " + std::strerror(errno);
    };
    const uid_t user = ::geteuid();
    const gid_t group = ::getegid();
    if (::unshare(user == 0 ? CLONE_NEWNS : CLONE_NEWNS | CLONE_NEWUSER) != 0)
        return failed("no mounts of our own");
    if (user != 0) {
        tell("/proc/self/setgroups", "deny");
        if (!tell("/proc/self/uid_map", "0 " + std::to_string(user) + " 1") ||
            !tell("/proc/self/gid_map", "0 " + std::to_string(group) + " 1"))
            return failed("no namespace of a user");
    }
    // What we mount stays ours.
    if (::mount(nullptr, "/", nullptr, MS_REC | MS_PRIVATE, nullptr) != 0)
        return failed("mounts would be seen by others");
    return {};
}

QByteArray nameOnDisk(const QString& path) { return QFile::encodeName(path); }

}  // namespace

std::string whyNoMounts() {
    static const std::string why = takeOwnMounts();
    return why;
}

SmallDisk::SmallDisk(QString folder, long kib) : m_folder(std::move(folder)) {
    const std::string size = "size=" + std::to_string(kib) + "k";
    m_isThere = ::mount("none", nameOnDisk(m_folder).constData(), "tmpfs", 0, size.c_str()) == 0;
}

SmallDisk::~SmallDisk() {
    if (m_isThere) ::umount2(nameOnDisk(m_folder).constData(), MNT_DETACH);
}

bool SmallDisk::fill(long kibLeft) const {
    makeRoom();
    struct statvfs room {};
    if (::statvfs(nameOnDisk(m_folder).constData(), &room) != 0) return false;
    const long free = static_cast<long>(room.f_bavail) * static_cast<long>(room.f_bsize);
    const long taken = (free - kibLeft * 1024) / page * page;
    if (taken <= 0) return taken == 0;
    const int file = ::open(nameOnDisk(filler()).constData(), O_CREAT | O_WRONLY | O_CLOEXEC, 0600);
    if (file < 0) return false;
    const bool filled = ::posix_fallocate(file, 0, taken) == 0;
    ::close(file);
    return filled;
}

void SmallDisk::makeRoom() const { QFile::remove(filler()); }

bool SmallDisk::lock(bool locked) const {
    return ::mount(nullptr, nameOnDisk(m_folder).constData(), nullptr,
                   MS_REMOUNT | MS_BIND | (locked ? lockedFlag : 0UL), nullptr) == 0;
}

bool SmallDisk::setApart(const QString& path, bool locked) const {
    const QByteArray name = nameOnDisk(path);
    return ::mount(name.constData(), name.constData(), nullptr, MS_BIND, nullptr) == 0 &&
           ::mount(nullptr, name.constData(), nullptr,
                   MS_BIND | MS_REMOUNT | (locked ? lockedFlag : 0UL), nullptr) == 0;
}

void SmallDisk::putBack(const QString& path) const {
    ::umount2(nameOnDisk(path).constData(), MNT_DETACH);
}

}  // namespace combwright::test
