# What tests/bench/run builds and measures: optimised as what is installed, with the benchmarks.
# cmake -C app/cmake/bench.cmake -B build/bench -G Ninja
set(CMAKE_BUILD_TYPE Release CACHE STRING "")
set(CMAKE_UNITY_BUILD ON CACHE BOOL "")
set(CMAKE_UNITY_BUILD_BATCH_SIZE 16 CACHE STRING "")
set(COMBWRIGHT_TESTS OFF CACHE BOOL "")
set(COMBWRIGHT_BENCH ON CACHE BOOL "")
find_program(COMBWRIGHT_CCACHE ccache)
if(COMBWRIGHT_CCACHE)
    set(CMAKE_CXX_COMPILER_LAUNCHER ${COMBWRIGHT_CCACHE} CACHE STRING "")
    set(CMAKE_C_COMPILER_LAUNCHER ${COMBWRIGHT_CCACHE} CACHE STRING "")
endif()
