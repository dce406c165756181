// What was saved of a damaged season and what is missing, read at leisure and kept as a text: the
// window tells it once.
#pragma once

#include <QDialog>
#include <QStringList>

#include "ui/shell/session.h"

class QLabel;
class QPlainTextEdit;

namespace combwright {

class SalvageDialog : public QDialog {
    Q_OBJECT

  public:
    /// `saved` is the path of the season all could be saved into; the report is offered beside it.
    SalvageDialog(const Look& look, const QStringList& report, const QString& saved,
                  QWidget* parent);

  private:
    void save();

    QString m_saved;
    QPlainTextEdit* m_text;
    QLabel* m_kept;
};

}  // namespace combwright
