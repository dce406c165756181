// What is new, release by release: read from the list the desktop's software centre reads, so that
// it is written once.
#pragma once

#include <QByteArray>
#include <QDate>
#include <QString>
#include <QStringList>
#include <optional>
#include <vector>

namespace combwright {

struct Release {
    QString version;
    QDate on;          ///< invalid where none is given
    QStringList says;  ///< its paragraphs and the items of its lists, in their order
};

/// The releases of an AppStream component, newest first as they stand there. `language` ("de")
/// where a release has it, else what is said without a language. Nothing where the XML is broken.
std::optional<std::vector<Release>> releasesIn(const QByteArray& xml, const QString& language);

/// This program's own, in the language spoken, as rich text.
QString releasesText();

}  // namespace combwright
