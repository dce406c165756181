#include "ui/shell/preferences.h"

#include <QSettings>
#include <algorithm>

namespace combwright {
namespace {

constexpr QLatin1String unitsKey("units");
constexpr QLatin1String textKey("text_factor");
constexpr QLatin1String languageKey("language");

}  // namespace

Preferences readPreferences() {
    const QSettings settings;
    Preferences preferences;
    preferences.units = unitsNamed(settings.value(unitsKey).toString()).value_or(preferences.units);
    bool isNumber = false;
    const double factor = settings.value(textKey).toDouble(&isNumber);
    if (isNumber) preferences.textFactor = std::clamp(factor, 1.0, 2.0);
    preferences.language = languageNamed(settings.value(languageKey).toString());
    return preferences;
}

void keepPreferences(const Preferences& preferences) {
    QSettings settings;
    settings.setValue(unitsKey, unitsName(preferences.units));
    settings.setValue(textKey, preferences.textFactor);
    if (preferences.language)
        settings.setValue(languageKey, languageName(*preferences.language));
    else
        settings.remove(languageKey);
}

}  // namespace combwright
