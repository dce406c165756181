// The commands by what they are about; each file beside this one defines one list.
#pragma once

#include <vector>

#include "app/cli/command.h"

namespace combwright::cli {

std::vector<Command> seasonCommands();     ///< new, demo, check, backup, export
std::vector<Command> journalCommands();    ///< play, actions, history, undo, redo
std::vector<Command> pullCommands();       ///< pull
std::vector<Command> loadCommands();       ///< loads
std::vector<Command> yieldCommands();      ///< yields
std::vector<Command> yearCommands();       ///< year
std::vector<Command> storeroomCommands();  ///< stock, needs
std::vector<Command> goodsCommands();      ///< jars, sales, fair
std::vector<Command> computeCommands();    ///< compute, codes
std::vector<Command> healthCommands();     ///< dead-outs, contacts
std::vector<Command> colonyCommands();     ///< colonies, queens, story, follow
std::vector<Command> freezerCommands();    ///< freezer, wets
std::vector<Command> waitingCommands();    ///< clearers, waiting
std::vector<Command> storesCommands();     ///< stores, kit
std::vector<Command> treatmentCommands();  ///< mites, medicines
std::vector<Command> dueCommands();        ///< due
std::vector<Command> constantCommands();   ///< constants
std::vector<Command> honeyCommands();      ///< honey, blend
std::vector<Command> traceCommands();      ///< trace
std::vector<Command> labelCommands();      ///< labels, leaf
std::vector<Command> waxCommands();        ///< wax

}  // namespace combwright::cli
