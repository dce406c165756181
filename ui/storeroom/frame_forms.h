// The short forms for what is done with frames and boxes, many at once: work done and ticked,
// verdicts, frames that come, frames that move, boxes mended. Each is one action, so one undo takes
// all of it back. What is marked on the board stands in the form already, as one would type it.
#pragma once

#include "core/actions/storeroom/frame_work.h"
#include "ui/shell/session.h"

class QWidget;

namespace combwright {

/// Each says whether it was done. `boxes` as typed: "M01-M08, M12"; empty for all.
bool askToWorkFrames(QWidget* parent, Session& session, FrameWork work, const QString& boxes,
                     Day on);
bool askToJudge(QWidget* parent, Session& session, Verdict verdict, const QString& boxes, Day on);
/// Into that box, or loose where it is empty.
bool askToAddFrames(QWidget* parent, Session& session, const QString& box, Day on);
/// Out of that box, or loose ones where it is empty.
bool askToMoveFrames(QWidget* parent, Session& session, const QString& from, Day on);
bool askToMendBoxes(QWidget* parent, Session& session, const QString& boxes, Day on);

/// "To repair: 5 medium (M01 2, M03 3)": what waits for that work, held frames left out; and what
/// it takes where that is known.
QString waitingText(const Read& file, FrameWork work, Day on);

}  // namespace combwright
