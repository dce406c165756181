// Pouring together: a line a bucket or lot. Either the most honey at or under a water content is
// proposed, exact to the gram, or it is put together by hand; what comes of it stands below while
// one types, and what would be refused with it. Kept, it is a lot of its own with a name.
#pragma once

#include <QComboBox>
#include <QDialog>
#include <QGridLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QScrollArea>
#include <QVBoxLayout>

#include "core/places/honey/blend_plan.h"
#include "ui/shell/form_drafts.h"
#include "ui/shell/session.h"

namespace combwright {

class BlendForm : public QDialog {
    Q_OBJECT

  public:
    BlendForm(Session& session, Day on, QWidget* parent);

    /// The lot that was made.
    const std::optional<Id<Lot>>& made() const { return m_made; }
    /// As it stands; nothing while it would be refused.
    const std::optional<BlendOutcome>& outcome() const { return m_outcome; }
    /// What was proposed last; nothing before.
    const std::optional<BlendPlan>& plan() const { return m_plan; }

  private:
    struct PourLine {
        BlendLine line;
        QComboBox* wish = nullptr;
        QLineEdit* pour = nullptr;
        /// As proposed: to the gram, whatever unit it is shown in.
        Mass proposed;
        QString proposedText;
    };
    /// What is typed, as the line of the deed.
    struct TypedBlend {
        std::string parts;
        QString wrong;  ///< what cannot be read
        bool any = false;
    };

    QWidget* buildAims();
    QWidget* buildLines();
    QWidget* buildFields();
    void enter(QWidget* field, const char* name);
    void propose();
    void look();
    TypedBlend typed() const;
    std::optional<Mass> tankTyped() const;
    double target() const;
    void refuse(const QString& text);
    void keep();

    Session& m_session;
    Day m_on;
    double m_ownLine = 18;
    QScrollArea* m_scroll;
    QLineEdit* m_target = nullptr;
    QComboBox* m_container = nullptr;
    QLineEdit* m_holds = nullptr;
    QPushButton* m_best = nullptr;
    std::vector<PourLine> m_lines;
    QLineEdit* m_name = nullptr;
    QLineEdit* m_place = nullptr;
    QComboBox* m_lid = nullptr;
    QLineEdit* m_net = nullptr;
    QLabel* m_reasonLabel = nullptr;
    QLineEdit* m_reason = nullptr;
    QLineEdit* m_note = nullptr;
    QLabel* m_says = nullptr;
    QLabel* m_warns = nullptr;
    QLabel* m_refused = nullptr;
    QPushButton* m_keep = nullptr;
    FormDrafts* m_drafts = nullptr;
    std::optional<BlendOutcome> m_outcome;
    std::optional<BlendPlan> m_plan;
    std::optional<Id<Lot>> m_made;
};

/// Opens it and waits; the lot that was made.
std::optional<Id<Lot>> askToBlend(QWidget* parent, Session& session, Day on);

}  // namespace combwright
