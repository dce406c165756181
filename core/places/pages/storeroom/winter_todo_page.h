// The winter's work, pinned up where it is done, with boxes to tick.
#pragma once

#include "core/places/pages/page.h"
#include "core/places/storeroom/winter_todo.h"

namespace combwright {

Page winterTodoPage(const Read& file, const WinterTodo& todo);

}  // namespace combwright
