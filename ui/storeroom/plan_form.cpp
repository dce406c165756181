#include "ui/storeroom/plan_form.h"

#include <QApplication>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QLocale>
#include <QScrollArea>
#include <QTimer>
#include <QVBoxLayout>
#include <algorithm>

#include "core/actions/storeroom/season_plan.h"
#include "core/places/pages/storeroom/storeroom_words.h"
#include "core/words/kind_words.h"
#include "core/words/words.h"
#include "ui/shell/form_reading.h"

namespace combwright {
namespace {

QString planNumberText(double number) { return QLocale().toString(number, 'g', 6); }

template <class Amount>
void showIn(QLineEdit* field, const std::optional<Amount>& value) {
    if (value) field->setText(planNumberText(static_cast<double>(value->value())));
}

/// How long after the last key what follows is reckoned: not between two keys of one number.
constexpr int followsAfterMs = 120;

/// "7", or with the packs they come in "7: 1 × 50".
QString toBuyText(const QString& pieces, const std::optional<std::int64_t>& pack,
                  const std::optional<std::int64_t>& packs) {
    if (!pack || !packs || *packs == 0) return pieces;
    return QStringLiteral("%1: %2 × %3").arg(pieces).arg(*packs).arg(*pack);
}

QTableWidgetItem* followItem(const QString& text, bool number) {
    auto* item = new QTableWidgetItem(text);
    item->setFlags(Qt::ItemIsEnabled | Qt::ItemIsSelectable);
    item->setToolTip(text);
    if (number) item->setTextAlignment(Qt::AlignRight | Qt::AlignVCenter);
    return item;
}

}  // namespace

PlanForm::PlanForm(Session& session, int year, Day on, QWidget* parent)
    : QDialog(parent),
      m_session(session),
      m_year(year),
      m_on(on),
      m_stock(stockOn(session.read(), on)),
      m_later(new QTimer(this)) {
    setObjectName(QStringLiteral("season_plan"));
    setWindowTitle(tr("Plan of %1").arg(year));
    const Look& look = session.look();
    auto* column = new QVBoxLayout(this);
    column->setSpacing(look.space(8));
    auto* scroll = new QScrollArea(this);
    scroll->setWidgetResizable(true);
    scroll->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    scroll->setFocusPolicy(Qt::NoFocus);
    column->addWidget(scroll, 1);
    auto* inside = new QWidget(scroll);
    const QSize room = (parent ? parent->window()->size() : QSize(1100, 780)) - QSize(20, 20);
    const QSize wanted(std::min(look.space(980), room.width()),
                       std::min(look.space(620), room.height()));
    // With large type the two do not go beside each other.
    const bool beside = wanted.width() >= look.space(840);
    auto* parts =
        new QBoxLayout(beside ? QBoxLayout::LeftToRight : QBoxLayout::TopToBottom, inside);
    parts->setContentsMargins(look.space(4), look.space(4), look.space(12), look.space(4));
    parts->setSpacing(look.space(16));
    auto* asked = new QWidget(inside);
    auto* form = new QFormLayout(asked);
    form->setContentsMargins(0, 0, 0, 0);
    form->setRowWrapPolicy(QFormLayout::WrapLongRows);
    form->setFieldGrowthPolicy(QFormLayout::AllNonFixedFieldsGrow);
    const NextSeason next = nextSeason(session.read(), on, year);
    m_colonies =
        line(form, tr("Colonies"), "colonies", tr("%1: as many as live now").arg(m_stock.colonies));
    m_splits = line(form, tr("Splits"), "splits", tr("8; 0 for none"));
    m_superKind = kinds(form, tr("Super"), "super_kind");
    m_supers = line(form, tr("Supers a colony"), "supers_per_colony", tr("3"));
    m_framesPerSuper = line(form, tr("Frames a super"), "frames_per_super",
                            tr("9; empty: as many as it is made for"));
    m_undrawn =
        line(form, tr("On foundation"), "undrawn_per_super", tr("10; empty: as with drawn comb"));
    m_broodKind = kinds(form, tr("Brood box of a split"), "brood_kind");
    m_broodPerSplit = line(form, tr("Boxes a split"), "brood_per_split", tr("1"));
    m_framesPerSplit = line(form, tr("Frames a split"), "frames_per_split", tr("10"));
    m_spare = line(form, tr("Spare supers, %"), "spare_share", tr("10"));
    m_framePack = line(form, tr("Frames in a pack"), "frame_pack", tr("50; may stay empty"));
    m_sheetPack = line(form, tr("Sheets in a pack"), "foundation_pack", tr("10; may stay empty"));
    m_items = line(form, tr("Other pieces"), "items",
                   tr("floor 1 1, lid 1 1, excluder 1 0 10 %, pack 5"));
    m_echo = new QLabel(asked);
    m_echo->setObjectName(QStringLiteral("items_read_back"));
    m_echo->setWordWrap(true);
    m_echo->setFont(look.font(TextSize::Note));
    form->addRow(m_echo);
    m_note = line(form, tr("Note"), "note", tr("may stay empty"));
    parts->addWidget(asked, 4);

    auto* right = new QVBoxLayout;
    m_head = new QLabel(inside);
    m_head->setObjectName(QStringLiteral("follows_head"));
    m_head->setFont(look.font(TextSize::Head, true));
    right->addWidget(m_head);
    m_follows = new QTableWidget(inside);
    m_follows->setObjectName(QStringLiteral("follows"));
    m_follows->setAccessibleName(tr("What the plan needs and what is short"));
    m_follows->setColumnCount(5);
    m_follows->setHorizontalHeaderLabels(
        {tr("what"), tr("needed"), tr("there"), tr("missing"), tr("to buy")});
    m_follows->verticalHeader()->hide();
    m_follows->setShowGrid(false);
    m_follows->setTabKeyNavigation(false);
    m_follows->setSelectionBehavior(QAbstractItemView::SelectRows);
    m_follows->setWordWrap(true);
    m_follows->horizontalHeader()->setSectionResizeMode(QHeaderView::ResizeToContents);
    m_follows->horizontalHeader()->setSectionResizeMode(0, QHeaderView::Stretch);
    m_follows->setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    m_follows->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    for (int n = 0; n < m_follows->columnCount(); ++n)
        m_follows->horizontalHeaderItem(n)->setTextAlignment(
            (n == 0 ? Qt::AlignLeft : Qt::AlignRight) | Qt::AlignVCenter);
    right->addWidget(m_follows);
    m_gaps = new QLabel(inside);
    m_gaps->setObjectName(QStringLiteral("gaps"));
    m_gaps->setWordWrap(true);
    right->addWidget(m_gaps);
    right->addStretch(1);
    parts->addLayout(right, 5);
    scroll->setWidget(inside);

    m_drafts = new FormDrafts(session, this);
    column->addWidget(m_drafts);
    m_reason = new QLabel(this);
    m_reason->setObjectName(QStringLiteral("reason"));
    m_reason->setWordWrap(true);
    m_reason->hide();
    column->addWidget(m_reason);
    m_keep = new QPushButton(tr("Keep the plan"), this);
    m_keep->setObjectName(QStringLiteral("keep"));
    m_keep->setProperty("primary", true);
    m_keep->setDefault(true);
    m_close = new QPushButton(tr("Close"), this);
    m_close->setAutoDefault(false);
    auto* buttons = new QHBoxLayout;
    buttons->addWidget(m_close);
    buttons->addStretch(1);
    buttons->addWidget(m_keep);
    column->addLayout(buttons);
    for (QWidget* each :
         std::initializer_list<QWidget*>{m_follows, &m_drafts->afresh(), m_close, m_keep}) {
        setTabOrder(m_fields.back(), each);
        m_fields.push_back(each);
    }
    connect(m_keep, &QPushButton::clicked, this, &PlanForm::keep);
    connect(m_close, &QPushButton::clicked, this, &QDialog::reject);
    connect(m_items, &QLineEdit::textChanged, this, &PlanForm::readBack);
    connect(&session, &Session::told, this, &PlanForm::say);
    connect(qApp, &QApplication::focusChanged, scroll, [scroll, inside](QWidget*, QWidget* now) {
        if (now && inside->isAncestorOf(now)) scroll->ensureWidgetVisible(now);
    });
    fillFields(next);
    m_later->setSingleShot(true);
    m_later->setInterval(followsAfterMs);
    connect(m_later, &QTimer::timeout, this, &PlanForm::showFollows);
    for (QWidget* each : m_fields) {
        if (auto* edit = qobject_cast<QLineEdit*>(each)) {
            m_drafts->watch(edit, edit->objectName());
            connect(edit, &QLineEdit::textChanged, this, &PlanForm::typed);
        } else if (auto* box = qobject_cast<QComboBox*>(each)) {
            m_drafts->watch(box, box->objectName());
            connect(box, &QComboBox::currentIndexChanged, this, &PlanForm::typed);
        }
    }
    connect(m_drafts, &FormDrafts::begunAfresh, this, [this] { m_colonies->setFocus(); });
    m_drafts->begin(QStringLiteral("season-plan %1").arg(year));
    readBack();
    showFollows();
    resize(wanted);
    m_colonies->setFocus();
}

QLineEdit* PlanForm::line(QFormLayout* form, const QString& label, const char* name,
                          const QString& example) {
    auto* edit = new QLineEdit(form->parentWidget());
    edit->setObjectName(QLatin1String(name));
    edit->setAccessibleName(label);
    edit->setPlaceholderText(example);
    form->addRow(label, edit);
    if (!m_fields.empty()) setTabOrder(m_fields.back(), edit);
    m_fields.push_back(edit);
    return edit;
}

QComboBox* PlanForm::kinds(QFormLayout* form, const QString& label, const char* name) {
    auto* box = new QComboBox(form->parentWidget());
    box->setObjectName(QLatin1String(name));
    box->setAccessibleName(label);
    box->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    box->setMinimumContentsLength(14);
    addBoxKinds(box, m_session.read(), tr("none"));
    form->addRow(label, box);
    if (!m_fields.empty()) setTabOrder(m_fields.back(), box);
    m_fields.push_back(box);
    return box;
}

void PlanForm::fillFields(const NextSeason& next) {
    if (!next.plan) return;
    const SeasonPlan& plan = *next.plan;
    showIn(m_colonies, plan.colonies);
    showIn(m_splits, plan.splits);
    choose(m_superKind, plan.superKind);
    showIn(m_supers, plan.supersPerColony);
    showIn(m_framesPerSuper, plan.framesPerSuper);
    showIn(m_undrawn, plan.undrawnPerSuper);
    choose(m_broodKind, plan.broodKind);
    showIn(m_broodPerSplit, plan.broodPerSplit);
    showIn(m_framesPerSplit, plan.framesPerSplit);
    if (plan.spare) m_spare->setText(planNumberText(plan.spare->value() * 100));
    showIn(m_framePack, plan.framePack);
    showIn(m_sheetPack, plan.foundationPack);
    m_items->setText(fromUtf8(planItemsText(next.items)));
    m_note->setText(fromUtf8(plan.note));
}

void PlanForm::readBack() {
    const std::string typed = typedWords(m_items);
    const auto items = parsePlanItems(typed);
    QStringList said;
    if (items) {
        for (const PlannedItem& each : *items) {
            QString text = tr("%1: %2 a colony, %3 a split")
                               .arg(itemText(each.item),
                                    planNumberText(each.perColony ? each.perColony->value() : 0),
                                    planNumberText(each.perSplit ? each.perSplit->value() : 0));
            if (each.spare)
                text += tr(", %1 % spare").arg(planNumberText(each.spare->value() * 100));
            if (each.pack) text += tr(", by %1").arg(each.pack->value());
            said << text;
        }
    } else {
        said << sentence(items.error());
    }
    QPalette palette = m_echo->palette();
    palette.setColor(QPalette::WindowText, m_session.look().tone(items ? Tone::Muted : Tone::Warn));
    m_echo->setPalette(palette);
    m_echo->setText(said.isEmpty() ? tr("The item, then how many for each colony, for each split; "
                                        "10 % for spare; pack 5 where it is sold so.")
                                   : said.join(QStringLiteral("; ")));
}

std::optional<SeasonPlan> PlanForm::planTyped(QString& notRead) const {
    SeasonPlan plan;
    plan.on = m_on;
    plan.year = Count(m_year);
    plan.superKind = chosenId<BoxKind>(m_superKind);
    plan.broodKind = chosenId<BoxKind>(m_broodKind);
    bool whole = true;
    const auto read = [&](const QLineEdit* field, auto& value) {
        if (readsAs(field->text(), value)) return;
        if (whole) notRead = field->accessibleName();
        whole = false;
    };
    read(m_colonies, plan.colonies);
    read(m_splits, plan.splits);
    read(m_supers, plan.supersPerColony);
    read(m_framesPerSuper, plan.framesPerSuper);
    read(m_undrawn, plan.undrawnPerSuper);
    read(m_broodPerSplit, plan.broodPerSplit);
    read(m_framesPerSplit, plan.framesPerSplit);
    read(m_spare, plan.spare);
    read(m_framePack, plan.framePack);
    read(m_sheetPack, plan.foundationPack);
    return whole ? std::optional(plan) : std::nullopt;
}

void PlanForm::typed() { m_later->start(); }

/// Of the plan as it is typed. What cannot be read is said, and the last answer goes: a figure
/// beside words it does not follow from would be a lie.
void PlanForm::showFollows() {
    m_later->stop();
    NextSeason next = nextSeason(m_session.read(), m_on, m_year);
    const bool untouched = !m_drafts->differs();
    QString trouble;
    if (!untouched) {
        const auto plan = planTyped(trouble);
        const auto items = parsePlanItems(typedWords(m_items));
        if (!plan) {
            trouble = tr("%1 cannot be read yet.").arg(trouble);
        } else if (!items) {
            trouble = tr("The other pieces cannot be read yet.");
        } else {
            std::vector<PlanItem> wanted;
            for (const PlannedItem& each : *items)
                wanted.push_back(
                    {{}, {}, each.item, each.perColony, each.perSplit, each.spare, each.pack});
            auto reckoned = nextSeason(m_session.read(), m_stock, m_on, *plan, wanted);
            if (reckoned)
                next = *std::move(reckoned);
            else
                trouble = sentence(reckoned.error());
        }
    }
    m_head->setText(untouched && next.plan ? tr("What follows, as kept")
                    : untouched            ? tr("What follows")
                                           : tr("What follows, not kept yet"));
    if (!trouble.isEmpty()) next = {};
    showRows(next);
    QStringList gaps;
    for (const PlanGap gap : next.gaps) gaps << gapText(gap, m_year);
    m_gaps->setText(trouble.isEmpty() ? gaps.join(QLatin1Char(' ')) : trouble);
    m_gaps->setVisible(!m_gaps->text().isEmpty());
}

void PlanForm::showRows(const NextSeason& next) {
    m_follows->setRowCount(0);
    const auto add = [this](const QString& what, const QString& need, const QString& there,
                            const QString& missing, const QString& buy) {
        const int at = m_follows->rowCount();
        m_follows->insertRow(at);
        m_follows->setItem(at, 0, followItem(what, false));
        m_follows->setItem(at, 1, followItem(need, true));
        m_follows->setItem(at, 2, followItem(there, true));
        m_follows->setItem(at, 3, followItem(missing, true));
        m_follows->setItem(at, 4, followItem(buy, true));
    };
    const auto line = [&](const QString& what, const Shortage& of,
                          const std::optional<std::int64_t>& pack = {},
                          const std::optional<std::int64_t>& packs = {}) {
        add(what, QString::number(of.need), QString::number(of.there), shortText(of, false),
            toBuyText(shortText(of, true), pack, packs));
    };
    for (const BoxNeed& each : next.boxes) line(kindText(each.kind.name.text()), each.boxes);
    for (const FrameNeed& each : next.frames) {
        const QString name = kindText(each.kind.name.text());
        line(name, each.frames, each.pack, each.packs);
        if (each.sheets == 0) continue;
        const QString buy = QString::number(each.sheetsToBuy);
        const bool known = each.sheetsThere && each.frames.known;
        const QString most = known ? buy : tr("at most %1").arg(buy);
        add(tr("foundation, %1").arg(name), QString::number(each.sheets),
            countText(each.sheetsThere), most, toBuyText(most, each.sheetPack, each.sheetPacks));
    }
    for (const ItemNeed& each : next.pieces) {
        const auto pack = each.plan.pack ? std::optional(each.plan.pack->value()) : std::nullopt;
        line(itemText(each.plan.item), each.pieces, pack, each.packs);
    }
    fitFollows();
}

void PlanForm::fitFollows() {
    m_follows->resizeRowsToContents();
    m_follows->setFixedHeight(m_follows->horizontalHeader()->sizeHint().height() +
                              m_follows->verticalHeader()->length() + 2 * m_follows->frameWidth());
}

void PlanForm::resizeEvent(QResizeEvent* event) {
    QDialog::resizeEvent(event);
    // The names wrap otherwise once their column has its new width.
    QTimer::singleShot(0, this, &PlanForm::fitFollows);
}

void PlanForm::keep() {
    PlanSeason plan;
    plan.on = m_on;
    plan.year = Count(m_year);
    plan.superKind = chosenId<BoxKind>(m_superKind);
    plan.broodKind = chosenId<BoxKind>(m_broodKind);
    if (!readField(m_session, m_colonies, plan.colonies) ||
        !readField(m_session, m_splits, plan.splits) ||
        !readField(m_session, m_supers, plan.supersPerColony) ||
        !readField(m_session, m_framesPerSuper, plan.framesPerSuper) ||
        !readField(m_session, m_undrawn, plan.undrawnPerSuper) ||
        !readField(m_session, m_broodPerSplit, plan.broodPerSplit) ||
        !readField(m_session, m_framesPerSplit, plan.framesPerSplit) ||
        !readField(m_session, m_spare, plan.spare) ||
        !readField(m_session, m_framePack, plan.framePack) ||
        !readField(m_session, m_sheetPack, plan.foundationPack))
        return;
    plan.items = typedWords(m_items);
    plan.note = typedWords(m_note);
    if (!m_session.run(plan)) return;
    m_kept = true;
    m_drafts->kept();
    m_stock = stockOn(m_session.read(), m_on);
    showFollows();
    say(tr("The plan is kept. Beside it stands what follows from it."), false);
}

void PlanForm::say(const QString& text, bool bad) {
    QPalette palette = m_reason->palette();
    palette.setColor(QPalette::WindowText, m_session.look().tone(bad ? Tone::Bad : Tone::Ink));
    m_reason->setPalette(palette);
    m_reason->setText(text);
    m_reason->setVisible(!text.isEmpty());
}

bool askToPlanSeason(QWidget* parent, Session& session, int year, Day on) {
    PlanForm form(session, year, on, parent);
    form.exec();
    return form.kept();
}

}  // namespace combwright
