// The books of many vessels, read at once: a question for each kind of record, however many vessels
// there are. A trace asks for dozens, the store for all of them.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "core/model/wax/batch.h"
#include "core/storage/queries/vessels.h"

namespace combwright {

/// Buckets with their runs, and lots.
class VesselHeads {
  public:
    VesselHeads(const Read& file, const std::vector<Vessel>& vessels);

    /// As nameOf.
    std::string name(const Vessel& vessel) const;
    const Bucket* bucket(const Vessel& vessel) const;
    const Extraction* run(const Vessel& vessel) const;
    const Lot* lot(const Vessel& vessel) const;

  private:
    std::map<std::int64_t, Bucket> m_buckets;
    std::map<std::int64_t, Extraction> m_runs;
    std::map<std::int64_t, Lot> m_lots;
};

/// Everything that came into vessels and left them.
class VesselBooks {
  public:
    VesselBooks(const Read& file, const std::vector<Vessel>& vessels);

    const VesselHeads& heads() const { return m_heads; }
    /// As vesselLedger, of one of the vessels asked for.
    VesselLedger ledger(const Vessel& vessel, Day until) const;

    /// From any of the vessels, in the order they were written down.
    const std::vector<Bottling>& fillings() const { return m_fillings; }
    const std::vector<GoingOut>& bulk() const { return m_bulk; }
    /// In one of these fillings.
    const std::vector<BottledJars>& jars(Id<Bottling> filling) const;
    const GoodsKind* kind(Id<GoodsKind> kind) const;
    /// As honeyInJars.
    std::optional<Mass> inJars(Id<Bottling> filling) const;

  private:
    std::map<std::int64_t, Day> m_dripped;  ///< by bucket: the first day cappings dripped into it
    VesselEntry filled(const Vessel& vessel, Day until) const;
    std::vector<VesselEntry> happened(const Vessel& vessel, Day until) const;

    VesselHeads m_heads;
    std::vector<Bottling> m_fillings;
    std::vector<GoingOut> m_bulk;
    std::map<std::int64_t, std::vector<BottledJars>> m_jars;
    std::map<std::int64_t, GoodsKind> m_kinds;
    std::map<std::int64_t, std::vector<LotPart>> m_poured;  ///< into a lot
    std::map<Vessel, std::vector<LotPart>> m_taken;         ///< out of a vessel, into lots
    std::map<Vessel, std::vector<HoneyStep>> m_steps;
    std::map<Vessel, std::vector<HoneyLeft>> m_left;
    std::map<Vessel, std::vector<std::size_t>> m_filledFrom;  ///< places in `m_fillings`
    std::map<Vessel, std::vector<std::size_t>> m_bulkFrom;    ///< and in `m_bulk`
};

}  // namespace combwright
