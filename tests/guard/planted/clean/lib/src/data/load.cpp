#include <toml++/toml.h>

#include "fields.hpp"
