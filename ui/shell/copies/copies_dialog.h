// The copies beside a season, newest first, each with what it holds, so that one is restored
// without fear: a copy is only read, and what comes of it is a new file.
#pragma once

#include <QDialog>
#include <QLabel>
#include <QListWidget>
#include <QPushButton>

#include "ui/shell/session.h"

namespace combwright {

class CopiesDialog : public QDialog {
    Q_OBJECT

  public:
    /// With an empty path a copy anywhere is chosen.
    CopiesDialog(const Look& look, const QString& seasonPath, QWidget* parent);
    /// The copy to restore, once accepted.
    QString chosen() const;

  private:
    void addCopy(const QString& path, const QString& text);
    void chooseElsewhere();
    void tellContents();

    int m_rowHigh;
    QListWidget* m_list;
    QLabel* m_contents;
    QPushButton* m_restore;
};

}  // namespace combwright
