#include "core/words/kind_words.h"

#include <QCoreApplication>
#include <string>

#include "core/words/words.h"

namespace combwright {

QString frameKindText(const FrameKind& kind) {
    QString name = fromUtf8(kind.name.text());
    if (const auto bracket = name.indexOf(QLatin1String(" (")); bracket > 0) name.truncate(bracket);
    const QString family = fromUtf8(kind.family).section(QLatin1String(" ("), 0, 0);
    if (!family.isEmpty() && name.startsWith(family + QLatin1Char(' '), Qt::CaseInsensitive))
        name = name.mid(family.size() + 1);
    if (name.endsWith(QLatin1String(" frame"))) name += QLatin1Char('s');
    return name;
}

QString framesText(std::int64_t many, const FrameKind& kind) {
    QString name = frameKindText(kind);
    if (many == 1 && name.endsWith(QLatin1String(" frames"))) name.chop(1);
    return QStringLiteral("%1 %2").arg(many).arg(name);
}

QString faultText(const Fault& fault) {
    return QCoreApplication::translate("faults", std::string(fault.word).c_str());
}

}  // namespace combwright
