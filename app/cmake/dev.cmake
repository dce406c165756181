# Daily work: debug information, precompiled headers, one object per file.
# cmake -C app/cmake/dev.cmake -B build/dev -G Ninja
set(CMAKE_BUILD_TYPE Debug CACHE STRING "")
set(COMBWRIGHT_PCH ON CACHE BOOL "")
find_program(COMBWRIGHT_CCACHE ccache)
if(COMBWRIGHT_CCACHE)
    set(CMAKE_CXX_COMPILER_LAUNCHER ${COMBWRIGHT_CCACHE} CACHE STRING "")
    set(CMAKE_C_COMPILER_LAUNCHER ${COMBWRIGHT_CCACHE} CACHE STRING "")
endif()
