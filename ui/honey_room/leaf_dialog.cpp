#include "ui/honey_room/leaf_dialog.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QVBoxLayout>
#include <algorithm>

#include "core/places/pages/goods/jar_leaf_page.h"
#include "core/words/words.h"
#include "ui/print/print_dialog.h"

namespace combwright {

LeafDialog::LeafDialog(QWidget* parent, Session& session, JarLeaf leaf)
    : QDialog(parent), m_session(session), m_leaf(std::move(leaf)), m_words(new PageBrowser(this)) {
    const Look& look = session.look();
    setObjectName(QStringLiteral("leaf_dialog"));
    setWindowTitle(tr("Leaf for a jar of %1").arg(fromUtf8(m_leaf.bottling.code.text())));
    auto* column = new QVBoxLayout(this);
    column->setSpacing(look.space(8));
    auto* across = new QHBoxLayout;
    across->setSpacing(look.space(16));
    auto* ticks = new QVBoxLayout;
    auto* head = new QLabel(tr("What is told"), this);
    head->setFont(look.font(TextSize::Head, true));
    ticks->addWidget(head);
    const auto tick = [&](const QString& text, const char* name, bool LeafTold::*member) {
        auto* box = new QCheckBox(text, this);
        box->setObjectName(QLatin1String(name));
        box->setChecked(LeafTold{}.*member);
        ticks->addWidget(box);
        m_ticks.emplace_back(box, member);
        connect(box, &QCheckBox::toggled, this, [this] { this->look(); });
    };
    tick(tr("&where the bees stood"), "place", &LeafTold::place);
    tick(tr("in which w&eeks"), "weeks", &LeafTold::weeks);
    tick(tr("how many &hives and boxes"), "hives", &LeafTold::hives);
    tick(tr("what the &keeper did"), "work", &LeafTold::work);
    tick(tr("its wa&ter"), "water", &LeafTold::water);
    tick(tr("its c&olour"), "colour", &LeafTold::colour);
    tick(tr("you&r word for the taste"), "taste", &LeafTold::taste);
    tick(tr("&medicines of its hives"), "medicines", &LeafTold::medicines);
    auto* about = new QLabel(
        tr("Told from what you wrote down and nothing else. The caution for babies always stands "
           "on it."),
        this);
    about->setWordWrap(true);
    about->setFont(look.font(TextSize::Note));
    ticks->addWidget(about);
    ticks->addStretch(1);
    across->addLayout(ticks, 2);
    m_words->setObjectName(QStringLiteral("words"));
    across->addWidget(m_words, 3);
    column->addLayout(across, 1);
    auto* buttons = new QHBoxLayout;
    auto* close = new QPushButton(tr("Close"), this);
    close->setObjectName(QStringLiteral("close"));
    close->setAutoDefault(false);
    auto* print = new QPushButton(tr("&Preview and print…"), this);
    print->setObjectName(QStringLiteral("print"));
    print->setProperty("primary", true);
    print->setAutoDefault(false);
    buttons->addWidget(close);
    buttons->addStretch(1);
    buttons->addWidget(print);
    column->addLayout(buttons);
    connect(close, &QPushButton::clicked, this, &QDialog::reject);
    connect(print, &QPushButton::clicked, this, [this] {
        printWithPreview(this, jarLeafPage(m_session.read(), m_leaf, told()), m_session.look());
    });
    QWidget* before = m_ticks.front().first;
    for (std::size_t i = 1; i < m_ticks.size(); ++i) {
        setTabOrder(before, m_ticks[i].first);
        before = m_ticks[i].first;
    }
    setTabOrder(before, m_words);
    setTabOrder(m_words, close);
    setTabOrder(close, print);
    const QSize room = parent ? parent->window()->size() : QSize(1000, 780);
    resize(std::min(look.space(760), room.width() - 20),
           std::min(look.space(560), room.height() - 20));
    this->look();
    m_ticks.front().first->setFocus();
}

LeafTold LeafDialog::told() const {
    LeafTold told;
    for (const auto& [box, member] : m_ticks) told.*member = box->isChecked();
    return told;
}

void LeafDialog::look() {
    m_words->show(jarLeafPage(m_session.read(), m_leaf, told()), m_session.look());
}

void showLeaf(QWidget* parent, Session& session, Id<Bottling> filling) {
    std::optional<JarLeaf> leaf;
    session.reading([&] { leaf = jarLeaf(session.read(), filling); });
    if (!leaf) return;
    LeafDialog dialog(parent, session, *std::move(leaf));
    dialog.exec();
}

}  // namespace combwright
