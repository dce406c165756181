#include "core/places/storeroom/board_rows.h"

#include <algorithm>
#include <array>
#include <map>
#include <tuple>
#include <unordered_map>

#include "core/model/storeroom/equipment.h"
#include "core/model/storeroom/review.h"
#include "core/storage/queries/names.h"

namespace combwright {
namespace {

/// Loose frames in one row; a box holds about as many.
constexpr std::size_t looseInARow = 10;

template <class Record>
std::unordered_map<std::int64_t, Record> byId(const std::vector<Record>& records) {
    std::unordered_map<std::int64_t, Record> map;
    map.reserve(records.size());
    for (const Record& record : records) map.emplace(record.id.number, record);
    return map;
}

bool comesFirst(const BoardFrame& a, const BoardFrame& b) {
    if (a.found != b.found) return a.found;
    if (a.position.has_value() != b.position.has_value()) return a.position.has_value();
    if (a.position) return *a.position < *b.position;
    const auto key = [](const BoardFrame& frame) {
        return std::tuple(letterRank(frame.faults), boardCombRank(frame.comb),
                          frame.verdict.value_or(Verdict::Keep), frame.drawnYear.value_or(0),
                          frame.id.number);
    };
    return key(a) < key(b);
}

/// What the newest look and everything after it says of a box.
struct BoxPast {
    std::optional<BoxReview> review;
    std::array<std::optional<Day>, 6> changes{};  ///< the newest of each BoardChange
    std::optional<BoxMove> off;                   ///< the last move off a hive
    bool inFreezer = false;
    std::int64_t loaded = 0;
    std::optional<Day> loadedOn, stale;

    void change(BoardChange what, Day on) { raise(changes[static_cast<std::size_t>(what)], on); }
};

/// The storeroom is one room: what is carried about in it stays as it was looked through.
bool withinRoom(const BoxMove& move) {
    const auto inside = [](BoxPlace place) {
        return place == BoxPlace::Storeroom || place == BoxPlace::Freezer;
    };
    return move.fromPlace && inside(*move.fromPlace) && inside(move.toPlace);
}

std::optional<BoardPlace::Kind> placeKind(BoxPlace place) {
    using Kind = BoardPlace::Kind;
    switch (place) {
        case BoxPlace::Storeroom:
            return Kind::Stack;
        case BoxPlace::Freezer:
            return Kind::Freezer;
        case BoxPlace::Wet:
            return Kind::Wet;
        case BoxPlace::Waiting:
            return Kind::Waiting;
        case BoxPlace::Cleared:
            return Kind::Cleared;
        case BoxPlace::GivenBack:
            return Kind::GivenBack;
        case BoxPlace::Lent:
            return Kind::Lent;
        case BoxPlace::OnHive:
            return Kind::OnHives;
        case BoxPlace::Gone:
            return std::nullopt;
    }
    return std::nullopt;
}

class RowMaker {
  public:
    RowMaker(const Read& file, Day on) : m_file(file), m_on(on) {}
    BoardRows make(bool onHives);

  private:
    void readBoxes(bool onHives);
    void readPast();
    void readFrames();
    BoardFrame boardFrame(const Frame& frame, const BoardRow& row) const;
    void addBox(const Box& box);
    void addLoose();
    void changes(BoardRow& row, const BoxPast& past) const;
    void hangIn(BoardRow& row, const Box& box, const BoxPast& past) const;
    void states(BoardRow& row, const Box& box, const BoxPast& past) const;
    std::string nameOfBox(const Box& box) const;
    std::optional<CameOff> cameOff(const Box& box, const BoxPast& past) const;

