// A table taken in together with the person: what each column is, what was found out, what must be
// asked, and what becomes of each row, anew with every answer. Nothing changes before "Keep".
#pragma once

#include <QCheckBox>
#include <QComboBox>
#include <QDialog>
#include <QFormLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QTableView>
#include <map>

#include "ui/shell/import/import_preview.h"
#include "ui/shell/session.h"

namespace combwright {

class ImportDialog : public QDialog {
    Q_OBJECT

  public:
    ImportDialog(Session& session, QWidget* parent);

    /// Looks at a table; whether it can be read.
    bool look(const QString& path);
    const ImportPlan& plan() const { return m_preview->plan(); }

  private:
    void choose();
    void kindChosen();
    /// Finds out anew what each row would do.
    void planAnew();
    void showColumns();
    void showQuestions();
    void addQuestion(const ImportQuestion& question);
    void answer(const std::string& ask, const QString& text);
    void showSummary();
    void showRow();
    void keep();
    QString saveRejects();
    static QString foundOut(const ImportPlan& plan);

    Session& m_session;
    QString m_path;
    QByteArray m_bytes;
    ImportMap m_map;
    ImportPreview* m_preview;

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
};

}  // namespace combwright
