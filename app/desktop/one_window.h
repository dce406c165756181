// A second window of the same person on the same season asks the first to come forward. It is a
// courtesy, never a lock: nobody is kept from opening a file because a name lies somewhere, and a
// name whose window is gone is passed over. A socket of the machine in $XDG_RUNTIME_DIR, named by
// which file it is on which disk, so that links and other spellings of a path are seen through.
#pragma once

#include <QByteArray>
#include <QObject>
#include <QSocketNotifier>
#include <QString>
#include <memory>

namespace combwright::desktop {

class OneWindow : public QObject {
    Q_OBJECT

  public:
    /// Without a folder that exists, nothing is asked and nothing answered.
    explicit OneWindow(const QString& runtimeFolder, QObject* parent = nullptr);
    ~OneWindow() override;

    /// Asks whoever has this file open to come forward. True when somebody answered within half a
    /// second.
    bool askOther(const QString& seasonPath) const;
    /// Answers for this file from now on; with an empty path for none.
    void answerFor(const QString& seasonPath);

    static constexpr int answeredWithinMs = 500;

  Q_SIGNALS:
    /// Somebody asked; what the desktop gave them to be let in front, may be empty.
    void asked(const QByteArray& activationToken);

  private:
    QString nameFor(const QString& seasonPath) const;
    void answer();
    void stop();

    QString m_folder;
    QString m_name;  ///< the socket's, while it answers
    int m_socket = -1;
    std::unique_ptr<QSocketNotifier> m_notifier;
};

}  // namespace combwright::desktop
