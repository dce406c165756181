// The journal told to a person: each step a sentence, what it was about and which values it
// changed, by the day on which it was kept. What was taken back says so.
#pragma once

#include <QString>
#include <QStringList>
#include <optional>
#include <vector>

#include "core/storage/rows.h"
#include "core/storage/season.h"

namespace combwright {

struct HistoryStep {
    std::int64_t step = 0;
    std::optional<Day> day;  ///< it was kept on, where the keeper is
    QString time;            ///< "14:05", likewise
    StepKind kind = StepKind::Do;
    bool takenBack = false;  ///< a deed that does not stand
    QString sentence;        ///< "A hive added: hive ML3, yard Mill Lane, for Wed 9 Jun 2027."
    QString why;             ///< as it was said; may be empty
    QStringList changes;     ///< "bucket B4, net: 12 kg, now 12.5 kg"
};

/// Newest first; at most `most` of them, all when 0.
std::vector<HistoryStep> historyInWords(const Read& file, std::size_t most = 0);

}  // namespace combwright
