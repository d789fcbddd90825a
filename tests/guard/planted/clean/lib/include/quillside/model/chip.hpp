#pragma once
#include <vector>

#include <quillside/quantity/quantity.hpp>
