#pragma once
#include <boost/units/quantity.hpp>
#include <quillside/version.hpp>
