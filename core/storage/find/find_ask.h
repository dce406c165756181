// How the cache is asked: by marks, by whole words and by the beginnings of words, kind by kind and
// the newest first, without ever laying a million rows beside each other.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "core/storage/find/find_cache.h"
#include "core/storage/find/find_file.h"

namespace combwright {

class FindAsk {
  public:
    /// @param termsAreWhole the list of all words has all of them; false while one gathers
    FindAsk(const FindFile& file, bool termsAreWhole)
        : m_file(file), m_termsAreWhole(termsAreWhole) {}

    std::vector<FoundKind> byWords(const std::vector<std::string>& words, std::size_t most) const;
    std::vector<FoundKind> ofDay(Day day, std::size_t most) const;

  private:
    using IdsOfKinds = std::map<FindKind, std::vector<std::int64_t>>;
    IdsOfKinds byMatch(const std::string& match, int most) const;
    std::string beginnings(const std::vector<std::string>& words) const;
    std::vector<std::int64_t> byMark(const std::string& key, FindSpan span, int most) const;
    std::vector<std::int64_t> byBeginning(const std::string& key) const;
    std::optional<FoundRow> found(std::int64_t id, FoundRow::By by) const;

    const FindFile& m_file;
    bool m_termsAreWhole;
};

}  // namespace combwright
