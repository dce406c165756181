// What is typed into the short forms of a place, read: an empty field says nothing, and one that
// cannot be read is told and gets the cursor, so that nothing else is done meanwhile.
#pragma once

#include <QComboBox>
#include <QLineEdit>

#include "core/model/frames/box.h"
#include "core/model/wax/batch.h"
#include "core/units/day.h"
#include "core/units/known.h"
#include "core/units/length.h"
#include "core/units/mass.h"
#include "core/units/money.h"
#include "core/units/number.h"
#include "core/units/share.h"
#include "core/units/temperature.h"
#include "core/words/wax_figures.h"
#include "core/words/words.h"
#include "ui/shell/session.h"

namespace combwright {

/// The words of a field, blanks tidied.
std::string typedWords(const QLineEdit* field);

/// Reads without a word: false where something else was typed; the value is empty where nothing
/// was.
bool readsAs(const QString& typed, std::optional<Count>& value);
bool readsAs(const QString& typed, std::optional<Number>& value);
bool readsAs(const QString& typed, std::optional<Mass>& value);
bool readsAs(const QString& typed, std::optional<Temperature>& value);
bool readsAs(const QString& typed, std::optional<Length>& value);
/// In per cent: "10" and "10 %" are a tenth.
bool readsAs(const QString& typed, std::optional<Share>& value);
/// "8.50", "8,5": to the hundredth, not below nothing.
bool readsAs(const QString& typed, std::optional<Money>& value);

/// "6", "~6" by eye, "5-7" by eye.
bool readsAs(const QString& typed, std::optional<Known<Count>>& value);
/// As typedReading has it: "4.2", "~4", "?".
bool readsAs(const QString& typed, std::optional<Known<Mass>>& value);
/// A day as one says it, seen from today; a day and month without a year is the next that comes
/// where `ahead`. "2028-12" is the last of its month.
bool readsAs(const QString& typed, Day today, bool ahead, std::optional<Day>& value);

/// What is typed, a bare number with the unit its example has: where the grey example says "5 m", 5
/// is five metres.
QString typedAsShown(const QLineEdit* field);

/// The same of a field; where it cannot be read that is told and the cursor goes there.
bool readField(Session& session, QLineEdit* field, std::optional<Count>& value);
bool readField(Session& session, QLineEdit* field, std::optional<Number>& value);
bool readField(Session& session, QLineEdit* field, std::optional<Mass>& value);
bool readField(Session& session, QLineEdit* field, std::optional<Temperature>& value);
bool readField(Session& session, QLineEdit* field, std::optional<Length>& value);
bool readField(Session& session, QLineEdit* field, std::optional<Money>& value);
/// In per cent: "10" and "10 %" are a tenth.
bool readField(Session& session, QLineEdit* field, std::optional<Share>& value);
bool readField(Session& session, QLineEdit* field, std::optional<Known<Count>>& value);
bool readField(Session& session, QLineEdit* field, std::optional<Known<Mass>>& value);
bool readDayField(Session& session, QLineEdit* field, bool ahead, std::optional<Day>& value);
/// One box by its mark or "#12".
bool readField(Session& session, QLineEdit* field, std::optional<Id<Box>>& value);

/// The words for nothing in particular first, where there are any; then kinds of frames: those
/// there are frames of, then the others.
void addFrameKinds(QComboBox* choice, const Read& file, const QString& none, bool others = true);
/// The same of boxes.
void addBoxKinds(QComboBox* choice, const Read& file, const QString& none);

/// What the row says; nothing for the words of nothing in particular.
template <class Record>
std::optional<Id<Record>> chosenId(const QComboBox* choice) {
    const qlonglong number = choice->currentData().toLongLong();
    return number > 0 ? std::optional(Id<Record>{number}) : std::nullopt;
}
template <class Record>
void choose(QComboBox* choice, const std::optional<Id<Record>>& id) {
    const int at = choice->findData(static_cast<qlonglong>(id ? id->number : 0));
    if (at >= 0) choice->setCurrentIndex(at);
}

/// The words of a choice, `none` first where it may be left open.
template <class Choice>
void addChoices(QComboBox* choice, const QString& none) {
    if (!none.isEmpty()) choice->addItem(none, -1);
    for (std::size_t n = 0; n < Choices<Choice>::words.size(); ++n)
        if constexpr (std::is_same_v<Choice, WaxShade>)
            choice->addItem(shadeText(static_cast<WaxShade>(n)), static_cast<int>(n));
        else
            choice->addItem(choiceText(Choices<Choice>::words[n]), static_cast<int>(n));
}
template <class Choice>
std::optional<Choice> chosen(const QComboBox* choice) {
    const int number = choice->currentData().toInt();
    return choice->currentIndex() >= 0 && number >= 0 ? std::optional(static_cast<Choice>(number))
                                                      : std::nullopt;
}

}  // namespace combwright
