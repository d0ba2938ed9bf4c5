# cmake -C tests/config/asan.cmake -S . -B build-asan
# Run the tests labelled gl with ASAN_OPTIONS=detect_leaks=0: graphics drivers keep what they allocate.
set(GANGWAY_SANITIZE "address,undefined" CACHE STRING "")
set(CMAKE_BUILD_TYPE Debug CACHE STRING "")
set(CMAKE_CXX_FLAGS_DEBUG "-O1" CACHE STRING "") # fast to compile; -g1 comes with GANGWAY_SANITIZE
