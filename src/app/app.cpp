#include "app/app.hpp"
