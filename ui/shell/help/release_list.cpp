#include "ui/shell/help/release_list.h"

#include <QCoreApplication>
#include <QFile>
#include <QLocale>
#include <QXmlStreamReader>

#include "core/words/words.h"

namespace combwright {
namespace {

QString releaseWord(const char* text) { return QCoreApplication::translate("releases", text); }

/// A list's language is its items', where they say none of their own.
void readSaid(QXmlStreamReader& xml, const QString& around, const QString& language,
              QStringList& plain, QStringList& spoken) {
    while (xml.readNextStartElement()) {
        const auto own = xml.attributes().value(QLatin1String("xml:lang"));
        const QString said = own.isEmpty() ? around : own.toString();
        const bool item = xml.name() == QLatin1String("li");
        if (!item && xml.name() != QLatin1String("p")) {
            readSaid(xml, said, language, plain, spoken);
            continue;
        }
        const QString text =
            xml.readElementText(QXmlStreamReader::IncludeChildElements).simplified();
        const QString line = item ? QStringLiteral("• ") + text : text;
        if (said.isEmpty()) plain << line;
        if (said == language) spoken << line;
    }
}

Release readRelease(QXmlStreamReader& xml, const QString& language) {
    Release release;
    release.version = xml.attributes().value(QLatin1String("version")).toString();
    release.on = QDate::fromString(
        xml.attributes().value(QLatin1String("date")).toString().left(10), Qt::ISODate);
    QStringList plain;
    QStringList spoken;
    while (xml.readNextStartElement()) {
        if (xml.name() == QLatin1String("description"))
            readSaid(xml, {}, language, plain, spoken);
        else
            xml.skipCurrentElement();
    }
    release.says = spoken.isEmpty() ? plain : spoken;
    return release;
}

}  // namespace

std::optional<std::vector<Release>> releasesIn(const QByteArray& bytes, const QString& language) {
    QXmlStreamReader xml(bytes);
    std::vector<Release> all;
    if (!xml.readNextStartElement()) return std::nullopt;
    while (xml.readNextStartElement()) {
        if (xml.name() != QLatin1String("releases")) {
            xml.skipCurrentElement();
            continue;
        }
        while (xml.readNextStartElement()) {
            if (xml.name() == QLatin1String("release"))
                all.push_back(readRelease(xml, language));
            else
                xml.skipCurrentElement();
        }
    }
    if (xml.hasError()) return std::nullopt;
    return all;
}

QString releasesText() {
    QFile file(QStringLiteral(":/combwright/org.combwright.Combwright.metainfo.xml"));
    const bool there = file.open(QIODevice::ReadOnly);
    const QString language = QLocale().name().section(QLatin1Char('_'), 0, 0);
    const auto releases = there ? releasesIn(file.readAll(), language) : std::nullopt;
    if (!releases || releases->empty())
        return QStringLiteral("<p>%1</p>")
            .arg(releaseWord("The list of releases cannot be read.").toHtmlEscaped());
    QString text;
    for (const Release& release : *releases) {
        const auto day = parseDay(release.on.toString(Qt::ISODate).toStdString());
        const QString head =
            day ? releaseWord("%1 of %2").arg(release.version, dayText(*day)) : release.version;
        text += QStringLiteral("<p><b>%1</b></p>").arg(head.toHtmlEscaped());
        for (const QString& each : release.says)
            text += QStringLiteral("<p>%1</p>").arg(each.toHtmlEscaped());
    }
    return text;
}

}  // namespace combwright
