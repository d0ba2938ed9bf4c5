#include "edit/edit.hpp"
