// A schema step that stands in a released program has made files out there; changed afterwards, it
// would make other files of the same number. So its SHA-256 is written down at release.
#include <gtest/gtest.h>

#include <algorithm>
#include <map>
#include <string>
#include <vector>

#include "core/storage/migrations.h"
#include "tests/layout/source_tree.h"

namespace combwright::layout {
namespace {

/// Step to the digest it was released with; a line is added with each release and never changed.
/// Steps 1 to 8 are those of 0.2.0.
const std::map<int, std::string>& releasedSteps() {
    static const std::map<int, std::string> digests{
        {1, "5f553a59396e4181cbc83751c06e6cc9ee167f213df782beda1c118821e0c2fb"},
        {2, "fac06908f7945a7f5836daeb04479654cb58cff6efeeda15477b5328fc820cd9"},
        {3, "f170ea4d65c6337f18f99d321728d216d59cad03f88c351ed4111fb77effcb47"},
        {4, "ab7d6c0e8f0310f1f9633358a4f191a1a975a6442a8cf927b8bbd17f735fe4e5"},
        {5, "4cdb1a627f90ac4ccd4f3c7678dccb88051205890de3e596a0d3a606c5f4ba6c"},
        {6, "66a742551604978d66560be309c3a6d46c69fc33975f845e28b68c150fe3c2d2"},
        {7, "542b1a684dcfca70749c06b95901d995b316ac438c83bcb7b28439dc63f5c6d2"},
        {8, "4b24f042b7144001cf8c2868467ecaf177fe71b52396d681986fbdeb3d106f34"},
    };
    return digests;
}

std::string unfrozen(const std::map<int, std::string>& released,
                     const std::vector<Migration>& steps) {
    std::string wrong;
    for (const auto& [step, digest] : released) {
        const auto found = std::find_if(steps.begin(), steps.end(),
                                        [&](const Migration& each) { return each.step == step; });
        if (found == steps.end())
            wrong += "released step " + std::to_string(step) + " is gone\n";
        else if (found->digest() != digest)
            wrong += "released step " + std::to_string(step) + " is now " + found->digest() + "\n";
    }
    return wrong;
}

TEST(Migrations, ReleasedStepsAreAsReleased) {
    EXPECT_EQ(unfrozen(releasedSteps(), migrations()), "");
}

TEST(Migrations, AChangedStepIsFound) {
    // The digest of "abc" is printed in FIPS 180-2, appendix B.1.
    const std::string abc = "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad";
    const std::vector<Migration> steps{{1, "first", "abc"}, {2, "second", "SELECT 2"}};
    EXPECT_EQ(unfrozen({{1, abc}}, steps), "");
    EXPECT_NE(unfrozen({{2, abc}}, steps), "");
    EXPECT_NE(unfrozen({{3, abc}}, steps), "");
}

TEST(Migrations, CountFromOneAndStandInTheirOwnFiles) {
    const auto files = filesUnder({"core/storage/migrations"});
    ASSERT_EQ(files.size(), migrations().size());
    for (std::size_t i = 0; i < files.size(); ++i) {
        const Migration& step = migrations()[i];
        EXPECT_EQ(step.step, static_cast<int>(i) + 1);
        std::string number = std::to_string(step.step);
        number.insert(0, 4 - number.size(), '0');
        EXPECT_EQ(files[i].path, "core/storage/migrations/" + number + "_" + step.name + ".sql");
        EXPECT_EQ(files[i].text, step.sql);
        EXPECT_LE(step.minReader, step.step);
    }
}

}  // namespace
}  // namespace combwright::layout
