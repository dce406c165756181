// What is said of a colony found dead and of suspected disease: questions, what it looks like, what
// to do. Plain words for somebody in gloves; the law and the inspector have the last one.
#pragma once

#include <QString>
#include <QStringList>
#include <string_view>

namespace combwright {

/// "looks starved" … by the trade's key; never a diagnosis.
QString looksLikeText(std::string_view key);
/// What may be done with its combs.
QString combUseText(std::string_view key);
/// One thing to do today.
QString doTodayText(std::string_view key);
/// Which sample to keep.
QString sampleText(std::string_view key);
bool hasDeadOutWord(std::string_view key);

/// The question as it stands on the card, by the field it fills: "cluster", "ropy" …
QString deadOutQuestion(std::string_view field);

/// "Call your bee inspector. Do not move anything."
QString quarantineCaution();
/// What it looks like is no diagnosis.
QString noDiagnosis();
/// Robbing, disease, and where it is forbidden.
QString setOutCaution();

}  // namespace combwright
