// The plan of a season: colonies, splits, supers, what each of them needs, and packs. Beside it
// stands what follows from the plan as it is typed, before it is kept; Enter keeps it.
#pragma once

#include <QComboBox>
#include <QDialog>
#include <QFormLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QTableWidget>
#include <QTimer>
#include <vector>

#include "core/places/storeroom/needs.h"
#include "ui/shell/form_drafts.h"
#include "ui/shell/session.h"

namespace combwright {

class PlanForm : public QDialog {
    Q_OBJECT

  public:
    PlanForm(Session& session, int year, Day on, QWidget* parent = nullptr);
    bool kept() const { return m_kept; }

  protected:
    void resizeEvent(QResizeEvent* event) override;

  private:
    /// As high as its rows: the page scrolls, not the table in it.
    void fitFollows();
    QLineEdit* line(QFormLayout* form, const QString& label, const char* name,
                    const QString& example);
    QComboBox* kinds(QFormLayout* form, const QString& label, const char* name);
    void fillFields(const NextSeason& next);
    void readBack();
    /// The plan as it stands in the fields; nothing where one of them cannot be read, which is then
    /// in `notRead`.
    std::optional<SeasonPlan> planTyped(QString& notRead) const;
    void typed();
    void showFollows();
    void showRows(const NextSeason& next);
    void keep();
    void say(const QString& text, bool bad);

    Session& m_session;
    int m_year;
    Day m_on;
    bool m_kept = false;
    Stock m_stock;  ///< what there is, read once while one types
    QTimer* m_later;
    std::vector<QWidget*> m_fields;
    QLineEdit* m_colonies;
    QLineEdit* m_splits;
    QComboBox* m_superKind;
    QLineEdit* m_supers;
    QLineEdit* m_framesPerSuper;
    QLineEdit* m_undrawn;
    QComboBox* m_broodKind;
    QLineEdit* m_broodPerSplit;
    QLineEdit* m_framesPerSplit;
    QLineEdit* m_spare;
    QLineEdit* m_framePack;
    QLineEdit* m_sheetPack;
    QLineEdit* m_items;
    QLabel* m_echo;
    QLineEdit* m_note;
    QTableWidget* m_follows;
    QLabel* m_head;
    QLabel* m_gaps;
    FormDrafts* m_drafts;
    QLabel* m_reason;
    QPushButton* m_keep;
    QPushButton* m_close;
};

/// Whether a plan was kept.
bool askToPlanSeason(QWidget* parent, Session& session, int year, Day on);

}  // namespace combwright
