#pragma once
#include <boost/units/quantity.hpp>
