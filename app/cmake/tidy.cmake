# clang-tidy over every file as it is compiled; .clang-tidy has the checks.
# cmake -C app/cmake/tidy.cmake -B build/tidy -G Ninja
set(CMAKE_BUILD_TYPE Debug CACHE STRING "")
# Warnings only GCC knows are passed over.
set(CMAKE_CXX_CLANG_TIDY "clang-tidy-14;--quiet;--extra-arg=-Wno-unknown-warning-option" CACHE STRING "")
find_program(COMBWRIGHT_CCACHE ccache)
if(COMBWRIGHT_CCACHE)
    set(CMAKE_CXX_COMPILER_LAUNCHER ${COMBWRIGHT_CCACHE} CACHE STRING "")
    set(CMAKE_C_COMPILER_LAUNCHER ${COMBWRIGHT_CCACHE} CACHE STRING "")
endif()
