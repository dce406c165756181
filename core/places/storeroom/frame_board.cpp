#include "core/places/storeroom/frame_board.h"

#include <algorithm>
#include <cctype>
#include <map>
#include <set>
#include <tuple>

#include "core/places/storeroom/board_rows.h"
#include "core/places/wax_bench/comb_wax.h"
#include "core/trade/storeroom/usual_verdict.h"

namespace combwright {
namespace {

bool listedBefore(const FrameState& a, const FrameState& b) {
    if (a.kind != b.kind) return a.kind < b.kind;
    if (a.letter != b.letter)
        return letterRank(std::string(1, a.letter)) < letterRank(std::string(1, b.letter));
    return a.verdict < b.verdict;
}

class BoardMaker {
  public:
    BoardMaker(const Read& file, FrameBoard& board, BoardRows rows);
    void make();

  private:
    void count(const BoardRow& row);
    void countHeld(const BoardRow& row, const BoardFrame& frame);
    void finishCounts();
    void finishChoices();
    bool shows(const BoardRow& row) const;
    bool shows(const BoardRow& row, const BoardFrame& frame) const;
    bool narrow(BoardRow& row) const;
    void shelve();
    void orderShelves();
    void put(BoardRow row);
    BoardShelf& shelfFor(const BoardRow& row, const BoardFrame* frame);
    std::vector<BoardRow> partsByFrame(const BoardRow& row) const;

