// What the person reads when the world did something to a file: what happened, what was kept, what
// to do.
#include <QCoreApplication>

#include "core/words/words.h"

namespace combwright {
namespace {

QString troubleSay(const char* text) { return QCoreApplication::translate("refusals", text); }

const char* troubleText(Trouble trouble) {
    switch (trouble) {
        case Trouble::NotThere:
            return QT_TRANSLATE_NOOP("refusals",
                                     "There is no file %1. Nothing was made. Look at the path, or "
                                     "make a new season there.");
        case Trouble::NotOurs:
            return QT_TRANSLATE_NOOP("refusals", "%1 is not a season file. It was left as it is.");
        case Trouble::Newer:
            return QT_TRANSLATE_NOOP("refusals",
                                     "%1 was made by a newer Combwright (file version %2). It was "
                                     "left as it is. Open it with that version.");
        case Trouble::Damaged:
            return QT_TRANSLATE_NOOP("refusals",
                                     "%1 is damaged (%2). It was left as it is. Open one of its "
                                     "copies, or save what can "
                                     "be read of it into a new file.");
        case Trouble::Locked:
            return QT_TRANSLATE_NOOP("refusals",
                                     "Another program is writing to %1. Nothing was changed. Try "
                                     "again when it has finished.");
        case Trouble::Full:
            return QT_TRANSLATE_NOOP("refusals",
                                     "There is no room left on the disk of %1. The last change was "
                                     "not kept, all before it is. Make room, then repeat it.");
        case Trouble::NotWritable:
            return QT_TRANSLATE_NOOP("refusals",
                                     "%1 cannot be written (%2). Nothing was changed. Look at the "
                                     "rights of file and folder.");
        case Trouble::Moved:
            return QT_TRANSLATE_NOOP(
                "refusals",
                "%1 was replaced or moved while it was open. Nothing was written to the new one. "
                "Save what is open here as a new file.");
        case Trouble::Failed:
            return QT_TRANSLATE_NOOP(
                "refusals",
                "%1 could not be read or written (%2). What was being done is not kept, all before "
                "it is. Try again; where that does not help, open one of the copies.");
    }
    return "";
}

const char* readOnlyText(ReadOnlyWhy why) {
    switch (why) {
        case ReadOnlyWhy::Asked:
            return QT_TRANSLATE_NOOP("refusals", "This file was opened for reading only.");
        case ReadOnlyWhy::NotWritable:
            return QT_TRANSLATE_NOOP(
                "refusals",
                "This file or its folder may not be written. To go on writing, "
                "keep it as a new file in a folder of yours.");
        case ReadOnlyWhy::NewerButReadable:
            return QT_TRANSLATE_NOOP("refusals",
                                     "This file was made by a newer Combwright. To write in it, "
                                     "open it with that version.");
        case ReadOnlyWhy::AsItStood:
            return QT_TRANSLATE_NOOP("refusals",
                                     "This is the season as it stood on a day that has passed, to "
                                     "be read beside today's.");
        case ReadOnlyWhy::ForeignSchema:
            return QT_TRANSLATE_NOOP("refusals",
                                     "Another program put orders of its own into this file (a "
                                     "trigger or a view). They are not carried out here. Open a "
                                     "copy from before, or ask whoever put them there.");
    }
    return "";
}

/// Why, in words for a person: SQLite's own and its statement are for a report. Of ours what stands
/// before the point in the middle is meant to be read.
QString whyText(const StorageError& error) {
    if (error.sqliteCode == 0)
        return fromUtf8(std::string_view(error.detail).substr(0, error.detail.find(" · ")));
    // Two of SQLite's result codes; their numbers are part of its documented interface.
    constexpr int outOfMemory = 7;
    constexpr int ioError = 10;
    switch (error.trouble) {
        case Trouble::Damaged:
            return troubleSay(QT_TRANSLATE_NOOP("refusals", "its pages do not fit together"));
        case Trouble::NotWritable:
            return troubleSay(
                QT_TRANSLATE_NOOP("refusals", "it, or the folder it lies in, cannot be opened"));
        default:
            break;
    }
    switch (error.sqliteCode & 0xff) {
        case outOfMemory:
            return troubleSay(QT_TRANSLATE_NOOP("refusals", "the machine ran out of memory"));
        case ioError:
            return troubleSay(QT_TRANSLATE_NOOP("refusals", "the disk or its connection failed"));
        default:
            return troubleSay(QT_TRANSLATE_NOOP("refusals", "the file did not take it"));
    }
}

}  // namespace

QString sentence(const StorageError& error) {
    QString text = troubleSay(troubleText(error.trouble));
    if (error.trouble == Trouble::Newer)
        return text.arg(fromUtf8(error.path), fromUtf8(error.detail));
    if (text.contains(QLatin1String("%2"))) return text.arg(fromUtf8(error.path), whyText(error));
    return text.arg(fromUtf8(error.path));
}

QString sentence(ReadOnlyWhy why) { return troubleSay(readOnlyText(why)); }

}  // namespace combwright