    const Read& m_file;
    const Day m_on;
    BoardRows m_made;
    std::vector<Box> m_boxes;
    std::unordered_map<std::int64_t, BoxKind> m_boxKinds;
    std::unordered_map<std::int64_t, Hive> m_hives;
    std::unordered_map<std::int64_t, Yard> m_yards;
    std::unordered_map<std::int64_t, BoxPast> m_past;
    std::unordered_map<std::int64_t, std::vector<Frame>> m_inBox;    ///< by box
    std::unordered_map<std::int64_t, std::vector<Frame>> m_missing;  ///< by box
    std::vector<Frame> m_loose;
};

void RowMaker::readBoxes(bool onHives) {
    m_boxes = m_file.all<Box>();
    std::erase_if(m_boxes, [&](const Box& box) {
        return !inUse(box) || !placeKind(box.place) || (box.place == BoxPlace::OnHive && !onHives);
    });
    m_hives = byId(m_file.all<Hive>());
    m_yards = byId(m_file.all<Yard>());
    m_made.boxKinds = m_file.all<BoxKind>();
    m_boxKinds = byId(m_made.boxKinds);
    m_made.kinds = m_file.all<FrameKind>();
    m_made.held = heldThings(m_file, m_on);
}

void RowMaker::readPast() {
    const Day on = m_on;
    m_past.reserve(m_boxes.size());
    for (const BoxReview& review : m_file.all<BoxReview>()) {
        auto& newest = m_past[review.box.number].review;
        if (review.on <= on && (!newest || review.on >= newest->on)) newest = review;
    }
    for (const BoxMove& move : m_file.all<BoxMove>()) {
        if (move.on > on) continue;
        BoxPast& past = m_past[move.box.number];
        if (!withinRoom(move)) past.change(BoardChange::Move, move.on);
        if (move.fromPlace == BoxPlace::OnHive && move.toPlace != BoxPlace::OnHive &&
            move.fromHive && (!past.off || move.on >= past.off->on))
            past.off = move;
    }
    // What is written down at the bench itself is the look, not a change after it.
    for (const BoxCount& count : m_file.all<BoxCount>())
        if (count.on <= on && count.occasion != Occasion::WinterReview)
            m_past[count.box.number].change(BoardChange::Count, count.on);
    for (const BoxLook& look : m_file.all<BoxLook>())
        if (look.on <= on) m_past[look.box.number].change(BoardChange::Look, look.on);
    for (const FrameCheck& check : m_file.all<FrameCheck>())
        if (check.box && check.on <= on && check.occasion != Occasion::WinterReview)
            m_past[check.box->number].change(BoardChange::Check, check.on);
    const auto rounds = byId(m_file.all<FreezerRound>());
    for (const FreezerLoad& load : m_file.all<FreezerLoad>()) {
        const auto found = rounds.find(load.round.number);
        if (!load.box || found == rounds.end() || found->second.in > on) continue;
        const FreezerRound& round = found->second;
        BoxPast& past = m_past[load.box->number];
        past.change(BoardChange::FreezerStay, round.in);
        const bool open = !round.out || *round.out > on;
        if (open && past.loadedOn != round.in) past.loaded = 0;
        if (open) {
            past.inFreezer = true;
            past.loaded += load.frames.value();
        }
        if (!past.loadedOn || round.in >= *past.loadedOn) {
            past.loadedOn = round.in;
            past.stale = load.stale && *load.stale <= on ? load.stale : std::nullopt;
        }
    }
}

void RowMaker::readFrames() {
    for (Frame& frame : m_file.where<Frame>({isUnknown("retired")}))
        if (frame.box)
            m_inBox[frame.box->number].push_back(std::move(frame));
        else
            m_loose.push_back(std::move(frame));
    for (Frame& frame : m_file.where<Frame>({is("retired", Retired::Missing)}))
        if (frame.box) m_missing[frame.box->number].push_back(std::move(frame));
}

BoardFrame RowMaker::boardFrame(const Frame& frame, const BoardRow& row) const {
    BoardFrame shown;
    shown.id = frame.id;
    if (frame.position) shown.position = frame.position->value();
    shown.comb = frame.comb;
    shown.faults = frame.faults;
    shown.verdict = frame.verdict;
    if (frame.drawnYear) shown.drawnYear = frame.drawnYear->value();
    // On a hive the moths are the bees' business again; the cold of an earlier winter is over.
    const bool since = !row.cameOff || (row.cameOff->on && frame.frozen >= row.cameOff->on);
    if (frame.frozen && since) shown.frozen = frame.frozen;
    shown.reviewed = frame.reviewed;
    if (frame.filledA) shown.filledA = frame.filledA->value();
    if (frame.filledB) shown.filledB = frame.filledB->value();
    if (frame.capped) shown.capped = frame.capped->value();
    shown.mark = frame.mark;
    shown.wet = frame.wet.value_or(false);
    const bool byHold = m_made.held.holds(frame);
    shown.held = byHold || frame.verdict == Verdict::Hold;
    shown.use = useOf(frame, shown.held);
    if (byHold)
        shown.state = {FrameState::Kind::Held, 0, Verdict::Keep};
    else if (const char letter = gravestLetter(frame.faults))
        shown.state = {FrameState::Kind::Letter, letter, Verdict::Keep};
    else if (frame.verdict && *frame.verdict != Verdict::Keep)
        shown.state = {FrameState::Kind::ToDo, 0, *frame.verdict};
    else if (!frame.verdict && !shown.reviewed)
        shown.state = {FrameState::Kind::NotLookedThrough, 0, Verdict::Keep};
    return shown;
}

std::string RowMaker::nameOfBox(const Box& box) const {
    if (!box.mark.empty()) return box.mark;
    if (box.hive && box.level)
        if (const auto hive = m_hives.find(box.hive->number); hive != m_hives.end())
            return boxByPlace(hive->second.mark.text(), *box.level);
    return "#" + std::to_string(box.id.number);
}

std::optional<CameOff> RowMaker::cameOff(const Box& box, const BoxPast& past) const {
    const bool there = box.place == BoxPlace::OnHive;
    const auto id = there ? box.hive : past.off ? past.off->fromHive : std::nullopt;
    if (!id) return std::nullopt;
    const auto hive = m_hives.find(id->number);
    if (hive == m_hives.end()) return std::nullopt;
    CameOff off{*id, hive->second.mark.text(), {}, std::nullopt};
    if (const auto yard = m_yards.find(hive->second.yard.number); yard != m_yards.end())
        off.yard = yard->second.name.text();
    if (!there) off.on = past.off->on;
    return off;
}

void RowMaker::states(BoardRow& row, const Box& box, const BoxPast& past) const {
    const auto many = static_cast<std::int64_t>(row.frames.size()) - row.missing;
    const auto add = [&](BoxState state, std::optional<Day> on = {}, std::int64_t frames = 0) {
        row.states.push_back({state, on, frames, many, std::nullopt});
    };
    if (const auto held = m_made.held.boxes.find(box.id.number);
        held != m_made.held.boxes.end() && !held->second.empty()) {
        add(BoxState::Held, held->second.front().since);
        row.states.back().why = held->second.front().why;
    }
    if (box.place == BoxPlace::Lent) add(BoxState::Lent, box.since);
    const bool inFreezer = past.inFreezer || box.place == BoxPlace::Freezer;
    if (inFreezer)
        add(BoxState::InFreezer, past.inFreezer ? past.loadedOn : std::optional(box.since),
            past.inFreezer ? past.loaded : many);
    if (past.stale && !inFreezer) add(BoxState::Stale, past.stale);
    if (row.changed && *row.changed != BoardChange::FreezerStay)
        add(BoxState::ChangedSince, row.changedOn);
    if (!past.review) add(BoxState::NotLookedThrough);
    std::int64_t freeze = 0, scrape = 0, frozen = 0;
    std::optional<Day> frozenOn;
    for (const BoardFrame& frame : row.frames) {
        if (frame.verdict == Verdict::Freeze && !frame.frozen) ++freeze;
        if (frame.verdict == Verdict::Scrape) ++scrape;
        if (!frame.frozen) continue;
        ++frozen;
        raise(frozenOn, frame.frozen);
    }
    if (freeze > 0 && !inFreezer) add(BoxState::ToFreeze, std::nullopt, freeze);
    const bool scraped = past.review && past.review->scraped.value_or(false);
    const bool boxToScrape = box.condition == BoxCondition::ToScrape ||
                             (past.review && past.review->scraped == std::optional(false));
    if (scrape > 0 || (boxToScrape && !scraped)) add(BoxState::ToScrape, std::nullopt, scrape);
    if (frozen > 0) add(BoxState::Frozen, frozenOn, frozen);
    if (scraped && scrape == 0) add(BoxState::Scraped, past.review->on);
    if (past.review) add(BoxState::LookedThrough, past.review->on);
}

/// What happened last after the newest look; a stay in the cold only where nothing else did.
void RowMaker::changes(BoardRow& row, const BoxPast& past) const {
    if (!past.review) return;
    row.reviewed = past.review->on;
    const auto take = [&](std::size_t what) {
        const auto& on = past.changes[what];
        if (!on || *on <= past.review->on || (row.changedOn && *on <= *row.changedOn)) return;
        row.changed = static_cast<BoardChange>(what);
        row.changedOn = on;
    };
    constexpr auto stay = static_cast<std::size_t>(BoardChange::FreezerStay);
    for (std::size_t what = 0; what < stay; ++what) take(what);
    if (!row.changed) take(stay);
}

void RowMaker::hangIn(BoardRow& row, const Box& box, const BoxPast& past) const {
    if (const auto inside = m_inBox.find(box.id.number); inside != m_inBox.end()) {
        row.frames.reserve(inside->second.size());
        // A box is drawn with what hangs in it, not with what it was made for.
        row.frameKind = inside->second.front().kind;
        for (const Frame& frame : inside->second) row.frames.push_back(boardFrame(frame, row));
    }
    if (past.review) {
        const auto seen =
            std::count_if(row.frames.begin(), row.frames.end(), [&](const auto& frame) {
                return frame.reviewed && *frame.reviewed >= past.review->on;
            });
        const bool same = seen == static_cast<std::ptrdiff_t>(row.frames.size()) &&
                          seen == past.review->found.value();
        if (!same && (!row.changed || *row.changed == BoardChange::FreezerStay)) {
            row.changed = BoardChange::CameOrWent;
            row.changedOn.reset();
        }
    }
    if (!row.frames.empty() || past.review)
        row.found = static_cast<std::int64_t>(row.frames.size());
    if (const auto gone = m_missing.find(box.id.number); gone != m_missing.end())
        for (const Frame& frame : gone->second)
            if (!past.review || (frame.retiredOn && *frame.retiredOn >= past.review->on))
                ++row.missing;
    if (past.review && past.review->expected && !row.changed)
        row.missing =
            std::max(row.missing, past.review->expected->value() - past.review->found.value());
    for (std::int64_t i = 0; i < row.missing; ++i) {
        BoardFrame missing;
        missing.found = false;
        row.frames.push_back(missing);
    }
    if (row.found) row.expected = *row.found + row.missing;
}

void RowMaker::addBox(const Box& box) {
    static const BoxPast nothing;
    const auto known = m_past.find(box.id.number);
    const BoxPast& past = known == m_past.end() ? nothing : known->second;
    BoardRow row;
    row.box = box.id;
    row.name = nameOfBox(box);
    row.kind = box.kind;
    if (const auto kind = m_boxKinds.find(box.kind.number); kind != m_boxKinds.end())
        row.frameKind = kind->second.takes;
    row.place.kind = *placeKind(box.place);
    row.cameOff = cameOff(box, past);
    if (row.place.kind == BoardPlace::Kind::Stack) row.place.name = box.stack;
    if (row.place.kind == BoardPlace::Kind::OnHives && row.cameOff)
        row.place.name = row.cameOff->yard;
    changes(row, past);
    hangIn(row, box, past);
    std::sort(row.frames.begin(), row.frames.end(), comesFirst);
    states(row, box, past);
    m_made.rows.push_back(std::move(row));
}

void RowMaker::addLoose() {
    std::map<std::pair<std::string, std::int64_t>, std::vector<BoardFrame>> shelves;
    const BoardRow nowhere;
    for (const Frame& frame : m_loose)
        shelves[{frame.stack, frame.kind.number}].push_back(boardFrame(frame, nowhere));
    for (auto& [key, frames] : shelves) {
        std::sort(frames.begin(), frames.end(), comesFirst);
        for (std::size_t first = 0; first < frames.size(); first += looseInARow) {
            const std::size_t end = std::min(frames.size(), first + looseInARow);
            BoardRow row;
            row.frameKind = Id<FrameKind>{key.second};
            row.place = {BoardPlace::Kind::Loose, key.first};
            row.frames.assign(frames.begin() + static_cast<std::ptrdiff_t>(first),
                              frames.begin() + static_cast<std::ptrdiff_t>(end));
            row.expected = row.found = static_cast<std::int64_t>(row.frames.size());
            m_made.rows.push_back(std::move(row));
        }
    }
}

BoardRows RowMaker::make(bool onHives) {
    readBoxes(onHives);
    readPast();
    readFrames();
    m_made.rows.reserve(m_boxes.size());
    for (const Box& box : m_boxes) addBox(box);
    std::stable_sort(
        m_made.rows.begin(), m_made.rows.end(),
        [](const BoardRow& a, const BoardRow& b) { return inNaturalOrder(a.name, b.name); });
    addLoose();
    return std::move(m_made);
}

}  // namespace

int boardCombRank(const std::optional<Comb>& comb) {
    if (!comb) return 6;
    static constexpr std::array ranks{5, 4, 3, 1, 2};  // bare, foundation, part drawn, drawn, fat
    return ranks[static_cast<std::size_t>(*comb)];
}

int letterRank(const std::string& letters) {
    if (letters.empty()) return -1;
    int rank = 0;
    for (const Fault& fault : faults()) {
        if (letters.find(fault.letter) != std::string::npos) return rank;
        ++rank;
    }
    return rank;
}

void raise(std::optional<Day>& newest, const std::optional<Day>& day) {
    if (day && (!newest || *day > *newest)) newest = day;
}

BoardRows boardRows(const Read& file, Day on, bool onHives) {
    return RowMaker(file, on).make(onHives);
}

}  // namespace combwright
