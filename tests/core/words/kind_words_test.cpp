#include "core/words/kind_words.h"

#include <gtest/gtest.h>

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

}  // namespace
}  // namespace combwright
