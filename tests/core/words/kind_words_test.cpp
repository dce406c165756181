#include "core/words/kind_words.h"

#include <gtest/gtest.h>

#include "core/words/language.h"
#include "core/words/words.h"

namespace combwright {
namespace {

std::string shortName(std::string_view name, std::string family) {
    FrameKind kind;
    kind.name = *Name::of(name);
    kind.family = std::move(family);
    return frameKindText(kind).toStdString();
}

TEST(FrameKindText, LeavesOutFamilyAndBrackets) {
    EXPECT_EQ(shortName("Langstroth medium frame (6 1/4 in; Illinois)", "Langstroth"),
              "medium frames");
    EXPECT_EQ(shortName("European Dadant super frame 435 x 160", "Dadant-Blatt"),
              "European Dadant super frame 435 x 160");
    EXPECT_EQ(shortName("Zander frame 420 x 220", "Zander"), "frame 420 x 220");
    EXPECT_EQ(shortName("my frame", ""), "my frames");
}

TEST(FrameKindText, OneIsOne) {
    FrameKind kind;
    kind.name = *Name::of("Langstroth deep frame (9 1/8 in)");
    kind.family = "Langstroth";
    EXPECT_EQ(framesText(1, kind).toStdString(), "1 deep frame");
    EXPECT_EQ(framesText(3, kind).toStdString(), "3 deep frames");
}

TEST(KindText, OfTheCatalogueIsSpoken) {
    EXPECT_EQ(kindText("10-frame medium").toStdString(), "10-frame medium");
    FrameKind medium;
    medium.name = *Name::of("Langstroth medium frame (6 1/4 in; Illinois / three-quarter Farrar)");
    medium.family = "Langstroth";
    const Speaking german(Language::German);
    EXPECT_EQ(kindText("10-frame medium").toStdString(), "10er Langstroth zweidrittel");
    EXPECT_EQ(kindText("my own box").toStdString(), "my own box");
    EXPECT_EQ(frameKindText(medium).toStdString(), "Zweidrittelrähmchen");
    EXPECT_EQ(framesText(1, medium).toStdString(), "1 Zweidrittelrähmchen");
}

TEST(NamesMeant, AreThoseTheWordsFit) {
    const std::vector<std::string> names{"National brood box", "National 14 x 12 brood box",
                                         "National super", "Zander box, 10 frames"};
    using Found = std::vector<std::size_t>;
    EXPECT_EQ(namesMeant(names, "national brood box"), Found{0});
    EXPECT_EQ(namesMeant(names, "National brood"), Found{0}) << "its beginning";
    EXPECT_EQ(namesMeant(names, "national"), (Found{0, 1, 2}));
    EXPECT_EQ(namesMeant(names, "14 x 12 brood"), Found{1});
    EXPECT_EQ(namesMeant(names, "zan"), Found{3});
    EXPECT_EQ(namesMeant(names, "za"), Found{});
    EXPECT_EQ(namesMeant(names, "Zander box 10"), Found{}) << "ten frames are not its name";
    EXPECT_EQ(namesMeant(names, "box"), Found{});
    EXPECT_EQ(namesMeant(names, ""), Found{});
}

}  // namespace
}  // namespace combwright
