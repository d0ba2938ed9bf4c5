#include "catalogue/catalogue.hpp"
