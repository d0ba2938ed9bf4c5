#include "export/export.hpp"
