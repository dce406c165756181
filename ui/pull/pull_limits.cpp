#include "ui/pull/pull_limits.h"

#include <QLocale>
#include <QRegularExpression>
#include <QVBoxLayout>
#include <cmath>

#include "core/words/figures.h"
#include "core/words/kind_words.h"
#include "core/words/words.h"

namespace combwright {
namespace {

// What can be meant by a constant; wider than any honey room, narrower than a slip of the pen.
constexpr double mostFullFrameG = 20000;
constexpr double mostSlotsTried = 500;
constexpr double mostBucketG = 100000;

std::optional<double> wholeOf(double scaled) {
    if (std::abs(scaled - std::round(scaled)) > 1e-6) return std::nullopt;
    return std::round(scaled);
}

QString plainNumber(double number) { return QLocale().toString(number, 'g', 6); }

QLabel* sideNote(const char* name, QWidget* parent) {
    auto* label = new QLabel(parent);
    label->setObjectName(QLatin1String(name));
    label->setWordWrap(true);
    label->hide();
    return label;
}

}  // namespace

PullLimitFields::PullLimitFields(Session& session, QWidget* parent)
    : QWidget(parent), m_session(session), m_grid(new QGridLayout) {
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(4);
    m_grid->setVerticalSpacing(3);
    m_grid->setColumnStretch(0, 1);
    column->addLayout(m_grid);
    add(What::Limit, "winter_need");
    add(What::Limit, "feed_up_to");
    add(What::Limit, "min_capped");
    add(What::Limit, "max_water");
    add(What::Limit, "carry");
    add(What::Limit, "boxes");
    add(What::Limit, "frames");
    add(What::Limit, "clearer_boards");
    add(What::FullFrame, "full_frame");
    add(What::Slots, "extractor_slots");
    add(What::Bucket, "bucket");
    add(What::Spare, "spare_buckets");
    m_trouble = sideNote("limit_trouble", this);
    m_note = sideNote("supposed_note", this);
    m_yards = sideNote("yards_need", this);
    column->addWidget(m_trouble);
    column->addWidget(m_note);
    column->addWidget(m_yards);
}

void PullLimitFields::add(What what, const char* key) {
    const int at = m_grid->rowCount();
    Row row{what, key, new QLabel(this), new QLineEdit(this), new QLabel(this)};
    row.edit->setObjectName(QLatin1String(key));
    row.edit->setAlignment(Qt::AlignRight);
    row.label->setBuddy(row.edit);
    row.label->setWordWrap(true);
    m_grid->addWidget(row.label, at, 0);
    m_grid->addWidget(row.edit, at, 1);
    m_grid->addWidget(row.unit, at, 2);
    const std::size_t index = m_rows.size();
    m_rows.push_back(row);
    // The answer follows each key; nothing is kept before the plan is.
    connect(row.edit, &QLineEdit::textEdited, this, [this, index] { take(index); });
}

QString PullLimitFields::labelOf(const Row& row) const {
    switch (row.what) {
        case What::FullFrame:
            return m_constants.usualBox.empty()
                       ? tr("Full frame")
                       : tr("Full frame, %1").arg(kindText(m_constants.usualBox));
        case What::Slots:
            return tr("Extractor");
        case What::Bucket:
            return tr("Bucket");
        case What::Spare:
            return tr("Spare buckets");
        case What::Limit:
            break;
    }
    const QLatin1String key(row.key);
    if (key == QLatin1String("winter_need")) return tr("Leave for winter");
    if (key == QLatin1String("feed_up_to")) return tr("Feed up to");
    if (key == QLatin1String("min_capped")) return tr("Capped at least");
    if (key == QLatin1String("max_water")) return tr("Water at most");
    if (key == QLatin1String("carry")) return tr("Carry at most");
    if (key == QLatin1String("boxes")) return tr("Boxes at most");
    if (key == QLatin1String("frames")) return tr("Frames at most");
    return tr("Clearer boards");
}

QString PullLimitFields::unitOf(const Row& row) const {
    switch (row.what) {
        case What::FullFrame:
        case What::Bucket:
            return massUnit();
        case What::Slots:
            return tr("slots");
        case What::Spare:
            return QStringLiteral("%");
        case What::Limit:
            break;
    }
    const QLatin1String key(row.key);
    if (key == QLatin1String("winter_need") || key == QLatin1String("feed_up_to"))
        return tr("%1 a hive").arg(massUnit());
    if (key == QLatin1String("carry")) return tr("%1 in all").arg(massUnit());
    if (key == QLatin1String("clearer_boards")) return tr("owned");
    if (key == QLatin1String("boxes") || key == QLatin1String("frames")) return {};
    return QStringLiteral("%");
}

QString PullLimitFields::inForce(const Row& row) const {
    switch (row.what) {
        case What::FullFrame:
            return m_constants.fullFrameG ? massTold(Mass::roundedGrams(*m_constants.fullFrameG))
                                          : QString();
        case What::Slots:
            return plainNumber(m_constants.slots);
        case What::Bucket:
            return massTold(Mass::roundedGrams(m_constants.bucketG));
        case What::Spare:
            return plainNumber(m_constants.spareShare * 100);
        case What::Limit:
            break;
    }
    return {};
}

QString PullLimitFields::held(const Row& row) const {
    const auto mass = [](double grams) { return massTold(Mass::roundedGrams(grams)); };
    switch (row.what) {
        case What::FullFrame:
            return m_supposed.fullFrameG ? mass(*m_supposed.fullFrameG) : inForce(row);
        case What::Slots:
            return m_supposed.slots ? plainNumber(*m_supposed.slots) : inForce(row);
        case What::Bucket:
            return m_supposed.bucketG ? mass(*m_supposed.bucketG) : inForce(row);
        case What::Spare:
            return m_supposed.spareShare ? plainNumber(*m_supposed.spareShare * 100) : inForce(row);
        case What::Limit:
            break;
    }
    const auto* field = PlanLimits::fields().find(row.key);
    const Value value = field->valueIn(&m_limits);
    const auto* number = std::get_if<std::int64_t>(&value);
    if (!number) return {};
    if (field->kind == Kind::Mass) return massTold(Mass::grams(*number));
    if (field->kind == Kind::Count) return QString::number(*number);
    return plainNumber(static_cast<double>(*number) / 100.0);
}

void PullLimitFields::fill(Row& row) {
    row.label->setText(labelOf(row));
    row.unit->setText(unitOf(row));
    const QString unit = unitOf(row);
    row.edit->setAccessibleName(unit.isEmpty() ? labelOf(row)
                                               : QStringLiteral("%1, %2").arg(labelOf(row), unit));
    row.edit->setPlaceholderText(inForce(row));
    row.edit->setEnabled(row.what != What::FullFrame || m_constants.usualFrame.has_value());
    row.edit->setFixedWidth(m_session.look().space(80));
    // What is typed stays, unless it would mean something else in the units shown now.
    const bool otherUnits = m_shownIn != shownUnits();
    if (otherUnits) row.trouble.clear();
    if (otherUnits || (row.trouble.isEmpty() && !(row.edit->hasFocus() && row.edit->isModified())))
        row.edit->setText(held(row));
}

void PullLimitFields::forget() {
    for (Row& row : m_rows) {
        row.trouble.clear();
        row.edit->clear();
        row.edit->setAccessibleDescription({});
    }
    m_shownIn.reset();
}

void PullLimitFields::show(const PullAsked& asked, const PullConstants& constants) {
    m_limits = asked.limits;
    m_supposed = asked.supposed;
    m_constants = constants;
    for (Row& row : m_rows) fill(row);
    m_shownIn = shownUnits();
    tellTrouble();
    tellSupposed();
}

void PullLimitFields::tellYards(const PullSheet& sheet) {
    QStringList own;
    for (const PullYardRow& yard : sheet.yards)
        if (yard.yard.winterNeed)
            own << QStringLiteral("%1 %2").arg(
                fromUtf8(yard.yard.name.text()),
                massFigure(static_cast<double>(yard.yard.winterNeed->grams()), How::Weighed));
    m_yards->setVisible(!own.isEmpty());
    m_yards->setText(tr("<small>A yard's own winter need goes before the limit: %1 %2.</small>")
                         .arg(own.join(QStringLiteral(", ")), massUnit()));
}

bool PullLimitFields::takeLimit(const char* key, const QString& text) {
    const auto* field = PlanLimits::fields().find(key);
    if (text.isEmpty()) return field->setIn(&m_limits, Value{});
    if (field->kind == Kind::Mass) {
        const auto mass = typedMass(text);
        return mass && field->setIn(&m_limits, Value{mass->grams()});
    }
    const auto number = typedNumber(text);
    if (!number) return false;
    const auto scaled = wholeOf(*number * (field->kind == Kind::Count ? 1.0 : 100.0));
    return scaled && field->setIn(&m_limits, Value{static_cast<std::int64_t>(*scaled)});
}

bool PullLimitFields::takeSupposed(What what, const QString& text) {
    // What is in force already is nothing to suppose.
    const auto suppose = [](std::optional<double>& into, double value,
                            std::optional<double> inForce) {
        into.reset();
        if (!inForce || std::abs(value - *inForce) > 1e-9) into = value;
        return true;
    };
    if (what == What::FullFrame || what == What::Bucket) {
        auto& into = what == What::FullFrame ? m_supposed.fullFrameG : m_supposed.bucketG;
        if (text.isEmpty()) return into.reset(), true;
        const auto mass = typedMass(text);
        if (!mass) return false;
        const auto grams = static_cast<double>(mass->grams());
        const double most = what == What::FullFrame ? mostFullFrameG : mostBucketG;
        if (grams <= 0 || grams > most) return false;
        return suppose(into, grams,
                       what == What::FullFrame ? m_constants.fullFrameG : m_constants.bucketG);
    }
    auto& into = what == What::Slots ? m_supposed.slots : m_supposed.spareShare;
    if (text.isEmpty()) return into.reset(), true;
    const auto number = typedNumber(text);
    if (!number || *number < 0) return false;
    if (what == What::Spare)
        return *number <= 100 && suppose(into, *number / 100, m_constants.spareShare);
    const auto whole = wholeOf(*number);
    return whole && *whole >= 1 && *whole <= mostSlotsTried &&
           suppose(into, *whole, m_constants.slots);
}

QString PullLimitFields::troubleText(const Row& row, const QString& typed) const {
    const QString last = held(row);
    const QString holds = last.isEmpty()
                              ? tr("there is still no such limit")
                              : tr("%1 holds").arg(ShownFigure{last, unitOf(row)}.text());
    static const QRegularExpression twoWays(QStringLiteral("^(\\d{1,3})[.,](\\d{3})$"));
    if (const auto match = twoWays.match(typed); match.hasMatch())
        return tr("%1: “%2” can be read in two ways, write %3%4 or %3.%4%6; %5.")
            .arg(labelOf(row), typed, match.captured(1), match.captured(2), holds,
                 QStringLiteral("0"));
    return tr("%1: “%2” cannot be meant here; %3.").arg(labelOf(row), typed, holds);
}

void PullLimitFields::take(std::size_t index) {
    Row& row = m_rows[index];
    const QString text = row.edit->text().trimmed();
    // What stands there is no news, even where typed anew it could be read in two ways.
    const bool asHeld = !text.isEmpty() && text == held(row);
    const bool inForceAgain = row.what != What::Limit && text == inForce(row);
    const bool taken = asHeld ? true
                       : row.what == What::Limit
                           ? takeLimit(row.key, text)
                           : takeSupposed(row.what, inForceAgain ? QString() : text);
    row.trouble = taken ? QString() : troubleText(row, text);
    row.edit->setAccessibleDescription(row.trouble);
    tellTrouble();
    tellSupposed();
    if (taken)
        Q_EMIT changed();
    else
        m_session.tell(row.trouble, true);
}

void PullLimitFields::tellTrouble() {
    QStringList troubles;
    for (const Row& row : m_rows)
        if (!row.trouble.isEmpty()) troubles << row.trouble.toHtmlEscaped();
    m_trouble->setVisible(!troubles.isEmpty());
    m_trouble->setText(
        QStringLiteral("<span style='color:%1'>%2</span>")
            .arg(m_session.look().tone(Tone::Bad).name(), troubles.join(QStringLiteral("<br>"))));
}

void PullLimitFields::tellSupposed() {
    QStringList were;
    for (const Row& row : m_rows) {
        const bool other = row.what == What::FullFrame ? m_supposed.fullFrameG.has_value()
                           : row.what == What::Slots   ? m_supposed.slots.has_value()
                           : row.what == What::Bucket  ? m_supposed.bucketG.has_value()
                           : row.what == What::Spare   ? m_supposed.spareShare.has_value()
                                                       : false;
        if (other)
            were << tr("%1 (was %2)")
                        .arg(labelOf(row), ShownFigure{inForce(row), unitOf(row)}.text());
    }
    m_note->setVisible(!were.isEmpty());
    m_note->setText(tr("<small>Only tried out: %1. Kept as your own figure when the plan is kept; "
                       "Ctrl+Z takes it back.</small>")
                        .arg(were.join(QStringLiteral(", ")).toHtmlEscaped()));
}

}  // namespace combwright
