// The leaf that hangs on a jar: the keeper ticks what is told, and reads it before it is printed.
#pragma once

#include <QCheckBox>
#include <QDialog>
#include <vector>

#include "core/places/goods/jar_leaf.h"
#include "ui/honey_room/page_browser.h"
#include "ui/shell/session.h"

namespace combwright {

class LeafDialog : public QDialog {
    Q_OBJECT

  public:
    LeafDialog(QWidget* parent, Session& session, JarLeaf leaf);
    LeafTold told() const;
    QString text() const { return m_words->toPlainText(); }

  private:
    void look();

    Session& m_session;
    JarLeaf m_leaf;
    std::vector<std::pair<QCheckBox*, bool LeafTold::*>> m_ticks;
    PageBrowser* m_words;
};

void showLeaf(QWidget* parent, Session& session, Id<Bottling> filling);

}  // namespace combwright
