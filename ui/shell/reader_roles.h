// What a screen reader calls the widgets we paint ourselves. Qt knows its own buttons and tables; a
// board, a drawing or a word of the rail it takes for an empty area and passes over. Here they get
// a role, so that their names and spoken sentences are read when the keyboard comes to them.
#pragma once

namespace combwright {

/// Once for the program; again it does nothing. Painted buttons become buttons, or one of several
/// where only one can be chosen; any other painted widget the keyboard comes to becomes a picture
/// with its description.
void giveReadersRoles();

}  // namespace combwright
