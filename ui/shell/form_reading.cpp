#include "ui/shell/form_reading.h"

#include <QCoreApplication>
#include <QRegularExpression>
#include <algorithm>
#include <set>

#include "core/actions/storeroom/frame_picks.h"
#include "core/words/day_words.h"
#include "core/words/figures.h"
#include "core/words/kind_words.h"
#include "core/words/money_words.h"
#include "core/words/room_line.h"
#include "core/words/words.h"

namespace combwright {
namespace {

QString readWord(const char* text) { return QCoreApplication::translate("form_reading", text); }

bool notRead(Session& session, QLineEdit* field, const QString& text) {
    session.tell(text.arg(field->accessibleName(), field->text().trimmed()), true);
    field->setFocus();
    field->selectAll();
    return false;
}

/// Those in use first, each part in the order of the catalogue.
template <class Kind>
void addKinds(QComboBox* choice, const Read& file, const std::set<std::int64_t>& used,
              bool others) {
    for (const bool first : {true, false}) {
        if (!first && !others) break;
        for (const Kind& kind : file.all<Kind>())
            if (used.contains(kind.id.number) == first)
                choice->addItem(kindText(kind.name.text()), static_cast<qlonglong>(kind.id.number));
    }
}

}  // namespace

QString typedAsShown(const QLineEdit* field) {
    static const QRegularExpression bare(QStringLiteral("^~?\\s*[0-9]+([.,][0-9]+)?$"));
    static const QRegularExpression example(
        QStringLiteral("^~?[0-9]+(?:[.,][0-9]+)?\\s*(kg|g|lb|oz|m|cm|mm|in|ft)\\b"));
    const QString typed = field->text().trimmed();
    if (!bare.match(typed).hasMatch()) return typed;
    const auto unit = example.match(field->placeholderText());
    return unit.hasMatch() ? typed + QLatin1Char(' ') + unit.captured(1) : typed;
}

std::string typedWords(const QLineEdit* field) { return field->text().simplified().toStdString(); }

bool readsAs(const QString& text, std::optional<Count>& value) {
    value.reset();
    const QString typed = text.trimmed();
    if (typed.isEmpty()) return true;
    bool whole = false;
    const qlonglong number = typed.toLongLong(&whole);
    if (!whole || number < 0 || number > 999'999) return false;
    value = Count(number);
    return true;
}

bool readsAs(const QString& text, std::optional<Number>& value) {
    value.reset();
    const QString typed = text.trimmed();
    if (typed.isEmpty()) return true;
    const auto number = typedNumber(typed);
    if (number) value = Number::rounded(*number);
    return number.has_value();
}

bool readsAs(const QString& text, std::optional<Mass>& value) {
    value = typedMass(text.trimmed());
    return value || text.trimmed().isEmpty();
}

bool readsAs(const QString& text, std::optional<Temperature>& value) {
    value = typedTemperature(text.trimmed());
    return value || text.trimmed().isEmpty();
}

bool readsAs(const QString& text, std::optional<Length>& value) {
    value = typedLength(text.trimmed());
    return value || text.trimmed().isEmpty();
}

bool readsAs(const QString& text, std::optional<Share>& value) {
    value.reset();
    QString typed = text.trimmed();
    if (typed.isEmpty()) return true;
    if (typed.endsWith(QLatin1Char('%'))) typed = typed.chopped(1).trimmed();
    const auto number = typedNumber(typed);
    if (!number || *number > 100.0) return false;
    value = Share::rounded(*number / 100.0);
    return true;
}

bool readsAs(const QString& text, std::optional<Money>& value) {
    value = typedMoney(text.trimmed());
    return value || text.trimmed().isEmpty();
}

bool readsAs(const QString& text, std::optional<Known<Count>>& value) {
    value.reset();
    const QString typed = text.trimmed();
    if (typed.isEmpty()) return true;
    std::optional<Count> low;
    std::optional<Count> high;
    const bool byEye = typed.startsWith(QLatin1Char('~'));
    const QStringList ends = (byEye ? typed.mid(1) : typed).split(QLatin1Char('-'));
    if (ends.size() > 2 || !readsAs(ends.front(), low) || !low) return false;
    if (ends.size() == 2 && (!readsAs(ends.back(), high) || !high || *high < *low)) return false;
    value = Known<Count>{*low, high, byEye || high ? How::ByEye : How::Counted};
    return true;
}

bool readsAs(const QString& text, std::optional<Known<Mass>>& value) {
    value = typedReading(text);
    return value || text.trimmed().isEmpty();
}

bool readsAs(const QString& text, Day today, bool ahead, std::optional<Day>& value) {
    value.reset();
    const std::string typed = text.trimmed().toStdString();
    if (typed.empty()) return true;
    if (const auto month = parseDay(typed + "-01")) {
        // A pack names the month: it is good to the end of it.
        const Day next = *month + days(31);
        value = next - days(static_cast<int>(dayOfMonth(next)));
        return true;
    }
    value = dayInWords(typed, today);
    if (value && ahead && *value < today && !parseDay(typed))
        value = makeDay(yearOf(*value) + 1, monthOf(*value), dayOfMonth(*value));
    return value.has_value();
}

bool readField(Session& session, QLineEdit* field, std::optional<Known<Count>>& value) {
    return readsAs(field->text(), value) ||
           notRead(session, field,
                   readWord("%1: \"%2\" is no count. Write 6, ~6 by eye, 5-7, or leave it "
                            "empty."));
}

bool readField(Session& session, QLineEdit* field, std::optional<Known<Mass>>& value) {
    return readsAs(typedAsShown(field), value) ||
           notRead(session, field,
                   readWord("%1: \"%2\" is no weight. Write 1.8 or 850 g, ~2 by eye, or leave it "
                            "empty."));
}

bool readDayField(Session& session, QLineEdit* field, bool ahead, std::optional<Day>& value) {
    if (readsAs(field->text(), session.clock().today(), ahead, value)) return true;
    if (field->text().trimmed().startsWith(QLatin1Char('~')) || mayBeTwoDays(field->text())) {
        session.tell(noDayText(field->text()), true);
        field->setFocus();
        field->selectAll();
        return false;
    }
    return notRead(session, field,
                   readWord("%1: \"%2\" is no day. Write 14 aug or 2027-08-14, or leave it "
                            "empty."));
}

bool readField(Session& session, QLineEdit* field, std::optional<Count>& value) {
    return readsAs(field->text(), value) ||
           notRead(session, field,
                   readWord("%1: \"%2\" is no whole number. Write 12, or leave it empty."));
}

bool readField(Session& session, QLineEdit* field, std::optional<Number>& value) {
    if (!readsAs(field->text(), value) && typedNumber(field->text().trimmed() + QLatin1Char('0')))
        return notRead(session, field,
                       readWord("%1: \"%2\" can be read in two ways, for three digits behind a "
                                "point may be thousands. Write two digits behind it, or four."));
    return readsAs(field->text(), value) ||
           notRead(session, field,
                   readWord("%1: \"%2\" is no number. Write 3 or 1.5, or leave it empty."));
}

bool readField(Session& session, QLineEdit* field, std::optional<Mass>& value) {
    return readsAs(typedAsShown(field), value) ||
           notRead(session, field,
                   readWord("%1: \"%2\" is no weight. Write 1.8 or 850 g, or leave it empty."));
}

bool readField(Session& session, QLineEdit* field, std::optional<Temperature>& value) {
    return readsAs(field->text(), value) ||
           notRead(session, field,
                   readWord("%1: \"%2\" is no temperature. Write degrees, -18, or leave it "
                            "empty."));
}

bool readField(Session& session, QLineEdit* field, std::optional<Length>& value) {
    return readsAs(typedAsShown(field), value) ||
           notRead(session, field,
                   readWord("%1: \"%2\" is no length. Write 225 mm, 8.9 in or 2 3/4 in, or "
                            "leave it empty."));
}

bool readField(Session& session, QLineEdit* field, std::optional<Money>& value) {
    return readsAs(field->text(), value) ||
           notRead(session, field,
                   readWord("%1: \"%2\" is no amount of money. Write 8.50, or leave it empty."));
}

bool readField(Session& session, QLineEdit* field, std::optional<Share>& value) {
    return readsAs(field->text(), value) ||
           notRead(session, field,
                   readWord("%1: \"%2\" is no share. Write 10 for 10 %, or leave it empty."));
}

bool readField(Session& session, QLineEdit* field, std::optional<Id<Box>>& value) {
    value.reset();
    const std::string typed = typedWords(field);
    if (typed.empty()) return true;
    const auto named = boxesNamed(session.read(), typed);
    if (!named) {
        session.tell(sentence(named.error()), true);
        field->setFocus();
        return false;
    }
    if (named->boxes.size() != 1 || named->loose || !named->byName)
        return notRead(session, field, readWord("%1: \"%2\" is not one box. Write one mark."));
    value = named->boxes.front();
    return true;
}

void addFrameKinds(QComboBox* choice, const Read& file, const QString& none, bool others) {
    if (!none.isEmpty()) choice->addItem(none, 0);
    std::set<std::int64_t> used;
    for (const Frame& frame : file.where<Frame>({isUnknown("retired")}))
        used.insert(frame.kind.number);
    addKinds<FrameKind>(choice, file, used, others);
}

void addBoxKinds(QComboBox* choice, const Read& file, const QString& none) {
    if (!none.isEmpty()) choice->addItem(none, 0);
    std::set<std::int64_t> used;
    for (const Box& box : file.all<Box>())
        if (inUse(box)) used.insert(box.kind.number);
    addKinds<BoxKind>(choice, file, used, true);
}

}  // namespace combwright
