// Which wax is held back. Disease stays in wax: what came out of a held box, or off honey of a held
// hive, has the hold as long as it stands, also where the wax was gathered, melted or put together
// with other wax before anybody suspected anything. Reckoned each time and never copied.
#pragma once

#include <optional>
#include <set>
#include <string>
#include <vector>

#include "core/model/wax/batch.h"
#include "core/storage/queries/holds.h"
#include "core/storage/queries/vessel_holds.h"
#include "core/storage/rows.h"

namespace combwright {

/// A hold that wax has from where it came, and what the hold is on: "H1", "M4".
struct WaxHold {
    Hold hold;
    std::string name;
};

/// Holds of one day, asked for many batches. Only what keeps apart counts: suspected disease, its
/// contacts, a dead-out nobody explained.
class HeldWax {
  public:
    HeldWax(const Read& file, Day on);

    /// On the honey whose cappings these are, by the rule for honey in buckets.
    std::vector<WaxHold> of(Id<Extraction> run);
    std::vector<WaxHold> of(Id<Box> box);
    /// On anything the batch came from, also by way of another batch or of a block melted again;
    /// each hold once.
    std::vector<WaxHold> of(Id<WaxBatch> batch);

  private:
    void addBatch(Id<WaxBatch> batch, std::set<std::int64_t>& met, std::vector<WaxHold>& holds);
    std::vector<WaxHold> named(const std::vector<Hold>& holds) const;

    const Read& m_file;
    bool m_any;
    HeldHoney m_honey;
    std::optional<HeldThings> m_things;
    Day m_on;
};

}  // namespace combwright
