# The warnings every target of ours is built with; they are errors in all our builds, though not in a
# package, whose compiler may have warnings that ours has not.
option(COMBWRIGHT_WARNINGS_ARE_ERRORS "Fail the build on a warning" ON)
add_library(combwright_warnings INTERFACE)
add_library(Combwright::Warnings ALIAS combwright_warnings)
target_compile_options(combwright_warnings INTERFACE
    -Wall -Wextra -Wpedantic -Wshadow=local -Wnon-virtual-dtor -Woverloaded-virtual -Wcast-align
    -Wunused -Wdouble-promotion -Wimplicit-fallthrough
    $<$<BOOL:${COMBWRIGHT_WARNINGS_ARE_ERRORS}>:-Werror>
    # An action names the fields it gives; the rest is left out on purpose.
    -Wno-missing-field-initializers)
if(CMAKE_CXX_COMPILER_ID STREQUAL "GNU")
    # GCC 12 reports both of these in its own string and optional when it inlines them (its bug 105651).
    target_compile_options(combwright_warnings INTERFACE -Wlogical-op -Wno-restrict
        -Wno-maybe-uninitialized)
endif()
