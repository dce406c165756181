#include "core/places/pages/honey_room/waiting_sign_page.h"

#include <QCoreApplication>
#include <QStringList>
#include <algorithm>
#include <set>

#include "core/places/pages/honey_room/room_paper.h"
#include "core/words/figures.h"
#include "core/words/words.h"

namespace combwright {
namespace {

/// Boxes drawn on each other before another stack is begun.
constexpr std::size_t stackedHigh = 8;
constexpr std::size_t stacksDrawn = 4;

QString signWord(const char* text) { return QCoreApplication::translate("waiting_sign", text); }

/// Boxes of one yard.
struct YardStack {
    std::optional<Id<Yard>> yard;
    std::vector<PeggedBox> boxes;
    bool toCome = false;  ///< some still stand on their hives
    std::optional<Day> since;
    std::optional<Day> extractBy;
    ExtractLimit limit;  ///< of the box that is due first
};

void addTo(YardStack& stack, PeggedBox box) {
    const RoomBox& row = box.box;
    const auto off = row.off ? row.off : row.plannedFor;
    auto due = row.extractBy;
    // A box that is still to come has as long from the day it will come.
    if (!due && row.plannedFor && row.limit.days) due = *row.plannedFor + days(*row.limit.days);
    if (stack.boxes.empty() || (due && (!stack.extractBy || *due < *stack.extractBy)))
        stack.limit = row.limit;
    if (due && (!stack.extractBy || *due < *stack.extractBy)) stack.extractBy = due;
    if (off && (!stack.since || *off < *stack.since)) stack.since = off;
    stack.toCome = stack.toCome || !row.off;
    stack.boxes.push_back(std::move(box));
}

std::vector<YardStack> stacksByYard(const Read& file, Day on) {
    std::vector<YardStack> stacks;
    for (PeggedBox& box : peggedBoxes(file, on)) {
        const auto yard = box.box.yard;
        auto found = std::find_if(stacks.begin(), stacks.end(),
                                  [&](const YardStack& each) { return each.yard == yard; });
        if (found == stacks.end()) {
            stacks.push_back({yard, {}, false, {}, {}, {}});
            found = std::prev(stacks.end());
        }
        addTo(*found, std::move(box));
    }
    return stacks;
}

/// "pegs 8 to 12 and 15", and how many boxes have none.
QString pegsText(const YardStack& stack) {
    std::set<std::int64_t> numbers;
    std::size_t without = 0;
    for (const PeggedBox& box : stack.boxes) {
        if (box.peg)
            numbers.insert(*box.peg);
        else
            ++without;
    }
    QStringList runs;
    for (auto at = numbers.begin(); at != numbers.end();) {
        auto last = at;
        while (std::next(last) != numbers.end() && *std::next(last) == *last + 1) ++last;
        runs << (at == last ? QString::number(*at) : signWord("%1 to %2").arg(*at).arg(*last));
        at = std::next(last);
    }
    if (runs.isEmpty()) return signWord("without pegs");
    QString text = (numbers.size() == 1 ? signWord("peg %1") : signWord("pegs %1"))
                       .arg(runs.join(QStringLiteral(", ")));
    if (without > 0) text += signWord(", %1 without a peg").arg(without);
    return text;
}

StacksDrawn drawnStack(const YardStack& stack) {
    const std::size_t many = stack.boxes.size();
    const std::size_t piles =
        std::clamp<std::size_t>((many + stackedHigh - 1) / stackedHigh, 1, stacksDrawn);
    const std::size_t deep = (many + piles - 1) / piles;
    StacksDrawn drawn;
    for (std::size_t from = 0; from < many; from += deep) {
        auto& pile = drawn.stacks.emplace_back();
        for (std::size_t i = from; i < std::min(many, from + deep); ++i) {
            const PeggedBox& box = stack.boxes[i];
            pile.push_back({box.painted ? box.mark : QString(),
                            box.peg ? QString::number(*box.peg) : QString(), box.box.heightMm});
        }
    }
    return drawn;
}

QString limitWords(const YardStack& stack) {
    if (!stack.limit.days) return signWord("no limit");
    const QString most = *stack.limit.days == 1
                             ? signWord("1 day at most")
                             : signWord("%1 days at most").arg(*stack.limit.days);
    return signWord("%1 (%2)").arg(most, limitText(stack.limit));
}

QString sinceWords(const YardStack& stack) {
    if (!stack.since) return signWord("nobody knows since when they are off");
    return (stack.toCome ? signWord("off the hives on %1") : signWord("off the hives since %1"))
        .arg(shortDayText(*stack.since));
}

void addRules(Card& card, const QString& others) {
    card.lines.push_back(cardText(signWord("Keep them covered and dry, warm but never so that wax "
                                           "goes soft, off the floor; doors shut against bees."),
                                  PaperSize::Title));
    card.lines.push_back(
        cardText(signWord("Over %1: two people.").arg(liftLimitText()), PaperSize::Big, true));
    card.lines.push_back(cardText(
        others.isEmpty()
            ? signWord("Do not open boxes of two lots together.")
            : signWord("Do not open them together with boxes of %1: another lot.").arg(others),
        PaperSize::Title));
}

Card signOf(const Read& file, const YardStack& stack, const QString& others) {
    Card card;
    card.drawing = drawnStack(stack);
    const auto piles = static_cast<double>(std::get<StacksDrawn>(card.drawing).stacks.size());
    card.drawingShare = std::min(0.55, 0.2 + 0.13 * piles);
    card.name =
        cardText(stack.extractBy ? signWord("Extract by\n%1").arg(shortDayText(*stack.extractBy))
                                 : signWord("No limit of days"),
                 PaperSize::Wall, true);
    const QString yard = yardName(file, stack.yard);
    const auto many = stack.boxes.size();
    card.lines.push_back(
        cardText(signWord("%1: %2, %3; %4; %5.")
                     .arg(yard.isEmpty() ? signWord("Yard not known") : yard,
                          many == 1 ? signWord("1 box") : signWord("%1 boxes").arg(many),
                          pegsText(stack), sinceWords(stack), limitWords(stack)),
                 PaperSize::Title));
    addRules(card, others);
    return card;
}

/// To be filled in by hand.
Card blankSign() {
    Card card;
    card.name = cardText(signWord("Extract by"), PaperSize::Poster, true);
    addRules(card, {});
    card.rows.push_back({blank(signWord("by")), blank(signWord("yard")), blank(signWord("boxes"))});
    card.rows.push_back({blank(signWord("pegs")), blank(signWord("off the hives since"), {}, 2)});
    return card;
}

}  // namespace

Page waitingSignPage(const Read& file, Day on) {
    Page page =
        roomPaper(file, signWord("Boxes that wait"), signWord("printed %1").arg(dayText(on)));
    CardsBlock block;
    block.title = signWord("Pin it over the boxes");
    block.about = signWord("oldest on top; what is nearest its day is extracted first");
    block.rowMm = 100;
    const std::vector<YardStack> stacks = stacksByYard(file, on);
    for (const YardStack& stack : stacks) {
        QStringList others;
        for (const YardStack& each : stacks)
            if (&each != &stack)
                if (const QString name = yardName(file, each.yard); !name.isEmpty()) others << name;
        block.cards.push_back(signOf(file, stack, others.join(signWord(" or "))));
    }
    if (block.cards.empty()) block.cards.push_back(blankSign());
    page.blocks.emplace_back(std::move(block));
    return page;
}

}  // namespace combwright
