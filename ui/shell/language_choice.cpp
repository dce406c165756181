#include "ui/shell/language_choice.h"

#include <QComboBox>
#include <QCoreApplication>

#include "core/words/language.h"
#include "ui/shell/preferences.h"
#include "ui/shell/session.h"
#include "ui/shell/small_form.h"

namespace combwright {
namespace {

QString languageWord(const char* text) { return QCoreApplication::translate("language", text); }

}  // namespace

void chooseLanguage(QWidget* parent, Session& session) {
    SmallForm form(parent, session, languageWord("Language"));
    QComboBox* spoken = form.choice(languageWord("The program speaks"), "language");
    spoken->addItem(
        languageWord("as the desktop does (%1)").arg(languageItself(languageOfTheDesktop())),
        QString());
    for (const Language each : {Language::English, Language::German})
        spoken->addItem(languageItself(each), languageName(each));
    const Preferences before = readPreferences();
    if (before.language) spoken->setCurrentIndex(spoken->findData(languageName(*before.language)));
    form.say(
        languageWord("It changes with the next start of the program. Files, lists and what "
                     "other programs read stay as they are. What is typed is understood in "
                     "English too."));
    form.onAccept([&session, spoken] {
        Preferences preferences = readPreferences();
        preferences.language = languageNamed(spoken->currentData().toString());
        keepPreferences(preferences);
        session.tell(languageWord("From the next start on the program speaks: %1.")
                         .arg(spoken->currentText()));
        return true;
    });
    form.exec();
}

}  // namespace combwright
