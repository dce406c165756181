// What is JSON and what only looks like it: after RFC 8259, its grammar.
#include "core/exchange/strict_json.h"

#include <gtest/gtest.h>

#include <string>

namespace combwright {
namespace {

std::string verdict(std::string_view text) {
    const auto object = strictObject(text);
    if (object) return "object";
    return std::string(key(object.error().code)) + " " + object.error().field;
}

TEST(StrictJson, TakesWhatTheGrammarTakes) {
    for (const char* text :
         {"{}", " {\n} ", R"({"a":0})", R"({"a":-0.5e+10,"b":1E5,"c":10.25})",
          R"({"a":[],"b":[1,[2],{"c":null}],"d":true,"e":false})",
          R"({"a":"\"\\\/\b\f\n\r\t\u00e4 é ü"})", "\xef\xbb\xbf{}", R"({"":""})"})
        EXPECT_EQ(verdict(text), "object") << text;
    EXPECT_EQ(strictObject(R"({"a":"M\u00fchle"})")->value("a").toString(),
              QStringLiteral("Mühle"));
}

TEST(StrictJson, RefusesWhatOnlyLooksLikeIt) {
    for (const char* text : {"",
                             " ",
                             "[]",
                             "1",
                             "null",
                             "{",
                             "}",
                             "{}{}",
                             "{},",
                             R"({"a":1000.})",
                             R"({"a":.5})",
                             R"({"a":01})",
                             R"({"a":-01})",
                             R"({"a":+1})",
                             R"({"a":1e})",
                             R"({"a":1e+})",
                             R"({"a":-})",
                             R"({"a":0x1})",
                             R"({"a":NaN})",
                             R"({"a":Infinity})",
                             R"({"a":1,})",
                             R"({"a":[1,]})",
                             R"({"a":[1 2]})",
                             R"({a:1})",
                             R"({'a':1})",
                             R"({"a" 1})",
                             R"({"a":"\x"})",
                             R"({"a":"\u12"})",
                             R"({"a":"open})",
                             R"({"a":tru})",
                             R"({"a":TRUE})",
                             R"({"a":1} // yes)",
                             R"({"a":1e999})"})
        EXPECT_EQ(verdict(text), "wrong_type ") << text;
    EXPECT_EQ(verdict("{\"a\":\"two\nlines\"}"), "wrong_type ");
    EXPECT_EQ(verdict(std::string_view("{}\0", 3)), "wrong_type ");
}

TEST(StrictJson, RefusesBytesThatAreNoText) {
    for (const char* text : {"{\"a\":\"M\xfchle\"}", "{\"a\":\"\xc3\"}", "{\"\xff\":1}",
                             "{\"a\":\"\xed\xa0\x80\"}", "{\"a\":\"\xc0\xaf\"}"}) {
        const auto object = strictObject(text);
        ASSERT_FALSE(object);
        EXPECT_EQ(object.error().value("wanted"), "text in UTF-8");
    }
}

TEST(StrictJson, RefusesAKeyGivenTwiceWhereverItStands) {
    EXPECT_EQ(verdict(R"({"a":1,"b":2,"a":1})"), "duplicate a");
    EXPECT_EQ(verdict(R"({"a":1,"\u0061":2})"), "duplicate a");
    EXPECT_EQ(verdict(R"({"frames":[{"id":1},{},{"start_g":1,"start_g":2}]})"),
              "duplicate frames[2].start_g");
    EXPECT_EQ(verdict(R"({"a":{"b":{"c":1,"c":1}}})"), "duplicate a.b.c");
    EXPECT_EQ(verdict(R"({"a":{"x":1},"b":{"x":1}})"), "object") << "each in its own object";
}

TEST(StrictJson, RefusesNestingWithoutEnd) {
    const std::string deep(100'000, '[');
    EXPECT_EQ(verdict("{\"a\":" + deep), "wrong_type ");
}

}  // namespace
}  // namespace combwright
