// The calendar file read back by a reader of somebody else's: libical.
#include "core/exchange/icalendar.h"

#include <gtest/gtest.h>
#include <libical/ical.h>

#include <QString>
#include <memory>

#include "tests/support/support.h"

namespace combwright {
namespace {

using test::day;

struct FreeComponent {
    void operator()(icalcomponent* component) const { icalcomponent_free(component); }
};
using Component = std::unique_ptr<icalcomponent, FreeComponent>;

Component readBack(const std::string& text) {
    return Component(icalparser_parse_string(text.c_str()));
}

/// What is not there says nothing.
std::string given(const char* text) { return text ? text : ""; }

const Instant written = Instant(day("2027-06-09")) + std::chrono::hours(14);

TEST(ICalendar, IsReadBackByAnotherReader) {
    const std::vector<CalendarEntry> entries{
        {"mites-h12-2027-06-09@combwright", day("2027-06-20"), day("2027-06-20"),
         "ML5: sample again", "6 mites on 300 bees; between 0.7 and 4.3.\nWhy, and \\ when.",
         "Mill Lane"},
        {"task-1@combwright", day("2027-12-31"), day("2028-01-02"),
         "Rähmchen drahten, Mühle 蜜蜂 🐝: " + std::string(120, 'x') + " ünd söweiter"}};
    const std::string text = icalendarText(entries, "Three Yards; Höfe", written);
    const Component calendar = readBack(text);
    ASSERT_NE(calendar, nullptr);
    ASSERT_EQ(icalcomponent_isa(calendar.get()), ICAL_VCALENDAR_COMPONENT);
    EXPECT_EQ(icalcomponent_count_errors(calendar.get()), 0);
    EXPECT_NE(icalrestriction_check(calendar.get()), 0) << "keeps the rules of RFC 5545";
    std::size_t n = 0;
    for (icalcomponent* event =
             icalcomponent_get_first_component(calendar.get(), ICAL_VEVENT_COMPONENT);
         event;
         event = icalcomponent_get_next_component(calendar.get(), ICAL_VEVENT_COMPONENT), ++n) {
        ASSERT_LT(n, entries.size());
        EXPECT_EQ(icalcomponent_get_uid(event), entries[n].id);
        EXPECT_EQ(icalcomponent_get_summary(event), entries[n].summary);
        EXPECT_EQ(given(icalcomponent_get_description(event)), entries[n].description);
        EXPECT_EQ(given(icalcomponent_get_location(event)), entries[n].location);
        const icaltimetype from = icalcomponent_get_dtstart(event);
        const icaltimetype until = icalcomponent_get_dtend(event);
        EXPECT_TRUE(from.is_date);
        EXPECT_TRUE(until.is_date);
        EXPECT_EQ(std::string(icaltime_as_ical_string(from)), n == 0 ? "20270620" : "20271231");
        EXPECT_EQ(std::string(icaltime_as_ical_string(until)), n == 0 ? "20270621" : "20280103")
            << "the first day it no longer covers";
        EXPECT_EQ(std::string(icaltime_as_ical_string(icalcomponent_get_dtstamp(event))),
                  "20270609T140000Z");
        EXPECT_EQ(icalcomponent_count_components(event, ICAL_VALARM_COMPONENT), 0);
    }
    EXPECT_EQ(n, entries.size());
}

TEST(ICalendar, LinesAreShortAndEndAsTheyMust) {
    std::string long_;
    for (int n = 0; n < 80; ++n) long_ += n % 3 ? "ü" : "蜂";
    const std::string text =
        icalendarText({{"a@combwright", day("2027-06-20"), day("2027-06-20"), long_}}, {}, written);
    ASSERT_TRUE(text.ends_with("\r\n"));
    std::size_t at = 0;
    while (at < text.size()) {
        const std::size_t end = text.find("\r\n", at);
        ASSERT_NE(end, std::string::npos);
        EXPECT_LE(end - at, 75U);
        // No letter is cut in two.
        const std::string line = text.substr(at, end - at);
        EXPECT_EQ(QString::fromStdString(line).toStdString(), line);
        EXPECT_EQ(line.find('\n'), std::string::npos);
        at = end + 2;
    }
    const Component calendar = readBack(text);
    ASSERT_NE(calendar, nullptr);
    EXPECT_EQ(icalcomponent_get_summary(
                  icalcomponent_get_first_component(calendar.get(), ICAL_VEVENT_COMPONENT)),
              long_);
}

TEST(ICalendar, ControlCharactersAreLeftOutAndLineEndsKept) {
    const std::string text = icalendarText({{"a@combwright", day("2027-06-20"), day("2027-06-20"),
                                             "a\x01z", "one\r\ntwo\rthree\nfour"}},
                                           {}, written);
    const Component calendar = readBack(text);
    icalcomponent* event = icalcomponent_get_first_component(calendar.get(), ICAL_VEVENT_COMPONENT);
    EXPECT_STREQ(icalcomponent_get_summary(event), "az");
    EXPECT_STREQ(icalcomponent_get_description(event), "one\ntwo\nthree\nfour");
}

TEST(ICalendar, RingsOnlyWhereItWasAsked) {
    const CalendarEntry entry{"a@combwright", day("2027-06-20"), day("2027-06-20"), "feed"};
    const Component calendar = readBack(icalendarText({entry}, {}, written, 7));
    icalcomponent* event = icalcomponent_get_first_component(calendar.get(), ICAL_VEVENT_COMPONENT);
    icalcomponent* alarm = icalcomponent_get_first_component(event, ICAL_VALARM_COMPONENT);
    ASSERT_NE(alarm, nullptr);
    const auto* trigger = icalcomponent_get_first_property(alarm, ICAL_TRIGGER_PROPERTY);
    ASSERT_NE(trigger, nullptr);
    EXPECT_EQ(icaldurationtype_as_int(icalproperty_get_trigger(trigger).duration), 7 * 3600);
    EXPECT_NE(icalrestriction_check(calendar.get()), 0);
}

TEST(ICalendar, AFileThatCannotBeWrittenIsSaid) {
    EXPECT_TRUE(tryCalendar("/nowhere/at/all.ics", "x"));
}

}  // namespace
}  // namespace combwright
