// A table taken in together with the person: what each column is, what was found out, what must be
// asked, and what becomes of each row, anew with every answer. Nothing changes before "Keep".
#pragma once

#include <QCheckBox>
#include <QComboBox>
#include <QDialog>
#include <QElapsedTimer>
#include <QFormLayout>
#include <QLabel>
#include <QLineEdit>
#include <QProgressBar>
#include <QPushButton>
#include <QTableView>
#include <QTimer>
#include <map>

#include "ui/shell/import/import_preview.h"
#include "ui/shell/import/import_work.h"
#include "ui/shell/session.h"

namespace combwright {

class ImportDialog : public QDialog {
    Q_OBJECT

  public:
    ImportDialog(Session& session, QWidget* parent);

    /// Looks at a table, away from the window.
    void look(const QString& path);
    /// Whether a table is being looked at, or kept.
    bool isBusy() const { return m_work->isLooking() || m_work->isKeeping(); }
    const ImportPlan& plan() const { return m_preview->plan(); }

  public Q_SLOTS:
    /// While rows are being kept it gives that up, and stays open.
    void reject() override;

  private:
    void choose();
    void kindChosen();
    /// Finds out anew what each row would do.
    void planAnew();
    void lookAt(const ImportTable& table);
    void showLook(const ImportLook& look);
    void showBusy(bool isBusy);
    void showHowFar();
    void showColumns();
    void showQuestions();
    void addQuestion(const ImportQuestion& question);
    void answer(const std::string& ask, const QString& text);
    void showSummary();
    void showRow();
    void keep();
    void kept(bool isKept);
    QString askForRejects();
    static QString foundOut(const ImportPlan& plan);

    Session& m_session;
    QString m_path;
    QByteArray m_bytes;
    ImportMap m_map;
    bool m_hasNewColumns = false;  ///< of another table or kind than those that are shown
    ImportPreview* m_preview;
    ImportWork* m_work;
    QTimer m_howFar;
    QElapsedTimer m_since;  ///< what is being done began

    QLabel* m_file;
    QComboBox* m_kind;
    QLabel* m_found;
    QWidget* m_side;
    QFormLayout* m_columns;
    QFormLayout* m_questions;
    QLabel* m_asked;
    std::map<std::string, QWidget*> m_answers;  ///< by what was asked; they stay once shown
    QTableView* m_table;
    QLabel* m_row;
    QCheckBox* m_goodOnly;
    QLabel* m_summary;
    QPushButton* m_keep;
    QProgressBar* m_progress;
    QList<QWidget*> m_still;  ///< cannot be changed while rows are being kept
};

}  // namespace combwright
