#pragma once
#include <vector>

#include <quillside/quantity/units.hpp>
