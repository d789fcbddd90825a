#include "../data/fields.hpp"
