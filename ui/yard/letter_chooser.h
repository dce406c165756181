// Many deeds behind one key: a short list, each with its letter, pressed at once or walked to with
// the arrows. What does not apply stands there greyed with the reason, so that a letter always
// means the same.
#pragma once

#include <QDialog>
#include <QLabel>
#include <QString>
#include <optional>
#include <vector>

#include "ui/shell/session.h"

class QTreeWidget;
class QTreeWidgetItem;

namespace combwright {

struct LetterChoice {
    QChar letter;
    QString what;
    QString whyNot = {};  ///< it cannot be done now; empty where it can
};

class LetterChooser : public QDialog {
    Q_OBJECT

  public:
    LetterChooser(QWidget* parent, Session& session, const QString& title,
                  std::vector<LetterChoice> choices);
    /// The place in the list of what was chosen.
    std::optional<std::size_t> chosen() const { return m_chosen; }

  protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

  private:
    void take(std::size_t index);

    std::vector<LetterChoice> m_choices;
    QTreeWidget* m_list;
    QLabel* m_reason;
    std::optional<std::size_t> m_chosen;
};

/// Asks; the letter chosen, or nothing.
std::optional<QChar> askByLetter(QWidget* parent, Session& session, const QString& title,
                                 const std::vector<LetterChoice>& choices);

}  // namespace combwright
