// The limits of a pull as plain fields, and below them the constants one may try out. Each key is
// taken at once; what cannot be meant is said beside the fields and the last that could holds.
#pragma once

#include <QGridLayout>
#include <QLabel>
#include <QLineEdit>
#include <QWidget>
#include <functional>
#include <vector>

#include "core/places/pull/pull_sheet.h"
#include "core/words/units.h"
#include "ui/shell/session.h"

namespace combwright {

class PullLimitFields : public QWidget {
    Q_OBJECT

  public:
    explicit PullLimitFields(Session& session, QWidget* parent = nullptr);
    /// Puts in what holds; a field with the cursor keeps what is typed.
    void show(const PullAsked& asked, const PullConstants& constants);
    /// Another season: nothing that was typed is kept.
    void forget();
    /// What the yards' own winter need says beside the limit.
    void tellYards(const PullSheet& sheet);
    const PlanLimits& limits() const { return m_limits; }
    const PullSupposed& supposed() const { return m_supposed; }

  Q_SIGNALS:
    void changed();

  private:
    enum class What { Limit, FullFrame, Slots, Bucket, Spare };
    struct Row {
        What what;
        const char* key;
        QLabel* label;
        QLineEdit* edit;
        QLabel* unit;
        QString trouble = {};
    };
    void add(What what, const char* key);
    void take(std::size_t row);
    bool takeLimit(const char* key, const QString& text);
    bool takeSupposed(What what, const QString& text);
    QString held(const Row& row) const;
    QString inForce(const Row& row) const;
    QString labelOf(const Row& row) const;
    QString unitOf(const Row& row) const;
    QString troubleText(const Row& row, const QString& typed) const;
    void fill(Row& row);
    void tellTrouble();
    void tellSupposed();

    Session& m_session;
    QGridLayout* m_grid;
    QLabel* m_trouble;
    QLabel* m_note;
    QLabel* m_yards;
    std::vector<Row> m_rows;
    PlanLimits m_limits;
    PullSupposed m_supposed;
    PullConstants m_constants;
    std::optional<Units> m_shownIn;
};

}  // namespace combwright
