#include "sheets/sheets.hpp"
