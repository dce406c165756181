#include "app/desktop/one_window.h"

#include <fcntl.h>
#include <poll.h>
#include <sys/socket.h>
#include <sys/stat.h>
#include <sys/un.h>
#include <unistd.h>

#include <QCoreApplication>
#include <QDir>
#include <QFile>
#include <QFileInfo>
#include <cstring>

namespace combwright::desktop {
namespace {

constexpr char askWord[] = "come forward ";
constexpr char answerWord[] = "here";
constexpr std::size_t longestMessage = 512;

/// Nothing where the name is too long for a socket.
bool fillAddress(sockaddr_un& address, const QString& name) {
    const QByteArray bytes = QFile::encodeName(name);
    if (static_cast<std::size_t>(bytes.size()) >= sizeof(address.sun_path)) return false;
    std::memset(&address, 0, sizeof(address));
    address.sun_family = AF_UNIX;
    std::memcpy(address.sun_path, bytes.constData(), static_cast<std::size_t>(bytes.size()));
    return true;
}

const sockaddr* plain(const sockaddr_un& address) {
    return reinterpret_cast<const sockaddr*>(&address);
}

int newSocket() { return ::socket(AF_UNIX, SOCK_DGRAM | SOCK_CLOEXEC | SOCK_NONBLOCK, 0); }

/// A name in the file system whose owner has gone: nobody takes what is sent there.
bool isAbandoned(const sockaddr_un& address) {
    const int probe = newSocket();
    if (probe < 0) return false;
    const bool refused = ::connect(probe, plain(address), sizeof(address)) != 0;
    ::close(probe);
    return refused;
}

}  // namespace

OneWindow::OneWindow(const QString& runtimeFolder, QObject* parent) : QObject(parent) {
    if (!QDir::isAbsolutePath(runtimeFolder) || !QFileInfo(runtimeFolder).isDir()) return;
    m_folder = runtimeFolder + QStringLiteral("/combwright");
    // Ours alone: who can ask a window to come forward is the same person.
    ::mkdir(QFile::encodeName(m_folder).constData(), 0700);
    struct stat found {};
    if (::stat(QFile::encodeName(m_folder).constData(), &found) != 0 || !S_ISDIR(found.st_mode) ||
        found.st_uid != ::geteuid())
        m_folder.clear();
}

OneWindow::~OneWindow() { stop(); }

QString OneWindow::nameFor(const QString& seasonPath) const {
    if (m_folder.isEmpty() || seasonPath.isEmpty()) return {};
    struct stat found {};
    if (::stat(QFile::encodeName(seasonPath).constData(), &found) != 0) return {};
    return QStringLiteral("%1/%2-%3")
        .arg(m_folder)
        .arg(static_cast<qulonglong>(found.st_dev), 0, 16)
        .arg(static_cast<qulonglong>(found.st_ino), 0, 16);
}

bool OneWindow::askOther(const QString& seasonPath) const {
    const QString name = nameFor(seasonPath);
    // Our own window would be asked by itself and could not answer while it waits.
    if (name.isEmpty() || name == m_name) return false;
    sockaddr_un other{};
    sockaddr_un ours{};
    const QString reply =
        QStringLiteral("%1/ask-%2").arg(m_folder).arg(QCoreApplication::applicationPid());
    if (!fillAddress(other, name) || !fillAddress(ours, reply)) return false;
    const int socket = newSocket();
    if (socket < 0) return false;
    ::unlink(ours.sun_path);
    bool answered = false;
    if (::bind(socket, plain(ours), sizeof(ours)) == 0 &&
        ::connect(socket, plain(other), sizeof(other)) == 0) {
        const QByteArray ask = QByteArray(askWord) + qgetenv("XDG_ACTIVATION_TOKEN").left(256);
        if (::send(socket, ask.constData(), static_cast<std::size_t>(ask.size()), 0) ==
            static_cast<ssize_t>(ask.size())) {
            pollfd waiting{socket, POLLIN, 0};
            char said[longestMessage];
            if (::poll(&waiting, 1, answeredWithinMs) == 1) {
                const ssize_t size = ::recv(socket, said, sizeof(said), 0);
                answered = size > 0 && QByteArray(said, static_cast<int>(size)) == answerWord;
            }
        }
    }
    ::close(socket);
    ::unlink(ours.sun_path);
    return answered;
}

void OneWindow::answerFor(const QString& seasonPath) {
    const QString name = nameFor(seasonPath);
    if (name == m_name) return;
    stop();
    sockaddr_un address{};
    if (name.isEmpty() || !fillAddress(address, name)) return;
    const int socket = newSocket();
    if (socket < 0) return;
    bool bound = ::bind(socket, plain(address), sizeof(address)) == 0;
    if (!bound && isAbandoned(address)) {
        ::unlink(address.sun_path);
        bound = ::bind(socket, plain(address), sizeof(address)) == 0;
    }
    if (!bound) {
        // Another window of ours answers for it already.
        ::close(socket);
        return;
    }
    m_socket = socket;
    m_name = name;
    m_notifier = std::make_unique<QSocketNotifier>(m_socket, QSocketNotifier::Read);
    connect(m_notifier.get(), &QSocketNotifier::activated, this, &OneWindow::answer);
}

void OneWindow::answer() {
    char said[longestMessage];
    sockaddr_un from{};
    socklen_t size = sizeof(from);
    const ssize_t read =
        ::recvfrom(m_socket, said, sizeof(said), 0, reinterpret_cast<sockaddr*>(&from), &size);
    if (read <= 0) return;
    const QByteArray message(said, static_cast<int>(read));
    if (!message.startsWith(askWord)) return;
    if (size > sizeof(sa_family_t))
        ::sendto(m_socket, answerWord, std::strlen(answerWord), MSG_NOSIGNAL,
                 reinterpret_cast<const sockaddr*>(&from), size);
    Q_EMIT asked(message.mid(static_cast<int>(std::strlen(askWord))));
}

void OneWindow::stop() {
    m_notifier.reset();
    if (m_socket >= 0) {
        ::close(m_socket);
        ::unlink(QFile::encodeName(m_name).constData());
    }
    m_socket = -1;
    m_name.clear();
}

}  // namespace combwright::desktop
