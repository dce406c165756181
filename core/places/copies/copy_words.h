// How a file that is no season to go on with is spoken of: in the window's title, in its notice, on
// paper and on the command line, always in the same words.
#pragma once

#include <QString>

#include "core/storage/copy_mark.h"

namespace combwright {

/// "As it stood on Wed 9 Jun 2027", "What-if: two more hives".
QString copyTitle(const CopyMark& mark);
/// The same in a whole sentence, with what it is a copy of.
QString copySentence(const CopyMark& mark);

}  // namespace combwright