    const Read& m_file;
    FrameBoard& m_board;
    const BoardFilter& m_filter;
    HeldThings m_heldThings;
    std::vector<BoardRow> m_rows;
    using StateCounts = std::map<FrameState, StateCount>;
    std::map<std::int64_t, StateCounts> m_counts;      ///< by kind
    std::map<std::int64_t, std::int64_t> m_notFound;   ///< by kind
    std::map<std::int64_t, std::int64_t> m_toMelt;     ///< by kind
    std::map<std::pair<int, char>, HeldCount> m_held;  ///< by reason, or by letter
    std::set<std::int64_t> m_years;
    std::set<Verdict> m_verdicts;
    std::set<BoardPlace> m_places;
    std::map<std::int64_t, CameOff> m_offs;
    using ShelfKey = std::tuple<int, std::string, std::int64_t>;
    std::map<ShelfKey, std::size_t> m_shelfAt;
};

BoardMaker::BoardMaker(const Read& file, FrameBoard& board, BoardRows rows)
    : m_file(file),
      m_board(board),
      m_filter(board.filter),
      m_heldThings(std::move(rows.held)),
      m_rows(std::move(rows.rows)) {
    m_board.boxKinds = std::move(rows.boxKinds);
    // Only kinds that are there are kept, or a board of one kind would offer forty.
    std::set<std::int64_t> seen;
    for (const BoardRow& row : m_rows)
        if (row.frameKind) seen.insert(row.frameKind->number);
    for (FrameKind& kind : rows.kinds)
        if (seen.contains(kind.id.number)) m_board.kinds.push_back(std::move(kind));
}

void BoardMaker::countHeld(const BoardRow& row, const BoardFrame& frame) {
    Frame held;
    held.id = frame.id;
    held.box = row.box;
    const auto holds = m_heldThings.of(held);
    const char letter = holds.empty() ? gravestLetter(frame.faults) : char(0);
    HeldCount& hold = m_held[{holds.empty() ? -1 : static_cast<int>(holds.front().why), letter}];
    hold.letter = letter;
    if (!holds.empty()) hold.why = holds.front().why;
    ++hold.frames;
    const auto since = holds.empty() ? frame.reviewed : std::optional(holds.front().since);
    if (since && (!hold.since || *since < *hold.since)) hold.since = since;
}

void BoardMaker::count(const BoardRow& row) {
    m_board.boxesAll += row.box ? 1 : 0;
    m_places.insert(row.place);
    if (row.cameOff) m_offs.emplace(row.cameOff->hive.number, *row.cameOff);
    const std::int64_t kind = row.frameKind ? row.frameKind->number : 0;
    m_notFound[kind] += row.missing;
    for (const BoardFrame& frame : row.frames) {
        if (!frame.found) continue;
        ++m_board.all;
        auto& counts = m_counts[kind];
        StateCount& line = counts[frame.state];
        line.state = frame.state;
        ++line.frames;
        for (const char letter : frame.faults) {
            if (letter == frame.state.letter) continue;
            const FrameState beside{FrameState::Kind::Letter, letter, Verdict::Keep};
            counts[beside].state = beside;
            ++counts[beside].also;
        }
        if (frame.drawnYear) m_years.insert(*frame.drawnYear);
        if (frame.verdict) m_verdicts.insert(*frame.verdict);
        if (goesIntoPot(frame)) ++m_toMelt[kind];
        if (frame.held) countHeld(row, frame);
    }
}

void BoardMaker::finishCounts() {
    for (const auto& [kind, counts] : m_counts) {
        KindCounts lines;
        lines.kind = {kind};
        if (const FrameKind* known = m_board.kind(lines.kind)) lines.name = known->name.text();
        for (const auto& [state, line] : counts) {
            lines.states.push_back(line);
            lines.together += line.frames;
        }
        // Letters in the order they are listed at the bench.
        std::stable_sort(lines.states.begin(), lines.states.end(),
                         [](const StateCount& a, const StateCount& b) {
                             return listedBefore(a.state, b.state);
                         });
        lines.missing = m_notFound[kind];
        m_board.counts.push_back(std::move(lines));
    }
    // The most numerous kind first: the supers, as a rule.
    std::stable_sort(
        m_board.counts.begin(), m_board.counts.end(),
        [](const KindCounts& a, const KindCounts& b) { return a.together > b.together; });
    for (const auto& [reason, held] : m_held) m_board.held.push_back(held);
    for (const auto& [kind, combs] : m_toMelt) {
        const FrameKind* known = m_board.kind(Id<FrameKind>{kind});
        MeltCount melt{{kind}, known ? known->name.text() : std::string(), combs, std::nullopt};
        if (known) melt.gramsEach = combWaxGrams(m_file, *known, m_board.on);
        m_board.melt.push_back(std::move(melt));
    }
}

void BoardMaker::finishChoices() {
    std::set<FrameState> states;
    for (const auto& [kind, counts] : m_counts)
        for (const auto& [state, line] : counts) states.insert(state);
    m_board.states.assign(states.begin(), states.end());
    std::stable_sort(m_board.states.begin(), m_board.states.end(), listedBefore);
    m_board.verdicts.assign(m_verdicts.begin(), m_verdicts.end());
    m_board.years.assign(m_years.begin(), m_years.end());
    m_board.places.assign(m_places.begin(), m_places.end());
    std::sort(m_board.places.begin(), m_board.places.end(),
              [](const BoardPlace& a, const BoardPlace& b) {
                  return a.kind != b.kind ? a.kind < b.kind : inNaturalOrder(a.name, b.name);
              });
    for (const auto& [id, off] : m_offs) m_board.hives.push_back(off);
    std::sort(m_board.hives.begin(), m_board.hives.end(), [](const CameOff& a, const CameOff& b) {
        return a.yard != b.yard ? inNaturalOrder(a.yard, b.yard) : inNaturalOrder(a.mark, b.mark);
    });
}

bool BoardMaker::shows(const BoardRow& row) const {
    if (m_filter.place && row.place != *m_filter.place) return false;
    if (m_filter.cameOff && (!row.cameOff || row.cameOff->hive != *m_filter.cameOff)) return false;
    return !m_filter.kind || row.frameKind == m_filter.kind;
}

bool BoardMaker::shows(const BoardRow& row, const BoardFrame& frame) const {
    if (m_filter.state) {
        const FrameState& wanted = *m_filter.state;
        if (wanted.kind == FrameState::Kind::Letter) {
            if (frame.faults.find(wanted.letter) == std::string::npos) return false;
        } else if (!frame.found || frame.state != wanted) {
            return false;
        }
    }
    if (m_filter.held && !frame.held) return false;
    if (m_filter.toMelt && !goesIntoPot(frame)) return false;
    if (m_filter.verdict && frame.verdict != m_filter.verdict) return false;
    if (m_filter.year && frame.drawnYear != m_filter.year) return false;
    if (m_filter.notFrozen && (!frame.found || frame.frozen || frame.comb == Comb::Bare ||
                               frame.comb == Comb::Foundation))
        return false;
    const bool changed = row.changed && *row.changed != BoardChange::FreezerStay;
    return !m_filter.notReviewed || (frame.found && (!frame.reviewed || changed));
}

BoardShelf& BoardMaker::shelfFor(const BoardRow& row, const BoardFrame* frame) {
    ShelfKey key;
    BoardShelf shelf;
    switch (m_filter.group) {
        case BoardGroup::Shelf:
            shelf.place = row.place;
            key = {static_cast<int>(row.place.kind), row.place.name, 0};
            break;
        case BoardGroup::Kind:
            shelf.kind = row.frameKind;
            key = {0, {}, row.frameKind ? row.frameKind->number : 0};
            break;
        case BoardGroup::Hive:
            shelf.hive = row.cameOff;
            key = {row.cameOff ? 0 : 1, {}, row.cameOff ? row.cameOff->hive.number : 0};
            break;
        case BoardGroup::Verdict:
            if (frame) shelf.verdict = frame->verdict;
            key = {frame && frame->verdict ? static_cast<int>(*frame->verdict) : 99, {}, 0};
            break;
        case BoardGroup::Year:
            if (frame) shelf.year = frame->drawnYear;
            key = {frame && frame->drawnYear ? 0 : 1, {}, frame ? frame->drawnYear.value_or(0) : 0};
            break;
    }
    const auto [at, isNew] = m_shelfAt.try_emplace(key, m_board.shelves.size());
    if (isNew) m_board.shelves.push_back(std::move(shelf));
    return m_board.shelves[at->second];
}

/// A box whose frames belong to several groups stands in each with those that belong there.
std::vector<BoardRow> BoardMaker::partsByFrame(const BoardRow& row) const {
    std::map<std::int64_t, BoardRow> parts;
    BoardRow bare = row;
    bare.frames.clear();
    const auto whole = static_cast<std::int64_t>(row.frames.size());
    for (const BoardFrame& frame : row.frames) {
        const std::int64_t key =
            m_filter.group == BoardGroup::Verdict
                ? (frame.verdict ? static_cast<std::int64_t>(*frame.verdict) : -1)
                : frame.drawnYear.value_or(-1);
        parts.try_emplace(key, bare).first->second.frames.push_back(frame);
    }
    std::vector<BoardRow> list;
    for (auto& [key, part] : parts) {
        part.leftOut += whole - static_cast<std::int64_t>(part.frames.size());
        list.push_back(std::move(part));
    }
    if (list.empty()) list.push_back(std::move(bare));
    return list;
}

void BoardMaker::put(BoardRow row) {
    BoardShelf& shelf = shelfFor(row, row.frames.empty() ? nullptr : &row.frames.front());
    for (const BoardFrame& frame : row.frames) shelf.frames += frame.found ? 1 : 0;
    raise(shelf.reviewed, row.reviewed);
    for (const RowState& state : row.states)
        if (state.state == BoxState::Scraped) raise(shelf.scraped, state.on);
    if (row.box && !row.reviewed) ++shelf.notReviewed;
    shelf.rows.push_back(std::move(row));
}

/// Takes out what does not match; false where nothing is left to show.
bool BoardMaker::narrow(BoardRow& row) const {
    const bool byFrame = m_filter.state || m_filter.verdict || m_filter.year ||
                         m_filter.notFrozen || m_filter.notReviewed || m_filter.held ||
                         m_filter.toMelt;
    if (!byFrame) return true;
    const auto before = static_cast<std::int64_t>(row.frames.size());
    std::erase_if(row.frames, [&](const BoardFrame& frame) { return !shows(row, frame); });
    row.leftOut = before - static_cast<std::int64_t>(row.frames.size());
    // A box nobody counted has no frame that could match, but it is not looked through either.
    const bool uncounted = before == 0 && m_filter.notReviewed && row.box && !row.reviewed &&
                           !m_filter.state && !m_filter.verdict && !m_filter.year &&
                           !m_filter.held && !m_filter.toMelt;
    return !row.frames.empty() || uncounted;
}

void BoardMaker::shelve() {
    const bool splits = m_filter.group == BoardGroup::Verdict || m_filter.group == BoardGroup::Year;
    for (BoardRow& row : m_rows) {
        if (!shows(row) || !narrow(row)) continue;
        for (const BoardFrame& frame : row.frames) m_board.shown += frame.found ? 1 : 0;
        m_board.boxesShown += row.box ? 1 : 0;
        if (!splits) {
            put(std::move(row));
            continue;
        }
        for (BoardRow& part : partsByFrame(row)) put(std::move(part));
    }
}

void BoardMaker::orderShelves() {
    std::vector<std::pair<ShelfKey, std::size_t>> order(m_shelfAt.begin(), m_shelfAt.end());
    std::stable_sort(order.begin(), order.end(), [&](const auto& a, const auto& b) {
        if (std::get<0>(a.first) != std::get<0>(b.first))
            return std::get<0>(a.first) < std::get<0>(b.first);
        if (std::get<1>(a.first) != std::get<1>(b.first))
            return inNaturalOrder(std::get<1>(a.first), std::get<1>(b.first));
        const BoardShelf &left = m_board.shelves[a.second], &right = m_board.shelves[b.second];
        if (left.hive && right.hive && left.hive != right.hive)
            return left.hive->yard != right.hive->yard
                       ? inNaturalOrder(left.hive->yard, right.hive->yard)
                       : inNaturalOrder(left.hive->mark, right.hive->mark);
        return std::get<2>(a.first) < std::get<2>(b.first);
    });
    std::vector<BoardShelf> shelves;
    shelves.reserve(order.size());
    for (const auto& [key, at] : order) shelves.push_back(std::move(m_board.shelves[at]));
    m_board.shelves = std::move(shelves);
}

void BoardMaker::make() {
    for (const BoardRow& row : m_rows) count(row);
    finishCounts();
    finishChoices();
    shelve();
    orderShelves();
}

}  // namespace

bool BoardFilter::narrows() const {
    return kind || state || verdict || year || place || cameOff || notFrozen || notReviewed ||
           held || toMelt;
}

const FrameKind* FrameBoard::kind(std::optional<Id<FrameKind>> id) const {
    for (const FrameKind& each : kinds)
        if (id == each.id) return &each;
    return nullptr;
}

const BoxKind* FrameBoard::boxKind(std::optional<Id<BoxKind>> id) const {
    for (const BoxKind& each : boxKinds)
        if (id == each.id) return &each;
    return nullptr;
}

bool goesIntoPot(const BoardFrame& frame) {
    const bool leaves = frame.verdict == Verdict::Melt || frame.verdict == Verdict::Refit;
    return leaves && frame.found && !frame.held && frame.comb && boardCombRank(frame.comb) <= 3;
}

char gravestLetter(const std::string& faults) {
    const auto usual = usualVerdict(faults);
    return usual ? usual->letter : char(0);
}

bool inNaturalOrder(std::string_view a, std::string_view b) {
    const auto digit = [](char c) { return std::isdigit(static_cast<unsigned char>(c)) != 0; };
    const auto lower = [](char c) { return std::tolower(static_cast<unsigned char>(c)); };
    const std::string_view wholeA = a, wholeB = b;
    while (!a.empty() && !b.empty()) {
        if (digit(a.front()) && digit(b.front())) {
            const auto number = [&](std::string_view& text) {
                while (text.size() > 1 && text.front() == '0' && digit(text[1]))
                    text.remove_prefix(1);
                std::size_t length = 0;
                while (length < text.size() && digit(text[length])) ++length;
                const std::string_view digits = text.substr(0, length);
                text.remove_prefix(length);
                return digits;
            };
            const std::string_view left = number(a), right = number(b);
            if (left.size() != right.size()) return left.size() < right.size();
            if (left != right) return left < right;
            continue;
        }
        if (lower(a.front()) != lower(b.front())) return lower(a.front()) < lower(b.front());
        a.remove_prefix(1);
        b.remove_prefix(1);
    }
    if (a.size() != b.size()) return a.size() < b.size();
    return wholeA < wholeB;
}

FrameBoard frameBoard(const Read& file, Day on, const BoardFilter& filter) {
    FrameBoard board;
    board.on = on;
    board.filter = filter;
    BoardMaker(file, board, boardRows(file, on, filter.onHives)).make();
    return board;
}

}  // namespace combwright
