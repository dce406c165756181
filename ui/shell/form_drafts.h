// What is half typed in a form stays when it is closed or the program is ended: held like every
// line that is typed and not kept, put back when the form is next opened, gone when it is kept or
// the person begins afresh. A form of one name and Enter does without.
#pragma once

#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <functional>
#include <vector>

#include "ui/shell/session.h"
#include "ui/shell/sheet_drafts.h"

namespace combwright {

class FormDrafts : public QWidget {
    Q_OBJECT

  public:
    /// The words that what was typed is back, with the button that begins afresh; hidden while
    /// there is nothing to say.
    FormDrafts(Session& session, QWidget* parent);

    /// A field by the name its draft is held under, the same each time.
    void watch(QLineEdit* field, const QString& row);
    void watch(QComboBox* field, const QString& row);
    /// The fields stand as they are kept. From now on what is typed otherwise is held for this
    /// sheet; what was left over from last time is put back. Says whether anything was.
    bool begin(const QString& sheet);
    /// The fields are about to be filled for another sheet: what is written there is not typed.
    void leave() { m_begun = false; }
    /// Whether a field stands otherwise than it was kept.
    bool differs() const;
    /// All of it was kept: the fields as they stand now are what is kept.
    void kept();
    /// The fields as they were kept, and nothing held.
    void beginAfresh();
    QPushButton& afresh() { return *m_afresh; }

  Q_SIGNALS:
    void begunAfresh();

  private:
    struct Watched {
        QString row;
        QString kept;
        std::function<QString()> read;
        std::function<void(const QString&)> write;
    };
    void add(Watched watched);
    void typed(std::size_t at);

    Session& m_session;
    SheetDrafts m_drafts;
    std::vector<Watched> m_fields;
    bool m_begun = false;
    QLabel* m_says;
    QPushButton* m_afresh;
};

}  // namespace combwright
