#include <cmath>

#include <quillside/data/tables.hpp>
