// Which language the program speaks: the desktop's, or one chosen. What is on the screen was said
// when it was laid out, so the choice holds from the next start on.
#pragma once

class QWidget;

namespace combwright {

class Session;

/// Asks for the language and keeps the answer in the person's preferences.
void chooseLanguage(QWidget* parent, Session& session);

}  // namespace combwright
