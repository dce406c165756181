// Mites, medicines and treatments in words: screen, print and command line say them alike. A rate
// never goes without its interval, a line never without whose it is, and nothing advises a dose.
#pragma once

#include <QString>
#include <QStringList>

#include "core/places/health/mites.h"
#include "core/places/health/treatments.h"

namespace combwright {

/// "2.0 in 100 bees (between 0.7 and 4.3)".
QString miteRateText(const MiteRate& rate);
/// "2.0 (0.7 to 4.3)", for a column.
QString rateText(const MiteRate& rate);
/// "wash, 6 of 300: 2.0 in 100 bees (between 0.7 and 4.3)"; of a board a day, of drone brood in 100
/// cells, else what was graded.
QString miteSampleText(const MiteSample& sample);
/// "corrected for a sugar roll that finds 0.93 of them: 2.2 (between 0.8 and 4.6)"; empty where
/// there is none.
QString correctedText(const MiteSample& sample);
/// "act at 2 in 100 in the decrease (usual, temperate)"; with the source: "…; common practice, …".
QString miteLineText(const std::optional<MiteLineInForce>& line, bool withSource = false);
/// "under the line, but the colony may stand over it", "over the line".
QString miteStandingText(const HiveMites& mites);
/// "Reaches the line about 29 Jun, between 9 Jun and 3 Aug: a planning guess. Sample again."
/// Nothing where none can be given but why.
QString miteForecastText(const HiveMites& mites);
/// The same for a column: "reaches 2 about 29 Jun, 9 Jun to 3 Aug: a planning guess, sample again".
QString miteForecastShort(const HiveMites& mites);
/// The verdict of a board, "treat", and the word for none.
QString fallVerdictText(const MiteSample& sample);
/// "brood with gaps, not: draws a thread": the signs that were looked for; empty where none was.
QString signsText(const FieldSigns& signs);
QString phaseText(SeasonPhase phase);

/// "Your label is the law; local codes decide."
QString labelIsLaw();
/// "Report to your apiary inspector. Do not move anything."
QString reportingDuty();
/// "12.5 strips"; a number in the unit of the pack.
QString amountText(double amount, const Medicine& medicine);
/// "4 of 50 strips left"; what is not known is said.
QString leftText(const MedicineStock& stock);
/// "supers off", "supers may stay", "not written down".
QString labelSupersText(const std::optional<LabelSupers>& supers);
/// "42 to 56 days", "14 days", empty where nobody knows.
QString spanText(const std::optional<Count>& from, const std::optional<Count>& to);
/// "10.0 °C to 29.4 °C"; empty where nobody knows.
QString warmthText(const Medicine& medicine);
/// "suits", "too cold", "too warm", of a day's warmth.
QString windowText(InWindow window);
/// The same by the published table: "too warm for it by the published table; read your label".
QString publishedWindowText(InWindow window);
/// What is published of its active ingredient; empty where nothing is. A prompt, never the label.
QString publishedText(const MedicineStock& stock);
/// "out between 21 Sep and 5 Oct", "out: not written down, see your label".
QString comesOutText(const TreatmentLine& line, Day on);
/// "supers from 24 Apr", "supers off until it is out", "how long to wait is not written down".
QString supersBackText(const TreatmentLine& line);
/// "M01 went on H1 Tue 13 Apr 2027, before Sat 24 Apr 2027: take it off or hold it back."
QString tooEarlyText(const SuperTooEarly& early);
/// A pest other than mites: "small hive beetle, many, Sat 10 Jul 2027".
QString otherPestText(const Finding& finding);
/// "M07: amitraz strips in H1 since 10 Aug; now in the storeroom".
QString treatedBoxText(const TreatedBox& box);

}  // namespace combwright
