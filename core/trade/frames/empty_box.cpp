#include "core/trade/frames/empty_box.h"

namespace combwright {

double emptyBoxGramsByComb(double weighedG, double weighedCombDm2, double combDm2,
                           Working* working) {
    const double grams = weighedG * combDm2 / weighedCombDm2;
    note(working, "weighed_box_g", weighedG, "g");
    note(working, "comb_share", combDm2 / weighedCombDm2, "", "comb area ÷ its comb area");
    note(working, "empty_box_g", grams, "g", "weighed box · comb share",
         "planning assumption, no source");
    return grams;
}

}  // namespace combwright
