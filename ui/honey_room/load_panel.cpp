#include "ui/honey_room/load_panel.h"

#include <QGridLayout>
#include <QHBoxLayout>
#include <QPainter>
#include <QVBoxLayout>
#include <algorithm>

#include "core/words/figures.h"
#include "core/words/words.h"

namespace combwright {
namespace {

/// One sign of the extractor beside the words that say what it means.
class SignMark : public QWidget {
  public:
    SignMark(Session& session, ExtractorSign sign, QWidget* parent)
        : QWidget(parent), m_session(session), m_sign(sign) {
        const auto size = [this] {
            setFixedSize(m_session.look().space(28), m_session.look().space(16));
        };
        connect(&session, &Session::lookChanged, this, size);
        size();
    }

  protected:
    void paintEvent(QPaintEvent*) override {
        QPainter painter(this);
        paintExtractorSign(painter, QRectF(rect()).adjusted(1, 2, -1, -2), m_sign,
                           m_session.look());
    }

  private:
    Session& m_session;
    ExtractorSign m_sign;
};

QString bold(const QString& text) { return QStringLiteral("<b>%1</b>").arg(text); }

}  // namespace

LoadPanel::LoadPanel(Session& session, QWidget* parent)
    : QWidget(parent),
      m_session(session),
      m_title(new QLabel(this)),
      m_about(new QLabel(this)),
      m_view(new LoadView(session, this)),
      m_legend(new QWidget(this)),
      m_advice(new QLabel(this)),
      m_before(new QPushButton(tr("Before"), this)),
      m_after(new QPushButton(tr("After"), this)),
      m_leave(new QPushButton(this)),
      m_add(new QPushButton(tr("Add an empty frame  A"), this)),
      m_asPlanned(new QPushButton(tr("As planned  R"), this)),
      m_mixLots(new QCheckBox(tr("lots may share a load"), this)),
      m_mixKinds(new QCheckBox(tr("sizes that fit the same slots may share a load"), this)) {
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(4);
    auto* head = new QHBoxLayout;
    m_title->setObjectName(QStringLiteral("load_title"));
    m_about->setObjectName(QStringLiteral("load_about"));
    m_about->setWordWrap(true);
    m_before->setObjectName(QStringLiteral("load_before"));
    m_before->setAccessibleName(tr("Load before"));
    m_after->setObjectName(QStringLiteral("load_after"));
    m_after->setAccessibleName(tr("Load after"));
    head->addWidget(m_title);
    head->addWidget(m_about, 1);
    head->addWidget(m_before);
    head->addWidget(m_after);
    column->addLayout(head);
    column->addWidget(m_view, 1);
    auto* legend = m_legendGrid = new QGridLayout(m_legend);
    legend->setContentsMargins(0, 0, 0, 0);
    legend->setHorizontalSpacing(6);
    legend->setVerticalSpacing(0);
    const auto line = [&](ExtractorSign sign, const char* name, int row, int at) {
        auto* label = new QLabel(m_legend);
        label->setObjectName(QLatin1String(name));
        label->setWordWrap(true);
        label->setTextFormat(Qt::RichText);
        legend->addWidget(new SignMark(session, sign, m_legend), row, at, Qt::AlignTop);
        legend->addWidget(label, row, at + 1, Qt::AlignTop);
        return label;
    };
    m_start = line(ExtractorSign::Start, "load_text", 0, 0);
    m_end = line(ExtractorSign::End, "load_end", 0, 2);
    m_ring = line(ExtractorSign::Ring, "load_ring", 1, 0);
    m_doubt = line(ExtractorSign::DoubtStart, "load_doubt", 1, 2);
    m_hefts = new QLabel(m_legend);
    m_hefts->setObjectName(QStringLiteral("hefts"));
    m_hefts->setWordWrap(true);
    m_hefts->setTextFormat(Qt::RichText);
    legend->addWidget(m_hefts, 2, 0, 1, 2);
    legend->setColumnStretch(1, 5);
    legend->setColumnStretch(3, 4);
    column->addWidget(m_legend);
    m_advice->setObjectName(QStringLiteral("advice"));
    m_advice->setWordWrap(true);
    m_advice->setTextFormat(Qt::RichText);
    column->addWidget(m_advice);
    auto* deeds = new QHBoxLayout;
    m_leave->setObjectName(QStringLiteral("leave_out"));
    m_add->setObjectName(QStringLiteral("add_empty"));
    m_asPlanned->setObjectName(QStringLiteral("as_planned"));
    for (QPushButton* button : {m_leave, m_add, m_asPlanned}) deeds->addWidget(button);
    deeds->addStretch(1);
    column->addLayout(deeds);
    m_mixLots->setObjectName(QStringLiteral("mix_lots"));
    m_mixKinds->setObjectName(QStringLiteral("mix_kinds"));
    column->addWidget(m_mixLots);
    column->addWidget(m_mixKinds);
    column->addStretch(0);
    m_mixKinds->hide();
    m_mixLots->hide();
    for (QPushButton* button : {m_before, m_after, m_leave, m_add, m_asPlanned})
        button->setProperty("small", true);

    connect(m_before, &QPushButton::clicked, this, [this] { goTo(-1); });
    connect(m_after, &QPushButton::clicked, this, [this] { goTo(+1); });
    connect(m_view, &LoadView::otherLoadAsked, this, &LoadPanel::goTo);
    connect(m_view, &LoadView::changed, this, &LoadPanel::describe);
    const auto leave = [this] {
        if (m_leaveOut) m_view->take(LoadAdvice(*m_leaveOut).after);
    };
    const auto add = [this] {
        if (m_addEmpty) m_view->take(LoadAdvice(*m_addEmpty).after);
    };
    connect(m_leave, &QPushButton::clicked, this, leave);
    connect(m_view, &LoadView::leaveOutAsked, this, leave);
    connect(m_add, &QPushButton::clicked, this, add);
    connect(m_view, &LoadView::addEmptyAsked, this, add);
    connect(m_asPlanned, &QPushButton::clicked, this, [this] { m_view->putBack(); });
    connect(m_mixLots, &QCheckBox::toggled, this, &LoadPanel::rulesChanged);
    connect(m_mixKinds, &QCheckBox::toggled, this, &LoadPanel::rulesChanged);
    const auto sizes = [this] {
        m_title->setFont(m_session.look().font(TextSize::Head, true));
        for (QLabel* label : {m_start, m_end, m_ring, m_doubt, m_hefts, m_advice, m_about})
            label->setFont(m_session.look().font(TextSize::Body));
        m_view->setMinimumSize(m_session.look().space(300), m_session.look().space(264));
        for (QPushButton* button : {m_before, m_after, m_leave, m_add, m_asPlanned})
            button->setMinimumHeight(m_session.look().space(28));
        for (QCheckBox* box : {m_mixLots, m_mixKinds})
            box->setMinimumHeight(m_session.look().space(28));
        describe();
    };
    connect(&session, &Session::lookChanged, this, sizes);
    sizes();
}

/// Higher than wide the drum would only stand in a void, away from what is said of it.
void LoadPanel::resizeEvent(QResizeEvent*) {
    m_view->setMaximumHeight(std::max(m_view->minimumHeight(), width() * 4 / 5));
}

LoadRules LoadPanel::rules() const { return {m_mixLots->isChecked(), m_mixKinds->isChecked()}; }

QString LoadPanel::loadName() const {
    return m_view->hasLoad() ? tr("Load %1").arg(m_view->load().number) : QString();
}

void LoadPanel::freeze(std::optional<std::int64_t> number) {
    if (number && m_view->hasLoad() && m_view->load().number == *number) {
        m_frozen = m_view->load();
        m_frozenFelt = m_felt;
    } else if (!number) {
        m_frozen.reset();
    }
    if (number) m_index = 0;
}

std::optional<LoadPanel::Frozen> LoadPanel::frozen() const {
    return m_frozen ? std::optional(Frozen{*m_frozen, m_frozenFelt}) : std::nullopt;
}

void LoadPanel::freezeAgain(const std::optional<Frozen>& frozen) {
    m_frozen.reset();
    m_frozenFelt.reset();
    if (!frozen) return;
    m_frozen = frozen->load;
    m_frozenFelt = frozen->felt;
    m_index = 0;
}

void LoadPanel::loadKept(std::int64_t number) {
    if (m_frozen && m_frozen->number == number) m_frozen.reset();
    m_index = 0;
}

void LoadPanel::show(const LoadSheet& sheet, bool severalRuns) {
    m_sheet = sheet;
    // What turns is drawn as it turns.
    if (m_frozen)
        for (SheetLoad& load : m_sheet.loads)
            if (load.number == m_frozen->number) load = *m_frozen;
    m_mixLots->setVisible(severalRuns);
    m_mixKinds->setVisible(sheet.severalKinds);
    fill();
}

void LoadPanel::goTo(int step) {
    const auto count = static_cast<int>(m_sheet.loads.size());
    m_index = static_cast<std::size_t>(
        std::clamp(static_cast<int>(m_index) + step, 0, std::max(0, count - 1)));
    fill();
}

void LoadPanel::fill() {
    const std::size_t count = m_sheet.loads.size();
    if (count == 0) {
        m_index = 0;
        m_view->clear();
    } else {
        m_index = std::min(m_index, count - 1);
        m_view->show(m_sheet.loads[m_index], m_sheet);
    }
    describe();
}

void LoadPanel::describe() {
    const bool has = m_view->hasLoad();
    m_legend->setVisible(has);
    for (QPushButton* button : {m_before, m_after})
        button->setVisible(has && m_sheet.loads.size() > 1);
    m_before->setEnabled(m_index > 0);
    m_after->setEnabled(m_index + 1 < m_sheet.loads.size());
    if (!has) {
        m_title->setText(tr("Extractor"));
        m_about->setText(m_sheet.loadsDone > 0 ? tr("%1 loads spun").arg(m_sheet.loadsDone)
                                               : QString());
        for (QWidget* widget :
             std::initializer_list<QWidget*>{m_advice, m_leave, m_add, m_asPlanned})
            widget->hide();
        return;
    }
    const SheetLoad& load = m_view->load();
    const auto kilos = [](double grams) { return massText(grams, How::Weighed); };
    const std::int64_t all = m_sheet.loadsDone + static_cast<std::int64_t>(m_sheet.loads.size());
    m_title->setText(tr("Load %1 of %2").arg(load.number).arg(all));
    m_about->setText(
        QStringLiteral("<span style=\"color:%1\">%2</span>")
            .arg(m_session.look().tone(Tone::Muted).name(),
                 tr("%1, %2 frames").arg(fromUtf8(load.lot).toHtmlEscaped()).arg(load.frames)));
    const auto even = [&](double grams) {
        return grams < 50 ? bold(tr("even")) : bold(kilos(grams)) + QStringLiteral("<sup>e</sup>");
    };
    const auto warned = [&](double grams, const QString& text) {
        if (grams <= m_sheet.ringG()) return text;
        return QStringLiteral("<span style=\"color:%1\">%2, <b>%3</b></span>")
            .arg(m_session.look().tone(Tone::Warn).name(), text,
                 grams > m_sheet.allowedG ? tr("over what the grade allows")
                                          : tr("over what ran smooth before"));
    };
    m_start->setText(warned(load.offset.startG, tr("start %1, may be %2: by eye")
                                                    .arg(even(load.offset.startG),
                                                         kilos(load.offset.startG + load.doubtG))));
    m_end->setText(warned(load.offset.endG, tr("end %1, may be %2")
                                                .arg(even(load.offset.endG),
                                                     kilos(load.offset.endG + load.endDoubtG))));
    QString ring = m_sheet.ranSmoothG
                       ? tr("ran smooth before: %1").arg(bold(kilos(*m_sheet.ranSmoothG)))
                       : tr("the balance grade allows %1").arg(bold(kilos(m_sheet.allowedG)));
    if (m_sheet.walkedG) ring += tr("; it walked at %1").arg(kilos(*m_sheet.walkedG));
    m_ring->setText(QStringLiteral("<span style=\"color:%1\">%2</span>")
                        .arg(m_session.look().tone(Tone::Good).name(), ring));
    m_doubt->setText(tr("the doubt, 9 in 10"));
    m_hefts->setText(heftWords());
    advise();
}

QString LoadPanel::heftWords() const {
    const QString muted = m_session.look().tone(Tone::Muted).name();
    const auto gray = [&](const QString& text) {
        return QStringLiteral("<span style=\"color:%1\">%2</span>").arg(muted, text);
    };
    const auto& felt = m_frozen ? m_frozenFelt : m_felt;
    if (!felt || m_index > 0) return gray(tr("// and 3 2 1 or h m l: frames as they felt"));
    const auto& classes = felt->classes;
    const auto one = [&](const char* letter, const QString& name, double honeyG) {
        return QStringLiteral("%1 %2 %3")
            .arg(bold(QLatin1String(letter)), name, massFigure(honeyG + felt->endG, How::Weighed));
    };
    return QStringList{one("h", tr("heavy"), classes.heavy.meanG),
                       one("m", tr("middling"), classes.middling.meanG),
                       one("l", tr("light"), classes.light.meanG) + QLatin1Char(' ') + massUnit()}
               .join(QStringLiteral(" &nbsp;")) +
           QStringLiteral("<sup>a</sup> ") +
           gray(felt->boxes > 0 ? tr("from %1 boxes").arg(felt->boxes) : tr("assumed"));
}

void LoadPanel::advise() {
    const SheetLoad& planned = m_view->planned();
    m_leaveOut.reset();
    m_addEmpty.reset();
    // Asked of the load at its best: frames put in the wrong place are put back, not left out.
    if (planned.offset.largerG() > m_sheet.ringG()) {
        m_leaveOut = leaveOneOut(planned);
        m_addEmpty = addAnEmptyFrame(planned);
    }
    QStringList parts;
    const auto got = [](const LoadAdvice& advice) {
        return shownPortion(advice.after.offset.largerG()).text();
    };
    if (m_leaveOut || m_addEmpty)
        parts << bold(tr("This load does not balance: %1 off at best.")
                          .arg(shownPortion(planned.offset.largerG()).text()));
    if (m_leaveOut) {
        parts << tr("Leave out a frame of %1: %2 off.")
                     .arg(fromUtf8(m_leaveOut->box).toHtmlEscaped(), got(*m_leaveOut));
        m_leave->setText(tr("Leave out %1  L").arg(fromUtf8(m_leaveOut->box)));
    }
    if (m_addEmpty) parts << tr("Add an empty drawn frame: %1 off.").arg(got(*m_addEmpty));
    if (m_view->isChanged()) {
        const double larger = m_view->load().offset.largerG();
        parts << tr("Changed from the plan: %1 off at most, planned %2.")
                     .arg(shownPortion(larger).text(),
                          shownPortion(m_sheet.loads[m_index].offset.largerG()).text());
    }
    m_advice->setText(parts.join(QLatin1Char(' ')));
    m_advice->setVisible(!parts.isEmpty());
    m_leave->setVisible(m_leaveOut.has_value());
    m_add->setVisible(m_addEmpty.has_value());
    m_asPlanned->setVisible(m_view->isChanged());
}

}  // namespace combwright
