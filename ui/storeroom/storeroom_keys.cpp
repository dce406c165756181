// What a key pressed on the board means to the storeroom: a letter what is seen of a frame or the
// beginning of a mark, a digit what becomes of it or a count.
#include <QKeyEvent>
#include <algorithm>

#include "core/actions/boxes/frame_checks.h"
#include "core/actions/storeroom/frame_work.h"
#include "core/actions/storeroom/reviews.h"
#include "core/words/words.h"
#include "ui/storeroom/storeroom_place.h"

namespace combwright {
namespace {

/// How long a key that judges many boxes may be pressed once more.
constexpr int askAgainWithinMs = 6000;

std::optional<Verdict> verdictOfDigit(int digit) {
    if (digit < 1 || digit > static_cast<int>(Choices<Verdict>::words.size())) return std::nullopt;
    return static_cast<Verdict>(digit - 1);
}

}  // namespace

void StoreroomPlace::seeAtFrame(char letter) {
    const BoardFrame* shown = m_board->currentFrame();
    if (!shown || !m_box) return;
    const auto frame =
        std::find_if(m_box->frames.begin(), m_box->frames.end(),
                     [&](const BenchFrame& each) { return each.frame.id == shown->id; });
    if (frame == m_box->frames.end()) return;
    // Pressed again the letter goes, as on a slate.
    std::string letters = frame->frame.faults;
    if (const auto at = letters.find(letter); at != std::string::npos)
        letters.erase(at, 1);
    else
        letters += letter;
    CheckFrames check;
    check.on = session().clock().today();
    check.box = m_box->box.id;
    check.position = Count(frame->slot);
    check.occasion = Occasion::WinterReview;
    check.faults = letters.empty() ? "none" : *tidyFaults(letters);
    const Count slot(frame->slot);
    if (session().run(check)) followFrame(slot);
}

/// A frame one has pointed at stands before those only counted: the cursor goes there with it.
void StoreroomPlace::followFrame(Count slot) {
    const BoardRow* row = m_board->currentRow();
    if (!row || !row->box) return;
    for (std::size_t i = 0; i < row->frames.size(); ++i)
        if (row->frames[i].position == slot.value()) {
            m_board->goToBox(*row->box, static_cast<int>(i));
            break;
        }
    pointAtFrame(true);
    fillBench();
}

void StoreroomPlace::judgeFrame(Verdict verdict) {
    const BoardFrame* shown = m_board->currentFrame();
    if (!shown || !m_box) return;
    for (const BenchFrame& each : m_box->frames)
        if (each.frame.id == shown->id) {
            CheckFrames check;
            check.on = session().clock().today();
            check.box = m_box->box.id;
            check.position = Count(each.slot);
            check.occasion = Occasion::WinterReview;
            check.faults = each.frame.faults;
            check.verdict = verdict;
            const Count slot(each.slot);
            if (session().run(check)) followFrame(slot);
            return;
        }
}

void StoreroomPlace::judgeChosen(Verdict verdict) {
    JudgeFrames judge;
    judge.on = session().clock().today();
    judge.boxes = chosenMarks().toStdString();
    judge.frameKind = m_filter.kind;
    if (m_filter.state && m_filter.state->kind == FrameState::Kind::Letter)
        judge.seen = std::string(1, m_filter.state->letter);
    judge.from = m_filter.verdict;
    judge.verdict = verdict;
    // Many at once, by one key: it is said first what that key would do, and done when it is
    // pressed again.
    const bool again = m_asked == std::pair(verdict, judge.boxes) && m_askedAt.isValid() &&
                       m_askedAt.elapsed() < askAgainWithinMs;
    m_asked = {verdict, judge.boxes};
    m_askedAt.start();
    if (!again) {
        session().tell(tr("%1 for %2 frames of %3 boxes: press %4 once more. Esc lets them go.")
                           .arg(choiceText(word(verdict)))
                           .arg(m_board->chosenFrames().size())
                           .arg(m_board->chosenBoxes().size())
                           .arg(static_cast<int>(verdict) + 1));
        return;
    }
    m_askedAt.invalidate();
    if (session().run(judge))
        session().tell(tr("%1 boxes: %2. One step; Ctrl+Z takes it back.")
                           .arg(m_board->chosenBoxes().size())
                           .arg(choiceText(word(verdict))));
}

/// Whether letters and digits go to the frame under the cursor; shown on the board and in the foot.
void StoreroomPlace::pointAtFrame(bool at) {
    if (m_atFrame == at) return;
    m_atFrame = at;
    m_board->setAtFrame(at);
    Q_EMIT headChanged();
}

bool StoreroomPlace::boardKey(int key, const QString& text) {
    switch (key) {
        case Qt::Key_F2:
            beginCorrection();
            return true;
        case Qt::Key_Left:
        case Qt::Key_Right:
            pointAtFrame(true);
            return false;
        case Qt::Key_Up:
        case Qt::Key_Down:
        case Qt::Key_PageUp:
        case Qt::Key_PageDown:
        case Qt::Key_Home:
        case Qt::Key_End:
            pointAtFrame(false);
            return false;
        case Qt::Key_Escape:
            if (!m_atFrame && m_board->selectedCount() == 0) return false;
            pointAtFrame(false);
            m_board->clearSelection();
            fillBench();
            return true;
        default:
            break;
    }
    if (text.size() != 1 || !text.front().isLetterOrNumber()) return false;
    const QChar typed = text.front().toUpper();
    if (!typed.isDigit()) return boardLetter(typed);
    const auto verdict = verdictOfDigit(typed.digitValue());
    if (m_atFrame) {
        if (verdict) judgeFrame(*verdict);
    } else if (m_board->selectedCount() > 1) {
        if (verdict) judgeChosen(*verdict);
    } else if (!m_board->isTypingMark() || !m_board->typeMark(text)) {
        // No mark goes on like that: the box one has come to is counted.
        beginLine(text);
    }
    return true;
}

/// At a frame what is seen of it. At a box the beginning of a mark; where no mark begins so, what
/// is seen of one of its frames, said in its counts: "W" and "6" are "1 W6" there.
bool StoreroomPlace::boardLetter(QChar letter) {
    const std::string seen(1, letter.toLatin1());
    const bool isSeen = tidyFaults(seen).has_value();
    if (m_atFrame) {
        if (isSeen)
            seeAtFrame(seen.front());
        else
            session().tell(
                tr("%1 is no letter for what is seen. The letters stand below the bench.")
                    .arg(letter),
                true);
        return true;
    }
    if (m_board->typeMark(letter)) return true;
    if (m_board->selectedCount() > 1)
        session().tell(tr("No mark begins with %1. What is seen is said of one frame: Esc lets the "
                          "chosen boxes go.")
                           .arg(letter),
                       true);
    else if (m_box)
        beginLine(isSeen ? tr("1 %1").arg(letter) : QString(letter).toLower());
    return true;
}

/// From wherever one went beside the board: back to it.
void StoreroomPlace::keyPressEvent(QKeyEvent* event) {
    if (event->key() != Qt::Key_Escape || !m_board->isVisible() || m_board->hasFocus())
        return Place::keyPressEvent(event);
    m_board->setFocus(Qt::OtherFocusReason);
}

bool StoreroomPlace::eventFilter(QObject* watched, QEvent* event) {
    if (watched == m_board && event->type() == QEvent::KeyPress) {
        auto* key = static_cast<QKeyEvent*>(event);
        const auto plain = key->modifiers() & ~(Qt::ShiftModifier | Qt::KeypadModifier);
        if (plain == Qt::NoModifier && boardKey(key->key(), key->text())) return true;
    }
    return Place::eventFilter(watched, event);
}

}  // namespace combwright
