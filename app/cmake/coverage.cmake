# Coverage counters for lcov.
# cmake -C app/cmake/coverage.cmake -B build/coverage -G Ninja
set(CMAKE_BUILD_TYPE Debug CACHE STRING "")
set(COMBWRIGHT_COVERAGE ON CACHE BOOL "")
find_program(COMBWRIGHT_CCACHE ccache)
if(COMBWRIGHT_CCACHE)
    set(CMAKE_CXX_COMPILER_LAUNCHER ${COMBWRIGHT_CCACHE} CACHE STRING "")
    set(CMAKE_C_COMPILER_LAUNCHER ${COMBWRIGHT_CCACHE} CACHE STRING "")
endif()
