// A disk of our own, as small as one likes, that fills up, is emptied again or may not be written:
// memory mounted into a folder, seen by this process and what it starts only. Where the machine
// does not let us mount, the test says so and is passed over.
#pragma once

#include <sys/types.h>

#include <QString>
#include <string>

namespace combwright::test {

/// Why nothing can be mounted here; empty where it can. From then on this process has its own
/// mounts: as root as it is, else in a user's namespace, where that is allowed.
std::string whyNoMounts();

class SmallDisk {
  public:
    /// Mounts into an empty folder; `whyNoMounts` was asked before.
    SmallDisk(QString folder, long kib);
    ~SmallDisk();
    SmallDisk(const SmallDisk&) = delete;
    SmallDisk& operator=(const SmallDisk&) = delete;

    const QString& folder() const { return m_folder; }
    QString file(const char* name) const {
        return m_folder + QLatin1Char('/') + QLatin1String(name);
    }
    bool isThere() const { return m_isThere; }
    /// Leaves that much room, in whole pages.
    bool fill(long kibLeft) const;
    void makeRoom() const;
    /// As a disk locked against writing.
    bool lock(bool locked) const;
    /// One file is locked, or stays writable, whatever the disk around it does.
    bool setApart(const QString& path, bool locked) const;
    void putBack(const QString& path) const;

  private:
    QString filler() const { return file("filler"); }
    QString m_folder;
    bool m_isThere = false;
};

}  // namespace combwright::test
