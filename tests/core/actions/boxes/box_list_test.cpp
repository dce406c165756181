// What is typed of a box: good lines beside those that must be refused, so that a slip of the pen
// never becomes a record.
#include "core/actions/boxes/box_list.h"

#include <gtest/gtest.h>

#include "core/words/language.h"
#include "core/words/words.h"
#include "tests/support/deeds.h"

namespace combwright {
namespace {

std::string tenthsText(std::int64_t tenths) {
    return std::to_string(tenths / 10) + "." + std::to_string(tenths % 10);
}

/// "8 drawn, 1 V; 6.5 capped counted; 8500 filled", or the refusal's code.
std::string contentsSaid(const Result<BoxContents>& read) {
    if (!read) return std::string(key(read.error().code));
    std::string said;
    for (const FrameTally& tally : read->tallies) {
        said += (said.empty() ? "" : ", ") + std::to_string(tally.frames.value());
        if (tally.comb)
            said += " " + std::string(Choices<Comb>::words[static_cast<std::size_t>(*tally.comb)]);
        if (!tally.faults.empty()) said += " " + tally.faults;
    }
    if (read->capped)
        said += "; " + tenthsText(read->capped->value->count()) + " capped " +
                std::string(Choices<How>::words[static_cast<std::size_t>(read->capped->how)]);
    if (read->filled) said += "; " + std::to_string(read->filled->value->count()) + " filled";
    return said;
}

struct ContentsRow {
    const char* typed;
    const char* said;
};

TEST(ContentsTyped, AreReadOrRefused) {
    const ContentsRow rows[] = {
        {"", ""},
        {"9 drawn", "9 drawn"},
        {"9", "9 drawn"},
        {"9drawn", "9 drawn"},
        {"  9   drawn ; ", "9 drawn"},
        {"9 DRAWN", "9 drawn"},
        {"0 drawn", "0 drawn"},
        {"3 drawn, 4 drawn", "3 drawn, 4 drawn"},
        {"2 fat, 3 part drawn, 4 foundation, 1 bare",
         "2 drawn fat, 3 part drawn, 4 foundation, 1 bare"},
        {"2 W, 1 broken, 1 moth", "2 W, 1 V, 1 W"},
        {"8 drawn, 1 foundation, 1 broken; 7 capped, 85 % full",
         "8 drawn, 1 foundation, 1 V; 7.0 capped counted; 8500 filled"},
        {"100 drawn", "100 drawn"},
        {"7 drawn; 7 capped", "7 drawn; 7.0 capped counted"},
        {"10; 8 capped 90%", "10 drawn; 8.0 capped counted; 9000 filled"},
        {"8 capped  90 % full", "; 8.0 capped counted; 9000 filled"},
        {"6,5 capped", "; 6.5 capped counted"},
        {"9 drawn; 6.5 capped", "9 drawn; 6.5 capped counted"},
        {"~6 capped", "; 6.0 capped by eye"},
        {"0 capped", "; 0.0 capped counted"},
        {"85%", "; 8500 filled"},
        {"85% full", "; 8500 filled"},
        {"0 % full", "; 0 filled"},
        {"100 % full", "; 10000 filled"},
        {"12.5 % full", "; 1250 filled"},
        // No number, or none that can be meant.
        {"drawn", "wrong_type"},
        {"nine drawn", "wrong_type"},
        {"-1 drawn", "wrong_type"},
        {"9.5 drawn", "wrong_type"},
        // No class of frames.
        {"9 gold", "not_a_choice"},
        {"9 drawn 8 capped", "not_a_choice"},
        {"1e1 drawn", "not_a_choice"},
        // More than can be.
        {"100.5 % full", "out_of_range"},
        {"101 capped", "out_of_range"},
        {"999999999 capped", "out_of_range"},
        {"99999999999999999999999999 capped", "wrong_type"},
        // More capped than there are.
        {"7 drawn; 7.1 capped", "contradiction"},
        {"7 drawn; 8 capped", "contradiction"},
    };
    for (const ContentsRow& row : rows)
        EXPECT_EQ(contentsSaid(parseContents(row.typed)), row.said) << row.typed;
}

TEST(ContentsTyped, MoreThanAHundredFramesAreOutOfRange) {
    EXPECT_EQ(contentsSaid(parseContents("101 drawn")), "out_of_range");
}

TEST(ContentsTyped, SayEachThingOnce) {
    EXPECT_EQ(contentsSaid(parseContents("9 drawn; 7 capped, 8 capped")), "duplicate");
    EXPECT_EQ(contentsSaid(parseContents("85 % full, 90 %")), "duplicate");
}

TEST(ContentsTyped, AreNotRoundedUnseen) {
    EXPECT_EQ(contentsSaid(parseContents("9 drawn; 6.55 capped")), "wrong_type");
}

class TypedBoxes : public test::DeedsTest {
  protected:
    /// "LANG10-DEEP D31, LANG10-MED M31 9; excluder above 1", or the refusal's code and its name.
    std::string said(const char* typed) const {
        const auto list = parseBoxList(file(), typed);
        if (!list) {
            const auto name = std::string(list.error().value("name"));
            return std::string(key(list.error().code)) + (name.empty() ? "" : " ") + name;
        }
        std::string text;
        for (const ListedBox& each : list->boxes) {
            text += (text.empty() ? "" : ", ") + file().find(each.kind)->code.text();
            if (!each.mark.empty()) text += " " + each.mark;
            if (each.contents.frames() > Count())
                text += " " + std::to_string(each.contents.frames().value());
        }
        if (list->excluderAbove)
            text += "; excluder above " + std::to_string(list->excluderAbove->value());
        return text;
    }
};

TEST_F(TypedBoxes, AreReadOrRefused) {
    const ContentsRow rows[] = {
        {"", ""},
        {"deep D31", "LANG10-DEEP D31"},
        {"DEEP D31", "LANG10-DEEP D31"},
        {"deep", "LANG10-DEEP"},
        {"deep D31, medium M31", "LANG10-DEEP D31, LANG10-MED M31"},
        {"deep D31, x, medium M31 9 drawn", "LANG10-DEEP D31, LANG10-MED M31 9; excluder above 1"},
        {"deep, deep, X, medium 9", "LANG10-DEEP, LANG10-DEEP, LANG10-MED 9; excluder above 2"},
        {"x, medium", "LANG10-MED; excluder above 0"},
        {"shallow S1 10", "LANG10-SHAL S1 10"},
        {"LANG8-MED M1, lang8-med M2", "LANG8-MED M1, LANG8-MED M2"},
        {"medium M#7/a", "LANG10-MED M#7/a"},
        {"10-frame medium M31 9 drawn", "LANG10-MED M31 9"},
        {"8-Frame Deep, x, 10-frame medium 9", "LANG8-DEEP, LANG10-MED 9; excluder above 1"},
        {"10-frame Dadant brood box (French) D1", "DADBL10-BROOD D1"},
        {"10-frame cupboard D1", "not_found 10-frame"},
        {"cupboard D1", "not_found cupboard"},
        {"deep D1, excluder, medium M1", "LANG10-DEEP D1, LANG10-MED M1; excluder above 1"},
        {"deep, queen excluder, medium 9", "LANG10-DEEP, LANG10-MED 9; excluder above 1"},
        {"Zander box Z1 9, Deutsch Normal", "ZANDER10-BOX Z1 9, DNM11-BOX"},
        {"Zander flat F1", "ZANDER10-FLAT F1"},
        {"National brood N1 11", "NAT-BROOD N1 11"},
        {"Zander Z1", "ambiguous Zander"},
        {"10 drawn", "not_found 10"},
        {"deep D1, 9 drawn", "not_found 9"},
        {"medium M1 9 gold", "not_a_choice"},
        {"medium M1 9.5", "wrong_type"},
        {"medium M1 nine", "wrong_type"},
    };
    for (const ContentsRow& row : rows) EXPECT_EQ(said(row.typed), row.said) << row.typed;
}

TEST_F(TypedBoxes, AKindIsItsCodeItsNameOrTheTradesWord) {
    const auto codeOf = [&](const char* name) {
        const auto kind = boxKindNamed(file(), name);
        return kind ? kind->code.text() : "none";
    };
    EXPECT_EQ(codeOf("lang8-deep"), "LANG8-DEEP");
    EXPECT_EQ(codeOf("10-Frame Medium"), "LANG10-MED");
    EXPECT_EQ(codeOf(" medium "), "LANG10-MED");
    EXPECT_EQ(codeOf("edium"), "none") << "half a word is no word";
    EXPECT_EQ(codeOf("Deutsch Normal"), "DNM11-BOX");
    EXPECT_EQ(codeOf("deutsch norm"), "DNM11-BOX");
    EXPECT_EQ(codeOf("zander flat"), "ZANDER10-FLAT");
    EXPECT_EQ(codeOf("zander"), "none") << "of the two nobody says which";
    EXPECT_EQ(codeOf(""), "none");
}

TEST_F(TypedBoxes, WhatNamesNoneListsWhatItMayBe) {
    const auto words = [&](const char* typed) {
        const auto list = parseBoxList(file(), typed);
        return list ? std::string() : sentence(list.error()).toStdString();
    };
    EXPECT_EQ(words("cupboard D1"),
              "Boxes: nothing is called cupboard. It may be: deep, medium, shallow, x (an "
              "excluder).");
    EXPECT_EQ(words("Zander Z1"),
              "Boxes: Zander may be any of 2. Say which: Zander box, 10 frames; Zander flat "
              "(two-thirds) box, 10 frames.");
    done(R"({"do":"add-boxes","on":"2027-04-01","kind":"ZANDER10-BOX","first_mark":"Z1"})");
    EXPECT_EQ(said("Zander Z2"), "ZANDER10-BOX Z2") << "the one in use is meant";
}

TEST_F(TypedBoxes, MayBeTypedInGerman) {
    const auto kept = [&](const char* typed) {
        const auto list = boxListInEnglish(file(), typed);
        return list ? *list : sentence(list.error()).toStdString();
    };
    EXPECT_EQ(kept("deep D31, x, medium 9"), "deep D31, x, medium 9");
    const Speaking german(Language::German);
    EXPECT_EQ(kept("ganz D31, Absperrgitter, zweidrittel 9 ausgebaut"),
              "deep D31, excluder, medium 9 drawn");
    EXPECT_EQ(kept("Deutsch-Normal-Zarge N1 9 ausgebaut"), "Deutsch Normal box N1 9 drawn");
    EXPECT_EQ(kept("Zander-Flachzarge Z1"), "Zander flat (two-thirds) box Z1");
    EXPECT_EQ(said(kept("Zander-Zarge Z1 9, Zander-Flachzarge Z2").c_str()),
              "ZANDER10-BOX Z1 9, ZANDER10-FLAT Z2");
    EXPECT_EQ(said(kept("10er Langstroth flach S1").c_str()), "LANG10-SHAL S1");
    EXPECT_EQ(kept("Schrank D1"),
              "Zargen: nichts heißt Schrank. Möglich sind: ganz, zweidrittel, flach, x (ein "
              "Absperrgitter).");
    EXPECT_NE(kept("Honigraum").find("National-Honigraum"), std::string::npos) << kept("Honigraum");
    const auto kind = boxKindTyped(file(), "Zander-Zarge, 10 Rähmchen");
    ASSERT_TRUE(kind);
    EXPECT_EQ(kind->code.text(), "ZANDER10-BOX");
    EXPECT_EQ(boxKindTyped(file(), "zweidrittel")->code.text(), "LANG10-MED");
}

TEST_F(TypedBoxes, TheTradesWordMeansTheKindInUse) {
    done(R"({"do":"add-boxes","on":"2027-04-01","kind":"LANG8-MED","first_mark":"E1"})");
    EXPECT_EQ(said("medium M1"), "LANG8-MED M1");
    EXPECT_EQ(said("deep D1"), "LANG10-DEEP D1") << "of deeps none is in use yet";
    // A line of play must not mean another box than the same word in a list.
    done(R"({"do":"add-boxes","on":"2027-04-01","kind":"medium","first_mark":"E2"})");
    EXPECT_EQ(box("E2").kind, box("E1").kind);
}

}  // namespace
}  // namespace combwright
