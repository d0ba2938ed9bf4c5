# cmake -C tests/config/asan.cmake -S . -B build-asan
set(GANGWAY_SANITIZE "address,undefined" CACHE STRING "")
set(CMAKE_BUILD_TYPE RelWithDebInfo CACHE STRING "")
