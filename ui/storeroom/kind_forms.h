// The short forms for what is measured with a rule, home-made boxes and frames, and for comb or
// cappings set out in the open.
#pragma once

#include "ui/shell/session.h"

class QWidget;

namespace combwright {

/// Each says whether it was done.
bool askToMeasureBox(QWidget* parent, Session& session, Day on);
bool askToMeasureFrame(QWidget* parent, Session& session, Day on);
/// With the caution. `boxes` as typed: "M01, M02".
bool askToSetOut(QWidget* parent, Session& session, const QString& boxes, Day on);

}  // namespace combwright
