#include <pango/pangocairo.h>

#include <simdjson.h>
