// The work behind a merge plan: row by row, first what the other copy made anew, then what it
// changed; last the numbers that follow from how many stand there.
#pragma once

#include <map>
#include <set>
#include <string>
#include <utility>
#include <vector>

#include "core/places/copies/merge_plan.h"

namespace combwright {

using RecordAt = std::pair<std::string, std::int64_t>;

/// What the planner looks at.
struct MergeSides {
    const Read& ours;
    const Read& theirs;
    const Read& base;
    bool baseHasOurIds = false;
    const std::map<RecordAt, std::int64_t>& known;  ///< theirs, ours
    RowSet touched;                                 ///< by their new steps
    RowSet madeThere;                               ///< since the two parted, by their numbers
    RowSet madeHere;                                ///< likewise, by ours
};

class MergePlanner {
  public:
    MergePlanner(const MergeSides& sides, const MergeAnswers& answers)
        : m_sides(sides), m_answers(answers) {}
    MergePlan plan();

  private:
    struct NewRow {
        std::int64_t theirs = 0;
        Row row;
    };
    bool isNew(std::string_view table, std::int64_t theirs) const;
    std::int64_t here(std::string_view table, std::int64_t theirs) const;
    std::int64_t there(std::string_view table, std::int64_t ours) const;
    Row translated(const RecordType& type, const Row& row) const;
    std::optional<Row> baseRow(const RecordType& type, std::int64_t theirs,
                               std::int64_t ours) const;

    void planMade(const RecordType& type, const std::vector<NewRow>& rows);
    /// Where both moved a thing to another place, the moves of one of them hold; those rows are
    /// taken off the list.
    void planMoves(const RecordType& type, std::vector<NewRow>& rows);
    std::optional<std::int64_t> twin(const RecordType& type, const NewRow& row,
                                     const std::vector<NewRow>& rows,
                                     std::map<std::int64_t, Row>& candidates) const;
    bool isOneOfMany(const RecordType& type, const NewRow& row) const;
    bool belongsToTwin(const RecordType& type, const Row& row) const;
    void planOld(const RecordType& type, std::int64_t theirs);
    /// Puts one row together of two; `base` is what both had, or nothing.
    Row joined(const RecordType& type, std::int64_t id, const std::optional<Row>& base,
               const Row& ours, const Row& theirs);
    std::optional<MergeChoice> ask(MergeQuestion question);
    QString groupText(const RecordType& type, const Row& row, const std::vector<std::size_t>& group,
                      const Read& file) const;

    MergeEdit* editOf(std::string_view table, std::int64_t ours);
    void change(const RecordType& type, std::int64_t id, const Row& present, Row row);
    void bringBackWhatIsNeeded();
    void keepWhatIsStoodOn();
    bool stoodOn(const MergeEdit& removed);
    std::string content(const RecordType& type, const Row& row) const;
    void countAlong(std::string_view table, std::string_view group, std::string_view number,
                    std::int64_t from);
    void order();

    const MergeSides& m_sides;
    const MergeAnswers& m_answers;
    MergePlan m_plan;
    std::map<RecordAt, std::int64_t> m_twins;  ///< theirs, ours
    std::map<RecordAt, bool> m_movedByBoth;    ///< by ours; whether theirs holds
    std::map<std::string, std::set<std::int64_t>, std::less<>> m_twinsHere;
};

}  // namespace combwright
