#include "ui/yard/follow_dialog.h"

#include <QDialogButtonBox>
#include <QHBoxLayout>
#include <QLabel>
#include <QVBoxLayout>
#include <algorithm>

#include "core/places/pages/yard/queen_words.h"
#include "core/places/pages/yard/story_page.h"
#include "core/storage/queries/hive_days.h"
#include "core/words/kind_words.h"
#include "core/words/words.h"
#include "ui/yard/board_deeds.h"

namespace combwright {

FollowDialog::FollowDialog(QWidget* parent, Session& session, const YardSheetRow& row, Day on)
    : QDialog(parent),
      m_session(session),
      m_on(on),
      m_list(new QListWidget(this)),
      m_way(new QTextBrowser(this)) {
    const Look& look = session.look();
    setObjectName(QStringLiteral("follow_dialog"));
    setWindowTitle(tr("Follow what is in %1").arg(fromUtf8(row.hive.mark.text())));
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(look.space(16), look.space(16), look.space(16), look.space(12));
    column->setSpacing(look.space(8));
    auto* across = new QHBoxLayout;
    across->setSpacing(look.space(16));
    m_list->setObjectName(QStringLiteral("things"));
    m_list->setAccessibleName(tr("Boxes, combs and queens of this hive"));
    m_list->setWordWrap(true);
    m_list->setSpacing(look.space(2));
    m_list->setResizeMode(QListView::Adjust);
    m_list->setTextElideMode(Qt::ElideNone);
    m_list->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    m_way->setObjectName(QStringLiteral("way"));
    m_way->setAccessibleName(tr("The way of the chosen one"));
    m_way->setFont(look.font(TextSize::Body));
    m_way->setTabChangesFocus(true);
    across->addWidget(m_list, 2);
    across->addWidget(m_way, 4);
    column->addLayout(across, 1);
    auto* foot = new QLabel(tr("As far as it was written down up to %1.").arg(dayText(on)), this);
    foot->setWordWrap(true);
    foot->setFont(look.font(TextSize::Note));
    column->addWidget(foot);
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Close, this);
    column->addWidget(buttons);
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    connect(m_list, &QListWidget::currentRowChanged, this, &FollowDialog::tell);
    const QSize room = parent ? parent->size() : QSize(1280, 800);
    resize(std::min(look.space(820), room.width() - look.space(32)),
           std::min(look.space(480), room.height() - look.space(32)));
    addQueens(row);
    addBoxes(row);
    if (m_things.empty()) m_way->setPlainText(tr("Nothing of this hive has a name to follow yet."));
    if (!m_things.empty()) m_list->setCurrentRow(0);
    m_list->setFocus();
}

void FollowDialog::addQueens(const YardSheetRow& row) {
    const Read& file = m_session.read();
    const auto living = colonyLivingOn(file, row.hive.id, m_on);
    if (!living) return;
    auto stays = file.where<QueenStay>({is("colony", living->colony.id)});
    std::stable_sort(stays.begin(), stays.end(),
                     [](const QueenStay& a, const QueenStay& b) { return a.since > b.since; });
    for (const QueenStay& stay : stays) {
        const auto queen = stay.since <= m_on ? file.find(stay.queen) : std::nullopt;
        if (!queen) continue;
        const QString text = queenHeadText(*queen, colourOf(file, *queen, m_on));
        const bool gone = stay.until && *stay.until <= m_on;
        m_list->addItem(gone ? tr("%1; until %2").arg(text, dayText(*stay.until)) : text);
        m_things.push_back({Followed::Thing::Queen, queen->id.number});
    }
}

void FollowDialog::addBoxes(const YardSheetRow& row) {
    const Read& file = m_session.read();
    for (auto box = row.boxes.rbegin(); box != row.boxes.rend(); ++box) {
        const auto kind = file.find(box->kind);
        const QString name = calledBox(file, *box);
        m_list->addItem(box->mark.empty() || !kind
                            ? tr("Box: %1").arg(name)
                            : tr("Box %1, %2").arg(name, kindText(kind->name.text())));
        m_things.push_back({Followed::Thing::Box, box->id.number});
        // Without a mark a comb cannot be told from its neighbours.
        for (const Frame& frame : file.where<Frame>({is("box", box->id), isUnknown("retired")})) {
            if (frame.mark.empty()) continue;
            m_list->addItem(tr("Comb %1, in %2").arg(fromUtf8(frame.mark), name));
            m_things.push_back({Followed::Thing::Comb, frame.id.number});
        }
    }
}

void FollowDialog::choose(Id<Box> box) {
    for (std::size_t i = 0; i < m_things.size(); ++i)
        if (m_things[i].what == Followed::Thing::Box && m_things[i].id == box.number)
            m_list->setCurrentRow(static_cast<int>(i));
}

void FollowDialog::tell(int index) {
    if (index < 0 || index >= static_cast<int>(m_things.size())) return m_way->clear();
    const Thing& thing = m_things[static_cast<std::size_t>(index)];
    m_session.reading([&] {
        const Read& file = m_session.read();
        const Followed followed =
            thing.what == Followed::Thing::Box    ? followBox(file, Id<Box>{thing.id}, m_on)
            : thing.what == Followed::Thing::Comb ? followComb(file, Id<Frame>{thing.id}, m_on)
                                                  : followQueen(file, Id<Queen>{thing.id}, m_on);
        const Page page = followedPage(file, followed, m_on);
        const QString muted = m_session.look().tone(Tone::Muted).name();
        QString html = QStringLiteral("<p><b>%1</b></p>").arg(page.title.toHtmlEscaped());
        for (const Block& block : page.blocks) {
            if (const auto* text = std::get_if<TextBlock>(&block))
                html += QStringLiteral("<p>%1</p>")
                            .arg(text->text.toHtmlEscaped().replace(QLatin1Char('\n'),
                                                                    QStringLiteral("<br>")));
            const auto* table = std::get_if<TableBlock>(&block);
            if (!table) continue;
            html += QStringLiteral("<table cellspacing='0' cellpadding='3'>");
            for (const TableRow& step : table->rows)
                html += QStringLiteral(
                            "<tr><td style='color:%1;white-space:nowrap'>%2&nbsp; </td>"
                            "<td>%3</td></tr>")
                            .arg(muted, step.cells[0].text.toHtmlEscaped(),
                                 step.cells[1].text.toHtmlEscaped());
            html += QStringLiteral("</table>");
        }
        m_way->setHtml(html);
    });
}

void showFollowed(QWidget* parent, Session& session, const YardSheetRow& row,
                  const std::optional<Id<Box>>& box, Day on) {
    FollowDialog dialog(parent, session, row, on);
    if (box) dialog.choose(*box);
    dialog.exec();
}

}  // namespace combwright
