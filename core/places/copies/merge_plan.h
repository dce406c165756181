// Two copies of one season put together, field by field: what only one of them changed is taken,
// what both changed alike is left, and where they differ the person is asked. Records new in the
// other copy get numbers of their own here. The plan is made of what both are now and what they
// had in common last; nothing is written until it is carried out.
#pragma once

#include <QString>
#include <QStringList>
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "core/model/records.h"
#include "core/storage/as_it_stood.h"
#include "core/storage/queries/lineage.h"
#include "core/storage/season.h"

namespace combwright {

enum class MergeAsked {
    BothChanged,     ///< a value both changed, each to another
    ChangedAndGone,  ///< one changed a record the other struck
    SameTwice        ///< both wrote down what looks like the same
};
/// Ours and Theirs for the first two; One (it is the same) and Two (both stay) for the third.
enum class MergeChoice { Ours, Theirs, One, Two };

/// "both_changed" …, "ours" …: as in JSON.
std::string_view key(MergeAsked asked);
std::string_view key(MergeChoice choice);
std::optional<MergeChoice> mergeChoiceNamed(std::string_view word);
/// What may be chosen for such a question.
std::vector<MergeChoice> choicesFor(MergeAsked asked);

/// What was chosen, by the key of the question.
using MergeAnswers = std::map<std::string, MergeChoice, std::less<>>;

struct MergeQuestion {
    std::string key;  ///< the same each time the same two copies are put together
    MergeAsked asked = MergeAsked::BothChanged;
    QString about;  ///< "hive ML3: note"
    QString ours;
    QString theirs;
    QString was;  ///< what both had before; empty where they had nothing
    std::optional<MergeChoice> chosen;
};

/// One row to be written. References to what comes in with the same plan are negative: their number
/// in the other copy.
struct MergeEdit {
    ChangeKind kind = ChangeKind::Changed;
    const RecordType* type = nullptr;
    std::int64_t id = 0;  ///< here; of a row to be added, in the other copy
    Row row;
    Row present = {};  ///< as it is here, of one changed or removed
};

/// A record of the other copy and the one here that is the same.
struct SameRecord {
    const RecordType* type = nullptr;
    std::int64_t theirs = 0;
    std::int64_t ours = 0;
};

struct MergePlan {
    std::vector<MergeEdit> edits;  ///< in the order they are done
    std::vector<SameRecord> same;
    std::vector<MergeQuestion> questions;
    QStringList notes;      ///< what was decided without being asked, and why
    std::string from;       ///< the other copy's name
    std::int64_t step = 0;  ///< its newest
    std::string digest;     ///< of that step
    std::size_t open() const;
    std::size_t count(ChangeKind kind) const;
};

/// The other copy and what both had in common, as private copies: neither is touched, whatever
/// becomes of the plan.
class CopiesToMerge {
  public:
    /// Refused with NotOfThis where the other is no copy of this season. Throws StorageError.
    static Result<CopiesToMerge> of(const Read& ours, const std::string& otherPath,
                                    const Clock& clock);

    /// What is to be done with these answers. A question without one is taken as ours, or as the
    /// same, so that what depends on it can be shown.
    MergePlan plan(const Read& ours, const MergeAnswers& answers) const;

    const Season& other() const { return *m_theirs; }
    /// The newest step both have.
    std::int64_t common() const { return m_common; }

  private:
    CopiesToMerge() = default;
    std::string m_name;
    CopyAside m_theirsAside;
    CopyAside m_baseAside;
    std::unique_ptr<Season> m_theirs;
    std::unique_ptr<Season> m_base;
    std::int64_t m_common = 0;
    std::int64_t m_since = 0;      ///< their steps behind this one are new to us
    bool m_baseHasOurIds = false;  ///< they took ours in before: what they had then is ours
    std::map<std::pair<std::string, std::int64_t>, std::int64_t> m_known;  ///< theirs, ours
};

}  // namespace combwright
