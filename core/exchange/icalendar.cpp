#include "core/exchange/icalendar.h"

#include <QString>
#include <algorithm>

#include "core/storage/sqlite/storage_error.h"
#include "core/storage/whole_file.h"
#include "core/support/version.h"

namespace combwright {
namespace {

constexpr std::size_t mostOctets = 75;

/// Digits of a day or an instant, without what parts them.
std::string bare(std::string text) {
    std::erase_if(text, [](char c) { return c == '-' || c == ':'; });
    return text;
}

/// As RFC 5545, 3.3.11 writes a text. Of control characters only the end of a line has a way to be
/// said; others are left out.
std::string escaped(const std::string& text) {
    std::string out;
    for (std::size_t i = 0; i < text.size(); ++i) {
        const char c = text[i];
        if (c == '\\' || c == ';' || c == ',') {
            out += '\\';
            out += c;
        } else if (c == '\n') {
            out += "\\n";
        } else if (c == '\r') {
            if (i + 1 == text.size() || text[i + 1] != '\n') out += "\\n";
        } else if (static_cast<unsigned char>(c) >= 0x20 && c != 0x7f) {
            out += c;
        }
    }
    return out;
}

bool continuesLetter(char c) { return (static_cast<unsigned char>(c) & 0xC0) == 0x80; }

/// The line, folded between two letters wherever it would grow too long (3.1).
void addLine(std::string& file, const std::string& line) {
    std::size_t at = 0;
    std::size_t room = mostOctets;
    while (line.size() - at > room) {
        std::size_t end = at + room;
        while (end > at && continuesLetter(line[end])) --end;
        file.append(line, at, end - at).append("\r\n ");
        at = end;
        room = mostOctets - 1;  // the blank counts
    }
    file.append(line, at).append("\r\n");
}

void addText(std::string& file, const char* property, const std::string& text) {
    if (!text.empty()) addLine(file, property + (":" + escaped(text)));
}

}  // namespace

std::string icalendarText(const std::vector<CalendarEntry>& entries, const std::string& name,
                          Instant written, std::optional<int> alarmHour) {
    std::string file;
    addLine(file, "BEGIN:VCALENDAR");
    addLine(file, "VERSION:2.0");
    addLine(file, "PRODID:-//Combwright//Combwright " + std::string(programVersion) + "//EN");
    addLine(file, "CALSCALE:GREGORIAN");
    addText(file, "NAME", name);  // RFC 7986, 5.1
    for (const CalendarEntry& entry : entries) {
        addLine(file, "BEGIN:VEVENT");
        addText(file, "UID", entry.id);
        addLine(file, "DTSTAMP:" + bare(isoText(written)));
        addLine(file, "DTSTART;VALUE=DATE:" + bare(isoText(entry.from)));
        // The end is the first day it no longer covers.
        addLine(file,
                "DTEND;VALUE=DATE:" + bare(isoText(std::max(entry.last, entry.from) + days(1))));
        addText(file, "SUMMARY", entry.summary);
        addText(file, "DESCRIPTION", entry.description);
        addText(file, "LOCATION", entry.location);
        addLine(file, "TRANSP:TRANSPARENT");
        if (alarmHour) {
            addLine(file, "BEGIN:VALARM");
            addLine(file, "ACTION:DISPLAY");
            addText(file, "DESCRIPTION", entry.summary);
            addLine(file, "TRIGGER:PT" + std::to_string(*alarmHour) + "H");
            addLine(file, "END:VALARM");
        }
        addLine(file, "END:VEVENT");
    }
    addLine(file, "END:VCALENDAR");
    return file;
}

std::optional<std::string> tryCalendar(const std::string& path, const std::string& text) {
    try {
        writeWholeFile(path, text);
        return std::nullopt;
    } catch (const StorageError& error) {
        return error.detail;
    }
}

}  // namespace combwright
