#include <pango/pangocairo.h>

#include <nlohmann/json.hpp>
