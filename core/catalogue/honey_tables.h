// What is published of honey and differs by country and edition: the limits of standards and
// labels, what a jar may lack, the words a label must not forget, and the plain geometry of label
// sheets and jars. A keeper picks a profile and a sheet from these; the code of the place decides,
// and none of it is legal advice.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace combwright {

/// One limit of one profile.
struct PublishedHoneyLimit {
    std::string profile;  ///< "us grade", "eu", "codex", "anz", "german jar" …
    std::string edition;
    std::string region;    ///< empty: none in particular
    std::string binding;   ///< "law", "guidance", "label", "voluntary"
    std::string honey;     ///< "any", "heather", "baker's", "tropical" …
    std::string grade;     ///< "A" …; empty where there are none
    std::string quantity;  ///< "water_percent", "hmf_mg_per_kg", "diastase_schade" …
    std::optional<double> atMost;
    std::optional<double> atLeast;
    std::string note;
    std::string source;
};

/// What a jar of a nominal mass may lack; both blank: only the mean is judged, the rest not known.
struct PublishedNetTolerance {
    std::string edition;
    std::string region;
    double fromG = 0;
    double toG = 0;
    std::optional<double> deficitG;
    std::optional<double> deficitPercent;
    std::string source;
};

/// A reminder of what belongs on a label or into the books.
struct PublishedLabelWord {
    std::string edition;
    std::string region;  ///< empty: everywhere
    std::string what;    ///< "infant_caution", "net_mass", "origin", "lot" …
    std::string when;    ///< "always", "sold", "trade" (to a business), "kept", "voluntary"
    std::string says;
    std::string source;
};

/// A sheet of labels by its geometry, millimetres from the sheet's upper left corner.
struct PublishedLabelGrid {
    std::string id;
    std::string paper;   ///< "A4", "Letter"
    bool round = false;  ///< else rectangles
    int columns = 0;
    int rows = 0;
    double cellWidthMm = 0;
    double cellHeightMm = 0;
    double leftMm = 0;  ///< to the first cell
    double topMm = 0;
    double pitchXMm = 0;  ///< from one cell to the next
    double pitchYMm = 0;
    std::string source;
};

/// A usual jar, pail or drum.
struct PublishedJarSize {
    std::string id;
    std::string label;  ///< "1 lb (454 g)"
    std::string region;
    double netG = 0;
    double volumeMl = 0;  ///< a jar: what the net mass takes up at 18 %; a pail: to the brim
    std::string vessel;   ///< "jar", "jug", "pail", "drum"
    std::string source;
};

const std::vector<PublishedHoneyLimit>& publishedHoneyLimits();
const std::vector<PublishedNetTolerance>& publishedNetTolerances();
const std::vector<PublishedLabelWord>& publishedLabelWords();
const std::vector<PublishedLabelGrid>& publishedLabelGrids();
const std::vector<PublishedJarSize>& publishedJarSizes();

/// The names of the profiles, each once, in the order of the table.
std::vector<std::string> honeyLimitProfiles();
/// The limits of one profile, in its order; none where there is no such profile.
std::vector<PublishedHoneyLimit> honeyLimitsOf(std::string_view profile);
/// The reminders for a region, those for everywhere first: the infant caution is always the first.
std::vector<PublishedLabelWord> labelWordsFor(std::string_view region);
/// The regions reminders are published for, each once, in the order of the table.
std::vector<std::string> labelRegions();
/// The grid of that id, or nothing.
const PublishedLabelGrid* findLabelGrid(std::string_view id);
const PublishedJarSize* findJarSize(std::string_view id);

/// Width and height of a paper in mm: A4, Letter; nothing for another.
struct PaperMeasures {
    double widthMm;
    double heightMm;
};
std::optional<PaperMeasures> paperSize(std::string_view paper);

}  // namespace combwright
