// What is asked back about looks at the bench and what became of the frames: too many or too few of
// them, scrapings that cannot be, a look older than what the box went through since. Some of it
// only the step as a whole tells.
#pragma once

#include <cstdint>
#include <set>
#include <vector>

#include "core/model/frames/frame.h"
#include "core/model/storeroom/equipment.h"
#include "core/model/storeroom/review.h"
#include "core/places/questions/questions.h"

namespace combwright {

class BenchQuestions {
  public:
    /// `step` is all the rows of one; it is read here and not kept.
    BenchQuestions(const Read& file, const std::vector<RowChange>& step, Day today);

    /// The questions one row of the step raises.
    std::vector<Question> about(const RowChange& row);

  private:
    template <class Record>
    void aboutRow(const RowChange& row, void (BenchQuestions::*question)(const Record&));
    void aboutReview(const BoxReview& review, bool changed);
    void aboutScrapings(const BoxReview& review, const QString& name);
    void aboutDifference(const BoxReview& review, const QString& name);
    void aboutCheck(const FrameCheck& check);
    void aboutFrame(const Frame& frame);
    void aboutEquipment(const Equipment& equipment);
    void put(Asked asked, const QString& says);
    QString nameOfBox(Id<Box> box) const;

    const Read& m_file;
    Day m_today;
    bool m_counted = false;  ///< the step counted a box
    bool m_framesWorkedOn = false;
    int m_newFrames = 0;                  ///< frames nobody knew of before
    std::set<std::int64_t> m_boxesAsked;  ///< whose frames were looked at
    std::vector<Question> m_list;         ///< of the row being asked about
};

}  // namespace combwright
