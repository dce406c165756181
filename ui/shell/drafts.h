// Lines still being typed, kept where a crash cannot take them: a small file a season in the
// person's state folder, never in the season itself. What is neither kept nor discarded is offered
// again when the same sheet is next opened. Losing a draft costs one line; so nothing here ever
// stands in anybody's way: a file that cannot be read is put away with a word, one that cannot be
// written is done without.
#pragma once

#include <QObject>
#include <QTimer>
#include <map>
#include <utility>
#include <vector>

namespace combwright {

class Drafts : public QObject {
    Q_OBJECT

  public:
    explicit Drafts(QObject* parent = nullptr);
    ~Drafts() override;

    /// $XDG_STATE_HOME/combwright/drafts, else ~/.local/state/combwright/drafts.
    static QString defaultFolder();
    /// The file of a season within a folder: named by a digest of the season's own path.
    static QString fileFor(const QString& folder, const QString& seasonPath);

    /// From now on the drafts of this season; none are kept with an empty path. Answers what is to
    /// be said where the file there was damaged and is gone now, else nothing.
    QString open(const QString& seasonPath, const QString& folder = defaultFolder());

    /// The season goes on under another path, and its drafts with it.
    void follow(const QString& seasonPath);

    /// Holds a line; written within a second. A sheet and a row are named by whoever shows them.
    void hold(const QString& sheet, const QString& row, const QString& text);
    /// The line was kept or discarded.
    void drop(const QString& sheet, const QString& row);
    /// The same for a line that stands in the season as it was typed: should it be read back after
    /// a crash it is no other than the kept one, so the disk is not waited for.
    void dropKept(const QString& sheet, const QString& row);
    /// The rows of a sheet with what was typed there.
    std::map<QString, QString> of(const QString& sheet) const;
    /// Every sheet and row with something typed.
    std::vector<std::pair<QString, QString>> rows() const;
    /// Writes what is held now.
    void flush();

    static constexpr int writtenAfterMs = 1000;

  private:
    QString read();
    void nameFile(const QString& seasonPath);

    QString m_folder;
    QString m_season;
    QString m_file;
    std::map<std::pair<QString, QString>, QString> m_lines;
    QTimer m_timer;
    bool m_changed = false;
};

}  // namespace combwright
